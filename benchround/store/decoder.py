"""Many stored documents into records, fast: a season of 120,000 is read while the grower waits.

Whatever is not plainly in order is left to `codec.decode`, which says what is wrong with it. Words
that come again and again, such as the name of a batch, are checked once and held once.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from datetime import date
from math import isfinite
from types import MappingProxyType
from typing import Any

from benchround.core.errors import InputError
from benchround.core.record import NO_FIGURES, Record
from benchround.store.bounds import LARGEST_WHOLE, first_unprintable
from benchround.store.codec import KINDS, Document, decode, plain_time


class _Unfilled:
    """A record whose fields are being set; it becomes a `Record` once they all are.

    A frozen record's own constructor sets every field through a guarded detour, which takes three
    times as long as everything else that is done to a document here.
    """

    __slots__ = Record.__slots__


_closed = MappingProxyType
_new: Callable[[type[_Unfilled]], Any] = object.__new__


class _Known(dict[str, Any]):
    """What a text stands for, worked out the first time it is met."""

    def __init__(self, meaning: Callable[[str], object]) -> None:
        super().__init__()
        self._meaning = meaning

    def __missing__(self, text: str) -> object:
        self[text] = meaning = self._meaning(text)
        return meaning


class Decoder:
    """Decodes documents; one serves all pages that are read at one go."""

    def __init__(self) -> None:
        self._days = _Known(date.fromisoformat)
        self._times = _Known(plain_time)
        self._words = _Known(_word)
        self._names: set[str] = set()

    def records(
        self,
        documents: Iterable[Document],
        refuse: Callable[[InputError], None],
        *,
        examine: bool = True,
    ) -> tuple[Record, ...]:
        """The records in these documents.

        Args:
            documents: the documents.
            refuse: told why a document holds no record.
            examine: whether texts and figures have to be looked at; not if they are known to have
                come from `codec.encode` and to hold nothing that cannot be printed.
        """
        days, times, words, kinds = self._days, self._times, self._words, KINDS
        records: list[Record] = []
        add = records.append
        for document in documents:
            try:
                if examine:
                    self._examine(document)
                record = _new(_Unfilled)
                record.id = document["id"]
                record.day = days[document["day"]]
                record.kind = kinds[document["kind"]]
                record.about = words[document["about"]] if "about" in document else ""
                record.figures = (
                    _closed(document["figures"]) if "figures" in document else NO_FIGURES
                )
                record.note = document.get("note", "")
                record.at = times[document["at"]] if "at" in document else None
                record.machine = words[document["machine"]] if "machine" in document else ""
                record.__class__ = Record
                add(record)
            except (KeyError, TypeError, ValueError, AttributeError):
                try:
                    add(decode(document))
                except InputError as error:
                    refuse(error)
        return tuple(records)

    def _examine(self, document: Document) -> None:
        name = document["id"]
        if not name or not name.isprintable():
            raise ValueError
        if "note" in document:
            _text(document["note"])
        if "figures" not in document:
            return
        figures = document["figures"]
        if not figures.keys() <= self._names:
            self._names.update(map(_word, figures))
        for value in figures.values():
            of = value.__class__
            if of is int:
                if not -LARGEST_WHOLE <= value <= LARGEST_WHOLE:
                    raise ValueError
            elif of is float:
                if not isfinite(value):
                    raise ValueError
            elif of is str:
                _text(value)
            elif of is not bool:
                raise ValueError


def _word(text: str) -> str:
    if text.isprintable() or first_unprintable(text, lines=False) is None:
        return text
    raise ValueError


def _text(text: str) -> str:
    if text.isprintable() or first_unprintable(text, lines=True) is None:
        return text
    raise ValueError
