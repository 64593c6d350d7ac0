"""From a ticked task and the figures typed for it to the records it writes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from benchround.core.errors import InputError
from benchround.core.record import Draft, Figure, Kind
from benchround.core.season import Season
from benchround.core.sky.known_day import MOST_RAIN_MM
from benchround.core.task import Ask, Family, Task
from benchround.core.typed.figures import MOST_COUNT, naming, read_number, read_whole
from benchround.core.typed.words import read_choice, read_place
from benchround.core.units import Units, units_of
from benchround.rounds.looking import FOUND_IN_SOIL
from benchround.rounds.sowing_in_turn import NO_MORE
from benchround.rounds.standing import records_of

LONGEST_TEXT = 200
SEEN_AT_A_LOOK = {
    "ripe": Kind.SEED_RIPE,
    "flowered": Kind.FIRST_FLOWER,
    "picked": Kind.CROPPED,
    "over": Kind.GOING_OVER,
}
"""Answers to a look that record something of their own."""
TEMPERATURES = ("min_c", "max_c")
LEAST_C, MOST_C = -45.0, 70.0
MOST_LENGTH_MM = 10_000.0
SOWING = (Kind.SOWN, Kind.RESOWN)
IN_WORDS = ("packet", "storage")
"""Figures that are typed in words, though no choices are given."""
OF_PACKET = ("seeds", "grams", "storage")
"""Figures typed at a tick that belong to the packet it writes."""


def drafts_for(task: Task, answers: Mapping[str, str], season: Season) -> tuple[Draft, ...]:
    """The records ticking a task writes, its first one filled from the answers.

    Args:
        task: the task ticked.
        answers: typed text by the name of the figure; what is not in it takes the default.
        season: for looking up places by name.

    Raises:
        InputError: an answer cannot be understood; it names the field and what it wants.
    """
    if not task.ticks:
        raise InputError(f"'{task.family}' writes nothing by itself: record what was done instead.")
    figures: dict[str, Figure] = {}
    for ask in task.asks:
        value = read_answer(ask, answers.get(ask.into, ask.default), season)
        if value is not None:
            figures[ask.into] = value
        elif ask.needed:
            raise InputError(f"{ask.label}: a figure is needed here.")
    if figures.pop("again", "") == NO_MORE:
        return (Draft(Kind.DONE, task.about, {"family": str(task.family)}),)
    _check_pair(figures, units_of(season.settings))
    if task.family is Family.STANDS:
        return records_of(task, figures, season)
    first, *others = task.ticks
    packets = [said_of_packet(other, figures, season) for other in others]
    if first.kind in SOWING:
        _check_packet(figures, season)
    return (*_first(task, first, figures), *packets)


def said_of_packet(draft: Draft, figures: Mapping[str, Figure], season: Season) -> Draft:
    """A packet's record with the name and the figures typed for it; any other record as it is.

    Raises:
        InputError: the name is that of a packet of other seed.
    """
    if draft.kind is not Kind.PACKET:
        return draft
    name = str(figures.get("packet") or draft.about)
    other = season.packets.get(name)
    same = ("crop", "variety")
    if other is not None and (other.crop, other.variety) != tuple(map(draft.figures.get, same)):
        raise InputError(
            f"packet: '{name}' is {other.crop} '{other.variety}' already: give another name."
        )
    typed = {key: figures[key] for key in OF_PACKET if key in figures}
    return replace(draft, about=name, figures={**draft.figures, **typed})


def _check_packet(figures: Mapping[str, Figure], season: Season) -> None:
    """Refuse to take seed from a packet nobody put on the books."""
    name = figures.get("packet")
    if name is not None and str(name) not in season.packets:
        known = ", ".join(season.packets) or "none yet"
        raise InputError(f"packet: there is no packet '{name}'. Packets: {known}.")


def read_answer(ask: Ask, text: str, season: Season) -> Figure | None:
    """One typed answer as a figure; None where it was left empty.

    Raises:
        InputError: it is not what the field wants.
    """
    text = text.strip()
    if not text:
        return None
    if len(text) > LONGEST_TEXT:
        raise InputError(f"{ask.label}: {len(text)} letters are too many, {LONGEST_TEXT} at most.")
    if not text.isprintable():
        raise InputError(f"{ask.label}: there are control characters in it; type plain text.")
    if ask.choices:
        return naming(ask.label, lambda: read_choice(text, ask.choices))
    if ask.into == "place":
        return naming("place", lambda: read_place(text, season.places))
    if ask.whole:
        most = MOST_COUNT if ask.most is None else ask.most
        return naming(ask.label, lambda: read_whole(text, most))
    if ask.into in IN_WORDS:
        return text
    return naming(ask.label, lambda: _number(ask, text, units_of(season.settings)))


def _number(ask: Ask, text: str, units: Units) -> float | None:
    """A figure; temperatures and lengths are typed in the grower's units."""
    if ask.into in TEMPERATURES:
        return units.read_temp_c(text, LEAST_C, MOST_C)
    if ask.into == "rain_mm":
        return units.read_fall_mm(text, MOST_RAIN_MM)
    if ask.into.endswith("_mm"):
        return units.read_length_mm(text, MOST_LENGTH_MM)
    return read_number(text, 0, MOST_COUNT)


def _check_pair(figures: Mapping[str, Figure], units: Units) -> None:
    low, high = figures.get("min_c"), figures.get("max_c")
    if isinstance(low, float) and isinstance(high, float) and low > high:
        raise InputError(
            f"lowest {units.temp(low)} is above highest {units.temp(high)}: look at both again."
        )


def _first(task: Task, draft: Draft, figures: dict[str, Figure]) -> tuple[Draft, ...]:
    said = {**draft.figures, **figures}
    if draft.kind is Kind.LOOKED and task.family is Family.LOOK:
        draft = replace(draft, note=FOUND_IN_SOIL.get(str(said.pop("dug", "")), draft.note))
        rising = any(ask.into == "count" and not ask.default for ask in task.asks)
        if "count" in said and (rising or said["count"]):
            kind = Kind.COUNTED if rising else Kind.FIRST_UP
            return (replace(draft, kind=kind, figures=said),)
    if draft.kind is Kind.LOOKED:
        said.pop("count", None)
        kinds = [kind for name, kind in SEEN_AT_A_LOOK.items() if said.pop(name, "no") == "yes"]
        looked = replace(draft, figures=said)
        return (looked, *(replace(looked, kind=kind) for kind in kinds))
    if draft.kind is Kind.HARDENING_STEP:
        said["wilted"] = said.get("wilted") == "yes"
    if draft.kind is Kind.TRAP_SEEN:
        lifted = said.pop("lifted", "no") == "yes"
        seen = replace(draft, figures=said)
        return (seen, replace(seen, kind=Kind.TRAP_LIFTED)) if lifted else (seen,)
    return (replace(draft, figures=said),)
