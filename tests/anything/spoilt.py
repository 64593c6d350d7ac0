"""Good texts and files with something wrong in them: changed, cut off or doubled at random."""

from __future__ import annotations

from hypothesis import strategies as st

NASTY = "\0\x1b\x7f\u2028\ufeff\ud7ff\u202e\U0001f331{}[]()\"'\\,;:=|/#+-.0123456789eE \t\r\n<&%"


def spoilt_texts(good: str) -> st.SearchStrategy[str]:
    """Any text, and the good one with up to six places spoilt."""
    letter = st.one_of(st.sampled_from(NASTY), st.sampled_from(good), st.characters())
    change = st.tuples(st.integers(0, len(good)), st.integers(0, 8), st.text(letter, max_size=4))
    changed = st.lists(change, max_size=6).map(lambda changes: _changed(good, changes))
    return st.one_of(changed, st.text(letter, max_size=80), st.text(max_size=40))


def _changed(good: str, changes: list[tuple[int, int, str]]) -> str:
    for at, gone, new in changes:
        good = good[:at] + new + good[at + gone :]
    return good


def spoilt_bytes(good: bytes) -> st.SearchStrategy[bytes]:
    """Any bytes, and the good ones with up to six places spoilt or the end cut off."""
    change = st.tuples(st.integers(0, len(good)), st.integers(0, 40), st.binary(max_size=4))
    changed = st.lists(change, max_size=6).map(lambda changes: _changed_bytes(good, changes))
    cut = st.integers(0, len(good)).map(lambda end: good[:end])
    return st.one_of(changed, cut, st.binary(max_size=200))


def _changed_bytes(good: bytes, changes: list[tuple[int, int, bytes]]) -> bytes:
    for at, gone, new in changes:
        good = good[:at] + new + good[at + gone :]
    return good
