"""A frame's day in sentences."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from benchround.core.frame.build import LidPosition
from benchround.core.frame.lid_words import LidStep
from benchround.core.units import degrees
from benchround.drawing.frame_curve import FrameCurve, extremes
from benchround.drawing.words import say_weekday, spoken

NO_FIGURES = "No weather is known for this day."


def frame_headline(curve: FrameCurve) -> str:
    """What matters most: whether and when the shut frame passes its limit."""
    shut, inside = extremes(curve.shut_c), extremes(curve.inside_c)
    words = []
    if shut is not None:
        words.append(_shut_words(curve, shut[2], shut[3]))
    if inside is not None:
        words.append(f"with the lid plan {degrees(inside[0])} to {degrees(inside[2])} C")
    return "; ".join(words)


def _shut_words(curve: FrameCurve, top_c: float, hour: int) -> str:
    reaches = f"{degrees(top_c)} C at about {hour}:30"
    if top_c <= curve.act_c:
        return f"safe if left shut: at most {reaches}, not above {curve.act_c:g} C"
    when = f" at {curve.shut_passes_at:%H:%M}" if curve.shut_passes_at is not None else ""
    return f"too hot if left shut: passes {curve.act_c:g} C{when}, reaches {reaches}"


def step_words(step: LidStep) -> str:
    """One thing to do: time, what, to which position, why."""
    at = "all day" if step.at is None else f"{step.at:%H:%M}"
    where = (
        f": {step.position.words}" if step.position and str(step.position) != str(step.kind) else ""
    )
    until = f" until {step.latest:%H:%M} at the latest" if step.latest else ""
    return f"{at} {step.kind}{where}{until}; {step.reason}"


def lid_words(lid: Sequence[LidPosition]) -> str:
    """The lid through the day: "shut from 0:00, first notch from 8:00"."""
    said, hour = [], 0
    for position, run in groupby(lid):
        said.append(f"{position.words} from {hour}:00")
        hour += sum(1 for _ in run)
    return ", ".join(said)


def frame_words(curve: FrameCurve) -> str:
    """The picture in sentences, for a screen reader."""
    head = f"{curve.name}, {say_weekday(curve.day)} {curve.day.year}"
    if not curve.known_c:
        return spoken([head, NO_FIGURES])
    told = [head, frame_headline(curve)]
    for temps, name in (
        (curve.outside_c, "Outside"),
        (curve.shut_c, "Inside with the lid left shut"),
        (curve.inside_c, "Inside with the lid plan"),
    ):
        found = extremes(temps)
        if found is not None:
            low, low_hour, high, high_hour = found
            told.append(
                f"{name}: lowest {degrees(low)} C at about {low_hour}:30, "
                f"highest {degrees(high)} C at about {high_hour}:30"
            )
    told.append(f"Limits: act above {curve.act_c:g} C, low {curve.low_c:g} C")
    if curve.lid:
        told.append(f"Lid: {lid_words(curve.lid)}")
    told += [step_words(step) for step in curve.steps]
    told += [f"Assumed: {text}" for text in curve.assumed]
    return spoken(told)
