"""The packet a sowing takes from, and how many seeds of it are wanted."""

from __future__ import annotations

from benchround.core.record import Kind
from benchround.core.seed.needed import needed_for
from benchround.core.seed.packet import Packet
from benchround.rounds.view import BatchView

NAMED_IN = (Kind.SOWN, Kind.CHITTED, Kind.CHILLED, Kind.SOAKED, Kind.PLANNED)
"""Records that may name the packet, the latest step first."""


def packet_for(view: BatchView) -> Packet | None:
    """The packet named for this batch, else the youngest of its crop and variety with seed left."""
    for kind in NAMED_IN:
        record = view.part.last.get(kind)
        if record is not None and record.text("packet"):
            return view.season.packets.get(record.text("packet"))
    variety = view.batch.variety.casefold()
    fitting = [
        packet
        for packet in view.season.packets.values()
        if packet.crop == view.batch.crop
        and packet.variety.casefold() == variety
        and packet.holds(view.crop.seeds_per_g) != 0
    ]
    return max(fitting, key=lambda packet: (packet.year or 0, packet.id), default=None)


def seeds_for(view: BatchView) -> tuple[int | None, str]:
    """Seeds to sow so that enough plants stand ready nine times in ten, and how it was reckoned."""
    wanted, each = view.batch.wanted, view.crop.growing.per_cell
    found = needed_for(view.season, view.crop, wanted, packet_for(view), view.raising, each)
    if found.amount is None:
        return None, found.fault
    told = f"; {found.told}" if found.told else ""
    amount = f"{found.amount.seeds} for nine times in ten"
    return found.amount.seeds, f"{wanted} wanted at {found.shares}: {amount}{told}"
