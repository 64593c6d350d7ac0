"""Degrees, lengths and winds as the grower reads and types them; kept in C, mm and km/h.

Figures by themselves are said and read here; whole sentences are turned by `unit_words`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from enum import StrEnum
from typing import TypeVar

from benchround.core.errors import InputError
from benchround.core.frozen import dataclass
from benchround.core.typed.figures import shown

INCH_MM = 25.4
"""Exact: International yard and pound agreement, 1959 (from memory)."""
MM_A_CM = 10.0
KMH_PER_MPH, KMH_PER_MS, KMH_PER_KNOT = 1.609344, 3.6, 1.852
"""Exact: the mile of 1959 and the international nautical mile (from memory)."""
F_DEGREE_C = 5.0 / 9.0
"""One degree F as a difference in degrees C, by definition."""
DEGREES, RAIN = "units", "rain_units"
"""The settings that hold the grower's choice."""
Unit = TypeVar("Unit", bound=StrEnum)
_TYPED = r"([+-]?(?:[0-9]{1,6}(?:[.,][0-9]{1,3})?|[.,][0-9]{1,3})) ?([a-z\"]*)"


class Degrees(StrEnum):
    """How temperatures are said."""

    C = "C"
    F = "F"


class Rain(StrEnum):
    """How rain is said."""

    MM = "mm"
    INCH = "inch"


_RAIN_WORDS = {"mm": Rain.MM, **dict.fromkeys(("in", "inch", "inches", '"'), Rain.INCH)}


def fahrenheit(temp_c: float) -> float:
    """A temperature in degrees F: 1.8 C + 32, by definition."""
    return temp_c * 1.8 + 32.0


def celsius(temp_f: float) -> float:
    """A temperature in degrees C: (F - 32) / 1.8, by definition."""
    return (temp_f - 32.0) / 1.8


def degrees(temp_c: float, places: int = 0) -> str:
    """A temperature in C without its unit, to so many places; nothing has no minus before it."""
    return f"{round(temp_c, places) + 0.0:.{places}f}"


@dataclass(frozen=True, slots=True)
class Units:
    """The grower's choice."""

    degrees: Degrees = Degrees.C
    rain: Rain = Rain.MM

    def figure(self, temp_c: float) -> str:
        """A temperature without its unit; whole degrees F, C as it is to one decimal."""
        if self.degrees is Degrees.F:
            return f"{_whole(fahrenheit(temp_c))}"
        return f"{round(temp_c, 1) + 0.0:g}"

    def temp(self, temp_c: float) -> str:
        """A temperature with its unit."""
        return f"{self.figure(temp_c)} {self.degrees}"

    def span(self, low_c: float | None, high_c: float | None) -> str:
        """Lowest to highest, with a question mark for what is not known."""
        low, high = ("?" if one is None else self.figure(one) for one in (low_c, high_c))
        return f"{low} to {high} {self.degrees}"

    def fall(self, rain_mm: float) -> str:
        """Rain with its unit; inches to two decimals, never nothing where some fell."""
        if self.rain is Rain.MM:
            return f"{rain_mm:g} mm"
        inches = rain_mm / INCH_MM
        return "under 0.01 in" if 0.0 < inches < 0.005 else f"{inches:.2f} in"

    def read_temp_c(self, text: str, least_c: float, most_c: float) -> float | None:
        """A typed temperature in C; without a unit it is in the grower's. None for nothing typed.

        Raises:
            InputError: it is no temperature, or not between the two.
        """
        found = _number(text, {"c": Degrees.C, "f": Degrees.F}, self.degrees, "temperature")
        if found is None:
            return None
        number, unit = found
        temp_c = (round(celsius(number), 1) if unit is Degrees.F else number) + 0.0
        if not least_c <= temp_c <= most_c:
            raise InputError(
                f"{number:g} {unit} is not between {self.temp(least_c)} and {self.temp(most_c)}."
            )
        return temp_c

    def read_fall_mm(self, text: str, most_mm: float) -> float | None:
        """Typed rain in mm; without a unit it is in the grower's. None where nothing was typed.

        Raises:
            InputError: it is no amount of rain, or more than can fall.
        """
        found = _number(text, _RAIN_WORDS, self.rain, "amount of rain")
        if found is None:
            return None
        number, unit = found
        rain_mm = round(number * INCH_MM, 1) if unit is Rain.INCH else number
        if not 0.0 <= rain_mm <= most_mm:
            raise InputError(f"{number:g} {unit} is not between 0 and {self.fall(most_mm)}.")
        return rain_mm

    def read_length_mm(self, text: str, most_mm: float) -> float | None:
        """A typed length in mm; without a unit it is in the grower's. None for nothing typed.

        Raises:
            InputError: it is no length, or greater than can be.
        """
        found = _number(text, _RAIN_WORDS, self.rain, "length")
        if found is None:
            return None
        number, unit = found
        length_mm = round(number * INCH_MM, 1) if unit is Rain.INCH else number
        if not 0.0 <= length_mm <= most_mm:
            most = f"{self.length(most_mm)} {self.length_unit}"
            raise InputError(f"{number:g} {unit} is not between 0 and {most}.")
        return length_mm

    @property
    def speed_unit(self) -> str:
        """What a wind is said in: who reads inches reads miles an hour."""
        return "mph" if self.rain is Rain.INCH else "km/h"

    def speed(self, wind_kmh: float) -> str:
        """A wind with its unit: whole miles an hour, or km/h as it is."""
        if self.rain is Rain.MM:
            return f"{wind_kmh:g} km/h"
        return f"{miles_an_hour(wind_kmh)} mph"

    @property
    def length_unit(self) -> str:
        """What a length is said in."""
        return "in" if self.rain is Rain.INCH else "mm"

    def length(self, length_mm: float) -> str:
        """A length without its unit; as it is in mm."""
        return inches(length_mm) if self.rain is Rain.INCH else f"{length_mm:g}"


METRIC = Units()
"""Degrees C and mm, as everything is kept."""


def miles_an_hour(wind_kmh: float) -> str:
    """A wind in mph without its unit, whole; to one decimal below 1."""
    wind_mph = wind_kmh / KMH_PER_MPH
    return f"{_whole(wind_mph)}" if wind_mph >= 1.0 else f"{round(wind_mph, 1):g}"


def inches(length_mm: float) -> str:
    """A length in inches without its unit: to two decimals below one inch, then to one."""
    length = abs(length_mm) / INCH_MM
    places = 3 if length < 0.01 else 2 if length < 1 else 1
    return f"{round(length_mm / INCH_MM, places):g}"


def units_of(settings: Mapping[str, str]) -> Units:
    """The units a season's settings ask for; C and mm where they say nothing."""
    degrees, rain = settings.get(DEGREES, ""), settings.get(RAIN, "")
    return Units(
        Degrees(degrees) if degrees in set(Degrees) else Degrees.C,
        Rain(rain) if rain in set(Rain) else Rain.MM,
    )


def _whole(number: float) -> int:
    """The nearest whole number, halves away from zero as a grower rounds them."""
    return int(number + 0.5) if number >= 0 else -int(-number + 0.5)


def _number(
    text: str, words: Mapping[str, Unit], usual: Unit, what: str
) -> tuple[float, Unit] | None:
    said = " ".join(text.lower().replace("\N{DEGREE SIGN}", "").split())
    if not said:
        return None
    found = re.fullmatch(_TYPED, said)
    unit = usual if found and not found[2] else words.get(found[2]) if found else None
    if found is None or unit is None:
        raise InputError(f"'{shown(text.strip())}' is no {what}.")
    return float(found[1].replace(",", ".")), unit
