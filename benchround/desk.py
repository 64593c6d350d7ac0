"""The desk: owns the season folder and the clock; records, withdraws, and gives the day's round.

Everything that shows or prints the season goes through here. The desk knows nothing of Textual.
"""

from __future__ import annotations

import os
from collections import ChainMap
from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date, timedelta
from pathlib import Path

from benchround.core.batch_names import free_name, letter_of
from benchround.core.book import RecordBook
from benchround.core.crop.crop import Crop
from benchround.core.errors import (
    BenchroundError,
    IllegalRecordError,
    InputError,
    UnknownNameError,
)
from benchround.core.looking_back import known_on
from benchround.core.record import Draft, Figure, Kind, Record
from benchround.core.season import Season
from benchround.core.task import Round, Task
from benchround.crops.library import CropLibrary, load_library
from benchround.rounds.in_units import round_in_units
from benchround.rounds.kept import KeptRound
from benchround.store import IdMaker, SeasonFolder, short_name
from benchround.store.union import same

FURTHEST_BACK = timedelta(days=366 * 12)
FURTHEST_AHEAD = timedelta(days=366)


class Desk:
    """One open season.

    Args:
        folder: the open season folder.
        today: gives the grower's local day; pinned for the sample.
        only_reads: the folder was opened for reading on purpose.
        as_of: the day looked back at; what is told of later days is left out.
    """

    def __init__(
        self,
        folder: SeasonFolder,
        today: Callable[[], date] = date.today,
        *,
        only_reads: bool = False,
        as_of: date | None = None,
    ) -> None:
        self.folder = folder
        self._as_of = as_of
        self._only_reads = only_reads
        self._today = today
        self._ids = IdMaker(folder.last_id)
        self.library: CropLibrary = load_library()
        self._book = RecordBook(self._records(), self._with_overrides)
        self._kept = KeptRound()
        self._actions: list[tuple[str, ...]] = []

    @classmethod
    def open(
        cls,
        path: Path,
        *,
        today: Callable[[], date] = date.today,
        machine: str | None = None,
        read_only: bool = False,
        as_of: date | None = None,
    ) -> Desk:
        """Open a season folder.

        Args:
            path: the folder.
            today: gives the day.
            machine: short name of the computer; None for its own.
            read_only: nothing is to be recorded.
            as_of: the day looked back at, where only what was known then is to be shown.

        Raises:
            SeasonError: there is no season there, or it cannot be read.
        """
        name = machine or own_machine()
        folder = SeasonFolder.open(path, name, read_only=read_only)
        return cls(folder, today, only_reads=read_only, as_of=as_of)

    @classmethod
    def create(cls, path: Path, name: str, *, today: Callable[[], date] = date.today) -> Desk:
        """Begin a new season in a folder.

        Raises:
            SeasonError: there is a season already, or it cannot be written.
        """
        return cls(SeasonFolder.create(path, name, own_machine(), today()), today)

    @property
    def today(self) -> date:
        """The grower's local day."""
        return self._today()

    @property
    def season(self) -> Season:
        """What the records amount to now."""
        return self._book.season

    @property
    def read_only(self) -> bool:
        """Whether nothing can be recorded."""
        return self.folder.read_only

    @property
    def problems(self) -> tuple[str, ...]:
        """What the grower should know about files and records; empty when all is well."""
        files = self.folder.problems
        if self._only_reads and self.read_only:
            files = files[1:]  # the first says that it was opened so, which was asked for
        return (*files, *self.season.doubts)

    def round(self, day: date | None = None) -> Round:
        """The round of a day, today's if none is named, in the grower's units."""
        found = self._kept.round(self.season, day or self.today)
        return round_in_units(found, self.season.unit_words)

    def record(self, drafts: Iterable[Draft], day: date | None = None) -> tuple[Record, ...]:
        """Take down what happened: all drafts or none, on disk before it returns.

        Args:
            drafts: what to record; a draft's own day goes before `day`.
            day: the day it happened, today if none is given.

        Raises:
            IllegalRecordError: a record does not fit its batch.
            InputError: a figure, name or day cannot be.
            SeasonError: it could not be written; nothing changed.
        """
        on = day or self.today
        records = tuple(self._named(draft, draft.day or on) for draft in drafts)
        self._check(records)
        self._write(records)
        self._actions.append(tuple(record.id for record in records))
        return records

    def tick(
        self,
        task: Task,
        answers: Mapping[str, str] | None = None,
        day: date | None = None,
        also: Iterable[Draft] = (),
    ) -> tuple[Record, ...]:
        """Record a task as done, with the figures typed for it: one act.

        Args:
            task: the task.
            answers: what was typed, by the name of the figure.
            day: the day it was done, today if none is given.
            also: what else to record with it, such as a note.

        Raises:
            InputError: an answer cannot be understood.
            IllegalRecordError: the season has changed so that it no longer fits.
        """
        return self.record((*self._drafts(task, answers or {}), *also), day)

    def tick_all(self, tasks: Iterable[Task], day: date | None = None) -> tuple[Record, ...]:
        """Record several tasks as done with what stands in them: one act, all of them or none.

        Raises:
            InputError: a task wants a figure that does not stand in it; the message names it.
            IllegalRecordError: one of them does not fit its batch any more.
        """
        drafts: list[Draft] = []
        for task in tasks:
            try:
                drafts += self._drafts(task, {})
            except InputError as error:
                raise InputError(f"{task.about or 'the site'}: {error}") from None
        return self.record(drafts, day)

    def put_off(self, task: Task, until: date, reason: str = "") -> tuple[Record, ...]:
        """Move a task to a later day, with a reason."""
        figures: dict[str, Figure] = {
            "family": str(task.family),
            "until": until.isoformat(),
            "reason": reason,
        }
        if task.part:
            figures["part"] = task.part
        return self.record((Draft(Kind.PUT_OFF, task.about, figures),))

    def withdraw(self, names: Sequence[str]) -> tuple[Record, ...]:
        """Withdraw records by id: they stay in the book and no longer count.

        Raises:
            UnknownNameError: there is no such record, or it was withdrawn already.
        """
        for name in names:
            if not self._book.stands(name):
                raise UnknownNameError(
                    f"There is no standing record {name}: it may have been withdrawn already."
                )
        drafts = [Draft(Kind.WITHDRAWN, "", {"record": name}) for name in names]
        records = tuple(self._named(draft, self.today) for draft in drafts)
        self._write(records)
        return records

    def undo(self) -> tuple[Record, ...]:
        """Withdraw the last action of this sitting that still stands, and give it back.

        An empty answer means there is nothing left to undo.
        """
        while self._actions:
            found = self.take_back(self._actions.pop())
            if found:
                return found
        return ()

    def take_back(self, names: Sequence[str]) -> tuple[Record, ...]:
        """Withdraw those of some records that still stand, as one act, and give them back.

        Args:
            names: ids; one that was withdrawn already, here or elsewhere, is passed over.

        Raises:
            SeasonError: it could not be written; nothing changed.
        """
        found = [self._book.record(name) for name in names if self._book.stands(name)]
        standing = tuple(record for record in found if record is not None)
        if standing:
            self.withdraw([record.id for record in standing])
        return standing

    def reload(self) -> bool:
        """Take in what another computer changed in the folder; True if anything did.

        A record told more fully than before counts as it is told now, one that is no longer in the
        folder not at all.
        """
        if not self.folder.reload_if_changed():
            return False
        records = self._records()
        if self._only_adds(records):
            self._book.add(records)
        else:
            self._book = RecordBook(records, self._with_overrides)
            self._kept = KeptRound()
        self._ids.saw(self.folder.last_id)
        return True

    def free_batch_id(self) -> str:
        """The next batch id, which no other computer gives that has not seen this one's."""
        writers = (record.machine for record in self.folder.records())
        return free_name(self.season.batches, letter_of(self.folder.machine, writers))

    def close(self) -> None:
        """Let go of the folder. Nothing is saved here: everything already is."""
        self.folder.close()

    def _drafts(self, task: Task, answers: Mapping[str, str]) -> tuple[Draft, ...]:
        from benchround.rounds.answers import drafts_for  # a round is shown without it

        return drafts_for(task, answers, self.season)

    def _records(self) -> Sequence[Record]:
        records = self.folder.records()
        return records if self._as_of is None else known_on(records, self._as_of)

    def _only_adds(self, records: Iterable[Record]) -> bool:
        """Whether every record of the book is among these, and says the same."""
        pairs = ((self._book.record(record.id), record) for record in records)
        known = [(ours, now) for ours, now in pairs if ours is not None]
        return len(known) == len(self._book) and all(
            ours is now or same(ours, now) for ours, now in known
        )

    def _named(self, draft: Draft, day: date) -> Record:
        return Record(
            id=self._ids.next(),
            day=day,
            kind=draft.kind,
            about=draft.about,
            figures=dict(draft.figures),
            note=draft.note,
            at=draft.at,
            machine=self.folder.machine,
        )

    def _check(self, records: tuple[Record, ...]) -> None:
        for record in records:
            if not self.today - FURTHEST_BACK <= record.day <= self.today + FURTHEST_AHEAD:
                raise IllegalRecordError(
                    f"{record.day.isoformat()} is too far from today "
                    f"({self.today.isoformat()}): look at the year again."
                )
        self._book.check(records)

    def _write(self, records: tuple[Record, ...]) -> None:
        self.folder.append(records)
        self._book.add(records)

    def _with_overrides(self, rules: tuple[Record, ...]) -> Mapping[str, Crop]:
        if not rules:
            return self.library
        from benchround.core.crop.table import override  # only where a rule was changed

        own: dict[str, Crop] = {}
        for rule in rules:
            crop = own.get(rule.about) or self.library.get(rule.about)
            if crop is None:
                continue
            try:
                own[rule.about] = override(crop, rule.figures)
            except BenchroundError:
                continue  # the crop keeps its rule; the crops screen names the fault
        return ChainMap(own, self.library)  # type: ignore[arg-type]  # the library is only read


def own_machine() -> str:
    """A short name for this computer, as it stands in file names."""
    if hasattr(os, "uname"):
        return short_name(os.uname().nodename)  # sockets take longer to import than all the rest
    import socket

    return short_name(socket.gethostname())
