"""What the lid tasks say: a day's advice in one line, and the figures behind it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import time

from benchround.core.frame.build import LidPosition
from benchround.core.frame.lid_words import AdviceKind, LidAdvice, LidLimits, LidStep
from benchround.core.frame.outlook import FrameOutlook
from benchround.core.sky.hour_curve import clock_at, minute_of
from benchround.core.task import Slot
from benchround.core.units import degrees

MOVES = (
    AdviceKind.OPEN,
    AdviceKind.TAKE_OFF,
    AdviceKind.HARDEN,
    AdviceKind.AIR,
    AdviceKind.RAIN,
    AdviceKind.LATCH,
    AdviceKind.STRAP,
    AdviceKind.LOWER,
)
OPENINGS = (AdviceKind.OPEN, AdviceKind.TAKE_OFF, AdviceKind.HARDEN, AdviceKind.AIR)
CLOSINGS = (AdviceKind.RAIN, AdviceKind.LOWER)
POSITION_WORDS = {
    LidPosition.SHUT: "shut",
    LidPosition.CRACK: "open a crack",
    LidPosition.FIRST_NOTCH: "first notch",
    LidPosition.SECOND_NOTCH: "half open",
    LidPosition.OFF: "fully open",
}
LOWERED_WORDS = {
    **POSITION_WORDS,
    LidPosition.CRACK: "down to a crack",
    LidPosition.FIRST_NOTCH: "down to the first notch",
}
SLOT_ENDS = ((9, Slot.FIRST), (12, Slot.MORNING), (15, Slot.MIDDAY), (18, Slot.AFTERNOON))
"""Clock hours at which the parts of the morning walk's day end; our proposal."""
STEP_MIN = 5
HARMFUL_C = LidLimits().act_above_c


def rounded(at: time) -> time:
    """A clock time rounded down to five minutes."""
    return clock_at(minute_of(at), STEP_MIN)


def clock(at: time | None) -> str:
    """A clock time as it is said, rounded down to five minutes; empty where there is none."""
    return "" if at is None else f"{rounded(at):%H:%M}"


def slot_of(at: time | None) -> Slot:
    """The part of the day a clock time belongs to; first thing where it holds all day."""
    if at is None:
        return Slot.FIRST
    return next((slot for end, slot in SLOT_ENDS if at.hour < end), Slot.EVENING)


def moves(advice: LidAdvice) -> tuple[LidStep, ...]:
    """The steps that move the lid, in order of time."""
    return tuple(s for s in advice.steps if s.kind in MOVES and s.position is not None)


def plan_line(advice: LidAdvice) -> str:
    """The lid's day in one line: "Half open by 08:30, fully open by 10:00; shut by 18:00"."""
    steps = moves(advice)
    opening = ", ".join(_opening(advice, step) for step in steps if step.kind in OPENINGS)
    closing = [_closing(step) for step in steps if step.kind not in OPENINGS]
    if advice.first(AdviceKind.LEAVE_OPEN) is not None:
        closing.append("leave open tonight")
    line = "; ".join(words for words in (opening, *dict.fromkeys(closing)) if words)
    return line[:1].upper() + line[1:]


def later_closing(advice: LidAdvice) -> LidStep | None:
    """The step that lets the lid down again after it was opened; None where none does.

    Straps are no part of it: they have a line of their own.
    """
    steps = moves(advice)
    if not steps or steps[0].kind not in OPENINGS or advice.first(AdviceKind.STRAP) is not None:
        return None
    closing = [step for step in steps if step.kind in CLOSINGS]
    return closing[-1] if closing else None


def closing_line(step: LidStep) -> str:
    """A step that lets the lid down, as a sentence: "Shut between 18:40 and 19:10"."""
    line = _closing(step)
    return line[:1].upper() + line[1:]


def _opening(advice: LidAdvice, step: LidStep) -> str:
    words = POSITION_WORDS[step.position] if step.position is not None else "open"
    if step.kind is not AdviceKind.HARDEN:
        return f"{words} by {clock(step.at)}" if step.at else f"{words} all day"
    latest = advice.shut_passes_at
    if latest is None or step.at is None or latest <= step.at or step is not moves(advice)[0]:
        return f"{words} from {clock(step.at)}"
    return f"{words} from {clock(step.at)}, at the latest by {clock(latest)}"


def _closing(step: LidStep) -> str:
    when = f"by {clock(step.at)}" if step.at is not None else "all day"
    if step.kind is AdviceKind.STRAP:
        return f"shut and strapped {when}"
    if step.kind is AdviceKind.RAIN:
        return f"lids down over seed trays {when}"
    words = LOWERED_WORDS[step.position or LidPosition.SHUT]
    if step.latest is not None and clock(step.latest) != clock(step.at):
        when = f"between {clock(step.at)} and {clock(step.latest)}"
    return f"{words} {when}"


def first_time(advice: LidAdvice) -> time | None:
    """When the day's first move must be done; a hardening step may wait until heat would harm."""
    steps = moves(advice)
    if not steps:
        return None
    first = steps[0]
    latest = advice.shut_passes_at
    if first.kind is AdviceKind.HARDEN and latest is not None and first.at is not None:
        return max(first.at, rounded(latest))
    return first.at


def shut_figure(outlook: FrameOutlook) -> str:
    """What the frame would do if nobody came."""
    advice = outlook.advice
    if advice.shut_passes_at is None:
        return f"left shut it reaches {degrees(advice.shut_max_c)} C"
    return (
        f"left shut it passes {HARMFUL_C:g} C at {clock(advice.shut_passes_at)} "
        f"and reaches {degrees(advice.shut_max_c)} C"
    )


def step_figures(advice: LidAdvice, *kinds: AdviceKind) -> Iterator[str]:
    """The figures of all steps of some kinds."""
    for step in advice.steps:
        if step.kind in kinds:
            yield from step.figures


def sources(advice: LidAdvice, *kinds: AdviceKind) -> str:
    """Where the rules of some kinds of step come from."""
    found = (part for s in advice.steps if s.kind in kinds for part in s.source.split("; "))
    return "; ".join(dict.fromkeys(found)) or "heat balance of the frame"
