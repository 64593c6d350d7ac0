"""Figures that cannot be, found as records are folded: told as a doubt, and left out.

What is typed is checked where it is typed. Records also come from other computers, from files
taken in and from files changed by hand; whoever reads a season may rely on what stands in it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, time
from types import MappingProxyType

from benchround.core.record import Figure, Kind, Record
from benchround.core.record_figures import KINDS, RULES, FigureRule, Form, figure_rule
from benchround.core.settings_words import SETTINGS

SHOWN_LETTERS = 40
_CHECKED = frozenset({Form.WHOLE, Form.NUMBER, Form.DAY, Form.CLOCK, Form.CHOICE})
_LEFT = frozenset({"count", "min_c", "max_c"})
"""Counts of plants are held against their batch, temperatures against each other."""
_PLAIN = {
    name: (rule.low, rule.high, frozenset(("", *rule.choices)) if rule.choices else frozenset())
    for name, rule in RULES.items()
    if rule.form in _CHECKED and name not in _LEFT
}
"""Least and greatest number and the words of a figure: within them nothing more is looked at."""
_PLAIN_NAMES = frozenset(_PLAIN)
_SETTING = Kind.SETTING
"""Found once: before Python 3.12 a member of an enumeration is slow to find."""
_OF_SETTINGS = {setting.key: setting.rule for setting in SETTINGS.values()}


def without_odd(record: Record) -> tuple[Record, tuple[str, ...]]:
    """The record without the figures that cannot be, and a sentence for each of them.

    It is the very same record where there are none, as with nearly all.
    """
    if is_plain(record):
        return record, ()
    odd = dict(_odd(record))
    if not odd:
        return record, ()
    whose = f"{record.about or 'the site'}, {record.day.isoformat()}: {record.kind}"
    doubts = tuple(
        f"{whose} has {name.replace('_', ' ')} {_shown(record.figures[name])}, which cannot be "
        f"({rule.allowed}); it is not used."
        for name, rule in odd.items()
    )
    left = {name: value for name, value in record.figures.items() if name not in odd}
    return replace(record, figures=MappingProxyType(left)), doubts


def is_plain(record: Record) -> bool:
    """Whether it can be seen at a glance that nothing is odd; this is asked of every record."""
    if record.kind is _SETTING:
        return False
    figures = record.figures
    if _PLAIN_NAMES.isdisjoint(figures):  # as most
        return True
    for name, value in figures.items():
        plain = _PLAIN.get(name)
        if plain is None:
            continue
        if type(value) is int:
            if not plain[0] <= value <= plain[1]:
                return False
        elif value not in plain[2]:
            return False
    return True


def _odd(record: Record) -> Iterator[tuple[str, FigureRule]]:
    if record.kind is Kind.SETTING:
        setting, value = _OF_SETTINGS.get(record.about), record.figures.get("value", "")
        if setting is not None and value != "" and not _can_be_set(value, setting):
            yield "value", setting
    if record.kind not in KINDS:
        return
    for name, value in record.figures.items():
        if name in _PLAIN:
            rule = figure_rule(record.kind, name)
            if not _can_be(value, rule):
                yield name, rule


def _can_be(value: Figure, rule: FigureRule) -> bool:
    match rule.form:
        case Form.WHOLE | Form.NUMBER:
            if isinstance(value, (bool, str)) or not rule.low <= value <= rule.high:
                return False
            return rule.form is Form.NUMBER or value == int(value)
        case Form.CHOICE:
            return value == "" or value in rule.choices
        case _:
            return value == "" or (isinstance(value, str) and _is_written(value, rule.form))


def _can_be_set(value: Figure, rule: FigureRule) -> bool:
    """Settings are kept as they are written, numbers as well."""
    if rule.form is not Form.WHOLE:
        return value in rule.choices
    text = str(value)
    return text.isascii() and text.isdecimal() and rule.low <= int(text[:9]) <= rule.high


def _is_written(text: str, form: Form) -> bool:
    try:
        if form is Form.DAY:
            date.fromisoformat(text)
            return True
        return time.fromisoformat(text).tzinfo is None
    except ValueError:
        return False


def _shown(value: object) -> str:
    text = str(value)
    return text if len(text) <= SHOWN_LETTERS else f"{text[:SHOWN_LETTERS]}..."
