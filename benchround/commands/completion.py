"""`benchround completion`: the script that lets a shell complete commands, options and crops."""

from __future__ import annotations

import argparse

from benchround.cli import COMMANDS
from benchround.shell.completion import SHELLS, script_for
from benchround.shell.saying import add_json, answer

HELP = "print the completion script for a shell"
EXAMPLE = "benchround completion bash"
MORE_EXAMPLES = ("benchround completion zsh", "benchround completion fish")
DETAILS = (
    "The script knows every command, its options, the crops of the library and the kinds of "
    "records, as they were when it was printed. For bash write eval with the output of this "
    "command into ~/.bashrc; for zsh put the output into a file called _benchround in a folder "
    "of $fpath; for fish into ~/.config/fish/completions/benchround.fish."
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("shell", choices=SHELLS, help="the shell")
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Print it."""
    script = script_for(given.shell, COMMANDS)
    answer({"shell": given.shell, "script": script}, script.splitlines(), as_json=given.json)
    return 0
