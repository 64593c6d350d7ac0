"""Whether new records fit the story of a batch, those dated before its last record too."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from operator import attrgetter

from benchround.core.batch.batch import Batch, apply
from benchround.core.errors import IllegalRecordError
from benchround.core.record import Record

STORY_ORDER = attrgetter("day", "id")
"""By day, then by when it was written."""


def require_after(batch: Batch | None, new: Iterable[Record], about: str) -> None:
    """Require that records fit a batch as it stands, each after the one before.

    Raises:
        IllegalRecordError: the first one that does not fit.
    """
    for record in new:
        batch = apply(batch, record, about)


def require_among(told: Iterable[Record], new: Sequence[Record], about: str, strict: bool) -> None:
    """Require that records fit a story when put in at their days, and what follows them still fits.

    Args:
        told: the batch's records that count.
        new: those to put in, in story order.
        about: the batch.
        strict: whether a told record that does not fit is the new ones' fault; not so where the
            story had some already.

    Raises:
        IllegalRecordError: a new record does not fit, or a told one does not fit after it.
    """
    batch: Batch | None = None
    latest: Record | None = None
    names = {record.id for record in new}
    for record in sorted([*told, *new], key=STORY_ORDER):
        if record.id in names:
            latest = record
        try:
            batch = apply(batch, record, about)
        except IllegalRecordError as error:
            if record is latest:
                raise
            if strict:
                raise _does_not_fit_later(latest or new[0], record, about, error) from None


def _does_not_fit_later(
    new: Record, later: Record, about: str, error: IllegalRecordError
) -> IllegalRecordError:
    return IllegalRecordError(
        f"'{new.kind}' on {new.day.isoformat()} does not fit what was recorded for {about} later, "
        f"on {later.day.isoformat()}: {error}"
    )
