"""Typing in what was written on the sheet."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from benchround.cli import main
from benchround.core.errors import InputError, SeasonError
from benchround.core.record import Kind, Record
from benchround.core.task import Ask
from benchround.desk import Desk
from benchround.feeds.paper_entry import Entered, answers_of, read_entry
from benchround.feeds.paper_round import paper_list
from benchround.store import SeasonFolder
from benchround.whereabouts import sample_folder
from tests.sample.story import DAY_0

COUNT = Ask("count", "planted", "22", most=22)
PLACE = Ask("place", "into", "bed-1", whole=False)
REST = Ask("rest", "the rest", "kept", whole=False, choices=("kept", "composted"))


@pytest.mark.parametrize(
    ("text", "code", "ticked"),
    [
        ("3 5 7:22", "", ((3, ()), (5, ()), (7, ("22",)))),
        ("k7qp 9:14 slug", "k7qp", ((9, ("14", "slug")),)),
        ("K7QP 12:4:27", "k7qp", ((12, ("4", "27")),)),
        ("7:-:bed-2  8", "", ((7, ("-", "bed-2")), (8, ()))),
        ("1:4.5\n2", "", ((1, ("4.5",)), (2, ()))),
        ("5:", "", ((5, ("",)),)),
    ],
)
def test_entries(text: str, code: str, ticked: tuple[tuple[int, tuple[str, ...]], ...]) -> None:
    entry = read_entry(text)
    assert entry.code == code
    assert entry.ticked == tuple(Entered(number, words) for number, words in ticked)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "No number"),
        ("k7qp", "No number"),
        ("slug 3", "No number|neither"),
        ("fifteen 3", "neither a number"),
        ("3 5 3", "Number 3 is there twice"),
        ("3 \x1b[31m", "control characters"),
        ("3 " * 3000, "too long"),
    ],
)
def test_what_is_no_entry_is_refused(text: str, words: str) -> None:
    with pytest.raises(InputError, match=words):
        read_entry(text)


@settings(deadline=None)
@given(st.text(max_size=60))
def test_any_text_is_an_entry_or_refused(text: str) -> None:
    try:
        entry = read_entry(text)
    except InputError:
        return
    assert entry.ticked
    for entered in entry.ticked:
        try:
            answers, note = answers_of(entered, (COUNT, PLACE, REST))
        except InputError:
            continue
        assert set(answers) <= {"count", "place", "rest"}
        assert isinstance(note, str)


@pytest.mark.parametrize(
    ("words", "answers", "note"),
    [
        ((), {}, ""),
        (("22",), {"count": "22"}, ""),
        (("22", "bed-2", "kept"), {"count": "22", "place": "bed-2", "rest": "kept"}, ""),
        (("22", "comp"), {"count": "22", "rest": "comp"}, ""),
        (("-", "bed-2"), {"place": "bed-2"}, ""),
        (
            ("bed-2", "22", "kept", "slug", "again"),
            {"place": "bed-2", "count": "22", "rest": "kept"},
            "slug again",
        ),
    ],
)
def test_words_fill_the_gaps_they_fit(
    words: tuple[str, ...], answers: dict[str, str], note: str
) -> None:
    assert answers_of(Entered(9, words), (COUNT, PLACE, REST)) == (answers, note)


def test_a_figure_too_many_is_named() -> None:
    with pytest.raises(InputError, match="Number 9: '40' is more than it asks for"):
        answers_of(Entered(9, ("22", "40")), (COUNT,))


@pytest.fixture
def season(tmp_path: Path) -> Path:
    folder = tmp_path / "season"
    shutil.copytree(sample_folder(), folder, ignore=shutil.ignore_patterns("*.lock"))
    return folder


ON = ["--on", DAY_0.isoformat()]


def numbers(season: Path) -> dict[str, int]:
    desk = Desk.open(season, today=lambda: DAY_0, read_only=True)
    kept = paper_list(desk.round())
    desk.close()
    return {key: number for number, key in enumerate(kept.keys, start=1)}


def live_count(season: Path) -> int:
    desk = Desk.open(season, today=lambda: DAY_0, read_only=True)
    desk.close()
    return len(desk.folder.records())


def test_what_was_ticked_on_paper_is_recorded(
    season: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["paper", "print", str(season), *ON]) == 0
    capsys.readouterr()
    at = numbers(season)
    entry = f"{at['feed:b16:']} {at['prick out:b25:']}:20:40 {at['harden off:b01:']} no slug"
    before = live_count(season)
    assert main(["paper", "enter", entry, str(season), *ON]) == 0
    shown = capsys.readouterr()
    assert "pricked out" in shown.out
    assert "count 20" in shown.out
    assert "note: slug" in shown.out
    assert "Nothing was recorded yet" in shown.err
    assert live_count(season) == before
    assert main(["paper", "enter", entry, str(season), *ON, "--yes"]) == 0
    desk = Desk.open(season, today=lambda: DAY_0, read_only=True)
    desk.close()
    assert desk.season.batches["b25"].main.alive == 20
    assert desk.season.batches["b16"].main.last_day(Kind.FED) == DAY_0
    assert desk.season.batches["b01"].main.last[Kind.NOTED].note == "slug"


def test_a_disk_that_fills_up_takes_the_whole_sheet_or_nothing(
    season: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    main(["paper", "print", str(season), *ON])
    at = numbers(season)
    entry = f"{at['feed:b16:']} {at['turn:b02:']} spotless {at['prick out:b25:']}:20:40"
    before, append, room = live_count(season), SeasonFolder.append, ["for one writing"]

    def filling_up(folder: SeasonFolder, records: tuple[Record, ...]) -> None:
        if not room:
            raise SeasonError("the disk is full")
        room.pop()
        append(folder, records)

    monkeypatch.setattr(SeasonFolder, "append", filling_up)
    assert main(["paper", "enter", entry, str(season), *ON, "--yes"]) == 0
    desk = Desk.open(season, today=lambda: DAY_0, read_only=True)
    desk.close()
    written = desk.folder.records()[before:]
    assert {record.about for record in written} == {"b16", "b02", "b25"}
    assert [record.note for record in written if record.kind is Kind.NOTED] == ["spotless"]
    entry = f"{at['deadhead:b07:']} {at['deadhead:b29:']}"
    assert main(["paper", "enter", entry, str(season), *ON, "--yes"]) == 1
    assert "the disk is full" in capsys.readouterr().err
    assert live_count(season) == before + len(written)


def test_numbers_keep_their_meaning_when_the_round_has_changed(
    season: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["paper", "print", str(season), *ON])
    capsys.readouterr()
    at = numbers(season)
    first, last = f"{at['lids:frame-a:']}", f"{at['turn:b02:']}"
    assert main(["paper", "enter", first, str(season), *ON, "--yes"]) == 0
    assert numbers(season)["turn:b02:"] == at["turn:b02:"] - 1
    assert main(["paper", "enter", last, str(season), *ON, "--yes"]) == 0
    desk = Desk.open(season, today=lambda: DAY_0, read_only=True)
    desk.close()
    assert desk.season.batches["b02"].main.last_day(Kind.TURNED) == DAY_0
    assert main(["paper", "enter", first, str(season), *ON]) == 1
    assert "not asked for any more" in capsys.readouterr().out


def test_one_bad_number_keeps_all_of_it_out(
    season: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["paper", "print", str(season), *ON])
    at = numbers(season)
    before = live_count(season)
    entry = f"{at['feed:b16:']} {at['prick out:b25:']}:9999 400"
    assert main(["paper", "enter", entry, str(season), *ON, "--yes"]) == 1
    shown = capsys.readouterr()
    assert "not between 0 and" in shown.out
    assert "the sheet has numbers 1 to" in shown.out
    assert "2 of 3 cannot be recorded" in shown.err
    assert live_count(season) == before


def test_two_numbers_that_do_not_go_together_are_seen_in_the_preview(
    season: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Once the nameless tray b32 is found to be b33 it is watered no more; before, it may be."""
    main(["paper", "print", str(season), *ON])
    at = numbers(season)
    water, relabel = at["water:b32:"], at["relabel:b32:"]
    assert main(["paper", "enter", f"{water} {relabel}", str(season), *ON]) == 0
    capsys.readouterr()
    assert main(["paper", "enter", f"{relabel} {water}", str(season), *ON]) == 1
    assert f"! {water:>3}  'watered' cannot be recorded for b32" in capsys.readouterr().out


def test_the_next_morning_the_code_says_which_sheet_it_was(
    season: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["paper", "print", str(season), *ON])
    text = capsys.readouterr().out
    code = text.split("benchround paper enter ")[1].split()[0]
    number = numbers(season)["feed:b16:"]
    late = ["--on", "2026-05-28"]
    assert main(["paper", "enter", str(number), str(season), *late]) == 1
    assert "begin with the code" in capsys.readouterr().err
    assert main(["paper", "enter", f"{code} {number}", str(season), *late, "--yes"]) == 0
    desk = Desk.open(season, today=lambda: DAY_0, read_only=True)
    desk.close()
    assert desk.season.batches["b16"].main.last_day(Kind.FED) == DAY_0


def test_without_a_kept_list_the_code_of_the_same_round_is_enough(
    season: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main(["paper", "print", str(season), *ON])
    code = capsys.readouterr().out.split("benchround paper enter ")[1].split()[0]
    shutil.rmtree(season / "keep")
    number = numbers(season)["feed:b16:"]
    assert main(["paper", "enter", f"{code} {number}", str(season), *ON]) == 0
    assert main(["paper", "enter", f"{number}", str(season), *ON]) == 1
    assert main(["paper", "enter", f"zzzz {number}", str(season), *ON]) == 1
    assert "look at the code again" in capsys.readouterr().err


def test_only_the_latest_lists_are_kept_and_copies_of_the_season_are_not_touched(
    season: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    keep = season / "keep"
    keep.mkdir(exist_ok=True)
    for day in range(70):
        (keep / f"paper-2020-01-{day:02d}-aaaa.json").write_text("{}")
    (keep / "2026-05-01-shed.zip").write_bytes(b"zip")
    main(["paper", "print", str(season), *ON])
    capsys.readouterr()
    assert len(list(keep.glob("paper-*.json"))) == 60
    assert (keep / "2026-05-01-shed.zip").exists()


def test_the_sample_keeps_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    before = sorted(path.name for path in sample_folder().rglob("*"))
    assert main(["paper", "print", "--sample"]) == 0
    assert "Round of Wednesday" in capsys.readouterr().out
    assert sorted(path.name for path in sample_folder().rglob("*")) == before


def recorded(capsys: pytest.CaptureFixture[str]) -> list[str]:
    """What would be recorded, number by number."""
    return capsys.readouterr().out.splitlines()


def test_quotes_may_be_left_out(
    season: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert main(["paper", "print", str(season), *ON]) == 0
    capsys.readouterr()
    assert main(["paper", "enter", "1:5:19 2 7 slug", str(season), *ON]) == 0
    quoted = recorded(capsys)
    words = ["1:5:19", "2", "7", "slug"]
    assert main(["paper", "enter", *words, str(season), *ON]) == 0
    assert recorded(capsys) == quoted
    assert main(["paper", "enter", *words, "--season", str(season), *ON]) == 0
    assert recorded(capsys) == quoted
    monkeypatch.chdir(season)
    assert main(["paper", "enter", *words, *ON]) == 0
    assert recorded(capsys) == quoted
    assert main(["paper", "enter", "2", str(season), *ON]) == 0
    assert len(recorded(capsys)) == 1


def test_behind_a_quoted_entry_a_folder_that_is_no_season_is_named(
    season: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["paper", "enter", "1 2", "nowhere", *ON]) == 1
    assert "no season in nowhere" in capsys.readouterr().err


def test_the_example_on_a_sheet_can_be_typed_in(
    season: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["new", str(tmp_path / "first"), "--name", "First"]) == 0
    for folder in (season, tmp_path / "first"):
        capsys.readouterr()
        assert main(["paper", "print", str(folder), *ON]) == 0
        (line,) = [
            line for line in capsys.readouterr().out.splitlines() if line.startswith("To type")
        ]
        words = line.split(": ", 1)[1].split()
        assert words[0] == "benchround"
        assert main([*words[1:], "--season", str(folder), *ON]) == 0
        assert len(recorded(capsys)) == len(words) - 4


def test_a_lid_typed_in_is_said_as_the_round_says_it(
    season: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The record holds "off", which nobody reads; the round on paper said "fully open"."""
    main(["paper", "print", str(season), *ON])
    at = numbers(season)["lids:frame-b:"]
    capsys.readouterr()
    assert main(["paper", "enter", str(at), str(season), *ON]) == 0
    shown = capsys.readouterr().out
    assert "fully open" in shown
    assert " off" not in shown


def test_paper_alone_says_what_to_do(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["paper"]) == 1
    said = capsys.readouterr().err
    assert "benchround paper print" in said
    assert "benchround paper enter" in said
