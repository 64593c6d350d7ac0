"""The packets there are: a list on the front, the one under the cursor in full on the back."""

from __future__ import annotations

from collections.abc import Sequence

from benchround.core.crop.search import folded
from benchround.core.dates import say_day
from benchround.core.errors import BenchroundError
from benchround.core.seed.packet import Packet
from benchround.screens.card import CardScreen
from benchround.screens.keys import PACKETS, bindings
from benchround.screens.packet_lines import packet_head, packet_line, packet_page
from benchround.screens.page import Sheaf
from benchround.screens.text import Line, Role, fit, line, paragraph
from benchround.screens.widgets.pick_list import Row
from benchround.screens.widgets.told import Told

EMPTY = (
    "No packet on the books. Press {} to put the first one there: then sowing knows its year, what "
    "is left in it and how it came up."
)


class PacketsScreen(CardScreen, inherit_bindings=False):
    """Every packet, by crop and variety, the freshest first.

    Args:
        about: the packet to stand on; empty: the first.
    """

    CSS_PATH = ["page.tcss", "card.tcss", "packets.tcss"]  # noqa: RUF012 - as Textual has it
    BINDINGS = bindings(PACKETS)
    KEYS_OF = PACKETS
    OF_ROWS = frozenset(("change-packet", "withdraw", "sow-packet", "turn"))

    def __init__(self, about: str = "") -> None:
        super().__init__()
        self._begin_on = about

    @property
    def foot_idle(self) -> frozenset[str]:
        """Nothing is sown from a packet that is used up."""
        packet = self.desk.season.packets.get(self.picks.picked)
        empty = packet is not None and packet.left == 0
        return super().foot_idle | (frozenset(("sow-packet",)) if empty else set())

    def on_mount(self) -> None:
        """Stand on the packet asked for."""
        self.write_card(self._begin_on)

    def packets(self) -> Sequence[Packet]:
        """The packets in their order."""
        season = self.desk.season

        def order(packet: Packet) -> tuple[str, str, int, str]:
            crop = season.crop(packet.crop).name
            return folded(crop), folded(packet.variety), -(packet.year or 0), packet.id

        return sorted(season.packets.values(), key=order)

    @property
    def packet(self) -> Packet:
        """The packet under the cursor.

        Raises:
            BenchroundError: there is none.
        """
        packet = self.desk.season.packets.get(self.picks.picked)
        if packet is None:
            raise BenchroundError("There is no packet here: n puts one on the books.")
        return packet

    def head_lines(self, width: int) -> Sequence[Line]:
        """How many there are, and the words over the columns."""
        season, today = self.desk.season, self.desk.today
        number = len(season.packets)
        if not number:
            return paragraph(EMPTY.format(self.ring.named("new-packet")), width, Role.STRONG)
        empty = sum(1 for packet in season.packets.values() if packet.left == 0)
        used = f", {empty} used up" if empty else ""
        words = f"{number} packet{'s' if number != 1 else ''}{used}, {say_day(today)}"
        title = line((fit(words, width), Role.HEADING))
        if not self.picks.display:
            return [title]
        columns = packet_head(max(0, self.picks.size.width - 2))
        return [title, line((f"  {columns}", Role.QUIET))]

    def action_turn(self) -> None:
        """Turn the card over; the words over the columns belong to the list."""
        super().action_turn()
        self.call_after_refresh(self._rewrite_head)

    def rows(self) -> Sequence[Row]:
        """A row for each packet."""
        return [self._row(packet) for packet in self.packets()]

    def _row(self, packet: Packet) -> Row:
        season, today = self.desk.season, self.desk.today
        return Row(lambda width: packet_line(packet, season, today, width), packet.id)

    def page_lines(self, width: int) -> Sequence[Line]:
        """The packet under the cursor in full."""
        packet = self.desk.season.packets.get(self.picks.picked)
        season, today = self.desk.season, self.desk.today
        return list(packet_page(packet, season, today, width)) if packet else ()

    def on_resize(self) -> None:
        """The columns' words follow the list's width."""
        self.call_after_refresh(self._rewrite_head)

    def _rewrite_head(self) -> None:
        self.query_one("#head", Told).rewrite(layout=True)

    def on_pick_list_moved(self) -> None:
        """The page tells of the packet the cursor went to."""
        super().on_pick_list_moved()
        sheaf = self.query_one(Sheaf)
        sheaf.top = 0
        sheaf.rewrite()

    def action_change(self) -> None:
        """Open the packet's sheet."""
        self.require_open(self.desk.today)
        self.bench.open("packet", self.packet.id)

    def action_add(self) -> None:
        """Open an empty packet sheet."""
        self.require_open(self.desk.today)
        self.bench.open("packet", "")

    def action_sow(self) -> None:
        """Open a sowing sheet for the packet."""
        packet, day = self.packet, self.bench.round_screen.day
        self.require_open(day)
        if packet.left == 0:
            raise BenchroundError(f"Packet {packet.id} is used up: sow from another one.")
        self.bench.open("sow like", day, packet.crop, packet.variety, packet.id)

    def action_crop(self) -> None:
        """Open the crop's card."""
        self.bench.open("crop", self.packet.crop)

    def action_withdraw(self) -> None:
        """Withdraw what was last said of the packet, when asked for a second time."""
        packet = self.packet
        self.require_open(self.desk.today)
        record = next(r for r in self.desk.season.packet_records if r.about == packet.id)
        said = f"what was said of packet {packet.id} on {say_day(record.day)}"
        key = self.ring.named("withdraw")
        question = f"Withdraw {said}? What was said before it counts again. Press {key} again."
        if not self.confirmed(record.id, question):
            return
        said = self.bench.doings.withdraw((record.id,), f"packet {packet.id}")
        self.write_card()
        self.say(said)
