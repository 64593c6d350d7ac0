"""A crop's page: every figure with its meaning and source, and which the grower changed.

Figures go by their dotted keys, members of lists counted from 1, as `table.override` takes them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from benchround.core.crop.crop import Crop, PlantClass
from benchround.core.crop.keys import CROP, children, sections_by_name
from benchround.core.crop.schema import Form, Key, Section, by_key
from benchround.core.crop.value import table_value
from benchround.core.frozen import dataclass
from benchround.core.record import Figure
from benchround.core.typed.figures import number_in


@dataclass(frozen=True, slots=True)
class CropFigure:
    """One figure of a crop.

    Attributes:
        name: its dotted key.
        value: as it is written; None where the crop has none.
        library: the library's value, where the grower's own differs; else None.
        own: whether the grower changed it for the season.
    """

    name: str
    value: object
    unit: str
    meaning: str
    source: str
    own: bool
    library: object = None

    @property
    def written(self) -> str:
        """The value as it is typed."""
        return value_words(self.value)


def value_words(value: object) -> str:
    """A value of a crop table as it is typed: `28 to 35`, `white, pink`, yes, 14."""
    if value is None:
        return "none"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, list):
        both = len(value) == 2 and all(isinstance(one, int) for one in value)
        return (" to " if both else ", ").join(map(str, value)) or "none"
    return f"{value:g}" if isinstance(value, float) else str(value)


def crop_figures(
    crop: Crop, library: Crop, changed: Mapping[str, Figure]
) -> tuple[CropFigure, ...]:
    """Every figure of a crop, those it has not got left out.

    Args:
        crop: the crop as it counts in the season.
        library: the crop as the library has it.
        changed: the grower's own figures by dotted key.
    """
    before = {name: value for name, _, value in _figures(CROP, library, "")}
    found: list[CropFigure] = []
    for name, key, value in _figures(CROP, crop, ""):
        own = name in changed
        if (value is None or _of_bulbs_only(name, crop)) and not own:
            continue
        was = before.get(name)
        source = (crop if own else library).source(_source_name(name))
        beside = was if own else None
        found.append(CropFigure(name, value, key.unit, key.meaning, source, own, beside))
    return tuple(found)


def _of_bulbs_only(name: str, crop: Crop) -> bool:
    """Whether a figure is of bulbs, and the crop is none."""
    return name == "bulb_rest_days" and crop.plant_class is not PlantClass.BULB


def _figures(section: Section, record: Any, at: str) -> Iterator[tuple[str, Key, object]]:
    for key in section.keys:
        yield f"{at}{key.name}", key, table_value(getattr(record, key.target))
    for child in children(section):
        inner = getattr(record, child.short)
        name = f"{at}{child.short}."
        if child.many:
            for number, member in enumerate(inner, 1):
                yield from _figures(child, member, f"{name}{number}.")
        elif inner is not None:
            yield from _figures(child, inner, name)


def _source_name(name: str) -> str:
    return ".".join(step for step in name.split(".") if not step.isdecimal())


def key_of(name: str) -> Key | None:
    """The key a dotted name points to, whether or not the crop has such a section."""
    section, _, last = _source_name(name).rpartition(".")
    found = sections_by_name().get(section)
    return by_key(found).get(last) if found else None


def typed_figure(name: str, text: str) -> Figure:
    """A figure typed for a dotted key, in the type a record keeps; checked where it is used."""
    key, said = key_of(name), text.strip()
    if key is None or said.lower() == "none":
        return said.lower() if said.lower() == "none" else said
    if key.form is Form.YES_NO:
        words: Mapping[str, bool] = {"yes": True, "true": True, "no": False, "false": False}
        return words.get(said.lower(), said)
    if key.form in (Form.WHOLE, Form.NUMBER):
        return _number(said)
    return said


def _number(text: str) -> Figure:
    """The number a text is; the text itself, to be refused, where it is none."""
    value = number_in(text)
    if value is None:
        return text
    return int(value) if value == int(value) else value
