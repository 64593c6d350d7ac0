"""`benchround keys`: every key with its action's name, and a check of the grower's own keys."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from pathlib import Path

from benchround.core.errors import InputError
from benchround.plain import JsonValue
from benchround.screens.key import Key
from benchround.screens.key_choice import actions
from benchround.screens.key_names import name_of
from benchround.screens.key_ring import KeyRing
from benchround.screens.key_screens import SCREEN_WORDS
from benchround.shell.own_keys import keys_file, own_ring
from benchround.shell.saying import add_json, answer, remark

HELP = "list all keys with the names of their actions, and check keys of your own"
EXAMPLE = "benchround keys"
MORE_EXAMPLES = ("benchround keys --check", "benchround keys --as-file")
DETAILS = (
    "Keys of your own stand in keys.toml in your settings folder, a line for each action, such as "
    'tick = "x" or put-off = ["p", "f6"]. --as-file prints such a file with every action, each '
    "line switched off by a # until you take it away."
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("file", metavar="FILE", nargs="?", default="", help="another file of keys")
    parser.add_argument("--check", action="store_true", help="only say what is wrong in the file")
    parser.add_argument("--as-file", action="store_true", help="print a file to start from")
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """List, check or write out; faults go to standard error, and make it fail when asked for."""
    path = Path(given.file).expanduser() if given.file else keys_file()
    if given.file and not path.is_file():
        raise InputError(f"There is no file {path}: look at the name.")
    ring = own_ring(path)
    if given.check:
        answer(_checked(path, ring), _check_lines(path, ring), as_json=given.json)
        remark(ring.faults)
        return 1 if ring.faults else 0
    lines = _file_lines() if given.as_file else _lines(path, ring)
    answer(_value(path, ring), lines, as_json=given.json)
    remark(ring.faults)
    return 0


def _checked(path: Path, ring: KeyRing) -> JsonValue:
    return {"file": str(path), "there": path.exists(), "faults": list(ring.faults)}


def _check_lines(path: Path, ring: KeyRing) -> Iterator[str]:
    if not path.exists():
        yield f"There is no {path}: all keys are the usual ones."
    elif not ring.faults:
        yield f"{path}: every line holds."


def _lines(path: Path, ring: KeyRing) -> Iterator[str]:
    there = "" if path.exists() else " (not there yet)"
    yield f"Keys of your own: {path}{there}"
    yield ""
    rows = [(name, _keys(members), _tells(members)) for name, members in _by_name(ring)]
    wide, keys_wide = (max(len(row[at]) for row in rows) for at in (0, 1))
    for name, keys, tells in rows:
        yield f"{name:{wide}}  {keys:{keys_wide}}  {tells}"


def _file_lines() -> Iterator[str]:
    yield "# Keys of your own for benchround. Take the # away and change the key."
    yield "# Names of keys: a character, or ctrl+t, alt+t, f5, home, page down, space."
    for name, members in actions().items():
        keys = [name_of(key) for key in _main(members).keys]
        quoted = ", ".join(f'"{key}"' for key in keys)
        yield ""
        yield f"# {_tells(members)}"
        yield f"# {name} = {quoted if len(keys) == 1 else f'[{quoted}]'}"


def _by_name(ring: KeyRing) -> list[tuple[str, tuple[Key, ...]]]:
    return sorted(actions(ring.keys).items())


def _keys(members: tuple[Key, ...]) -> str:
    names = dict.fromkeys(name_of(key) for member in members for key in member.keys)
    return " or ".join(names)


def _tells(members: tuple[Key, ...]) -> str:
    return _main(members).tooltip


def _main(members: tuple[Key, ...]) -> Key:
    """The key an action has its name from."""
    return next((member for member in members if member.id == member.name), members[0])


def _value(path: Path, ring: KeyRing) -> JsonValue:
    found: list[JsonValue] = [
        {
            "action": name,
            "tells": _tells(members),
            "keys": [
                {
                    "keys": [name_of(key) for key in member.keys],
                    "screens": [SCREEN_WORDS[screen] for screen in member.where],
                }
                for member in members
            ],
        }
        for name, members in _by_name(ring)
    ]
    return {"file": str(path), "actions": found, "faults": list(ring.faults)}
