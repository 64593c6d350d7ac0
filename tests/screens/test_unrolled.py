"""Lines made as far as they are asked for, held against a list of the same lines."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.desk import Desk
from benchround.screens.page import Sheaf
from benchround.screens.text import Line, line
from benchround.screens.unrolled import Unrolled
from tests.screens.stage import app_on, front, seen

SIZES = st.lists(st.integers(0, 4), max_size=12)


def written(sizes: Sequence[int]) -> list[list[Line]]:
    """Pieces of so many lines each, all lines different; some pieces are empty."""
    return [[line(f"{at}.{n}") for n in range(size)] for at, size in enumerate(sizes)]


@given(SIZES, st.integers(-60, 60), st.integers(0, 60))
def test_every_part_is_that_of_a_list(sizes: list[int], start: int, stop: int) -> None:
    pieces = written(sizes)
    whole = [words for piece in pieces for words in piece]
    lines = Unrolled(iter(pieces))
    assert list(lines[max(0, start) : stop]) == whole[max(0, start) : stop]
    assert list(lines[start:]) == whole[start:]
    assert (list(lines), len(lines)) == (whole, len(whole))


@given(SIZES, st.integers(0, 60))
def test_no_more_is_made_than_is_asked_for(sizes: list[int], number: int) -> None:
    made: list[Line] = []

    def pieces() -> Iterator[list[Line]]:
        for piece in written(sizes):
            made.extend(piece)
            yield piece

    lines = Unrolled(pieces())
    assert lines.reach(number) == len(made)
    assert len(made) >= min(number, sum(sizes))
    assert len(made) < number + max(sizes, default=0) or not number


def test_time_given_is_used_until_all_is_made() -> None:
    lines = Unrolled(iter(written([3, 0, 2])))
    lines.make_for(0.0)
    assert not lines.whole
    lines.make_for(60.0)
    assert lines.whole
    assert len(lines) == 5


def test_a_line_beyond_the_last_is_refused() -> None:
    with pytest.raises(IndexError):
        Unrolled(iter(written([2])))[2]


async def test_a_page_half_made_looks_as_the_whole_one_but_for_the_number_of_lines(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "v")
        await pilot.pause()
        whole = seen(app).splitlines()
        sheaf = app.screen.query_one(Sheaf)
        monkeypatch.setattr(Sheaf, "all_at_once", False)
        monkeypatch.setattr("benchround.screens.page.PAUSE_S", 60.0)
        sheaf.rewrite()
        await pilot.pause()
        half = seen(app).splitlines()
        differing = [(a, b) for a, b in zip(whole, half, strict=True) if a != b]
        assert len(differing) == 1
        number, _, rest = differing[0][0].strip().partition(" ")
        assert number.isdigit()
        assert differing[0][1].strip() == rest
        while sheaf._making is not None:
            sheaf._make_on()
        await pilot.pause()
        assert seen(app).splitlines() == whole


async def test_a_page_half_made_is_leafed_through_to_its_end(
    desk: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Sheaf, "all_at_once", False)
    monkeypatch.setattr("benchround.screens.page.PAUSE_S", 60.0)
    app = app_on(desk)
    async with app.run_test() as pilot:
        await pilot.press("g", "v")
        await pilot.pause()
        assert front(app) == "review"
        sheaf = app.screen.query_one(Sheaf)
        before = -1
        while sheaf.top != before:
            before = sheaf.top
            await pilot.press("pagedown")
            await pilot.pause()
        assert "more lines" not in seen(app)
        assert sheaf.top == len(sheaf.written(sheaf.size.width)) - sheaf.size.height
