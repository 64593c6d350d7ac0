"""Where seed of warm crops rots in cold soil, and what warmth and cold other seed needs first.

Source of the least soil temperatures: J.F. Harrington, Soil temperature conditions for vegetable
seed germination, Oregon State University Extension (read): sweet corn 50 F; beans, cucumber, melon,
watermelon, pumpkin and squash 60 F. Harrington & Minges 1954 still saw beans and cucumber come up
at 15 C, so 60 F is taken as 15 C. That cold wet soil rots them is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from benchround.core.crop.crop import Crop
from benchround.core.numbers.ranges import COLDEST_AIR_C, WARMEST_AIR_C, within

LEAST_SOIL_C: Mapping[str, float] = MappingProxyType(
    {
        "zea": 10.0,
        "phaseolus": 15.0,
        "cucumis": 15.0,
        "cucurbita": 15.0,
        "citrullus": 15.0,
    }
)
"""Genus -> least soil temperature to sow at."""
WARM, CHILL = "warm", "chill"


def least_soil_c(crop: Crop) -> float | None:
    """The least soil temperature a warm crop is sown at; None where cold soil does not rot it."""
    genus = crop.latin.lower().partition(" ")[0]
    return LEAST_SOIL_C.get(genus)


def cold_soil_words(crop: Crop, temp_c: float) -> str:
    """That seed rots at this soil temperature; empty where it does not.

    Raises:
        OutOfRangeError: no soil of a garden is as cold or as warm.
    """
    within("the soil temperature", temp_c, COLDEST_AIR_C, WARMEST_AIR_C, "C")
    least = least_soil_c(crop)
    if least is None or temp_c >= least:
        return ""
    return (
        f"too cold to sow: in cold wet soil its seed rots before it comes up; wait for {least:g} C"
    )


def needed_first_words(crop: Crop) -> str:
    """What warmth and cold its seed needs before it comes up; empty where it needs none."""
    steps = [
        f"{treatment.days:g} days {'of cold' if treatment.name == CHILL else 'of warmth'}"
        + (f" at {treatment.temp_c:g} C" if treatment.temp_c is not None else "")
        for treatment in crop.treatments
        if treatment.name in (WARM, CHILL) and treatment.days
    ]
    if not steps:
        return ""
    return f"its seed needs {', then '.join(steps)} first; the days are counted from then on"
