"""No figure of seed is reckoned from what cannot be: the error names the figure and its range.

Shares of 0 or above 1, counts of 0 or below, temperatures no formula was made for, infinities and
what is no number at all, in every figure every public function of `core/seed` takes.
"""

from __future__ import annotations

import inspect
import math
import pkgutil
import re
from collections.abc import Callable, Iterator
from importlib import import_module
from typing import Any, NamedTuple

import pytest

from benchround.core import seed
from benchround.core.errors import BenchroundError, OutOfRangeError
from benchround.core.seed import (
    age,
    cells_needed,
    cold_soil,
    emergence,
    emergence_fit,
    emergence_row,
    expected_count,
    germination,
    germination_times,
    lateness,
    partial_count,
    quantity,
    room_needed,
    survival,
    thermal_model,
    tolerances,
    viability,
    weight,
)
from benchround.core.seed.hill import HillCurve
from benchround.core.seed.looks import Looks
from benchround.core.seed.thermal_model import ThermalModel
from benchround.core.seed.viability_species import CONSTANTS
from benchround.crops.library import load_library

NO_NUMBERS = (math.nan, math.inf, -math.inf)
SHARE = (0.0, -0.1, 1.01, 80.0, *NO_NUMBERS)
CHANCE = (0.0, 1.0, -0.1, 1.1, *NO_NUMBERS)
PART = (-0.1, 1.1, *NO_NUMBERS)
COUNT = (0, -1, 2.5, *NO_NUMBERS)
COUNT_OR_NONE = (-1, 2.5, *NO_NUMBERS)
ABOVE_0 = (0.0, -1.0, *NO_NUMBERS)
FROM_0 = (-1.0, *NO_NUMBERS)
PERCENT = (-1.0, 101.0, *NO_NUMBERS)
INNER_PERCENT = (0.0, 100.0, *PERCENT)
TEMP_C = (-100.0, 100.0, *NO_NUMBERS)

MODEL = ThermalModel(5.0, 25.0, 35.0, 100.0, 0.25)
CURVE = HillCurve(80.0, 9.88, 6.03)
LOOKS = Looks.on_days([1, 2, 3, 4], [0, 4, 6, 2], 20)
TOMATO = CONSTANTS["Solanum lycopersicum"]
SWEETCORN = load_library()["sweetcorn"]
ROW: list[tuple[float, float | None]] = [(15.0, 14.0), (20.0, 8.0), (25.0, 6.0)]


class Call(NamedTuple):
    """A function, figures it can be given, and for each of them figures that cannot be."""

    function: Callable[..., Any]
    sound: dict[str, Any]
    wrong: dict[str, tuple[Any, ...]]


def row_at(temp_c: float) -> object:
    return emergence_fit.fit_from_table([*ROW, (temp_c, 9.0)])


def row_with(days: float) -> object:
    return emergence_fit.fit_from_table([*ROW, (22.0, days)])


CALLS = (
    Call(age.viable_share, {"start": 0.9, "years": 2.0, "species": TOMATO, "temp_c": 5.0},
         {"start": SHARE, "years": FROM_0, "temp_c": TEMP_C}),
    Call(cold_soil.cold_soil_words, {"crop": SWEETCORN, "temp_c": 8.0}, {"temp_c": TEMP_C}),
    Call(cells_needed.share_with_plant, {"germination": 0.8, "per_cell": 2},
         {"germination": SHARE, "per_cell": COUNT}),
    Call(cells_needed.blank_share, {"germination": 0.8, "per_cell": 2},
         {"germination": SHARE, "per_cell": COUNT}),
    Call(cells_needed.blank_share_uncertain, {"a": 16.0, "b": 4.0, "per_cell": 2},
         {"a": ABOVE_0, "b": ABOVE_0, "per_cell": COUNT}),
    Call(cells_needed.seeds_per_cell, {"filled": 0.95, "germination": 0.8},
         {"filled": CHANCE, "germination": SHARE}),
    Call(cells_needed.least_germination, {"filled": 0.98, "per_cell": 4},
         {"filled": CHANCE, "per_cell": COUNT}),
    Call(cells_needed.chance_enough, {"cells": 40, "want": 24, "p": 0.7},
         {"cells": COUNT_OR_NONE, "want": COUNT, "p": SHARE}),
    Call(cells_needed.cells_needed, {"want": 24, "chance": 0.9, "p": 0.7},
         {"want": COUNT, "chance": CHANCE, "p": SHARE}),
    Call(cells_needed.first_guess, {"want": 24, "chance": 0.9, "p": 0.7},
         {"want": COUNT, "chance": CHANCE, "p": SHARE}),
    Call(cells_needed.cells_needed_uncertain,
         {"want": 24, "chance": 0.9, "a": 16.0, "b": 4.0, "per_cell": 1, "survivals": (0.9,)},
         {"want": COUNT, "chance": CHANCE, "a": ABOVE_0, "b": ABOVE_0, "per_cell": COUNT,
          "survivals": tuple((wrong,) for wrong in SHARE)}),
    Call(cells_needed.chance_enough_uncertain,
         {"cells": 40, "want": 24, "a": 16.0, "b": 4.0, "per_cell": 1, "survivals": (0.9,)},
         {"cells": COUNT_OR_NONE, "want": COUNT, "a": ABOVE_0, "b": ABOVE_0, "per_cell": COUNT,
          "survivals": tuple((wrong,) for wrong in SHARE)}),
    Call(emergence.days_at, {"model": MODEL, "temp_c": 18.0, "share": 0.5},
         {"temp_c": TEMP_C, "share": CHANCE}),
    Call(emergence.why_none, {"model": MODEL, "temp_c": 18.0}, {"temp_c": TEMP_C}),
    Call(emergence.median_early_late, {"model": MODEL, "temp_c": 18.0}, {"temp_c": TEMP_C}),
    Call(emergence.late_heat, {"model": MODEL, "s": 0.1}, {"s": CHANCE}),
    Call(emergence.give_up_heat, {"model": MODEL, "alive": 0.2, "dead_prior": 0.1},
         {"alive": CHANCE, "dead_prior": CHANCE}),
    Call(emergence_fit.fit_from_table,
         {"points": ROW, "least_c": 10.0, "best_c": 27.0, "greatest_c": 35.0, "sigma": 0.25},
         {"least_c": TEMP_C, "best_c": TEMP_C, "greatest_c": TEMP_C, "sigma": ABOVE_0}),
    Call(emergence_row.row_of,
         {"points": ROW, "least_c": 10.0, "best_c": 27.0, "greatest_c": 35.0},
         {"least_c": TEMP_C, "best_c": TEMP_C, "greatest_c": TEMP_C}),
    Call(row_at, {"temp_c": 22.0}, {"temp_c": TEMP_C}),
    Call(row_with, {"days": 7.0}, {"days": (0.0, -3.0, 500.0, *NO_NUMBERS)}),
    Call(expected_count.due_share,
         {"model": MODEL, "heat_first": 60.0, "heat": 90.0, "living": 30.0},
         {"heat_first": ABOVE_0, "heat": FROM_0, "living": FROM_0}),
    Call(germination.germination_summary, {"looks": [(0, 5, 3), (5, 7, 2)], "sown": 10},
         {"sown": COUNT}),
    Call(germination_times.day_of_count, {"looks": LOOKS, "target": 3.0}, {"target": ABOVE_0}),
    Call(germination_times.days_to_share_of_up, {"looks": LOOKS, "wanted": 0.5},
         {"wanted": SHARE}),
    Call(germination_times.days_to_share_of_sown, {"looks": LOOKS, "wanted": 0.5},
         {"wanted": SHARE}),
    Call(germination_times.uniform_days, {"looks": LOOKS, "early": 0.1, "late": 0.9},
         {"early": SHARE, "late": SHARE}),
    Call(HillCurve, {"final_percent": 80.0, "steepness": 9.9, "half_day": 6.0},
         {"final_percent": (0.0, 101.0, *NO_NUMBERS), "steepness": ABOVE_0, "half_day": ABOVE_0}),
    Call(CURVE.percent_at, {"day": 5.0}, {"day": FROM_0}),
    Call(CURVE.day_of_percent_sown, {"percent": 50.0}, {"percent": (0.0, *PERCENT)}),
    Call(CURVE.day_of_percent_up, {"percent": 50.0}, {"percent": INNER_PERCENT}),
    Call(CURVE.area_to, {"day": 20.0}, {"day": ABOVE_0}),
    Call(lateness.chance_alive, {"s": 0.5, "dead_prior": 0.1}, {"s": PART, "dead_prior": CHANCE}),
    Call(lateness.chance_up_within, {"s_now": 0.5, "s_later": 0.2, "dead_prior": 0.1},
         {"s_now": PART, "s_later": (0.6, *PART), "dead_prior": CHANCE}),
    Call(lateness.survival_at_which_alive_is, {"q": 0.2, "dead_prior": 0.1},
         {"q": CHANCE, "dead_prior": CHANCE}),
    Call(lateness.lognormal_nothing, {"day": 12.0, "median": 10.0, "sigma": 0.3},
         {"day": FROM_0, "median": ABOVE_0, "sigma": ABOVE_0}),
    Call(lateness.lognormal_day_when, {"s": 0.1, "median": 10.0, "sigma": 0.3},
         {"s": CHANCE, "median": ABOVE_0, "sigma": ABOVE_0}),
    Call(lateness.loglogistic_steepness, {"sigma": 0.3}, {"sigma": ABOVE_0}),
    Call(lateness.loglogistic_nothing, {"day": 12.0, "median": 10.0, "steepness": 6.0},
         {"day": FROM_0, "median": ABOVE_0, "steepness": ABOVE_0}),
    Call(lateness.loglogistic_day_when, {"s": 0.1, "median": 10.0, "steepness": 6.0},
         {"s": CHANCE, "median": ABOVE_0, "steepness": ABOVE_0}),
    Call(Looks.of, {"steps": [(0.0, 5.0, 3)], "sown": 10},
         {"sown": COUNT,
          "steps": ([(-1.0, 5.0, 3)], [(0.0, math.nan, 3)], [(0.0, math.inf, 3)],
                    [(0.0, 5.0, -3)], [(0.0, 5.0, 2.5)], [(5.0, 5.0, 1)], [(0.0, 5.0, 11)])}),
    Call(Looks.on_days, {"days": [1, 2], "newly_up": [3, 4], "sown": 10},
         {"days": ([2, 1], [0, 1], [1, math.nan], [1]), "newly_up": ([3, -1], [9, 9], [3]),
          "sown": COUNT}),
    Call(partial_count.chance_none_up, {"n": 12, "a": 16.0, "b": 4.0, "due": 0.3},
         {"n": COUNT, "a": ABOVE_0, "b": ABOVE_0, "due": PART}),
    Call(partial_count.germination_after_none, {"n": 12, "a": 16.0, "b": 4.0, "due": 0.3},
         {"n": COUNT, "a": ABOVE_0, "b": ABOVE_0, "due": PART}),
    Call(partial_count.chance_dead_after_none, {"none_up": 0.04, "dead_prior": 0.05},
         {"none_up": PART, "dead_prior": CHANCE}),
    *(Call(function, {"n": 20, "up": 6, "a": 16.0, "b": 4.0, "due": 0.5},
           {"n": COUNT, "up": (21, *COUNT_OR_NONE), "a": ABOVE_0, "b": ABOVE_0, "due": PART})
      for function in (partial_count.final_count_chances, partial_count.expected_final_uncertain)),
    Call(partial_count.chance_final_at_least,
         {"n": 20, "up": 6, "a": 16.0, "b": 4.0, "due": 0.5, "want": 12},
         {"n": COUNT, "up": (21, *COUNT_OR_NONE), "a": ABOVE_0, "b": ABOVE_0, "due": PART,
          "want": COUNT_OR_NONE}),
    Call(partial_count.expected_final, {"n": 20, "up": 6, "germination": 0.8, "due": 0.5},
         {"n": COUNT, "up": (21, *COUNT_OR_NONE), "germination": SHARE, "due": PART}),
    Call(quantity.how_many,
         {"want": 24, "germination": 0.8, "tested": 20.0, "survival": (0.9,), "chance": 0.9,
          "per_cell": 1},
         {"want": COUNT, "germination": SHARE, "tested": ABOVE_0, "chance": CHANCE,
          "survival": tuple((wrong,) for wrong in SHARE), "per_cell": COUNT}),
    Call(quantity.germination_belief, {"germination": 0.8, "tested": 20.0},
         {"germination": SHARE, "tested": (0.5, *ABOVE_0)}),
    Call(room_needed.trays_needed, {"cells": 41, "cells_per_tray": 40},
         {"cells": COUNT_OR_NONE, "cells_per_tray": COUNT}),
    Call(room_needed.compost_litres, {"cells": 84, "cell_ml": 25.0, "firming": 1.2},
         {"cells": COUNT_OR_NONE, "cell_ml": ABOVE_0, "firming": (0.9, 2.1, *NO_NUMBERS)}),
    Call(room_needed.vermiculite_litres,
         {"trays": 2, "width_mm": 240.0, "length_mm": 380.0, "depth_mm": 4.0},
         {"trays": COUNT_OR_NONE, "width_mm": ABOVE_0, "length_mm": ABOVE_0,
          "depth_mm": (-1.0, 51.0, *NO_NUMBERS)}),
    Call(room_needed.bench_area_m2, {"trays": 2, "width_mm": 240.0, "length_mm": 380.0},
         {"trays": COUNT_OR_NONE, "width_mm": ABOVE_0, "length_mm": ABOVE_0}),
    Call(room_needed.trays_that_fit, {"bench_m2": 2.0, "width_mm": 240.0, "length_mm": 380.0},
         {"bench_m2": FROM_0, "width_mm": ABOVE_0, "length_mm": ABOVE_0}),
    Call(survival.kaplan_meier, {"days": [3.0, 4.0], "happened": [True, False]},
         {"days": ([3.0], [-1.0, 4.0], [3.0, math.nan], [3.0, math.inf])}),
    Call(ThermalModel,
         {"base_c": 5.0, "optimum_c": 25.0, "ceiling_c": 35.0, "theta50": 100.0, "sigma": 0.25},
         {"base_c": (26.0, *TEMP_C), "optimum_c": (4.0, 36.0, *NO_NUMBERS), "ceiling_c": TEMP_C,
          "theta50": ABOVE_0, "sigma": (6.0, *ABOVE_0)}),
    Call(ThermalModel.from_days,
         {"days_first": 7.0, "days_last": 14.0, "at_temp_c": 20.0, "base_c": 5.0,
          "optimum_c": 25.0, "ceiling_c": 35.0},
         {"days_first": ABOVE_0, "days_last": (6.0, *NO_NUMBERS), "at_temp_c": (5.0, 35.0, *TEMP_C),
          "base_c": TEMP_C, "optimum_c": NO_NUMBERS, "ceiling_c": TEMP_C}),
    Call(thermal_model.heat_of_day, {"model": MODEL, "mean_c": 18.0}, {"mean_c": TEMP_C}),
    Call(thermal_model.heat_of_hours, {"model": MODEL, "temps_c": [18.0]},
         {"temps_c": tuple([wrong] for wrong in TEMP_C)}),
    Call(thermal_model.emerged_share, {"model": MODEL, "heat": 90.0}, {"heat": FROM_0}),
    Call(thermal_model.heat_for_share, {"model": MODEL, "share": 0.5}, {"share": CHANCE}),
    Call(thermal_model.chance_nothing, {"model": MODEL, "heat": 90.0}, {"heat": FROM_0}),
    Call(tolerances.tolerated_range, {"mean_percent": 85.0}, {"mean_percent": PERCENT}),
    Call(tolerances.tolerated_difference, {"mean_percent": 85.0}, {"mean_percent": PERCENT}),
    Call(tolerances.two_agree, {"first_percent": 96.0, "second_percent": 92.0},
         {"first_percent": PERCENT, "second_percent": PERCENT}),
    Call(tolerances.binomial_range_limit,
         {"mean_percent": 90.0, "replicates": 4, "seeds": 20, "doubt": 0.025},
         {"mean_percent": INNER_PERCENT, "replicates": (1, 11, *NO_NUMBERS),
          "seeds": (1, 20_000, *NO_NUMBERS), "doubt": CHANCE}),
    Call(tolerances.large_sample_range, {"mean_percent": 85.0}, {"mean_percent": PERCENT}),
    Call(tolerances.error_percent, {"mean_percent": 85.0, "seeds": 20},
         {"mean_percent": PERCENT, "seeds": COUNT}),
    Call(viability.days_per_deviate,
         {"species": TOMATO, "moisture_percent": 6.0, "temp_c": 5.0},
         {"moisture_percent": (1.0, 26.0, *NO_NUMBERS), "temp_c": TEMP_C}),
    Call(viability.viability_after,
         {"species": TOMATO, "start_percent": 90.0, "days": 700.0, "moisture_percent": 6.0,
          "temp_c": 5.0},
         {"start_percent": INNER_PERCENT, "days": FROM_0,
          "moisture_percent": (1.0, 26.0, *NO_NUMBERS), "temp_c": TEMP_C}),
    Call(viability.days_until,
         {"species": TOMATO, "start_percent": 90.0, "end_percent": 50.0, "moisture_percent": 6.0,
          "temp_c": 5.0},
         {"start_percent": (40.0, *INNER_PERCENT), "end_percent": (95.0, *INNER_PERCENT),
          "moisture_percent": (1.0, 26.0, *NO_NUMBERS), "temp_c": TEMP_C}),
    Call(viability.half_life_days,
         {"species": TOMATO, "start_percent": 90.0, "moisture_percent": 6.0, "temp_c": 5.0},
         {"start_percent": INNER_PERCENT, "moisture_percent": (1.0, 26.0, *NO_NUMBERS),
          "temp_c": TEMP_C}),
    Call(viability.moisture_for,
         {"species": TOMATO, "start_percent": 90.0, "end_percent": 50.0, "days": 700.0,
          "temp_c": 5.0},
         {"start_percent": INNER_PERCENT, "end_percent": INNER_PERCENT, "days": ABOVE_0,
          "temp_c": TEMP_C}),
    Call(viability.temperature_for,
         {"species": TOMATO, "start_percent": 90.0, "end_percent": 50.0, "days": 700.0,
          "moisture_percent": 6.0},
         {"start_percent": INNER_PERCENT, "end_percent": INNER_PERCENT, "days": ABOVE_0,
          "moisture_percent": (1.0, 26.0, *NO_NUMBERS)}),
    Call(viability.normal_deviate, {"percent": 90.0}, {"percent": INNER_PERCENT}),
    Call(viability.adjusted_percent, {"percent": 100.0, "tested": 20},
         {"percent": PERCENT, "tested": COUNT}),
    Call(viability.dry_basis, {"wet_percent": 8.0}, {"wet_percent": (100.0, *PERCENT)}),
    Call(viability.wet_basis, {"dry_percent": 8.0}, {"dry_percent": FROM_0}),
    Call(viability.equilibrium_moisture,
         {"oil_percent": 20.0, "humidity_percent": 50.0, "temp_c": 20.0},
         {"oil_percent": (71.0, *PERCENT), "humidity_percent": (96.0, *PERCENT),
          "temp_c": TEMP_C}),
    Call(weight.weigh, {"hundreds_g": [0.2, 0.21]},
         {"hundreds_g": ([0.2], [], *([0.2, wrong] for wrong in ABOVE_0))}),
    Call(weight.seeds_per_gram, {"thousand_g": 2.1}, {"thousand_g": ABOVE_0}),
    Call(weight.grams_of_seeds, {"seeds": 40, "per_gram": 300.0},
         {"seeds": FROM_0, "per_gram": ABOVE_0}),
    Call(weight.seeds_in_grams, {"grams": 0.5, "per_gram": 300.0},
         {"grams": FROM_0, "per_gram": ABOVE_0}),
    Call(weight.seeds_per_ounce, {"per_gram": 300.0}, {"per_gram": ABOVE_0}),
    Call(weight.seeds_per_gram_of_ounce, {"per_ounce": 8500.0}, {"per_ounce": ABOVE_0}),
    Call(weight.working_sample_g, {"per_gram": 300.0}, {"per_gram": ABOVE_0}),
    Call(weight.sowing_rate_kg_per_ha,
         {"thousand_g": 40.0, "plants_per_m2": 150.0, "germination": 0.8},
         {"thousand_g": ABOVE_0, "plants_per_m2": ABOVE_0, "germination": SHARE}),
)  # fmt: skip

OF_OTHER_KINDS = {
    "packet_words": "words: a number that cannot be is written as it stands",
    "needed": "the sheet's own numbers; what cannot be comes back as a sentence",
    "sowing_plan": "the sheet's own numbers; what cannot be comes back as a sentence",
    "packet": "read from the record, where what cannot be is named as its fault",
    "final_count": "the crop's own figure, checked when its table is read",
    "looks_reading": "read from the record, where what cannot be is named as its fault",
    "interval_likelihood": "standard laws, defined for every number; made from checked looks",
    "heat": "asked for every day of every batch, with what the place's warmth was checked to be",
    "waiting": "degree-days up to a day of the batch's own records",
    "interval_fit": "made from checked looks",
}
"""Modules whose figures do not come straight from a person, and why."""
FIGURE = re.compile(r"\b(int|float)\b")
RANGE = re.compile(
    r"give a figure (above|from|below|up to) |outside -?[0-9.]+ to |whole number: give a count|"
    r"in rising order|of [0-9]+ sown|at least two|one (count|outcome) for each|"
    r"cannot fall from|starts at [0-9.]+|between base|give a figure that is finite"
)


def wrong_calls() -> Iterator[Any]:
    for call in CALLS:
        for name, values in call.wrong.items():
            for value in values:
                title = f"{call.function.__qualname__}({name}={value})"
                yield pytest.param(call, {**call.sound, name: value}, id=title)


@pytest.mark.parametrize("call", CALLS, ids=lambda call: call.function.__qualname__)
def test_sound_figures_are_taken(call: Call) -> None:
    call.function(**call.sound)


@pytest.mark.parametrize(("call", "given"), list(wrong_calls()))
def test_what_cannot_be_is_refused_and_its_range_named(call: Call, given: dict[str, Any]) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        call.function(**given)
    assert RANGE.search(str(caught.value)), str(caught.value)
    assert isinstance(caught.value, BenchroundError)


def public_functions() -> Iterator[tuple[str, str, inspect.Signature]]:
    for found in pkgutil.iter_modules(seed.__path__):
        module = import_module(f"{seed.__name__}.{found.name}")
        for name, value in vars(module).items():
            if inspect.isfunction(value) and value.__module__ == module.__name__:
                yield found.name, name, inspect.signature(value)


def test_every_public_function_that_takes_a_figure_is_put_to_it() -> None:
    tried = {call.function.__name__: set(call.wrong) for call in CALLS}
    missing = [
        f"{module}.{name}({parameter.name})"
        for module, name, signature in public_functions()
        if not name.startswith("_") and module not in OF_OTHER_KINDS
        for parameter in signature.parameters.values()
        if FIGURE.search(str(parameter.annotation))
        and not re.search("Sequence|Iterable", str(parameter.annotation))
        and parameter.name not in tried.get(name, set())
    ]
    assert missing == []
