"""What to know of a packet before seed is taken from it, in words."""

from __future__ import annotations

from datetime import date

from benchround.core.crop.crop import Crop
from benchround.core.seed.age import Word, age_word, germination_words
from benchround.core.seed.packet import Packet
from benchround.core.seed.weight import grams_of_seeds


def amount_words(seeds: int | None, packet: Packet | None, crop: Crop) -> str:
    """Seeds in words; by weight where the packet is kept by weight."""
    if not seeds:
        return "the seeds"
    if packet is not None and packet.by_weight and crop.seeds_per_g:
        weight = grams_words(grams_of_seeds(seeds, crop.seeds_per_g))
        return f"{weight} of seed (about {seeds} seeds)"
    return f"{seeds} seeds"


def grams_words(weight_g: float) -> str:
    """A weight with the two figures that mean something."""
    return f"{weight_g:.2g} g" if weight_g < 10 else f"{weight_g:.0f} g"


def short_words(packet: Packet | None, needed: int | None, crop: Crop) -> str:
    """That a packet holds less than is needed; empty where it does not, or nobody knows."""
    if packet is None or needed is None:
        return ""
    holds = packet.holds(crop.seeds_per_g)
    if holds is None or holds >= needed:
        return ""
    most = "at most " if packet.unsaid else ""
    weight = packet.grams_left(crop.seeds_per_g)
    held = f"{grams_words(weight)}, about {holds}" if weight is not None else f"{holds}"
    return f"packet {packet.id} holds {most}{held}, {needed} are needed"


def packet_words(
    packet: Packet | None, needed: int | None, crop: Crop, day: date
) -> tuple[Word, ...]:
    """Everything to know of a packet: too little in it, its age, what its test is worth.

    Args:
        packet: the packet; None: nothing to say.
        needed: seeds to be taken; None where they are taken already, or nobody knows.
        crop: the crop's rules.
        day: the day of the sowing.
    """
    if packet is None:
        return ()
    short = short_words(packet, needed, crop)
    age = age_word(packet, crop, day)
    found = (Word(short, True),) if short else ()
    return (*found, *((age,) if age is not None else ()), *germination_words(packet))


def urgent_words(words: tuple[Word, ...]) -> str:
    """What cannot wait, as sentences to stand before an instruction; empty where nothing is."""
    said = (word.text for word in words if word.urgent)
    return "".join(f"{text[0].upper()}{text[1:]}. " for text in said)
