"""Finding typefaces that have the letters of the grower's own language.

A PDF's built-in typeface knows Western European letters only. Others come from the font package of
the `paper` extra, FiraGO (SIL Open Font Licence): Latin, Greek, Cyrillic, Hebrew, Arabic,
Devanagari, Thai and Georgian. What it lacks is looked for in the system's own folders; Chinese,
Japanese, Korean and the other scripts of India come from there alone. Nothing is fetched.
File names of systems other than Debian are from memory.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Sequence
from importlib import import_module
from pathlib import Path

from benchround.core.frozen import dataclass
from benchround.feeds.font_file import is_typeface

FONT_PACKAGE = "pymupdf_fonts"
PACKAGED = {"regular": "figo", "bold": "figbo"}
"""Names of the typefaces in the font package."""

UPRIGHT = (
    ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf"),
    ("NotoSans-Regular.ttf", "NotoSans-Bold.ttf"),
    ("FreeSans.ttf", "FreeSansBold.ttf"),
    ("LiberationSans-Regular.ttf", "LiberationSans-Bold.ttf"),
    ("Arial.ttf", "Arial Bold.ttf"),
    ("arial.ttf", "arialbd.ttf"),
)
"""Typefaces of common systems, regular and bold, those with most letters first."""

WIDE = (
    "DejaVuSans.ttf",
    "NotoSansSymbols2-Regular.ttf",
    "NotoSansDevanagari-Regular.ttf",
    "NotoSansThai-Regular.ttf",
    "NotoSansArabic-Regular.ttf",
    "NotoSansHebrew-Regular.ttf",
    "NotoSansBengali-Regular.ttf",
    "NotoSansGujarati-Regular.ttf",
    "NotoSansGurmukhi-Regular.ttf",
    "NotoSansKannada-Regular.ttf",
    "NotoSansMalayalam-Regular.ttf",
    "NotoSansSinhala-Regular.ttf",
    "NotoSansTamil-Regular.ttf",
    "NotoSansTelugu-Regular.ttf",
    "NotoSansEthiopic-Regular.ttf",
    "Lohit-Bengali.ttf",
    "Lohit-Tamil.ttf",
    "Nirmala.ttf",
    "NotoSansCJK-Regular.ttc",
    "DroidSansFallbackFull.ttf",
    "DroidSansFallback.ttf",
    "wqy-microhei.ttc",
    "wqy-zenhei.ttc",
    "ipaexg.ttf",
    "TakaoPGothic.ttf",
    "VL-PGothic-Regular.ttf",
    "NanumGothic.ttf",
    "Arial Unicode.ttf",
    "ARIALUNI.TTF",
    "Hiragino Sans GB.ttc",
    "AppleSDGothicNeo.ttc",
    "YuGothM.ttc",
    "msyh.ttc",
    "malgun.ttf",
    "simhei.ttf",
    "NotoEmoji-Regular.ttf",
    "Symbola_hint.ttf",
    "unifont.ttf",
)
"""Typefaces that have letters the others lack, looked for beside the main one."""

BUILT_IN = (
    "No typeface with all letters was found, so letters outside Western Europe are written in "
    "Latin ones: install the extra 'paper', or DejaVu Sans on your system."
)


@dataclass(frozen=True, slots=True)
class Typefaces:
    """The font files a PDF is written with; no regular one means the built-in typeface.

    Attributes:
        others: asked in turn for letters the main ones lack.
        remark: what the grower should know about the choice; empty when all is well.
    """

    regular: Path | None = None
    bold: Path | None = None
    others: tuple[Path, ...] = ()
    remark: str = ""


def system_folders() -> tuple[Path, ...]:
    """Where this system keeps its typefaces."""
    home = Path.home()
    if sys.platform == "darwin":
        return (home / "Library/Fonts", Path("/Library/Fonts"), Path("/System/Library/Fonts"))
    if os.name == "nt":
        return (Path(os.environ.get("WINDIR", r"C:\Windows")) / "Fonts",)
    shared = os.environ.get("XDG_DATA_HOME", "") or str(home / ".local/share")
    return (
        Path(shared) / "fonts",
        home / ".fonts",
        Path("/usr/share/fonts"),
        Path("/usr/local/share/fonts"),
    )


def find_typefaces(
    into: Path, folders: Sequence[Path] | None = None, *, packaged: bool = True
) -> Typefaces:
    """The best typefaces at hand.

    Args:
        into: a temporary folder the packaged ones are unpacked to.
        folders: where to look for the system's; None: the usual places.
        packaged: whether to look in the font package.
    """
    names = {name for pair in UPRIGHT for name in pair} | set(WIDE)
    system = _named_files(system_folders() if folders is None else folders, names)
    own = _unpacked(into) if packaged else {}
    pair = next((pair for pair in UPRIGHT if pair[0] in system), ("", ""))
    regular = own.get("regular") or system.get(pair[0])
    bold = own.get("bold") if "regular" in own else system.get(pair[1])
    if regular is None:
        return Typefaces(remark=BUILT_IN)
    wide = tuple(system[name] for name in WIDE if name in system and system[name] != regular)
    return Typefaces(regular, bold, wide)


def _named_files(folders: Sequence[Path], names: set[str]) -> dict[str, Path]:
    found: dict[str, Path] = {}
    for folder in folders:
        for where, _, files in os.walk(folder):
            for name in names.intersection(files):
                path = Path(where) / name
                if name not in found and is_typeface(path):
                    found[name] = path
    return found


def _unpacked(into: Path) -> dict[str, Path]:
    """The packaged typefaces as files; none where the package is not installed."""
    try:
        package = import_module(FONT_PACKAGE)
    except ImportError:
        return {}
    read: Callable[[str], bytes] = package.myfont
    found: dict[str, Path] = {}
    for use, name in PACKAGED.items():
        path = into / f"{name}.ttf"
        path.write_bytes(read(name))
        found[use] = path
    return found
