"""The grower's own figures of crops: which stand, what setting or unsetting one would give."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from benchround.core.crop.crop import Crop
from benchround.core.crop.table import override
from benchround.core.frozen import dataclass
from benchround.core.record import Figure, Kind, Record
from benchround.desk import Desk
from benchround.shell.opened import standing_records


@dataclass(frozen=True, slots=True)
class CropRules:
    """A crop, the library's own, and the records that change it.

    Attributes:
        crop: the crop as it counts in the season.
        rules: records that stand, in story order.
    """

    crop: Crop
    library: Crop
    rules: tuple[Record, ...]

    @property
    def changed(self) -> Mapping[str, Figure]:
        """The grower's own figures; of one set twice the later."""
        return {name: value for rule in self.rules for name, value in rule.figures.items()}

    def with_more(self, figures: Mapping[str, Figure]) -> Crop:
        """The crop with more figures changed.

        Raises:
            CropFileError: a key is not known or a figure cannot stand; all are listed.
        """
        return override(self.crop, figures)

    def without(self, names: Iterable[str]) -> Crop:
        """The crop with the library's figures for these keys again.

        Raises:
            CropFileError: what is left of the grower's figures does not fit together.
        """
        gone = set(names)
        left = (
            {name: value for name, value in rule.figures.items() if name not in gone}
            for rule in self.rules
        )
        crop = self.library
        for figures in left:
            crop = override(crop, figures) if figures else crop
        return crop

    def holding(self, names: Iterable[str]) -> tuple[Record, ...]:
        """The records that change any of these keys."""
        wanted = set(names)
        return tuple(rule for rule in self.rules if wanted & rule.figures.keys())


def rules_of(desk: Desk, key: str) -> CropRules:
    """What the grower changed of a crop."""
    rules = tuple(r for r in standing_records(desk, Kind.CROP_RULE) if r.about == key)
    return CropRules(desk.season.crop(key), desk.library[key], rules)
