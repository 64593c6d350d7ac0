"""The rows of the water left and of an absence, and what is known of one tray, in words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from benchround.core.dates import say_day
from benchround.core.season import Season
from benchround.core.water.run import DayPart
from benchround.core.water.tray_outlook import Away, TrayOutlook
from benchround.drawing.water import WaterLeft, water_lines, water_rows, water_words
from benchround.drawing.words import counted
from benchround.screens.pictures import glyphs, shown
from benchround.screens.text import BLANK, Line, Role, fit, line, paragraph
from benchround.screens.widgets.pick_list import Row

NO_TRAYS = "Nothing stands in a tray yet: g, then s sows the first."
ALL_LAST = "Every tray lasts, if it is filled on the morning of leaving."
ABSENCE = "Filled that morning, these run dry first; rain is not counted on."
PLACE_WIDE, WHEN_WIDE = 14, 29


def head_row() -> Row:
    """The headings over the trays."""

    def words(width: int) -> Line:
        heads = shown(water_lines([_ANY], max(0, width - 2), glyphs()))[0]
        return (("  ", Role.QUIET), *heads)

    return Row(words)


_ANY = WaterLeft("", "", "", date(2000, 1, 1), 0.0, 0.0, "", None)
"""A tray only for its headings."""


def tray_row(tray: WaterLeft) -> Row:
    """A tray: how long it lasts in words, how much is left as a bar."""

    def words(width: int) -> Line:
        return shown(water_rows([tray], width, glyphs()))[0]

    return Row(words, tray.about)


def soonest_first(found: Iterable[Away]) -> list[Away]:
    """Trays by the day they are dry and the part of that day."""
    parts = list(DayPart)

    def key(one: Away) -> tuple[date, int, str, str]:
        dry = one.absence.dry
        return one.dry_on, parts.index(dry.part) if dry else len(parts), one.batch, one.part

    return sorted(found, key=key)


def away_row(one: Away, title: str, season: Season, leaving: date) -> Row:
    """A tray that does not last: on which day of the absence it is dry."""
    place = season.place(one.place)
    number = (one.dry_on - leaving).days + 1
    part = f", {one.absence.dry.part}" if one.absence.dry else ""
    when = f"day {number}, {say_day(one.dry_on)}{part}"

    def words(width: int) -> Line:
        room = max(0, width - PLACE_WIDE - WHEN_WIDE)
        return line(
            (fit(when, WHEN_WIDE), Role.LATE),
            (fit(place.name if place else one.place, PLACE_WIDE), Role.QUIET),
            (fit(title, room), Role.STRONG),
        )

    return Row(words, " ".join(filter(None, (one.batch, one.part))))


def tray_told(
    found: TrayOutlook | None, left: WaterLeft | None, every: Sequence[WaterLeft], width: int
) -> Iterator[Line]:
    """What is known of a tray, then all trays in sentences."""
    if found is None or left is None:
        yield from paragraph("No tray is picked." if every else "", width, Role.QUIET)
    else:
        yield from paragraph(water_words([left]), width, Role.STRONG)
        for words in _known(found):
            yield from paragraph(words, width, Role.INK, "  ")
    if every:
        yield BLANK
        yield from paragraph("All trays, the driest first", width, Role.HEADING)
        for tray in every:
            yield from paragraph(water_words([tray]), width, Role.INK, "  ")


def _known(found: TrayOutlook) -> Iterator[str]:
    tray, learnt, full = found.holder.water, found.factor, found.full
    how = "watered" if full.known else "no watering written down since"
    within = (
        ", its spare water gone within the day"
        if full.known and found.dry_since == full.day
        else ""
    )
    yield f"{how} {say_day(full.day)}{within}; {_takes(found)}"
    yield _again(found)
    yield (
        f"{found.holder.name}: {tray.capacity_ml:.0f} ml easily available {found.holder.each}, of "
        f"which {found.share:.0%} may go ({found.roots})"
    )
    if learnt.looks or learnt.weighings:
        signs = f"{counted(learnt.looks, 'look')}, {counted(learnt.weighings, 'weighing')}"
        yield f"it dries at {learnt.factor:.2f} of the model here ({signs})"
    if found.look_today is not None:
        yield f"called {found.look_today} today"
    for words in (*found.holder.assumed, *found.known.assumed):
        yield f"assumed: {words}"


def _takes(found: TrayOutlook) -> str:
    """What today takes, told apart from what is there to take."""
    if round(found.lost_ml):
        return f"{found.lost_ml:.0f} ml go today"
    return "less than 1 ml goes today" if round(found.left_ml) else "none is left to go"


def _again(found: TrayOutlook) -> str:
    """When it wants water again after it is filled this morning."""
    if found.again is None:
        return "filled this morning, it lasts more than nine days"
    if found.again == found.day:
        return "filled this morning, it wants water again today: look once more in the afternoon"
    return f"filled this morning, it is next due on {say_day(found.again)}"
