"""Decoding many documents gives what decoding each by itself gives, in the same words."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.record import NO_FIGURES, Record
from benchround.store.codec import decode, encode
from benchround.store.decoder import Decoder
from tests.store.builders import DAY, HOSTILE, Scribe

ODD_TEXTS = ("", "x", "\x1b", "a\nb", "\ud83c", "\u2028", "sown", "grafted")
ODD_DAYS = ("2027-04-03", "2027-02-30", "07:30", "07:30+02:00")
ODD_NUMBERS = (None, True, 0, 2**53 + 1, 10**400, 1.5, float("nan"), float("inf"))
ODD = st.sampled_from([*ODD_TEXTS, *ODD_DAYS, *ODD_NUMBERS])
VALUES = ODD | st.lists(ODD, max_size=2) | st.dictionaries(st.sampled_from("ab\x1b"), ODD)
CHANGES = st.dictionaries(
    st.sampled_from(["id", "day", "kind", "about", "figures", "note", "at", "machine", "new"]),
    VALUES,
    max_size=4,
)
GONE = st.sets(st.sampled_from(["id", "day", "kind", "figures"]), max_size=1)


def one_by_one(documents: list[dict[str, Any]]) -> tuple[list[str], list[str]]:
    records, refusals = [], []
    for document in documents:
        try:
            records.append(exact(decode(document)))
        except InputError as error:
            refusals.append(repr(error))
    return records, refusals


def exact(record: Record) -> str:
    """A record with the types of all its fields."""
    assert type(record) is Record
    return repr(record) + repr([type(getattr(record, name)) for name in Record.__slots__])


@settings(max_examples=300)
@given(st.lists(st.tuples(CHANGES, GONE), max_size=4))
def test_all_at_once_and_one_by_one_agree(cases: list[tuple[dict[str, Any], set[str]]]) -> None:
    plain = {"id": "r1", "day": "2027-04-03", "kind": "sown", "figures": {"a": 1}}
    documents = [
        {name: value for name, value in {**plain, **change}.items() if name not in gone}
        for change, gone in cases
    ]
    expected = one_by_one(documents)
    refusals: list[InputError] = []
    records = Decoder().records(documents, refusals.append)
    assert ([exact(record) for record in records], list(map(repr, refusals))) == expected


def test_hostile_text_comes_back_exactly() -> None:
    scribe = Scribe()
    records = tuple(scribe.record(note=text, figures={"x": text}) for text in HOSTILE)
    refusals: list[InputError] = []
    assert Decoder().records(map(encode, records), refusals.append) == records
    assert refusals == []


def test_words_that_come_again_are_held_once() -> None:
    made = [encode(record) for record in Scribe().records(2)]
    copies: list[dict[str, Any]] = [
        {**document, "about": "".join(["tomato", "-1"]), "machine": "".join(["lap", "top"])}
        for document in made
    ]
    del copies[1]["figures"]
    first, second = Decoder().records(copies, lambda error: None)
    assert copies[0]["about"] is not copies[1]["about"]
    assert first.about is second.about
    assert first.machine is second.machine
    assert first.day is second.day
    assert first.day == DAY
    assert second.figures is NO_FIGURES
