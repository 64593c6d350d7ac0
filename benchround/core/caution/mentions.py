"""Cautions for what a grower writes down: a treatment, a bag of compost, what is mixed into it.

A note is free text, so this goes by plain English words and says too much rather than too little:
a line to read costs less than a lungful. Nothing waits for it.
"""

from __future__ import annotations

import re

from benchround.core.caution.due import Page, setup_cautions, worst_first
from benchround.core.caution.triggers import BY_CAUSE

_TREATED = (
    r"spray(s|ed|ing)?|fungicides?|insecticides?|pesticides?|herbicides?|weed ?killers?|chemicals?"
    r"|neem|pyrethr\w+|sul(ph|f)ur|(slug|snail) (pellets?|baits?)|(mouse|rat) (poison|baits?)"
)
_NEW_BAG = (
    r"bags? of (\w+ ){0,2}(compost|potting mix|soil)|(compost|potting) bags?"
    r"|(new|fresh|opened a|opened the|next) (\w+ )?bags?"
)
_MIXED = r"(mix|mixed|mixing|made up|making up) (\w+ ){0,3}(compost|potting mix)|(compost|own) mix"
_ONE_BY_ONE = (
    (r"perlite", "C08"),
    (r"vermiculite", "C07"),
    (r"bak(ed|ing) (\w+ )?(soil|compost)|oven|sterili[sz]\w+", "C37"),
    (r"bleach\w*", "C36"),
    (r"(slug|snail) (pellets?|baits?)|metaldehyde", "C34"),
    (r"(mouse|rat) (poison|baits?|traps?)", "C35"),
)
_PAGES = (
    (_TREATED, Page.CHEMICAL_STOCK),
    (_NEW_BAG, Page.COMPOST_STOCK),
    (_MIXED, Page.COMPOST_MIX),
)


def cautions_of_note(note: str, cause: str = "") -> tuple[str, ...]:
    """Ids of the cautions for what a note mentions and for the cause of a loss, worst first.

    Args:
        note: what was typed, in any case.
        cause: the cause of a loss written down with it; empty: none.
    """
    ids = set(BY_CAUSE.get(cause, ()))
    if note.strip():
        ids.update(
            one for words, page in _PAGES if _says(words, note) for one in setup_cautions(page)
        )
        ids.update(one for words, one in _ONE_BY_ONE if _says(words, note))
    return worst_first(ids)


def _says(words: str, note: str) -> bool:
    return re.search(rf"\b({words})\b", note, re.IGNORECASE) is not None
