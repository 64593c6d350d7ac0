"""A fault in a crop table, and how faults are told."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from benchround.core.errors import CropFileError
from benchround.core.frozen import dataclass

LONGEST_SHOWN = 60


@dataclass(frozen=True, slots=True)
class Fault:
    """One value that may not stand in a crop table.

    Attributes:
        file: the file it stands in, empty if it came from elsewhere.
        key: dotted way to it, the crop's own key first; members of a list count from 1.
        value: what stands there; None where something is missing.
        allowed: what may stand there, in words.
    """

    file: str
    key: str
    value: object
    allowed: str

    def __str__(self) -> str:
        """One line: file, key, value and what is allowed."""
        place = f"{_plain(self.file)}: " if self.file else ""
        shown = "missing" if self.value is None else _shown(self.value)
        return f"{place}{_short(_plain(self.key))} is {shown}; allowed: {self.allowed}"


def refuse(faults: Sequence[Fault]) -> None:
    """Do nothing when there are no faults; else list them all.

    Raises:
        CropFileError: there was at least one.
    """
    if not faults:
        return
    count = "1 fault" if len(faults) == 1 else f"{len(faults)} faults"
    lines = "\n".join(f"  {fault}" for fault in faults)
    raise CropFileError(f"{count} in what is said about crops; mend and try again:\n{lines}")


def no_such_key(name: str, known: Iterable[str]) -> str:
    """What to say of a key nobody knows: the nearest known one, or all of them."""
    names = sorted(known)
    from difflib import get_close_matches  # only where a file has faults

    near = get_close_matches(name, names, n=1, cutoff=0.6)
    if near:
        return f"no such key here, the nearest is {near[0]}"
    return f"no such key here, only {', '.join(names)}"


def _shown(value: object) -> str:
    if isinstance(value, int) and value.bit_length() > 200:
        return "a number of more than 60 digits"
    return _short(repr(value))


def _plain(text: str) -> str:
    return text if text.isprintable() else repr(text)


def _short(text: str) -> str:
    return text if len(text) <= LONGEST_SHOWN else f"{text[: LONGEST_SHOWN - 3]}..."
