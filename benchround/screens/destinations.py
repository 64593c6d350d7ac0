"""The list of screens to go to from anywhere: one entry here and a screen is on it.

From it come the go-to screen, its keys in the list of keys, and the names `BenchroundApp.open`
knows. Letters are chosen once and kept: a grower's fingers learn them.
"""

from __future__ import annotations

from benchround.core.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Destination:
    """One screen to go to.

    Attributes:
        letter: the key on the go-to screen.
        name: what it goes by in the program, and its word on the list.
        tells: what is to be seen there, in a few words.
        screen: module and class; empty for the round, which is always open.
    """

    letter: str
    name: str
    tells: str
    screen: str


THE_ROUND = "round"

DESTINATIONS: tuple[Destination, ...] = (
    Destination("r", THE_ROUND, "what is to be done today, in walking order", ""),
    Destination(
        "b",
        "batch",
        "one batch: what happened, what comes, how it came up",
        "benchround.screens.batch:BatchScreen",
    ),
    Destination("s", "sow", "a new batch, sown or planned", "benchround.screens.sow:SowScreen"),
    Destination(
        "n",
        "diary",
        "lines of a paper diary: sown, or come up",
        "benchround.screens.diary:DiarySheet",
    ),
    Destination(
        "i",
        "sheet in",
        "sowings out of a CSV sheet, looked at before they are recorded",
        "benchround.screens.taking_in:TakeInScreen",
    ),
    Destination(
        "c",
        "crops",
        "every crop: its figures, where they come from, your own",
        "benchround.screens.crops:CropsScreen",
    ),
    Destination(
        "p",
        "packets",
        "the seed there is: year, age, what is left",
        "benchround.screens.packets:PacketsScreen",
    ),
    Destination(
        "v",
        "review",
        "what the season taught",
        "benchround.screens.review:ReviewScreen",
    ),
    Destination(
        "y",
        "year",
        "every batch across the year, what flowers together, bench room",
        "benchround.screens.year:YearScreen",
    ),
    Destination(
        "w",
        "weather",
        "days to come and days measured, typed in a line",
        "benchround.screens.weather:WeatherScreen",
    ),
    Destination(
        "l",
        "lids",
        "each frame's day by the hour, against its limits",
        "benchround.screens.lids:LidsScreen",
    ),
    Destination(
        "d",
        "water",
        "what dries first, and what will not last while you are away",
        "benchround.screens.water:WaterScreen",
    ),
    Destination(
        "t",
        "settings",
        "site, household, units, the places on the walk",
        "benchround.screens.settings:SettingsScreen",
    ),
    Destination(
        "f",
        "find",
        "any batch, crop, place or packet by its letters",
        "benchround.screens.find:FindScreen",
    ),
)

SCREENS = {found.name: found.screen for found in DESTINATIONS if found.screen}
"""Screens by name."""


def destination(name: str) -> Destination:
    """The destination of that name."""
    return next(found for found in DESTINATIONS if found.name == name)
