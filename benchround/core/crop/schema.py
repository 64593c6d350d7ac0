"""How a key of a crop table is described: its form, its range or choices, and its meaning."""

from __future__ import annotations

from dataclasses import MISSING, fields
from enum import StrEnum
from functools import cache
from typing import Any

from benchround.core.crop.edge import EDGE_ALLOWED
from benchround.core.frozen import dataclass


class Form(StrEnum):
    """How a value is written."""

    TEXT = "text"
    CHOICE = "one of"
    TEXTS = "a list"
    WHOLE = "a whole number"
    NUMBER = "a number"
    YES_NO = "true or false"
    SPAN = "two whole numbers, the least first,"
    EDGE = "a day of the site's year"


@dataclass(frozen=True, slots=True)
class Key:
    """One key of a section.

    Attributes:
        name: as it stands in the file.
        low: smallest number, or fewest letters of a text.
        high: greatest number, or most letters of a text.
        unit: of the number, for messages and the page.
        words: the set of names the record holds, where it is one.
        field: the record's own name for it where the file's word differs.
    """

    name: str
    form: Form
    meaning: str
    low: float = 1.0
    high: float = 80.0
    unit: str = ""
    choices: tuple[str, ...] = ()
    words: type[StrEnum] | None = None
    field: str = ""

    @property
    def target(self) -> str:
        """The field of the record this key fills."""
        return self.field or self.name

    @property
    def allowed(self) -> str:
        """What may stand there, in words."""
        if self.form in (Form.WHOLE, Form.NUMBER, Form.SPAN):
            unit = f" {self.unit}" if self.unit else ""
            return f"{self.form} from {self.low:g} to {self.high:g}{unit}"
        if self.form is Form.TEXT:
            return f"text of {self.low:g} to {self.high:g} letters on one line"
        if self.form is Form.TEXTS and not self.choices:
            return f"a list of texts, each of {self.low:g} to {self.high:g} letters"
        if self.form is Form.EDGE:
            return EDGE_ALLOWED
        opening = "a list out of" if self.form is Form.TEXTS else self.form
        return f"{opening}: {', '.join(self.choices)}" if self.choices else str(self.form)


@dataclass(frozen=True, slots=True, eq=False)  # looked up by what it is, not by what is in it
class Section:
    """A table of a crop; its name is the dotted way to it, empty for the crop itself.

    Attributes:
        record: what a good table becomes.
        many: a list of such tables, written `[[crop.name]]`.
    """

    name: str
    record: type[Any]
    meaning: str
    keys: tuple[Key, ...]
    many: bool = False

    @property
    def short(self) -> str:
        """The last part of its name, which is also the field of the record around it."""
        return self.name.rpartition(".")[2]

    def dotted(self, key: str) -> str:
        """The key with the way to it in front."""
        return f"{self.name}.{key}" if self.name else key


@cache
def by_key(section: Section) -> dict[str, Key]:
    """A section's keys by their names in the file."""
    return {key.name: key for key in section.keys}


NEEDED = object()
"""Stands for the default of a field that must be given."""


@cache
def defaults(section: Section) -> dict[str, Any]:
    """What each key of a section is when left out; a key that must be given is not in it."""
    by_key = {key.name: field_default(section, key.target) for key in section.keys}
    return {name: default for name, default in by_key.items() if default is not NEEDED}


def field_default(section: Section, name: str) -> Any:
    """What a field of the section's record is when nobody gives it, or `NEEDED`."""
    found = next(field for field in fields(section.record) if field.name == name)
    if found.default_factory is not MISSING:
        return found.default_factory()
    return NEEDED if found.default is MISSING else found.default
