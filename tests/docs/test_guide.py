"""The guide tells the truth: pictures as drawn today, keys that there are, commands that parse."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from benchround.cli import COMMANDS
from benchround.screens.key import Key
from benchround.screens.key_names import name_of
from benchround.screens.keys import KEYS
from benchround.shell.parsers import module_of, parse, parser_of
from tests.screens.guide import BLOCK, DOCS, KEY_BLOCK, SIZE, key_names, pages, redrawn
from tests.screens.guide_pictures import PICTURES, Printed

GUIDE = sorted((DOCS / "guide").glob("*.md"))
SHOWN = sorted(page for page in pages() if (DOCS / page).exists())
KEY_NAMES = {name_of(name) for key in KEYS for name in key.keys} | {key.shown for key in KEYS}
NO_KEYS = {"!", "!!"}
"""What stands in the same type and is no key: marks of the round."""
OPTION = re.compile(r"--[a-z-]+")


def spans(path: Path) -> list[str]:
    """What stands between backticks in a page, pictures left out."""
    text = BLOCK.sub("", path.read_text(encoding="utf-8"))
    return re.findall(r"`([^`\n]+)`", text)


def commands() -> list[tuple[str, str]]:
    """Every command line of the guide, with its page."""
    return [(path.name, span) for path in GUIDE for span in spans(path) if is_command(span)]


def is_command(span: str) -> bool:
    """Whether it is a command line; the program's name alone opens the screens."""
    return span.startswith("benchround ")


def test_there_is_a_picture_for_each_mark_and_a_mark_for_each_picture() -> None:
    marked = [
        (page, name)
        for page in SHOWN
        for _, name, _ in BLOCK.findall((DOCS / page).read_text(encoding="utf-8"))
    ]
    assert sorted(marked) == sorted((picture.page, name) for name, picture in PICTURES.items())
    assert sorted(SHOWN) == sorted(pages())


@pytest.mark.parametrize("page", SHOWN)
def test_regression_of_the_pictures_and_keys_of_a_page(page: str) -> None:
    text = (DOCS / page).read_text(encoding="utf-8")
    name = Path(page).name
    assert text == redrawn(text), f"draw it anew: python -m tests.screens.guide {name}"


@pytest.mark.parametrize("page", SHOWN)
def test_no_picture_is_larger_than_the_least_terminal(page: str) -> None:
    text = (DOCS / page).read_text(encoding="utf-8")
    for whole, name in ((found[0], found[2]) for found in BLOCK.finditer(text)):
        lines = whole.split("```\n")[1].splitlines()
        assert max(map(len, lines)) <= SIZE[0], name
        assert len(lines) <= SIZE[1], name
        assert len(lines) == SIZE[1] or isinstance(PICTURES[name], Printed), name


@pytest.mark.parametrize("path", GUIDE, ids=lambda path: path.name)
def test_every_key_named_is_in_the_list_of_keys(path: Path) -> None:
    named = {span for span in spans(path) if not is_command(span)} - {"benchround"} - NO_KEYS
    named = {span for span in named if not OPTION.fullmatch(span)}
    assert named, "a page of the guide names the keys of its job"
    assert not named - KEY_NAMES


def test_keys_that_lead_to_a_picture_are_written_as_in_the_guide() -> None:
    assert key_names("g d down*2 'a 1'") == ["g", "d", "down", "down", "a", "space", "1"]
    known = {name for key in KEYS for name in key.keys}
    for name, picture in PICTURES.items():
        if not isinstance(picture, Printed):
            typed = re.sub(r"'[^']*'", "", picture.keys)
            assert set(key_names(typed)) <= known | {"slash"}, name


@pytest.mark.parametrize(("page", "line"), commands())
def test_every_command_line_parses(page: str, line: str) -> None:
    name, *words = shlex.split(line)[1:]
    assert name in COMMANDS, page
    parse(parser_of(name, module_of(name)), words)


@pytest.mark.parametrize("path", GUIDE, ids=lambda path: path.name)
def test_a_page_says_what_it_writes_and_how_to_undo(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert text.startswith("# ")
    assert "**What it writes.**" in text
    assert "**To undo.**" in text
    own = BLOCK.sub("", text)
    assert 15 <= own.count("\n") <= 60, "short pages"
    assert max(map(len, KEY_BLOCK.sub("", own).splitlines())) <= 130


def test_every_screen_to_go_to_has_a_page_that_names_its_letter() -> None:
    told = " ".join(" ".join(path.read_text(encoding="utf-8").split()) for path in GUIDE)
    going: list[Key] = [key for key in KEYS if key.where == ("go to",) and len(key.keys[0]) == 1]
    left = {key.keys[0] for key in going if f"`g`, then `{key.keys[0]}`" not in told}
    assert len(going) > 10
    assert left <= {"r", "b", "s", "f"}, "these have keys of their own on the round"
