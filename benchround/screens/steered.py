"""Lines of words as they are sent to a terminal, for what is drawn before Textual is read."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from os import environ

from benchround.screens.palettes import (
    PALETTES,
    PLAIN,
    ROLE_TEXT_STYLES,
    TEXT_STYLES,
    colours_of,
    fitting,
)
from benchround.screens.text import Role

RULE = None
"""Stands in for the role of the rules between the parts of a screen."""
Drawn = Sequence[tuple[str, Role | None]]
"""One line of the terminal, all its columns: words by role."""
Shade = Callable[[str, int], str]
"""A colour of a palette as figures of an escape sequence; 0 for letters, 10 for the ground."""

TRUE_COLOURS = ("truecolor", "24bit")
"""What COLORTERM says where any colour can be had; 256 are taken for granted elsewhere."""
ATTRIBUTES = {PLAIN: "", "bold": ";1", "underline": ";4", "reverse": ";7"}
NAMES = ("black", "red", "green", "yellow", "blue", "magenta", "cyan", "white")
"""The eight colours in the order of their numbers (ECMA-48, SGR 30 to 37)."""
LEVELS = (0, 95, 135, 175, 215, 255)
"""Red, green and blue of the 6 x 6 x 6 cube of xterm's 256 colours (from memory)."""


def steered(picture: Sequence[Drawn], chosen: str, env: Mapping[str, str] = environ) -> str:
    """A picture as it is sent to a terminal, every line at its place and in its colours.

    Args:
        picture: every line of the terminal.
        chosen: the look the grower chose; empty for none.
        env: TERM, COLORTERM and NO_COLOR are looked at.
    """
    look, shade = fitting(chosen, env), _shade(env)
    signs = {role: _sign(look, role, shade) for role in (*Role, RULE)}
    parts: list[str] = []
    for number, drawn in enumerate(picture, start=1):
        parts.append(f"\x1b[{number};1H")
        parts += [f"{signs[role]}{words}" for words, role in drawn]
    return f"{''.join(parts)}\x1b[0m"


def _shade(env: Mapping[str, str]) -> Shade:
    if "NO_COLOR" in env:
        return lambda colour, ground: ""
    if env.get("COLORTERM", "").lower() in TRUE_COLOURS:
        return _true
    return _of_256


def _sign(look: str, role: Role | None, shade: Shade) -> str:
    """The escape sequence that begins a role."""
    if role is RULE:
        letters, ground, said = PALETTES[look]["rule"], PALETTES[look]["ground"], PLAIN
    else:
        letters, ground = colours_of(look, role)
        said = ROLE_TEXT_STYLES.get(role, PLAIN)
    set_apart = ATTRIBUTES[TEXT_STYLES[look].get(said, said)]
    return f"\x1b[0{set_apart}{shade(letters, 0)}{shade(ground, 10)}m"


def _named(colour: str, ground: int) -> str:
    name = colour.removeprefix("ansi_")
    bright = name.startswith("bright_")
    return f";{(90 if bright else 30) + ground + NAMES.index(name.removeprefix('bright_'))}"


def _parts(colour: str) -> tuple[int, ...]:
    """Red, green and blue of a colour such as #12181a, 0 to 255."""
    return tuple(int(colour[at : at + 2], 16) for at in (1, 3, 5))


def _true(colour: str, ground: int) -> str:
    if not colour.startswith("#"):
        return _named(colour, ground)
    return f";{38 + ground};2;{';'.join(map(str, _parts(colour)))}"


def _of_256(colour: str, ground: int) -> str:
    """The nearest of the cube."""
    if not colour.startswith("#"):
        return _named(colour, ground)
    red, green, blue = (
        min(range(len(LEVELS)), key=lambda step: abs(LEVELS[step] - part))
        for part in _parts(colour)
    )
    return f";{38 + ground};5;{16 + 36 * red + 6 * green + blue}"
