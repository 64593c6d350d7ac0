"""The signs pictures are made of: line and block signs, those a bare console has, plain ASCII."""

from __future__ import annotations

from benchround.core.frozen import dataclass


@dataclass(frozen=True, slots=True)
class Glyphs:
    """One set of signs, each one cell wide unless it says otherwise.

    Attributes:
        name: what the set is called.
        ascii_only: whether words from elsewhere are spelled in ASCII too.
        ellipsis: ends what was cut; one or three cells.
        rule, upright, tick: axes.
        now: the present day or hour, running through a picture.
        pointer: the same on an axis.
        before, after: what goes on beyond the left or right edge.
        done, ahead: what was recorded, and what is only expected.
        flower, flower_ahead: days in flower, recorded and expected.
        crop, crop_ahead: days of picking, recorded and expected.
        levels: rising heights, from lowest to full.
        over: more than there is room for.
        bar: parts of a cell filled from the left, from least to full.
        gap: the rest of a bar.
        limit: a line not to be crossed.
        link: between two points of a curve.
        point: something counted.
        curve: a curve that was reckoned.
        band: somewhere in here.
    """

    name: str
    ascii_only: bool
    ellipsis: str
    rule: str
    upright: str
    tick: str
    now: str
    pointer: str
    before: str
    after: str
    done: str
    ahead: str
    flower: str
    flower_ahead: str
    crop: str
    crop_ahead: str
    levels: tuple[str, ...]
    over: str
    bar: tuple[str, ...]
    gap: str
    limit: str
    link: str
    point: str
    curve: str
    band: str


UNICODE = Glyphs(
    name="unicode",
    ascii_only=False,
    ellipsis="…",
    rule="─",
    upright="│",
    tick="┬",
    now="│",
    pointer="▼",
    before="◂",
    after="▸",
    done="━",
    ahead="┄",
    flower="█",
    flower_ahead="▒",
    crop="▓",
    crop_ahead="░",
    levels=tuple("▁▂▃▄▅▆▇█"),
    over="!",
    bar=tuple("▏▎▍▌▋▊▉█"),
    gap="·",
    limit="┄",
    link="·",
    point="●",
    curve="+",
    band="░",
)

CONSOLE = Glyphs(
    name="console",
    ascii_only=False,
    ellipsis="...",
    rule="─",
    upright="│",
    tick="┬",
    now="│",
    pointer="v",
    before="<",
    after=">",
    done="═",
    ahead="-",
    flower="█",
    flower_ahead="▒",
    crop="▓",
    crop_ahead="░",
    levels=tuple("░▒▓█"),
    over="!",
    bar=tuple("▌█"),
    gap="·",
    limit="-",
    link="·",
    point="■",
    curve="+",
    band="░",
)
"""Only signs of code page 437, which the 256 letters of a console without windows are."""

ASCII = Glyphs(
    name="ascii",
    ascii_only=True,
    ellipsis="...",
    rule="-",
    upright="|",
    tick="+",
    now="|",
    pointer="v",
    before="<",
    after=">",
    done="=",
    ahead="-",
    flower="#",
    flower_ahead=":",
    crop="%",
    crop_ahead=".",
    levels=tuple("123456789"),
    over="!",
    bar=("#",),
    gap=".",
    limit="-",
    link=".",
    point="O",
    curve="+",
    band=":",
)
