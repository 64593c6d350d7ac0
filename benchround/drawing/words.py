"""Days, counts and lists as they are said in the sentences beside a picture."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from benchround.core.dates import Span as Days
from benchround.core.typed.date import MONTH_NAMES, WEEKDAYS
from benchround.drawing.cells import clean


def short_month(day: date) -> str:
    """The month in three letters."""
    return MONTH_NAMES[day.month - 1][:3].capitalize()


def say(day: date, today: date) -> str:
    """A day as "9 Apr", with its year where that is not today's."""
    year = "" if day.year == today.year else f" {day.year}"
    return f"{day.day} {short_month(day)}{year}"


def say_short(day: date, today: date) -> str:
    """A day in at most seven letters: "9 Apr", in another year "Apr '25"."""
    if day.year == today.year:
        return f"{day.day} {short_month(day)}"
    return f"{short_month(day)} '{day.year % 100:02d}"


def say_weekday(day: date) -> str:
    """A day as "Wed 27 May"."""
    return f"{WEEKDAYS[day.weekday()].capitalize()} {day.day} {short_month(day)}"


def say_days(days: Days, today: date) -> str:
    """A span of days as "9 Apr to 3 May", a single day as itself."""
    if days.opens == days.closes:
        return say(days.opens, today)
    first = say(days.opens, today)
    if days.opens.year == days.closes.year != today.year:
        first = f"{days.opens.day} {short_month(days.opens)}"
    return f"{first} to {say(days.closes, today)}"


def counted(number: int, thing: str, things: str = "") -> str:
    """A count with its noun: "1 day", "3 days"."""
    return f"{number} {thing if number == 1 else things or thing + 's'}"


def listed(words: Sequence[str], last: str = "and") -> str:
    """Words in a row: "a, b and c"."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def sentence(text: str) -> str:
    """A text made harmless, with a capital at its head and a stop at its end."""
    seen = clean(text).strip()
    if not seen:
        return ""
    stop = "" if seen.endswith((".", "!", "?")) else "."
    return f"{seen[0].upper()}{seen[1:]}{stop}"


def spoken(sentences: Sequence[str]) -> str:
    """Sentences in a row."""
    return " ".join(one for one in map(sentence, sentences) if one)
