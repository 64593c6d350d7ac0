"""The parser of every command, built from its module."""

from __future__ import annotations

import argparse
import os
from collections.abc import Iterator, Mapping, Sequence
from importlib import import_module
from types import ModuleType

from benchround.core.frozen import dataclass

USUAL_COLUMNS = 80
FOLDERS = frozenset({"FOLDER", "NEW_FOLDER", "A", "B", "C", "season"})
FILES = frozenset({"FILE"})
"""What stands for folders and files in usage lines."""


@dataclass(frozen=True, slots=True)
class Argument:
    """One argument of a command.

    Attributes:
        name: as it stands in usage lines, or the option itself.
        option: whether it begins with hyphens.
        takes: whether something follows the option.
        choices: words it may be, where there are only so many.
        dest: the name of it in the program.
    """

    name: str
    help: str
    option: bool
    takes: bool
    choices: tuple[str, ...]
    dest: str

    @property
    def of_folders(self) -> bool:
        """Whether a folder is wanted."""
        return bool(FOLDERS & {self.name, self.name.partition(" ")[2], self.dest})

    @property
    def of_files(self) -> bool:
        """Whether a file is wanted."""
        return bool(FILES & {self.name, self.name.partition(" ")[2]})


def arguments_of(parser: argparse.ArgumentParser) -> Iterator[Argument]:
    """The arguments of a parser, in their order; its subjects, where it has some, are no argument.

    argparse has no public way to ask for them.
    """
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            continue
        takes = action.nargs != 0
        shown = action.metavar or (action.dest.upper() if action.option_strings else action.dest)
        shown = shown if isinstance(shown, str) else " ".join(shown)
        option = action.option_strings[-1] if action.option_strings else ""
        name = f"{option} {shown}" if option and takes else option or shown
        choices = tuple(map(str, action.choices)) if action.choices else ()
        said = action.help if action.help and action.help != argparse.SUPPRESS else ""
        yield Argument(name, said, bool(option), takes, choices, action.dest)


def subjects_of(parser: argparse.ArgumentParser) -> Mapping[str, argparse.ArgumentParser]:
    """The parsers of a command's subjects by name; empty where it has none."""
    for action in parser._actions:
        if isinstance(action, argparse._SubParsersAction):
            return dict(action.choices)
    return {}


class HelpLines(argparse.HelpFormatter):
    """Help as wide as the terminal, asked for without what the library imports to ask it."""

    def __init__(self, prog: str) -> None:
        super().__init__(prog, width=_columns() - 2)


def _columns() -> int:
    told = os.environ.get("COLUMNS", "")
    if told.isdecimal() and int(told[:6]) > 0:
        return int(told[:6])
    try:
        return os.get_terminal_size().columns or USUAL_COLUMNS
    except OSError:  # no terminal is there
        return USUAL_COLUMNS


def module_of(command: str) -> ModuleType:
    """The module of a command; a hyphen in its name is an underscore in the module's."""
    return import_module(f"benchround.commands.{command.replace('-', '_')}")


def parser_of(command: str, module: ModuleType) -> argparse.ArgumentParser:
    """The parser of a command."""
    parser = argparse.ArgumentParser(
        prog=f"benchround {command}",
        description=module.HELP,
        epilog=f"example: {module.EXAMPLE}",
        formatter_class=HelpLines,
    )
    module.arguments(parser)
    return parser


def parse(parser: argparse.ArgumentParser, words: Sequence[str]) -> argparse.Namespace:
    """The arguments; figures may stand before, between or behind options."""
    if any(action.nargs == "*" for action in parser._actions if not action.option_strings):
        return parser.parse_intermixed_args(words)
    return parser.parse_args(words)


def examples_of(module: ModuleType) -> tuple[str, ...]:
    """The examples of a command, the one its help ends with first."""
    more: tuple[str, ...] = getattr(module, "MORE_EXAMPLES", ())
    return (module.EXAMPLE, *more)
