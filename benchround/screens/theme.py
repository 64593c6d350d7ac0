"""The looks as Textual wants them: its themes, and the styles of what lines say by role."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType

from rich.style import Style
from textual.theme import Theme

from benchround.screens.palettes import (
    LIGHT,
    PALETTES,
    PLAIN,
    ROLE_TEXT_STYLES,
    SIXTEEN,
    TEXT_STYLES,
    colours_of,
)
from benchround.screens.text import Role


def _theme(name: str) -> Theme:
    colours = PALETTES[name]
    return Theme(
        name=name,
        primary=colours["heading"],
        secondary=colours["held"],
        warning=colours["late"],
        error=colours["bad"],
        success=colours["done"],
        accent=colours["key"],
        foreground=colours["ink"],
        background=colours["ground"],
        surface=colours["field-ground"],
        panel=colours["field-ground"],
        dark=name != LIGHT,
        ansi=name == SIXTEEN,
        variables={
            **colours,
            **TEXT_STYLES[name],
            "ansi-background": colours["ground"],
            "ansi-foreground": colours["ink"],
        },
    )


THEMES: dict[str, Theme] = {name: _theme(name) for name in PALETTES}


@lru_cache(maxsize=8)
def role_styles(name: str) -> Mapping[Role, Style]:
    """The style of every role in a look."""
    return MappingProxyType({role: _role_style(name, role) for role in Role})


@lru_cache(maxsize=8)
def rule_style(name: str) -> Style:
    """The style of the rules between the parts of a screen, in a look."""
    colours = PALETTES[name]
    return Style.parse(f"{_rich_name(colours['rule'])} on {_rich_name(colours['ground'])}")


def _role_style(name: str, role: Role) -> Style:
    letters, ground = (_rich_name(colour) for colour in colours_of(name, role))
    said = ROLE_TEXT_STYLES.get(role, PLAIN)
    words = TEXT_STYLES[name].get(said, said)
    return Style.parse(f"{words} {letters} on {ground}".strip())


def _rich_name(colour: str) -> str:
    return colour.removeprefix("ansi_")
