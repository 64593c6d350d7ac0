"""What the figures of one crop table must be to each other, once each is good by itself."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from benchround.core.crop.crop import Edge, PlantClass, Raising
from benchround.core.crop.keys import sections_by_name
from benchround.core.crop.schema import defaults

Trouble = tuple[str, object, str]
"""Dotted key, value, and what is allowed there."""

ORDERED = (
    ("germination.base_c", "germination.optimum_c"),
    ("germination.optimum_c", "germination.ceiling_c"),
    ("germination.base_c", "germination.at_c"),
    ("germination.at_c", "germination.ceiling_c"),
    ("germination.days_first", "germination.days_last"),
    ("growing.keep_per_cell", "growing.per_cell"),
    ("growing.thin_first_mm", "growing.thin_to_mm"),
    ("hardening.least_days", "hardening.days"),
)
"""Figures of which the first may not be above the second."""

APART = frozenset({"germination.base_c", "germination.ceiling_c"})
"""Figures that may not equal their neighbour in `ORDERED` either."""


def relation_troubles(good: Mapping[str, object]) -> Iterator[Trouble]:
    """Every pair of good values that cannot stand together.

    Args:
        good: values already read, by dotted key below the crop (`germination.base_c`,
            `windows.1.opens`), None for a bad one, and by name the sections that are there at all.
    """
    yield from _out_of_order(good)
    yield from _seed_or_bulb(good)
    yield from _shut_windows(good)


def _out_of_order(good: Mapping[str, object]) -> Iterator[Trouble]:
    for low_key, high_key in ORDERED:
        low, high = _figure(good, low_key), _figure(good, high_key)
        if low is None or high is None or not {low_key, high_key} & good.keys():
            continue
        apart = bool({low_key, high_key} & APART)
        if low > high or (apart and low == high):
            bar = "above" if apart else "not below"
            yield high_key, high, f"{bar} {low_key}, which is {low:g}"


def _figure(good: Mapping[str, object], dotted: str) -> float | None:
    """The figure given, else the one that holds when it is left out."""
    section, _, key = dotted.partition(".")
    value = good.get(dotted, defaults(sections_by_name()[section]).get(key))
    return float(value) if isinstance(value, int | float) else None


def _seed_or_bulb(good: Mapping[str, object]) -> Iterator[Trouble]:
    raising, sort = good.get("raising"), good.get("class")
    has_seed, is_seed = "germination" in good, raising not in (None, Raising.BULB)
    if raising == Raising.BULB and has_seed:
        yield "germination", "a table", "no such table where raising is bulb"
    if is_seed and not has_seed and sort not in (None, PlantClass.UNKNOWN):
        yield "germination", None, f"a table, as raising is {raising}"


def _shut_windows(good: Mapping[str, object]) -> Iterator[Trouble]:
    """Windows that would close before they open, where both edges hang on one anchor."""
    for name, opens in good.items():
        if not name.endswith(".opens"):
            continue
        closes = good.get(name.removesuffix("opens") + "closes")
        if not isinstance(opens, Edge) or not isinstance(closes, Edge):
            continue
        if (opens.anchor, opens.value) == (closes.anchor, closes.value) and (
            closes.days < opens.days
        ):
            yield (
                name.removesuffix("opens") + "closes",
                f"{closes.days:+d}",
                f"no earlier than opens, which is {opens.days:+d}",
            )
