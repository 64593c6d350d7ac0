"""Data made by hand for the pictures; nothing here is reckoned, so only drawing can change it."""

from __future__ import annotations

from datetime import date, time, timedelta
from math import cos, pi

from benchround.core.dates import Span as Days
from benchround.core.frame.build import LidPosition
from benchround.core.frame.lid_words import AdviceKind, LidStep
from benchround.core.seed.looks import Look
from benchround.core.water.run import DayPart
from benchround.drawing.frame_curve import FrameCurve
from benchround.drawing.germination_curve import GerminationCurve
from benchround.drawing.phases import Phase
from benchround.drawing.room import PlaceRoom
from benchround.drawing.stretches import Stretch
from benchround.drawing.water import WaterLeft
from benchround.drawing.way import Stop, Way, When
from benchround.drawing.year_strips import YearStrip

TODAY = date(2026, 5, 27)
YEAR = Days(date(2026, 1, 1), date(2026, 12, 31))
HOSTILE = "na\x1b[31mme\u202e\u200d 花の名前 e\u0301\u0301\u0301\u0301 [/b] \t\x00 Ω"


def run(*stretches: tuple[Phase, str, str]) -> tuple[Stretch, ...]:
    """Stretches from (phase, first day, last day) in ISO text; after today they are expected."""
    made = []
    for phase, first, last in stretches:
        opens, closes = date.fromisoformat(first), date.fromisoformat(last)
        made.append(Stretch(opens, closes, phase, opens > TODAY))
    return tuple(made)


COSMOS = YearStrip(
    "b01",
    "",
    "Cosmos 'Paper Lantern'",
    "Frame B",
    5,
    "hardening",
    run(
        (Phase.SOWN, "2026-04-09", "2026-04-13"),
        (Phase.UP, "2026-04-14", "2026-05-04"),
        (Phase.GROWING, "2026-05-05", "2026-05-15"),
        (Phase.HARDENING, "2026-05-16", "2026-05-27"),
        (Phase.HARDENING, "2026-05-28", "2026-06-02"),
        (Phase.OUT, "2026-06-03", "2026-07-07"),
        (Phase.FLOWER, "2026-07-08", "2026-10-15"),
    ),
    ("white", "pink"),
    (60, 120),
)
FOXGLOVE = YearStrip(
    "b08",
    "",
    "Foxglove 'Speckle Hood'",
    "Bed 1",
    8,
    "in flower",
    run(
        (Phase.SOWN, "2025-06-21", "2025-07-04"),
        (Phase.UP, "2025-07-05", "2025-07-30"),
        (Phase.GROWING, "2025-07-31", "2025-09-23"),
        (Phase.OUT, "2025-09-24", "2026-05-20"),
        (Phase.FLOWER, "2026-05-21", "2026-05-27"),
        (Phase.FLOWER, "2026-05-28", "2026-07-20"),
    ),
    ("purple", "white"),
    (90, 170),
)
TULIP = YearStrip(
    "b30",
    "",
    "Tulip 'Tall Cherry'",
    "Bed 3",
    10,
    "dormant",
    run(
        (Phase.OUT, "2025-11-13", "2026-04-22"),
        (Phase.FLOWER, "2026-04-23", "2026-05-09"),
        (Phase.OVER, "2026-05-10", "2026-05-11"),
        (Phase.RESTING, "2026-05-12", "2026-05-27"),
        (Phase.RESTING, "2026-05-28", "2027-04-19"),
        (Phase.FLOWER, "2027-04-20", "2027-05-14"),
    ),
    ("red",),
    (20, 65),
)
LEEK = YearStrip(
    "b16",
    "",
    "Leek 'Winter Rung'",
    "Frame B",
    5,
    "growing on",
    run(
        (Phase.SOWN, "2026-03-06", "2026-03-19"),
        (Phase.UP, "2026-03-20", "2026-04-01"),
        (Phase.GROWING, "2026-04-02", "2026-05-27"),
        (Phase.OUT, "2026-05-28", "2026-08-22"),
        (Phase.PICKING, "2026-08-23", "2026-12-20"),
    ),
)
LOBELIA = YearStrip(
    "b31",
    "",
    "Lobelia 'Thin Blue'",
    "Propagator P",
    1,
    "lost",
    run(
        (Phase.SOWN, "2026-03-28", "2026-04-06"),
        (Phase.UP, "2026-04-07", "2026-04-16"),
        (Phase.ENDED, "2026-04-17", "2026-04-17"),
    ),
)
PLANNED = YearStrip(
    "b26",
    "",
    "Lupin 'Candle Mix'",
    "Frame C",
    6,
    "planned",
    run(
        (Phase.SOWN, "2026-05-28", "2026-06-12"),
        (Phase.UP, "2026-06-13", "2026-07-17"),
        (Phase.GROWING, "2026-07-18", "2026-07-31"),
        (Phase.OUT, "2026-08-01", "2027-05-23"),
        (Phase.FLOWER, "2027-05-24", "2027-07-01"),
    ),
    ("pink", "red"),
    (70, 110),
)
ODD = YearStrip("b99", "spares", HOSTILE, HOSTILE, 99, "stratifying", ())
STRIPS = (LOBELIA, COSMOS, LEEK, PLANNED, FOXGLOVE, TULIP, ODD)

_WARMTH = tuple(round(13.0 - 9.0 * cos(2 * pi * (hour - 3.0) / 24.0), 1) for hour in range(24))
_SUN = tuple(max(0.0, cos(2 * pi * (hour - 12.5) / 24.0)) for hour in range(24))
FRAME = FrameCurve(
    name="Frame A",
    day=TODAY,
    outside_c=_WARMTH,
    inside_c=tuple(round(c + 4.0 * sun, 1) for c, sun in zip(_WARMTH, _SUN, strict=True)),
    shut_c=tuple(round(c + 24.0 * sun, 1) for c, sun in zip(_WARMTH, _SUN, strict=True)),
    lid=(
        (LidPosition.SHUT,) * 7
        + (LidPosition.CRACK,)
        + (LidPosition.FIRST_NOTCH,)
        + (LidPosition.SECOND_NOTCH,)
        + (LidPosition.OFF,) * 8
        + (LidPosition.SHUT,) * 6
    ),
    shut_passes_at=time(8, 40),
    steps=(
        LidStep(AdviceKind.HANDLE, None, None, (), "lift with two hands", "own"),
        LidStep(AdviceKind.OPEN, time(7, 5), LidPosition.CRACK, (), "keeps it cool", "own"),
        LidStep(
            AdviceKind.LOWER, time(18, 5), LidPosition.SHUT, (), "keeps warmth", "own", time(18, 38)
        ),
    ),
    assumed=("sun taken to stay on the frame until sunset",),
)

GERMINATION = GerminationCurve(
    title="b25 Delphinium 'Tall Spire'",
    sown=60,
    looks=(Look(0.0, 7.0, 0), Look(7.0, 14.0, 1), Look(14.0, 21.0, 18), Look(21.0, 26.0, 3)),
    curve=tuple(
        (0.5 * half, min(0.36, max(0.0, 0.03 * (0.5 * half - 12.0)))) for half in range(53)
    ),
    curve_name="curve fitted to the counts",
    today=26.0,
    half_day=17.9,
)


def tray(
    about: str, name: str, share: float, dry: int | None, by: DayPart | None = None
) -> WaterLeft:
    """One tray that is dry so many days from today."""
    on = None if dry is None else TODAY + timedelta(days=dry)
    return WaterLeft(
        about, f"{about} {name}", "Bench 2", TODAY, share, 500 * share, "a tray", on, by
    )


WATER = (
    tray("b13", "Canterbury bell 'Cup Mix'", 0.0, -1),
    tray("b20", "Broccoli 'Spring Spear'", 0.08, 0, DayPart.MORNING),
    tray("b02", "Cosmos 'Paper Lantern'", 0.3, 0, DayPart.MIDDAY),
    tray("b28", "Vervain", 0.56, 1),
    tray("b99", HOSTILE, 0.74, 2),
    tray("b06", "Zinnia 'Market Row'", 1.0, None),
)

WAY = Way(
    "b01 Cosmos",
    TODAY,
    (
        Stop("sown", date(2026, 4, 9), When.PAST),
        Stop("emerging", date(2026, 4, 14), When.PAST),
        Stop("potted on", date(2026, 5, 5), When.PAST),
        Stop("hardening", date(2026, 5, 16), When.NOW),
        Stop("plant out", date(2026, 6, 3), When.AHEAD),
        Stop("in flower", date(2026, 7, 8), When.AHEAD),
    ),
)

ROOM = (
    PlaceRoom("Bench 1", 6.0, 6.5, date(2026, 5, 4), (5.0, 5.5, 6.0, 6.5, 6.5, 4.0, 7.0, 3.0, 0.0)),
    PlaceRoom("Frame A", 17.0, 2.0, date(2026, 5, 4), (2.0,) * 9),
    PlaceRoom("Fridge", None, 1.0, date(2026, 5, 4), (1.0,) * 5 + (0.0,) * 4),
)
