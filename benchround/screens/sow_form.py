"""From what stands in the sowing sheet to the record it makes."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from benchround.core.crop.crop import Covering, Crop, Raising
from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.record import Draft, Figure, Kind
from benchround.core.season import Season
from benchround.core.seed.sowing_plan import SowingPlan, containers_of, packets_for
from benchround.core.site import PlaceKind
from benchround.core.typed.figures import read_note, read_whole
from benchround.core.typed.words import read_place
from benchround.core.units import Units, units_of
from benchround.screens.sheet_base import Reading
from benchround.screens.sheet_fields import day_field, place_field
from benchround.screens.widgets.field import Choice, Field, Finder, among, plain_choices

SOWN, PLANNED = "sown", "planned"
LONGEST_NAME = 80
DEEPEST_MM, HOTTEST_C = 300.0, 40.0
COVERINGS = tuple(str(covering) for covering in Covering)
RAISINGS = tuple(str(raising) for raising in Raising if raising is not Raising.BULB)


def sowing_fields(season: Season, crops: Finder, day: date, today: date) -> list[Field]:
    """The fields of the sheet before a crop is chosen."""
    what = plain_choices((SOWN, PLANNED))
    return [
        Field("crop", "crop", finder=crops, only=True, hint="type its first letters"),
        Field("variety", "variety"),
        Field("wanted", "plants wanted", hint="how many you want at the end", figure=True),
        Field("seeds", "seeds", figure=True),
        Field("cells", "cells or pots", figure=True),
        Field("container", "container", finder=plain_choices(containers_of(season))),
        place_field(season, ""),
        day_field(day, today),
        Field("what", "sown or planned", SOWN, what, only=True),
        Field("raising", "sown in", finder=plain_choices(RAISINGS), only=True),
        Field("per_cell", "seeds a cell", figure=True),
        Field("covering", "covered with", finder=plain_choices(COVERINGS), only=True),
        Field("depth_mm", "depth", hint=units_of(season.settings).length_unit, figure=True),
        Field("packet", "packet"),
        Field("note", "note"),
    ]


def packet_finder(season: Season, crop: str) -> Finder:
    """The packets of a crop as choices."""
    found = []
    for packet in packets_for(season, crop):
        said = [packet.variety, str(packet.year or ""), _left(packet.left)]
        found.append(Choice(packet.id, packet.id, ", ".join(words for words in said if words)))
    return among(found)


def _left(left: int | None) -> str:
    return f"{left} left" if left is not None else ""


def set_defaults(
    fields: Mapping[str, Field], plan: SowingPlan | None, place_name: str, units: Units
) -> None:
    """Let what was worked out stand in every field nothing was typed into."""
    told = {
        "wanted": _words(plan.wanted if plan else None),
        "seeds": _words(plan.seeds if plan else None),
        "cells": _words(plan.cells if plan else None),
        "container": plan.container if plan else "",
        "place": place_name,
        "raising": plan.raising if plan else "",
        "per_cell": _words(plan.per_cell if plan else None),
        "covering": plan.covering if plan else "",
        "depth_mm": units.length(plan.depth_mm) if plan and plan.depth_mm is not None else "",
    }
    for name, words in told.items():
        fields[name].default = words
    fields["seeds"].hint = plan.how if plan else ""
    again = f"as last time, {plan.like}" if plan and plan.like and plan.wanted else ""
    fields["wanted"].hint = again or "how many you want at the end"


def _words(number: int | None) -> str:
    return "" if number is None else str(number)


@dataclass(frozen=True, slots=True)
class SowingSheetSays:
    """What the sheet amounts to: the record it makes, and on which day."""

    draft: Draft
    day: date
    planned: bool


def read_sheet(
    values: Mapping[str, str], crop: Crop, season: Season, day: date, batch: str
) -> SowingSheetSays:
    """The record the sheet makes.

    Args:
        values: what stands in the fields.
        crop: the crop chosen.
        season: knows the places.
        day: the day read from its field.
        batch: the new batch's name.

    Raises:
        SheetFault: fields that cannot be understood.
    """
    reading = Reading()
    said: dict[str, Figure | None] = {"crop": crop.key}

    def note(name: str) -> str:
        return reading.read(name, lambda: read_note(values[name], LONGEST_NAME), "")

    def whole(name: str) -> int | None:
        return reading.read(name, lambda: read_whole(values[name]), None)

    said["variety"] = note("variety")
    for name in ("wanted", "seeds", "cells", "per_cell"):
        said[name] = whole(name)
    said["raising"] = values["raising"]
    said["container"] = note("container")
    said["place"] = reading.read("place", lambda: read_place(values["place"], season.places), "")
    said["covering"] = values["covering"]
    said["depth_mm"] = reading.read(
        "depth_mm", lambda: _depth(values["depth_mm"], season, crop), None
    )
    said["packet"] = reading.read("packet", lambda: _packet(values["packet"], season, crop), "")
    words = reading.read("note", lambda: read_note(values["note"]), "")
    reading.finish()
    planned = values["what"] == PLANNED
    if planned:
        said["sow_on"] = day.isoformat()
    else:
        said["heat_c"] = _heat(season, str(said["place"] or ""), crop)
    figures = {name: value for name, value in said.items() if value is not None and value != ""}
    kind = Kind.PLANNED if planned else Kind.SOWN
    return SowingSheetSays(Draft(kind, batch, figures, words), day, planned)


def _heat(season: Season, code: str, crop: Crop) -> float | None:
    """The bottom heat it gets: none outside a propagator."""
    place = season.place(code)
    if place is None or place.kind is not PlaceKind.PROPAGATOR:
        return None
    return place.set_c or (crop.germination.heat_c if crop.germination else None)


def _depth(text: str, season: Season, crop: Crop) -> float | None:
    """The depth typed, in mm; where the crop's own stands there it is that, not its inches back."""
    units, usual = units_of(season.settings), None
    if crop.germination is not None:
        usual = crop.germination.depth_mm
    if usual is not None and text == units.length(usual):
        return usual
    return units.read_length_mm(text, DEEPEST_MM)


def _packet(text: str, season: Season, crop: Crop) -> str:
    if not text:
        return ""
    packet = season.packets.get(text)
    if packet is None:
        known = ", ".join(packet.id for packet in packets_for(season, crop.key)) or "none"
        raise InputError(f"no packet goes by that name: packets of this crop: {known}.")
    if packet.crop != crop.key:
        raise InputError(f"{packet.id} holds seed of another crop.")
    return packet.id
