"""A day as a grower types it, read against the day it is typed on.

Never a guess: what could mean two days is refused with a sentence that shows how to write it.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from datetime import date, timedelta

from benchround.core.errors import InputError

MOST_YEARS = 20
"""A year further off than this is a slip of the finger (our proposal)."""
MOST_LETTERS = 40
WEEKDAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
WEEKDAY_NAMES = (
    "monday",
    "tuesday",
    "wednesday",
    "thursday",
    "friday",
    "saturday",
    "sunday",
)
MONTH_NAMES = (
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
)
NEAR_DAYS = {"today": 0, "yesterday": -1, "tomorrow": 1}
DATE_ORDER, DAY_FIRST, MONTH_FIRST = "date order", "day first", "month first"
"""The setting that says how 5/6 is read, and what it may say."""
HOW = "write it as 2026-05-27, 27.5., 27/5, 27 may, today, mon, +3 or -1"

# Compiled when a day is first typed, which a start need not wait for.
_ISO = r"([0-9]{4})-([0-9]{1,2})-([0-9]{1,2})"
_STEP = r"([+-]) ?([0-9]{1,5})"
_DOTTED = r"([0-9]{1,2})\. ?([0-9]{1,2})\.? ?([0-9]{4}|[0-9]{2})?"
_SLASHED = r"([0-9]{1,2})/([0-9]{1,2})(?:/([0-9]{4}|[0-9]{2}))?"
_DAY_MONTH = r"([0-9]{1,2})(?:st|nd|rd|th|\.)? ?([a-z]{3,9})\.?(?: ([0-9]{4}))?"
_MONTH_DAY = r"([a-z]{3,9})\.? ([0-9]{1,2})(?:st|nd|rd|th)?(?:,? ([0-9]{4}))?"
_WEEKDAY = r"(?:(last|next) )?([a-z]{3,9})"
_BARE = r"[0-9]+"


def read_day(text: str, today: date, *, ahead: bool = False, month_first: bool = False) -> date:
    """The day that was typed.

    Args:
        text: as typed. Known are ISO days, day and month with dots, slashes or the month's name
            (with or without a year), today, yesterday, tomorrow, +3, -1, and weekdays.
        today: the day it is typed on. A day and month without a year is the one nearest to it.
        ahead: whether it is a plan: a weekday is then the next such day after today, and a day
            without a year the next from today on. In a record a weekday is the last up to today.
        month_first: whether 5/27 is meant with slashes; dots are always day first.

    Raises:
        InputError: it is no day, could mean two, or lies more than 20 years off.
    """
    said = " ".join(text.split()).lower()
    if not said:
        raise InputError(f"No day was typed: {HOW}.")
    if len(said) > MOST_LETTERS or not said.isprintable():
        raise InputError(f"That is no day: {HOW}.")
    for pattern, reader in _READERS:
        found = re.fullmatch(pattern, said)
        if found:
            day = reader(found, today, ahead, month_first)
            if day is not None:
                return _near(day, today, said)
    raise InputError(f"'{said}' is no day: {HOW}.")


def month_first(settings: Mapping[str, str]) -> bool:
    """Whether the grower of a season with these settings writes the month before the day."""
    return settings.get(DATE_ORDER, "") == MONTH_FIRST


def say_full(day: date, today: date) -> str:
    """The echo beside a day field: weekday, the day in full, and how far off it is."""
    weekday = WEEKDAYS[day.weekday()].capitalize()
    month = MONTH_NAMES[day.month - 1][:3].capitalize()
    return f"{weekday} {day.day} {month} {day.year}, {how_far(day, today)}"


def how_far(day: date, today: date) -> str:
    """How far a day is off, in words."""
    days = (day - today).days
    named = {number: name for name, number in NEAR_DAYS.items()}
    if days in named:
        return named[days]
    return f"in {days} days" if days > 0 else f"{-days} days ago"


def _near(day: date, today: date, said: str) -> date:
    if abs(day.year - today.year) > MOST_YEARS:
        raise InputError(
            f"'{said}' is in the year {day.year}, more than {MOST_YEARS} years from now: "
            "look at the year again."
        )
    return day


def _date(year: int, month: int, day: int, said: str) -> date:
    try:
        return date(year, month, day)
    except ValueError:
        raise InputError(f"'{said}' is in no calendar: look at day and month again.") from None


def _of_year(
    found: re.Match[str], today: date, month: int, day: int, year: str | None, ahead: bool
) -> date:
    said = found.group()
    if year is not None:
        number = int(year) + (today.year // 100 * 100 if len(year) == 2 else 0)
        return _date(number, month, day, said)
    nearest: list[date] = []
    for number in (today.year + 1, today.year, today.year - 1):
        try:
            nearest.append(date(number, month, day))
        except ValueError:
            continue
    if not nearest:
        raise InputError(
            f"'{said}' is in no calendar of {today.year - 1} to {today.year + 1}: "
            "look at day and month again."
        )
    return min(nearest, key=lambda at: (ahead and at < today, abs((at - today).days)))


def _iso(found: re.Match[str], today: date, ahead: bool, month_first: bool) -> date:
    return _date(int(found[1]), int(found[2]), int(found[3]), found.group())


def _step(found: re.Match[str], today: date, ahead: bool, month_first: bool) -> date:
    days = int(found[1] + found[2])
    try:
        return today + timedelta(days=days)
    except OverflowError:
        raise InputError(f"'{found.group()}' is too far off: give a smaller number.") from None


def _dotted(found: re.Match[str], today: date, ahead: bool, month_first: bool) -> date:
    return _of_year(found, today, int(found[2]), int(found[1]), found[3], ahead)


def _slashed(found: re.Match[str], today: date, ahead: bool, month_first: bool) -> date:
    first, second = int(found[1]), int(found[2])
    day, month = (second, first) if month_first else (first, second)
    return _of_year(found, today, month, day, found[3], ahead)


def _day_month(found: re.Match[str], today: date, ahead: bool, month_first: bool) -> date | None:
    month = _month(found[2])
    if month is None:
        return None
    return _of_year(found, today, month, int(found[1]), found[3], ahead)


def _month_day(found: re.Match[str], today: date, ahead: bool, month_first: bool) -> date | None:
    month = _month(found[1])
    if month is None:
        return None
    return _of_year(found, today, month, int(found[2]), found[3], ahead)


def _weekday(found: re.Match[str], today: date, ahead: bool, month_first: bool) -> date | None:
    word = found[2]
    if found[1] is None:
        near = [name for name in NEAR_DAYS if name.startswith(word)]
        if near:
            return today + timedelta(days=NEAR_DAYS[near[0]])
    wanted = next((n for n, name in enumerate(WEEKDAY_NAMES) if name.startswith(word)), None)
    if wanted is None:
        return None
    if found[1] == "next" or (ahead and found[1] is None):
        return today + timedelta(days=(wanted - today.weekday() - 1) % 7 + 1)
    back = (today.weekday() - wanted) % 7
    if found[1] == "last" and back == 0:
        back = 7
    return today - timedelta(days=back)


def _bare(found: re.Match[str], today: date, ahead: bool, month_first: bool) -> date:
    said = found.group()
    if len(said) <= 2:
        raise InputError(
            f"'{said}' could be a day of the month or a number of days: "
            f"write {int(said)}.{today.month}. or +{int(said)}."
        )
    raise InputError(f"'{said}' could be read in more than one way: {HOW}.")


def _month(word: str) -> int | None:
    found = [n for n, name in enumerate(MONTH_NAMES, start=1) if name.startswith(word)]
    return found[0] if len(found) == 1 else None


_Reader = Callable[[re.Match[str], date, bool, bool], date | None]
_READERS: tuple[tuple[str, _Reader], ...] = (
    (_ISO, _iso),
    (_STEP, _step),
    (_DOTTED, _dotted),
    (_SLASHED, _slashed),
    (_BARE, _bare),
    (_WEEKDAY, _weekday),
    (_DAY_MONTH, _day_month),
    (_MONTH_DAY, _month_day),
)
