"""A day looked back at: only what was known then, as far as the days of the records tell."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from benchround.core.book import SETTING_KINDS
from benchround.core.record import Kind, Record

OF_ANY_DAY = SETTING_KINDS | {Kind.CROP_RULE, Kind.OUTLOOK, Kind.WITHDRAWN}
"""Kinds that hold whenever they were told: how the site is set up, what is forecast for a day, and
that a record was wrong."""


def known_on(records: Iterable[Record], day: date) -> tuple[Record, ...]:
    """The records of a day and those before it, and later ones that hold for any day."""
    return tuple(one for one in records if one.day <= day or one.kind in OF_ANY_DAY)
