"""Other words growers use for what can happen to a batch."""

from __future__ import annotations

from collections.abc import Mapping

from benchround.core.record import Kind

ALSO: Mapping[Kind, tuple[str, ...]] = {
    Kind.LOOKED: ("germinated", "up", "nothing up", "nothing yet", "checked", "inspected"),
    Kind.FIRST_UP: ("germinated", "emerged", "sprouted", "came up", "showing"),
    Kind.COUNTED: ("germinated", "came up", "number up", "how many up", "emerged"),
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


def kinds_meant(text: str) -> tuple[Kind, ...]:
    """The kinds a grower may mean by a word that is no name of one."""
    wanted = " ".join(text.casefold().split())
    return tuple(kind for kind, words in ALSO.items() if wanted in words)
