"""Which functions stand on the page of formulas, under which question of the grower."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Section:
    """Formulas that answer one question.

    Attributes:
        title: the heading.
        answers: what the grower gets from them, in a sentence or two.
        source: where those come from that name no source of their own.
        reach: the range of those whose docstrings name none.
        functions: module of `benchround.core`, and the names in it.
    """

    title: str
    answers: str
    source: str
    reach: str
    functions: tuple[tuple[str, str], ...]


PROBABILITY = "follows from the laws of chance"
OURS = "our proposal"
FAO = "Allen et al. 1998, FAO-56"

SECTIONS = (
    Section("When will it be up?",
        "The day to look from, the day half should be up, and how heat at its place moves both.",
        PROBABILITY,
        "shares 0 to 1, heat of 0 or more",
        (("seed.thermal_model", "heat_of_day emerged_share heat_for_share chance_nothing"),)),
    Section("Is it late, is it alive?",
        "Whether a sowing that shows nothing is late, and when to give it up. S is the chance that "
        "a good batch shows nothing yet, pi the chance beforehand that it is dead, F the share "
        "due.",
        PROBABILITY,
        "chances and shares 0 to 1, days of 0 or more, spread above 0",
        (("seed.lateness", "chance_alive chance_up_within survival_at_which_alive_is "
          "lognormal_nothing lognormal_day_when loglogistic_steepness loglogistic_nothing "
          "loglogistic_day_when"),
         ("seed.partial_count", "chance_none_up germination_after_none chance_dead_after_none "
          "final_count_chances expected_final"))),
    Section("How did it germinate?",
        "How many came up, how fast and how evenly, from the counts of a batch. n_i are newly up "
        "at look i, t_i days from sowing, c_i up by then; Ng up in all, N sown, k looks.",
        "Aravind et al. 2026 (documentation of germinationmetrics 0.1.10.9000)",
        "whole counts of 0 or more, days above 0; without data: no answer",
        (("seed.germination_indices", "mean_days variance_days mean_rate kotowski_velocity speed "
          "corrected_speed accumulated_speed weighted_percent germination_index "
          "emergence_rate_index uniformity synchrony uncertainty_bits mean_percent_per_day "
          "mean_number_per_day peak_value"),
         ("seed.germination_times", "t50_farooq t50_coolbear"),
         ("seed.hill", "fit_hill"),
         ("seed.survival", "kaplan_meier"),
         ("numbers.shares", "wilson none_up_limit"))),
    Section("How many to sow?",
        "Cells and seeds so that enough plants stand ready with the chance you want. N plants "
        "wanted, P the chance wanted, g germination, s seeds a cell, p the chance that a cell "
        "gives a plant.",
        PROBABILITY,
        "shares above 0 and up to 1, chance between 0 and 1, up to 1000 seeds a cell",
        (("seed.cells_needed", "share_with_plant blank_share blank_share_uncertain "
          "least_germination chance_enough first_guess cells_needed cells_needed_uncertain"),
         ("seed.weight", "weigh"))),
    Section("How old may seed be?",
        "What is left of the germination of seed in store. KE, CW, CH and CQ are the species' "
        "constants, m its moisture in %, t the store in C.",
        "Ellis & Roberts 1980, Ann. Bot. 45:13-30",
        "start and end between 0 and 100 %, moisture 2 to 25 %, store -20 to 60 C, days 0 or more",
        (("seed.viability", "days_per_deviate viability_after days_until half_life_days "
          "equilibrium_moisture"),)),
    Section("What do your own records teach?",
        "How counts and days of your own move the library's figures. m is the packet's or "
        "library's figure, k what it is worth, y up of n sown.",
        PROBABILITY,
        "shares 0 to 1, days above 0, no more up than sown",
        (("learning.share", "packet_belief beta_update shrunk_share belief_from_lots "
          "old_seed_belief count_sd"),
         ("learning.days", "middle_of_look shrunk_median"),
         ("learning.losses", "james_stein_factor"),
         ("learning.lot_spread", "spread_of_lots"),
         ("numbers.distributions", "beta_cdf t_quantile"))),
    Section("How much sun?",
        "The radiation a day brings to bench and frame. J is the day of the year, n/N the share of "
        "sun, ws the hour angle of sunset, d the declination.",
        FAO,
        "latitude -90 to 90 deg, day of the year 1 to 366",
        (("sky.sun", "relative_distance declination_rad sunset_angle_rad extraterrestrial_mj "
          "daylight_hours_fao radiation_from_sunshine_mj radiation_from_sky_word_mj "
          "radiation_from_range_mj clear_sky_mj"),
         ("frame.weather", "radiation_mj"))),
    Section("How warm, hour by hour?",
        "The temperature between the day's lowest and highest, and the heat it adds up to.",
        OURS,
        "-60 to 60 degC, the maximum not below the minimum",
        (("sky.hourly", "hour_temp_c hour_temp_two_harmonics_c"),
         ("sky.degreedays", "single_sine single_triangle averaging double_sine double_triangle"))),
    Section("Will it freeze?",
        "Tonight's lowest, and the days by which frosts have come and gone.",
        OURS,
        "-60 to 60 degC, the dew point not above the air",
        (("sky.tonight", "mckenzie_c craddock_pritchard_c smith_grass_c guessed_dew_point_c"),
         ("sky.frost", "frost_severity us_freeze is_harmed"),
         ("sky.frost_line", "quantile"))),
    Section("How dry is the air?",
        "What the air could still take up, from whatever was measured. T is in degC, RH in %, P in "
        "kPa, z in m.",
        FAO,
        "-60 to 75 degC, humidity 0 to 100 %",
        (("sky.vapour", "saturation_kpa mean_saturation_kpa slope_kpa_per_c deficit_kpa "
          "pressure_kpa psychrometric_kpa_per_c actual_from_extremes_kpa "
          "actual_from_mean_humidity_kpa actual_from_dew_point_kpa actual_from_minimum_kpa "
          "actual_from_wet_bulb_kpa dew_point_c"),)),
    Section("How much water does a day take?",
        "What trays and places lose, and when the next watering is due.",
        FAO,
        "-60 to 60 degC, humidity 0 to 100 %",
        (("sky.penman", "wind_at_2m_ms net_longwave_mj penman_monteith_mm open_water_mm"),
         ("sky.evapotranspiration", "radiation_mj actual_vapour_kpa under_cover_et"),
         ("sky.simple_evaporation", "hargreaves_fao52_mm hargreaves_fitted_range_mm turc_mm"),
         ("water.balance", "daily_loss_ml weight_share_to_water_at"))),
    Section("How hot does a shut frame get?",
        "When to lift the lid, how far, and when to lower it.",
        "Boulard & Baille 1995, Agricultural and Forest Meteorology 76:145 (symbols read, values "
        "from memory)",
        "0 to 1400 W/m2",
        (("frame.balance", "ventilation_m3_s gain_c"),)),
    Section("When to sow, and sow again?",
        "Days counted back from a wanted one, and the next sowing in a row.",
        OURS,
        "mean above the base; else no answer",
        (("planning.succession", "heat_between_sowings days_to_collect two_point_base"),)),
)  # fmt: skip
