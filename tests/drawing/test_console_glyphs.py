"""A console without windows has the 256 letters of code page 437, and pictures keep to them."""

from __future__ import annotations

from dataclasses import fields

import pytest

from benchround.drawing.glyphs import ASCII, CONSOLE, UNICODE, Glyphs
from benchround.screens.pictures import glyphs
from benchround.screens.text import plain_letters_only


def signs(of: Glyphs) -> str:
    values = (getattr(of, field.name) for field in fields(of) if field.name != "name")
    return "".join("".join(value) for value in values if not isinstance(value, bool))


def lacking(of: Glyphs) -> str:
    """Signs that are not in code page 437, by the table of Python's codec cp437 (read)."""
    return "".join(sorted({sign for sign in signs(of) if not sign.encode("cp437", "ignore")}))


def test_the_console_has_every_sign_of_its_set() -> None:
    assert lacking(CONSOLE) == lacking(ASCII) == ""
    assert "▎" in lacking(UNICODE)
    assert "◂" in lacking(UNICODE)


@pytest.mark.parametrize(
    ("term", "lang", "wanted"),
    [
        ("linux", "en_GB.UTF-8", CONSOLE),
        ("linux", "C", ASCII),
        ("xterm-256color", "en_GB.UTF-8", UNICODE),
        ("screen", "en_GB.UTF-8", UNICODE),
    ],
)
def test_the_set_follows_the_terminal(
    term: str, lang: str, wanted: Glyphs, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("LC_ALL", "LC_CTYPE"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("TERM", term)
    monkeypatch.setenv("LANG", lang)
    plain_letters_only.cache_clear()
    try:
        assert glyphs() is wanted
    finally:
        plain_letters_only.cache_clear()
