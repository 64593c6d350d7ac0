"""Looking at PDF files with programs we did not write: poppler's tools and zbar."""

from __future__ import annotations

import re
import shutil
import subprocess
from dataclasses import dataclass
from html import unescape
from pathlib import Path

import pytest
from PIL import Image

needs_poppler = pytest.mark.skipif(
    shutil.which("pdftoppm") is None or shutil.which("pdftotext") is None,
    reason="poppler-utils is not installed, so the PDF cannot be opened by another program",
)
needs_zbar = pytest.mark.skipif(
    shutil.which("zbarimg") is None,
    reason="zbar-tools is not installed, so a QR code cannot be read by another program",
)
POINTS_A_MM = 72 / 25.4


@dataclass(frozen=True, slots=True)
class Word:
    """A word on a page, with its box in mm."""

    page: int
    text: str
    left: float
    top: float
    right: float
    bottom: float


def saved(data: bytes, folder: Path) -> Path:
    path = folder / "printed.pdf"
    path.write_bytes(data)
    return path


def text_of(data: bytes, folder: Path) -> str:
    """The text of all pages, spaces between words."""
    command = ["pdftotext", "-enc", "UTF-8", str(saved(data, folder)), "-"]
    done = subprocess.run(command, capture_output=True, check=True)
    return " ".join(done.stdout.decode("utf-8").split())


def words_of(data: bytes, folder: Path) -> list[Word]:
    """Every word and where it stands."""
    command = ["pdftotext", "-bbox", "-enc", "UTF-8", str(saved(data, folder)), "-"]
    done = subprocess.run(command, capture_output=True, check=True)
    found: list[Word] = []
    page = 0
    pattern = re.compile(
        r'<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)</word>'
    )
    for line in done.stdout.decode("utf-8").splitlines():
        page += "<page " in line
        match = pattern.search(line)
        if match:
            box = [float(number) / POINTS_A_MM for number in match.groups()[:4]]
            found.append(Word(page, unescape(match[5]), *box))
    return found


def pictures_of(data: bytes, folder: Path, dpi: int = 72) -> list[Image.Image]:
    """Every page as a grey picture."""
    path = saved(data, folder)
    command = ["pdftoppm", "-r", str(dpi), "-gray", str(path), str(folder / "page")]
    subprocess.run(command, check=True)
    return [Image.open(name) for name in sorted(folder.glob("page*.pgm"))]


def ink_share(picture: Image.Image) -> float:
    """The share of a picture's dots that are dark."""
    counts = picture.histogram()
    return sum(counts[:128]) / sum(counts)


def page_count(data: bytes, folder: Path) -> int:
    command = ["pdfinfo", str(saved(data, folder))]
    done = subprocess.run(command, capture_output=True, check=True, text=True)
    return int(re.findall(r"^Pages:\s+(\d+)", done.stdout, re.MULTILINE)[0])


def page_size_mm(data: bytes, folder: Path) -> tuple[float, float]:
    command = ["pdfinfo", str(saved(data, folder))]
    done = subprocess.run(command, capture_output=True, check=True, text=True)
    width, height = re.findall(r"Page size:\s+([\d.]+) x ([\d.]+)", done.stdout)[0]
    return float(width) / POINTS_A_MM, float(height) / POINTS_A_MM


def codes_in(picture: Path) -> list[str]:
    """What the QR codes of a picture say."""
    command = ["zbarimg", "-q", "--raw", "-Sdisable", "-Sqrcode.enable", str(picture)]
    done = subprocess.run(command, capture_output=True, text=True)
    return done.stdout.split()
