"""Every page is linked from the index, and every link leads somewhere."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.screens.guide import DOCS

ROOT = DOCS.parent
PAGES = sorted(DOCS.rglob("*.md"))
LINK = re.compile(r"\[[^\]]+\]\(([^)\s]+)\)")
ELSEWHERE = ("http://", "https://", "mailto:")


def links(path: Path) -> list[str]:
    """Where a page links to, code and pictures left out."""
    text = re.sub(r"```.*?```", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)
    return LINK.findall(re.sub(r"`[^`\n]*`", "", text))


def anchors(path: Path) -> set[str]:
    """The names by which the headings of a page are linked to."""
    heads = re.findall(r"^#+ (.+)$", path.read_text(encoding="utf-8"), re.MULTILINE)
    plain = (re.sub(r"[^\w\- ]", "", head.lower()) for head in heads)
    return {head.strip().replace(" ", "-") for head in plain}


def test_every_page_is_linked_from_the_index() -> None:
    index = DOCS / "README.md"
    linked = {(DOCS / link.partition("#")[0]).resolve() for link in links(index)}
    files = {path for path in DOCS.rglob("*") if path.is_file()} - {index}
    assert not {path.name for path in files - linked}


@pytest.mark.parametrize(
    "path",
    [ROOT / "README.md", ROOT / "DEVELOPERS.md", *PAGES],
    ids=lambda path: str(path.relative_to(ROOT)),
)
def test_every_link_leads_somewhere(path: Path) -> None:
    for link in links(path):
        if link.startswith(ELSEWHERE):
            continue
        name, _, anchor = link.partition("#")
        target = (path.parent / name).resolve() if name else path
        assert target.is_relative_to(ROOT), link
        assert target.exists(), link
        if anchor:
            assert anchor in anchors(target), link


def test_the_readme_leads_to_guide_and_house() -> None:
    assert {"docs/README.md", "DEVELOPERS.md", "docs/architecture.md"} <= set(
        links(ROOT / "README.md")
    )
