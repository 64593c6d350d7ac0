"""A web server that opens the screens once for every browser that comes.

The library's own page asks another company's server for a typeface; ours asks nobody. Browsers
send along which page a connection was opened by, so that other pages open in the same browser
cannot reach the season: what comes from anywhere but our own page is refused.
"""

from __future__ import annotations

import os
import shlex
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.parse import urlsplit

from benchround.core.errors import InputError, SeasonError
from benchround.core.extras import install_words
from benchround.serving.own_address import is_same

if TYPE_CHECKING:
    from aiohttp import web

MISSING = (
    f"The screens in a browser need the package textual-serve: {install_words('serve')}. "
    "Or open the screens in a terminal."
)
TEMPLATES = Path(__file__).parent
ALLOWED = (
    "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
    "script-src 'self' 'unsafe-eval'; connect-src 'self' {socket}"
)
"""What the page may load: nothing from other servers."""


def command_line(words: Sequence[str]) -> str:
    """The command that opens the screens, quoted for the shell that starts it."""
    whole = [sys.executable, "-m", "benchround", *words]
    return subprocess.list2cmdline(whole) if os.name == "nt" else shlex.join(whole)


def serve(words: Sequence[str], host: str, port: int, url: str) -> None:
    """Serve the screens until the program is stopped.

    Args:
        words: what `benchround` is started with for every browser.
        host: where to listen.
        port: the port there.
        url: the address browsers open.

    Raises:
        InputError: the package for it is not installed.
        SeasonError: the port cannot be listened on.
    """
    server = make_server(words, host, port, url)
    os.environ.setdefault("COLORTERM", "truecolor")  # browsers show all colours
    try:
        server.serve()
    except OSError as error:
        raise SeasonError(
            f"Port {port} of {host} cannot be used ({error.strerror}): choose another with --port."
        ) from error


def make_server(words: Sequence[str], host: str, port: int, url: str) -> Any:
    """The server, not started yet; arguments as of `serve`.

    Raises:
        InputError: the package for it is not installed.
    """
    try:
        from aiohttp import web
        from textual_serve.server import Server
    except ImportError as error:
        raise InputError(MISSING) from error
    own = urlsplit(url)
    policy = ALLOWED.format(socket=url.replace("http", "ws", 1))

    @web.middleware
    async def own_page_only(request: web.Request, handler: Any) -> web.StreamResponse:
        """Refuse what another page or another name for this computer asks for."""
        from_page = request.headers.get("Origin", url)
        asked = request.headers.get("Host", "")
        if from_page != url or not is_same(own.scheme, asked, own.netloc):
            raise web.HTTPForbidden(text=f"Open {url} itself.")
        response: web.StreamResponse = await handler(request)
        if not response.prepared:
            response.headers["Content-Security-Policy"] = policy
            response.headers["Referrer-Policy"] = "no-referrer"
        return response

    class OwnServer(Server):
        """The library's server with our page, behind the check of where a request comes from."""

        def initialize_logging(self) -> None:
            """Keep to the library's warnings; what is typed is never written down."""

        async def on_startup(self, app: web.Application) -> None:
            """Say where to look."""
            sys.stdout.write(f"The screens are at {self.public_url}; ctrl+c ends it.\n")
            sys.stdout.flush()

        async def _make_app(self) -> web.Application:
            made: web.Application = await super()._make_app()
            made.middlewares.append(own_page_only)
            return made

    server = OwnServer(command_line(words), host, port, "benchround", url, templates_path=TEMPLATES)
    return server
