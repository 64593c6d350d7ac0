"""What the pictures in the pages of the guide show: which keys lead there, or which command."""

from __future__ import annotations

from dataclasses import dataclass

from benchround.core.task import Family


@dataclass(frozen=True)
class Screen:
    """A screen of the sample season.

    Attributes:
        page: the page it stands on.
        keys: pressed one after another; a word in quotes is typed letter by letter.
        stand: the task the cursor is put on first.
        sheet: whether `sowings.csv` lies in the folder the program stands in.
    """

    page: str
    keys: str = ""
    stand: tuple[Family, str] | None = None
    sheet: bool = False


@dataclass(frozen=True)
class FirstScreen:
    """The screen of whoever has no season yet."""

    page: str
    keys: str = ""


@dataclass(frozen=True)
class Printed:
    """What a command prints in a copy of the sample season, beside a whole one on a laptop.

    Attributes:
        page: the page it stands on.
        command: as it is typed in the season's folder.
        lines: the most lines shown.
        lacks: how many of its newest records the copy has not.
    """

    page: str
    command: str
    lines: int = 20
    lacks: int = 0


Picture = Screen | FirstScreen | Printed

SHEET = """crop,variety,sown,seeds,cells,place,container
cosmos,Night Sky,12 apr,40,40,Bench 1,40-cell tray
nosuchcrop,,,,,,
leek,Long,2026-08-01,60,,,
"""
"""The sheet of sowings that is read in: a sowing, a fault and a plan."""

PICTURES: dict[str, Picture] = {
    "readme": Screen("../README.md", "down"),
    "round": Screen("guide/morning.md", "down"),
    "why": Screen("guide/morning.md", "w", (Family.UNCOVER, "b06")),
    "sow": Screen("guide/sow.md", "s 'cosm' tab"),
    "count": Screen("guide/look.md", "enter '37'", (Family.LOOK, "b06")),
    "germination": Screen("guide/look.md", "slash 'b06' enter tab"),
    "prick out": Screen("guide/prick_out.md", "enter", (Family.PRICK_OUT, "b25")),
    "water": Screen("guide/water.md", "g d"),
    "away": Screen("guide/water.md", "g d a right"),
    "lids": Screen("guide/lids.md", "g l"),
    "weather": Screen("guide/frost.md", "g w down*4"),
    "held": Screen("guide/frost.md", "", (Family.PLANT_OUT, "b05")),
    "plant out": Screen("guide/plant_out.md", "enter", (Family.PLANT_OUT, "b15")),
    "save seed": Screen("guide/seed.md", "enter", (Family.SAVE_SEED, "b12")),
    "packets": Screen("guide/seed.md", "g p down"),
    "put off": Screen("guide/mistakes.md", "p 'mon' tab 'no' down", (Family.PRICK_OUT, "b25")),
    "withdraw": Screen("guide/mistakes.md", "slash 'b06' enter x"),
    "plan": Screen("guide/ahead.md", "s 'cosm' tab*7 ctrl+u '+14' tab"),
    "year": Screen("guide/ahead.md", "g y home down*2"),
    "sheet in": Screen("guide/many.md", "g i o 'sowings.csv' enter", sheet=True),
    "diary": Screen("guide/many.md", "g n '12 apr cosmos Night 40 seeds bench 1'"),
    "review": Screen("guide/look_back.md", "g v"),
    "first run": FirstScreen("guide/set_up.md", "'52.5' tab tab 'Bench 1'"),
    "settings": Screen("guide/set_up.md", "g t down*2"),
    "crop": Screen("guide/crops.md", "g c 'foxgl' enter down*2"),
    "go to": Screen("guide/find.md", "g"),
    "find": Screen("guide/find.md", "slash 'lett'"),
    "labels": Printed("guide/paper.md", "benchround labels . --on 2026-05-27", 10),
    "paper": Printed("guide/paper.md", "benchround paper print . --on 2026-05-27", 16),
    "merge": Printed("guide/keep.md", "benchround merge . ../laptop-season --preview", lacks=3),
}  # fmt: skip
"""Every picture by its name, which stands in the page as `<!-- picture: NAME -->`."""
