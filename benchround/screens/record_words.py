"""Other words growers use for what can happen to a batch; the record sheet finds kinds by them."""

from __future__ import annotations

from collections.abc import Sequence

from benchround.core.kind_words import ALSO
from benchround.core.record import Kind
from benchround.screens.widgets.field import Choice, Finder, among


def kind_finder(choices: Sequence[Choice]) -> Finder:
    """Finds what happened by its own name first, then by other words for it.

    Args:
        choices: the kinds the batch's stage allows.
    """
    by_name = among(choices)

    def find(letters: str) -> Sequence[Choice]:
        found = list(by_name(letters))
        wanted = " ".join(letters.casefold().split())
        if not wanted:
            return found
        others = [choice for choice in choices if choice not in found and _also(choice, wanted)]
        return [*found, *others]

    return find


def _also(choice: Choice, wanted: str) -> bool:
    words = ALSO.get(Kind(choice.value), ())
    return any(word.startswith(wanted) or f" {wanted}" in word for word in words)
