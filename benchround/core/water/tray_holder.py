"""What a part of a batch stands in: the container its records name, else a guess that says so."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from benchround.core.batch.batch import Batch, Part
from benchround.core.containers import (
    COMMON_CELLS,
    USUAL_CONTAINERS,
    Container,
    tray_of_cells,
    usual_called,
)
from benchround.core.crop.crop import Crop, Raising
from benchround.core.errors import OutOfRangeError
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import OUTWARD, SEEDLING, WAITING, YOUNG, Stage
from benchround.core.record import Kind, Record
from benchround.core.season import Season
from benchround.core.site import PlaceKind
from benchround.core.water.balance import Compost, TrayWater, tray_water

POTS_CM = ((8.0, "7 cm pot"), (11.0, "9 cm pot"), (15.0, "1 L pot"))
LARGEST_POT = "2 L pot"
A_POT = "a pot"
NEW_HOME = (Kind.POTTED_ON, Kind.PRICKED_OUT)
"""Kinds that put plants into another container, later in life first."""


WATERED_STAGES = WAITING | SEEDLING | YOUNG | OUTWARD | {Stage.OVERWINTERING}
NEVER_WATERED = (PlaceKind.BED, PlaceKind.FRIDGE)
COMPOSTS = {str(compost): compost for compost in Compost}
COMPOST_SETTING = "compost"
"""Setting that names the compost in use."""


@dataclass(frozen=True, slots=True)
class Holder:
    """The container a part stands in, as water sees it.

    Attributes:
        name: what the container is called.
        water: the water side of one container.
        each: how an amount of one container is said: "a pot" or "a tray".
        assumed: what was not told, and what was taken instead.
    """

    name: str
    water: TrayWater
    each: str
    assumed: tuple[str, ...] = ()

    @property
    def pot(self) -> TrayWater | None:
        """The water side where it is a pot, which stands free; None for a tray."""
        return self.water if self.each == A_POT else None


def compost_of(season: Season) -> Compost:
    """The compost in use, by the season's setting; peat where it is not said."""
    return COMPOSTS.get(season.settings.get(COMPOST_SETTING, ""), Compost.PEAT)


def in_container(season: Season, batch: Batch, part: Part) -> bool:
    """Whether the part stands in something that is watered by the tray."""
    place = season.place(part.place)
    drilled = batch.sowing is not None and batch.sowing.raising == Raising.DRILL
    return (
        part.stage in WATERED_STAGES
        and not drilled
        and not (place is not None and place.kind in NEVER_WATERED)
    )


def holder_of(
    batch: Batch, part: Part, crop: Crop, own: Mapping[str, Record], compost: Compost
) -> Holder:
    """What a part stands in.

    Args:
        batch: the batch, for how it was sown.
        part: the part.
        crop: the crop's rules, for how it is usually raised and potted.
        own: the grower's own containers: records with `cells`, `cell_ml`, `length_m`, `width_m`.
        compost: the compost in use.
    """
    named = "" if _moved_since_named(part) else part.container
    if not named:
        return _usual(_guess(batch, part, crop), compost, "container not told")
    record = own.get(named)
    if record is not None:
        mine = _own_container(named, record)
        if mine is not None:
            return _held(mine, compost)
        because = f"'{named}' is not described in full, or not possible"
    else:
        usual = usual_called(named)
        if usual is not None:
            return _usual(usual.name, compost)
        because = f"'{named}' is not among the containers"
    return _usual(_guess(batch, part, crop), compost, because)


def in_its_pot(part: Part, crop: Crop, own: Mapping[str, Record]) -> bool:
    """Whether it is known to stand in a pot as large as the one it is potted on into, or larger."""
    named = "" if _moved_since_named(part) else part.container
    record = own.get(named)
    found = _own_container(named, record) if record is not None else usual_called(named)
    if found is None or _each(found) != A_POT:
        return False
    return found.cell_ml >= USUAL_CONTAINERS[_pot(crop.growing.pot_cm)].cell_ml


def _each(container: Container) -> str:
    return A_POT if "pot" in container.name else "a tray"


def _held(container: Container, compost: Compost, assumed: tuple[str, ...] = ()) -> Holder:
    return Holder(container.name, tray_water(container, compost), _each(container), assumed)


@lru_cache(maxsize=256)
def _usual(name: str, compost: Compost, because: str = "") -> Holder:
    """One of the usual containers; `because` says why it is taken where it was not named."""
    found = USUAL_CONTAINERS[name]
    return _held(found, compost, (f"{because}: {found.name} taken",) if because else ())


def _own_container(name: str, record: Record) -> Container | None:
    """The grower's own container; None where its figures are missing or out of range."""
    cells = record.count("cells") or 1
    cell_ml, length = record.number("cell_ml"), record.number("length_m")
    width = record.number("width_m")
    if cell_ml is None or length is None or width is None:
        return None
    try:
        return Container(name, cells, cell_ml, length, width)
    except OutOfRangeError:
        return None  # the caller names it and takes the usual one


def _moved_since_named(part: Part) -> bool:
    """Whether plants were last put into another container without a word on which."""
    moves = [record for kind in NEW_HOME if (record := part.last.get(kind)) is not None]
    if not moves:
        return False
    latest = moves[0] if len(moves) == 1 else max(moves, key=lambda record: record.order)
    if latest.text("container"):
        return False
    named = [r for r in part.last.values() if "container" in r.figures]
    return not any(r.order >= latest.order for r in named if r.text("container"))


def _guess(batch: Batch, part: Part, crop: Crop) -> str:
    for kind in NEW_HOME:
        record = part.last.get(kind)
        if record is None:
            continue
        if kind is Kind.POTTED_ON:
            return _pot(record.number("pot_cm") or crop.growing.pot_cm)
        return tray_of_cells(record.count("cells") or COMMON_CELLS)
    sowing = batch.sowing
    raising = (sowing.raising if sowing else "") or str(crop.raising)
    if raising == Raising.POTS:
        return _pot(crop.growing.pot_cm)
    if raising == Raising.TRAY:
        return "half tray"
    return tray_of_cells((sowing.cells if sowing else None) or COMMON_CELLS)


def _pot(size_cm: float) -> str:
    return next((name for below, name in POTS_CM if size_cm < below), LARGEST_POT)
