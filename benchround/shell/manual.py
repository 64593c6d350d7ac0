"""The manual page of a command, drawn from its parser and its module."""

from __future__ import annotations

import argparse
import textwrap
from collections.abc import Iterable, Iterator
from types import ModuleType

from benchround.shell.parsers import Argument, arguments_of, examples_of, subjects_of

WIDTH = 78
EXIT_CODES = (
    ("0", "it was done"),
    ("1", "it could not be done; a sentence on standard error says why"),
    ("2", "it was not understood; nothing was tried"),
    ("3", "another program holds the season"),
)


def manual_page(
    command: str, module: ModuleType, parser: argparse.ArgumentParser, subject: str = ""
) -> list[str]:
    """The page of a command, or of one of its subjects, as lines."""
    name = f"benchround {command}{f' {subject}' if subject else ''}"
    shown = subjects_of(parser)[subject] if subject else parser
    about = shown.description or module.HELP
    details: str = "" if subject else getattr(module, "DETAILS", "")
    found = list(arguments_of(shown))
    lines = [*_part("NAME", [f"{name} - {about}"]), *_part("SYNOPSIS", _usage(shown))]
    if details:
        lines += _part("DESCRIPTION", _wrapped(details))
    listed: tuple[str, tuple[tuple[str, str], ...]] | None = getattr(module, "LISTED", None)
    if listed and not subject:
        lines += _part(listed[0], _listed(listed[1]))
    subjects = subjects_of(shown)
    if subjects:
        pairs = [(word, sub.description or "") for word, sub in subjects.items()]
        lines += _part("SUBJECTS", _listed(pairs))
    lines += _part("ARGUMENTS", _told(argument for argument in found if not argument.option))
    lines += _part("OPTIONS", _told(argument for argument in found if argument.option))
    lines += _part("EXAMPLES", _examples(shown, module, subject))
    return [*lines, *_part("EXIT CODES", _listed(EXIT_CODES))][:-1]


def _examples(shown: argparse.ArgumentParser, module: ModuleType, subject: str) -> Iterable[str]:
    if subject:
        return [(shown.epilog or "").removeprefix("example: ")]
    return examples_of(module)


def _part(title: str, lines: Iterable[str]) -> list[str]:
    """A part of the page; nothing where it would be empty."""
    body = [f"    {line}" for line in lines]
    return [title, *body, ""] if body else []


def _usage(parser: argparse.ArgumentParser) -> list[str]:
    words = " ".join(parser.format_usage().removeprefix("usage: ").split())
    return textwrap.wrap(words, WIDTH - 4, subsequent_indent="    ", break_on_hyphens=False)


def _wrapped(text: str) -> list[str]:
    return textwrap.wrap(text, WIDTH - 4, break_on_hyphens=False)


def _told(arguments: Iterable[Argument]) -> list[str]:
    return _listed((argument.name, _help(argument)) for argument in arguments)


def _help(argument: Argument) -> str:
    choices = f" ({', '.join(argument.choices)})" if argument.choices else ""
    return f"{argument.help}{choices}".strip()


def _listed(pairs: Iterable[tuple[str, str]]) -> list[str]:
    return [line for name, text in pairs for line in _entry(name, text)]


def _entry(name: str, text: str) -> Iterator[str]:
    yield name
    for line in textwrap.wrap(text, WIDTH - 8, break_on_hyphens=False):
        yield f"    {line}"
