"""Which sowings are on the books already, so that a sheet taken in twice does not double them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.record import Draft, Figure, Kind

BEGINNINGS = frozenset({Kind.SOWN, Kind.PLANNED})
Same = tuple[date, tuple[tuple[str, str], ...]]
Like = tuple[str, str, date]


class SowingsKnown:
    """The sowings and plans of a season. A batch stands for one line of a sheet at most.

    Args:
        batches: the season's batches.
    """

    def __init__(self, batches: Iterable[Batch]) -> None:
        self._same: dict[Same, list[str]] = {}
        self._like: dict[Like, str] = {}
        for batch in batches:
            first = next((r for r in batch.records if r.kind in BEGINNINGS), None)
            if first is not None:
                self._same.setdefault(_same(first.figures, first.day), []).append(batch.id)
                self._like.setdefault(_like(first.figures, first.day), batch.id)

    def take(self, draft: Draft, day: date, name: str = "") -> str:
        """The batch that says the very same; empty for none. It will not be found again.

        Args:
            draft: a sowing or a plan.
            day: the day it is about where it has none of its own.
            name: the batch's own id in the sheet; empty: any will do.
        """
        here = self._same.get(_same(draft.figures, draft.day or day), [])
        found = next((one for one in here if name in ("", one)), "")
        if found:
            here.remove(found)
        return found

    def like(self, draft: Draft, day: date) -> str:
        """A batch of the same crop and variety of the same day; empty for none."""
        return self._like.get(_like(draft.figures, draft.day or day), "")


def _same(figures: Mapping[str, Figure], day: date) -> Same:
    """Everything that is said, a plan carried out on its day being the same as the sowing."""
    said = sorted((name, _words(value)) for name, value in figures.items() if name != "sow_on")
    return _about(figures, day), tuple(said)


def _like(figures: Mapping[str, Figure], day: date) -> Like:
    crop, variety = str(figures.get("crop", "")), str(figures.get("variety", ""))
    return crop, variety, _about(figures, day)


def _about(figures: Mapping[str, Figure], day: date) -> date:
    try:
        return date.fromisoformat(str(figures.get("sow_on", "")))
    except ValueError:
        return day


def _words(value: Figure) -> str:
    return f"{value:g}" if isinstance(value, float) else str(value)
