"""Clocks: the pinned day of the sample season, which moves only when it is told to."""

from __future__ import annotations

from datetime import date, timedelta

SAMPLE_DAY = date(2026, 5, 27)
"""The morning the sample season is told up to."""


class SampleClock:
    """Gives a pinned day; call it wherever the day is asked for.

    Args:
        day: the day it starts at.
    """

    def __init__(self, day: date = SAMPLE_DAY) -> None:
        self._day = day

    def __call__(self) -> date:
        """The pinned day."""
        return self._day

    def step(self) -> date:
        """Go on to the next day; the day it is then."""
        self._day += timedelta(days=1)
        return self._day
