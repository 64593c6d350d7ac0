"""Viability constants and shelf years of crops raised here, each with its paper.

Constants as collected in the data of viabilitymetrics (Aravind et al., read), a few of the 165
rows there. Where a species was tried at one temperature only, CH and CQ are the universal
0.0329 and 0.000478; sets fitted over a narrow range or with a nonsensical sign (one for
tomato, French marigold's CH of 0.28) are left out.
"""

from __future__ import annotations

from types import MappingProxyType

from benchround.core.seed.viability import ViabilityConstants

UNIVERSAL_CH, UNIVERSAL_CQ = 0.0329, 0.000478


def _one_temperature(ke: float, cw: float, reference: str) -> ViabilityConstants:
    """Return constants fitted at one temperature."""
    return ViabilityConstants(ke, cw, UNIVERSAL_CH, UNIVERSAL_CQ, reference)


CONSTANTS = MappingProxyType(
    {
        "Allium cepa": ViabilityConstants(6.975, 3.47, 0.04, 0.000428, "Ellis & Roberts 1981"),
        "Beta vulgaris": ViabilityConstants(9.373, 5.152, 0.0372, 0.000467, "Ellis & Hong 2007"),
        "Brassica napus": _one_temperature(7.718, 4.54, "Ellis et al. 1989"),
        "Capsicum annuum": _one_temperature(7.767, 4.67, "Demir et al. 2009"),
        "Celosia argentea": _one_temperature(4.957, 1.188, "Daniel, Kruse & Boerner 2012"),
        "Citrullus lanatus": _one_temperature(4.86, 1.59, "Demir et al. 2011"),
        "Cucumis melo": ViabilityConstants(7.299, 3.707, 0.0367, 0.000473, "Kuo 1991"),
        "Cucumis sativus": _one_temperature(5.35, 2.03, "Demir et al. 2011"),
        "Cucurbita pepo": ViabilityConstants(
            6.913, 3.604, 0.04, 0.0004, "Hong, Linington & Ellis 1996"
        ),
        "Delphinium elatum": _one_temperature(7.777, 4.623, "Kwong et al. 2001"),
        "Digitalis purpurea": _one_temperature(7.49, 5.61, "Hong, Linington & Ellis 1996"),
        "Gypsophila elegans": ViabilityConstants(
            9.6, 5.36, 0.04, 0.0004, "Hong, Linington & Ellis 1996"
        ),
        "Helianthus annuus": _one_temperature(6.74, 4.16, "Ellis, Hong & Roberts 1988"),
        "Lactuca sativa": _one_temperature(6.895, 4.2, "Kraak & Vos 1987; Dickie et al. 1990"),
        "Lupinus polyphyllus": ViabilityConstants(
            6.217, 2.761, 0.04, 0.0004, "Dickie & Bowyer 1985"
        ),
        "Papaver nudicaule": ViabilityConstants(
            6.838, 4.101, 0.027, 0.000313, "Belletti, Lanteri & Lotito 1991"
        ),
        "Phaseolus vulgaris": _one_temperature(9.09, 4.761, "Ellis et al. 1990"),
        "Pisum sativum": _one_temperature(9.858, 5.39, "Ellis et al. 1989"),
        "Salvia splendens": _one_temperature(9.883, 6.678, "Kwong et al. 2001"),
        "Solanum lycopersicum": ViabilityConstants(
            6.5017, 3.1807, 0.0324, 0.000431, "Kruse, Ghiasi & Schmohl 2005"
        ),
        "Zea mays": ViabilityConstants(10.562, 6.366, 0.0332, 0.000577, "Ellis et al. 2007"),
    }
)
"""Constants by botanical name."""

_VEGETABLE_YEARS = {
    1: ("onion", "parsley", "parsnip"),
    2: ("sweet corn", "leek", "pepper"),
    3: ("asparagus", "bean", "broccoli", "carrot", "celery", "kohlrabi", "pea", "spinach"),
    4: (
        "beet",
        "cabbage",
        "cauliflower",
        "chard",
        "eggplant",
        "fennel",
        "kale",
        "pumpkin",
        "squash",
        "tomato",
        "turnip",
    ),
    5: ("cucumber", "endive", "radish"),
    6: ("lettuce",),
}
"""Knott's Handbook for Vegetable Growers, 4th ed. 1997, as given by Iowa State University
Extension (read in a copy): years to expect under favourable storage."""

_FLOWER_YEARS = {
    1: ("delphinium",),
    2: ("china aster", "phlox", "sweet pea", "aquilegia"),
    3: ("cosmos", "marigold", "pansy", "petunia", "scabiosa", "snapdragon", "verbena"),
    4: ("sweet alyssum", "ageratum", "achillea"),
    5: ("calendula", "carnation", "hollyhock", "nasturtium", "stock", "zinnia"),
}
"""Christoffel, Madison Area Technical College list (read); aquilegia, ageratum and achillea
from the Horticulture Talk list of 2010 (read)."""

SHELF_YEARS = MappingProxyType(
    {
        name: years
        for table in (_VEGETABLE_YEARS, _FLOWER_YEARS)
        for years, names in table.items()
        for name in names
    }
)
"""Years a packet may be expected to last in a cool dry place."""
