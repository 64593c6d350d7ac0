"""The journal's lines: whole or not at all, whatever happened to the file."""

from __future__ import annotations

import json
import zlib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchround.store.codec import encode
from benchround.store.journal import line_of, parse_journal
from benchround.store.pages import page_from
from tests.store.builders import HOSTILE, Scribe

MARK = (0, 0, 0)
NAME = "laptop-2027-04-001.jsonl"

TEXT = st.text(
    st.sampled_from('a"\\\\{}[],: \n\t\r\x1b\x7fé🌱\u2028\u202e\ufeff\ufffd0'), max_size=12
)
SCALARS = st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | TEXT
JSON = SCALARS | st.lists(SCALARS, max_size=3) | st.dictionaries(TEXT, SCALARS, max_size=3)
ACTIONS = st.lists(st.lists(st.dictionaries(TEXT, JSON, max_size=3), max_size=3), max_size=4)


def some_actions(sizes: tuple[int, ...] = (2, 1, 3)) -> list[list[dict[str, Any]]]:
    scribe = Scribe()
    return [[encode(record) for record in scribe.records(size)] for size in sizes]


def together(actions: list[list[dict[str, Any]]]) -> tuple[dict[str, Any], ...]:
    return tuple(document for action in actions for document in action)


@given(ACTIONS)
def test_what_was_written_is_read(actions: list[list[dict[str, Any]]]) -> None:
    found = parse_journal(b"".join(map(line_of, actions)))
    assert found.documents == together(actions)
    assert (found.damaged, found.unfinished) == (0, False)


def test_a_line_is_json_with_the_crc_32_of_its_records() -> None:
    action = [{"id": "a", "note": text} for text in HOSTILE]
    line = line_of(action)
    assert line.count(b"\n") == 1
    read = json.loads(line)
    assert read["records"] == action
    payload = line[line.index(b"[") : line.rindex(b"]") + 1]
    # Source: zlib of the standard library, CRC-32 as in ISO 3309.
    assert int(read["check"], 16) == zlib.crc32(payload)


def test_a_journal_broken_off_anywhere_holds_the_finished_actions() -> None:
    actions = some_actions()
    lines = [line_of(action) for action in actions]
    data = b"".join(lines)
    ends = [sum(map(len, lines[:n])) for n in range(len(lines) + 1)]
    for length in range(len(data) + 1):
        found = parse_journal(data[:length])
        whole = sum(1 for end in ends[1:] if end - 1 <= length)  # only the line end may be missing
        assert found.documents == together(actions[:whole])
        assert found.damaged == 0
        assert found.unfinished == (length not in ends)


@pytest.mark.parametrize("tail", [b"\0", b"\0" * 4096, b"{", b"\xff\xfe", b" "])
def test_what_stands_behind_the_last_line_end_was_never_told(tail: bytes) -> None:
    actions = some_actions()
    found = parse_journal(b"".join(map(line_of, actions)) + tail)
    assert (found.documents, found.damaged, found.unfinished) == (together(actions), 0, True)


def test_no_byte_can_change_without_its_line_being_told() -> None:
    actions = some_actions((1, 2))
    data = b"".join(map(line_of, actions))
    for place in range(len(data) - 1):
        for byte in (0, ord("x"), data[place] ^ 1, 0xFF):
            if byte != data[place] and (data[place], byte) != (ord("\n"), ord("\r")):
                hurt = data[:place] + bytes([byte]) + data[place + 1 :]
                assert parse_journal(hurt).damaged > 0


def test_of_a_damaged_line_the_other_records_and_lines_are_read() -> None:
    scribe = Scribe()
    records = scribe.records(6)
    data = b"".join(line_of(map(encode, records[n : n + 3])) for n in (0, 3))
    for garble in (b"\xff", b'"', b"\0", b'", "figures": {"id": "x"}, "'):
        page = page_from(NAME, MARK, data.replace(b"look 1", garble))
        assert page.fault == "a line in it is not as written"
        assert page.records == (records[0], *records[2:])
        assert page.remarks == ()


def test_text_that_looks_like_a_record_is_not_taken_for_one() -> None:
    scribe = Scribe()
    trap = '{"id": "trap", "day": "2027-04-03", "kind": "noted"}'
    records = (scribe.record(note=trap, figures={"x": trap}), scribe.record(note="plain"))
    hurt = line_of(map(encode, records)).replace(b"plain", b"p")
    page = page_from(NAME, MARK, hurt)
    assert [record.id for record in page.records] == [record.id for record in records]


def test_a_replaced_character_is_not_made_up_in_a_damaged_line() -> None:
    scribe = Scribe()
    records = (scribe.record(note="real \ufffd sign"), scribe.record(note="garble here"))
    data = line_of(map(encode, records))
    changed = page_from(NAME, MARK, data.replace(b"here", b"gone"))
    assert changed.records[0] == records[0]
    broken = page_from(NAME, MARK, data.replace(b"garble", b"\xe9"))
    assert all("\ufffd here" not in record.note for record in broken.records)


def test_line_ends_of_another_system_and_empty_lines_are_no_damage() -> None:
    actions = some_actions()
    data = b"".join(map(line_of, actions)).replace(b"\n", b"\r\n")
    for text in (data, b"\xef\xbb\xbf" + data, data + b"\r\n\n"):
        found = parse_journal(text)
        assert (found.documents, found.damaged) == (together(actions), 0)


def test_both_sides_of_a_git_merge_are_read() -> None:
    ours, theirs = (line_of(map(encode, Scribe(name).records(2))) for name in ("a", "b"))
    data = b"<<<<<<< HEAD\n" + ours + b"=======\n" + theirs + b">>>>>>> other\n"
    page = page_from(NAME, MARK, data)
    assert page.fault == "it holds both sides of an unfinished git merge"
    assert len(page.records) == 4


def test_an_empty_journal_is_sound() -> None:
    page = page_from(NAME, MARK, b"")
    assert (page.records, page.fault, page.unfinished) == ((), "", False)


@pytest.mark.parametrize("data", [b"rubbish\n", b"\0\n", b"[]\n", b"[" * 10**5 + b"\n", b"{}\n"])
def test_what_is_no_journal_is_a_fault_without_records(data: bytes) -> None:
    page = page_from(NAME, MARK, data)
    assert page.records == ()
    assert page.fault != ""


def test_a_line_whose_sum_is_right_but_that_holds_no_records_is_damage() -> None:
    for payload in (b"5", b'["x"]', b"{}", b"[" * 10**5):
        line = b'{"check": "%08x", "records": %b}\n' % (zlib.crc32(payload), payload)
        assert parse_journal(line).damaged == 1
