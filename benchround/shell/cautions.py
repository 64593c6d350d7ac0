"""Cautions in the shell: said with the work, and those that can kill read before it is recorded."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from datetime import date

from benchround.core.caution.due import CAUTIONS, blocks, read_key, to_show
from benchround.core.crop.crop import Crop
from benchround.core.errors import InputError
from benchround.core.record import Draft, Kind
from benchround.core.season import Season

READ = "--have-read"


def add_have_read(parser: argparse.ArgumentParser) -> None:
    """The argument that says cautions were read."""
    parser.add_argument(
        READ, action="store_true", help="say that the cautions shown have been read"
    )


def cautions_said(
    ids: Iterable[str], season: Season, day: date, crop: Crop | None
) -> tuple[str, ...]:
    """The cautions to print with the work, in full or as one line each."""
    shown = to_show(ids, season.cautions_read, day, crop.key if crop else "")
    return tuple(
        f"caution: {CAUTIONS[name].full if in_full else CAUTIONS[name].short}"
        for name, in_full in shown
    )


def read_drafts(
    ids: Iterable[str],
    season: Season,
    day: date,
    crop: Crop | None,
    *,
    have_read: bool,
    waits: bool = False,
) -> tuple[Draft, ...]:
    """The records of cautions read now; none where nobody says so.

    Args:
        ids: as `cautions_for` gives them.
        season: for what was read before.
        day: the day of the work.
        crop: the plant; None for work on a place.
        have_read: whether the grower says that all were read.
        waits: whether those that can kill hold up the work, as a sowing sheet does.

    Raises:
        InputError: one of them must be read first; the message is its full text.
    """
    key = crop.key if crop else ""
    full = [name for name, in_full in to_show(ids, season.cautions_read, day, key) if in_full]
    waiting = [name for name in full if waits and blocks(name, crop)]
    if waiting and not have_read:
        texts = "\n".join(CAUTIONS[name].full for name in waiting)
        raise InputError(f"Nothing was recorded: read this first, and say so with {READ}.\n{texts}")
    if not have_read:
        return ()
    return tuple(Draft(Kind.CAUTION_READ, read_key(name, key)) for name in full)
