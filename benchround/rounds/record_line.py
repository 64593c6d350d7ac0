"""From words typed on one line to a record: the kind, what it is about, and its figures."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from datetime import date, time

from benchround.core.batch.batch import MAIN
from benchround.core.caution.due import CAUTIONS
from benchround.core.errors import InputError, UnknownNameError
from benchround.core.frozen import dataclass
from benchround.core.lifecycle import NEXT, START
from benchround.core.near_names import near_words, shown
from benchround.core.record import Draft, Figure, Kind
from benchround.core.record_figures import (
    KINDS,
    NEVER_ABOUT_A_BATCH,
    OF_NAMES,
    OF_PLACES,
    OF_SITE,
    FigureRule,
    Form,
    figure_rule,
)
from benchround.core.season import Season
from benchround.core.typed.date import read_day
from benchround.core.visible import steering
from benchround.rounds.typed_words import (
    batch_named,
    place_named,
    read_choice,
    read_clock,
    read_number,
    read_text,
    read_yes_no,
)

SITE, NEW = "site", "new"
"""Words for what a record is about: the whole site, a batch that begins with it."""
LONGEST_NAME = 60
MAIN_WORD = "main"
_NAME = re.compile(r"[a-z0-9][a-z0-9-]{0,39}")

Word = tuple[str, str]
"""A figure's name and what was typed for it."""


@dataclass(frozen=True, slots=True)
class Reader:
    """What is needed to understand typed figures.

    Attributes:
        season: its places and batches.
        today: the day they are typed on.
        crop_key: the key of the crop a word names; raises `UnknownNameError`.
        new_batch: the id a batch that begins would get.
        month_first: whether 5/27 is the 27th of May.
    """

    season: Season
    today: date
    crop_key: Callable[[str], str]
    new_batch: str = ""
    month_first: bool = False

    def figures(self, kind: Kind, words: Iterable[Word]) -> dict[str, Figure]:
        """The figures of a record, each checked against what its kind may be given.

        Raises:
            InputError: a figure is not known for the kind, typed twice, missing or out of range.
            UnknownNameError: a crop, place or batch is not there.
        """
        rule = KINDS[kind]
        said: dict[str, Figure] = {}
        for name, text in words:
            if name not in rule.figures:
                takes = f"it takes {', '.join(rule.figures)}" if rule.figures else "it takes none"
                near = near_words(name, rule.figures, takes)
                raise InputError(f"'{kind}' has no figure {shown(name)}: {near}.")
            if name in said:
                raise InputError(f"'{name}' is given twice: say it once.")
            said[name] = self.figure(figure_rule(kind, name), text)
        missing = sorted(rule.needed - said.keys())
        if missing:
            allowed = figure_rule(kind, missing[0]).allowed
            raise InputError(f"'{kind}' needs {missing[0]}=..., {allowed}.")
        _check_pair(said)
        return said

    def figure(self, rule: FigureRule, text: str) -> Figure:
        """One typed figure.

        Raises:
            InputError: it is not what the rule allows; the message says what is.
        """
        text = text.strip()
        if not text:
            raise InputError(f"{rule.name}: nothing is given; it is {rule.allowed}.")
        if steering(text) is not None:
            raise InputError(f"{rule.name}: there are control characters in it; type plain text.")
        match rule.form:
            case Form.WHOLE | Form.NUMBER:
                return read_number(rule, text)
            case Form.YES_NO:
                return read_yes_no(rule.name, text)
            case Form.CHOICE:
                return read_choice(rule.name, text, rule.choices)
            case Form.TEXT:
                return read_text(rule, text)
            case Form.CLOCK:
                return read_clock(rule.name, text).strftime("%H:%M")
            case Form.DAY:
                day = read_day(text, self.today, ahead=True, month_first=self.month_first)
                return day.isoformat()
            case Form.PLACE:
                return place_named(text, self.season)
            case Form.CROP:
                return self.crop_key(text)
            case Form.BATCH:
                return batch_named(text, self.season)

    def draft(
        self,
        about: str,
        kind: Kind,
        words: Sequence[Word],
        *,
        part: str = "",
        note: str = "",
        at: time | None = None,
        day: date | None = None,
    ) -> Draft:
        """The record that was typed, not yet taken.

        Args:
            about: a batch, a place, `site`, `new`, or the name of a container or packet.
            kind: what happened.
            words: its figures as they were typed.
            part: a part of the batch, `main` or nothing for the main one.
            note: free text.
            at: local time.
            day: the day it happened; None for today.

        Raises:
            BenchroundError: it cannot be; the message says why.
        """
        if day is not None and day > self.today and kind is not Kind.OUTLOOK:
            raise InputError(
                f"{day.isoformat()} is still to come: what has not happened cannot be recorded."
            )
        if kind is Kind.NOTED and not note and not words:
            raise InputError("A note says something: give it with --text.")
        name, of_place = self._about(about, kind)
        figures = self.figures(kind, words)
        if of_place:
            figures["of_place"] = True
        if part and part != MAIN_WORD:
            if of_place or name not in self.season.batches:
                raise InputError("--part is for a batch that has parts.")
            figures["part"] = self.season.batches[name].part(part).name or MAIN
        return Draft(kind, name, figures, note, at, day)

    def _about(self, about: str, kind: Kind) -> tuple[str, bool]:
        """What the record is about, and whether it is about a place or the site as a whole."""
        if kind in OF_NAMES:
            return _own_name(about, kind), False
        if about == NEW:
            return self._begun_by(kind), False
        if about == SITE:
            if kind not in OF_SITE:
                raise InputError(f"'{kind}' is not said of the whole site: name a batch or place.")
            return "", kind is Kind.NOTED
        batches = {name.lower(): name for name in self.season.batches}
        batch = batches.get(about.strip().lower())
        if batch is not None and kind not in NEVER_ABOUT_A_BATCH:
            return batch, False
        if kind in OF_PLACES:
            return _place_or_batch(about, kind, self.season), kind is not Kind.READING
        return batch_named(about, self.season), False

    def _begun_by(self, kind: Kind) -> str:
        if (START, kind) not in NEXT:
            starts = ", ".join(k for k in KINDS if (START, k) in NEXT)
            raise InputError(f"'{kind}' cannot begin a batch; these can: {starts}.")
        return self.new_batch


def _own_name(about: str, kind: Kind) -> str:
    if kind is Kind.CAUTION_READ:
        number, _, crop = about.partition(":")
        if number.upper() not in CAUTIONS:
            near = near_words(number, CAUTIONS, "they run from C01 on, see docs/cautions.md")
            raise UnknownNameError(f"There is no caution {shown(number)}: {near}.")
        return f"{number.upper()}:{crop}" if crop else number.upper()
    if kind is Kind.PACKET and not _NAME.fullmatch(about):
        raise InputError(
            f"{shown(about)} cannot be the name of a packet: use small letters, digits and hyphens."
        )
    if not 0 < len(about.strip()) <= LONGEST_NAME or steering(about) is not None:
        raise InputError(f"{shown(about)} cannot be a name: give 1 to {LONGEST_NAME} letters.")
    return about.strip()


def _place_or_batch(about: str, kind: Kind, season: Season) -> str:
    try:
        return place_named(about, season)
    except UnknownNameError as error:
        near = near_words(about, season.batches)
        if kind in NEVER_ABOUT_A_BATCH or not near:
            raise
        raise UnknownNameError(f"{error} Batches {near}.") from None


def _check_pair(said: dict[str, Figure]) -> None:
    low, high = said.get("min_c"), said.get("max_c")
    if isinstance(low, int | float) and isinstance(high, int | float) and low > high:
        raise InputError(f"lowest {low:g} C is above highest {high:g} C: look at both again.")
