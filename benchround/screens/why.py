"""The page that tells why: the rule behind a task, its figures and source, and the cautions."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date

from benchround.core.caution.due import CAUTIONS, read_key, to_show
from benchround.core.dates import say_day
from benchround.core.record import Draft, Kind
from benchround.core.task import HARM_WORDS, Task
from benchround.core.unit_words import own
from benchround.screens.keys import WHY, bindings
from benchround.screens.page import PageScreen, Sheaf
from benchround.screens.text import BLANK, Line, Role, line, paragraph
from benchround.screens.widgets.key_bar import KeyBar
from benchround.screens.words import (
    standing_words,
    subject_in_full,
    tick_words,
    window_words,
)

INDENT = "  "


class WhyScreen(PageScreen, inherit_bindings=False):
    """Why one task stands in the round.

    Args:
        task: the task.
        day: the day of the round.
    """

    BINDINGS = bindings(WHY)
    KEYS_OF = WHY

    def __init__(self, task: Task, day: date) -> None:
        super().__init__()
        self.told_task = task
        self.day = day

    @property
    def foot_idle(self) -> frozenset[str]:
        """No caution is left to be read, or no more of the page."""
        waits = any(in_full for _, in_full in self._shown())
        return super().foot_idle | (frozenset() if waits else {"have-read"})

    def page_lines(self, width: int) -> Sequence[Line]:
        """Everything there is to say."""
        return list(self._lines(width))

    def _lines(self, width: int) -> Iterator[Line]:
        task, season = self.told_task, self.desk.season
        head = f"{str(task.family).capitalize()}: {subject_in_full(task, season)}"
        yield from paragraph(head, width, Role.HEADING)
        yield from paragraph(task.instruction, width, Role.STRONG)
        yield BLANK
        yield from _told("how it stands", f"{standing_words(task)}; {window_words(task)}", width)
        yield from _told("left undone it", HARM_WORDS[task.harm], width)
        if task.hold is not None:
            again = task.hold.look_again
            until = f"; look again {say_day(again)}" if again else ""
            yield from _told("held because", f"{task.hold.because}{until}", width)
        if task.put_off:
            yield from _told("by your own hand", own(task.put_off), width)
        yield BLANK
        yield from _told("rule", task.why.rule, width)
        for number, figure in enumerate(task.why.figures):
            yield from _told("figures" if not number else "", figure, width)
        yield from _told("source", task.why.source, width)
        yield BLANK
        yield from _told("ticking writes", tick_words(task, season), width)
        yield from self._cautions(width)
        assumed = self.desk.round(self.day).assumed
        for number, words in enumerate(assumed):
            yield from _told("assumed" if not number else "", words, width)

    def _shown(self) -> tuple[tuple[str, bool], ...]:
        season = self.desk.season
        return to_show(self.told_task.cautions, season.cautions_read, self.day, self._crop())

    def _crop(self) -> str:
        batch = self.desk.season.batches.get(self.told_task.about)
        return batch.crop if batch else ""

    def _cautions(self, width: int) -> Iterator[Line]:
        if not self.told_task.cautions:
            return
        yield BLANK
        waits = any(in_full for _, in_full in self._shown())
        said = f"   {self.ring.named('have-read')}: I have read them" if waits else "   read"
        yield line(("Cautions", Role.HEADING), (said, Role.QUIET))
        for name in self.told_task.cautions:
            caution = CAUTIONS[name]
            yield from paragraph(caution.short, width, Role.CAUTION)
            yield from paragraph(caution.full, width, Role.INK, INDENT)
            yield from paragraph(f"{caution.severity}; {caution.source}", width, Role.QUIET, INDENT)

    def action_agree(self) -> None:
        """Record that the cautions of this task were read."""
        names = [name for name, in_full in self._shown() if in_full]
        if not names:
            self.say("There is no caution here that waits to be read.")
            return
        crop = self._crop()
        drafts = [Draft(Kind.CAUTION_READ, read_key(name, crop)) for name in names]
        number = "1 caution" if len(names) == 1 else f"{len(names)} cautions"
        doings = self.bench.doings
        self.say(doings.record(drafts, self.desk.today, self.told_task.key, f"read {number}"))
        self.query_one(Sheaf).rewrite()
        self.query_one(KeyBar).rewrite()


def _told(what: str, words: str, width: int) -> Iterator[Line]:
    lead = 18
    for number, (text, role) in enumerate(
        part for row in paragraph(words, max(10, width - lead)) for part in row
    ):
        head = what if not number else ""
        yield line((head.ljust(lead), Role.QUIET), (text, role))
