"""The end of the season's report: what to do differently, and what to sow when next year."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from benchround.core.dates import say_date
from benchround.core.season import Season
from benchround.feeds.next_time import findings
from benchround.feeds.next_year import next_year
from benchround.feeds.pages import Block, Grid, Heading, Words
from benchround.feeds.report_words import number


def differently(season: Season) -> Iterator[Block]:
    """What the season's losses and numbers say, each with what it rests on."""
    found = findings(season)
    if found:
        yield Heading("What to do differently")
        rows = tuple((one.found, one.therefore, one.source) for one in found)
        yield Grid(("what happened", "next time", "rests on"), rows)


def sow_next_year(season: Season, day: date) -> Iterator[Block]:
    """Every sowing a year on, with its day and number."""
    advised = next_year(season, day)
    if not advised:
        return
    yield Heading("What to sow when next year")
    yield Words(
        "The last sowing's day a year on, later by as long as plants stood ready. So many seeds "
        "give the plants wanted nine times in ten, by what came up here, with the range of that "
        "share in brackets. Both rules are our proposal."
    )
    rows = tuple(
        (
            say_date(one.day),
            one.crop,
            one.variety,
            number(one.wanted),
            number(one.seeds),
            "; ".join(one.rests),
        )
        for one in advised
    )
    yield Grid(("sow on", "crop", "variety", "wanted", "seeds", "because"), rows, frozenset({3, 4}))
