"""Colours, named by what they mean; measured for contrast in a test.

Three looks: dark, light, and one of the sixteen colours every terminal has. No state is told by
colour alone: the word comes first, then a mark. Where few colours are to be had, the cursor is told
by reversing and the worst states by bold.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from os import environ

from benchround.core.frozen import dataclass
from benchround.screens.text import Role

DARK, LIGHT, SIXTEEN = "dark", "light", "sixteen"

Colours = Mapping[str, str]

GROUNDS: Mapping[str, str] = {"cursor": "cursor-ground", "field": "field-ground"}
"""Roles that stand on a ground of their own; all others stand on `ground`."""

PALETTES: Mapping[str, Colours] = {
    DARK: {
        "ground": "#12181a",
        "ink": "#e4e2d6",
        "quiet": "#a8b1a9",
        "heading": "#9ed8b0",
        "overdue": "#ff9f8a",
        "late": "#f6b56c",
        "due": "#e4e2d6",
        "held": "#9cc7f2",
        "early": "#a8b1a9",
        "done": "#b4dc8c",
        "bad": "#ff9f8a",
        "caution": "#f2cf6e",
        "key": "#e8cf8c",
        "cursor": "#10150f",
        "cursor-ground": "#d8cb93",
        "field": "#f4f1e6",
        "field-ground": "#2a363b",
        "caret": "#2a363b",
        "caret-ground": "#f4f1e6",
        "rule": "#7d8a84",
    },
    LIGHT: {
        "ground": "#f8f5ec",
        "ink": "#23261f",
        "quiet": "#565c51",
        "heading": "#1d5c33",
        "overdue": "#9b2313",
        "late": "#844800",
        "due": "#23261f",
        "held": "#1c4d8c",
        "early": "#565c51",
        "done": "#2a5e18",
        "bad": "#9b2313",
        "caution": "#735000",
        "key": "#6a3e00",
        "cursor": "#fffdf4",
        "cursor-ground": "#30513c",
        "field": "#1b1f19",
        "field-ground": "#e3decb",
        "caret": "#e3decb",
        "caret-ground": "#1b1f19",
        "rule": "#6d7368",
    },
    SIXTEEN: {
        "ground": "ansi_black",
        "ink": "ansi_white",
        "quiet": "ansi_white",
        "heading": "ansi_bright_green",
        "overdue": "ansi_bright_red",
        "late": "ansi_bright_yellow",
        "due": "ansi_white",
        "held": "ansi_bright_cyan",
        "early": "ansi_white",
        "done": "ansi_bright_green",
        "bad": "ansi_bright_red",
        "caution": "ansi_bright_yellow",
        "key": "ansi_bright_yellow",
        "cursor": "ansi_white",
        "cursor-ground": "ansi_black",
        "field": "ansi_bright_white",
        "field-ground": "ansi_black",
        "caret": "ansi_white",
        "caret-ground": "ansi_black",
        "rule": "ansi_white",
    },
}

PLAIN = ""
TEXT_STYLES: Mapping[str, Colours] = {
    DARK: {
        "cursor-style": "bold",
        "field-style": PLAIN,
        "worst-style": "bold",
        "caret-style": PLAIN,
    },
    LIGHT: {
        "cursor-style": "bold",
        "field-style": PLAIN,
        "worst-style": "bold",
        "caret-style": PLAIN,
    },
    SIXTEEN: {
        "cursor-style": "reverse",
        "field-style": "underline",
        "worst-style": "bold",
        "caret-style": "reverse",
    },
}

FEW_COLOURS = ("linux", "vt", "ansi", "dumb", "xterm-16color", "screen-16color", "xterm-mono")
"""Beginnings of names of terminals that have sixteen colours or fewer."""


ROLE_TEXT_STYLES: Mapping[Role, str] = {
    Role.STRONG: "bold",
    Role.HEADING: "bold",
    Role.BAD: "bold",
    Role.KEY: "bold",
    Role.OVERDUE: "worst-style",
    Role.LATE: "worst-style",
    Role.CURSOR: "cursor-style",
    Role.FIELD: "field-style",
    Role.CARET: "caret-style",
}
"""How a role is set apart besides its colour: a style, or the name of one in the theme."""


def colours_of(name: str, role: Role) -> tuple[str, str]:
    """The colour of a role's letters and of the ground they stand on."""
    colours = PALETTES[name]
    if role is Role.CARET:
        return colours["caret"], colours["caret-ground"]
    letters = colours["ink"] if role is Role.STRONG else colours[str(role)]
    return letters, colours[GROUNDS.get(str(role), "ground")]


def nothing_kept(look: str) -> None:
    """A look that is kept nowhere."""


@dataclass(frozen=True, slots=True)
class LookKept:
    """The look a computer was given; empty for none yet.

    Attributes:
        keep: keeps another look for the next time.
    """

    look: str = ""
    keep: Callable[[str], None] = nothing_kept

    def with_look(self, look: str) -> LookKept:
        """The same with another look."""
        return LookKept(look, self.keep)


def fitting(chosen: str = "", env: Mapping[str, str] = environ) -> str:
    """The name of the look to begin with.

    Args:
        chosen: the grower's own choice, "dark" or "light"; empty for none.
        env: the environment; TERM, COLORTERM and NO_COLOR are looked at.
    """
    if "NO_COLOR" in env or not many_colours(env):
        return SIXTEEN
    return chosen if chosen in (DARK, LIGHT) else DARK


def one_look(env: Mapping[str, str] = environ) -> str:
    """Why light and dark cannot be chosen between.

    Args:
        env: the environment; NO_COLOR is looked at.
    """
    if "NO_COLOR" in env:
        return "Colours are switched off by NO_COLOR: there is one look."
    return "This terminal has sixteen colours at most: there is one look."


def many_colours(env: Mapping[str, str] = environ) -> bool:
    """Whether the terminal has more than sixteen colours."""
    term = env.get("TERM", "").lower()
    if term.startswith(FEW_COLOURS):
        return False
    if env.get("COLORTERM", "").lower() in ("truecolor", "24bit"):
        return True
    return "256color" in term or term.startswith(("xterm-kitty", "alacritty", "foot", "wezterm"))
