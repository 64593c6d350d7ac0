"""The words of a typed weather line: for the sky, the rain, the wind, and what to make of each.

Shares of sun: 1 clear, about 0.5 part cloud, 0 to 0.1 overcast (Angstrom form of FAO Irrigation and
Drainage Paper 56, the share standing for n/N); the steps between are our proposal.
"""

from __future__ import annotations

from collections.abc import Mapping
from difflib import get_close_matches
from types import MappingProxyType

from benchround.core.frozen import dataclass

LEAST_LETTERS = 3
"""A word may be cut short to this many letters where it stays the only one."""


@dataclass(frozen=True, slots=True)
class Sky:
    """What a word says of a day: its share of sun, its rain in mm, its wind force."""

    word: str
    sun_share: float | None = None
    rain_mm: float | None = None
    force: int | None = None
    wet: bool = False


_CLEAR, _SUNNY, _MOSTLY = Sky("clear", 1.0), Sky("sunny", 0.75), Sky("mostly sunny", 0.75)
_PART, _CLOUDY, _OVERCAST = Sky("part cloud", 0.5), Sky("cloudy", 0.25), Sky("overcast", 0.05)


def _wet(word: str, share: float) -> Sky:
    return Sky(word, share, wet=True)


def _wind(word: str, force: int) -> Sky:
    return Sky(word, force=force)


WORDS: Mapping[str, Sky] = MappingProxyType(
    {
        "clear": _CLEAR,
        "cloudless": _CLEAR,
        "blue": _CLEAR,
        "sun": _SUNNY,
        "sunny": _SUNNY,
        "sunshine": _SUNNY,
        "fine": _SUNNY,
        "bright": _SUNNY,
        "fair": _MOSTLY,
        "part": _PART,
        "partly": _PART,
        "mixed": _PART,
        "changeable": _PART,
        "broken": _PART,
        "cloud": _CLOUDY,
        "clouds": _CLOUDY,
        "cloudy": _CLOUDY,
        "overcast": _OVERCAST,
        "dull": _OVERCAST,
        "grey": _OVERCAST,
        "gray": _OVERCAST,
        "fog": Sky("fog", 0.05),
        "foggy": Sky("fog", 0.05),
        "mist": Sky("mist", 0.05),
        "misty": Sky("mist", 0.05),
        "rain": _wet("rain", 0.05),
        "rainy": _wet("rain", 0.05),
        "wet": _wet("rain", 0.05),
        "downpour": _wet("downpour", 0.05),
        "drizzle": _wet("drizzle", 0.05),
        "shower": _wet("showers", 0.4),
        "showers": _wet("showers", 0.4),
        "showery": _wet("showers", 0.4),
        "snow": _wet("snow", 0.05),
        "sleet": _wet("sleet", 0.05),
        "hail": _wet("hail", 0.4),
        "thunder": _wet("thunder", 0.4),
        "thundery": _wet("thunder", 0.4),
        "thunderstorm": _wet("thunder", 0.4),
        "thunderstorms": _wet("thunder", 0.4),
        "storm": _wet("storm", 0.4),
        "storms": _wet("storm", 0.4),
        "stormy": _wet("storm", 0.4),
        "dry": Sky("dry", rain_mm=0.0),
        "calm": _wind("calm", 0),
        "still": _wind("calm", 0),
        "breezy": _wind("breezy", 4),
        "windy": _wind("windy", 6),
        "gale": _wind("gale", 8),
        "gales": _wind("gale", 8),
    }
)
"""Words alone. Calm and gale are the scale's; breezy 4 and windy 6 are our proposal. A storm is one
to shut the lids for, with no force of its own: forecasts call thunder so, too."""

PHRASES: Mapping[tuple[str, str], Sky] = MappingProxyType(
    {
        ("part", "cloud"): _PART,
        ("part", "cloudy"): _PART,
        ("partly", "cloudy"): _PART,
        ("part", "sun"): _PART,
        ("partly", "sunny"): _PART,
        ("mostly", "sunny"): _MOSTLY,
        ("mostly", "clear"): _MOSTLY,
        ("mainly", "sunny"): _MOSTLY,
        ("mostly", "cloudy"): _CLOUDY,
        ("mainly", "cloudy"): _CLOUDY,
        ("sunny", "spells"): _PART,
        ("sunny", "intervals"): _PART,
        ("light", "air"): _wind("light air", 1),
        ("light", "breeze"): _wind("light breeze", 2),
        ("gentle", "breeze"): _wind("gentle breeze", 3),
        ("moderate", "breeze"): _wind("moderate breeze", 4),
        ("fresh", "breeze"): _wind("fresh breeze", 5),
        ("strong", "breeze"): _wind("strong breeze", 6),
        ("near", "gale"): _wind("near gale", 7),
        ("strong", "gale"): _wind("strong gale", 9),
        ("light", "rain"): _wet("light rain", 0.05),
        ("heavy", "rain"): _wet("heavy rain", 0.05),
        ("light", "showers"): _wet("light showers", 0.4),
        ("heavy", "showers"): _wet("heavy showers", 0.4),
    }
)
"""Two words together; the winds by the names of the Beaufort scale."""

FILLERS = frozenset({"and", "to", "with", "then", "c", "a", "the", "of", "temps", "wind"})
"""Words that may stand in a line and say nothing by themselves."""

ALL_WORDS = tuple(sorted({*WORDS, *(word for phrase in PHRASES for word in phrase)}))


def sky_of(word: str) -> Sky | None:
    """What a word says; it may be cut short where all it can be says the same."""
    if word in WORDS:
        return WORDS[word]
    if len(word) < LEAST_LETTERS:
        return None
    found = {sky for name, sky in WORDS.items() if name.startswith(word)}
    return found.pop() if len(found) == 1 else None


def phrase_of(first: str, second: str) -> Sky | None:
    """What two words say together, None where they are no phrase."""
    return PHRASES.get((first, second))


LIKENESS = 0.7
"""How alike a known word must be to be offered, 0 to 1, by difflib (our proposal)."""


def words_near(word: str) -> tuple[str, ...]:
    """Known words like a mistyped one, the likeliest first."""
    if len(word) >= LEAST_LETTERS:
        cut = tuple(name for name in WORDS if name.startswith(word))
        if cut:
            return cut[:3]
    return tuple(get_close_matches(word, ALL_WORDS, n=2, cutoff=LIKENESS))
