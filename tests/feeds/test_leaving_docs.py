"""Every command of the guide is run as it stands there, in its order."""

from __future__ import annotations

import re
import shlex
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from benchround.cli import COMMANDS, main
from benchround.whereabouts import sample_folder

GUIDE = Path(__file__).parents[2] / "docs" / "leaving.md"
OURS = ("labels", "paper", "calendar", "tables", "report")
SHEET = "crop,variety,sown,seeds,place\nCosmos,Night Lamp,12 apr,40,Bench 1\n"


def commands() -> list[str]:
    text = GUIDE.read_text(encoding="utf-8")
    blocks = re.findall(r"^```\n(.*?)^```", text, re.DOTALL | re.MULTILINE)
    return [line for block in blocks for line in block.splitlines()]


def test_every_command_of_the_guide_works(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    shutil.copytree(sample_folder(), "my-season", ignore=shutil.ignore_patterns("*.lock"))
    Path("sowings.csv").write_text(SHEET, encoding="utf-8")
    for line in commands():
        words = shlex.split(line)
        assert words[0] == "benchround"
        target = ""
        if ">" in words:
            at = words.index(">")
            words, target = words[:at], words[at + 1]
        code = main(words[1:])
        shown = capsys.readouterr()
        assert code == 0, f"{line}\n{shown.out}\n{shown.err}"
        if target:
            Path(target).write_text(shown.out, encoding="utf-8")
    for name in ("labels.pdf", "sheet.pdf", "round.pdf", "season.pdf", "code.pdf"):
        assert Path(name).read_bytes().startswith(b"%PDF-"), name
    assert Path("round.ics").read_bytes().startswith(b"BEGIN:VCALENDAR\r\n")
    assert Path("new-season", "benchround.json").is_file()
    assert Path("season.md").read_text(encoding="utf-8").startswith("# The sample season")


def test_the_guide_shows_every_command_of_this_page() -> None:
    shown = {shlex.split(line)[1] for line in commands()}
    assert shown == set(OURS)
    assert set(OURS) <= set(COMMANDS)


@pytest.mark.parametrize("name", OURS)
def test_the_example_of_the_help_works(
    name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from importlib import import_module

    module = import_module(f"benchround.commands.{name}")
    monkeypatch.chdir(tmp_path)
    words = shlex.split(module.EXAMPLE)
    assert words[:2] == ["benchround", name]
    assert main(words[1:]) == 0
    capsys.readouterr()
    with pytest.raises(SystemExit) as left:
        main([name, "--help"])
    assert left.value.code == 0
    assert module.HELP in " ".join(capsys.readouterr().out.split())


REFUSED = [
    (["labels", "--sample", "--batch", "b99"], "There is no batch 'b99'"),
    (["labels", "--sample", "--copies", "x"], "no whole number"),
    (["labels", "--sample", "--all", "--pdf", "none/x.pdf"], "cannot be written"),
    (["labels", "--sample", "--all", "--pdf", "."], "is a folder"),
    (["labels", "nowhere"], "no season"),
    (["paper", "print", "--sample", "--paper", "A9"], "is no paper"),
    (["paper", "enter", "x", "--sample"], "neither a number"),
    (["calendar", "--sample", "--weeks", "0"], "no whole number from 1"),
    (["calendar", "--sample", "--weeks", "999"], "too many"),
    (["calendar", "--sample", "--stamp", "noon"], "is no time"),
    (["tables", "--sample", "--what", "everything"], "add --json"),
    (["tables", "--sample", "--take-in", "x.csv"], "never written to"),
    (["tables", "--take-in", "nothing.csv", "s"], "cannot be read"),
    (["report", "--sample", "--on", "May"], "is no day"),
]


@pytest.mark.parametrize(("words", "said"), REFUSED, ids=[" ".join(w) for w, _ in REFUSED])
def test_what_cannot_be_ends_with_a_sentence_and_code_1(
    words: list[str],
    said: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "home"))
    assert main(words) == 1
    assert said in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_labels_are_remembered_as_printed_and_tried_ones_are_not(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    shutil.copytree(sample_folder(), "s", ignore=shutil.ignore_patterns("*.lock"))
    words = ["labels", "s", "--on", "2026-05-27"]

    def listed() -> int:
        capsys.readouterr()
        assert main(words) == 0
        return len(capsys.readouterr().out.splitlines())

    assert listed() == 30
    assert main([*words, "--text", "try.txt", "--try"]) == 0
    assert listed() == 30
    assert main([*words, "--batch", "b07", "--text", "one.txt"]) == 0
    assert listed() == 29
    assert main([*words, "--pdf", "all.pdf"]) == 0
    assert listed() == 0
    assert main([*words, "--text", "again.txt"]) == 0
    assert not Path("again.txt").exists()
    assert "Every label is printed already" in capsys.readouterr().err


def test_a_season_another_program_holds_is_read_but_not_written(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from benchround.desk import Desk

    monkeypatch.chdir(tmp_path)
    shutil.copytree(sample_folder(), "s", ignore=shutil.ignore_patterns("*.lock"))
    holder = Desk.open(Path("s"))
    try:
        assert main(["report", "s"]) == 0
        assert main(["labels", "s", "--text", "labels.txt"]) == 3
        assert not Path("labels.txt").exists()
        assert main(["labels", "s", "--text", "labels.txt", "--try"]) == 0
        assert main(["paper", "print", "s", "--on", "2026-05-27"]) == 0
        assert main(["paper", "enter", "2", "s", "--on", "2026-05-27"]) == 0
        assert main(["paper", "enter", "2", "s", "--on", "2026-05-27", "--yes"]) == 3
    finally:
        holder.close()
    assert "benchround: " in capsys.readouterr().err


WITHOUT = [
    ("fpdf", ["report", "--sample", "--pdf", "x.pdf"], 1, "fpdf2: install the extra 'paper'"),
    ("icalendar", ["calendar", "--sample", "--out", "x.ics"], 1, "icalendar: install the extra"),
    ("qrcode", ["labels", "--sample", "--qr", "--pdf", "x.pdf"], 1, "qrcode: install the extra"),
    ("fpdf", ["labels", "--sample", "--text", "x.txt"], 0, "never written to"),
    ("fpdf", ["paper", "print", "--sample"], 0, ""),
    ("fpdf", ["report", "--sample", "--out", "x.md"], 0, ""),
]


@pytest.mark.parametrize(
    ("package", "words", "code", "said"),
    WITHOUT,
    ids=[f"{p}: {' '.join(w)}" for p, w, _, _ in WITHOUT],
)
def test_without_an_extra_its_commands_say_so_and_the_others_work(
    package: str, words: list[str], code: int, said: str, tmp_path: Path
) -> None:
    program = (
        f"import sys; sys.modules[{package!r}] = None; from benchround.cli import main; "
        f"sys.exit(main({words!r}))"
    )
    command = [sys.executable, "-c", program]
    done = subprocess.run(command, capture_output=True, text=True, cwd=tmp_path)
    assert done.returncode == code, done.stderr
    assert said in done.stderr
    assert "Traceback" not in done.stderr
