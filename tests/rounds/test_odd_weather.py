"""Whatever weather, site or place was typed in, the morning's lids and water do not stumble."""

from __future__ import annotations

from datetime import date, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.core.record import Figure, Kind
from benchround.core.task import Family
from benchround.rounds.build import build_round
from tests.rounds.small_season import CROPS, begin, place, sown

OURS = (Family.LIDS, Family.SHADE, Family.STRAP, Family.FLEECE, Family.WATER, Family.AIR)
ZONES = ("", "Europe/London", "Pacific/Auckland", "Asia/Kolkata", "No/Where")
KINDS = ("frame", "tunnel", "bench", "greenhouse bench", "windowsill", "propagator", "bed", "?")
GLAZING = ("", "glass", "twin-wall", "film", "slats", "none", "bottles")


def some(low: float, high: float) -> st.SearchStrategy[float | None]:
    return st.none() | st.floats(low, high, allow_nan=False)


SITES = st.fixed_dictionaries(
    {
        "lat_deg": st.floats(-90, 90),
        "lon_deg": st.floats(-180, 180),
        "altitude_m": st.floats(-1000, 9000),
        "timezone": st.sampled_from(ZONES),
    }
)
SKIES = st.fixed_dictionaries(
    {
        "min_c": some(-80, 90),
        "max_c": some(-80, 90),
        "sun_h": some(-5, 30),
        "rain_mm": some(-5, 900),
        "rain_hour_mm": some(-5, 900),
        "gust_kmh": some(-5, 500),
        "storm_from": st.sampled_from([None, "00:00", "17:00", "23:59"]),
    }
)
SPOTS = st.fixed_dictionaries(
    {
        "kind": st.sampled_from(KINDS),
        "glazing": st.sampled_from(GLAZING),
        "length_m": some(-1, 100),
        "width_m": some(-1, 100),
        "shade_share": some(-1, 2),
    }
)


def told(figures: dict[str, float | str | None]) -> dict[str, Figure]:
    return {name: value for name, value in figures.items() if value is not None}


@settings(max_examples=80, deadline=None)
@given(
    site=SITES,
    spot=SPOTS,
    skies=st.lists(SKIES, min_size=3, max_size=3),
    inside=SKIES,
    crop=st.sampled_from(sorted(CROPS)),
    day=st.dates(date(2026, 1, 20), date(2027, 12, 31)),
)
def test_every_morning_has_its_round(
    site: dict[str, float | str | None],
    spot: dict[str, float | str | None],
    skies: list[dict[str, float | str | None]],
    inside: dict[str, float | str | None],
    crop: str,
    day: date,
) -> None:
    story = begin(told(site))
    place(story, "spot", **told(spot))
    for number, sky in enumerate(skies):
        story.tell(day + timedelta(days=number - 1), Kind.OUTLOOK, **told(sky))
    yesterday = day - timedelta(days=1)
    story.tell(yesterday, Kind.READING, "spot", **told({**inside, "storm_from": None}))
    story.tell(yesterday, Kind.LID, "spot", position="shut")
    sown(story, "b01", crop, day - timedelta(days=9), "spot")
    sown(story, "b02", crop, day - timedelta(days=30), "spot")
    story.tell(day - timedelta(days=20), Kind.TRUE_LEAVES, "b02", count=9)
    story.tell(day - timedelta(days=4), Kind.OVERWINTERING, "b02")
    sown(story, "b03", crop, day - timedelta(days=40), "spot")
    story.tell(day - timedelta(days=30), Kind.TRUE_LEAVES, "b03", count=9)
    story.tell(day - timedelta(days=9), Kind.HARDENING_BEGUN, "b03")
    for task in build_round(story.season(), day).tasks:
        if task.family in OURS:
            assert task.why.rule and task.why.figures and task.why.source
            assert task.instruction
