"""The strips of the year in sentences."""

from __future__ import annotations

from datetime import date

from benchround.core.dates import Span as Days
from benchround.drawing.phases import Phase
from benchround.drawing.stretches import Stretch
from benchround.drawing.words import say, say_days, spoken
from benchround.drawing.year_bar import ALWAYS_SHOWN
from benchround.drawing.year_strips import YearStrip


def strip_words(strip: YearStrip, today: date) -> str:
    """One strip in sentences: what was recorded, and what is expected."""
    where = f", {strip.place}" if strip.place else ""
    past = [one for one in strip.stretches if not one.expected]
    told = [_past_words(one, one is past[-1], today) for one in past]
    ahead = [
        _ahead_words(one, bool(past) and past[-1].phase is one.phase, today)
        for one in strip.stretches
        if one.expected
    ]
    return spoken(
        [
            f"Batch {strip.title}{where}: {strip.stage}",
            f"Recorded: {', '.join(told)}" if told else "",
            f"Expected: {', '.join(filter(None, ahead))}" if any(ahead) else "",
        ]
    )


def _past_words(stretch: Stretch, last: bool, today: date) -> str:
    if stretch.phase is Phase.ENDED:
        return f"ended {say(stretch.opens, today)}"
    if last:
        return f"{stretch.phase} since {say(stretch.opens, today)}"
    if stretch.phase in ALWAYS_SHOWN:
        return f"{stretch.phase} {say_days(Days(stretch.opens, stretch.closes), today)}"
    return f"{stretch.phase} {say(stretch.opens, today)}"


def _ahead_words(stretch: Stretch, goes_on: bool, today: date) -> str:
    lasting = stretch.phase in (*ALWAYS_SHOWN, Phase.OVER)
    if goes_on:
        return f"{stretch.phase} until {say(stretch.closes, today)}" if lasting else ""
    if lasting:
        return f"{stretch.phase} {say_days(Days(stretch.opens, stretch.closes), today)}"
    return f"{stretch.phase} {say(stretch.opens, today)}"
