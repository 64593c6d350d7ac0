"""A weather outlook typed as one line, in seconds: `5 23 sun; 8/27 r22 g68 from 17`.

Days are parted by ; or |. Each holds, in any order: two temperatures, a word for the sky, rain
(`r22`, `22mm`, `5mm/h`), gusts (`g68`, `68km/h`, `F8`), when a storm sets in (`from 17`), and the
day it is for (`+1`, `fri`, `2026-05-29`); without one the first piece is today and the next follow
on. Nothing is guessed: a word that is not known refuses the whole line and is named.
"""

from __future__ import annotations

import re
from datetime import date, timedelta

from benchround.core.frozen import dataclass
from benchround.core.record import Draft
from benchround.core.units import METRIC, Units
from benchround.feeds.outlook_day import DayLength, OutlookDay, OutlookLineError
from benchround.feeds.outlook_piece import Piece, how
from benchround.feeds.outlook_settle import settled

MOST_LETTERS = 400
MOST_DAYS = 16


@dataclass(frozen=True, slots=True)
class Outlook:
    """What a line says.

    Attributes:
        days: one for each piece, in order of days.
        today: the day it was typed on.
    """

    days: tuple[OutlookDay, ...]
    today: date

    def drafts(self) -> tuple[Draft, ...]:
        """The records the line makes."""
        return tuple(day.draft() for day in self.days)

    def words(self) -> tuple[str, ...]:
        """The echo, one line a day."""
        return tuple(day.words(self.today) for day in self.days)


def read_outlook(line: str, today: date, day_length_h: DayLength, units: Units = METRIC) -> Outlook:
    """Read a typed weather line.

    Args:
        line: as typed.
        today: the day it is typed on; its first piece is for it unless it names another day.
        day_length_h: hours of daylight, or day -> hours, for the word of the sky.
        units: what temperatures and rain without a unit are typed in.

    Raises:
        OutlookLineError: a word is not known or a figure cannot be; nothing is taken.
    """
    if len(line) > MOST_LETTERS or not line.replace("\t", " ").isprintable():
        raise OutlookLineError(f"That is no weather line: {how(units)}.", line)
    pieces = [piece.strip() for piece in re.split(r"[;|]", line)]
    while pieces and not pieces[-1]:
        pieces.pop()
    if not pieces or not all(pieces):
        raise OutlookLineError(f"Nothing was typed for a day: {how(units)}.", line)
    if len(pieces) > MOST_DAYS:
        raise OutlookLineError(f"{len(pieces)} days are more than {MOST_DAYS}.", line)
    found: list[OutlookDay] = []
    following = today
    for piece in pieces:
        reading = Piece(piece, line, today, units).read()
        day = reading.day or following
        if any(other.day == day for other in found):
            raise OutlookLineError(f"Two pieces are for {day.isoformat()}: name their days.", line)
        length_h = day_length_h if isinstance(day_length_h, int | float) else day_length_h(day)
        found.append(settled(reading, day, float(length_h)))
        following = day + timedelta(days=1)
    return Outlook(tuple(sorted(found, key=lambda outlook: outlook.day)), today)
