"""What may be said of the site: where it lies, when its frosts come, who lives there."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date
from types import MappingProxyType

from benchround.core.errors import InputError
from benchround.core.near_names import shown
from benchround.core.record_figures import FigureRule, Form

SEASON_NAME = FigureRule("name", Form.TEXT, high=200)
FROSTS = ("last_frost", "last_frost_safe", "first_frost")
SITE_FIGURES: Mapping[str, FigureRule] = MappingProxyType(
    {
        rule.name: rule
        for rule in (
            FigureRule("lat_deg", Form.NUMBER, -90, 90, "degrees"),
            FigureRule("lon_deg", Form.NUMBER, -180, 180, "degrees"),
            FigureRule("altitude_m", Form.NUMBER, -430, 5000, "m"),
            FigureRule("children", Form.YES_NO),
            FigureRule("pets", Form.YES_NO),
        )
    }
)
"""Figures of the site besides its frost dates and its time zone."""


def read_month_day(name: str, text: str) -> str:
    """A day of every year, typed as 05-11, kept so.

    Raises:
        InputError: it is none; 29 February is not in every year.
    """
    found = re.fullmatch(r"([0-9]{2})-([0-9]{2})", text.strip())
    try:
        if found is None:
            raise ValueError
        date(2025, int(found[1]), int(found[2]))
    except ValueError:
        raise InputError(
            f"{name}: {shown(text)} is no day of every year; write month and day as 05-11."
        ) from None
    return text.strip()
