"""Disks that write down what they are asked, fail when told, and forget what was not forced."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from benchround.store.disk import Disk


@dataclass(frozen=True)
class Event:
    """One call: what was asked, of which file, and the bytes or second name that went with it."""

    call: str
    path: Path
    data: bytes = b""
    target: Path = Path()
    length: int = 0


class WatchedDisk(Disk):
    """Does everything for real and writes down the calls."""

    def __init__(self) -> None:
        self.events: list[Event] = []
        self._open: dict[int, Path] = {}

    def note(self, event: Event) -> None:
        self.events.append(event)

    def create(self, path: Path) -> int:
        self.note(Event("create", path))
        handle = super().create(path)
        self._open[handle] = path
        return handle

    def create_new(self, path: Path) -> None:
        self.note(Event("create new", path))
        super().create_new(path)

    def open_end(self, path: Path) -> int:
        self.note(Event("open", path))
        handle = super().open_end(path)
        self._open[handle] = path
        return handle

    def truncate(self, handle: int, length: int) -> None:
        self.note(Event("truncate", self._open[handle], length=length))
        super().truncate(handle, length)

    def write(self, handle: int, data: bytes) -> None:
        self.note(Event("write", self._open[handle], data))
        super().write(handle, data)

    def fsync(self, handle: int) -> None:
        self.note(Event("fsync", self._open[handle]))

    def close(self, handle: int) -> None:
        del self._open[handle]
        super().close(handle)

    def replace(self, source: Path, target: Path) -> None:
        self.note(Event("replace", source, target=target))
        super().replace(source, target)

    def remove(self, path: Path) -> None:
        self.note(Event("remove", path))
        super().remove(path)

    def sync_folder(self, path: Path) -> None:
        self.note(Event("sync folder", path))


class FailingDisk(WatchedDisk):
    """Refuses one kind of call on the records with an error number, while `failing` is set.

    A refused write leaves half its bytes behind. After `times` refusals the disk is well again.
    """

    def __init__(self, call: str, number: int, times: int = 10**6) -> None:
        super().__init__()
        self.calls = {call}
        self.number = number
        self.failing = False
        self.times = times

    def note(self, event: Event) -> None:
        super().note(event)
        about_records = event.path.parent.name == "records" or event.path.name == "records"
        if self.failing and self.times > 0 and event.call in self.calls and about_records:
            self.times -= 1
            if event.call == "write":
                with event.path.open("ab") as file:
                    file.write(event.data[: len(event.data) // 2])
            raise OSError(self.number, os.strerror(self.number))


@dataclass
class _File:
    data: bytes = b""
    forced: bytes = b""

    def found(self, share: float, zeros: bool) -> bytes:
        """The bytes found after the power went."""
        if not self.data.startswith(self.forced):  # shortened, and not forced since
            return self.data if share else self.forced
        rest = self.data[len(self.forced) :]
        there = int(len(rest) * share)
        return self.forced + rest[:there] + b"\0" * (len(rest) - there if zeros else 0)


@dataclass
class AfterPowerCut:
    """What may be on the disk when the power goes after some calls.

    The model is the strict reading of POSIX: bytes are there for sure only after the file was
    forced, names only after their folder was; what was not forced may have got there in part, names
    in the order they were given.
    """

    events: list[Event]
    names: dict[Path, _File] = field(default_factory=dict)
    waiting: list[Callable[[], None]] = field(default_factory=list)
    _written: dict[Path, _File] = field(default_factory=dict)

    def __post_init__(self) -> None:
        for event in self.events:
            self._follow(event)

    def _follow(self, event: Event) -> None:
        path = event.path
        if event.call in ("create", "create new"):
            self._written[path] = made = _File()
            self.waiting.append(lambda: self.names.update({path: made}))
        elif event.call == "write":
            self._written[path].data += event.data
        elif event.call == "truncate":
            self._written[path].data = self._written[path].data[: event.length]
        elif event.call == "fsync":
            self._written[path].forced = self._written[path].data
        elif event.call == "replace":
            self._written[event.target] = self._written.pop(path)
            self.waiting.append(lambda: self.names.update({event.target: self.names.pop(path)}))
        elif event.call == "remove":
            self._written.pop(path, None)
            self.waiting.append(lambda: self._forget(path))
        elif event.call == "sync folder":
            self.apply(len(self.waiting))

    def _forget(self, path: Path) -> None:
        self.names.pop(path, None)

    def apply(self, count: int) -> None:
        """Let the first names that wait reach the disk."""
        for name in self.waiting[:count]:
            name()
        del self.waiting[:count]

    def files(self, share: float, zeros: bool = False) -> Iterator[tuple[Path, bytes]]:
        """The files found afterwards; of bytes not forced only a share is there.

        With `zeros` a file has its new length all the same, as some file systems leave it.
        """
        for path, found in self.names.items():
            yield path, found.found(share, zeros)


class ForgetfulDisk(WatchedDisk):
    """Leaves out forcing files to the disk, to show that the tests would notice."""

    def fsync(self, handle: int) -> None:
        return
