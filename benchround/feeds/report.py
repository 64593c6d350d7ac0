"""The season's report: what was raised, what came up, what was lost and why, what to sow next."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.dates import say_date
from benchround.core.lifecycle import ENDED, Stage
from benchround.core.season import Season
from benchround.feeds.pages import Block, Grid, Heading, Page, Words
from benchround.feeds.report_ahead import differently, sow_next_year
from benchround.feeds.report_words import number
from benchround.feeds.review import (
    By,
    Had,
    came_up,
    counted_of,
    losses,
    not_counted,
    seeds_sown,
    wanted_had,
)

MOST_NAMED = 60


def report_page(season: Season, name: str, day: date) -> Page:
    """The report of a season as it stands on a day.

    Args:
        season: the season.
        name: its name.
        day: the day it is written.
    """
    if not season.batches:
        words = "Nothing was sown or planted yet, so there is nothing to tell."
        return Page(name, (Words(f"As of {say_date(day)}."), Words(words)))
    blocks = (
        Words(f"As of {say_date(day)}. {_sums(season)}"),
        *_raised(season),
        *_came_up(season),
        *_lost(season),
        *_wanted(season),
        *differently(season),
        *sow_next_year(season, day),
    )
    return Page(name, blocks)


def _sums(season: Season) -> str:
    batches = season.batches.values()
    seeds = sum(seeds_sown(batch) for batch in batches)
    planted = sum(batch.tally.planted or 0 for batch in batches)
    lost = sum(sum(batch.tally.losses.values()) for batch in batches)
    count = len(season.batches)
    return (
        f"{count} batch{'es' if count != 1 else ''}, {seeds} seeds sown by number, "
        f"{planted} planted, {lost} lost."
    )


def _raised(season: Season) -> Iterator[Block]:
    yield Heading("What was raised")
    columns = ("batch", "crop", "variety", "begun", "seeds", "up", "planted", "alive", "stage")
    rows = tuple(
        (
            batch.id,
            season.crop(batch.crop).name,
            batch.variety,
            say_date(batch.begun),
            number(seeds_sown(batch) or None),
            number(_up(season, batch)),
            number(batch.tally.planted),
            number(_alive(batch)),
            str(batch.main.stage),
        )
        for batch in (season.batches[name] for name in sorted(season.batches))
    )
    yield Grid(columns, rows, frozenset({4, 5, 6, 7}))


def _came_up(season: Season) -> Iterator[Block]:
    yield Heading("What came up")
    yield Words(
        "Share of the seeds sown that came up, where the last count is the final one. The range "
        "is where the share lies nineteen times in twenty (score interval, Wilson 1927)."
    )
    told = False
    for by in (By.CROP, By.PACKET, By.PLACE):
        rows = tuple(
            (
                _packet(season, one.name) if by is By.PACKET else one.name,
                str(one.batches),
                str(one.sown),
                str(one.up),
                f"{one.share:.0%}",
                f"{one.limits[0]:.0%} to {one.limits[1]:.0%}",
            )
            for one in came_up(season, by)
        )
        if rows:
            told = True
            yield Heading(f"By {by}", 3)
            yield Grid(
                (str(by), "batches", "sown", "up", "share", "range"), rows, frozenset({1, 2, 3, 4})
            )
    if not told:
        yield Words("Nothing was counted to the end yet.")
    waiting = not_counted(season)
    if waiting:
        yield Words(f"Sown by number but without a final count: {_named(waiting)}.")


def _lost(season: Season) -> Iterator[Block]:
    yield Heading("What was lost, and why")
    causes = losses(season, By.CAUSE)
    if not causes:
        yield Words("No loss was written down.")
        return
    rows = tuple((one.cause, str(one.times), str(one.count)) for one in causes)
    yield Grid(("cause", "times", "plants"), rows, frozenset({1, 2}))
    for by in (By.CROP, By.PACKET, By.PLACE):
        found = losses(season, by)
        if found:
            yield Heading(f"By {by}", 3)
            named = tuple(
                (
                    _packet(season, one.name) if by is By.PACKET else one.name,
                    one.cause,
                    str(one.times),
                    str(one.count),
                )
                for one in found
            )
            yield Grid((str(by), "cause", "times", "plants"), named, frozenset({2, 3}))
    whole = [name for name, batch in sorted(season.batches.items()) if _gone(batch)]
    if whole:
        yield Words(
            f"Lost altogether: {_named(whole)}. Where nobody had counted them before, their "
            "number stands as 0."
        )


def _wanted(season: Season) -> Iterator[Block]:
    rows = tuple(
        (
            had.batch,
            had.crop,
            had.variety,
            str(had.wanted),
            str(had.had),
            _counted_as(season, had),
        )
        for had in wanted_had(season)
    )
    if rows:
        yield Heading("Wanted, and had")
        columns = ("batch", "crop", "variety", "wanted", "had", "counted as")
        yield Grid(columns, rows, frozenset({3, 4}))


def _counted_as(season: Season, had: Had) -> str:
    if had.planted:
        return "planted"
    return "all lost" if _gone(season.batches[had.batch]) else "alive so far"


def _packet(season: Season, name: str) -> str:
    """A packet's id with what is in it, where it is on the books."""
    packet = season.packets.get(name)
    if packet is None:
        return name
    year = str(packet.year) if packet.year else ""
    held = (season.crop(packet.crop).name, packet.variety, year)
    return f"{name}: {' '.join(part for part in held if part)}"


def _named(batches: Sequence[str]) -> str:
    """Batches by their ids, the first of many and how many more."""
    more = len(batches) - MOST_NAMED
    return ", ".join(batches[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def _up(season: Season, batch: Batch) -> int | None:
    counted = counted_of(season, batch)
    return counted[0] if counted else batch.tally.up


def _alive(batch: Batch) -> int | None:
    known = [part.alive for part in batch.parts if part.stage not in ENDED]
    counts = [count for count in known if count is not None]
    return sum(counts) if counts else None


def _gone(batch: Batch) -> bool:
    return batch.main.stage is Stage.LOST
