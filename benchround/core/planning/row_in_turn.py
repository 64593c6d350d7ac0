"""The row of sowings that follow one, as far as the growing year goes, and what comes too late.

Each is counted from the one before it by `next_in_turn`, as the round will ask for it; the row is
what the grower can look ahead at before the first of them is sown.
"""

from __future__ import annotations

from datetime import date

from benchround.core.crop.crop import Crop
from benchround.core.dates import Year, say_day
from benchround.core.frozen import dataclass
from benchround.core.planning.in_turn import MeanOn, NextSowing, gap, next_in_turn, turn_of
from benchround.core.planning.last_sowing import last_sowing
from benchround.core.season import Season

MOST_TURNS = 60
"""More sowings than any crop's days between them leave room for in a year."""
BEFORE_FROST, AFTER_WINDOW = "frost may come before it pays", "its sowing time is over by then"


@dataclass(frozen=True, slots=True)
class RowInTurn:
    """The sowings after one of them.

    Attributes:
        turns: each with its first and its best day; none where the next comes too late already.
        too_late: the best day of the first one that comes too late; None where the row ends with
            the growing year.
        because: why it is too late; empty where none is.
        how: what the days between the sowings rest on, in words.
        source: where that comes from.
    """

    turns: tuple[NextSowing, ...]
    too_late: date | None
    because: str
    how: str
    source: str

    def words(self, most: int = MOST_TURNS) -> str:
        """The row in one sentence.

        Args:
            most: best days named; of more only how many there are and the last.
        """
        return "; ".join(filter(None, (self._again(most), self._too_late())))

    def short(self) -> str:
        """The next sowing and how many follow it, else that there is none, in a few words."""
        if self.turns:
            more = len(self.turns) - 1
            return f"again {say_day(self.turns[0].best)}{f', {more} more' if more else ''}"
        return "" if self.too_late is None else f"{say_day(self.too_late)} is too late for another"

    def _again(self, most: int) -> str:
        days = [say_day(turn.best) for turn in self.turns]
        if not days:
            return ""
        left = len(days) - most
        more = f" and {left} more, the last {days[-1]}" if left > 0 else ""
        return f"sow again about {', '.join(days[:most])}{more}"

    def _too_late(self) -> str:
        if self.too_late is None:
            return ""
        another = "" if self.turns else " for another"
        return f"{say_day(self.too_late)} is too late{another}: {self.because}"


def row_in_turn(crop: Crop, sown: date, year: Year, mean_c: MeanOn) -> RowInTurn | None:
    """The sowings that follow one; None where the crop is sown once.

    Args:
        crop: its rules.
        sown: day of the sowing they follow.
        year: the site's year.
        mean_c: day -> mean outside temperature, measured, expected or usual.
    """
    if crop.succession_days is None:
        return None
    turns: list[NextSowing] = []
    at, end = sown, turn_of(year, sown)
    turn = next_in_turn(crop, at, year, mean_c)
    while turn is not None and at < turn.best < end and len(turns) < MOST_TURNS:
        turns.append(turn)
        at = turn.best
        turn = next_in_turn(crop, at, year, mean_c)
    _, best, _, _ = gap(crop, at, year, mean_c)
    _, _, how, source = gap(crop, sown, year, mean_c)
    if best >= end:
        return RowInTurn(tuple(turns), None, "", how, source)
    last = last_sowing(crop, year, sown)
    because = BEFORE_FROST if last is not None and best > last else AFTER_WINDOW
    return RowInTurn(tuple(turns), best, because, how, source)


def row_here(season: Season, crop: Crop, sown: date) -> RowInTurn | None:
    """The same at the season's site, in the weather it knows of."""
    return row_in_turn(crop, sown, season.site.year, lambda day: mean_here(season, day))


def mean_here(season: Season, day: date) -> float:
    """The mean temperature outside: known of the day, else usual, C."""
    known = season.weather.on(day)
    mean_c = known.mean_c if known is not None else None
    return season.site.usual_mean_c(day) if mean_c is None else mean_c
