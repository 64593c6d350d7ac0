"""The page of formulas is drawn as the code stands, and leaves no sourced formula out."""

from __future__ import annotations

import ast
import inspect
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path

import pytest

import benchround.core
from tests.docs.formulas import AUTHOR_YEAR, PAGE, Told, functions_of, page, told
from tests.docs.formulas_equations import EQUATIONS, GIVES, REACHES, SOURCES
from tests.docs.formulas_list import SECTIONS
from tests.docs.reached import files, reached

ROOMS = ("seed", "sky", "frame", "water", "learning", "planning", "numbers")
CORE = Path(str(benchround.core.__file__)).parent
LISTED = {
    path: told(path, function, section)
    for section in SECTIONS
    for path, function in functions_of(section)
}


def sourced() -> Iterator[str]:
    """Public functions of the rooms whose docstrings name an author and a year."""
    for room in ROOMS:
        for file in sorted((CORE / room).glob("[a-z]*.py")):
            module = import_module(f"benchround.core.{room}.{file.stem}")
            for name, function in inspect.getmembers(module, inspect.isfunction):
                own = function.__module__ == module.__name__ and not name.startswith("_")
                if own and AUTHOR_YEAR.search(inspect.getdoc(function) or ""):
                    yield f"{room}.{file.stem}.{name}"


def test_regression_the_page_is_drawn_from_the_docstrings() -> None:
    kept = PAGE.read_text(encoding="utf-8")
    assert kept == page(), "draw it anew: python -m tests.docs.formulas"


def test_every_function_with_an_author_and_a_year_is_on_the_page() -> None:
    found = set(sourced())
    assert len(found) > 60
    assert not found - set(LISTED)


@pytest.mark.parametrize("path", LISTED)
def test_every_formula_on_the_page_is_reckoned_with_by_a_screen_or_a_command(path: str) -> None:
    module, _, name = path.rpartition(".")
    assert (f"benchround.core.{module}", name) in reached()


@pytest.mark.parametrize("room", ROOMS)
def test_no_computation_waits_for_somebody_to_show_it(room: str) -> None:
    """Public functions and classes of the rooms that nothing a grower opens leads to."""
    start = f"benchround.core.{room}."
    waiting = {
        f"{file}.{name}"
        for file, found in files().items()
        if file.startswith(start)
        for name, statement in found.defined.items()
        if isinstance(statement, ast.FunctionDef | ast.ClassDef) and not name.startswith("_")
        if (file, name) not in reached()
    }
    assert not waiting, "show it on a screen or in `benchround reckon`, or remove it"


def test_what_nothing_leads_to_is_found() -> None:
    # the guard itself: names that only tests and pages use are not taken for reached
    assert ("benchround.core.lifecycle_page", "lifecycle_page") not in reached()
    assert ("benchround.core.seed.lateness", "chance_alive") in reached()


def test_what_is_said_by_hand_is_of_formulas_that_are_listed() -> None:
    by_hand = {*EQUATIONS, *GIVES, *SOURCES, *REACHES}
    assert not by_hand - LISTED.keys()


@pytest.mark.parametrize(("path", "said"), LISTED.items(), ids=LISTED)
def test_a_formula_has_words_an_equation_a_range_and_a_source(path: str, said: Told) -> None:
    assert 8 < len(said.gives) < 130
    assert 3 < len(said.equation) < 130
    assert said.equation.count("(") == said.equation.count(")")
    assert said.reaches
    assert 8 < len(said.source) < 200
    assert said.source.count("(") == said.source.count(")")


def test_an_equation_and_a_source_are_read_out_of_a_docstring() -> None:
    """Allen et al. 1998, FAO-56, eq. 37, as it is told in the docstring of `clear_sky_mj`."""
    said = LISTED["sky.sun.clear_sky_mj"]
    assert said.equation == "(0.75 + 0.00002 z) Ra"
    assert said.source == "Allen et al. 1998, FAO-56, eq. 37"
    assert said.reaches == "z in m, -500 to 6000"
