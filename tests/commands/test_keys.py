"""`benchround keys`: lists every action, writes a file to start from, and checks one."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchround.screens.key_choice import actions
from benchround.shell import own_keys
from benchround.shell.own_keys import keys_file, ring_of
from tests.commands.shell import run

FILE = 'tick = "x"\nundo = "ctrl+q"\n'


@pytest.fixture(autouse=True)
def settings(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A settings folder of the test's own; the file of keys is not there."""
    file = tmp_path / "config" / "keys.toml"
    monkeypatch.setattr(own_keys, "keys_file", lambda: file)
    monkeypatch.setattr("benchround.commands.keys.keys_file", lambda: file)
    return file


def test_the_file_lies_in_the_users_settings_folder(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.undo()
    monkeypatch.setenv("XDG_CONFIG_HOME", "/somewhere/else")
    assert keys_file() == Path("/somewhere/else/benchround/keys.toml")


def test_every_action_is_listed_with_its_keys(
    settings: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    ran = run(["keys"], capsys)
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.splitlines()[0] == f"Keys of your own: {settings} (not there yet)"
    first_words = {line.split(" ")[0] for line in ran.out.splitlines()[2:]}
    assert first_words == set(actions())
    assert "tick            space" in ran.out


def test_json_tells_the_screens_of_each_key(capsys: pytest.CaptureFixture[str]) -> None:
    ran = run(["keys", "--json"], capsys)
    value = ran.value
    assert set(value) == {"file", "actions", "faults"}
    undo = next(one for one in value["actions"] if one["action"] == "undo")
    assert [key["keys"] for key in undo["keys"]] == [["u"]] * len(actions()["undo"])
    assert undo["keys"][0]["screens"] == ["The round"]


def test_the_file_to_start_from_holds_with_every_line_switched_on(
    capsys: pytest.CaptureFixture[str],
) -> None:
    ran = run(["keys", "--as-file"], capsys)
    lines = [line.removeprefix("# ") for line in ran.out.splitlines() if " = " in line]
    assert len(lines) == len(actions())
    assert ring_of("\n".join(lines), "keys.toml").faults == ()
    assert ring_of(ran.out, "keys.toml").all_usual


def test_own_keys_are_listed_and_a_fault_is_told(
    settings: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    settings.parent.mkdir()
    settings.write_text(FILE, "utf-8")
    ran = run(["keys"], capsys)
    assert ran.code == 0
    assert "tick            x " in ran.out
    assert ran.err.startswith(f"{settings}, line 2: ctrl+q is always 'quit'")
    ran = run(["keys", "--check"], capsys)
    assert (ran.code, ran.out) == (1, "")
    assert ran.err.count("\n") == 1
    settings.write_text(FILE.splitlines()[0], "utf-8")
    ran = run(["keys", "--check"], capsys)
    assert (ran.code, ran.out, ran.err) == (0, f"{settings}: every line holds.\n", "")


def test_another_file_is_checked_and_a_missing_one_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    other = tmp_path / "mine.toml"
    ran = run(["keys", "--check", str(other)], capsys)
    assert ran.code == 1
    assert f"There is no file {other}" in ran.err
    other.write_text("sow = 1\n", "utf-8")
    ran = run(["keys", "--check", str(other)], capsys)
    assert ran.code == 1
    assert "line 1: 'sow' is given no key's name" in ran.err
