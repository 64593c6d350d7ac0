"""A batch on a card: on its front what comes and what happened, on its back what is known of it."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Self

from benchround.core.batch.batch import Batch, Part, fold_batch
from benchround.core.dates import say_day
from benchround.core.errors import BenchroundError
from benchround.core.record import Record
from benchround.screens import batch_back, batch_lines
from benchround.screens.card import CardScreen
from benchround.screens.keys import BATCH, bindings
from benchround.screens.page import Sheaf
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.pick_list import Row

if TYPE_CHECKING:
    from benchround.screens.app import BenchroundApp

NO_BATCH = "No batch yet. Press s to sow your first one: its story is then told here."
NONE_HERE = "There is no batch to show: {} opens a sowing sheet."


class BatchScreen(CardScreen, inherit_bindings=False):
    """One batch.

    Args:
        about: the batch; empty: the first one there is.
    """

    BINDINGS = bindings(BATCH)
    KEYS_OF = BATCH
    OF_ROWS = frozenset(("record-batch", "withdraw", "turn", "next-card"))

    def __init__(self, about: str = "") -> None:
        super().__init__()
        self.about = about
        self._part = ""

    @classmethod
    def arrive(cls, bench: BenchroundApp) -> Self:
        """The batch of the round's task; else the one looked at last; else the first."""
        task = bench.round_screen.tasks.current
        about = task.about if task is not None else ""
        return cls(about if about in bench.desk.season.batches else bench.last_batch)

    @property
    def found_batch(self) -> Batch | None:
        """The batch as it stands; None where there is none at all."""
        batches = self.desk.season.batches
        if self.about not in batches:
            self.about = min(batches, key=in_order, default="")
        if self.about:
            self.bench.last_batch = self.about
        return batches.get(self.about)

    @property
    def sown_batch(self) -> Batch:
        """The batch.

        Raises:
            BenchroundError: there is none.
        """
        batch = self.found_batch
        if batch is None:
            raise BenchroundError(NONE_HERE.format(self.ring.named("sow")))
        return batch

    def part(self, batch: Batch) -> Part:
        """The part that is recorded for."""
        return next((part for part in batch.parts if part.name == self._part), batch.main)

    def head_lines(self, width: int) -> Sequence[Line]:
        """Name, parts, lifecycle, counts."""
        batch, desk = self.found_batch, self.desk
        if batch is None:
            return paragraph(NO_BATCH, width, Role.STRONG)
        order = self._order()
        at = f"{order.index(batch.id) + 1} of {len(order)}"
        part = self.part(batch)
        return list(batch_lines.head(batch, desk.season, desk.today, part, at, width))

    def rows(self) -> Sequence[Row]:
        """What comes, and what happened."""
        batch = self.found_batch
        season, today = self.desk.season, self.desk.today
        return list(batch_lines.rows(batch, season, today)) if batch else ()

    def page_lines(self, width: int) -> Sequence[Line]:
        """Germination, what was learned, label, packet, cautions."""
        batch = self.found_batch
        season, today = self.desk.season, self.desk.today
        return list(batch_back.page(batch, season, today, width)) if batch else ()

    def _order(self) -> list[str]:
        return sorted(self.desk.season.batches, key=in_order)

    def action_record(self) -> None:
        """Open a record sheet for the batch, or for the part chosen."""
        batch, day = self.sown_batch, self.bench.round_screen.day
        self.require_open(day)
        self.bench.open("record", batch.id, self.part(batch).name, "", day)

    def action_sow(self) -> None:
        """Open a sowing sheet for the same crop and variety; without any batch, an empty one."""
        batch, day = self.found_batch, self.bench.round_screen.day
        self.require_open(day)
        if batch is None:
            self.bench.open("sow", day)
        else:
            self.bench.open("sow like", day, batch.crop, batch.variety, _packet_of(batch))

    def action_crop(self) -> None:
        """Open the crop's card."""
        self.bench.open("crop", self.sown_batch.crop)

    def action_part(self) -> None:
        """Choose the next part."""
        batch = self.sown_batch
        names = [part.name for part in batch.parts]
        if len(names) == 1:
            raise BenchroundError(f"{batch.id} has one part only.")
        self._part = names[(names.index(self.part(batch).name) + 1) % len(names)]
        self.write_card()
        self.say(f"Recording is for {self._part or 'the main part'} now.")

    def action_next(self, by: int) -> None:
        """Go to the next batch or the one before, round at the ends."""
        order = self._order()
        self.about = order[(order.index(self.sown_batch.id) + by) % len(order)]
        self._part = ""
        self.query_one(Sheaf).top = 0
        self.write_card("")
        self.say("")

    def action_tell(self) -> None:
        """Tell the record under the cursor in full."""
        record = self._record()
        at = f" at {record.at:%H:%M}" if record.at else ""
        wrote = f" Written on {record.machine}." if record.machine else ""
        text = batch_lines.record_text(record, self.desk.season)
        self.say(f"{say_day(record.day)} {record.day.year}{at}, {text}.{wrote}")

    def _record(self) -> Record:
        """The record under the cursor."""
        for record in self.sown_batch.records:
            if record.id == self.picks.picked:
                return record
        raise BenchroundError("There is no record here.")

    def action_withdraw(self) -> None:
        """Withdraw the record under the cursor, when asked for a second time."""
        batch, record = self.sown_batch, self._record()
        self.require_open(self.desk.today)
        text = batch_lines.record_text(record, self.desk.season)
        words = f"{batch.id} {text}, {batch_lines.full_day(record.day, self.desk.today)}"
        key = self.ring.named("withdraw")
        question = f"Withdraw '{words}'?{_spoils(batch, record)} Press {key} again to do it."
        if not self.confirmed(record.id, question):
            return
        said = self.bench.doings.withdraw((record.id,), words)
        self.write_card()
        self.say(said)


def in_order(name: str) -> tuple[int, str]:
    """Batches by their number, whatever its length."""
    return len(name), name


def _packet_of(batch: Batch) -> str:
    return batch.sowing.packet if batch.sowing else ""


def _spoils(batch: Batch, record: Record) -> str:
    """What of the batch would no longer fit without a record."""
    rest = [other for other in batch.records if other.id != record.id]
    left, doubts = fold_batch(batch.id, rest)
    if left is None:
        return " The whole batch goes off the books with it."
    if doubts:
        number = "1 later record" if len(doubts) == 1 else f"{len(doubts)} later records"
        return f" {number} would no longer fit and be passed over."
    return ""
