"""Packets in words: a line for the list, and all there is to know of one."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from benchround.core.season import Season
from benchround.core.seed.age import age_years
from benchround.core.seed.packet import Packet
from benchround.core.seed.packet_words import grams_words, packet_words
from benchround.screens.batch_back import caution_lines, learned_lines, pair
from benchround.screens.crops import batch_words
from benchround.screens.text import BLANK, Line, Role, fit, line, paragraph

ID_WIDE, YEAR_WIDE, LEFT_WIDE, SHARE_WIDE = 8, 6, 10, 5
NAME_MOST = 36
WARNING = "test! "
INDENT = "  "


def left_words(packet: Packet, season: Season) -> str:
    """What is left in it, as far as anybody knows."""
    crop = season.crop(packet.crop)
    weight, seeds = packet.grams_left(crop.seeds_per_g), packet.holds(crop.seeds_per_g)
    most = "at most " if packet.unsaid else ""
    if weight is not None:
        return f"{most}{grams_words(weight)}"
    if packet.by_weight and packet.grams is not None:
        return f"of {grams_words(packet.grams)}"
    if seeds is None:
        return "not said"
    return f"{most}{seeds}" if seeds else "used up"


def share_words(packet: Packet) -> str:
    """The germination it says."""
    return "-" if packet.germination is None else f"{packet.germination:.0%}"


def warned(packet: Packet, season: Season, day: date) -> bool:
    """Whether something is to be known of it before it is sown; not of one that is used up."""
    if packet.left == 0:
        return False
    words = packet_words(packet, None, season.crop(packet.crop), day)
    return bool(packet.fault) or any(word.urgent for word in words)


def packet_row_words(packet: Packet, season: Season, day: date) -> str:
    """A packet in a few words."""
    variety = f"'{packet.variety}'" if packet.variety else ""
    year = str(packet.year or "")
    words = (variety, year, f"left: {left_words(packet, season)}", packet.storage)
    return ", ".join(word for word in words if word)


def packet_line(packet: Packet, season: Season, day: date, width: int) -> Line:
    """A packet in the list: id, crop and variety, year, left, germination, warning, store."""
    crop = season.crop(packet.crop).name
    variety = f" '{packet.variety}'" if packet.variety else ""
    name, store = _widths(width)
    warning = WARNING if warned(packet, season, day) else ""
    return line(
        (fit(packet.id, ID_WIDE - 1) + " ", Role.STRONG),
        (fit(f"{crop}{variety}", name - 1) + " ", Role.INK),
        (fit(str(packet.year or "-"), YEAR_WIDE), Role.INK),
        (fit(left_words(packet, season), LEFT_WIDE), Role.INK),
        (fit(share_words(packet), SHARE_WIDE), Role.INK),
        (warning, Role.LATE),
        (fit(packet.storage, max(0, store - len(warning))), Role.QUIET),
    )


def _widths(width: int) -> tuple[int, int]:
    """Columns for the name, and for the warning and the store behind it."""
    rest = width - ID_WIDE - YEAR_WIDE - LEFT_WIDE - SHARE_WIDE
    name = max(8, min(NAME_MOST, rest - len(WARNING)))
    return name, max(0, rest - name)


def packet_head(width: int) -> str:
    """The words over the columns of the list."""
    name, store = _widths(width)
    columns = (
        ("packet", ID_WIDE),
        ("crop, variety", name),
        ("year", YEAR_WIDE),
        ("left", LEFT_WIDE),
        ("up", SHARE_WIDE),
        ("kept", store),
    )
    return "".join(fit(words, wide) for words, wide in columns)


def packet_page(packet: Packet, season: Season, day: date, width: int) -> Iterator[Line]:
    """All there is to know of a packet."""
    crop = season.crop(packet.crop)
    variety = f" '{packet.variety}'" if packet.variety else ""
    yield from paragraph(f"{packet.id} {crop.name}{variety}", width, Role.HEADING)
    for word in packet_words(packet, None, crop, day):
        yield from paragraph(word.text, width, Role.LATE if word.urgent else Role.INK, INDENT)
    years = age_years(packet, day)
    age = f", {years} years old" if years and years > 1 else ", a year old" if years else ""
    yield from pair("year", f"{packet.year or 'not said'}{age}", width)
    left = left_words(packet, season)
    if packet.seeds is not None:
        left = (
            f"none of {packet.seeds}, {left}" if packet.left == 0 else f"{left} of {packet.seeds}"
        )
    yield from pair("left", left, width)
    tested = f" of {packet.tested} tested" if packet.tested else ""
    yield from pair("germination", f"{share_words(packet)}{tested}", width)
    yield from pair("kept", packet.storage or "not said where", width)
    sorts = [words for words, holds in _sorts(packet) if holds]
    yield from pair("seed is", ", ".join(sorts) or "bought, not treated", width)
    yield from learned_lines(season.learned_of_packet(packet.id), width)
    batches = [b for b in season.batches.values() if b.sowing and b.sowing.packet == packet.id]
    if batches:
        yield BLANK
        yield from paragraph("Sown from it", width, Role.HEADING)
    for batch in sorted(batches, key=lambda batch: batch.begun):
        yield line((fit(batch_words(batch), width), Role.INK))
    yield from caution_lines(crop, width)


def _sorts(packet: Packet) -> tuple[tuple[str, bool], ...]:
    return (("your own", packet.saved), ("treated: wear gloves", packet.treated))
