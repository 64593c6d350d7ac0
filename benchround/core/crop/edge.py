"""Edges of windows as they are written in crop tables: `last frost -28`, `soil warming 8 +0`.

The anchor comes first, then the anchor's own value if it has one (hours of day length, degrees C
of the soil), then the days after it (`+`) or before it (`-`). Midsummer is the longest day where
the site lies, about 21 June in the north and 21 December in the south.
"""

from __future__ import annotations

import re

from benchround.core.crop.crop import Anchor, Edge
from benchround.core.errors import InputError

VALUE_RANGES: dict[Anchor, tuple[float, float]] = {
    Anchor.DAY_LENGTH_RISING: (1.0, 23.0),
    Anchor.DAY_LENGTH_FALLING: (1.0, 23.0),
    Anchor.SOIL_WARMING: (0.0, 30.0),
    Anchor.SOIL_COOLING: (0.0, 30.0),
}
"""Anchors that need a value, and its range: hours of day length, degrees C of the soil."""

ANCHORS = {str(anchor): anchor for anchor in Anchor}
LONGEST = 80
"""Letters; no edge is written longer."""
FURTHEST_DAYS = 200
"""An edge further from its anchor than this is nearer to the same anchor of another year."""

FORM = re.compile(
    r"(?P<anchor>[a-z ]+?)(?: (?P<value>[0-9]+(?:\.[0-9]+)?))? (?P<days>[+-][0-9]{1,3})"
)


def _anchor_words(anchor: Anchor) -> str:
    if anchor not in VALUE_RANGES:
        return str(anchor)
    low, high = VALUE_RANGES[anchor]
    return f"{anchor} with a value from {low:g} to {high:g}"


EDGE_ALLOWED = (
    "an anchor, its value if it has one, and from -200 to +200 days, such as 'last frost -28' or"
    f" 'soil warming 8 +0'; anchors: {', '.join(map(_anchor_words, Anchor))}"
)


def edge_from_text(text: str) -> Edge:
    """Read one edge, such as `midsummer +19` or `day length falling 10 -7`.

    Raises:
        InputError: it is not of that form, the anchor is not known, a value is missing, idle or
            outside its range, or the days are more than 200 either way.
    """
    found = FORM.fullmatch(" ".join(text.split())) if len(text) <= LONGEST else None
    if found is None or found["anchor"] not in ANCHORS:
        raise InputError(
            f"{text[:LONGEST]!r} is not a day of the site's year: write {EDGE_ALLOWED}"
        )
    anchor, days = ANCHORS[found["anchor"]], int(found["days"])
    if abs(days) > FURTHEST_DAYS:
        raise InputError(
            f"{text!r} lies {abs(days)} days from its anchor: at most {FURTHEST_DAYS} are allowed"
        )
    return Edge(anchor, days, _value(anchor, found["value"], text))


def edge_to_text(edge: Edge) -> str:
    """Write an edge in the form `edge_from_text` reads."""
    value = "" if edge.value is None else f" {edge.value:g}"
    return f"{edge.anchor}{value} {edge.days:+d}"


def _value(anchor: Anchor, digits: str | None, text: str) -> float | None:
    """The anchor's own value, or a refusal when it is missing, idle or outside its range."""
    if anchor not in VALUE_RANGES:
        if digits is not None:
            raise InputError(f"{text!r}: {anchor} takes no value, only days: write '{anchor} +0'")
        return None
    low, high = VALUE_RANGES[anchor]
    if digits is None or not low <= float(digits) <= high:
        raise InputError(
            f"{text!r}: {anchor} needs a value from {low:g} to {high:g}, as in '{anchor} 10 +0'"
        )
    return float(digits)
