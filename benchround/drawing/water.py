"""Water left: each tray as a bar of what may still go, with the days it lasts, driest first."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from benchround.core.frozen import dataclass
from benchround.core.season import Season
from benchround.core.water.run import DayPart
from benchround.core.water.tray_outlook import DAYS_AHEAD, TrayOutlook, tray_outlook
from benchround.drawing.canvas import UNICODE, Glyphs, Inked, Line, Role, fit, within_width
from benchround.drawing.words import counted, say_weekday, spoken

PARTS = tuple(DayPart)
BY_WORDS = {
    DayPart.MORNING: "dry by mid-morning",
    DayPart.MIDDAY: "dry by midday",
    DayPart.AFTERNOON: "dry by afternoon",
    DayPart.EVENING: "dry by tonight",
}
DRY_BY_LAST_NIGHT = "dry by last night"
"""Of a tray emptied in the course of yesterday, on the morning of which it may have been filled."""
STATE = 18
"""Cells of the state in words: the longest is "dry by mid-morning"."""
NARROW_PLACE = 10
SHARE_WIDE = 5
SPARE, SHORT_SPARE = "left to spare", "left"
LONGEST_BAR = 100
NO_TRAYS = "Nothing stands in a tray or pot that is watered."


@dataclass(frozen=True, slots=True)
class WaterLeft:
    """One tray's water this morning.

    Attributes:
        about, title: batch and part; and with crop and variety.
        place: where it stands.
        day: this morning.
        share: share of the water that may go which is still there, 0 to 1.
        spare_ml: the same in ml, in one container.
        each: what one container is called: "a pot" or "a tray".
        dry_on: the day it is gone; None if not within ten days.
        by: the part of today it is gone by, where today takes it.
    """

    about: str
    title: str
    place: str
    day: date
    share: float
    spare_ml: float
    each: str
    dry_on: date | None
    by: DayPart | None = None

    @property
    def days(self) -> int | None:
        """Days until it is dry; below 0 where it has been dry; None if not within ten."""
        return None if self.dry_on is None else (self.dry_on - self.day).days

    @property
    def state(self) -> str:
        """How long it lasts, in words."""
        days = self.days
        if days is None:
            return f"over {DAYS_AHEAD - 1} days"
        if days == -1:
            return DRY_BY_LAST_NIGHT
        if days < 0 and self.dry_on is not None:
            return f"dry since {say_weekday(self.dry_on)[:-4]}"
        if days == 0:
            return BY_WORDS[self.by] if self.by is not None else "dry today"
        return counted(days, "day")


def water_left(season: Season, day: date) -> tuple[WaterLeft, ...]:
    """Every tray and pot that is watered, the driest first."""
    found = []
    for batch in season.batches.values():
        for part in batch.parts:
            outlook = tray_outlook(season, batch, part, day)
            if outlook is not None:
                place = season.place(part.place)
                about = " ".join(filter(None, (batch.id, part.name)))
                variety = f" '{batch.variety}'" if batch.variety else ""
                title = f"{about} {season.crop(batch.crop).name}{variety}"
                found.append(_left(outlook, about, title, place.name if place else part.place))
    return driest_first(found)


def _left(outlook: TrayOutlook, about: str, title: str, place: str) -> WaterLeft:
    share = outlook.allowed_left_ml / outlook.allowed_ml if outlook.allowed_ml > 0.0 else 0.0
    return WaterLeft(
        about=about,
        title=title,
        place=place,
        day=outlook.day,
        share=min(1.0, max(0.0, share)),
        spare_ml=outlook.allowed_left_ml,
        each=outlook.holder.each,
        dry_on=outlook.runs_out,
        by=outlook.by,
    )


def driest_first(trays: Iterable[WaterLeft]) -> tuple[WaterLeft, ...]:
    """Trays by the day they are dry, the part of today, then by what is left."""

    def key(tray: WaterLeft) -> tuple[int, int, float, str]:
        days = DAYS_AHEAD if tray.days is None else tray.days
        part = len(PARTS) if tray.by is None else PARTS.index(tray.by)
        return days, part, tray.share, tray.about

    return tuple(sorted(trays, key=key))


def water_rows(trays: Iterable[WaterLeft], width: int, glyphs: Glyphs = UNICODE) -> Iterator[Line]:
    """Yield one line for each tray: which, how long in words, how much as a bar."""
    label, place, state, bar = _columns(width)
    for tray in trays:
        role = _role(tray)
        spans = [Inked(fit(tray.title, label, glyphs) + " ", Role.LABEL)]
        if place:
            spans.append(Inked(fit(tray.place, place, glyphs) + " ", Role.QUIET))
        spans.append(Inked(fit(tray.state, state, glyphs) + " ", role))
        if bar:
            filled = _filled(tray.share, bar, glyphs)
            spans += [
                Inked(filled, Role.WATER),
                Inked(glyphs.gap * (bar - len(filled)), Role.QUIET),
                Inked(f"{tray.share:>5.0%}", Role.TEXT),
            ]
        yield from within_width([tuple(spans)], width, glyphs)


def _columns(width: int) -> tuple[int, int, int, int]:
    """Cells for the title, the place, the state and the bar; narrow ones go without."""
    state = min(STATE, max(8, width // 3))
    place = 12 if width >= 75 else NARROW_PLACE if width >= 55 else 0
    label = min(44, max(6, width * 3 // 10))
    rest = width - label - 1 - state - 1 - (place + 1 if place else 0) - SHARE_WIDE
    return label, place, state, min(LONGEST_BAR, max(0, rest))


def _filled(share: float, width: int, glyphs: Glyphs) -> str:
    """The filled part of a bar, to the nearest part of a cell; a rest is never drawn as nothing."""
    steps = len(glyphs.bar)
    parts = min(width * steps, round(share * width * steps))
    parts = max(parts, 1 if share > 0.0 else 0)
    whole, rest = divmod(parts, steps)
    return glyphs.bar[-1] * whole + (glyphs.bar[rest - 1] if rest else "")


def _role(tray: WaterLeft) -> Role:
    days = tray.days
    if days is None or days > 1:
        return Role.GOOD
    return Role.BAD if days < 0 else Role.WARN


def water_lines(
    trays: Sequence[WaterLeft], width: int, glyphs: Glyphs = UNICODE
) -> tuple[Line, ...]:
    """The whole picture: headings, and a line for each tray, in the order given."""
    if not trays:
        return tuple(within_width([(Inked(NO_TRAYS, Role.QUIET),)], width, glyphs))
    label, place, state, bar = _columns(width)
    heads = [fit("tray", label, glyphs), fit("dry in", state, glyphs)]
    if place:
        heads.insert(1, fit("place", place, glyphs))
    if bar:
        heads.append(SPARE if bar + SHARE_WIDE >= len(SPARE) else SHORT_SPARE)
    lines = [(Inked(" ".join(heads), Role.QUIET),), *water_rows(trays, width, glyphs)]
    return tuple(within_width(lines, width, glyphs))


def water_words(trays: Sequence[WaterLeft]) -> str:
    """The picture in sentences."""
    if not trays:
        return NO_TRAYS
    told = []
    for tray in trays:
        place = f", {tray.place}" if tray.place else ""
        state = tray.state
        if tray.days is None or tray.days > 0:
            state = f"water for {state}"
        told.append(
            f"Batch {tray.title}{place}: {state}; {tray.spare_ml:.0f} ml left to spare {tray.each}"
        )
    return spoken(told)
