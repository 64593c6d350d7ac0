"""The diary sheet: a line for each sowing or count, understood as it is typed, open for more."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from benchround.core.crop.search import Named
from benchround.core.errors import BenchroundError
from benchround.core.record import Draft
from benchround.core.typed.date import say_full
from benchround.feeds.diary import Diary, DiaryLine
from benchround.feeds.sowing_words import day_of
from benchround.feeds.sowings_known import SowingsKnown
from benchround.screens.key_screens import DIARY
from benchround.screens.keys import bindings
from benchround.screens.sheet_base import Sheet, SheetFault, Title
from benchround.screens.text import BLANK, Line, Role, fit, line, paragraph
from benchround.screens.widgets.field import Field

EXAMPLE = "such as 12 apr cosmos Paper Lantern 40 seeds bench 1"
HELP = (
    "Day, crop and variety first; then in any order 40 seeds, 24 cells, 2 per cell, 3 trays, 30 "
    "wanted, packet p03 and the place. A variety may stand in quotes.",
    "What came up: 28 feb leek up 50, b12 first up, or none up; a batch's id, or crop and variety.",
    "A line without a day is of the day of the line before. A day to come makes a plan. Nothing is "
    "guessed: a word that is not understood is named.",
)
LAST_SHOWN = {20: 2, 24: 3, 34: 8}
"""Lines of the screen, and how many of the last lines typed are shown above."""


class DiarySheet(Sheet, inherit_bindings=False):
    """Sowings, and what came up, out of a paper diary. It stays open until esc."""

    BINDINGS = bindings(DIARY)
    KEYS_OF = DIARY

    def __init__(self) -> None:
        super().__init__()
        self._day: date | None = None
        self._last: list[str] = []
        self._names: Sequence[Named] = ()

    @property
    def foot_idle(self) -> frozenset[str]:
        """There is no line to take back before the first."""
        return frozenset() if self._last else frozenset(("undo-line",))

    def make_fields(self) -> Sequence[Field]:
        """The one line."""
        self._names = self.desk.library.names()
        return [Field("line", "diary", wide=True)]

    def title_lines(self, width: int) -> Sequence[Line]:
        """What this is, and the last lines that were recorded."""
        high = self.size.height
        most = max((n for least, n in LAST_SHOWN.items() if high >= least), default=1)
        return [
            *paragraph("From a paper diary: a line for each sowing or count", width, Role.HEADING),
            *(line((fit(words, width), Role.DONE)) for words in self._last[-most:]),
        ]

    def retell(self) -> None:
        """Say beside the line how to begin."""
        field = self.form.field("line")
        field.hint = "" if field.text.strip() else self._usual

    @property
    def _usual(self) -> str:
        if self._day is None:
            return EXAMPLE
        return f"without a day: {say_full(self._day, self.desk.today)}"

    def _read(self) -> DiaryLine:
        desk = self.desk
        diary = Diary(desk.season, self._names, desk.today, desk.free_batch_id(), again=True)
        diary.day = self._day or desk.today
        return diary.read(self.form.field("line").text.strip())

    def note_lines(self, width: int) -> Sequence[Line]:
        """What was understood so far; then how it is written."""
        how = [words for text in HELP for words in paragraph(text, width, Role.QUIET)]
        if not self.form.field("line").text.strip():
            return how
        found = self._read()
        if found.draft is None:
            return [*paragraph(f"Not yet: {found.fault}", width, Role.LATE), BLANK, *how]
        words = f"{found.draft.about} {found.words}"
        return [
            *paragraph(f"Understood: {words}", width, Role.STRONG, "  "),
            *paragraph(self._remark(found.draft), width, Role.CAUTION),
            BLANK,
            *how,
        ]

    def _remark(self, draft: Draft) -> str:
        """Whether such a sowing is on the books already."""
        if "crop" not in draft.figures:
            return ""
        found = SowingsKnown(self.desk.season.batches.values())
        there = found.like(draft, self.desk.today)
        return f"Mind: like {there}, which is on the books already." if there else ""

    def save(self) -> str:
        """Record the line; the sentence for it."""
        today = self.desk.today
        found = self._read()
        draft = found.draft
        if draft is None:
            raise SheetFault({}, f"Not recorded: {found.fault}")
        words = f"{draft.about} {found.words}"
        self.bench.doings.record((draft,), today, words=words)
        self._day = day_of(draft, today)
        self._last.append(words)
        return f"Recorded: {draft.about} ({self.ring.named('undo-line')} takes it back)."

    def action_save(self) -> None:
        """Record the line and stay for the next one."""
        said = self.save()
        self.form.field("line").reset()
        self.say(said)
        self._turn_page()

    def _turn_page(self) -> None:
        """Show the last lines as they are now."""
        self.query_one("#title", Title).rewrite(layout=True)
        self._tell()

    def action_undo(self) -> None:
        """Take the last line back."""
        if not self._last:
            raise BenchroundError("No line was recorded since the sheet was opened.")
        gone = self.bench.doings.undo()
        self._last.pop()
        self.say(gone.said if gone else "There is nothing to take back.")
        self._turn_page()

    def action_back(self) -> None:
        """Close the sheet; a line that is not recorded yet is kept."""
        self.put_away()
        number = len(self._last)
        lines = "1 line" if number == 1 else f"{number} lines"
        undo = f"{self.ring.named('undo')} takes the last one back"
        self.dismiss(f"{lines} of the diary recorded ({undo})." * bool(number))
