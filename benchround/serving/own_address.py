"""The address browsers open, written as browsers write it."""

from __future__ import annotations

from contextlib import suppress
from ipaddress import ip_address
from urllib.parse import urlsplit

from benchround.core.errors import InputError

USUAL_PORTS = {"http": 80, "https": 443}
"""Ports browsers leave out of an address."""


def is_loopback(host: str) -> bool:
    """Whether only this computer reaches a host of that name."""
    if host == "localhost":
        return True
    try:
        return ip_address(host.strip("[]")).is_loopback
    except ValueError:
        return False


def is_everywhere(host: str) -> bool:
    """Whether a name stands for all addresses of this computer, which no browser can open."""
    try:
        return ip_address(host.strip("[]")).is_unspecified
    except ValueError:
        return False


def address(host: str, port: int, told: str = "") -> str:
    """The address browsers open.

    Args:
        host: where the server listens.
        port: the port there.
        told: the address as the grower gave it; empty for the host itself.

    Raises:
        InputError: it is no address, or one has to be told and was not.
    """
    if told:
        return _told(told)
    if is_everywhere(host):
        raise InputError(
            f"{host} stands for every address of this computer: say with --url which one browsers "
            "open, such as http://192.168.1.20:8000."
        )
    return f"http://{authority('http', host, port)}"


def _told(told: str) -> str:
    try:
        parts = urlsplit(told.strip())
        host, port = parts.hostname, parts.port
    except ValueError:
        host = None
    if not host or parts.scheme not in USUAL_PORTS:
        raise InputError(f"'{told[:60]}' is no address: write it as http://bench.local:8000.")
    return f"{parts.scheme}://{authority(parts.scheme, host, port)}"


def authority(scheme: str, host: str, port: int | None) -> str:
    """Host and port as browsers send them: small letters, brackets, no usual port."""
    bare = host.strip("[]").lower()
    with suppress(ValueError):  # a name is no number, and stays as it is
        number = ip_address(bare)
        bare = f"[{number.compressed}]" if number.version == 6 else bare
    return bare if port in (None, USUAL_PORTS[scheme]) else f"{bare}:{port}"


def is_same(scheme: str, one: str, other: str) -> bool:
    """Whether two hosts with their ports, as sent, are the same."""
    try:
        parts = urlsplit(f"//{one}")
        return authority(scheme, parts.hostname or "", parts.port) == other
    except ValueError:
        return False
