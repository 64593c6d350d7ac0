"""The shell's door: `benchround` opens the screens, `benchround COMMAND` does one thing.

Exit codes: 0 fine, 1 failure, 2 wrong usage, 3 the season is held by another program.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from importlib import import_module

from benchround import __version__
from benchround.core.errors import BenchroundError, SeasonBusyError

COMMANDS = ("today", "reckon", "weather")
"""Names of the commands; each is a module of `benchround.commands`, imported when it is used."""


def main(argv: Sequence[str] | None = None) -> int:
    """Run the program; the exit code is returned."""
    words = list(sys.argv[1:] if argv is None else argv)
    try:
        if words and words[0] in COMMANDS:
            return _command(words[0], words[1:])
        return _screens(words)
    except SeasonBusyError as error:
        return _refuse(error, 3)
    except BenchroundError as error:
        return _refuse(error, 1)
    except BrokenPipeError:
        sys.stderr.close()
        return 1


def _refuse(error: BenchroundError, code: int) -> int:
    sys.stderr.write(f"benchround: {error}\n")
    return code


def _command(name: str, words: list[str]) -> int:
    module = import_module(f"benchround.commands.{name}")
    parser = argparse.ArgumentParser(
        prog=f"benchround {name}",
        description=module.HELP,
        epilog=f"example: {module.EXAMPLE}",
    )
    module.arguments(parser)
    code: int = module.run(parser.parse_args(words))
    return code


def _screens(words: list[str]) -> int:
    parser = argparse.ArgumentParser(
        prog="benchround",
        description="The morning round for plants raised from seed. Commands: "
        + ", ".join(COMMANDS)
        + ". 'benchround COMMAND --help' tells more.",
        epilog="example: benchround --sample",
    )
    parser.add_argument("season", nargs="?", default="", help="season folder")
    parser.add_argument(
        "--sample", action="store_true", help="open a private copy of the sample season"
    )
    parser.add_argument("--version", action="version", version=f"benchround {__version__}")
    given = parser.parse_args(words)
    from benchround.opening import open_screens

    return open_screens(given.season, sample=given.sample)


if __name__ == "__main__":
    sys.exit(main())
