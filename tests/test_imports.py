"""The rooms of the house and which way imports may go, read from the code itself."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[1] / "benchround"

MAY_IMPORT: dict[str, frozenset[str]] = {
    "core": frozenset({"core"}),
    "rounds": frozenset({"core", "rounds"}),
    "crops": frozenset({"core", "crops"}),
    "store": frozenset({"core", "store"}),
    "feeds": frozenset({"core", "feeds", "drawing"}),
    "drawing": frozenset({"core", "drawing"}),
    "desk": frozenset({"core", "rounds", "crops", "store", "feeds", "desk"}),
    "shell": frozenset(
        {"core", "rounds", "crops", "store", "feeds", "drawing", "desk", "shell", "screens"}
    ),
    "screens": frozenset(
        {"core", "rounds", "crops", "feeds", "drawing", "desk", "shell", "screens"}
    ),
}
"""Room -> rooms it may import. `desk` and `shell` are the files at the top of the package."""

DESK_FILES = frozenset({"desk", "clock"})
OUTSIDE: dict[str, frozenset[str]] = {
    "core": frozenset({"astral", "dateutil"}),
    "rounds": frozenset(),
    "crops": frozenset(),
    "store": frozenset({"tinydb"}),
    "drawing": frozenset(),
    "feeds": frozenset({"icalendar", "fpdf", "dateutil", "qrcode"}),
    "desk": frozenset(),
    "shell": frozenset({"platformdirs", "aiohttp", "textual_serve"}),
    "screens": frozenset({"textual", "rich"}),
}
"""Libraries each room may import besides the standard one."""

IMPURE = frozenset({"random", "time", "os", "pathlib", "io", "shutil", "socket", "secrets", "uuid"})
"""Standard modules that have no place in core and rounds."""

STANDARD = frozenset(__import__("sys").stdlib_module_names)
FILES = sorted(PACKAGE.rglob("*.py"))


def room_of(module: str) -> str:
    parts = module.split(".")
    if len(parts) == 1:
        return "core"  # the package's own name and version
    if parts[1] == "commands":
        return "shell"
    if parts[1] in MAY_IMPORT and parts[1] != "desk":
        return parts[1]
    return "desk" if parts[1] in DESK_FILES else "shell"


def module_of(path: Path) -> str:
    parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
    return ".".join(part for part in parts if part != "__init__")


def imported(path: Path) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            assert node.level == 0, f"{path}: relative import"
            names.update(
                f"{node.module}.{alias.name}" if node.module == "benchround" else node.module
                for alias in node.names
            )
    return names


@pytest.mark.parametrize("path", FILES, ids=[module_of(path) for path in FILES])
def test_imports_go_one_way(path: Path) -> None:
    module = module_of(path)
    room = room_of(module)
    for name in imported(path):
        top = name.split(".")[0]
        if top == "benchround":
            if name in ("benchround.__version__",):
                continue
            assert room_of(name) in MAY_IMPORT[room], f"{module} ({room}) imports {name}"
        elif top not in STANDARD:
            assert top in OUTSIDE[room], f"{module} ({room}) imports {top}"
        elif room in ("core", "rounds"):
            assert top not in IMPURE, f"{module} must stay pure, but imports {top}"


def test_core_and_rounds_never_read_the_clock() -> None:
    for path in FILES:
        if room_of(module_of(path)) not in ("core", "rounds"):
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Attribute):
                assert (
                    node.attr not in ("today", "now", "utcnow")
                    or not isinstance(node.value, ast.Name)
                    or node.value.id not in ("date", "datetime")
                ), f"{path} reads the clock"


def test_a_wrong_arrow_would_be_found() -> None:
    assert room_of("benchround.screens.round") not in MAY_IMPORT["desk"]
    assert room_of("benchround.store.folder") not in MAY_IMPORT["rounds"]
    assert room_of("benchround.desk") == "desk"
