"""Other words growers use for what can happen to a batch; the record sheet finds kinds by them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from benchround.core.record import Kind
from benchround.screens.widgets.field import Choice, Finder, among

ALSO: Mapping[Kind, tuple[str, ...]] = {
    Kind.LOOKED: ("germinated", "up", "nothing up", "nothing yet", "checked", "inspected"),
    Kind.FIRST_UP: ("germinated", "emerged", "sprouted", "came up", "showing"),
    Kind.COUNTED: ("germinated", "number up", "how many up", "emerged"),
    Kind.LOST: (
        *("loss", "died", "dead", "killed", "eaten", "damped off", "rotted", "withered", "failed"),
        *("slugs", "frosted", "gone"),
    ),
    Kind.COMPOSTED: ("thrown out", "binned", "heap", "cleared", "pulled up", "discarded"),
    Kind.PRICKED_OUT: ("transplanted", "potted up", "celled", "potted"),
    Kind.POTTED_ON: ("repotted", "bigger pot", "potted up", "transplanted"),
    Kind.PLANTED_OUT: ("transplanted", "set out", "bedded out", "in the ground"),
    Kind.HARDENING_BEGUN: ("hardening off", "put outside", "acclimatise"),
    Kind.HARDENED: ("hardening off", "acclimatised"),
    Kind.UNCOVERED: ("lid off", "cover off", "off heat", "out of propagator"),
    Kind.SEED_LEAVES: ("cotyledons", "seedleaf"),
    Kind.TRUE_LEAVES: ("leaves", "first leaves"),
    Kind.THINNED: ("singled", "spaced", "pulled"),
    Kind.MOVED: ("shifted", "other place", "relocated", "carried"),
    Kind.NOTED: ("note", "remark", "comment", "memo", "photo"),
    Kind.WATERED: ("drenched", "wet", "soaked the tray"),
    Kind.FED: ("feed", "fertilised", "fertilized", "manured"),
    Kind.PINCHED: ("stopped", "tipped", "nipped"),
    Kind.FIRST_FLOWER: ("bloomed", "in bloom", "flowering", "opened"),
    Kind.CROPPED: ("harvest", "harvested", "first picking"),
    Kind.PICKED: ("harvest", "harvested", "cut", "gathered"),
    Kind.DEADHEADED: ("faded flowers off", "spent flowers"),
    Kind.SEED_SAVED: ("collected seed", "kept seed", "gathered seed", "harvested seed"),
    Kind.LIFTED: ("dug up", "taken up"),
    Kind.STALLED: ("no growth", "stopped growing", "stuck"),
    Kind.WEIGHED: ("scale", "weight", "grams"),
    Kind.MEASURED: ("height", "tall", "size"),
    Kind.RESOWN: ("sown again", "second sowing"),
    Kind.CHILLED: ("fridge", "stratified", "cold", "refrigerated"),
    Kind.SEEN: ("alive", "still there"),
}
"""Plain and trade words by kind (common practice, no source)."""


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
