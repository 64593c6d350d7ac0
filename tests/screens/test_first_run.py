"""The first season: a few lines, each skippable; nothing on disk before it is agreed."""

from __future__ import annotations

import os
import signal
from datetime import date
from pathlib import Path

import pytest

from benchround import opening
from benchround.core.errors import SeasonError
from benchround.core.record import Kind
from benchround.core.site import PlaceKind
from benchround.desk import Desk
from benchround.screens.app import BenchroundApp
from benchround.screens.first_run import FirstRunScreen, FirstSeason, Outcome
from benchround.screens.first_run_app import FirstRunApp
from benchround.screens.key_ring import KeyRing
from benchround.screens.keys import FIRST_RUN, Key, keys_on
from benchround.screens.sitting import Sitting
from benchround.screens.widgets.form import Form
from benchround.screens.widgets.status import Status
from benchround.shell.begun import begin
from benchround.whereabouts import find_season
from tests.screens.golden import same_as_kept
from tests.screens.stage import SIZES

TODAY = date(2026, 5, 27)
MINIMA = Path(__file__).parents[1] / "data" / "weather" / "ghcnd_USC00010655_minima_2003-2024.csv"
SIGNS = {" ": "space", ";": "semicolon", ":": "colon", ".": "full_stop", "-": "minus"}


def typed(text: str) -> list[str]:
    return [SIGNS.get(sign, sign) for sign in text]


class Beginning:
    """Stands for what writes the season: keeps what it was given, or refuses."""

    def __init__(self, fault: str = "") -> None:
        self.given: list[FirstSeason] = []
        self.fault = fault

    def __call__(self, season: FirstSeason) -> None:
        if self.fault:
            raise SeasonError(self.fault)
        self.given.append(season)


def app_of(beginning: Beginning, folder: Path = Path("/kept/season-2026")) -> FirstRunApp:
    return FirstRunApp(beginning, folder, TODAY)


def form_of(app: FirstRunApp) -> Form:
    return app.screen.query_one(Form)


def text_of(app: FirstRunApp) -> str:
    strips = app.screen._compositor.render_strips()
    return "\n".join(strip.text.rstrip() for strip in strips) + "\n"


@pytest.mark.parametrize("size", SIZES, ids=lambda size: f"{size[0]}x{size[1]}")
async def test_regression_of_the_screen(size: tuple[int, int]) -> None:
    app = app_of(Beginning())
    async with app.run_test(size=size) as pilot:
        await pilot.press(*typed("52.5"), "tab", "tab", *typed("Bench 1; Frame A"))
        await pilot.pause()
        same_as_kept(f"first_run_{size[0]}x{size[1]}", text_of(app))


async def test_a_place_without_a_kind_is_told_on_leaving_its_field() -> None:
    app = app_of(Beginning())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("tab", "tab")
        await pilot.pause()
        assert "such as Bench 1; Shed: bench" in text_of(app)
        await pilot.press(*typed("shed"), "tab")
        await pilot.pause()
        assert "! 'shed' does not say what it is: such as ': bench'" in text_of(app)
        await pilot.press("shift+tab", *typed(": frame"), "tab")
        await pilot.pause()
        assert "does not say" not in text_of(app)


async def test_one_key_skips_everything() -> None:
    beginning = Beginning()
    app = app_of(beginning)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("ctrl+s")
        await pilot.pause()
    assert app.return_value is Outcome.BEGUN
    assert beginning.given == [FirstSeason(Path("/kept/season-2026"), "Season 2026", ())]


async def test_site_frosts_and_places_become_records() -> None:
    beginning = Beginning()
    app = app_of(beginning)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press(*typed("52.5"), "enter", *typed("1 W"), "enter")
        await pilot.press(*typed("Bench 1; Frame A; Kitchen: windowsill"), "enter")
        await pilot.press(*typed("11 may"), "tab", *typed("30.5."), "tab", *typed("10-12"))
        await pilot.press("ctrl+s")
        await pilot.pause()
    site, *places = beginning.given[0].drafts
    assert (site.kind, dict(site.figures)) == (
        Kind.SITE,
        {
            "lat_deg": 52.5,
            "lon_deg": -1.0,
            "last_frost": "05-11",
            "last_frost_safe": "05-30",
            "first_frost": "10-12",
        },
    )
    assert [(one.about, one.figures["kind"], one.figures["order"]) for one in places] == [
        ("bench-1", PlaceKind.BENCH, 1),
        ("frame-a", PlaceKind.FRAME, 2),
        ("kitchen", PlaceKind.WINDOWSILL, 3),
    ]


async def test_a_weather_file_gives_the_frosts_once_the_latitude_is_known() -> None:
    """NOAA GHCN-Daily USC00010655 by the Utah Climate Center's rule (derived)."""
    beginning = Beginning()
    app = app_of(beginning)
    async with app.run_test(size=(80, 24)) as pilot:
        form = form_of(app)
        form.field("frost_file").put(str(MINIMA))
        form.changed()
        await pilot.pause()
        assert form.field("frost_file").hint.startswith("type the latitude first")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert form.field("frost_file").error.startswith("type the latitude first")
        assert not beginning.given
        form.field("lat_deg").put("34.7")
        form.changed()
        await pilot.press("ctrl+s")
        await pilot.pause()
    assert beginning.given[0].drafts[0].figures["last_frost"] == "03-31"


@pytest.mark.parametrize(
    ("field", "text", "says"),
    [
        ("lat_deg", "ninety", "'ninety' is no latitude"),
        ("places", "Bench 1; Attic", "'Attic' does not say what it is"),
        ("last_frost", "29 feb", "29 February is not in every year"),
        ("last_frost_safe", "+3", "'+3' is no day of every year"),
        ("frost_file", "/no/file", "there is no such file"),
        ("name", "x" * 300, "300 letters are too many"),
    ],
)
async def test_what_is_wrong_stands_beside_its_field_and_nothing_is_begun(
    field: str, text: str, says: str
) -> None:
    beginning = Beginning()
    app = app_of(beginning)
    async with app.run_test(size=(80, 24)) as pilot:
        form = form_of(app)
        form.field("name").put("Mine")
        form.field(field).put(text)
        form.changed()
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert form.field(field).error.startswith(says)
        assert form.field(field).text == text
        assert form.field("name").text == (text if field == "name" else "Mine")
        assert app.return_value is None
    assert not beginning.given


async def test_a_safe_day_before_the_last_frost_is_refused_and_none_follows_it() -> None:
    app = app_of(Beginning())
    async with app.run_test(size=(80, 24)) as pilot:
        form_of(app).field("last_frost").put("20 jun")
        form_of(app).field("last_frost_safe").put("1 jun")
        await pilot.press("ctrl+s")
        await pilot.pause()
        error = form_of(app).field("last_frost_safe").error
        assert error == "this is before the last frost"
        form_of(app).field("last_frost_safe").put("")
        await pilot.press("ctrl+s")
        await pilot.pause()
    assert app.return_value is Outcome.BEGUN


async def test_a_folder_that_cannot_be_used_is_said_and_can_be_changed() -> None:
    beginning = Beginning("that folder is full.")
    app = app_of(beginning)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert form_of(app).field("folder").error == "that folder is full."
        said = app.screen.query_one(Status).said
        assert said == "Nothing was begun: that folder is full."
        beginning.fault = ""
        form_of(app).field("folder").put("/elsewhere/garden")
        await pilot.press("ctrl+s")
        await pilot.pause()
    assert beginning.given[0].folder == Path("/elsewhere/garden")


async def test_leaving_begins_nothing_and_asks_once_about_what_was_typed() -> None:
    beginning = Beginning()
    app = app_of(beginning)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("5", "escape")
        await pilot.pause()
        assert app.return_value is None
        assert "press it again" in app.screen.query_one(Status).said
        await pilot.press("escape")
        await pilot.pause()
    assert app.return_value is Outcome.LEFT
    assert not beginning.given


async def test_a_question_mark_tells_the_way_out_of_a_season_not_begun() -> None:
    app = app_of(Beginning())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("question_mark")
        await pilot.pause()
        assert form_of(app).field("lat_deg").text == ""
        words = "esc leaves, nothing is begun and nothing is written"
        assert app.screen.query_one(Status).said == words


async def test_the_sample_is_one_key_away() -> None:
    app = app_of(Beginning())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("ctrl+o")
        await pilot.pause()
    assert app.return_value is Outcome.SAMPLE


BEFORE: dict[str, tuple[str, ...]] = {
    "skip-back": ("tab",),
    "first-choice-before": ("tab",),
    "first-empty": ("a",),
}
CASES = [
    pytest.param(key, name, id=f"{key.id} by {name}")
    for key in keys_on(FIRST_RUN)
    for name in key.keys
]


@pytest.mark.parametrize(("key", "name"), CASES)
async def test_every_key_does_something(key: Key, name: str) -> None:
    app = app_of(Beginning())
    async with app.run_test(size=(60, 20)) as pilot:
        await pilot.pause()
        await pilot.press(*BEFORE.get(key.id, ()))
        await pilot.pause()
        before = text_of(app), app.theme, app.return_value
        await pilot.press(name)
        await pilot.pause()
        assert before != (text_of(app), app.theme, app.return_value)


@pytest.mark.parametrize("name", ["[/]", "[bold red]x", "\u05e9\u05dc\u05d5\u05dd", "e" * 9_000])
async def test_hostile_letters_are_letters(name: str) -> None:
    app = app_of(Beginning(), Path("/kept") / name[:40])
    async with app.run_test(size=(60, 20)) as pilot:
        for field in form_of(app).fields:
            field.put(name)
        form_of(app).changed()
        await pilot.pause()
        assert name[:5] in text_of(app)
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert app.return_value is None
        assert form_of(app).field("places").error


class Chooses:
    """Stands for the grower at the first screen."""

    def __init__(self, outcome: Outcome, said: FirstSeason | None = None) -> None:
        self.outcome = outcome
        self.said = said
        self.asked = 0

    def __call__(
        self, write: object, folder: Path, today: date, ring: KeyRing, look: object = None
    ) -> tuple[Outcome, int]:
        self.asked += 1
        assert ring.faults == ()
        assert not folder.exists()
        assert not folder.parent.exists()
        if self.said is not None and callable(write):
            write(self.said)
        return self.outcome, 0


@pytest.fixture
def nowhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """No season anywhere: an empty home for the program's data, and another folder to stand in."""
    home, here = tmp_path / "home", tmp_path / "here"
    here.mkdir()
    monkeypatch.setenv("XDG_DATA_HOME", str(home))
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    monkeypatch.chdir(here)
    assert find_season() is None
    return home


def opened_by(monkeypatch: pytest.MonkeyPatch, asks: Chooses) -> list[tuple[Desk, str, bool]]:
    seen: list[tuple[Desk, str, bool]] = []

    def run(desk: Desk, sitting: Sitting, _: object) -> int:
        seen.append((desk, sitting.said, sitting.sample))
        return 0

    monkeypatch.setattr("benchround.screens.first_run_app.ask", asks)
    monkeypatch.setattr("benchround.screens.app.run", run)
    return seen


def test_leaving_the_first_screen_leaves_no_trace(
    nowhere: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    seen = opened_by(monkeypatch, Chooses(Outcome.LEFT))
    assert opening.open_screens("", sample=False) == 0
    assert seen == []
    assert not nowhere.exists()


def test_the_sample_chosen_begins_nothing(nowhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    seen = opened_by(monkeypatch, Chooses(Outcome.SAMPLE))
    assert opening.open_screens("", sample=False) == 0
    assert [sample for _, _, sample in seen] == [True]
    assert not nowhere.exists()


def test_a_season_begun_is_opened_with_its_records_and_found_the_next_time(
    nowhere: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    folder = nowhere / "benchround" / "season-2026"
    asks = Chooses(Outcome.BEGUN, FirstSeason(folder, "Mine", ()))
    seen = opened_by(monkeypatch, asks)
    assert opening.open_screens("", sample=False) == 0
    ((desk, said, sample),) = seen
    assert (desk.folder.name, sample) == ("Mine", False)
    assert said == f"Mine is begun, in {folder}."
    assert opening.open_screens("", sample=False) == 0
    assert asks.asked == 1
    assert find_season() == folder


async def test_the_round_says_what_to_do_first(tmp_path: Path) -> None:
    folder = tmp_path / "season"
    begin(folder, "Mine", lambda desk: None)
    desk = Desk.open(folder, today=lambda: TODAY)
    app = BenchroundApp(desk, Sitting(said="Mine is begun."))
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.pause()
        assert app.screen.query_one(Status).said == "Mine is begun."
        strips = app.screen._compositor.render_strips()
        assert any("Press s to sow your first one" in strip.text for strip in strips)
    desk.close()


async def test_a_signal_leaves_without_a_season() -> None:
    beginning = Beginning()
    app = app_of(beginning)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("5")
        os.kill(os.getpid(), signal.SIGHUP)
        await pilot.pause()
        await pilot.pause()
    assert (app.return_value, app.return_code) == (Outcome.LEFT, 128 + signal.SIGHUP)
    assert not beginning.given


def test_it_asks_without_a_desk() -> None:
    assert not hasattr(FirstRunApp, "desk")
    assert FirstRunScreen.KEYS_OF == FIRST_RUN
