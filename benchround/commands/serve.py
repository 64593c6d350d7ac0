"""`benchround serve`: the screens in a browser of this computer."""

from __future__ import annotations

import argparse

from benchround.core.errors import InputError
from benchround.serving.own_address import address, is_loopback
from benchround.serving.server import serve
from benchround.shell.saying import remark
from benchround.whereabouts import find_season

HELP = "open the screens in a browser, for this computer only unless told otherwise"
EXAMPLE = "benchround serve --sample"
DETAILS = (
    "Needs the extra 'serve'. Without --host only browsers of this computer reach it. With another "
    "host everybody who can reach that address can read the season and record in it: there is no "
    "password, and what is sent is not encrypted. The first browser that opens the season writes; "
    "others can only read until it is closed, and say so."
)
HOST, PORT = "127.0.0.1", 8000
OPEN_TO_OTHERS = (
    "Warning: everybody who can reach {host} can read this season and record in it. There is no "
    "password, and nothing is encrypted. Ctrl+c ends it."
)


def arguments(parser: argparse.ArgumentParser) -> None:
    """The command's arguments."""
    parser.add_argument("season", nargs="?", default="", help="season folder")
    parser.add_argument("--sample", action="store_true", help="a private copy of the sample season")
    parser.add_argument(
        "--host", default=HOST, help=f"where to listen, {HOST} (this computer only) if not said"
    )
    parser.add_argument("--port", default=str(PORT), help=f"the port, {PORT} if not said")
    parser.add_argument("--url", default="", help="the address browsers open, if it is another")


def run(given: argparse.Namespace) -> int:
    """Serve until stopped; what others could do with it is said first."""
    port = _port(given.port)
    url = address(given.host, port, given.url)
    if not is_loopback(given.host):
        remark([OPEN_TO_OTHERS.format(host=given.host)])
    serve(_words(given), given.host, port, url)
    return 0


def _words(given: argparse.Namespace) -> tuple[str, ...]:
    if given.sample:
        return ("--sample",)
    found = find_season(given.season)
    if found is None:
        raise InputError("There is no season yet: begin one with 'benchround new FOLDER'.")
    return (str(found.resolve()),)


def _port(text: str) -> int:
    if not (text.isascii() and text.isdigit()) or not 1 <= int(text[:6]) <= 65535:
        raise InputError(f"'{text[:20]}' is no port: give a number from 1 to 65535.")
    return int(text)
