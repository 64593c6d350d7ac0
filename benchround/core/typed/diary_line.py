"""A sowing as one line of a diary: "12 apr cosmos Paper Lantern 40 seeds bench 1".

Day, crop and variety stand first and in this order; numbers with their units, the packet and the
place follow in any order. Nothing is guessed: a word that fits nowhere is named and refused.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from benchround.core.crop.search import Named, find_crops, folded, key_spelled
from benchround.core.errors import InputError
from benchround.core.record import Draft, Figure, Kind
from benchround.core.site import Place
from benchround.core.typed.date import read_day
from benchround.core.typed.figures import MOST_COUNT, whole_in
from benchround.core.typed.words import meant, read_place

LONGEST_LINE = 400
MOST_CROP_WORDS = 5
MOST_PLACE_WORDS = 6
NEAR_CROPS = 4
UNITS = {
    "seed": "seeds",
    "seeds": "seeds",
    "cell": "cells",
    "cells": "cells",
    "tray": "trays",
    "trays": "trays",
    "wanted": "wanted",
}
"""Words after a number, and the figure they make it."""
PREPOSITIONS = frozenset({"in", "into", "on", "at", "to"})
VERBS = frozenset({"sow", "sowed", "sown"})
HOW = "write it as '12 apr cosmos Paper Lantern 40 seeds bench 1'"

_COUNT = re.compile(r"([0-9]{1,9})([a-z]*)")
_YEAR = re.compile(r"[0-9]{4}")
_DAYLIKE = re.compile(r"[0-9+\-].*")
_QUOTES = {"'": "'", '"': '"', "\u2018": "\u2019", "\u201c": "\u201d"}


def read_diary_line(
    text: str,
    today: date,
    crops: Iterable[Named],
    places: Sequence[Place],
    batch: str = "",
    *,
    usual_day: date | None = None,
    month_first: bool = False,
) -> Draft:
    """The sowing a line tells of.

    Args:
        text: the line as typed.
        today: the day it is typed on. A day to come makes it a plan.
        crops: the crops that can be meant, by any of their names.
        places: the places that can be meant, by code or name.
        batch: the id of the batch it begins.
        usual_day: the day of a line that names none; today without it.
        month_first: whether 4/12 is the 12th of April.

    Raises:
        InputError: a word cannot be understood; the message names it and says what to write.
    """
    words = words_of(text)
    day, words = day_and_rest(words, today, usual_day or today, month_first)
    if words and words[0].lower() in VERBS:
        words = words[1:]
    if not words:
        raise InputError(f"No crop was named: {HOW}.")
    crop, words = crop_and_rest(words, crops)
    rest = _Rest(words, places)
    rest.read()
    variety = " ".join(rest.variety)
    figures: dict[str, Figure] = {"crop": crop, **({"variety": variety} if variety else {})}
    return sowing_draft(batch, {**figures, **rest.figures}, day, today)


def words_of(text: str) -> list[str]:
    """The words of a line.

    Raises:
        InputError: it is too long, or holds control characters.
    """
    if len(text) > LONGEST_LINE or not text.replace("\t", " ").strip("\r\n").isprintable():
        raise InputError(f"That line is too long or holds control characters: {HOW}.")
    return text.split()


def day_named(text: str, today: date, usual_day: date, *, month_first: bool = False) -> date:
    """The day a line begins with, whatever follows; the usual day where it names none.

    Raises:
        InputError: it begins like a day, but is none.
    """
    return day_and_rest(text[:LONGEST_LINE].split(), today, usual_day, month_first)[0]


def sowing_draft(
    batch: str, figures: dict[str, Figure], day: date, today: date, note: str = ""
) -> Draft:
    """A sowing as a record: done on its day, or planned for it where it is yet to come."""
    if day > today:
        planned: dict[str, Figure] = {**figures, "sow_on": day.isoformat()}
        return Draft(Kind.PLANNED, batch, planned, note, day=today)
    return Draft(Kind.SOWN, batch, figures, note, day=day)


def crop_meant(text: str, crops: Iterable[Named]) -> str:
    """The key of the crop a text names: a whole name, its plural, or letters only one begins with.

    Raises:
        InputError: no crop, or more than one, answers to it.
    """
    known = tuple(crops)
    exact = _exact_crop(text, _keys_by_name(known)) or key_spelled(text, known)
    if exact is not None:
        return exact
    start = f" {folded(text)}"
    near = [
        crop
        for crop in (find_crops(text, known) if start.strip() else ())
        if any(start in f" {name}" for name in _names(crop))
    ]
    if len(near) == 1:
        return near[0].key
    if not near:
        raise InputError(
            f"'{text[:40]}' is no crop of the library: look it up on the crops screen."
        )
    some = ", ".join(crop.key for crop in near[:NEAR_CROPS])
    raise InputError(f"'{text[:40]}' could be more than one crop: {some}.")


def day_and_rest(
    words: list[str], today: date, usual: date, month_first: bool
) -> tuple[date, list[str]]:
    """The day the words begin with, or the usual one, and the words after it.

    Raises:
        InputError: they begin like a day, but it is none.
    """

    def read(count: int) -> date:
        return read_day(" ".join(words[:count]), today, month_first=month_first)

    for count in (3, 2, 1):
        if len(words) < count:
            continue
        try:
            day = read(count)
        except InputError:
            continue
        if words[count:] and _YEAR.fullmatch(words[count]):
            return read(count + 1), words[count + 1 :]
        return day, words[count:]
    if words and _DAYLIKE.fullmatch(words[0]):
        read(2 if words[0].isdigit() else 1)
    return usual, words


def crop_and_rest(words: list[str], crops: Iterable[Named]) -> tuple[str, list[str]]:
    """The key of the crop the words begin with, and the words after it.

    Raises:
        InputError: no crop, or more than one, answers to the first word.
    """
    known = tuple(crops)
    keys = _keys_by_name(known)
    for count in range(min(MOST_CROP_WORDS, len(words)), 0, -1):
        key = _exact_crop(" ".join(words[:count]), keys)
        if key is not None:
            return key, words[count:]
    return crop_meant(words[0], known), words[1:]


def _keys_by_name(crops: Iterable[Named]) -> dict[str, str]:
    """Every name of every crop, folded; the first crop of a name has it."""
    keys: dict[str, str] = {}
    for crop in crops:
        for name in _names(crop):
            keys.setdefault(name, crop.key)
    return keys


def _names(crop: Named) -> tuple[str, ...]:
    return tuple(folded(name) for name in (crop.key, crop.name, *crop.synonyms, crop.latin) if name)


def _exact_crop(text: str, keys: Mapping[str, str]) -> str | None:
    wanted = folded(text)
    for name in (wanted, wanted.removesuffix("s"), wanted.removesuffix("es")):
        if name in keys:
            return keys[name]
    return None


@dataclass
class _Rest:
    """What follows the crop, read word by word."""

    words: list[str]
    places: Sequence[Place]
    variety: list[str] = field(default_factory=list)
    figures: dict[str, Figure] = field(default_factory=dict)
    at: int = 0

    def read(self) -> None:
        while self.at < len(self.words):
            if not (self._quoted() or self._figure() or self._packet() or self._place()):
                self._plain()

    def _left(self) -> list[str]:
        return self.words[self.at :]

    def _quoted(self) -> bool:
        first = self.words[self.at]
        close = _QUOTES.get(first[:1])
        if close is None or self.variety or self.figures:
            return False
        for last in range(self.at, len(self.words)):
            if self.words[last].endswith(close) and (last > self.at or len(first) > 1):
                inside = " ".join(self.words[self.at : last + 1])[1:-1]
                self.variety.extend(inside.split())
                self.at = last + 1
                return True
        return False

    def _figure(self) -> bool:
        left = self._left()
        if left[0].lower() == "wanted" and len(left) > 1 and whole_in(left[1]) is not None:
            return self._set("wanted", left[1], 2)
        found = _COUNT.fullmatch(left[0].lower())
        if found is None:
            return False
        number, unit, used = found[1], found[2], 1
        if not unit and len(left) > 1:
            unit, used = left[1].lower(), 2
        if unit in ("per", "a") and len(left) > used and left[used].lower() == "cell":
            return self._set("per_cell", number, used + 1)
        return unit in UNITS and self._set(UNITS[unit], number, used)

    def _set(self, name: str, number: str, used: int) -> bool:
        if name in self.figures:
            raise InputError(f"{name.replace('_', ' ')} are there twice: leave one out.")
        if int(number) > MOST_COUNT:
            raise InputError(f"{number} {name.replace('_', ' ')} cannot be: look again.")
        self.figures[name] = int(number)
        self.at += used
        return True

    def _packet(self) -> bool:
        left = self._left()
        if left[0].lower() != "packet" or len(left) < 2:
            return False
        self.figures["packet"] = left[1]
        self.at += 2
        return True

    def _place(self) -> bool:
        left = self._left()
        start = 1 if left[0].lower() in PREPOSITIONS else 0
        if "place" in self.figures:
            return False
        for count in range(min(MOST_PLACE_WORDS, len(left) - start), 0, -1):
            named = " ".join(left[start : start + count])
            if meant(named, ((p.code, (p.code, p.name)) for p in self.places), whole=True):
                self.figures["place"] = read_place(named, self.places, whole=True)
                self.at += start + count
                return True
        return False

    def _plain(self) -> None:
        word = self.words[self.at]
        bare = word.isdecimal() and not self.variety
        if not self.figures and not bare:
            self.variety.append(word)
            self.at += 1
            return
        if word.lower() in PREPOSITIONS and "place" not in self.figures and self._left()[1:]:
            read_place(" ".join(self._left()[1:]), self.places, whole=True)
        if word.isdecimal():
            raise InputError(
                f"{word[:20]} of what? Write '{word[:20]} seeds' or '{word[:20]} cells', and a "
                "variety that begins with a number in quotes."
            )
        raise InputError(f"'{word[:40]}' is not understood there: {HOW}.")
