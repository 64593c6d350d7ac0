"""A season folder, opened: the one door to a grower's records."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING

from benchround.core.errors import SeasonError
from benchround.core.progress import Progress, unheard
from benchround.core.record import Record
from benchround.store.contents import Contents
from benchround.store.disk import SYSTEM_DISK, Disk
from benchround.store.layout import KEEP, RECORDS
from benchround.store.machine import require_machine
from benchround.store.opening import Opening, begin_season, open_season

if TYPE_CHECKING:
    from benchround.store.keep import GoodCopy, Kept
    from benchround.store.restoring import Restoration
    from benchround.store.writer import Writer

# What reading a season does not need is imported where it is used.


class SeasonFolder:
    """A season folder with all its records in memory; for one program and one thread.

    A season that another program of this computer holds, that lies on a disk that cannot be
    written or whose own file is damaged opens all the same, with `read_only` set and the reason
    first among the `problems`.

    Attributes:
        path: the folder.
        machine: short name of this computer.
    """

    def __init__(self, opening: Opening, machine: str, clock: Callable[[], datetime]) -> None:
        self.path = opening.path
        self.machine = machine
        self._opening = opening
        self._disk = opening.disk
        self._contents = Contents(opening.path / RECORDS)
        self._contents.refresh()
        self._emptied = "" if self._contents.pages else _said_of_nothing(opening.path)
        self._clock = clock
        self._writer: Writer | None = None

    @classmethod
    def open(
        cls,
        path: Path,
        machine: str,
        read_only: bool = False,
        *,
        clock: Callable[[], datetime] = datetime.now,
        disk: Disk = SYSTEM_DISK,
    ) -> SeasonFolder:
        """Open a season.

        Args:
            path: the season folder.
            machine: short name of this computer.
            read_only: hold and change nothing.
            clock: local time, for the month a page is named after.
            disk: where it is written.

        Raises:
            InputError: the computer's short name cannot be used.
            SeasonNewerError: a newer program wrote the season.
            SeasonError: there is no season, or it cannot be read at all.
        """
        opening = open_season(path, machine, clock(), disk, read_only=read_only)
        try:
            return cls(opening, machine, clock)
        except BaseException:
            if opening.lock is not None:
                opening.lock.release()
            raise

    @classmethod
    def create(
        cls,
        path: Path,
        name: str,
        machine: str,
        day: date,
        *,
        clock: Callable[[], datetime] = datetime.now,
        disk: Disk = SYSTEM_DISK,
    ) -> SeasonFolder:
        """Begin a season in a folder that is missing or holds none yet, and open it.

        Raises:
            InputError: the name or the computer's short name cannot be used.
            SeasonError: there is a season already, or the folder cannot be written.
        """
        require_machine(machine)
        begin_season(path, name, day, disk)
        return cls.open(path, machine, clock=clock, disk=disk)

    @property
    def name(self) -> str:
        """The season's name; the folder's if the season's own file is damaged."""
        heading = self._opening.heading
        return heading.name if heading else self.path.name

    @property
    def created(self) -> date | None:
        """The day the season was begun; None if its own file is damaged."""
        heading = self._opening.heading
        return heading.created if heading else None

    @property
    def read_only(self) -> bool:
        """Whether nothing can be recorded here."""
        return self._opening.closed is not None

    @property
    def problems(self) -> tuple[str, ...]:
        """What the grower should know about the state of the files; empty when all is well."""
        from benchround.store.problems import problems_of

        closed = self._opening.closed
        first = [str(closed)] if closed else []
        if self._emptied and not self._contents.pages:
            first.append(self._emptied)
        return (*first, *problems_of(self._contents))

    @property
    def damaged(self) -> tuple[str, ...]:
        """The files that are damaged, by name."""
        return tuple(page.name for page in self._contents.pages if page.fault)

    @property
    def last_id(self) -> str:
        """The latest id any computer gave, for the next to count on from; empty if none."""
        return self._contents.last_id

    def records(self) -> tuple[Record, ...]:
        """Every record of every computer, once, sorted by id."""
        return self._contents.records

    def reload_if_changed(self) -> bool:
        """Take in what other computers or hands changed in the folder; True if anything did.

        Raises:
            SeasonError: the folder cannot be reached; the records in memory stay as they are.
        """
        return self._contents.refresh()

    def append(self, records: tuple[Record, ...]) -> None:
        """Write the records of one action, all of them or none; on return they are on the disk.

        A record that is already there in the same words is passed over, so an action may be
        repeated after an error.

        Raises:
            InputError: a record cannot be kept, or its id is taken by a different one.
            SeasonBusyError: another program holds the season.
            SeasonReadOnlyError: the season can only be read.
            SeasonUnsureError: written, but not confirmed by the disk; look again before repeating.
            SeasonError: it could not be written; nothing changed.
        """
        writer = self._writing()
        if writer is None:
            closed = self._opening.closed or SeasonError(f"the season in {self.path} is closed")
            raise type(closed)(str(closed))
        writer.append(records)

    def keep_today(self, day: date, progress: Progress = unheard) -> Path | None:
        """Keep today's copy of the season, and let go of those beyond the ten latest.

        While a file is damaged no copy is let go, since it may be the last to hold it whole.

        Args:
            day: today.
            progress: told of the files read.

        Returns:
            The copy made, or None if the day has one or the season can only be read here.

        Raises:
            SeasonError: it could not be made.
            StoppedError: it was stopped, and none was made.
        """
        writer = self._writing()
        if writer is None:
            return None
        from benchround.store.keep import keep_copy

        if writer.fold():
            self._contents.refresh()
        drop = not self.damaged
        return keep_copy(self.path, self.machine, day, self._disk, drop=drop, progress=progress)

    def list_kept(self) -> tuple[Kept, ...]:
        """The kept copies of the season, the latest first."""
        from benchround.store.keep import list_kept

        return list_kept(self.path)

    def newest_good(self, page_name: str) -> GoodCopy | None:
        """The latest kept copy in which that file is sound, or None."""
        from benchround.store.keep import newest_good

        return newest_good(self.path, page_name)

    def restore(
        self, kept: Kept, preview: bool = True, progress: Progress = unheard
    ) -> Restoration:
        """Bring back every record a kept copy has and the season has not.

        Nothing is overwritten or taken away. When the season's own file was damaged it is brought
        back too; open the season again after that.

        Args:
            kept: one of `list_kept`.
            preview: only say what would come back.
            progress: told of the files looked at and written.

        Raises:
            SeasonDamagedError: the copy cannot be read.
            SeasonError: the season cannot be written.
            StoppedError: it was stopped; what came back so far stays, doing it again adds the rest.
        """
        from benchround.store.restoring import restore

        if preview:
            return restore(self.path, kept, progress=progress)
        self._require_hold()
        try:
            return restore(self.path, kept, preview=False, disk=self._disk, progress=progress)
        finally:
            self._contents.refresh()

    def set_aside(self, name: str) -> Path:
        """Move a damaged file out of the records, what can be read of it staying in the season.

        Args:
            name: one of `damaged`.

        Returns:
            Where it lies now; it is never removed.

        Raises:
            SeasonError: the file is sound, or it could not be moved; it is still in its place.
        """
        from benchround.store.restoring import set_aside

        self._require_hold()
        if name not in self.damaged:
            raise SeasonError(f"{name} is not among the damaged files; it was left where it is")
        try:
            return set_aside(self.path, name, self._disk)
        finally:
            self._contents.refresh()

    def close(self) -> None:
        """Let go of the season; the records stay readable, recording is over.

        What stands in the journal is put into its page first; where that cannot be done it stays
        in the journal, and nothing is lost.
        """
        if self._writer is not None:
            self._writer.fold()
            self._writer = None
        if self._opening.lock is not None:
            self._opening.lock.release()
            self._opening.lock = None

    def __enter__(self) -> SeasonFolder:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def _writing(self) -> Writer | None:
        """What writes here, made when it is first needed; None where nothing may be recorded."""
        lock = self._opening.lock
        if self._writer is None and lock is not None and self._opening.closed is None:
            from benchround.store.writer import Writer

            self._writer = Writer(self._contents, lock, self.machine, self._clock, self._disk)
        return self._writer

    def _require_hold(self) -> None:
        """Refuse to clear things up in a season this program does not hold."""
        lock = self._opening.lock
        if lock is None:
            closed = self._opening.closed or SeasonError(f"the season in {self.path} is closed")
            raise type(closed)(str(closed))
        lock.confirm()


def _said_of_nothing(season: Path) -> str:
    """What to say where a season has no pages; empty where it is simply new."""
    if not (season / KEEP).is_dir():
        return ""
    from benchround.store.problems import kept_only

    return kept_only(season)
