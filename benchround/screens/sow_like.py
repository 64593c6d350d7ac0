"""The sowing sheet with crop, variety and packet filled in already."""

from __future__ import annotations

from datetime import date

from benchround.screens.keys import SOW, bindings
from benchround.screens.sow import SowScreen


class SowLikeSheet(SowScreen, inherit_bindings=False):
    """A new batch of a crop that is named already. All of it can be changed.

    Args:
        day: the day looked at in the round.
        crop: the crop's key.
        variety: the variety, empty for none.
        packet: the packet, empty for none.
    """

    BINDINGS = bindings(SOW)

    def __init__(self, day: date, crop: str, variety: str = "", packet: str = "") -> None:
        super().__init__(day)
        self._like = {"variety": variety, "packet": packet}
        self._crop_key = crop

    @property
    def kept_as(self) -> str:
        """One sheet for each crop and packet."""
        return f"sow {self._crop_key} {self._like['variety']} {self._like['packet']}"

    def on_mount(self) -> None:
        """Fill in what is known, unless something was typed before."""
        if self.kept_as not in self.bench.half_filled:
            self._fill()
        super().on_mount()

    def action_renew(self) -> None:
        """Begin anew with the same crop."""
        super().action_renew()
        self._fill()
        self._tell()

    def _fill(self) -> None:
        name = self.desk.season.crop(self._crop_key).name
        crop = self.form.field("crop")
        crop.put(name)
        keys = [choice.value for choice in crop.choices]
        if self._crop_key not in keys:
            crop.reset()
            return
        crop.picked = keys.index(self._crop_key)
        for field, text in self._like.items():
            if text and (field != "packet" or self._has_seed(text)):
                self.form.field(field).put(text)
        self.form.go("wanted")

    def _has_seed(self, packet: str) -> bool:
        known = self.desk.season.packets.get(packet)
        return known is not None and known.left != 0
