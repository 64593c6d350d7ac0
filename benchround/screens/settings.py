"""The settings: site and household, choices, the places on the walk, own trays and pots."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchround.core.caution.due import CAUTIONS, Page, setup_cautions
from benchround.core.errors import BenchroundError
from benchround.core.record import Draft, Kind
from benchround.core.settings_words import SETTINGS as CHOICES
from benchround.core.site import Place
from benchround.core.units import DEGREES, RAIN, units_of
from benchround.core.walk import REMOVED, moved, walk_drafts
from benchround.screens.keys import SETTINGS, bindings
from benchround.screens.latest import latest_of, standing
from benchround.screens.settings_rows import (
    CHOICE,
    CONTAINER,
    PLACE,
    SITE,
    SITE_TELLS,
    all_rows,
)
from benchround.screens.text import Line, Role, fit, line, paragraph, width_of
from benchround.screens.wide_card import WideCard
from benchround.screens.widgets.pick_list import Row

KEPT_METRIC = "Records and tables keep Celsius and millimetres, whatever is read and typed."
ONLY_PLACES = "Only a place can be moved along the walk: put the cursor on one."


class SettingsScreen(WideCard, inherit_bindings=False):
    """How this season is set up."""

    BINDINGS = bindings(SETTINGS)
    KEYS_OF = SETTINGS

    def __init__(self) -> None:
        super().__init__()
        self._asked = ""

    def head_lines(self, width: int) -> Sequence[Line]:
        """What this is, and which row of how many."""
        at, of = self.picks.position
        place = f"{at} of {of}"
        room = max(0, width - width_of(place) - 1)
        words = fit("Settings of this season", room)
        return [line((words, Role.HEADING), (f" {place}", Role.QUIET))]

    def rows(self) -> Sequence[Row]:
        """Everything that is set up."""
        season = self.desk.season
        said = latest_of(self.desk, Kind.SITE).get("", {})
        return list(all_rows(season, said, units_of(season.settings), self.bench.look))

    @property
    def foot_idle(self) -> frozenset[str]:
        """Only a place, and a container of one's own, can be removed."""
        sort, name = self._picked
        removes = sort in (PLACE, CONTAINER) and bool(name)
        return super().foot_idle | (frozenset() if removes else {"remove"})

    @property
    def _picked(self) -> tuple[str, str]:
        """What sort of row the cursor stands on, and its name."""
        sort, _, name = self.picks.picked.partition("\n")
        return sort, name

    def page_lines(self, width: int) -> Sequence[Line]:
        """What the row under the cursor is for."""
        return list(self._page(width))

    def _page(self, width: int) -> Iterator[Line]:
        sort, name = self._picked
        if sort == SITE:
            yield from paragraph(f"{SITE_TELLS[name].capitalize()}.", width)
            for words in self.desk.season.site.assumed:
                yield from paragraph(f"Assumed: {words}.", width, Role.CAUTION)
        elif sort == CHOICE:
            choice = CHOICES[name]
            usual = f"{choice.meaning}; the usual: {choice.usual}; {choice.rule.allowed}."
            yield from paragraph(usual[0].upper() + usual[1:], width)
            if name in (DEGREES, RAIN):
                yield from paragraph(KEPT_METRIC, width, Role.QUIET)
        elif sort == PLACE:
            yield from self._place_told(self.desk.season.place(name), width)
        else:
            words = "A tray or pot of your own goes before a usual one of the same name."
            yield from paragraph(words, width)

    def _place_told(self, place: Place | None, width: int) -> Iterator[Line]:
        for name in setup_cautions(Page.PLACE, place):
            yield from paragraph(f"Caution: {CAUTIONS[name].full}", width, Role.CAUTION)

    def on_pick_list_moved(self) -> None:
        """What was asked of another row is no longer open."""
        if self._asked:
            self.say("")
        self._asked = ""

    def action_change(self) -> None:
        """Open the sheet of the row under the cursor."""
        self.require_open(self.desk.today)
        sort, name = self._picked
        sheets = {SITE: "site sheet", CHOICE: "choices sheet"}
        if sort in sheets:
            self.bench.open(sheets[sort], name)
        elif sort == PLACE:
            self.bench.open("place sheet", name, "")
        else:
            self.bench.open("container sheet", name)

    def action_new_place(self) -> None:
        """Open a sheet for a new place."""
        self.require_open(self.desk.today)
        sort, name = self._picked
        self.bench.open("place sheet", "", name if sort == PLACE else "")

    def action_new_container(self) -> None:
        """Open a sheet for a new container."""
        self.require_open(self.desk.today)
        self.bench.open("container sheet", "")

    def action_own_keys(self) -> None:
        """Open the sheet of one's own keys."""
        self.bench.open("keys sheet")

    def action_walk(self, by: int) -> None:
        """Move the place under the cursor along the walk."""
        sort, code = self._picked
        if sort != PLACE or not code:
            raise BenchroundError(ONLY_PLACES)
        self.require_open(self.desk.today)
        walk = [place.code for place in self.desk.season.places]
        to = moved(walk, code, by)
        if to == tuple(walk):
            end = "first" if by < 0 else "last"
            raise BenchroundError(f"{self._called(code)} is the {end} place on the walk already.")
        drafts = walk_drafts(to, latest_of(self.desk, Kind.PLACE))
        words = f"{self._called(code)} is number {to.index(code) + 1} on the walk"
        self._write(drafts, words, f"{PLACE}\n{code}")

    def _called(self, code: str) -> str:
        place = self.desk.season.place(code)
        return place.name if place else code

    def _write(self, drafts: Sequence[Draft], words: str, key: str | None = None) -> None:
        said = self.bench.doings.record(drafts, self.desk.today, words=words)
        self.write_card(key)
        self.tell()
        self.say(said)

    def action_remove(self) -> None:
        """Take a place off the walk, or a container off the list; asked once more."""
        sort, name = self._picked
        if sort not in (PLACE, CONTAINER) or not name:
            raise BenchroundError("Only a place or a container of your own can be removed.")
        self.require_open(self.desk.today)
        if sort == PLACE:
            self._require_empty(name)
        called = self._called(name) if sort == PLACE else name
        if self._asked != self.picks.picked:
            key = self.ring.named("remove")
            self.say(f"Remove '{called}'? Its records stay. Press {key} again to do it.")
            self._asked = self.picks.picked
            return
        self._asked = ""
        if sort == PLACE:
            before = latest_of(self.desk, Kind.PLACE)[name]
            draft = Draft(Kind.PLACE, name, {**before, REMOVED: True})
            self._write((draft,), f"{called} taken off the walk")
            return
        records = [r.id for r in standing(self.desk, Kind.CONTAINER) if r.about == name]
        said = self.bench.doings.withdraw(records, f"container '{called}'")
        self.write_card()
        self.tell()
        self.say(said)

    def _require_empty(self, code: str) -> None:
        here = sorted(
            batch.id
            for batch in self.desk.season.batches.values()
            for part in batch.parts
            if part.place == code and not part.ended
        )
        if here:
            names = ", ".join(here)
            raise BenchroundError(f"{self._called(code)} is not empty: move {names} first.")

    def action_undo(self) -> None:
        """Take back the last thing recorded."""
        self.undo_last()
        self.tell()

    def came_back(self, said: str | None) -> None:
        """Write the list anew after a sheet was closed."""
        self._asked = ""
        super().came_back(said)
        self.tell()
