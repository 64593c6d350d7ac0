"""The short name a computer signs its records and its files with."""

from __future__ import annotations

import re

from benchround.core.errors import InputError

LONGEST_MACHINE = 32
_ALLOWED = re.compile(r"[a-z0-9][a-z0-9-]*")


def require_machine(machine: str) -> str:
    """Return a computer's short name if it can stand in a file name on every system.

    Raises:
        InputError: it is empty, too long, or not small letters, digits and hyphens.
    """
    if len(machine) <= LONGEST_MACHINE and _ALLOWED.fullmatch(machine):
        return machine
    raise InputError(
        f"{machine!r:.60} cannot be the short name of this computer; use up to"
        f" {LONGEST_MACHINE} small letters, digits and hyphens"
    )


def short_name(host: str) -> str:
    """A computer's short name made from its full one: `Potting-Shed.home` -> `potting-shed`."""
    plain = re.sub(r"[^a-z0-9]+", "-", host.partition(".")[0].lower())
    return plain[:LONGEST_MACHINE].strip("-") or "computer"
