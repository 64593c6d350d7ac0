"""A lidded place as the heat balance needs it, and how its lid stood by the grower's records."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from datetime import date, time, timedelta

from benchround.core.frame.build import FrameBuild, Glazing, LidPosition
from benchround.core.place_log import PlaceLog
from benchround.core.site import Place, PlaceKind
from benchround.core.sky.hour_curve import minute_of

USUAL_SIZE_M = (1.2, 0.6)
"""A frame nobody measured: one light of the usual size (common practice, no source)."""
FRAME_HEIGHT_M, TUNNEL_HEIGHT_M = 0.3, 0.6
"""Mean inside heights; common practice, no source."""
LENGTH_M, WIDTH_M = (0.3, 20.0), (0.3, 5.0)
UNTIMED_MINUTE = 8 * 60.0
"""A lid written down without a time is taken as moved at eight; our proposal."""

SAID_POSITIONS = {
    **{str(position): position for position in LidPosition},
    "open": LidPosition.OFF,
    "fully open": LidPosition.OFF,
    "half open": LidPosition.SECOND_NOTCH,
    "half": LidPosition.SECOND_NOTCH,
    "strapped": LidPosition.SHUT,
}
"""Words a lid record may use. "latched" is not among them: it limits the lid and moves nothing."""

_OFF = re.compile(rf"\b{LidPosition.OFF}$")
"""The end of "off" or "08:55 off"."""
POSITION_FIGURES = ("position", "plan")
"""Figures of a lid record that say where it stands."""

Move = tuple[float, LidPosition]
"""Minute of the day, and where the lid stands from then on."""


def frame_build_of(place: Place) -> tuple[FrameBuild, tuple[str, ...]]:
    """The build of a frame or tunnel, and what was taken where the place does not say."""
    said: list[str] = []
    length, width = place.size_m or USUAL_SIZE_M
    if place.size_m is None:
        said.append(f"size not given: {length:g} x {width:g} m taken")
    elif not (LENGTH_M[0] <= length <= LENGTH_M[1] and WIDTH_M[0] <= width <= WIDTH_M[1]):
        odd = f"{length:g} x {width:g} m"
        length, width = USUAL_SIZE_M
        said.append(f"a frame of {odd} is not reckoned with: {length:g} x {width:g} m taken")
    tunnel = place.kind is PlaceKind.TUNNEL
    glazing = Glazing(place.glazing) if place.glazing in set(Glazing) else Glazing.NONE
    if glazing is Glazing.NONE:
        glazing = Glazing.FILM if tunnel else Glazing.GLASS
        said.append(f"glazing not given: {glazing} taken, which warms fastest")
    build = FrameBuild(
        length_m=length,
        width_m=width,
        height_m=TUNNEL_HEIGHT_M if tunnel else FRAME_HEIGHT_M,
        glazing=glazing,
        shade_share=max(0.0, min(1.0, place.shade_share)),
    )
    return build, tuple(said)


def lid_moves(log: PlaceLog, day: date) -> tuple[Move, ...]:
    """How the lid was moved on a day, by the lid records of its place, in order of time."""
    moves: list[Move] = []
    for record in log.lids.get(day, ()):
        planned = read_plan(record.text("plan"))
        position = SAID_POSITIONS.get(record.text("position").strip().lower())
        if planned:
            moves.extend(planned)
        elif position is not None:
            moves.append((UNTIMED_MINUTE if record.at is None else minute_of(record.at), position))
    return tuple(sorted(moves, key=lambda move: move[0]))


def lid_plan_of(log: PlaceLog, day: date) -> tuple[LidPosition, ...] | None:
    """Where the lid stood in the middle of each hour; None where nothing was written that day."""
    moves = lid_moves(log, day)
    if not moves:
        return None
    start = standing_before(log, day)
    return tuple(_at(moves, start, 60.0 * hour + 30.0) for hour in range(24))


def standing_before(log: PlaceLog, day: date) -> LidPosition:
    """Where the lid stands as a day begins: where yesterday's records left it, else shut."""
    moves = lid_moves(log, day - timedelta(days=1))
    return moves[-1][1] if moves else LidPosition.SHUT


def _at(moves: Sequence[Move], start: LidPosition, minute: float) -> LidPosition:
    standing = start
    for begin, position in moves:
        if begin <= minute:
            standing = position
    return standing


def write_plan(moves: Iterable[tuple[time, LidPosition]]) -> str:
    """A day's lid moves as one figure of a record: "07:00 first notch, 18:00 shut"."""
    return ", ".join(f"{at:%H:%M} {position}" for at, position in moves)


def say_positions(text: str) -> str:
    """A figure of a lid record, one position or a whole plan, as it is said."""
    pieces = (piece.strip() for piece in text.split(","))
    return ", ".join(_OFF.sub(LidPosition.OFF.words, piece) for piece in pieces)


def read_plan(text: str) -> tuple[Move, ...]:
    """The moves of such a figure; pieces that say no time or no position are passed over."""
    moves: list[Move] = []
    for piece in text.split(","):
        clock, _, words = piece.strip().partition(" ")
        position = SAID_POSITIONS.get(words.strip().lower())
        try:
            at = time.fromisoformat(clock)
        except ValueError:
            continue
        if position is not None:
            moves.append((minute_of(at), position))
    return tuple(moves)
