"""The packet a sowing takes from, and how many seeds of it are wanted."""

from __future__ import annotations

from benchround.core.record import Kind
from benchround.core.seed.needed import SURVIVAL, known_share, seeds_behind, seeds_needed
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
    wanted, packet = view.batch.wanted, packet_for(view)
    known = known_share(view.season, view.crop.key, packet)
    if not wanted or known is None:
        return None, "no number of plants wanted was given"
    answer, fault = seeds_needed(wanted, known.share, seeds_behind(known, packet))
    if answer is None:
        return None, fault
    shares = " x ".join(f"{share:.0%}" for share in (known.share, *SURVIVAL))
    told = f"; {known}" if known.batches or known.of == "packet" else ""
    return answer.seeds, f"{wanted} wanted at {shares}: {answer.seeds} for nine times in ten{told}"
