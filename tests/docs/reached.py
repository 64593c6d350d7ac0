"""Which names of the package are reached from what a grower opens: screens, commands, sums.

A name counts as reached where a reached piece of code of its own file, or of one that imports it,
names it. It is read from the source, so that nothing has to be run.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import benchround

PACKAGE = Path(str(benchround.__file__)).parent
OPENED = ("cli", "commands", "screens", "reckoning", "shell", "serving", "__main__")
"""Rooms and files all of which a grower reaches."""
Name = tuple[str, str]


class _File:
    """One file: what it defines and what it imports from the package."""

    def __init__(self, tree: ast.Module) -> None:
        self.defined: dict[str, ast.stmt] = {}
        self.imported: dict[str, Name] = {}
        for statement in tree.body:
            for name in _named_by(statement):
                self.defined[name] = statement
        for node in ast.walk(tree):
            if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("benchround"):
                for alias in node.names:
                    self.imported[alias.asname or alias.name] = (str(node.module), alias.name)


def _named_by(statement: ast.stmt) -> Iterator[str]:
    if isinstance(statement, ast.FunctionDef | ast.ClassDef | ast.AsyncFunctionDef):
        yield statement.name
    targets = statement.targets if isinstance(statement, ast.Assign) else []
    targets = [statement.target] if isinstance(statement, ast.AnnAssign) else targets
    for target in targets:
        yield from (node.id for node in ast.walk(target) if isinstance(node, ast.Name))


@cache
def files() -> dict[str, _File]:
    """Every file of the package by its dotted name."""
    found = {}
    for path in PACKAGE.rglob("*.py"):
        parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
        name = ".".join(parts).removesuffix(".__init__")
        found[name] = _File(ast.parse(path.read_text(encoding="utf-8")))
    return found


@cache
def reached() -> frozenset[Name]:
    """Every (file, name) that is reached."""
    known = files()
    todo = [
        (name, one)
        for name, file in known.items()
        if name.split(".")[1:2] and name.split(".")[1] in OPENED
        for one in file.defined
    ]
    seen: set[Name] = set()
    while todo:
        here = todo.pop()
        if here in seen:
            continue
        seen.add(here)
        statement = known[here[0]].defined.get(here[1])
        todo += [found for found in _uses(here[0], statement) if found not in seen]
    return frozenset(seen)


def _uses(file: str, statement: ast.stmt | None) -> Iterator[Name]:
    for node in ast.walk(statement) if statement is not None else ():
        if isinstance(node, ast.Name):
            yield from _found(file, node.id)
        elif isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
            yield from _found(file, node.value.id, node.attr)


def _found(file: str, name: str, attribute: str = "") -> Iterator[Name]:
    known = files()
    if name in known[file].defined:
        yield file, name
        return
    module, original = known[file].imported.get(name, ("", ""))
    if f"{module}.{original}" in known:
        if attribute in known[f"{module}.{original}"].defined:
            yield f"{module}.{original}", attribute
        return
    while module in known and original not in known[module].defined:
        module, original = known[module].imported.get(original, ("", ""))
    if module in known:
        yield module, original
