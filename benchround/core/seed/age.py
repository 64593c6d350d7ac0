"""What age does to a packet, and how far a germination test can be trusted, in words.

Where the packet says that it is kept sealed in a known store and the species' constants are known,
the viability equation speaks; else the years such seed is said to keep.
"""

from __future__ import annotations

from datetime import date

from benchround.core.crop.crop import COMMON_PRACTICE, Crop
from benchround.core.frozen import dataclass
from benchround.core.numbers.ranges import share as check_share
from benchround.core.numbers.shares import wilson
from benchround.core.seed.packet import Packet
from benchround.core.seed.viability import ViabilityConstants, viability_after
from benchround.core.seed.viability_species import CONSTANTS, SHELF_YEARS

DAYS_A_YEAR = 365.25
SHELF_SOURCE = "Knott's Handbook 1997, as given by Iowa State University; Christoffel's list"
EQUATION = "viability equation, Ellis & Roberts 1980"
SEALED_MOISTURE = 6.0
"""Moisture of dried and sealed seed, % of fresh weight (common practice, no source)."""
STORES_C = {"freezer": -18.0, "fridge": 5.0, "sealed": 18.0, "airtight": 18.0}
"""Temperature of stores of sealed seed, by a word of the packet's storage (common practice)."""
FALLEN_SHARE = 0.8
"""Below this share of what it was, ageing is worth a warning at the task (our proposal)."""
WIDE_RANGE = 0.30
"""A test whose 95 % range is wider than this tells little (our proposal; 8 of 10: 0.45)."""
THICK_BELOW, DISCARD_BELOW = 0.60, 0.50
"""Sow thicker or buy new below 60 %; discard below 50 % (simple germination tests, read)."""
MOST_PERCENT = 99.9


@dataclass(frozen=True, slots=True)
class Word:
    """Something to know of a packet before it is sown; `urgent` belongs at the task itself."""

    text: str
    urgent: bool = False


def age_years(packet: Packet, day: date) -> int | None:
    """Whole years since the packet's year; None where it names none."""
    return None if packet.year is None else max(0, day.year - packet.year)


def age_word(packet: Packet, crop: Crop, day: date) -> Word | None:
    """What its age means; None for fresh seed and for packets without a year."""
    years = age_years(packet, day)
    if not years:
        return None
    species, temp_c = _species(crop), _store_c(packet.storage)
    if species is not None and temp_c is not None and crop.germination is not None:
        start = packet.germination or crop.germination.share
        return _by_equation(packet, years, start, species, temp_c)
    return _by_shelf(packet, crop, years)


def viable_share(start: float, years: float, species: ViabilityConstants, temp_c: float) -> float:
    """The share that still comes up after years of sealed store, by the viability equation.

    Args:
        start: share at the beginning, above 0 and up to 1.
        years: years in store.
        species: its constants.
        temp_c: temperature of the store, -20 to 60 C.
    """
    percent = min(100.0 * check_share("share at the beginning", start), MOST_PERCENT)
    days = years * DAYS_A_YEAR
    return viability_after(species, percent, days, SEALED_MOISTURE, temp_c) / 100.0


def _by_equation(
    packet: Packet, years: int, start: float, species: ViabilityConstants, temp_c: float
) -> Word:
    now = viable_share(start, years, species, temp_c)
    fallen = now < FALLEN_SHARE * start
    return Word(
        f"packet {packet.id} is {_years(years)} old: sealed at {temp_c:g} C and "
        f"{SEALED_MOISTURE:g} % moisture, {start:.0%} falls to about {now:.0%} ({EQUATION})"
        + ("; test it first" if fallen else ""),
        fallen,
    )


def _by_shelf(packet: Packet, crop: Crop, years: int) -> Word | None:
    keeps, source = shelf_years(crop)
    if keeps is None:
        return Word(f"packet {packet.id} is {_years(years)} old; how long it keeps is not known")
    if years <= keeps:
        return Word(
            f"packet {packet.id} is {_years(years)} old; it keeps about {_years(keeps)} ({source})"
        )
    return Word(
        f"packet {packet.id} is {_years(years)} old and keeps about {_years(keeps)} "
        f"({source}): test it first or sow thicker",
        True,
    )


def shelf_years(crop: Crop) -> tuple[int | None, str]:
    """How many years seed of a crop is said to keep, and who says so; None where nobody does."""
    name = crop.key.replace("-", " ")
    for known in (name, name.split()[-1], *map(str.lower, crop.synonyms)):
        if known in SHELF_YEARS:
            return SHELF_YEARS[known], SHELF_SOURCE
    if crop.seed.worth:
        source = crop.sources.get("seed.keeps_years") or crop.sources.get("seed")
        return crop.seed.keeps_years, source or COMMON_PRACTICE
    return None, ""


def germination_words(packet: Packet) -> tuple[Word, ...]:
    """What its germination figure is worth: a small test tells little, a low share wants more."""
    found: list[Word] = []
    share, tested = packet.germination, packet.tested
    if packet.fault:
        found.append(Word(f"packet {packet.id}: {packet.fault}"))
    if share is None:
        return tuple(found)
    if tested is not None:
        up = round(share * tested)
        low, high = wilson(up, tested)
        if high - low > WIDE_RANGE:
            found.append(
                Word(
                    f"the test of packet {packet.id} tells little: {up} of {tested} up could be "
                    f"anything from {100 * low:.0f} to {100 * high:.0f} %"
                )
            )
    if share < DISCARD_BELOW:
        found.append(Word(f"packet {packet.id} comes up below 50 %: better buy new", True))
    elif share < THICK_BELOW:
        found.append(Word(f"packet {packet.id} comes up below 60 %: sow thicker or buy new", True))
    return tuple(found)


def _species(crop: Crop) -> ViabilityConstants | None:
    """Constants by botanical name, subspecies and variety left off."""
    return CONSTANTS.get(" ".join(crop.latin.split()[:2]))


def _store_c(storage: str) -> float | None:
    words = storage.lower()
    return next((temp_c for name, temp_c in STORES_C.items() if name in words), None)


def _years(number: int) -> str:
    return f"{number} year" if number == 1 else f"{number} years"
