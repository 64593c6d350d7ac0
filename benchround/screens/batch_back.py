"""The back of a batch's card: germination, what was learned, label, packet, cautions."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from benchround.core.batch.batch import Batch
from benchround.core.caution.due import CAUTIONS, crop_cautions
from benchround.core.crop.crop import Crop
from benchround.core.dates import say_day
from benchround.core.learning.learned import Learned, left_out_words
from benchround.core.lifecycle import WAITING
from benchround.core.season import Season
from benchround.core.seed.final_count import FinalCount, final_count
from benchround.core.seed.germination import GerminationSummary
from benchround.core.seed.looks_of import BatchGermination, germination_of
from benchround.core.seed.packet_words import packet_words
from benchround.core.seed.waiting import Waiting, forecast
from benchround.drawing.germination import germination_curve_of, germination_lines
from benchround.feeds.labels import labels_of
from benchround.screens.pictures import glyphs, shown
from benchround.screens.text import BLANK, Line, Role, line, paragraph

INDENT = "  "
CURVE_ROWS = 7
WIDE_CURVE, HIGH_CURVE_ROWS = 90, 13
"""From so many columns on the curve is higher, or it would look flat."""
LEAD = 16


def page(batch: Batch, season: Season, day: date, width: int) -> Iterator[Line]:
    """Everything on the back."""
    crop = season.crop(batch.crop)
    yield from _germination(batch, crop, season, day, width)
    yield from learned_lines(season.learned(crop.key), width)
    yield from _label(batch, season, day, width)
    yield from _packet(batch, season, day, width)
    yield from caution_lines(crop, width)


def _germination(batch: Batch, crop: Crop, season: Season, day: date, width: int) -> Iterator[Line]:
    curve = germination_curve_of(season, batch, crop, day)
    yield from paragraph("Germination", width, Role.HEADING)
    if batch.main.stage in WAITING:
        waiting = forecast(season, batch, batch.main, crop, day)
        yield from _waiting(waiting, width) if waiting else ()
    found = germination_of(batch)
    yield from _figures(found, final_count(batch, crop), width)
    if curve is not None:
        rows = CURVE_ROWS if width < WIDE_CURVE else HIGH_CURVE_ROWS
        yield from shown(germination_lines(curve, width, glyphs(), rows=rows)[1:])
    if found.summary is not None:
        yield from _speed_lines(found.summary, width)


def _waiting(waiting: Waiting, width: int) -> Iterator[Line]:
    """The forecast of seed nobody has seen yet."""
    days = (
        ("look from", waiting.look_from),
        ("half up by", waiting.half_by),
        ("late from", waiting.late_from),
        ("give up on", waiting.give_up_on),
    )
    told = [f"{words} {say_day(at)}" for words, at in days if at is not None]
    yield from pair("expected", "; ".join(told) or "no day can be told", width)
    basis = f"{waiting.had}; today {waiting.basis}" if waiting.had else waiting.basis
    heat = f"{waiting.heat:.0f} of {waiting.heat_half:.0f} degree-days had ({basis})"
    yield from pair("heat", heat, width)
    alive = f"{waiting.alive:.0%} likely, by the last look; {waiting.soon_words}"
    yield from pair("alive", alive, width)
    if waiting.stall is not None:
        yield from pair("stalled", str(waiting.stall), width)


def _figures(found: BatchGermination, final: FinalCount, width: int) -> Iterator[Line]:
    """How many and when half of them, or why nobody can say."""
    summary = found.summary
    if summary is not None:
        yield from pair("up", _share_words(summary, found.settled, final), width)
        if summary.t50_days is not None:
            yield from pair("half up (T50)", _half_words(summary), width)
    else:
        yield from pair("no figures", found.because, width)
    if final.up is None:
        if summary is not None or final.because != found.because:
            yield from pair("no final count", final.because, width)
    elif summary is None:
        yield from pair("final count", f"{final.up} of {final.sown} seeds", width)


def _share_words(summary: GerminationSummary, settled: bool, final: FinalCount) -> str:
    low, high = summary.low, summary.high
    how_far = "so far" if final.up is None else "final" if settled else "taken as final"
    share = f"{summary.up} of {summary.sown} seeds, {summary.final_share:.0%}, {how_far}"
    sure = f"of such seed {100 * low:.0f} to {100 * high:.0f} in a hundred come up (95% range)"
    return f"{share}; {sure}"


def _half_words(summary: GerminationSummary) -> str:
    both = (
        f"{figure(summary.t50_farooq)} days by Farooq, {figure(summary.t50_coolbear)} by Coolbear"
    )
    words = f"after {both}"
    if summary.spread_days is None:
        return words
    return f"{words}; from one in ten to nine in ten {summary.spread_days:.1f} days"


def _speed_lines(summary: GerminationSummary, width: int) -> Iterator[Line]:
    """How fast and how evenly: the terms of seed testing, each with what it means."""
    if summary.mean_days is None:
        return
    middle = f"{figure(summary.mean_days_middle)} by the middle between two looks"
    told = [
        ("mean time", f"{figure(summary.mean_days)} days by the day of the look, {middle}"),
        ("speed", f"{figure(summary.speed)} seedlings a day (Maguire)"),
    ]
    if summary.uniformity is not None:
        told.append(("uniformity", f"{figure(summary.uniformity)}, more is more even (Heydecker)"))
    if summary.synchrony is not None:
        told.append(("synchrony", f"{figure(summary.synchrony)}, 1 is all at one look (Primack)"))
    if summary.median_fit is not None:
        give = f", give or take {figure(summary.median_fit_error)} (standard error)"
        fit = f"half up after {figure(summary.median_fit)} days{give}"
        told.append(("interval fit", f"{fit}, a log-normal from look to look"))
    for what, words in told:
        yield from pair(what, words, width)


def figure(value: float | None) -> str:
    """A figure of a count, short."""
    return "not known" if value is None else f"{value:.2f}"


def learned_lines(learned: Learned, width: int) -> Iterator[Line]:
    """What own sowings taught, the library's figure beside the own."""
    yield BLANK
    yield from paragraph("What was learned", width, Role.HEADING)
    if learned.share is None and learned.time is None:
        yield from paragraph("There are no germination figures to learn beside.", width)
        return
    if learned.share is not None:
        yield from pair("comes up", str(learned.share), width)
    if learned.time is not None:
        yield from pair("first seedling", str(learned.time), width)
    left_out = left_out_words(learned.left_out)
    if left_out:
        yield from pair("left out", left_out, width)


def _label(batch: Batch, season: Season, day: date, width: int) -> Iterator[Line]:
    label = labels_of(season, (), day, (batch.id,))[0]
    yield BLANK
    yield from paragraph("Label", width, Role.HEADING)
    yield from pair("front", ", ".join(label.front), width, Role.STRONG)
    back = (*label.back, label.look) if label.look else label.back
    yield from pair("back", ", ".join(back), width, Role.STRONG)


def _packet(batch: Batch, season: Season, day: date, width: int) -> Iterator[Line]:
    name = batch.sowing.packet if batch.sowing else ""
    packet = season.packets.get(name)
    if packet is None:
        return
    yield BLANK
    yield from paragraph(f"Packet {packet.id}", width, Role.HEADING)
    left = "not known how many" if packet.left is None else f"{packet.left} seeds"
    yield from pair("left", left, width)
    learned = season.learned_of_packet(packet.id).share
    if learned is not None:
        yield from pair("comes up", str(learned), width)
    for word in packet_words(packet, None, season.crop(packet.crop), day):
        yield from paragraph(word.text, width, Role.CAUTION if word.urgent else Role.INK, INDENT)


def caution_lines(crop: Crop, width: int) -> Iterator[Line]:
    """Every caution of a crop, in full."""
    names = crop_cautions(crop)
    if not names:
        return
    yield BLANK
    yield from paragraph("Cautions", width, Role.HEADING)
    for name in names:
        caution = CAUTIONS[name]
        yield from paragraph(caution.short, width, Role.CAUTION)
        yield from paragraph(caution.full, width, Role.INK, INDENT)
        yield from paragraph(f"{caution.severity}; {caution.source}", width, Role.QUIET, INDENT)


def pair(what: str, words: str, width: int, role: Role = Role.INK) -> Iterator[Line]:
    """A few words on the left, what there is to say of them on the right."""
    rows = paragraph(words, max(10, width - LEAD), role)
    for number, row in enumerate(rows):
        yield line((("" if number else what).ljust(LEAD), Role.QUIET), *row)
