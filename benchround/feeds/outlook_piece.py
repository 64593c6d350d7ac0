"""One day's piece of a typed weather line, on its way from words to figures."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, time, timedelta

from benchround.core.errors import InputError
from benchround.core.sky.beaufort import mean_wind_ms
from benchround.core.sky.known_day import MOST_GUST_KMH, MOST_RAIN_HOUR_MM, MOST_RAIN_MM
from benchround.core.sky.weather import COLDEST_C, HOTTEST_C
from benchround.core.typed.date import read_day
from benchround.core.units import KMH_PER_MS, METRIC, Degrees, Rain, Units
from benchround.feeds.outlook_day import OutlookLineError
from benchround.feeds.outlook_tokens import (
    CLOCK,
    DAY,
    FORCE,
    GUST,
    HIGH,
    LOW,
    PAIR,
    RAIN,
    RAIN_HOUR,
    SUN,
    TEMP,
    WEEKDAY,
    clock_of,
    kmh_per,
    words_of,
)
from benchround.feeds.outlook_words import FILLERS, Sky, phrase_of, sky_of, words_near

FURTHEST_DAYS = 30
"""No outlook reaches further (common practice, no source)."""
STRONGEST_FORCE = 12


FROST = "frost"


def how(units: Units) -> str:
    """How a line is written, its figures in the grower's units."""
    temps = "41 73" if units.degrees is Degrees.F else "5 23"
    rain = "r0.1" if units.rain is Rain.INCH else "r2"
    gust = "g25" if units.rain is Rain.INCH else "g40"
    return f"write it like: {temps} sun {rain} {gust} from 17"


@dataclass(slots=True)
class Piece:
    """One day's piece on its way from words to figures."""

    typed: str
    line: str
    today: date
    units: Units = METRIC
    day: date | None = None
    temps: list[float] = field(default_factory=list)
    temps_typed: list[str] = field(default_factory=list)
    low: float | None = None
    high: float | None = None
    skies: list[Sky] = field(default_factory=list)
    sun_h: float | None = None
    rain_mm: float | None = None
    rain_hour_mm: float | None = None
    gust_kmh: float | None = None
    wind: str = ""
    storm_from: time | None = None

    def read(self) -> Piece:
        """Take every word in turn."""
        words = words_of(self.typed)
        skip = False
        for index, word in enumerate(words):
            if skip:
                skip = False
                continue
            after = words[index + 1] if index + 1 < len(words) else ""
            phrase = phrase_of(word, after)
            if phrase is not None:
                self.skies.append(phrase)
                skip = True
            elif not self._figure(word) and not self._word(word):
                self._refuse(word)
        return self

    def _figure(self, word: str) -> bool:
        """Take a word with a figure in it; False where it is none."""
        temp, fall = self.units.temp, self.units.fall
        if DAY.fullmatch(word) or WEEKDAY.fullmatch(word):
            self._take_day(word)
        elif found := PAIR.fullmatch(word):
            # a unit behind the second figure alone is meant for both
            unit = found[2] or found[4]
            self.temps += [self._temp(found[1], unit, word), self._temp(found[3], found[4], word)]
            self.temps_typed += [found[1], found[3]]
        elif found := TEMP.fullmatch(word):
            self.temps.append(self._temp(found[1], found[2], word))
            self.temps_typed.append(word)
        elif found := LOW.fullmatch(word):
            low = self._temp(found[1], found[2], word)
            self.low = self._once("lowest", self.low, low, word, temp)
        elif found := HIGH.fullmatch(word):
            high = self._temp(found[1], found[2], word)
            self.high = self._once("highest", self.high, high, word, temp)
        elif found := RAIN_HOUR.fullmatch(word):
            most = self._depth(found, MOST_RAIN_HOUR_MM, word)
            self.rain_hour_mm = self._once("rain an hour", self.rain_hour_mm, most, word, fall)
        elif found := RAIN.fullmatch(word):
            self.take_rain(self._depth(found, MOST_RAIN_MM, word), word)
        elif found := GUST.fullmatch(word):
            unit = found[2] or found[4] or self.units.speed_unit
            self._gust(float(found[1] or found[3]) * kmh_per(unit), word)
        elif found := FORCE.fullmatch(word):
            self.take_force(int(found[1]), f"wind force {int(found[1])}", word)
        elif found := CLOCK.fullmatch(word):
            self.storm_from = self._once_time(clock_of(found), word)
        elif found := SUN.fullmatch(word):
            self.sun_h = self._once(
                "hours of sun", self.sun_h, float(found[1]), word, "{:g} h".format
            )
        else:
            return False
        return True

    def _word(self, word: str) -> bool:
        sky = None if word in FILLERS else sky_of(word)
        if sky is not None:
            self.skies.append(sky)
        return sky is not None or word in FILLERS

    def _take_day(self, word: str) -> None:
        if self.day is not None:
            raise self.error(f"'{word}': a piece is for one day, and it names two.", word)
        try:
            day = read_day(word, self.today, ahead=True)
        except InputError as error:
            raise self.error(str(error), word) from None
        if not self.today <= day <= self.today + timedelta(days=FURTHEST_DAYS):
            raise self.error(
                f"'{word}' is {day.isoformat()}: an outlook is for today and up to "
                f"{FURTHEST_DAYS} days ahead.",
                word,
            )
        self.day = day

    def _temp(self, figure: str, unit: str, word: str) -> float:
        """A temperature in C; without a unit it is in the grower's."""
        try:
            found = self.units.read_temp_c(f"{figure}{unit}", COLDEST_C, HOTTEST_C)
        except InputError as error:
            raise self.error(f"'{word}': {error}", word) from None
        return found or 0.0

    def _depth(self, found: re.Match[str], most_mm: float, word: str) -> float:
        """Rain in mm; without a unit it is in the grower's."""
        figure, unit = found[1] or found[3], found[2] or found[4] or ""
        try:
            depth = self.units.read_fall_mm(f"{figure}{unit}", most_mm)
        except InputError as error:
            raise self.error(f"'{word}': {error}", word) from None
        return depth or 0.0

    def _once(
        self, what: str, before: float | None, value: float, word: str, say: Callable[[float], str]
    ) -> float:
        if before is not None:
            raise self.error(f"'{word}': {what} was given already, {say(before)}.", word)
        return value

    def _once_time(self, at: time | None, word: str) -> time:
        if at is None or self.storm_from is not None:
            raise self.error(f"'{word}' is no time a storm begins: write from 17 or 17:30.", word)
        return at

    def take_rain(self, value: float, word: str) -> None:
        """Take the day's rain, once."""
        self.rain_mm = self._once("rain", self.rain_mm, value, word, self.units.fall)

    def _gust(self, kmh: float, word: str) -> None:
        gust, speed = round(kmh, 1), self.units.speed
        if gust > MOST_GUST_KMH:
            most = f"0 to {speed(MOST_GUST_KMH)}"
            raise self.error(f"'{word}': {speed(gust)} cannot be ({most}).", word)
        self.gust_kmh = self._once("wind", self.gust_kmh, gust, word, speed)

    def take_force(self, force: int, said: str, word: str) -> None:
        """Take a wind force, its mean wind standing for the gusts."""
        if force > STRONGEST_FORCE:
            raise self.error(f"'{word}': the scale ends at force 12.", word)
        self._gust(float(round(mean_wind_ms(force) * KMH_PER_MS)), word)
        self.wind = said

    def _refuse(self, word: str) -> None:
        near = words_near(word)
        hint = f"is it {' or '.join(near)}?" if near else f"{how(self.units)}."
        if word.startswith(FROST):
            hint = f"a frost is told by the day's lowest and highest; {how(self.units)}."
        raise self.error(f"'{word}' was not understood: {hint} Nothing was recorded.", word)

    def error(self, message: str, word: str) -> OutlookLineError:
        """The refusal of the line, with the word at fault."""
        return OutlookLineError(message, self.line, word)
