"""The invented sample season, told as a story: one line an event, days counted from day 0.

From it the committed folder `sample_season/` is written (`python -m tests.sample.write`); a test
checks that the two agree. Names, numbers and the place are made up.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from benchround.core.record import Figure, Kind, Record

DAY_0 = date(2026, 5, 27)
MACHINE = "shed"

Line = tuple[int, Kind, dict[str, Figure]]
K = Kind


def _line(offset: int, kind: Kind, **figures: Figure) -> Line:
    return offset, kind, figures


L = _line

SITE: dict[str, Figure] = {
    "lat_deg": 52.5,
    "lon_deg": -1.0,
    "altitude_m": 60,
    "timezone": "Europe/London",
    "last_frost": "05-11",
    "last_frost_safe": "05-30",
    "first_frost": "10-12",
    "children": True,
    "pets": True,
}

PLACES: tuple[tuple[str, dict[str, Figure]], ...] = (
    ("propagator", {"name": "Propagator P", "kind": "propagator", "trays": 2, "set_c": 20}),
    ("bench-1", {"name": "Bench 1", "kind": "greenhouse bench", "trays": 6, "one_sided": True}),
    ("bench-2", {"name": "Bench 2", "kind": "bench", "trays": 4, "shade_share": 0.5}),
    (
        "frame-a",
        {"name": "Frame A", "kind": "frame", "glazing": "glass", "length_m": 1.8, "width_m": 0.9},
    ),
    (
        "frame-b",
        {
            "name": "Frame B",
            "kind": "frame",
            "glazing": "twin-wall",
            "length_m": 1.8,
            "width_m": 0.9,
        },
    ),
    (
        "frame-c",
        {
            "name": "Frame C",
            "kind": "frame",
            "glazing": "slats",
            "length_m": 1.2,
            "width_m": 0.6,
            "shade_share": 0.5,
        },
    ),
    ("fridge", {"name": "Fridge box", "kind": "fridge", "set_c": 4}),
    ("bed-1", {"name": "Bed 1", "kind": "bed"}),
    ("bed-2", {"name": "Bed 2", "kind": "bed"}),
    ("bed-3", {"name": "Bed 3", "kind": "bed"}),
    ("bed-4", {"name": "Bed 4", "kind": "bed"}),
    ("arch", {"name": "Arch", "kind": "bed"}),
    ("door", {"name": "Door pots", "kind": "bed"}),
)

READINGS: tuple[tuple[int, dict[str, Figure]], ...] = (
    (-6, {"min_c": 9, "max_c": 16, "sun_h": 4, "rain_mm": 3, "gust_kmh": 66}),
    (-5, {"min_c": 8, "max_c": 22, "sun_h": 11, "rain_mm": 0, "gust_kmh": 24}),
    (-4, {"min_c": 10, "max_c": 27, "sun_h": 13, "rain_mm": 0, "gust_kmh": 20}),
    (-3, {"min_c": 11, "max_c": 26, "sun_h": 12, "rain_mm": 0, "gust_kmh": 22}),
    (
        -2,
        {"min_c": 9, "max_c": 22, "sun_h": 6, "rain_mm": 14, "rain_hour_mm": 14, "gust_kmh": 41},
    ),
    (-1, {"min_c": 4, "max_c": 19, "sun_h": 12, "rain_mm": 0, "gust_kmh": 18}),
)

FRAME_READINGS: tuple[tuple[int, str, dict[str, Figure]], ...] = (
    (-4, "frame-a", {"max_c": 41}),
    (-3, "frame-a", {"max_c": 38}),
)

OUTLOOK: tuple[tuple[int, dict[str, Figure]], ...] = (
    (0, {"min_c": 5, "max_c": 23, "sun_h": 12, "rain_mm": 0, "gust_kmh": 22}),
    (1, {"min_c": 8, "max_c": 27, "sun_h": 13, "rain_mm": 0, "gust_kmh": 20}),
    (
        2,
        {
            "min_c": 12,
            "max_c": 29,
            "sun_h": 9,
            "rain_mm": 22,
            "rain_hour_mm": 22,
            "gust_kmh": 68,
            "storm_from": "17:00",
        },
    ),
    (3, {"min_c": 9, "max_c": 15, "sun_h": 2, "rain_mm": 6, "gust_kmh": 48}),
    (4, {"min_c": 2, "max_c": 16, "sun_h": 10, "rain_mm": 0, "gust_kmh": 14}),
    (5, {"min_c": 5, "max_c": 18, "sun_h": 9, "rain_mm": 0, "gust_kmh": 18}),
    (6, {"min_c": 8, "max_c": 20, "sun_h": 9, "rain_mm": 0, "gust_kmh": 20}),
)

PACKETS: tuple[tuple[str, dict[str, Figure]], ...] = (
    ("p01", {"crop": "cosmos", "variety": "Paper Lantern", "year": 2026, "seeds": 100}),
    ("p02", {"crop": "foxglove", "variety": "Speckle Hood", "year": 2025, "saved": True}),
    ("p03", {"crop": "lettuce", "variety": "Butterleaf", "year": 2025, "seeds": 400}),
    ("p04", {"crop": "lupin", "variety": "Candle Mix", "year": 2025, "seeds": 40}),
    (
        "p05",
        {
            "crop": "delphinium",
            "variety": "Tall Spire",
            "year": 2024,
            "seeds": 60,
            "germination": 0.6,
        },
    ),
)

BATCHES: dict[str, tuple[Line, ...]] = {
    "b01": (
        L(-48, K.SOWN, crop="cosmos", variety="Paper Lantern", wanted=24, seeds=40, cells=40,
          per_cell=1, raising="cells", container="40-cell tray", covering="vermiculite",
          depth_mm=3, heat_c=20, place="propagator", packet="p01"),
        L(-43, K.FIRST_UP),
        L(-40, K.COUNTED, count=35, final=True),
        L(-39, K.UNCOVERED, off_heat=True, place="bench-1"),
        L(-22, K.POTTED_ON, count=32, pot_cm=9, container="9 cm pot"),
        L(-11, K.HARDENING_BEGUN, place="frame-b"),
        L(-10, K.PINCHED),
    ),
    "b02": (
        L(-13, K.SOWN, crop="cosmos", variety="Paper Lantern", wanted=24, seeds=40, cells=40,
          per_cell=1, raising="cells", container="40-cell tray", covering="vermiculite",
          depth_mm=3, covered=True, place="bench-1", packet="p01"),
        L(-8, K.FIRST_UP),
        L(-6, K.UNCOVERED, cover_off=True),
        L(-5, K.COUNTED, count=31),
        L(-3, K.TURNED),
        L(-1, K.TRUE_LEAVES, count=34),
    ),
    "b03": (
        L(-96, K.SOWN, crop="snapdragon", variety="Dusk Tall", wanted=60, seeds=180,
          raising="tray", container="half tray", covering="none", heat_c=20, place="propagator"),
        L(-86, K.FIRST_UP),
        L(-85, K.UNCOVERED, off_heat=True, place="bench-1"),
        L(-64, K.PRICKED_OUT, count=84, cells=84, container="84-cell tray"),
        L(-56, K.TAKEN, count=79),
        L(-38, K.PINCHED),
        L(-26, K.HARDENING_BEGUN, place="frame-b"),
        L(-8, K.PLANTED_OUT, count=60, place="bed-2", rest="kept"),
        L(-8, K.MOVED, part="spares", place="bench-2"),
        L(0, K.WATERED, part="spares", how="above"),  # with the first can of the morning
    ),
    "b04": (
        L(-62, K.SOWN, crop="nicotiana", variety="Green Moth", wanted=20, seeds=200,
          raising="tray", container="quarter tray", covering="none", heat_c=21,
          place="propagator"),
        L(-53, K.FIRST_UP),
        L(-38, K.PRICKED_OUT, count=40, cells=40, container="40-cell tray", place="bench-1"),
        L(-31, K.TAKEN, count=37),
        L(-14, K.POTTED_ON, count=30, pot_cm=9, container="9 cm pot"),
    ),
    "b05": (
        L(-41, K.SOWN, crop="french-marigold", variety="Brass Button", wanted=60, seeds=80,
          cells=80, per_cell=1, raising="cells", container="40-cell tray", covering="compost",
          depth_mm=5, heat_c=20, place="propagator"),
        L(-36, K.FIRST_UP),
        L(-35, K.UNCOVERED, off_heat=True, place="bench-1"),
        L(-33, K.COUNTED, count=71, final=True),
        L(-20, K.HARDENING_BEGUN, place="frame-b"),
        L(-3, K.HARDENED),
        L(-2, K.READY),
        L(-2, K.NOTED, text="held: cold night in the forecast"),
    ),
    "b06": (
        L(-9, K.SOWN, crop="zinnia", variety="Market Row", wanted=18, seeds=40, cells=20,
          per_cell=2, raising="pots", container="9 cm pot", covering="compost", depth_mm=8,
          heat_c=22, covered=True, place="propagator"),
        L(-4, K.FIRST_UP),
        L(-3, K.COUNTED, count=22),
        L(-1, K.COUNTED, count=35),
    ),
    "b07": (
        L(-215, K.SOWN, crop="sweet-pea", variety="Old Cream Stripe", wanted=32, seeds=40,
          cells=8, per_cell=5, raising="pots", container="deep pot", covering="compost",
          depth_mm=20, place="frame-a"),
        L(-201, K.FIRST_UP),
        L(-195, K.COUNTED, count=36, final=True),
        L(-176, K.PINCHED),
        L(-150, K.LOST, count=2, cause="mouse"),
        L(-55, K.PLANTED_OUT, count=34, place="arch"),
        L(-4, K.FIRST_FLOWER),
        L(-2, K.PICKED),
    ),
    "b08": (
        L(-340, K.SOWN, crop="foxglove", variety="Speckle Hood", wanted=40, raising="tray",
          container="half tray", covering="none", place="frame-c"),
        L(-326, K.FIRST_UP),
        L(-300, K.PRICKED_OUT, count=60, cells=80),
        L(-245, K.PLANTED_OUT, count=40, place="bed-1", rest="composted"),
        L(-6, K.FIRST_FLOWER),
    ),
    "b09": (
        L(-12, K.PLANNED, crop="foxglove", variety="Speckle Hood", wanted=40,
          container="half tray", place="frame-c"),
    ),
    "b10": (
        L(-345, K.SOWN, crop="sweet-william", variety="Ruff and Eye", wanted=48, raising="tray",
          container="half tray", covering="compost", depth_mm=3, place="frame-c"),
        L(-337, K.FIRST_UP),
        L(-312, K.PRICKED_OUT, count=60, cells=80),
        L(-240, K.PLANTED_OUT, count=48, place="bed-1", rest="composted"),
        L(-120, K.LOST, count=2, cause="drowned"),
        L(-2, K.FIRST_FLOWER),
    ),
    "b11": (
        L(-372, K.SOWN, crop="honesty", variety="White Purse", wanted=24, seeds=40, cells=40,
          per_cell=1, raising="cells", container="40-cell tray", covering="compost", depth_mm=8,
          place="frame-c"),
        L(-360, K.FIRST_UP),
        L(-250, K.PLANTED_OUT, count=24, place="bed-1"),
        L(-44, K.FIRST_FLOWER),
        L(-12, K.GOING_OVER),
        L(-12, K.LEFT_FOR_SEED, count=12, rest="composted"),
    ),
    "b12": (
        L(-350, K.SOWN, crop="forget-me-not", variety="Blue Hem", wanted=60, raising="tray",
          container="half tray", covering="compost", depth_mm=3, place="frame-c"),
        L(-339, K.FIRST_UP),
        L(-310, K.PRICKED_OUT, count=70, cells=80),
        L(-225, K.PLANTED_OUT, count=60, place="bed-3", rest="composted"),
        L(-52, K.FIRST_FLOWER),
        L(-8, K.GOING_OVER),
        L(-1, K.SEED_RIPE),
    ),
    "b13": (
        L(-6, K.SOWN, crop="canterbury-bell", variety="Cup Mix", wanted=30, seeds=150,
          raising="tray", container="half tray", covering="none", place="frame-c"),
        L(-2, K.WASHED_OUT, rain_mm=14),
    ),
    "b14": (
        L(-5, K.SOWN, crop="lettuce", variety="Butterleaf", wanted=36, seeds=80, cells=40,
          per_cell=2, raising="cells", container="40-cell tray", covering="vermiculite",
          depth_mm=3, place="frame-a", packet="p03"),
        L(-2, K.STALLED, cause="heat"),
    ),
    "b15": (
        L(-23, K.SOWN, crop="lettuce", variety="Butterleaf", wanted=36, seeds=80, cells=40,
          per_cell=2, raising="cells", container="40-cell tray", covering="vermiculite",
          depth_mm=3, place="frame-a", packet="p03"),
        L(-19, K.FIRST_UP),
        L(-14, K.THINNED, count=38),
        L(-4, K.HARDENING_BEGUN, place="frame-b"),
    ),
    "b16": (
        L(-82, K.SOWN, crop="leek", variety="Winter Rung", wanted=150, seeds=220, raising="tray",
          container="deep quarter tray", trays=2, covering="compost", depth_mm=8,
          place="bench-1"),
        L(-68, K.FIRST_UP),
        L(-55, K.COUNTED, count=171, final=True),
        L(-55, K.GROWING_ON, place="frame-b"),
        L(-30, K.FED),
        L(-7, K.FED),
        L(-7, K.MEASURED, stem_mm=5),
    ),
    "b17": (
        L(-38, K.SOWN, crop="beetroot", variety="Round Red", wanted=26, seeds=120, cells=30,
          per_cell=4, raising="clumps", container="40-cell tray", covering="compost",
          depth_mm=12, place="frame-a"),
        L(-31, K.FIRST_UP),
        L(-26, K.COUNTED, count=28, mean_per_clump=4.1, final=True),
        L(-14, K.HARDENING_BEGUN, place="frame-b"),
        L(-8, K.READY),
    ),
    "b18": (
        L(-31, K.SOWN, crop="spring-onion", variety="Green Quill", wanted=28, seeds=240, cells=30,
          per_cell=8, raising="clumps", container="40-cell tray", covering="compost", depth_mm=8,
          place="frame-a"),
        L(-20, K.FIRST_UP),
        L(-16, K.COUNTED, count=30, mean_per_clump=6.3, final=True),
        L(-4, K.HARDENING_BEGUN, place="frame-b"),
    ),
    "b19": (
        L(-34, K.SOWN, crop="cabbage", variety="Pointed June", wanted=16, seeds=24, cells=24,
          per_cell=1, raising="cells", container="24-cell tray", covering="compost",
          depth_mm=10, place="bench-2"),
        L(-29, K.FIRST_UP),
        L(-27, K.COUNTED, count=23, final=True),
        L(-5, K.HARDENING_BEGUN, place="frame-b"),
        L(-3, K.LOST, count=4, cause="slug"),
    ),
    "b20": (
        L(-13, K.SOWN, crop="purple-sprouting-broccoli", variety="Spring Spear", wanted=18,
          seeds=48, cells=24, per_cell=2, raising="cells", container="24-cell tray",
          covering="compost", depth_mm=10, place="bench-2"),
        L(-8, K.FIRST_UP),
        L(-5, K.COUNTED, count=42, cells=23),
        L(-2, K.TRUE_LEAVES),
    ),
    "b21": (
        L(-16, K.SOWN, crop="runner-bean", variety="Scarlet Rope", wanted=20, seeds=24, cells=24,
          per_cell=1, raising="cells", container="deep cells", covering="compost", depth_mm=50,
          place="frame-b"),
        L(-14, K.LOST, count=5, cause="mouse"),
        L(-12, K.RESOWN, seeds=5),
        L(-12, K.TRAP_SET),
        L(-8, K.FIRST_UP),
        L(-4, K.COUNTED, count=22, final=True),
        L(-2, K.HARDENING_BEGUN),
        L(-1, K.TRAP_SEEN),
    ),
    "b22": (
        L(-250, K.SOWN, crop="ammi", variety="White Sieve", wanted=30, seeds=60, cells=40,
          per_cell=1, raising="cells", container="40-cell tray", covering="compost", depth_mm=3,
          place="frame-a"),
        L(-238, K.FIRST_UP),
        L(-230, K.COUNTED, count=38, final=True),
        L(-90, K.COUNTED, count=31),
        L(-62, K.PLANTED_OUT, count=30, place="bed-2", rest="composted"),
        L(-62, K.GROWING_ON),
        L(-3, K.BUDS),
    ),
    "b23": (
        L(-52, K.SOWN, crop="larkspur", variety="Blue Rung", wanted=26, row_m=4, raising="drill",
          covering="soil", depth_mm=10, place="bed-2"),
        L(-33, K.FIRST_UP),
        L(-20, K.SEED_LEAVES),
        L(-14, K.THINNED, count=70, spacing_mm=50),
    ),
    "b24": (
        L(-42, K.CHILLED, crop="aquilegia", variety="Doves in Blue", wanted=12, seeds=80, days=42,
          temp_c=4, place="fridge", sow_place="frame-c"),
        L(-28, K.LOOKED),
        L(-14, K.LOOKED),
    ),
    "b25": (
        L(-30, K.SOWN, crop="delphinium", variety="Tall Spire", wanted=12, seeds=60,
          raising="tray", container="half tray", covering="compost", depth_mm=4, place="bench-2",
          packet="p05"),
        L(-16, K.FIRST_UP),
        L(-9, K.COUNTED, count=19),
        L(-4, K.COUNTED, count=22, final=True),
        L(-2, K.TRUE_LEAVES),
    ),
    "b26": (
        L(-3, K.PLANNED, crop="lupin", variety="Candle Mix", wanted=12, seeds=16,
          container="deep cells", place="frame-c", sow_on="2026-05-28"),
    ),
    "b27": (
        L(-55, K.SOWN, crop="dahlia", variety="Open Heart", wanted=12, seeds=20, cells=20,
          per_cell=1, raising="cells", container="24-cell tray", covering="compost", depth_mm=8,
          heat_c=20, place="propagator"),
        L(-49, K.FIRST_UP),
        L(-48, K.UNCOVERED, off_heat=True, place="bench-1"),
        L(-46, K.COUNTED, count=17, final=True),
        L(-24, K.POTTED_ON, count=17, pot_cm=9, container="9 cm pot"),
        L(-1, K.MEASURED, pairs=4),
    ),
    "b28": (
        L(-75, K.SOWN, crop="verbena-bonariensis", variety="species", wanted=30, seeds=120,
          raising="tray", container="half tray", covering="compost", depth_mm=2, heat_c=20,
          place="propagator"),
        L(-68, K.MOVED, place="frame-a"),
        L(-61, K.MOVED, place="propagator"),
        L(-55, K.FIRST_UP),
        L(-54, K.UNCOVERED, off_heat=True, place="bench-1"),
        L(-45, K.COUNTED, count=41, final=True),
        L(-36, K.PRICKED_OUT, count=40, cells=40, container="40-cell tray"),
        L(-29, K.TAKEN, count=40),
    ),
    "b29": (
        L(-285, K.SOWN, crop="viola", variety="Inkpot", wanted=40, seeds=84, cells=84, per_cell=1,
          raising="cells", container="84-cell tray", covering="vermiculite", depth_mm=3,
          place="bench-2"),
        L(-271, K.FIRST_UP),
        L(-250, K.POTTED_ON, count=40, place="door"),
        L(-180, K.LOST, count=2, cause="slug"),
        L(-70, K.FIRST_FLOWER),
        L(-4, K.DEADHEADED),
    ),
    "b30": (
        L(-195, K.PLANTED_BULBS, crop="tulip", variety="Tall Cherry", wanted=100, count=100,
          depth_mm=150, place="bed-3"),
        L(-60, K.LOST, count=4, cause="unknown"),
        L(-34, K.FIRST_FLOWER),
        L(-17, K.GOING_OVER),
        L(-15, K.DEADHEADED),
        L(-15, K.DORMANT),
    ),
    "b31": (
        L(-60, K.SOWN, crop="lobelia", variety="Thin Blue", wanted=24, seeds=300, raising="tray",
          container="half tray", covering="none", heat_c=20, water="butt", place="propagator"),
        L(-50, K.FIRST_UP),
        L(-44, K.NOTED, text="a patch collapsed at soil level"),
        L(-41, K.NOTED, text="half gone"),
        L(-40, K.LOST, cause="damping off"),
        L(-38, K.WASHED),
    ),
    "b32": (
        L(-3, K.FOUND, crop="unknown", variety="label gone", wanted=0, count=37,
          container="84-cell tray", cells=40, place="bench-2"),
        L(-3, K.LABEL_LOST),
        L(-3, K.TRUE_LEAVES, count=37),
    ),
    "b33": (
        L(-27, K.SOWN, crop="cornflower", variety="Blue Market", wanted=30, seeds=40, cells=40,
          per_cell=1, raising="cells", container="84-cell tray", covering="compost", depth_mm=8,
          place="bench-2"),
        L(-21, K.FIRST_UP),
        L(-17, K.COUNTED, count=37, final=True),
        L(-9, K.TRUE_LEAVES),
        L(-6, K.NOTED, text="not seen since the gale took the labels"),
    ),
}

WATERED = ("propagator", "bench-1", "bench-2", "frame-a", "frame-b", "frame-c")


def _events() -> Iterator[tuple[date, Kind, str, dict[str, Figure]]]:
    begin = DAY_0 - timedelta(days=380)
    yield begin, K.SITE, "", SITE
    for order, (code, figures) in enumerate(PLACES, start=1):
        yield begin, K.PLACE, code, {**figures, "order": order}
    for packet, figures in PACKETS:
        yield DAY_0 - timedelta(days=150), K.PACKET, packet, figures
    for name, lines in BATCHES.items():
        for offset, kind, figures in lines:
            yield DAY_0 + timedelta(days=offset), kind, name, figures
    for offset, figures in READINGS:
        yield DAY_0 + timedelta(days=offset), K.READING, "", figures
    for offset, place, figures in FRAME_READINGS:
        yield DAY_0 + timedelta(days=offset), K.READING, place, figures
    for place in WATERED:
        yield DAY_0 - timedelta(days=1), K.WATERED, place, {"of_place": True}


def records() -> tuple[Record, ...]:
    """Every record of the sample season up to the morning of day 0, in story order."""
    told = sorted(_events(), key=lambda event: event[0])
    outlook = [
        (DAY_0 + timedelta(days=offset), K.OUTLOOK, "", figures) for offset, figures in OUTLOOK
    ]
    return tuple(
        Record(
            id=f"0SAMPLE{number:06d}",
            day=day,
            kind=kind,
            about=about,
            figures={name: value for name, value in figures.items() if name != "text"},
            note=str(figures.get("text", "")),
            machine=MACHINE,
        )
        for number, (day, kind, about, figures) in enumerate([*told, *outlook], start=1)
    )
