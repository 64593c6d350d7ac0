"""Finding anything by its letters, from anywhere; enter opens it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchround.core.crop.crop import PlantClass
from benchround.crops.library import CropNames
from benchround.screens import batch_lines
from benchround.screens.batch_back import pair
from benchround.screens.finding import Found, Sort, everything, find
from benchround.screens.keys import FIND, bindings
from benchround.screens.look_up import LookUpScreen
from benchround.screens.packet_lines import packet_page
from benchround.screens.text import Line, Role, fit, line, paragraph, width_of
from benchround.screens.widgets.pick_list import Row, told

SORT_WIDE = 8
LEAST_TITLE = 12
OPENS = {
    Sort.BATCH: "batch",
    Sort.CROP: "crop",
    Sort.PLACE: "place",
    Sort.PACKET: "packets",
}
"""The screen each sort is opened on."""
NOTHING = "Nothing is on the books yet: s on the round sows one; letters find crops."


class FindScreen(LookUpScreen, inherit_bindings=False):
    """Batches, places and packets first, then crops."""

    BINDINGS = bindings(FIND)
    KEYS_OF = FIND

    def __init__(self) -> None:
        super().__init__()
        self._things: tuple[Found, ...] = ()
        self._names: tuple[CropNames, ...] = ()
        self._shown: dict[str, Found] = {}

    def on_mount(self) -> None:
        """Gather what there is to be found."""
        self._gather()
        super().on_mount()

    def came_back(self, said: str | None) -> None:
        """Gather anew: what was opened may have changed something."""
        self._gather()
        super().came_back(said)

    def _gather(self) -> None:
        known = self.desk.library.names()
        self._things = everything(self.desk.season)
        self._names = tuple(n for n in known if n.plant_class is not PlantClass.UNKNOWN)

    def found(self, letters: str) -> Sequence[Row]:
        """What goes by the letters."""
        found = find(letters, self._things, self._names)
        self._shown = {one.key: one for one in found}
        if not found and not letters:
            return [told(line((NOTHING, Role.STRONG)))]
        if not found:
            return [told(line((self.nothing_words(), Role.QUIET)))]
        longest = max((width_of(one.title) for one in found), default=0)
        return [_row(one, longest) for one in found]

    def aside_lines(self, width: int) -> Sequence[Line]:
        """What there is to know of the one under the cursor."""
        one = self._shown.get(self.picks.picked)
        return list(self._aside(one, width)) if one else ()

    def _aside(self, one: Found, width: int) -> Iterator[Line]:
        season, today = self.desk.season, self.desk.today
        yield from paragraph(f"{one.title}", width, Role.HEADING)
        if one.sort is Sort.PACKET:
            yield from list(packet_page(season.packets[one.name], season, today, width))[1:]
            return
        yield from paragraph(one.more, width)
        if one.sort is Sort.BATCH:
            batch = season.batches[one.name]
            yield from paragraph(batch_lines.count_words(batch), width)
            for record in reversed(batch.records):
                text = batch_lines.record_text(record, season)
                yield from pair(batch_lines.full_day(record.day, today), text, width)

    def open_picked(self, key: str) -> None:
        """Open it, the search put away."""
        sort, _, name = key.partition(":")
        self.dismiss(None)
        self.app.call_later(self.bench.open, OPENS[Sort(sort)], name)


def _row(one: Found, longest: int) -> Row:
    """A thing that was found; the titles of all of them take half the line at most."""

    def words(width: int) -> Line:
        title = min(longest + 1, max(LEAST_TITLE, (width - SORT_WIDE) // 2))
        rest = max(0, width - SORT_WIDE - title)
        return line(
            (fit(one.sort, SORT_WIDE), Role.QUIET),
            (fit(one.title, title - 1) + " ", Role.STRONG),
            (fit(one.more, rest), Role.INK),
        )

    return Row(words, one.key)
