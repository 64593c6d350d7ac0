"""Figures as they stand in the season's report."""

from __future__ import annotations

UNKNOWN = "-"


def number(value: int | None) -> str:
    """A number, or a dash where it is not known."""
    return UNKNOWN if value is None else str(value)
