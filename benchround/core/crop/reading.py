"""One pass over a crop's table: gathers every fault and keeps what is good."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

from benchround.core.crop.crop import Crop
from benchround.core.crop.fault import Fault, no_such_key
from benchround.core.crop.keys import CROP, SOURCE, by_short_name, source_names
from benchround.core.crop.relations import relation_troubles
from benchround.core.crop.schema import Key, Section, by_key, defaults
from benchround.core.crop.value import UnfitValue, value_of

CROP_KEY = re.compile(r"(?=.{1,40}\Z)[a-z0-9]+(?:-[a-z0-9]+)*")
CROP_KEY_ALLOWED = "a short name of lower-case letters, digits and hyphens, 40 at most"
A_TABLE = "a table of keys"


@dataclass(slots=True)
class Reading:
    """What one pass found.

    Attributes:
        where: the file's name.
        crop_key: the crop's own key.
        faults: every fault, in the order of the table.
        good: values that may stand, by dotted key below the crop; None for those that may not.
    """

    where: str
    crop_key: str
    faults: list[Fault] = field(default_factory=list)
    good: dict[str, object] = field(default_factory=dict)

    def crop(self, table: object) -> Crop | None:
        """The crop a table describes, or None when `faults` says why not."""
        if not CROP_KEY.fullmatch(self.crop_key):
            self.faults.append(Fault(self.where, self.crop_key, self.crop_key, CROP_KEY_ALLOWED))
        values = self._values(CROP, table, "")
        if isinstance(table, Mapping):
            values["sources"] = self._sources(table.get("sources", {}))
        for dotted, value, allowed in relation_troubles(self.good):
            self._fault(dotted, value, allowed)
        return None if self.faults else Crop(key=self.crop_key, **values)

    def _fault(self, dotted: str, value: object, allowed: str) -> None:
        key = f"{self.crop_key}.{dotted}" if dotted else self.crop_key
        self.faults.append(Fault(self.where, key, value, allowed))

    def _values(self, section: Section, table: object, at: str) -> dict[str, Any]:
        """The good values of one section, by the record's own field names."""
        if not isinstance(table, Mapping):
            self._fault(at, table, A_TABLE)
            return {}
        keys, inner = by_key(section), by_short_name(section)
        values: dict[str, Any] = {}
        for name, raw in table.items():
            dotted = f"{at}.{name}" if at else str(name)
            if name in keys:
                self._value(keys[name], raw, dotted, keys[name].target, values)
            elif name in inner:
                values[name] = self._inner(inner[name], raw, dotted)
            elif section is not CROP or name != "sources":
                self._fault(dotted, raw, no_such_key(str(name), {*keys, *inner}))
        for name in sorted(keys.keys() - table.keys() - defaults(section).keys()):
            self._fault(f"{at}.{name}" if at else name, None, keys[name].allowed)
        return values

    def _value(
        self, key: Key, raw: object, dotted: str, target: str, values: dict[str, Any]
    ) -> None:
        """Read one value into `values` under `target`, or note why it may not stand."""
        try:
            value = value_of(key, raw)
        except UnfitValue:
            self._fault(dotted, raw, key.allowed)
            self.good[dotted] = None
        else:
            values[target] = self.good[dotted] = value

    def _inner(self, section: Section, raw: object, dotted: str) -> Any:
        """The record of an inner section, or the tuple of records where it is a list."""
        self.good[dotted] = section
        if not section.many:
            return self._record(section, raw, dotted)
        if not isinstance(raw, list):
            self._fault(dotted, raw, f"tables written [[{self.crop_key}.{dotted}]]")
            return ()
        numbered = enumerate(raw, 1)
        return tuple(self._record(section, item, f"{dotted}.{place}") for place, item in numbered)

    def _record(self, section: Section, raw: object, dotted: str) -> Any:
        before = len(self.faults)
        values = self._values(section, raw, dotted)
        return section.record(**values) if len(self.faults) == before else None

    def _sources(self, raw: object) -> Mapping[str, str]:
        """Where the figures come from, by dotted key; each entry must name something known."""
        if not isinstance(raw, Mapping):
            self._fault("sources", raw, "a table of texts")
            return {}
        read: dict[str, Any] = {}
        for name, text in raw.items():
            if name in source_names():
                self._value(SOURCE, text, f"sources.{name}", name, read)
            else:
                self._fault(f"sources.{name}", text, no_such_key(str(name), source_names()))
        return MappingProxyType(read)
