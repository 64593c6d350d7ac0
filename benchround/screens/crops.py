"""All crops, found by letters of any of their names; enter opens one on a card."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from benchround.core.batch.batch import Batch
from benchround.core.crop.crop import Crop, PlantClass
from benchround.core.crop.search import find_crops, folded
from benchround.core.dates import say_day
from benchround.crops.library import CropNames
from benchround.screens.batch_back import learned_lines, pair
from benchround.screens.keys import CROPS, bindings
from benchround.screens.look_up import LookUpScreen
from benchround.screens.text import BLANK, Line, Role, fit, line, paragraph
from benchround.screens.widgets.pick_list import Row, told

NAME_MOST, LATIN_MOST = 44, 38
"""The longest names, with the other name a crop was found by."""
NAME_WIDE, LATIN_WIDE, CLASS_WIDE, SOWN_WIDE = 26, 25, 18, 8


class CropsScreen(LookUpScreen, inherit_bindings=False):
    """The crop library with the season's own figures in it."""

    BINDINGS = bindings(CROPS)
    KEYS_OF = CROPS
    LABEL = "crop"

    def __init__(self) -> None:
        super().__init__()
        self._names: tuple[CropNames, ...] = ()

    def found(self, letters: str) -> Sequence[Row]:
        """The crops that go by the letters, with how many batches there are of each."""
        if not self._names:
            known = self.desk.library.names()
            self._names = tuple(n for n in known if n.plant_class is not PlantClass.UNKNOWN)
        sown: dict[str, int] = {}
        for batch in self.desk.season.batches.values():
            sown[batch.crop] = sown.get(batch.crop, 0) + 1
        rows = [_row(name, letters, sown.get(name.key, 0)) for name in self._crops(letters)]
        return rows or [told(line((self.nothing_words(), Role.QUIET)))]

    def _crops(self, letters: str) -> Sequence[CropNames]:
        if letters.strip():
            return find_crops(letters, self._names)
        return sorted(self._names, key=lambda name: folded(name.name))

    def aside_lines(self, width: int) -> Sequence[Line]:
        """What there is to know of the crop under the cursor."""
        key = self.picks.picked
        return list(self._aside(self.desk.season.crop(key), width)) if key else ()

    def _aside(self, crop: Crop, width: int) -> Iterator[Line]:
        season = self.desk.season
        yield from paragraph(crop.name, width, Role.HEADING)
        yield from paragraph(f"{crop.latin}; {sort_words(crop)}", width)
        if crop.synonyms:
            yield from pair("also", ", ".join(crop.synonyms), width)
        if crop.hazards:
            yield from pair("hazards", ", ".join(crop.hazards), width, Role.CAUTION)
        found = crop.germination
        if found is not None:
            days = f"{found.days_first:g} to {found.days_last:g} days at {found.at_c:g} C"
            yield from pair("comes up", days, width)
        yield from learned_lines(season.learned(crop.key), width)
        batches = [batch for batch in season.batches.values() if batch.crop == crop.key]
        if batches:
            yield BLANK
            yield from paragraph("Batches", width, Role.HEADING)
        for batch in sorted(batches, key=lambda batch: batch.begun, reverse=True):
            yield line((fit(batch_words(batch), width), Role.INK))

    def open_picked(self, key: str) -> None:
        """Open the crop's card."""
        self.bench.open("crop", key)


def sort_words(crop: Crop) -> str:
    """What sort of plant it is, and what cold it stands where the sort does not say it already."""
    sort, hardiness = str(crop.plant_class), str(crop.hardiness)
    return sort if sort.startswith(hardiness) else f"{sort}, {hardiness}"


def batch_words(batch: Batch) -> str:
    """A batch in one line: id, variety, stage and day."""
    variety = f" '{batch.variety}'" if batch.variety else ""
    return f"{batch.id}{variety}, {batch.main.stage} since {say_day(batch.main.since)}"


def _row(name: CropNames, letters: str, sown: int) -> Row:
    """A crop with its Latin name; where it goes by another of its names, that one is said."""
    wanted = folded(letters)
    other = ""
    if wanted and wanted not in folded(name.name) and wanted not in folded(name.latin):
        other = next((one for one in name.synonyms if wanted in folded(one)), "")
    batches = f"{sown} sown" if sown else ""

    def words(width: int) -> Line:
        called = f"{name.name} ({other})" if other else name.name
        first, latin, sort = _columns(width)
        return line(
            (fit(called, max(0, first - 1)) + " ", Role.STRONG),
            (fit(name.latin, max(0, latin - 1)) + " ", Role.INK),
            (fit(str(name.plant_class), sort), Role.QUIET),
            (fit(batches, SOWN_WIDE), Role.DONE),
        )

    return Row(words, name.key)


def _columns(width: int) -> tuple[int, int, int]:
    """Columns for name, Latin name and class; both names take what is over, at most so much."""
    first = min(NAME_WIDE, width // 2)
    rest = max(0, width - first - SOWN_WIDE)
    sort = CLASS_WIDE if rest >= LATIN_WIDE + CLASS_WIDE else 0
    latin = rest - sort
    more = max(0, latin - LATIN_WIDE) // 2
    return min(NAME_MOST, first + more), min(LATIN_MOST, latin - more), sort
