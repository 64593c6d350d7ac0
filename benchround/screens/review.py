"""What the season taught: what came up, what was lost and why, and what to do differently."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from benchround.core.dates import say_day
from benchround.core.season import Season
from benchround.feeds.next_time import each_finding
from benchround.feeds.next_year import Advice, each_advice, in_order
from benchround.feeds.review import (
    By,
    Loss,
    added_up,
    came_up,
    losses_of,
    not_counted,
    wanted_had,
)
from benchround.screens.keys import REVIEW, bindings
from benchround.screens.page import PageScreen
from benchround.screens.text import BLANK, Line, Role, fit, in_units, line, paragraph
from benchround.screens.unrolled import Pieces, Unrolled
from benchround.screens.words import full_day

INDENT = "  "
NAME_LEAST, NAME_MOST = 16, 40
EMPTY = (
    "Nothing to look back on yet. Press g then s to sow the first batch; what came up, what was "
    "lost and why is told here from the counts and losses you record."
)
Cells = tuple[str, ...]


class ReviewScreen(PageScreen, inherit_bindings=False):
    """The season looked back on."""

    BINDINGS = bindings(REVIEW)
    KEYS_OF = REVIEW

    def page_lines(self, width: int) -> Sequence[Line]:
        """All of it, made as far as it is seen."""
        return Unrolled(review_pieces(self.desk.season, self.desk.today, width))


def review_pieces(season: Season, day: date, width: int) -> Pieces:
    """The whole page, piece by piece; each is soon made, whatever the size of the season."""
    if not season.batches:
        yield paragraph(EMPTY, width, Role.STRONG)
        return
    number = len(season.batches)
    batches = "1 batch" if number == 1 else f"{number} batches"
    yield paragraph(f"The season up to {full_day(day)}: {batches}", width, Role.HEADING)
    yield (BLANK,)
    yield from _differently(season, width)
    yield from _came_up(season, width)
    yield list(_how_long(season, width))
    yield from _lost(season, width)
    yield list(_wanted(season, width))
    yield from _next_year(season, day, width)


def _differently(season: Season, width: int) -> Pieces:
    yield paragraph("What to do differently", width, Role.HEADING)
    found = False
    for finding in each_finding(season):
        found = True
        yield paragraph(finding.found, width, Role.STRONG)
        if finding.therefore:
            yield paragraph(f"Next time: {finding.therefore}.", width, Role.INK, INDENT)
        yield paragraph(f"[{finding.source}]", width, Role.QUIET, INDENT)
    if not found:
        yield paragraph("Nothing stands out so far.", width)


def _came_up(season: Season, width: int) -> Pieces:
    for by in (By.CROP, By.PACKET, By.PLACE):
        rows = [
            (
                one.name,
                str(one.batches),
                str(one.sown),
                str(one.up),
                f"{one.share:.0%}",
                f"{one.limits[0]:.0%} to {one.limits[1]:.0%}",
            )
            for one in came_up(season, by)
        ]
        if rows:
            heads = (str(by), "sowings", "seeds", "up", "share", "true share")
            yield list(_table(f"What came up, by {by}", heads, rows, width))
    waiting = not_counted(season)
    if waiting:
        yield paragraph(f"Without a final count: {', '.join(waiting)}", width, Role.QUIET)


def _how_long(season: Season, width: int) -> Iterator[Line]:
    rows: list[Cells] = []
    for key in sorted({batch.crop for batch in season.batches.values()}):
        time = season.learned(key).time
        if time is not None and time.own:
            own = f"{time.days:.1f}"
            rows.append(
                (
                    season.crop(key).name,
                    str(len(time.own)),
                    in_units(f"{time.at_c:g} C"),
                    f"{time.library_days:.1f}",
                    own,
                )
            )
    if rows:
        heads = ("crop", "sowings", "at", "library", "yours")
        yield from _table("Days to the first seedling", heads, rows, width)


def _lost(season: Season, width: int) -> Pieces:
    found: list[Loss] = []
    for batch in season.batches.values():
        found.extend(losses_of(batch))
        yield ()
    if not found:
        yield (BLANK, *paragraph("No loss was written down.", width))
        return
    for by in By:
        heads = (str(by), "times", "plants") if by is By.CAUSE else (str(by), "plants", "cause")
        rows = [
            (one.name, str(one.times), _number(one.count))
            if by is By.CAUSE
            else (one.name, _number(one.count), one.cause)
            for one in added_up(season, found, by)
        ]
        if rows:
            yield list(_table(f"What was lost, by {by}", heads, rows, width))


def _number(count: int) -> str:
    """Plants lost; a whole sowing nobody had counted is no nought."""
    return str(count) if count else "all"


def _wanted(season: Season, width: int) -> Iterator[Line]:
    rows = [
        (
            " ".join(filter(None, (had.batch, had.crop, had.variety))),
            str(had.wanted),
            str(had.had),
            "planted" if had.planted else "so far",
            _verdict(had.wanted, had.had, planted=had.planted),
        )
        for had in wanted_had(season)
    ]
    if rows:
        heads = ("batch", "wanted", "had", "", "")
        yield from _table("Wanted, and had", heads, rows, width)


def _verdict(wanted: int, had: int, *, planted: bool) -> str:
    if had >= wanted:
        return "enough"
    return f"short {wanted - had}" if planted else f"{wanted - had} missing"


def _next_year(season: Season, day: date, width: int) -> Pieces:
    found: list[Advice] = []
    for advice in each_advice(season, day):
        found.append(advice)
        yield ()
    if found:
        yield (BLANK, *paragraph("What to sow when next year", width, Role.HEADING))
    for one in in_order(found):
        variety = f" '{one.variety}'" if one.variety else ""
        seeds = f", {one.seeds} seeds" if one.seeds else ""
        words = f"{say_day(one.day)} {one.day.year}: {one.crop}{variety}{seeds}"
        yield paragraph(words, width, Role.STRONG)
        yield paragraph(one.why, width, Role.QUIET, INDENT)


def _table(title: str, heads: Cells, rows: Sequence[Cells], width: int) -> Iterator[Line]:
    """A heading and rows in columns: names to the left, as wide as they need; figures behind."""
    columns = range(1, len(heads))
    wide = [max(len(cells[n]) for cells in (heads, *rows)) + 2 for n in columns]
    longest = max(len(cells[0]) for cells in (heads, *rows))
    name = max(NAME_LEAST, min(longest, NAME_MOST, width - sum(wide)))
    yield BLANK
    yield from paragraph(title, width, Role.HEADING)
    for number, cells in enumerate((heads, *rows)):
        figures = "".join(cells[n].rjust(wide[n - 1]) for n in columns)
        roles = (Role.QUIET, Role.QUIET) if number == 0 else (Role.STRONG, Role.INK)
        yield line((fit(cells[0], name), roles[0]), (figures, roles[1]))
