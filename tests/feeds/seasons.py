"""Seasons to write out: an empty one, one of hostile names, one of three thousand batches."""

from __future__ import annotations

from datetime import date, timedelta
from functools import lru_cache

from benchround.core.record import Figure, Kind, Record
from benchround.core.season import Season
from benchround.crops.library import load_library
from tests.folding import fold_season
from tests.sample.story import DAY_0, records

HOSTILE = (
    "tray [A]",
    "[/] [bold red]",
    "=1+1",
    "+1|' /C calc'!A0",
    "-2+3",
    "@SUM(1;2)",
    "'=1+1",
    "{nb}",
    'a,b;c"d',
    "two\nlines\tand tab",
    "\u202egnp.exe",
    "\u65e5\u672c\u306e\u671d\u9854",
    "\u00c4renr\u00f6schen \u00dcbergr\u00f6\u00dfe",
    "\u0411\u0430\u0440\u0445\u0430\u0442\u0446\u044b",
    "\u05d5\u05e8\u05d3 12",
    "\u0648\u0631\u062f\u0629",
    "\U0001f33b sun",
    "x" * 180,
    "word " * 35,
    "A|B *c* _d_ `e` <b>f</b>",
    "``` fence",
    "# heading",
    "1. one",
    "- item",
    "BEGIN:VEVENT",
    "a\\,b\\;c\\n",
    "../../etc/passwd",
    "\ue000private",
)
"""Names that have broken one program or another."""

CROPS = ("cosmos", "leek", "lettuce", "zinnia", "tomato", "foxglove", "viola", "beetroot")


def empty_season() -> Season:
    return fold_season((), load_library())


@lru_cache(maxsize=1)
def sample_season() -> Season:
    return fold_season(records(), load_library())


@lru_cache(maxsize=1)
def hostile_records() -> tuple[Record, ...]:
    found: list[Record] = []
    for number, name in enumerate(HOSTILE, start=1):
        figures: dict[str, Figure] = {
            "crop": CROPS[number % len(CROPS)],
            "variety": name,
            "seeds": 20,
            "wanted": 10,
            "packet": name.replace("\n", " ").replace("\t", " ")[:60],
            "place": "bench-1",
        }
        batch = f"h{number:02d}"
        found.append(
            Record(f"0H{number:04d}a", DAY_0 - timedelta(days=20), Kind.SOWN, batch, figures)
        )
        found.append(
            Record(
                f"0H{number:04d}b",
                DAY_0 - timedelta(days=5),
                Kind.COUNTED,
                batch,
                {
                    "count": number % 21,
                    "final": True,
                },
            )
        )
    return tuple(found)


def hostile_season() -> Season:
    return fold_season(hostile_records(), load_library())


@lru_cache(maxsize=1)
def many_records(count: int = 3000) -> tuple[Record, ...]:
    """Batches sown over the spring; most counted, some planted, some with losses."""
    found: list[Record] = []

    def tell(day: date, kind: Kind, batch: str, **figures: Figure) -> None:
        found.append(Record(f"0M{len(found):07d}", day, kind, batch, figures))

    for number in range(1, count + 1):
        batch, crop = f"b{number:04d}", CROPS[number % len(CROPS)]
        sown = DAY_0 - timedelta(days=10 + number % 90)
        variety = f"Row {number % 97}"
        tell(
            sown,
            Kind.SOWN,
            batch,
            crop=crop,
            variety=variety,
            seeds=40,
            cells=40,
            per_cell=1,
            wanted=24,
            raising="cells",
            place="bench-1",
        )
        if number % 4:
            up = 20 + number % 20
            tell(sown + timedelta(days=8), Kind.COUNTED, batch, count=up, final=True)
            if number % 3 == 0:
                tell(sown + timedelta(days=9), Kind.LOST, batch, count=2, cause="slug")
    return tuple(found)


@lru_cache(maxsize=1)
def many_season() -> Season:
    return fold_season(many_records(), load_library())
