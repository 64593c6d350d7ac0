"""What is withdrawn is reckoned once, and everybody who asks hears the same."""

from __future__ import annotations

from datetime import date

from hypothesis import given
from hypothesis import strategies as st

from benchround.core.book import RecordBook
from benchround.core.record import Kind, Record, live, withdrawn_by
from benchround.crops.library import load_library

DAY = date(2026, 4, 1)
LIBRARY = load_library()


def noted(name: str) -> Record:
    return Record(name, DAY, Kind.NOTED, "", {}, note="x")


def undo(name: str, what: str) -> Record:
    return Record(name, DAY, Kind.WITHDRAWN, "", {"record": what})


def test_undone_undone_again_and_undone_a_third_time() -> None:
    """By hand: 2 takes 1 back, 3 takes 2 back so that 1 stands, 4 takes 3 back so that it falls."""
    told = [noted("1")]
    stands = [True]
    for name, what in (("2", "1"), ("3", "2"), ("4", "3")):
        told.append(undo(name, what))
        stands.append("1" not in withdrawn_by(told))
        assert bool(live(told)) is stands[-1]
        assert RecordBook(told, lambda _: LIBRARY).stands("1") is stands[-1]
    assert stands == [True, False, True, False]
    assert withdrawn_by(told) == {"1": "2", "3": "4"}


@given(st.lists(st.integers(0, 8), max_size=8))
def test_list_and_book_agree_whatever_is_undone(targets: list[int]) -> None:
    told = [noted("0")]
    told += [undo(f"{n}", f"{min(what, n - 1)}") for n, what in enumerate(targets, start=1)]
    gone = withdrawn_by(told)
    book = RecordBook(told, lambda _: LIBRARY)
    assert {r.id for r in told if not book.stands(r.id)} == gone.keys()
    assert [r.id for r in live(told)] == (["0"] if "0" not in gone else [])
