from __future__ import annotations

import json
import math
from datetime import UTC, date, datetime, time
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.core.errors import InputError
from benchround.core.record import Cause, Figure, Kind, Record
from benchround.store.bounds import LONGEST_FIGURE_TEXT, LONGEST_NOTE, MOST_FIGURES
from benchround.store.codec import decode, encode
from benchround.store.errors import UnknownKindError
from tests.store.builders import DAY, HOSTILE

# Every character but control characters and half characters, line breaks and tabs allowed.
LINES = st.text(st.characters(exclude_categories=["Cc", "Cs"]) | st.sampled_from("\n\t"))
NAMES = st.text(st.characters(exclude_categories=["Cc", "Cs"]), max_size=60)
FIGURES = st.dictionaries(
    NAMES,
    LINES
    | st.booleans()
    | st.integers(-(2**53), 2**53)
    | st.floats(allow_nan=False, allow_infinity=False),
    max_size=8,
)
RECORDS = st.builds(
    Record,
    id=NAMES.filter(bool),
    day=st.dates(),
    kind=st.sampled_from(Kind),
    about=NAMES,
    figures=FIGURES,
    note=LINES,
    at=st.none() | st.times(),
    machine=NAMES,
)


def through_disk(record: Record) -> Record:
    text = json.dumps(encode(record), ensure_ascii=False)
    return decode(json.loads(text.encode().decode()))


def exact(record: Record) -> tuple[object, ...]:
    figures = {name: (type(value), value) for name, value in record.figures.items()}
    return (record.id, record.day, record.kind, record.about, figures, record.note, record.at)


@given(RECORDS)
def test_a_record_comes_back_from_disk_the_same_to_the_type_of_each_figure(record: Record) -> None:
    back = through_disk(record)
    assert back == record
    assert exact(back) == exact(record)


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_comes_back_exactly(text: str) -> None:
    one_line = text.replace("\n", " ").replace("\t", " ")
    record = Record("r1", DAY, Kind.NOTED, one_line, {one_line: text}, text, None, one_line)
    assert through_disk(record) == record
    assert through_disk(record).note == text


def test_empty_fields_are_left_out() -> None:
    assert encode(Record("r1", DAY, Kind.LOOKED)) == {
        "id": "r1",
        "day": "2027-04-03",
        "kind": "looked",
    }


def test_a_figure_that_is_nought_or_no_stays() -> None:
    figures: dict[str, Figure] = {"count": 0, "share": 0.0, "open": False, "why": ""}
    assert encode(Record("r1", DAY, Kind.LOOKED, figures=figures))["figures"] == figures


def test_dates_and_times_are_written_as_iso_8601_gives_them() -> None:  # source: ISO 8601
    record = Record("r1", date(987, 1, 2), Kind.LOOKED, at=time(7, 5))
    assert encode(record)["day"] == "0987-01-02"
    assert encode(record)["at"] == "07:05"


def test_a_cause_is_written_as_plain_text() -> None:
    document = encode(Record("r1", DAY, Kind.LOST, figures={"cause": Cause.SLUG}))
    assert type(document["figures"]["cause"]) is str
    assert document["figures"]["cause"] == "slug"


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("id", ""),
        ("id", "x" * 65),
        ("id", "a\nb"),
        ("about", "x" * 201),
        ("about", "a\nb"),
        ("machine", "a\x00b"),
        ("note", "x" * (LONGEST_NOTE + 1)),
        ("note", "\x1b[31mred"),
        ("note", "line\r\n"),
        ("note", "\x7f"),
        ("note", "\x9b31m"),
        ("note", "half a character \ud83c"),
        ("note", 5),
        ("day", datetime(2027, 4, 3, 7, 30)),
        ("day", "2027-04-03"),
        ("at", time(7, 30, tzinfo=UTC)),
        ("figures", {"x": math.nan}),
        ("figures", {"x": math.inf}),
        ("figures", {"x": 2**53 + 1}),
        ("figures", {"x": 10**5000}),
        ("figures", {"x": None}),
        ("figures", {"x": [1, 2]}),
        ("figures", {"x": "\x1b"}),
        ("figures", {"x": "y" * (LONGEST_FIGURE_TEXT + 1)}),
        ("figures", {"x\n": 1}),
        ("figures", {str(n): n for n in range(MOST_FIGURES + 1)}),
    ],
)
def test_what_cannot_be_kept_is_refused(field: str, value: Any) -> None:
    fields: dict[str, Any] = {"id": "r1", "day": DAY, "kind": Kind.NOTED, field: value}
    with pytest.raises(InputError):
        encode(Record(**fields))


def test_a_refusal_says_which_character_and_where() -> None:
    with pytest.raises(InputError, match=r"the note .* \(U\+001B, at place 5\); take it out"):
        encode(Record("r1", DAY, Kind.NOTED, note="red \x1b[31m"))


def test_a_note_of_the_longest_length_is_kept() -> None:
    record = Record("r1", DAY, Kind.NOTED, note="ß" * LONGEST_NOTE)
    assert through_disk(record).note == "ß" * LONGEST_NOTE


@pytest.mark.parametrize(
    "change",
    [
        {"id": None},
        {"id": ""},
        {"id": 7},
        {"day": None},
        {"day": "2027-02-30"},
        {"day": "soon"},
        {"day": ["2027-04-03"]},
        {"kind": ["sown"]},
        {"about": 5},
        {"note": None},
        {"note": "\x1b]0;title\x07"},
        {"machine": {}},
        {"at": "half past seven"},
        {"at": "07:30+02:00"},
        {"figures": []},
        {"figures": {"x": None}},
        {"figures": {"x": [1]}},
        {"figures": {"x": math.nan}},
        {"figures": {"x": math.inf}},
        {"figures": {"x": 10**400}},
        {"figures": {"x": "\x1b"}},
        {"figures": {"\x1b": 1}},
    ],
)
def test_a_document_that_is_no_record_is_refused_by_name(change: dict[str, Any]) -> None:
    document = {"id": "r1", "day": "2027-04-03", "kind": "sown", **change}
    with pytest.raises(InputError, match="cannot be read"):
        decode(document)


@pytest.mark.parametrize("missing", ["id", "day", "kind"])
def test_a_document_without_a_needed_field_is_refused(missing: str) -> None:
    document = {"id": "r1", "day": "2027-04-03", "kind": "sown"}
    del document[missing]
    with pytest.raises(InputError):
        decode(document)


def test_an_unknown_kind_is_told_apart() -> None:
    with pytest.raises(UnknownKindError, match="'grafted' need a newer"):
        decode({"id": "r1", "day": "2027-04-03", "kind": "grafted"})


def test_fields_of_a_newer_program_are_passed_over() -> None:
    document = {"id": "r1", "day": "2027-04-03", "kind": "sown", "photo": "a.jpg"}
    assert decode(document) == Record("r1", DAY, Kind.SOWN)


def test_figures_read_from_disk_cannot_be_changed() -> None:
    document = {"id": "r1", "day": "2027-04-03", "kind": "sown", "figures": {"count": 3}}
    with pytest.raises(TypeError):
        decode(document).figures["count"] = 4  # type: ignore[index]  # the point of the test
