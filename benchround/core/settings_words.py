"""The settings of a season: their names, what they may be, what holds when nothing is said."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from benchround.core.frozen import dataclass
from benchround.core.record_figures import FigureRule, Form
from benchround.core.typed.date import DATE_ORDER, DAY_FIRST, MONTH_FIRST
from benchround.core.water.balance import Compost


@dataclass(frozen=True, slots=True)
class Setting:
    """One setting.

    Attributes:
        rule: its name and what it may be.
        usual: what holds when it is not set, in words.
    """

    rule: FigureRule
    usual: str
    meaning: str

    @property
    def key(self) -> str:
        """The name it is kept under."""
        return _KEPT_AS.get(self.rule.name, self.rule.name)


_KEPT_AS = {"date_order": DATE_ORDER}
"""Settings whose kept name could not be typed before an equals sign."""


def _one_of(name: str, *choices: str) -> FigureRule:
    return FigureRule(name, Form.CHOICE, choices=choices)


_SETTINGS = (
    Setting(_one_of("units", "C", "F"), "C", "degrees as you read and type them"),
    Setting(
        _one_of("rain_units", "mm", "inch"),
        "mm",
        "winds too: km/h or mph",
    ),
    Setting(_one_of("date_order", DAY_FIRST, MONTH_FIRST), DAY_FIRST, "how 5/6 is read"),
    Setting(
        FigureRule("feed_every_days", Form.WHOLE, 1, 60, "days"), "7", "from one feed to the next"
    ),
    Setting(_one_of("compost", *Compost), str(Compost.PEAT), "the compost in use"),
    Setting(_one_of("weather_fetch", "on", "off"), "off", "whether an outlook may be fetched"),
    Setting(_one_of("look", "dark", "light"), "dark", "the look of the screens on this computer"),
)
SETTINGS: Mapping[str, Setting] = MappingProxyType({one.rule.name: one for one in _SETTINGS})
"""Settings that are records of their own."""
