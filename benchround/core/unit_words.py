"""Sentences in the grower's units: figures in C, K, mm and km/h said in F, inches and mph.

All sentences of the program are made in C, mm and km/h, by whatever rule makes them; here, and
nowhere else, they are turned into what the grower reads. What the grower wrote - names of places,
varieties, packets, containers - is never changed: a name that holds such a figure is passed over
whole, and so is a note, which `own` marks as the grower's.

A figure with C is a temperature; with K, or told as a difference ("cooler by 3 to 6 C", "worth 1 to
2 C", "2 C warmer"), it is a difference. Heat in degree-days is a difference times days, said as "F
degree-days": the heat had, the heat wanted and the usual one alike. A length in cm
is one as in mm; the width of a pot stays, for it is the name of the pot, and so do sizes in m.

What is said in F and inches holds no figure to be turned, so a sentence that comes by here again,
on its way from the round to the screen, stays as it is.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from functools import cached_property

from benchround.core.units import (
    INCH_MM,
    KMH_PER_MS,
    MM_A_CM,
    Degrees,
    Rain,
    Units,
    inches,
    miles_an_hour,
)

DEGREES_F_A_DEGREE_C = 1.8
_NUMBER = r"[-+]?[0-9]+(?:\.[0-9]+)?"
_BETWEEN = r" to | or | and |-| x |\.\."
_FIGURE = (
    rf"(?P<before>\b(?:by|worth|adds?|within)(?: about| some)? )?"
    rf"(?<![\w.])(?<!\bpot )(?P<list>{_NUMBER}(?:(?:{_BETWEEN}){_NUMBER})*) ?"
    r"(?P<unit>degrees C|C|K|km/h|m/s|mm|cm(?! (?:square |round )?pots?\b))(?![\w'-])"
    r"(?P<after> (?:cooler|warmer|colder|hotter|lower|higher|more|less|apart)\b)?"
)
_HEAT = (
    rf"(?<![\w.])(?P<heat>{_NUMBER}(?:(?:{_BETWEEN}| of ){_NUMBER})*) ?degree-days(?![\w'-])"
    rf"(?P<usual> where {_NUMBER}(?= (?:is|are) usual))?"
)
OWN_MARKS = ("\ufdd0", "\ufdd1")
"""Stand about what the grower wrote; Unicode keeps both for such use, and no text holds them."""
_MARKED = "{0}[^{1}]*{1}".format(*OWN_MARKS)
_LABEL = r"(?<=, )(?P<label>C|mm|km/h)$"
_ONE = rf"(?P<gap> to | or | and | x |\.\.|(?<=[0-9])-)?(?P<number>{_NUMBER})"
_FIGURES = f"{_HEAT}|{_FIGURE}"
_TURNED = f"{_FIGURES}|{_LABEL}"
_LABELS = ("C", "mm", "km/h")
_WINDS = {"km/h": 1.0, "m/s": KMH_PER_MS}


def own(text: str) -> str:
    """What the grower wrote, marked so that its figures stay; the marks are never drawn."""
    first, last = OWN_MARKS
    bare = text.replace(first, "").replace(last, "")
    if not (bare.endswith(_LABELS) or any(map(str.isdigit, bare))):
        return bare  # no figure, no label: what looks for them is long to compile
    return f"{first}{bare}{last}" if re.search(_TURNED, f", {bare}") else bare


class UnitWords:
    """Turns sentences into the grower's units.

    Args:
        units: what the grower reads.
        names: what the grower wrote; it is never changed.
    """

    def __init__(self, units: Units, names: Iterable[str] = ()) -> None:
        self.units = units
        self.plain = units == Units()
        self._names = names

    @cached_property
    def _pattern(self) -> re.Pattern[str]:
        held = {name for name in self._names if re.search(_FIGURES, name)}
        kept = sorted(map(re.escape, held), key=len, reverse=True)
        return re.compile(f"(?P<own>{'|'.join((_MARKED, *kept))})|{_TURNED}")

    def __call__(self, text: str) -> str:
        """The sentence in the grower's units; in C and mm it is the very same."""
        return text if self.plain else self._pattern.sub(self._said, text)

    def _said(self, found: re.Match[str]) -> str:
        said = found.groupdict()
        if said["own"]:
            return found[0]
        if said["label"]:
            return self._unit(said["label"])
        if said["heat"]:
            return self._heat(found[0], said["heat"], said["usual"] or "")
        unit, before, after = said["unit"], said["before"] or "", said["after"] or ""
        if unit in ("mm", "cm"):
            return f"{before}{self._lengths(said['list'], unit)}{after}"
        if unit in _WINDS:
            return f"{before}{self._winds(said['list'], unit)}{after}"
        apart = unit == "K" or bool(before or after)
        return f"{before}{self._degrees(said['list'], unit, apart=apart)}{after}"

    def _unit(self, unit: str) -> str:
        if unit == "mm":
            return self.units.length_unit
        if unit == "km/h":
            return self.units.speed_unit
        return str(self.units.degrees)

    def _heat(self, told: str, numbers: str, usual: str) -> str:
        if self.units.degrees is Degrees.C:
            return told
        heat, other = (_each(words, _heat_f) for words in (numbers, usual))
        return f"{heat} F degree-days{other}"

    def _lengths(self, numbers: str, unit: str) -> str:
        if self.units.rain is Rain.MM:
            return f"{numbers} {unit}"
        return f"{_each(numbers, inches if unit == 'mm' else _inches_of_cm)} in"

    def _winds(self, numbers: str, unit: str) -> str:
        if self.units.rain is Rain.MM:
            return f"{numbers} {unit}"
        return f"{_each(numbers, lambda n: miles_an_hour(n * _WINDS[unit]))} mph"

    def _degrees(self, numbers: str, unit: str, *, apart: bool) -> str:
        if self.units.degrees is Degrees.C:
            return f"{numbers} {unit}"
        if apart:
            return _each(numbers, lambda n: f"{round(n * DEGREES_F_A_DEGREE_C, 1):g}") + " F"
        return _each(numbers, self.units.figure) + " F"


def _inches_of_cm(length_cm: float) -> str:
    """Inches to one decimal, from 10 on whole: what was said in cm is seldom known more exactly."""
    length_in = length_cm * MM_A_CM / INCH_MM
    if length_in < 0.5:
        return inches(length_cm * MM_A_CM)
    return f"{length_in:.0f}" if length_in >= 10.0 else f"{round(length_in, 1):g}"


def _heat_f(heat: float) -> str:
    return f"{heat * DEGREES_F_A_DEGREE_C:.0f}"


def _each(numbers: str, say: Callable[[float], str]) -> str:
    """Every number of a run such as "5 to 23" said anew, what stands between them kept."""
    return re.sub(_ONE, lambda one: f"{one['gap'] or ''}{say(float(one['number']))}", numbers)
