"""A frame's day: the frames in walking order, and the day of the one under the cursor by hours."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from typing import Self

from benchround.core.dates import say_day
from benchround.core.errors import BenchroundError
from benchround.core.frame.outlook import FrameOutlook
from benchround.core.site import Place, PlaceKind
from benchround.core.typed.date import how_far
from benchround.core.units import units_of
from benchround.drawing.frame_curve import FrameCurve, extremes, frame_curve
from benchround.drawing.frame_day import frame_lines
from benchround.drawing.frame_words import frame_words
from benchround.rounds import frame_view
from benchround.rounds.build import standing_by_place
from benchround.rounds.view import PlaceView
from benchround.screens.keys import LIDS, bindings
from benchround.screens.page import Sheaf
from benchround.screens.pictures import glyphs, shown
from benchround.screens.text import BLANK, Line, Role, fit, line, paragraph, width_of
from benchround.screens.wide_card import WideCard
from benchround.screens.widgets.pick_list import Row, told

NAME_WIDE = 16
AROUND_CURVES = 10
"""Lines of the picture besides the curves: headline, lid, hours, letters."""
LEAST_ROWS, MOST_ROWS = 5, 20
FURTHEST_DAYS = 9
NO_FRAME = "No frame or tunnel is set up: g, then t does it."
NOTHING_LIVES = "nothing stands in it: the lid may stay as it is"
NOTHING_IN_TUNNEL = "nothing stands in it: its ends may stay as they are"


class LidsScreen(WideCard, inherit_bindings=False):
    """The frames' day."""

    CSS_PATH = [*WideCard.CSS_PATH, "lids.tcss"]  # noqa: RUF012 - as Textual has it
    BINDINGS = bindings(LIDS)
    KEYS_OF = LIDS
    OF_ROWS = frozenset(("open-ahead", "reading", "lid-day-after", "turn"))

    def __init__(self, code: str = "") -> None:
        super().__init__()
        self.code = code
        self.ahead = 0
        self._curves: Mapping[str, FrameCurve | None] = {}

    @classmethod
    def arrive(cls, bench: object) -> Self:
        """The first frame, today."""
        return cls()

    @property
    def day(self) -> date:
        """The day shown."""
        return self.desk.today + timedelta(days=self.ahead)

    def on_mount(self) -> None:
        """Stand on the frame that was asked for."""
        self.write_card(self.code)

    def on_resize(self) -> None:
        """Draw the picture as high as there is room for."""
        self.query_one(Sheaf).rewrite()

    def _frames(self) -> list[Place]:
        return [place for place in self.desk.season.places if place.lidded]

    def rows(self) -> Sequence[Row]:
        """A row for each frame: what matters most that day."""
        season, day = self.desk.season, self.day
        standing = standing_by_place(season, day)
        curves: dict[str, FrameCurve | None] = {}
        for place in self._frames():
            view = PlaceView(season, place, standing.get(place.code, ()), day)
            found = frame_view.outlook(view)
            curves[place.code] = _curve(place, day, found) if found else None
        self._curves = curves
        rows = [self._row(place, curves[place.code]) for place in self._frames()]
        return rows or [told(line((NO_FRAME, Role.STRONG)))]

    def _row(self, place: Place, curve: FrameCurve | None) -> Row:
        said, role = self._headline(curve, place)

        def words(width: int) -> Line:
            room = max(0, width - NAME_WIDE)
            name = fit(place.name, NAME_WIDE - 1)
            return line((f"{name} ", Role.STRONG), (fit(said, room), role))

        return Row(words, place.code)

    def _headline(self, curve: FrameCurve | None, place: Place) -> tuple[str, Role]:
        shut = extremes(curve.shut_c) if curve else None
        if curve is None or shut is None:
            return _nothing_lives(place), Role.QUIET
        units = units_of(self.desk.season.settings)
        if shut[2] <= curve.act_c:
            return f"safe if left shut: at most {units.temp(round(shut[2]))}", Role.DONE
        at = f" at {curve.shut_passes_at:%H:%M}" if curve.shut_passes_at else ""
        limit, top = units.temp(curve.act_c), units.temp(round(shut[2]))
        return f"too hot if left shut: passes {limit}{at}, up to {top}", Role.LATE

    def head_lines(self, width: int) -> Sequence[Line]:
        """The day, and how far off it is."""
        at, of = self.picks.position
        place = f"{at} of {of}" if of else ""
        title = f"Lids, {say_day(self.day)}, {how_far(self.day, self.desk.today)}"
        room = max(0, width - width_of(place) - 1)
        return [line((fit(title, room), Role.HEADING), (f" {place}", Role.QUIET))]

    def page_lines(self, width: int) -> Sequence[Line]:
        """The picture of the frame under the cursor, then the same in sentences."""
        return list(self._page(width))

    def _page(self, width: int) -> Iterator[Line]:
        key = self.picks.picked
        curve = self._curves.get(key)
        if curve is None:
            place = self.desk.season.place(key)
            yield from paragraph(_nothing_lives(place) if place else "", width, Role.QUIET)
            return
        high = self.query_one(Sheaf).size.height - AROUND_CURVES
        rows = max(LEAST_ROWS, min(MOST_ROWS, high))
        said = self.desk.season.unit_words
        yield from shown(frame_lines(curve, width, glyphs(), most_rows=rows, said=said))[1:]
        yield BLANK
        yield from paragraph("In words", width, Role.HEADING)
        yield from paragraph(frame_words(curve), width)

    def more_key(self) -> str:
        """The frames are few, so page down always goes to the picture."""
        return "page down"

    def action_page(self, by: int) -> None:
        """Go a screenful down or up in the picture; the frames are few."""
        self.action_leaf(by)

    def action_other_day(self, by: int) -> None:
        """Show the day before or after."""
        if not 0 <= self.ahead + by <= FURTHEST_DAYS:
            words = f"Lids are reckoned for today and the {FURTHEST_DAYS} days after it."
            raise BenchroundError(words)
        self.ahead += by
        self.write_card()
        self.say(f"{say_day(self.day)}, {how_far(self.day, self.desk.today)}.")

    def action_open(self) -> None:
        """Open the frame: what stands there."""
        if not self.picks.picked:
            raise BenchroundError(NO_FRAME)
        self.bench.open("place", self.picks.picked)

    def action_reading(self) -> None:
        """Open the sheet for what its own thermometer says."""
        if not self.picks.picked:
            raise BenchroundError(NO_FRAME)
        self.require_open(self.desk.today)
        self.bench.open("reading sheet", self.picks.picked, self.desk.today)


def _nothing_lives(place: Place) -> str:
    return NOTHING_IN_TUNNEL if place.kind is PlaceKind.TUNNEL else NOTHING_LIVES


def _curve(place: Place, day: date, found: FrameOutlook) -> FrameCurve:
    return frame_curve(place.name, day, found)
