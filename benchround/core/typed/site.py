"""Where the garden lies and its frost days, as a grower types them."""

from __future__ import annotations

import re
from datetime import date

from benchround.core.errors import InputError
from benchround.core.site_words import read_month_day
from benchround.core.typed.date import MONTH_NAMES, read_day
from benchround.core.typed.figures import shown

PLAIN_YEAR = 2025
"""Any year without 29 February: a frost day is a day of every year."""
_DEGREES = re.compile(
    r"(?P<sign>[+-]?)(?P<whole>[0-9]{1,3}(?:[.,][0-9]{1,6})?) ?(?:°|deg)? ?"
    r"(?:(?P<minutes>[0-9]{1,2}(?:[.,][0-9]{1,4})?) ?(?:'|min)? ?)?(?P<side>[nsew]?)"
)
NORTH_SOUTH, EAST_WEST = ("n", "s"), ("e", "w")


def read_latitude(text: str) -> float | None:
    """Degrees north as typed: "52.5", "-33.9", "33 54 S". None where nothing was typed.

    Raises:
        InputError: it is none, or not from 90 S to 90 N.
    """
    return _degrees(text, NORTH_SOUTH, 90.0, "latitude", "52.5 or 33.9 S")


def read_longitude(text: str) -> float | None:
    """Degrees east as typed: "1.5", "-1.0", "1.0 W". None where nothing was typed.

    Raises:
        InputError: it is none, or not from 180 W to 180 E.
    """
    return _degrees(text, EAST_WEST, 180.0, "longitude", "1.5 or 1.0 W")


def _degrees(text: str, sides: tuple[str, str], most: float, what: str, how: str) -> float | None:
    said = " ".join(text.lower().replace("\N{MINUS SIGN}", "-").split())
    if not said:
        return None
    found = _DEGREES.fullmatch(said)
    side = found["side"] if found else ""
    if found is None or (side and side not in sides) or (side and found["sign"]):
        raise InputError(f"'{shown(text.strip())}' is no {what}: write it as {how}.")
    minutes = float((found["minutes"] or "0").replace(",", "."))
    number = float(found["whole"].replace(",", ".")) + minutes / 60.0
    if minutes >= 60.0 or number > most:
        raise InputError(f"'{shown(text.strip())}' is no {what}: at most {most:g} degrees.")
    back = found["sign"] == "-" or side == sides[1]
    return round(-number if back else number, 4)


def say_latitude(lat_deg: float) -> str:
    """A latitude as "52.5 N"."""
    return f"{abs(lat_deg):g} {'N' if lat_deg >= 0 else 'S'}"


def say_longitude(lon_deg: float) -> str:
    """A longitude as "1 W"."""
    return f"{abs(lon_deg):g} {'E' if lon_deg >= 0 else 'W'}"


def read_year_day(text: str, *, month_first: bool = False) -> str:
    """A day of every year as it is kept, "05-11"; empty where nothing was typed.

    Args:
        text: as typed: "11 may", "11.5.", "05-11"; with slashes as the grower writes them.
        month_first: whether 5/11 is the 11th of May.

    Raises:
        InputError: it is no day, or the 29th of February, which is not in every year.
    """
    said = text.strip()
    if not said:
        return ""
    if re.fullmatch(r"[0-9]{2}-[0-9]{2}", said):
        return read_month_day("that", said)
    if not re.search(r"[0-9]", said) or said[0] in "+-":
        raise InputError(f"'{shown(said)}' is no day of every year: write it as 11 may.")
    try:
        day = read_day(said, date(PLAIN_YEAR, 7, 1), month_first=month_first)
    except InputError:
        raise InputError(f"'{shown(said)}' is no day of every year: write it as 11 may.") from None
    if (day.month, day.day) == (2, 29):
        raise InputError("29 February is not in every year: take the 28th or 1 March.")
    return f"{day.month:02d}-{day.day:02d}"


def say_year_day(kept: str) -> str:
    """A day of every year as "11 May"; as it is where it is none."""
    month, _, day = kept.partition("-")
    if not (month.isdigit() and day.isdigit() and 1 <= int(month) <= 12):
        return kept
    return f"{int(day)} {MONTH_NAMES[int(month) - 1][:3].capitalize()}"
