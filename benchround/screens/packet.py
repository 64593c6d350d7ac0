"""The packet sheet: seed bought or saved, as it is put on the books or set right."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import partial

from benchround.core.caution.due import CAUTIONS, Page, setup_cautions
from benchround.core.crop.crop import PlantClass
from benchround.core.crop.search import find_crops
from benchround.core.record import Draft, Figure, Kind
from benchround.core.record_figures import RULES
from benchround.core.seed.age import age_word, germination_words
from benchround.core.seed.packet import Packet
from benchround.core.typed.figures import read_note, read_number, read_whole
from benchround.screens.keys import PACKET, bindings
from benchround.screens.sheet_base import Reading, Sheet, SheetFault
from benchround.screens.text import Line, Role, paragraph
from benchround.screens.widgets.field import Choice, Field, plain_choices

YES, NO = "yes", "no"
STORES = ("sealed in the fridge", "sealed at room temperature", "in paper, dry", "in the shed")
LONGEST_STORE, LONGEST_VARIETY = 200, 80
NAME = re.compile(r"[a-z0-9][a-z0-9-]{0,39}")
NAME_ALLOWED = "small letters, digits and hyphens, 40 at most"
LEAST_PERCENT = 0.1
BEGIN = "The crop is enough. Everything else helps to reckon how much to sow, and to warn in time."


class PacketSheet(Sheet, inherit_bindings=False):
    """One packet.

    Args:
        about: its id; empty: a new one.
    """

    BINDINGS = bindings(PACKET)
    KEYS_OF = PACKET

    def __init__(self, about: str) -> None:
        super().__init__()
        self.about = about

    @property
    def kept_as(self) -> str:
        """One sheet for each packet."""
        return f"packet {self.about}"

    @property
    def known(self) -> Packet | None:
        """The packet as it is on the books."""
        return self.desk.season.packets.get(self.about)

    def make_fields(self) -> Sequence[Field]:
        """What a packet says; those of a packet that is known stand there already."""
        known = self.known
        season = self.desk.season
        names = [n for n in self.desk.library.names() if n.plant_class is not PlantClass.UNKNOWN]
        choices = {n.key: Choice(n.key, n.name, f"{n.latin}, {n.plant_class}") for n in names}

        def find(letters: str) -> Sequence[Choice]:
            return [choices[name.key] for name in find_crops(letters, names)]

        def said(value: object) -> str:
            return "" if value is None else f"{value:g}" if isinstance(value, float) else str(value)

        yes_no = plain_choices((NO, YES))
        saved = YES if known and known.saved else NO
        treated = YES if known and known.treated else NO
        share = known.germination if known else None
        fields = [
            Field(
                "crop",
                "crop",
                season.crop(known.crop).name if known else "",
                find,
                only=True,
                hint="type its first letters",
            ),
            Field("variety", "variety", known.variety if known else ""),
            Field(
                "year",
                "year",
                said(known.year) if known else str(self.desk.today.year),
                figure=True,
            ),
            Field(
                "seeds",
                "seeds",
                said(known.seeds) if known else "",
                hint="when it came",
                figure=True,
            ),
            Field("grams", "or weight", said(known.grams) if known else "", hint="g", figure=True),
            Field(
                "germination",
                "germination",
                said(share and round(share * 100, 1)),
                hint="%",
                figure=True,
            ),
            Field("tested", "seeds tested", said(known.tested) if known else "", figure=True),
            Field("saved", "your own seed", saved, yes_no, only=True),
            Field("treated", "treated", treated, yes_no, only=True),
            Field("storage", "kept", known.storage if known else "", plain_choices(STORES)),
            Field("name", "packet name", self.about or self._free_name()),
            Field("note", "note"),
        ]
        if self.about:
            fields = [field for field in fields if field.id != "name"]
        return fields

    def retell(self) -> None:
        """Say how a crop is named while none is."""
        crop = self.form.field("crop")
        crop.hint = "" if crop.choice else "type its first letters"

    def on_mount(self) -> None:
        """Begin behind the crop where that is known."""
        super().on_mount()
        if self.about:
            self.form.go("variety")

    def _free_name(self) -> str:
        """The next packet name: the letter in use and the next number."""
        names = self.desk.season.packets
        numbers = [int(name[1:]) for name in names if name[:1] == "p" and name[1:].isdecimal()]
        return f"p{max(numbers, default=0) + 1:02d}"

    @property
    def crop_key(self) -> str:
        """The crop chosen; empty while none is."""
        field = self.form.field("crop")
        if not field.touched and self.known:
            return self.known.crop
        return field.choice.value if field.choice else ""

    def title_lines(self, width: int) -> Sequence[Line]:
        """Which packet."""
        words = f"Packet {self.about}" if self.about else "A new packet"
        return paragraph(words, width, Role.HEADING)

    def note_lines(self, width: int) -> Sequence[Line]:
        """What its age and test mean, as it stands, and what treated seed asks for."""
        if not self.crop_key:
            return paragraph(BEGIN, width, Role.QUIET)
        try:
            packet = self._as_it_stands()
        except SheetFault:
            return ()
        crop, today = self.desk.season.crop(self.crop_key), self.desk.today
        age = age_word(packet, crop, today)
        words = [*((age,) if age else ()), *germination_words(packet)]
        lines = [
            row
            for word in words
            for row in paragraph(word.text, width, Role.LATE if word.urgent else Role.INK)
        ]
        if packet.treated:
            for name in setup_cautions(Page.TREATED_PACKET):
                lines += paragraph(CAUTIONS[name].full, width, Role.CAUTION)
        return lines or paragraph("Nothing to be warned of.", width, Role.QUIET)

    def _as_it_stands(self) -> Packet:
        figures = self._read(self.form.values())
        share, tested = figures.get("germination"), figures.get("tested")
        year = figures.get("year")
        return Packet(
            id=self.about or self.form.field("name").value,
            crop=self.crop_key,
            variety="",
            year=year if isinstance(year, int) else None,
            germination=share if isinstance(share, float) and share > 0 else None,
            tested=tested if isinstance(tested, int) and tested > 0 else None,
            treated=figures.get("treated") is True,
            storage=str(figures.get("storage", "")),
        )

    def save(self) -> str:
        """Record the packet."""
        if not self.crop_key:
            raise SheetFault({"crop": "type the first letters of the crop"})
        values = self.form.values()
        name = self.about or values["name"]
        if not NAME.fullmatch(name):
            raise SheetFault({"name": f"use {NAME_ALLOWED}"})
        if not self.about and name in self.desk.season.packets:
            raise SheetFault({"name": "there is a packet of this name: take another"})
        figures = {"crop": self.crop_key, **self._read(values)}
        note = read_note(values["note"])
        draft = Draft(Kind.PACKET, name, figures, note)
        crop = self.desk.season.crop(self.crop_key).name
        return self.bench.doings.record((draft,), self.desk.today, words=f"packet {name}, {crop}")

    def _read(self, values: Mapping[str, str]) -> dict[str, Figure]:
        """The figures typed, those that say nothing left out.

        Raises:
            SheetFault: what cannot be understood, by field.
        """
        reading = Reading()
        found: dict[str, Figure | None] = {
            "variety": reading.read(
                "variety", lambda: read_note(values["variety"], LONGEST_VARIETY), ""
            ),
            "storage": reading.read(
                "storage", lambda: read_note(values["storage"], LONGEST_STORE), ""
            ),
        }
        year = RULES["year"]
        found["year"] = reading.read(
            "year", lambda: read_whole(values["year"], int(year.high), int(year.low)), None
        )
        for name in ("seeds", "tested"):
            found[name] = reading.read(name, partial(read_whole, values[name]), None)
        most = RULES["grams"].high
        found["grams"] = reading.read(
            "grams", lambda: read_number(values["grams"], 0, most, "g"), None
        )
        share = reading.read("germination", lambda: _share(values["germination"]), None)
        found["germination"] = share
        reading.read("note", lambda: read_note(values["note"]), "")
        reading.finish()
        found["saved"] = values["saved"] == YES or None
        found["treated"] = values["treated"] == YES or None
        return {name: value for name, value in found.items() if value is not None and value != ""}


def _share(text: str) -> float | None:
    """A germination share typed per cent, with or without the sign."""
    percent = read_number(text.strip().rstrip("%"), LEAST_PERCENT, 100, "%")
    return None if percent is None else round(percent / 100, 4)
