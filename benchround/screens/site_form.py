"""Fields of the site: where it lies, its frost days typed or out of a weather file."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from functools import lru_cache, partial
from pathlib import Path
from zoneinfo import available_timezones

from benchround.core.errors import InputError
from benchround.core.record import Figure
from benchround.core.site_words import FROSTS, SITE_FIGURES
from benchround.core.typed.figures import read_number, shown
from benchround.core.typed.site import (
    PLAIN_YEAR,
    read_latitude,
    read_longitude,
    read_year_day,
    say_latitude,
    say_longitude,
    say_year_day,
)
from benchround.feeds.frost_file import FrostDays, frost_days_of
from benchround.screens.sheet_base import Reading
from benchround.screens.widgets.field import Choice, Field, among, plain_choices

YES, NO = "yes", "no"
FILE = "frost_file"
FROST_LABELS = {
    "last_frost": ("last frost", "frost after it 1 year in 2"),
    "last_frost_safe": ("safe from frost", "frost after it 1 year in 10"),
    "first_frost": ("first frost", "frost before it 1 year in 2"),
}
MOST_FILES = 200
HALF_A_YEAR = 182
LATITUDE_FIRST = "type the latitude first: it says on which side of the year winter is"


def where_fields(said: Mapping[str, Figure]) -> list[Field]:
    """Latitude and longitude."""
    lat, lon = said.get("lat_deg"), said.get("lon_deg")
    return [
        Field(
            "lat_deg",
            "latitude",
            say_latitude(lat) if isinstance(lat, int | float) else "",
            hint="such as 52.5 or 33.9 S",
            figure=True,
        ),
        Field(
            "lon_deg",
            "longitude",
            say_longitude(lon) if isinstance(lon, int | float) else "",
            hint="such as 1.5 or 1.0 W",
            figure=True,
        ),
    ]


def frost_fields(said: Mapping[str, Figure]) -> list[Field]:
    """The three frost days, and the file they can come from instead."""
    days = [
        Field(name, label, say_year_day(str(said.get(name, ""))), hint=hint, figure=True)
        for name, (label, hint) in FROST_LABELS.items()
    ]
    file = Field(FILE, "or weather file", finder=path_finder, wide=True)
    return [*days, file]


def timezone_field(said: Mapping[str, Figure]) -> Field:
    """The time zone."""
    return Field(
        "timezone",
        "time zone",
        str(said.get("timezone", "")),
        _zone_finder,
        only=True,
        hint="such as Europe/London",
    )


def _zone_finder(letters: str) -> Sequence[Choice]:
    """Time zones by letters; there are too many to show before some were typed."""
    return among([Choice(name, name) for name in _zones()])(letters) if letters.strip() else ()


@lru_cache(maxsize=1)
def _zones() -> tuple[str, ...]:
    return tuple(sorted(name for name in available_timezones() if "/" in name))


def yes_no_field(name: str, label: str, said: Mapping[str, Figure], hint: str = "") -> Field:
    """A field for yes or no."""
    default = YES if said.get(name) is True else NO
    return Field(name, label, default, plain_choices((YES, NO)), only=True, hint=hint)


def typed_path(text: str) -> Path:
    """A file or folder as typed; ~ is the grower's own folder.

    Raises:
        InputError: it cannot be the name of one.
    """
    if not text.isprintable():
        raise InputError("there are control characters in it: type the name of a file or folder.")
    try:
        return Path(text.strip()).expanduser()
    except RuntimeError:
        raise InputError(f"'{shown(text)}': nobody of that name has a folder here.") from None


def _is_file(path: Path) -> bool:
    try:
        return path.is_file()
    except OSError:
        return False  # a name too long for any file


def path_finder(letters: str) -> Sequence[Choice]:
    """Files and folders that begin with what was typed; nothing until something was."""
    if not letters.strip():
        return ()
    try:
        typed = typed_path(letters)
        folder, begin = (typed, "") if letters.endswith("/") else (typed.parent, typed.name)
        names = sorted(path.name for path in folder.iterdir())
    except (InputError, OSError):
        return ()  # nothing to choose from there
    near = [name for name in names if name.startswith(begin) and name != begin][:MOST_FILES]
    return [Choice(str(folder / name), str(folder / name)) for name in near]


class FrostFile:
    """The frost days of a file, read again only when another file or side of the globe is meant."""

    def __init__(self) -> None:
        self._read: tuple[str, bool] | None = None
        self._found: FrostDays | None = None
        self.fault = ""

    def days(self, text: str, lat_deg: float | None) -> FrostDays | None:
        """The frost days, None while there is no such file or it says nothing; `fault` says why."""
        path = self._named(text)
        if path is not None and lat_deg is None:
            self._forget(LATITUDE_FIRST)
        if path is None or lat_deg is None:
            return None
        asked = (str(path), lat_deg < 0)
        if asked != self._read:
            self._read, self._found, self.fault = asked, None, ""
            try:
                self._found = frost_days_of(path, lat_deg)
            except InputError as error:
                self.fault = str(error)
        return self._found

    def _named(self, text: str) -> Path | None:
        """The file that was typed; None where there is none."""
        if not text.strip():
            self._forget()
            return None
        try:
            path = typed_path(text)
        except InputError as error:
            self._forget(str(error))
            return None
        if not _is_file(path):
            self._forget("there is no such file")
            return None
        return path

    def _forget(self, fault: str = "") -> None:
        self._read, self._found, self.fault = None, None, fault


def latitude_typed(fields: Mapping[str, Field]) -> float | None:
    """The latitude as it stands, None while it is none."""
    try:
        return read_latitude(fields["lat_deg"].text)
    except InputError:
        return None


def retell_frost(fields: Mapping[str, Field], file: FrostFile, said: Mapping[str, Figure]) -> None:
    """Let the days of the file stand in the fields nothing was typed into, and say what came."""
    found = file.days(fields[FILE].text, latitude_typed(fields))
    for name in FROSTS:
        kept = getattr(found, name) if found is not None else str(said.get(name, ""))
        fields[name].default = say_year_day(kept)
    years = f"{found.years} usable years" if found is not None else ""
    rough = ": few, so the days are rough" if found is not None and found.rough else ""
    typed = fields[FILE].text.strip()
    how = "a table of daily lowest temperatures over years gives them"
    fields[FILE].hint = f"{years}{rough}" or file.fault if typed else how


def echo_where(fields: Mapping[str, Field]) -> None:
    """Say beside latitude and longitude what was understood."""
    readers = {"lat_deg": (read_latitude, say_latitude), "lon_deg": (read_longitude, say_longitude)}
    for name, (reader, say) in readers.items():
        field = fields[name]
        if not field.touched or not field.text.strip():
            continue
        try:
            number = reader(field.text)
        except InputError as error:
            field.hint = str(error)
        else:
            field.hint = say(number) if number is not None else ""


def read_where(values: Mapping[str, str], reading: Reading) -> dict[str, Figure | None]:
    """Latitude and longitude as typed."""
    return {
        "lat_deg": reading.read("lat_deg", lambda: read_latitude(values["lat_deg"]), None),
        "lon_deg": reading.read("lon_deg", lambda: read_longitude(values["lon_deg"]), None),
    }


def read_frost(
    values: Mapping[str, str], reading: Reading, file: FrostFile, *, month_first: bool
) -> dict[str, Figure | None]:
    """The frost days as they stand; a file that gave none is a fault."""
    if values[FILE].strip() and file.fault:
        reading.faults[FILE] = file.fault
    said = {
        name: reading.read(name, partial(read_year_day, values[name], month_first=month_first), "")
        for name in FROSTS
    }
    last, safe = said["last_frost"], said["last_frost_safe"]
    if last and safe and _comes_before(safe, last):
        reading.faults.setdefault("last_frost_safe", "this is before the last frost")
    return {**said}


def _comes_before(one: str, other: str) -> bool:
    """Whether a day of every year lies before another: more than half a year after it."""
    first, second = (date(PLAIN_YEAR, int(day[:2]), int(day[3:])) for day in (one, other))
    return (first - second).days % 365 > HALF_A_YEAR


def read_altitude(text: str) -> float | None:
    """Metres above the sea.

    Raises:
        InputError: it is no height of a garden.
    """
    rule = SITE_FIGURES["altitude_m"]
    return read_number(text.lower().removesuffix("m").strip(), rule.low, rule.high, "m")


def kept_figures(
    before: Mapping[str, Figure], said: Mapping[str, Figure | None]
) -> dict[str, Figure]:
    """What was said before, with what is said now in its place; empty takes a figure away."""
    figures = {name: value for name, value in before.items() if name not in said}
    figures.update({name: one for name, one in said.items() if one is not None and one != ""})
    return figures
