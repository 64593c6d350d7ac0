"""The file of the grower's own keys: finding it, reading it line by line, changing one line.

It lies in the user's settings folder, because keys belong to hands and a keyboard, not to a season.
Whatever is wrong in it is told with its line; reading it never fails.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator, Sequence
from contextlib import suppress
from pathlib import Path

from benchround.core.errors import SeasonError
from benchround.screens.key_ring import KeyRing
from benchround.screens.keys import USUAL

MOST_BYTES = 65_536
HEAD = "# Own keys for benchround: action = \"key\". 'benchround keys' lists the actions.\n"
MENDING = 'write action = "key", such as tick = "x"'
HEADING = r"\s*\[+\s*[\"']?([\w.-]+)"
NAME = r"""\s*(?:"([^"]*)"|'([^']*)'|([A-Za-z0-9_-]+))\s*="""


def keys_file() -> Path:
    """Where the grower's own keys are, by the system's custom; it need not be there."""
    from platformdirs import user_config_path

    return user_config_path("benchround", appauthor=False) / "keys.toml"


def own_ring(path: Path | None = None) -> KeyRing:
    """The keys with the grower's own in their places; faults of the file are among its faults.

    Args:
        path: the file; None: the usual one.
    """
    found = path or keys_file()
    try:
        if not found.exists():
            return USUAL
        text = _read(found)
    except (OSError, UnicodeDecodeError) as error:
        return KeyRing(USUAL.keys, faults=(f"{found} cannot be read ({_why(error)}).",))
    return ring_of(text, str(found))


def ring_of(text: str, name: str) -> KeyRing:
    """The keys a text of the file asks for.

    Args:
        text: what stands in the file.
        name: the file, for what is told.
    """
    from benchround.screens.key_choice import Entry, choose  # whoever has no file starts without

    entries: list[Entry] = []
    faults: list[str] = []
    for where, action, value in _values(text, name, faults):
        keys = [value] if isinstance(value, str) else value
        if isinstance(value, dict):
            faults.append(f"{where}: the heading [{action}] has no place here: take it out.")
        elif not isinstance(keys, list) or not all(isinstance(key, str) for key in keys):
            faults.append(f"{where}: '{action}' is given no key's name: {MENDING}.")
        else:
            entries.append(Entry(where, action, tuple(keys)))
    return choose(entries, faults)


def _read(path: Path) -> str:
    if not path.is_file():
        raise OSError("it is no file")
    if path.stat().st_size > MOST_BYTES:
        raise OSError("it is too long for a file of keys")
    return path.read_text("utf-8-sig")


def _why(error: OSError | UnicodeDecodeError) -> str:
    if isinstance(error, UnicodeDecodeError):
        return "it is not written in UTF-8"
    return error.strerror or str(error)


def _values(text: str, name: str, faults: list[str]) -> Iterator[tuple[str, str, object]]:
    """Every action with where it stands and what it is given; what cannot be read is a fault."""
    import tomllib

    lines = text.splitlines()
    try:
        said = tomllib.loads(text)
    except tomllib.TOMLDecodeError:
        yield from _line_by_line(lines, name, faults)
        return
    where = {action: number for number, action in _starts(lines)}
    for action, value in said.items():
        yield f"{name}, line {where.get(action, 1)}", action, value


def _line_by_line(
    lines: Sequence[str], name: str, faults: list[str]
) -> Iterator[tuple[str, str, object]]:
    """Read a file in which something is not TOML, so that its other lines hold."""
    import tomllib

    for number, line in enumerate(lines, 1):
        where = f"{name}, line {number}"
        try:
            said = tomllib.loads(line)
        except tomllib.TOMLDecodeError:
            faults.append(f"{where}: this cannot be understood: {MENDING}.")
            continue
        for action, value in said.items():
            yield where, action, value


def _starts(lines: Sequence[str]) -> Iterator[tuple[int, str]]:
    for number, line in enumerate(lines, 1):
        found = re.match(NAME, line)
        heading = re.match(HEADING, line)
        if found:
            yield number, next(group for group in found.groups() if group is not None)
        elif heading:
            yield number, heading.group(1)


def with_keys(text: str, action: str, keys: Sequence[str]) -> str:
    """The text of the file with other keys for one action; all other lines stay as they are.

    Args:
        text: what stands in the file; empty where there is none yet.
        action: the action's name.
        keys: names of keys; none: its usual ones again.
    """
    kept = _without(text.splitlines(), action)
    line = [f"{action} = {_toml(keys)}"] if keys else []
    head = [] if kept or text.strip() else HEAD.splitlines()
    ends = next((n for n, said in enumerate(kept) if re.match(HEADING, said)), len(kept))
    return "\n".join([*head, *kept[:ends], *line, *kept[ends:], ""])


def _without(lines: Sequence[str], action: str) -> list[str]:
    """The lines but those that give keys to an action, which may be more than one."""
    kept: list[str] = []
    leaving = False
    for line in lines:
        found = re.match(NAME, line)
        if found:
            leaving = action in found.groups()
        elif line.lstrip().startswith("#") or not line.strip():
            leaving = False
        if not leaving:
            kept.append(line)
    return kept


def _toml(keys: Sequence[str]) -> str:
    written = [_text(key) for key in keys]
    return written[0] if len(written) == 1 else f"[{', '.join(written)}]"


def _text(key: str) -> str:
    escaped = key.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def text_of(path: Path) -> str:
    """What stands in the file; empty where there is none.

    Raises:
        SeasonError: it is there and cannot be read.
    """
    try:
        return _read(path) if path.exists() else ""
    except (OSError, UnicodeDecodeError) as error:
        raise SeasonError(f"{path} cannot be read ({_why(error)}): mend it first.") from None


def write_keys(path: Path, text: str) -> None:
    """Write the file whole, or leave it as it was.

    Raises:
        SeasonError: it could not be written; nothing changed.
    """
    beside = path.with_name(f"{path.name}.{os.getpid()}.new")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        beside.write_text(text, "utf-8")
        beside.replace(path)
    except OSError as error:
        with suppress(OSError):
            beside.unlink()
        raise SeasonError(f"{path} could not be written: {_why(error)}.") from None
