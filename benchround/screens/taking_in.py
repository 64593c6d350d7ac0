"""Sowings from a sheet: every row with what it would become, recorded only when told to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from benchround.core.errors import BenchroundError
from benchround.core.progress import Progress
from benchround.core.record import Draft, Kind
from benchround.feeds.sowing_sheet import SheetRow, read_sheet
from benchround.feeds.sowing_words import sowing_words
from benchround.feeds.text_file import read_text
from benchround.screens.key_screens import TAKE_IN
from benchround.screens.keys import bindings
from benchround.screens.progress import Ended, LongWork, ProgressScreen
from benchround.screens.sheet_file import SheetFileSheet
from benchround.screens.text import Line, Role, fit, line, paragraph
from benchround.screens.wide_card import WideCard
from benchround.screens.widgets.pick_list import Row

EMPTY = (
    "No sheet was read yet. Press {} and name a CSV file of sowings: every row is shown with what "
    "it would become, and nothing is recorded before you say so."
)
LINE_WIDE, STATE_WIDE = 6, 7
COMES, PLAN, THERE, FAULT = "sown", "plan", "there", "fault"


class TakeInScreen(WideCard, inherit_bindings=False):
    """The rows of a sheet of sowings."""

    BINDINGS = bindings(TAKE_IN)
    KEYS_OF = TAKE_IN
    OF_ROWS = frozenset(("take-rows", "only-faults", "turn"))

    def __init__(self) -> None:
        super().__init__()
        self._path: Path | None = None
        self._rows: tuple[SheetRow, ...] = ()
        self._only_faults = False

    @property
    def drafts(self) -> tuple[Draft, ...]:
        """What would be recorded."""
        return tuple(row.draft for row in self._rows if row.comes and row.draft is not None)

    def head_lines(self, width: int) -> Sequence[Line]:
        """The file, and how many rows come, are there already, or have a fault."""
        if self._path is None:
            return paragraph(EMPTY.format(self.ring.named("name-sheet")), width, Role.STRONG)
        known = sum(1 for row in self._rows if row.known)
        faults = sum(1 for row in self._rows if row.fault)
        words = [f"{len(self.drafts)} of {len(self._rows)} rows can be recorded"]
        words += [f"{known} on the books already"] if known else []
        words += [f"{faults} with a fault"] if faults else []
        only = " (only these are shown)" if self._only_faults else ""
        return [
            line((fit(f"Sowings from {self._path.name}", width), Role.HEADING)),
            *paragraph(", ".join(words) + only, width),
        ]

    def rows(self) -> Sequence[Row]:
        """A row for each row of the sheet."""
        return [self._row(row) for row in self._rows if row.fault or not self._only_faults]

    def _row(self, row: SheetRow) -> Row:
        def words(width: int) -> Line:
            state, role = _state(row)
            room = max(0, width - LINE_WIDE - STATE_WIDE)
            said = row.fault or self._becomes(row, far=False)
            return line(
                (f"{row.line:>{LINE_WIDE - 1}} ", Role.QUIET),
                (fit(state, STATE_WIDE), role),
                (fit(said, room), Role.QUIET if row.known else Role.INK),
            )

        return Row(words, str(row.line))

    def _becomes(self, row: SheetRow, *, far: bool = True) -> str:
        draft, desk = row.draft, self.desk
        return sowing_words(draft, desk.season, desk.today, far=far) if draft else ""

    def page_lines(self, width: int) -> Sequence[Line]:
        """The row under the cursor in full."""
        return list(self._page(width))

    def _page(self, width: int) -> Iterator[Line]:
        row = next((r for r in self._rows if str(r.line) == self.picks.picked), None)
        if row is None:
            return
        if row.fault:
            yield from paragraph(f"Line {row.line}: {row.fault}", width, Role.BAD)
            yield from paragraph("Mend it in the sheet and read the file again.", width)
            return
        name = row.known or (row.draft.about if row.draft else "")
        yield from paragraph(f"Line {row.line}: {name} {self._becomes(row)}", width, Role.STRONG)
        if row.known:
            words = f"It is on the books already as {row.known} and will not be recorded again."
            yield from paragraph(words, width, Role.CAUTION)
        if row.remark:
            yield from paragraph(f"Mind: {row.remark}.", width, Role.CAUTION)

    def action_name_file(self) -> None:
        """Ask for the file."""
        self.require_open(self.desk.today)
        self.bench.push_screen(SheetFileSheet(), self._named)

    def _named(self, said: str | None) -> None:
        if said:
            self._only_faults = False
            self._read(Path(said), "")

    def _read(self, path: Path, then: str) -> None:
        """Read the file beside the screen; nothing is written."""
        desk = self.desk
        season, today = desk.season, desk.today
        names, free = desk.library.names(), desk.free_batch_id()

        def does(progress: Progress) -> tuple[SheetRow, ...]:
            return read_sheet(read_text(path), season, names, today, free, progress)

        def done(ended: Ended | None) -> None:
            if ended is None or ended.error is not None:
                if ended is not None and ended.error is not None:
                    self.bench.refuse(ended.error)
                return
            self._path, self._rows = path, ended.value
            self.write_card("" if not then else None)
            self.tell()
            self.say(then or self._asks())

        work = LongWork(does, f"Reading {path.name}", "rows")
        self.bench.push_screen(ProgressScreen(work), done)

    def _asks(self) -> str:
        number = len(self.drafts)
        take = self.ring.named("take-rows")
        words = f"Press {take} to record {_rows(number)}."
        return words if number else "There is nothing to record."

    def action_take(self) -> None:
        """Record every row that can be, when asked for a second time."""
        self.require_open(self.desk.today)
        drafts = self.drafts
        if not drafts or self._path is None:
            raise BenchroundError(
                "There is no row to record."
                if self._path
                else f"Press {self.ring.named('name-sheet')} to name a sheet first."
            )
        left = len(self._rows) - len(drafts)
        out = f" {_rows(left)} of the sheet {'stays' if left == 1 else 'stay'} out." if left else ""
        question = (
            f"Record {_sowings(drafts)}?{out} Press {self.ring.named('take-rows')} again to do it."
        )
        if not self.confirmed("take", question):
            return
        path, words = self._path, f"{_sowings(drafts)} from {self._path.name}"
        doings, today = self.bench.doings, self.desk.today

        def does(progress: Progress) -> str:
            return doings.record(drafts, today, words=words)

        def done(ended: Ended | None) -> None:
            if ended is not None and ended.error is not None:
                self.bench.refuse(ended.error)
            elif ended is not None:
                self._read(path, str(ended.value))

        work = LongWork(does, f"Recording {_sowings(drafts)}", "", whole=True)
        self.bench.push_screen(ProgressScreen(work), done)

    def action_undo(self) -> None:
        """Take back the last thing recorded, and look again what is on the books."""
        self.require_open(self.desk.today)
        gone = self.bench.doings.undo()
        said = gone.said if gone else "There is nothing to take back."
        if gone and self._path is not None:
            self._read(self._path, said)
        else:
            self.say(said)

    def action_faults(self) -> None:
        """Show only the rows with a fault, or all again."""
        self._only_faults = not self._only_faults
        self.write_card("")
        self.tell()


def _state(row: SheetRow) -> tuple[str, Role]:
    if row.fault:
        return FAULT, Role.BAD
    if row.known:
        return THERE, Role.QUIET
    word = PLAN if row.draft is not None and row.draft.kind is Kind.PLANNED else COMES
    return (f"{word} ?", Role.CAUTION) if row.remark else (word, Role.DONE)


def _rows(number: int) -> str:
    return "1 row" if number == 1 else f"{number} rows"


def _sowings(drafts: Sequence[Draft]) -> str:
    return "1 sowing" if len(drafts) == 1 else f"{len(drafts)} sowings"
