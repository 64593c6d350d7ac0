"""Draws docs/formulas.md from the docstrings of the functions named in `formulas_list`.

`python -m tests.docs.formulas` writes the page anew. What a docstring does not hold in one line
stands in `formulas_equations`.
"""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from importlib import import_module

from tests.docs.formulas_equations import EQUATIONS, GIVES, REACHES, SOURCES
from tests.docs.formulas_list import SECTIONS, Section
from tests.screens.guide import DOCS

PAGE = DOCS / "formulas.md"
AUTHOR_YEAR = re.compile(
    r"[A-Z][\w'-]+(?:(?:,? (?:&|and) |, )(?:de )?[A-Z][\w'-]+)*(?: et al\.)?,? (?:18|19|20)\d\d\b"
)
MAP = re.compile(r"\b\d[\d,.]* to -?\d|above -?\d|below -?\d|up to -?\d|at least -?\d|-\d+ to \d")
RANGE_WORDS = re.compile(r"[A-Za-z] (?:from|in|between) |Latitude |the pressure ")
SENTENCE = re.compile(r"(?<=[a-z0-9)\]%])[.] (?=[A-Z])")
SHORT = ("J", "Am", "Stat", "Assoc", "Exp", "Ann", "Bot", "Appl", "Hydrol", "Earth", "Syst", "vol")
HEAD = """# Formulas

Every formula the program reckons with: what it gives, its equation in one line, the range it holds
in, and where it comes from. Drawn from the docstrings of the functions in `benchround/core`;
`python -m tests.docs.formulas` draws it anew. Outside its range a formula refuses with a sentence
or gives no answer; it never guesses. *(read)* means that the source was read, *from memory* that it
was not at hand. Phi is the normal distribution, Phi^-1 its inverse.

"""


@dataclass(frozen=True)
class Told:
    """What a docstring says of its formula."""

    gives: str
    equation: str
    reaches: str
    source: str


def functions_of(section: Section) -> Iterator[tuple[str, Callable[..., object]]]:
    """The functions of a section with their paths."""
    for room, names in section.functions:
        module = import_module(f"benchround.core.{room}")
        for name in names.split():
            yield f"{room}.{name}", getattr(module, name)


def told(path: str, function: Callable[..., object], section: Section) -> Told:
    """What is said of a formula on the page."""
    body, arguments = _parts(inspect.getdoc(function) or "")
    sentences = _sentences(body)
    named = next((one for one in sentences if AUTHOR_YEAR.search(one)), "")
    return Told(
        GIVES.get(path) or _gives(sentences[0]),
        EQUATIONS.get(path) or _equation(sentences),
        REACHES.get(path) or _reach(arguments, sentences) or section.reach,
        SOURCES.get(path) or _source(named) or section.source,
    )


def _gives(sentence: str) -> str:
    """What a first sentence promises, without its source and its equation."""
    bare = re.sub(r" \([^()]*\b(?:18|19|20)\d\d\b[^()]*\)", "", sentence)
    bare = bare.removeprefix("Return ").removeprefix("Tell ").rstrip(".").partition(": ")[0]
    return re.sub(r", None .*", "", bare)


def _parts(text: str) -> tuple[str, str]:
    """A docstring's sentences, and what it says of the arguments."""
    body, _, rest = text.partition("\nArgs:\n")
    return body.partition("\nRaises:")[0], rest.partition("\nRaises:")[0]


def _sentences(body: str) -> list[str]:
    """The sentences of a docstring, each on one line."""
    found: list[str] = []
    for paragraph in re.split(r"\n\s*\n", body):
        for part in SENTENCE.split(" ".join(paragraph.split())):
            if found and found[-1].split()[-1] in SHORT and part:
                found[-1] += f". {part}"
            else:
                found.append(part)
    return found


def _equation(sentences: list[str]) -> str:
    """What follows the first colon that is followed by figures and signs; else nothing."""
    for sentence in sentences:
        _, colon, after = sentence.partition(": ")
        after = after.partition("; ")[0].rstrip(".")
        if colon and re.search(r"[=/+^()*]|\d", after) and not AUTHOR_YEAR.search(after):
            return after
    return ""


def _reach(arguments: str, sentences: list[str]) -> str:
    """The ranges named beside the arguments, or in a sentence."""
    lines = re.split(r"\n    (?=\w+:)", f"\n{arguments.rstrip()}")
    ranges = [" ".join(one.split()).partition(": ") for one in lines if MAP.search(one)]
    if ranges:
        return "; ".join(f"{name}: {text.rstrip('.')}" for name, _, text in ranges)
    parts = [part for one in sentences for part in one.split("; ")]
    found = [part for part in parts if RANGE_WORDS.match(part) and MAP.search(part)]
    return "; ".join(part.rstrip(".") for part in found)


def _source(sentence: str) -> str:
    """The author, year and place in a sentence that names them."""
    match = AUTHOR_YEAR.search(sentence)
    if match is None:
        return ""
    inside = re.search(r"\(([^()]*?" + re.escape(match[0]) + r"[^()]*)\)", sentence)
    if inside:
        return inside[1]
    return re.split(r": |; ", sentence[match.start() :])[0].rstrip(".")


def page() -> str:
    """The page of formulas."""
    return HEAD + "\n".join(_section(section) for section in SECTIONS)


def _section(section: Section) -> str:
    rows = [_row(path, told(path, function, section)) for path, function in functions_of(section)]
    head = "| gives | equation | range | source | function |\n|---|---|---|---|---|\n"
    return f"## {section.title}\n\n{section.answers}\n\n{head}{''.join(rows)}"


def _row(path: str, said: Told) -> str:
    cells = (said.gives, f"`{said.equation}`", said.reaches or "-", said.source, f"`{path}`")
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |\n"


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
