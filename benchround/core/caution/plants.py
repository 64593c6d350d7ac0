"""Which cautions a plant brings with it, at which of its tasks, and on its page.

A plant is known by its Latin name (genus, or genus and species) and by the hazard words of its
crop table. A plant found in neither is not thereby proven safe.
"""

from __future__ import annotations

from functools import lru_cache

from benchround.core.crop.crop import Crop, PlantClass, Treatment
from benchround.core.frozen import dataclass
from benchround.core.task import Family

SEED_WORK = frozenset(
    (
        Family.SOAK,
        Family.CHILL,
        Family.SOW,
        Family.SOW_AGAIN,
        Family.RESOW,
        Family.MARK_SEED,
        Family.SAVE_SEED,
        Family.PACK_SEED,
    )
)
SEED_SAVING = frozenset((Family.MARK_SEED, Family.SAVE_SEED, Family.PACK_SEED))
SAP_WORK = frozenset(
    (Family.THIN, Family.PINCH, Family.SUPPORT, Family.DEADHEAD, Family.PICK, Family.CLEAR)
)
SEEDLING_WORK = frozenset((Family.THIN, Family.PRICK_OUT, Family.RELABEL))
HANDS_ON = SEED_WORK | SAP_WORK | SEEDLING_WORK | {Family.POT_ON, Family.PLANT_OUT, Family.BULBS}
FIRST_TOUCH = frozenset((Family.SOW, Family.SOW_AGAIN, Family.RESOW, Family.PRICK_OUT))
COAT_WORK = frozenset((Family.SOAK, Family.SOW, Family.SOW_AGAIN, Family.RESOW))
BULB_WORK = frozenset((Family.BULBS, Family.PLANT_OUT))
SPREADING = SEED_WORK | {Family.PLANT_OUT, Family.SPARES, Family.CLEAR}


@dataclass(frozen=True, slots=True)
class PlantRule:
    """One caution, the plants it belongs to, and the tasks it is shown at."""

    caution: str
    names: frozenset[str]
    at: frozenset[Family]


OWN_RULES = (
    PlantRule("C14", frozenset(("digitalis",)), SEED_WORK | SEEDLING_WORK),
    PlantRule("C15", frozenset(("aconitum",)), frozenset(Family)),
    PlantRule("C16", frozenset(("delphinium", "consolida")), SEED_WORK | SEEDLING_WORK),
    PlantRule("C17", frozenset(("ricinus",)), SEED_WORK | {Family.CLEAR}),
    PlantRule("C18", frozenset(("lupinus",)), SEED_WORK),
    PlantRule("C19", frozenset(("lathyrus",)), SEED_WORK | {Family.PICK, Family.DEADHEAD}),
    PlantRule("C20", frozenset(("laburnum",)), SEED_WORK),
    PlantRule("C21", frozenset(("narcissus", "tulipa", "hyacinthus")), frozenset((Family.BULBS,))),
    PlantRule("C23", frozenset(("euphorbia",)), frozenset(Family)),
)
"""Plants with a caution of their own. Poison lists of GardenForum, Amateur Gardening and ASPCA
(read); steps beyond sowing, pricking out and seed saving are our own."""

OTHER_POISON = frozenset(
    (
        "agrostemma",
        "aquilegia",
        "brugmansia",
        "catharanthus",
        "colchicum",
        "convallaria",
        "datura",
        "helleborus",
        "ipomoea",
        "lobelia",
        "nicotiana",
        "papaver somniferum",
        "phytolacca",
    )
)
"""Harmful ornamentals without a caution of their own. Same lists (read); ipomoea for cats (read);
nicotiana, papaver somniferum, lobelia, catharanthus, phytolacca from memory."""
PHOTOTOXIC = frozenset(
    ("ammi", "angelica", "dictamnus", "heracleum", "pastinaca", "ruta", "visnaga")
)
"""Rue and the parsnip family (read); ammi, visnaga and the other genera from memory."""
ALLERGENIC = frozenset(("alstroemeria", "chrysanthemum", "tulipa", "primula obconica"))
"""GardenForum and Amateur Gardening lists (read); tulipa from memory."""
CUCURBITS = frozenset(("citrullus", "cucumis", "cucurbita", "lagenaria"))
"""Cucumber family (from memory)."""
POISONOUS = OTHER_POISON.union(*(rule.names for rule in OWN_RULES))
DEADLY = frozenset(("aconitum", "ricinus"))
HARD_COAT = frozenset(("chip", "nick", "scarify"))
"""Names of seed treatments done with a blade, a file or sandpaper."""
EDIBLE = (PlantClass.VEGETABLE, PlantClass.HERB)
HYBRID_SIGNS = ("x", "\u00d7")


@dataclass(frozen=True, slots=True)
class Plant:
    """What of a crop decides its cautions; hashable, so that what is found is kept."""

    latin: str
    hazards: tuple[str, ...]
    plant_class: PlantClass
    treatments: tuple[Treatment, ...]

    @property
    def names(self) -> frozenset[str]:
        """Genus, and genus with species, in small letters."""
        return _names(self.latin)

    @property
    def deadly(self) -> bool:
        """Whether a little of it can kill, by name or by its crop table."""
        return "deadly" in self.hazards or bool(self.names & DEADLY)

    @property
    def poisonous(self) -> bool:
        """Whether it does harm when eaten, by name or by its crop table.

        An edible crop of a genus with poisonous members, such as sweet potato, counts only if its
        own table says so.
        """
        if {"poison", "deadly", "food-like seed"} & set(self.hazards):
            return True
        return self.plant_class not in EDIBLE and bool(self.names & POISONOUS)

    @property
    def phototoxic(self) -> bool:
        """Whether its sap burns skin in sun."""
        return "phototoxic" in self.hazards or bool(self.names & PHOTOTOXIC)

    @property
    def harms_animals(self) -> bool:
        """Whether animals must be kept off it; what poisons people is taken to poison them."""
        return "pets" in self.hazards or self.poisonous

    @property
    def cucurbit(self) -> bool:
        """Whether home-saved seed may give bitter fruit."""
        return "cucurbit" in self.hazards or bool(self.names & CUCURBITS)

    @property
    def allergenic(self) -> bool:
        """Whether skin may come to itch from it."""
        return bool({"allergen", "skin"} & set(self.hazards)) or bool(self.names & ALLERGENIC)

    def own(self, family: Family | None = None) -> set[str]:
        """Its own cautions at a task; at any task where none is given."""
        return {
            rule.caution
            for rule in OWN_RULES
            if self.names & rule.names and (family is None or family in rule.at)
        }

    @property
    def harmful_seed(self) -> bool:
        """Whether its seed is harmful and no caution of its own says so."""
        return self.poisonous and not self.own(Family.SAVE_SEED)


def plant_of(crop: Crop) -> Plant:
    """The part of a crop that decides its cautions."""
    return Plant(crop.latin, crop.hazards, crop.plant_class, crop.treatments)


@lru_cache(maxsize=4096)
def _names(latin: str) -> frozenset[str]:
    words = [word for word in latin.lower().split() if word not in HYBRID_SIGNS]
    return frozenset((" ".join(words[:1]), " ".join(words[:2]))) if words else frozenset()


def _poison_at(family: Family, plant: Plant) -> set[str]:
    """What is said of poison at a task: the plant's own caution, else the general ones."""
    found = plant.own(family)
    if plant.plant_class is PlantClass.BULB and family in BULB_WORK:
        found.add("C21")
    if family in SEED_SAVING | {Family.SOAK} and plant.harmful_seed:
        found.add("C22")
    general = HANDS_ON if plant.deadly else FIRST_TOUCH
    if family in general and plant.poisonous and not found:
        found.add("C13")
    return found


@lru_cache(maxsize=8192)
def plant_cautions(family: Family, plant: Plant) -> frozenset[str]:
    """Ids a plant brings to a task, in no order; sap that burns is included whatever the sky."""
    found = _poison_at(family, plant)
    checks = (
        ("C24", family in SAP_WORK and plant.phototoxic),
        ("C26", family in HANDS_ON and plant.plant_class is PlantClass.UNKNOWN),
        ("C28", family in SEED_SAVING and plant.cucurbit),
        ("C48", family in COAT_WORK and any(t.name in HARD_COAT for t in plant.treatments)),
        ("C52", family is Family.CLEAR and plant.harms_animals),
        ("C53", family in SPREADING and "invasive" in plant.hazards),
    )
    return frozenset(found.union(caution for caution, holds in checks if holds))


@lru_cache(maxsize=1024)
def plant_page(plant: Plant) -> frozenset[str]:
    """Ids for the crop's own page, in no order."""
    checks = (
        ("C13", plant.poisonous),
        ("C21", plant.plant_class is PlantClass.BULB),
        ("C22", plant.harmful_seed),
        ("C24", plant.phototoxic),
        ("C25", plant.allergenic),
        ("C28", plant.cucurbit),
        ("C52", plant.harms_animals),
        ("C53", "invasive" in plant.hazards),
    )
    return frozenset(plant.own().union(caution for caution, holds in checks if holds))
