"""Fields of a place: what each kind of place is asked for, and how it is read."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from benchround.core.errors import InputError
from benchround.core.place_words import GLAZINGS, PLACE_FIGURES
from benchround.core.record import Figure
from benchround.core.site import ONE_SIDED, PlaceKind
from benchround.core.sky.warmth import KEPT_AT
from benchround.core.typed.figures import read_note, read_number
from benchround.core.units import Units
from benchround.screens.sheet_base import Reading
from benchround.screens.site_form import NO, YES, yes_no_field
from benchround.screens.widgets.field import Choice, Field, among, plain_choices

TELLS: Mapping[PlaceKind, str] = {
    PlaceKind.PROPAGATOR: "warm, for seed",
    PlaceKind.WINDOWSILL: "in the house",
    PlaceKind.GREENHOUSE: "under glass, not heated by itself",
    PlaceKind.BENCH: "sheltered, in the open",
    PlaceKind.FRAME: "has a lid to lift",
    PlaceKind.TUNNEL: "has ends to open",
    PlaceKind.FRIDGE: "for seed that wants cold",
    PlaceKind.BED: "where plants grow for good",
}
_TRAYS = ("trays", "shade_share")
_HEAT = ("set_c", "heated", "fuel_heater")
ASKED: Mapping[PlaceKind, tuple[str, ...]] = {
    PlaceKind.PROPAGATOR: ("trays", "set_c", "heated", "one_sided"),
    PlaceKind.WINDOWSILL: ("trays", "set_c", "one_sided"),
    PlaceKind.GREENHOUSE: (*_TRAYS, "glazing", *_HEAT, "one_sided"),
    PlaceKind.BENCH: (*_TRAYS, "one_sided"),
    PlaceKind.FRAME: ("length_m", "width_m", "glazing", *_TRAYS, *_HEAT),
    PlaceKind.TUNNEL: ("length_m", "width_m", "glazing", *_TRAYS, *_HEAT),
    PlaceKind.FRIDGE: ("trays", "set_c"),
    PlaceKind.BED: ("shade_share",),
}
"""What a kind of place is asked for besides its name."""
PERCENT = 100.0


def asked_of(kind: str) -> frozenset[str]:
    """The fields a kind of place has."""
    own = ASKED[PlaceKind(kind)] if kind in set(PlaceKind) else ()
    return frozenset(("name", "kind", *own))


def place_fields(said: Mapping[str, Figure], units: Units) -> list[Field]:
    """The fields with what was said so far.

    Args:
        said: figures of the place's latest record.
        units: how its temperature is shown and typed.
    """
    kinds = among([Choice(str(kind), str(kind), TELLS[kind]) for kind in PlaceKind])
    glazings = plain_choices(GLAZINGS)
    set_c, share = said.get("set_c"), said.get("shade_share")
    kept = units.temp(set_c) if isinstance(set_c, int | float) else ""
    shade = f"{share * PERCENT:g}" if isinstance(share, int | float) and share else ""
    return [
        Field("name", "name", str(said.get("name", "")), hint="as you call it"),
        Field("kind", "kind", str(said.get("kind", "")), kinds, only=True, hint="what it is"),
        Field("length_m", "length", _plain(said.get("length_m")), hint="m", figure=True),
        Field("width_m", "width", _plain(said.get("width_m")), hint="m", figure=True),
        Field("glazing", "glazing", str(said.get("glazing", "")), glazings, only=True),
        Field("trays", "holds", _plain(said.get("trays")), hint="full trays", figure=True),
        Field("shade_share", "shade", shade, hint="% of the sun kept off for good", figure=True),
        Field("set_c", "kept at", kept, figure=True),
        yes_no_field("heated", "mains heat", said),
        yes_no_field("fuel_heater", "fuel heater", said, "paraffin or gas"),
        yes_no_field("one_sided", "light one side", said, "seedlings lean and are turned"),
    ]


def retell_place(fields: Mapping[str, Field], said: Mapping[str, Figure], units: Units) -> None:
    """Ask for what the kind of place has, and say what is taken where nothing is typed.

    Args:
        fields: the sheet's fields by name.
        said: figures of the place's latest record.
        units: how its temperature is shown.
    """
    kind = fields["kind"].value
    asked = asked_of(kind)
    for name, field in fields.items():
        field.hidden = name not in asked
    if "one_sided" not in said:
        fields["one_sided"].default = YES if kind in ONE_SIDED else NO
    usual = next((temp_c for one, temp_c in KEPT_AT.items() if one == kind), None)
    taken = f"empty: {units.temp(usual)} taken" if usual is not None else "thermostat or room"
    fields["set_c"].hint = f"degrees {units.degrees}, {taken}"


def _plain(value: Figure | None) -> str:
    return f"{value:g}" if isinstance(value, int | float) else ""


def read_place_sheet(
    values: Mapping[str, str], reading: Reading, units: Units
) -> dict[str, Figure]:
    """What the sheet says of the place; faults are noted in `reading`.

    Args:
        values: what stands in the fields that are asked for.
        reading: takes the faults.
        units: how the temperature was typed.
    """
    said: dict[str, Figure | None] = {
        "name": reading.read("name", lambda: _name(values["name"]), None),
        "kind": reading.read("kind", lambda: _choice(values["kind"], tuple(PlaceKind)), None),
    }
    if "glazing" in values:
        glazing = values["glazing"]
        said["glazing"] = reading.read("glazing", lambda: _choice(glazing or "none", GLAZINGS), "")
    for name, reader in _numbers(values, units).items():
        said[name] = reading.read(name, reader, None)
    for name in ("heated", "fuel_heater", "one_sided"):
        if values.get(name) == YES:
            said[name] = True
    if values.get("one_sided") == NO and values["kind"] in ONE_SIDED:
        said["one_sided"] = False
    return {name: value for name, value in said.items() if value is not None and value != ""}


def _numbers(values: Mapping[str, str], units: Units) -> dict[str, Callable[[], float | None]]:
    """A reader for each number that is asked for."""
    readers: dict[str, Callable[[], float | None]] = {}
    for name, unit in (("length_m", "m"), ("width_m", "m"), ("trays", "trays")):
        if name in values:
            readers[name] = _reader(values[name], name, unit)
    if "set_c" in values:
        rule, text = PLACE_FIGURES["set_c"], values["set_c"]
        readers["set_c"] = lambda: units.read_temp_c(text, rule.low, rule.high)
    if "shade_share" in values:
        shade = values["shade_share"].removesuffix("%")
        readers["shade_share"] = lambda: _share(shade)
    return readers


def _reader(text: str, name: str, unit: str) -> Callable[[], float | None]:
    rule = PLACE_FIGURES[name]
    return lambda: read_number(text, rule.low, rule.high, unit)


def _share(text: str) -> float | None:
    percent = read_number(text, 0.0, PERCENT, "%")
    return None if percent is None else percent / PERCENT


def _name(text: str) -> str:
    name = read_note(text, int(PLACE_FIGURES["name"].high))
    if not name:
        raise InputError("a place needs a name.")
    return name


def _choice(text: str, choices: tuple[str, ...]) -> str:
    if text not in choices:
        raise InputError(f"choose one of {', '.join(choices)}.")
    return str(text)
