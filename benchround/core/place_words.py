"""What may be said of a place, and the code a place gets from its name."""

from __future__ import annotations

import hashlib
import re
import unicodedata
from collections.abc import Iterable, Mapping
from types import MappingProxyType

from benchround.core.errors import InputError
from benchround.core.near_names import near_words, shown
from benchround.core.record_figures import FigureRule, Form
from benchround.core.site import PlaceKind

GLAZINGS = ("glass", "twin-wall", "film", "slats", "none")
LONGEST_CODE = 40
_CODE = re.compile(r"[a-z0-9][a-z0-9-]{0,39}")
SPELT = 6
"""Signs of a code that stand for a name in another alphabet: two of 50 such names meet once in
ten thousand gardens, and are then told apart by a number."""
TAKEN = ("site", "new")
"""Words that mean something else on the command line."""

PLACE_FIGURES: Mapping[str, FigureRule] = MappingProxyType(
    {
        rule.name: rule
        for rule in (
            FigureRule("name", Form.TEXT, high=60),
            FigureRule("kind", Form.CHOICE, choices=tuple(PlaceKind)),
            FigureRule("order", Form.WHOLE, 0, 999),
            FigureRule("trays", Form.NUMBER, 0, 1000),
            FigureRule("glazing", Form.CHOICE, choices=GLAZINGS),
            FigureRule("set_c", Form.NUMBER, -30, 50, "C"),
            FigureRule("one_sided", Form.YES_NO),
            FigureRule("heated", Form.YES_NO),
            FigureRule("fuel_heater", Form.YES_NO),
            FigureRule("length_m", Form.NUMBER, 0.1, 100, "m"),
            FigureRule("width_m", Form.NUMBER, 0.1, 100, "m"),
            FigureRule("shade_share", Form.NUMBER, 0, 1),
        )
    }
)
"""The figures of a place."""


def code_from(name: str) -> str:
    """A place's code out of its name: "Bench 1" becomes bench-1.

    A name in another alphabet has none of the letters of a code: it gets signs that follow from it,
    the same on every computer.

    Raises:
        InputError: the name has no letter or digit a code can be made of.
    """
    apart = unicodedata.normalize("NFKD", name).casefold()
    plain = "".join(sign for sign in apart if not unicodedata.combining(sign))
    code = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST_CODE].strip("-")
    if any(map(str.isalpha, plain)) and not re.search("[a-z]", code):
        return f"place-{hashlib.sha256(plain.encode()).hexdigest()[:SPELT]}"
    if not code:
        raise InputError(
            f"No code can be made of {shown(name)}: give the place a name with letters or digits."
        )
    return checked_code(code)


def checked_code(code: str) -> str:
    """A code as it was typed.

    Raises:
        InputError: it is not of small letters, digits and hyphens, or means something else.
    """
    if not _CODE.fullmatch(code):
        raise InputError(
            f"{shown(code)} cannot be a place's code: use up to {LONGEST_CODE} small letters, "
            "digits and hyphens, such as bench-1."
        )
    if code in TAKEN:
        raise InputError(f"'{code}' means something else here: choose another code.")
    return code


def free_code(name: str, taken: Iterable[str]) -> str:
    """A code for a name that no place has yet."""
    code, known = code_from(name), set(taken)
    free = (f"{code[: LONGEST_CODE - 4]}-{number}" for number in range(2, 1000))
    return code if code not in known else next(one for one in free if one not in known)


def kind_of_place(text: str) -> PlaceKind:
    """The kind a word names, or the only one it begins.

    Raises:
        InputError: none, or more than one.
    """
    wanted = " ".join(text.replace("-", " ").lower().split())
    begins = [kind for kind in PlaceKind if wanted and kind.startswith(wanted)]
    exact = [kind for kind in begins if kind == wanted] or begins
    if len(exact) == 1:
        return exact[0]
    near = near_words(text, PlaceKind, f"the kinds are {', '.join(PlaceKind)}")
    raise InputError(f"{shown(text)} is no kind of place: {near}.")
