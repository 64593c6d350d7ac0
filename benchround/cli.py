"""The shell's door: `benchround` opens the screens, `benchround COMMAND` does one thing.

Exit codes: 0 fine, 1 failure, 2 wrong usage, 3 the season is held by another program, 130 stopped
with ctrl+c.
"""

from __future__ import annotations

import io
import os
import sys
from collections.abc import Sequence

from benchround import __version__
from benchround.core.errors import (
    BenchroundError,
    InputError,
    SeasonBusyError,
    StoppedError,
    UnknownNameError,
)
from benchround.core.visible import steering, visible
from benchround.shell.starting import collect_less
from benchround.shell.terminal import require_terminal

COMMANDS = (
    "today",
    "reckon",
    "weather",
    "labels",
    "paper",
    "calendar",
    "tables",
    "report",
    "serve",
    "new",
    "sow",
    "diary",
    "note",
    "tick",
    "put-off",
    "undo",
    "records",
    "place",
    "settings",
    "crops",
    "keys",
    "keep",
    "restore",
    "merge",
    "close-season",
    "completion",
    "help",
)
"""Names of the commands; each is a module of `benchround.commands`, imported when it is used."""
SAMPLE = "--sample"
STOPPED = 130
"""The exit code after ctrl+c: 128 and the number of the signal, as shells have it."""
BROKEN_OFF = (
    "Stopped. An action is written whole or not at all: 'benchround records --newest 5' shows "
    "whether the last one was."
)


def main(argv: Sequence[str] | None = None) -> int:
    """Run the program; the exit code is returned."""
    words = list(sys.argv[1:] if argv is None else argv)
    collect_less()
    if isinstance(sys.stdout, io.TextIOWrapper):
        sys.stdout.reconfigure(errors="backslashreplace")  # a terminal may lack letters of a name
    wrong = _not_typed(words) or _mistyped(words)
    if wrong is not None:
        return _refuse(wrong, 2)
    try:
        if words and words[0] in COMMANDS:
            return _command(words[0], words[1:])
        return _screens(words)
    except SeasonBusyError as error:
        return _refuse(error, 3)
    except StoppedError as error:
        return _refuse(error, STOPPED)
    except KeyboardInterrupt:
        return _refuse(BenchroundError(BROKEN_OFF), STOPPED)
    except BenchroundError as error:
        return _refuse(error, 1)
    except BrokenPipeError:
        sys.stderr.close()
        return 1


def _refuse(error: BenchroundError, code: int) -> int:
    sys.stderr.write(f"benchround: {visible(str(error), lines=True)}\n")
    return code


def _not_typed(words: Sequence[str]) -> BenchroundError | None:
    """What to say where a word holds a control character; only a text may have line ends."""
    for word in words:
        if steering(word, lines=True) is not None:
            return InputError(
                f"'{visible(word[:60])}' holds a character that cannot be typed: take it out."
            )
    return None


def _mistyped(words: Sequence[str]) -> BenchroundError | None:
    """What to say where the first word looks like a command that there is not."""
    if not words or words[0] in COMMANDS or words[0].startswith("-") or os.path.exists(words[0]):
        return None
    from benchround.core.near_names import near_names

    near = near_names(words[0], COMMANDS)
    if not near:
        return None
    found = ", ".join(near)
    return UnknownNameError(f"There is no command or season '{words[0][:40]}'; near it: {found}.")


def _command(name: str, words: list[str]) -> int:
    from benchround.shell.parsers import module_of, parse, parser_of

    module = module_of(name)
    code: int = module.run(parse(parser_of(name, module), words))
    return code


def _screens(words: list[str]) -> int:
    named, sample = _season_meant(words)
    require_terminal()
    from benchround.opening import open_screens

    return open_screens(named, sample=sample)


def _season_meant(words: list[str]) -> tuple[str, bool]:
    """The season folder named, and whether it is the sample; the usual words need no parser."""
    if words == [SAMPLE]:
        return "", True
    if not words or (len(words) == 1 and not words[0].startswith("-")):
        return "".join(words), False
    import argparse

    parser = argparse.ArgumentParser(
        prog="benchround",
        description="The morning round for plants raised from seed. Commands: "
        + ", ".join(COMMANDS)
        + ". 'benchround help' says what each does, 'benchround COMMAND --help' how.",
        epilog="example: benchround --sample ~/sample",
    )
    parser.add_argument("season", nargs="?", default="", help="season folder")
    parser.add_argument(
        SAMPLE,
        action="store_true",
        help="open a copy of the sample season; it is kept where a folder is named",
    )
    parser.add_argument("--version", action="version", version=f"benchround {__version__}")
    given = parser.parse_args(words)
    return given.season, given.sample


if __name__ == "__main__":
    sys.exit(main())
