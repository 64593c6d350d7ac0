"""The rows of the settings: the site, the choices, the places on the walk, own containers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from benchround.core.dates import number_of_days
from benchround.core.record import Figure, Record
from benchround.core.season import Season
from benchround.core.settings_words import SETTINGS
from benchround.core.site import Place
from benchround.core.typed.site import say_latitude, say_longitude, say_year_day
from benchround.core.units import Units
from benchround.screens.text import Line, Role, fit, line
from benchround.screens.widgets.pick_list import Row, heading

SITE, CHOICE, PLACE, CONTAINER = "site", "choice", "place", "container"
NAME_WIDE, VALUE_WIDE = 22, 22
NOT_SAID = "not said"
NO_PLACE = "No place yet: n sets the first one up, such as a bench."
SITE_LABELS: Mapping[str, str] = {
    "lat_deg": "latitude",
    "lon_deg": "longitude",
    "altitude_m": "altitude",
    "timezone": "time zone",
    "last_frost": "last frost",
    "last_frost_safe": "safe from frost",
    "first_frost": "first frost",
    "children": "children",
    "pets": "pets",
}
SITE_TELLS: Mapping[str, str] = {
    "lat_deg": "sun, day length, north or south",
    "lon_deg": "sunrise and sunset",
    "altitude_m": "air pressure, for drying",
    "timezone": "clock times of the sun",
    "last_frost": "half the springs have none after it",
    "last_frost_safe": "nine springs in ten have none after it",
    "first_frost": "half the autumns have had one by it",
    "children": "cautions are told for them",
    "pets": "cautions are told for them",
}
CHOICE_LABELS: Mapping[str, str] = {
    "units": "degrees",
    "rain_units": "rain and depth",
    "date_order": "date order",
    "feed_every_days": "feed every",
    "compost": "compost",
    "weather_fetch": "fetch outlook",
    "look": "look",
}


def all_rows(season: Season, site: Mapping[str, Figure], units: Units, look: str) -> Iterator[Row]:
    """Every row, under its heading.

    Args:
        season: the season.
        site: what the latest record of the site says.
        units: how temperatures are shown.
        look: the look of this computer.
    """
    yield heading("Site and household")
    for name, label in SITE_LABELS.items():
        yield _row(f"{SITE}\n{name}", label, site_value(name, site), SITE_TELLS[name])
    yield heading("Choices")
    for name, setting in SETTINGS.items():
        label = CHOICE_LABELS.get(name, name.replace("_", " "))
        kept = look if name == "look" else season.settings.get(setting.key, "")
        value = choice_value(name, kept)
        yield _row(f"{CHOICE}\n{name}", label, value, setting.meaning)
    yield heading("Places, in walking order", "n new  -/+ moves it  x removes it")
    for place in season.places:
        label, words = f"{place.order:>3} {place.name}", place_words(place, units)
        yield _row(f"{PLACE}\n{place.code}", label, str(place.kind), words)
    if not season.places:
        yield Row(lambda width: line((fit(NO_PLACE, width), Role.QUIET)), f"{PLACE}\n")
    yield heading("Trays and pots of your own", "c new  x removes it")
    for name, record in sorted(season.containers.items()):
        yield _row(f"{CONTAINER}\n{name}", name, *container_words(record))


def _row(key: str, label: str, value: str, more: str) -> Row:
    def words(width: int) -> Line:
        name = min(NAME_WIDE, max(8, width // 3))
        wide = min(VALUE_WIDE, max(8, width - name))
        return line(
            (fit(label, name - 1) + " ", Role.INK),
            (fit(value, wide - 1) + " ", Role.STRONG),
            (fit(more, max(0, width - name - wide)), Role.QUIET),
        )

    return Row(words, key)


def site_value(name: str, said: Mapping[str, Figure]) -> str:
    """A figure of the site in words; what is not said is told as such."""
    value = said.get(name)
    if value is None or value == "":
        return NOT_SAID
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        told = {"lat_deg": say_latitude, "lon_deg": say_longitude}.get(name)
        return told(float(value)) if told else f"{value:g} m"
    return say_year_day(value) if "frost" in name else value


def choice_value(name: str, said: str) -> str:
    """A setting in words; what is not set is the usual."""
    value = said or SETTINGS[name].usual
    days = name.endswith("_days") and value.isdecimal()
    return number_of_days(int(value)) if days else value


def place_words(place: Place, units: Units) -> str:
    """What a place is like, in a few words."""
    said = []
    if place.size_m is not None:
        said.append(f"{place.size_m[0]:g} x {place.size_m[1]:g} m")
    if place.trays is not None:
        said.append(f"{place.trays:g} trays")
    if place.glazing != "none":
        said.append(place.glazing)
    if place.set_c is not None:
        said.append(f"kept at {units.temp(place.set_c)}")
    if place.heated:
        said.append("heated")
    if place.fuel_heater:
        said.append("fuel heater")
    if place.one_sided:
        said.append("light from one side")
    if place.shade_share:
        said.append(f"{place.shade_share:.0%} shade")
    return ", ".join(said)


def container_words(record: Record) -> tuple[str, str]:
    """What a container of one's own holds, and its size."""
    cells, ml = record.count("cells") or 1, record.number("cell_ml")
    length, width = record.number("length_m"), record.number("width_m")
    holds = f"{cells} x {ml:g} ml" if ml is not None else NOT_SAID
    size = f"{length * 100:g} x {width * 100:g} cm" if length and width else NOT_SAID
    return holds, size
