"""`benchround help`: the manual page of a command, or the list of all."""

from __future__ import annotations

import argparse

from benchround.cli import COMMANDS
from benchround.core.errors import UnknownNameError
from benchround.core.near_names import near_words, shown
from benchround.plain import JsonValue
from benchround.shell.manual import manual_page
from benchround.shell.parsers import (
    arguments_of,
    examples_of,
    module_of,
    parser_of,
    subjects_of,
)
from benchround.shell.saying import add_json, answer

HELP = "tell how a command is used"
EXAMPLE = "benchround help sow"
MORE_EXAMPLES = ("benchround help reckon frost", "benchround help")


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("command", metavar="COMMAND", nargs="?", default="", help="the command")
    parser.add_argument("subject", metavar="SUBJECT", nargs="?", default="", help="one of its own")
    add_json(parser)


def run(given: argparse.Namespace) -> int:
    """Print the page, or the list."""
    if not given.command:
        return _list(given)
    command = given.command
    if command not in COMMANDS:
        near = near_words(command, COMMANDS, "'benchround help' lists them")
        raise UnknownNameError(f"There is no command {shown(command)}: {near}.")
    module = module_of(command)
    parser = parser_of(command, module)
    subjects = subjects_of(parser)
    if given.subject and given.subject not in subjects:
        near = near_words(given.subject, subjects, "it has none of that name")
        raise UnknownNameError(f"'{command}' knows no {shown(given.subject)}: {near}.")
    found: list[JsonValue] = [
        {"name": one.name, "help": one.help, "choices": list(one.choices)}
        for one in arguments_of(subjects[given.subject] if given.subject else parser)
    ]
    value: dict[str, JsonValue] = {
        "command": command,
        "subject": given.subject,
        "summary": module.HELP,
        "subjects": list(subjects),
        "arguments": found,
        "examples": list(examples_of(module)),
    }
    answer(value, manual_page(command, module, parser, given.subject), as_json=given.json)
    return 0


def _list(given: argparse.Namespace) -> int:
    wide = max(map(len, COMMANDS))
    told = [(command, str(module_of(command).HELP)) for command in COMMANDS]
    commands: list[JsonValue] = [{"name": name, "summary": text} for name, text in told]
    lines = [
        "benchround opens the screens; with a command it does one thing:",
        "",
        *(f"  {name:{wide}}  {text}" for name, text in told),
        "",
        "'benchround help COMMAND' tells how it is used, with examples.",
    ]
    answer({"commands": commands}, lines, as_json=given.json)
    return 0
