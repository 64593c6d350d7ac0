"""Manual pages, completion scripts, and every example run in a copy of the sample season."""

from __future__ import annotations

import shlex
import shutil
import subprocess
from pathlib import Path

import pytest

from benchround.cli import COMMANDS
from benchround.core.record_figures import KINDS
from benchround.crops.library import load_library
from benchround.shell.completion import SHELLS, offers, option_word, script_for
from benchround.shell.manual import manual_page
from benchround.shell.parsers import arguments_of, examples_of, module_of, parser_of, subjects_of
from tests.commands.recording.bench import Run

OURS = (
    *("new", "sow", "diary", "note", "tick", "put-off", "undo", "records", "place", "settings"),
    *("crops", "keep", "restore", "merge", "close-season", "completion", "help"),
)
EXAMPLES = [(name, example) for name in OURS for example in examples_of(module_of(name))]


@pytest.mark.parametrize(("command", "example"), EXAMPLES, ids=[e for _, e in EXAMPLES])
def test_every_example_runs_as_it_stands(
    season: Path, tmp_path: Path, run: Run, command: str, example: str
) -> None:
    run("keep")
    run("tick", "feed:b16")
    shutil.copytree(season, tmp_path / "laptop-season")
    program, *words = shlex.split(example)
    assert (program, words[0]) == ("benchround", command)
    ran = run(*words)
    assert ran.code == 0, ran.err
    assert ran.out


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_a_manual_page(run: Run, command: str) -> None:
    ran = run("help", command)
    assert ran.code == 0, ran.err
    module = module_of(command)
    parser = parser_of(command, module)
    assert f"benchround {command} - {module.HELP}" in ran.out
    assert all(f"    {example}" in ran.out for example in examples_of(module))
    for argument in arguments_of(parser):
        assert f"    {argument.name}\n" in ran.out
    assert "EXIT CODES" in ran.out
    wide = [line for line in ran.out.splitlines() if len(line) > 78]
    assert all(line.strip().startswith("benchround ") for line in wide)
    value = run("help", command, "--json").value
    assert value["examples"] == list(examples_of(module))
    assert set(value) == {
        *("command", "subject", "summary", "subjects", "arguments", "examples"),
    }


def test_a_subject_has_a_page_of_its_own() -> None:
    module = module_of("reckon")
    parser = parser_of("reckon", module)
    for subject, inner in subjects_of(parser).items():
        page = manual_page("reckon", module, parser, subject)
        assert page[1].startswith(f"    benchround reckon {subject} - ")
        assert (inner.epilog or "").removeprefix("example: ") in "\n".join(page)


def test_the_page_of_note_lists_every_kind(run: Run) -> None:
    page = run("help", "note").out
    assert all(f"    {kind}\n" in page for kind in KINDS)
    assert "count (needed)" in page


def test_the_list_names_every_command(run: Run) -> None:
    out = run("help").out
    assert all(f"  {command} " in out for command in COMMANDS)
    named = [line["name"] for line in run("help", "--json").value["commands"]]
    assert named == list(COMMANDS)


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("help", "saw"), 1, "sow"),
        (("help", "reckon", "frist"), 1, "frost"),
        (("help", "sow", "seeds"), 1, "none of that name"),
        (("completion", "tcsh"), 2, "invalid choice"),
        (("completion",), 2, "shell"),
        (("sown",), 2, "sow"),
        (("recrods",), 2, "records"),
        (("tikc",), 2, "tick"),
        (("sow",), 2, "required: CROP\n"),
        (("note", "b20"), 2, "required: KIND\n"),
        (("sow", "cosmos", "--sedes", "3"), 2, "--sedes"),
    ],
)
def test_what_is_mistyped_gets_a_hint(
    season: Path, run: Run, words: tuple[str, ...], code: int, said: str
) -> None:
    ran = run(*words)
    assert (ran.code, said in ran.err) == (code, True), ran.err


@pytest.mark.parametrize("shell", SHELLS)
def test_a_script_knows_every_command_and_option(shell: str) -> None:
    script = script_for(shell, COMMANDS)
    for offer in offers(COMMANDS):
        assert offer.command in script
        for option in offer.options:
            word = option_word(option)
            assert (f"-l {word[2:]}" if shell == "fish" else word) in script
    assert all(key in script for key in load_library())
    assert all(str(kind).replace(" ", "-") in script for kind in KINDS)


@pytest.mark.parametrize("shell", SHELLS)
def test_a_script_is_sound_to_its_shell(shell: str, tmp_path: Path) -> None:
    if shutil.which(shell) is None:
        pytest.skip(f"{shell} is not installed here")
    path = tmp_path / f"script.{shell}"
    path.write_text(script_for(shell, COMMANDS), encoding="utf-8")
    done = subprocess.run([shell, "-n", str(path)], capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, "")


@pytest.mark.parametrize(
    ("typed", "offered"),
    [
        (["ne"], "new"),
        (["sow", "cosm"], "cosmos"),
        (["sow", "cosmos", "--vari"], "--variety"),
        (["note", "b20", "first-u"], "first-up"),
        (["reckon", "fro"], "frost"),
        (["completion", "zs"], "zsh"),
        (["sow", "cosmos", "--season", "gard"], "garden"),
    ],
)
def test_bash_completes(tmp_path: Path, typed: list[str], offered: str) -> None:
    if shutil.which("bash") is None:
        pytest.skip("bash is not installed here")
    (tmp_path / "garden").mkdir()
    words = " ".join(map(shlex.quote, ["benchround", *typed]))
    script = (
        f"{script_for('bash', COMMANDS)}\nCOMP_WORDS=({words})\nCOMP_CWORD={len(typed)}\n"
        '_benchround\nprintf "%s\\n" "${COMPREPLY[@]}"\n'
    )
    done = subprocess.run(
        ["bash", "-c", script], capture_output=True, text=True, check=True, cwd=tmp_path
    )
    assert offered in done.stdout.splitlines()
