"""One HTTP question, bounded in time and size, to one host and no other."""

from __future__ import annotations

import http.client
import time
import urllib.error
import urllib.request
from email.message import Message
from typing import IO
from urllib.parse import urlsplit

from benchround import __version__
from benchround.core.errors import InputError
from benchround.core.frozen import dataclass

AGENT = f"benchround/{__version__} (daily outlook, on request)"
LOOPBACK = ("localhost", "127.0.0.1", "::1")
LONGEST_ADDRESS = 2000
CHUNK = 65_536


@dataclass(frozen=True, slots=True)
class Limits:
    """How long an answer may take and how large it may be."""

    seconds: float = 10.0
    most_bytes: int = 1_000_000


class _NoRedirect(urllib.request.HTTPRedirectHandler):
    """Refuses to be sent elsewhere: the grower allowed one address."""

    def redirect_request(
        self,
        req: urllib.request.Request,
        fp: IO[bytes],
        code: int,
        msg: str,
        headers: Message,
        newurl: str,
    ) -> None:
        """Never follow."""
        host = urlsplit(newurl).hostname or "nowhere"
        raise InputError(
            f"The forecast service sends elsewhere, to {host[:60]}: not followed. Look at the "
            "address in the settings."
        )


def require_address(address: str) -> str:
    """What is wrong with an address; empty for https, and for http on this machine."""
    if len(address) > LONGEST_ADDRESS or not address.isascii() or not address.isprintable():
        return "The forecast's address is no plain web address."
    try:
        parts = urlsplit(address)
        host, port = parts.hostname or "", parts.port
    except ValueError:
        return "The forecast's address is no plain web address."
    if not host or parts.username is not None or " " in address or port == 0:
        return "The forecast's address is no plain web address."
    if parts.scheme == "https" or (parts.scheme == "http" and host in LOOPBACK):
        return ""
    return "The forecast's address must begin with https://."


def get(address: str, limits: Limits) -> str:
    """The text an address answers with.

    Raises:
        InputError: it cannot be reached, refuses, sends elsewhere, is cut short or too large.
    """
    host = urlsplit(address).hostname or ""
    handlers: list[urllib.request.BaseHandler] = [_NoRedirect()]
    if host in LOOPBACK:
        handlers.append(urllib.request.ProxyHandler({}))
    opener = urllib.request.build_opener(*handlers)
    asked = urllib.request.Request(
        address, headers={"User-Agent": AGENT, "Accept": "application/json"}
    )
    try:
        with opener.open(asked, timeout=limits.seconds) as answer:
            raw = _body(answer, limits)
    except urllib.error.HTTPError as error:
        error.close()
        raise InputError(f"The forecast service at {host} answered {error.code}.") from error
    except (OSError, http.client.HTTPException, UnicodeError) as error:
        reason = getattr(error, "reason", None) or error
        raise InputError(
            f"The forecast service at {host} cannot be reached: {str(reason)[:100]}."
        ) from error
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as error:
        raise InputError(f"The answer of {host} is no text in UTF-8.") from error


def _body(answer: http.client.HTTPResponse, limits: Limits) -> bytes:
    if answer.status != http.client.OK:
        raise InputError(f"The forecast service answered {answer.status}.")
    announced = answer.length
    ends = time.monotonic() + limits.seconds
    parts: list[bytes] = []
    size = 0
    while True:
        part = answer.read1(CHUNK)
        if not part:
            break
        parts.append(part)
        size += len(part)
        if size > limits.most_bytes:
            raise InputError(
                f"The forecast service sent more than {limits.most_bytes / 1e6:g} MB: refused."
            )
        if time.monotonic() > ends:
            raise InputError(f"The forecast service took longer than {limits.seconds:g} s.")
    if announced is not None and size < announced:
        raise InputError(
            f"The answer was cut short: {size} of {announced} bytes came. Ask again later."
        )
    return b"".join(parts)
