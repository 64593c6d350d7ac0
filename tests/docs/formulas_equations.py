"""What a docstring does not hold in one line: equations, words and sources of single formulas."""

from __future__ import annotations

EQUATIONS: dict[str, str] = {
    "seed.thermal_model.heat_of_day":
        "0 up to base; T - base up to optimum; level; straight down to 0 at ceiling",
    "seed.thermal_model.emerged_share": "Phi(ln(heat / theta50) / sigma)",
    "seed.thermal_model.heat_for_share": "theta50 exp(sigma Phi^-1(share))",
    "seed.thermal_model.chance_nothing": "1 - Phi(ln(heat / theta50) / sigma)",
    "seed.lateness.chance_alive": "(1 - pi) S / (pi + (1 - pi) S)",
    "seed.lateness.chance_up_within": "(1 - pi) (S_now - S_later) / (pi + (1 - pi) S_now)",
    "seed.lateness.survival_at_which_alive_is": "q pi / ((1 - q) (1 - pi))",
    "seed.lateness.lognormal_nothing": "S(d) = 1 - Phi(ln(d / median) / sigma)",
    "seed.lateness.loglogistic_steepness": "k = pi / (sqrt(3) sigma)",
    "seed.lateness.loglogistic_nothing": "S(d) = 1 / (1 + (d / median)^k)",
    "seed.partial_count.chance_none_up": "sum over k of BetaBin(k; n, a, b) (1 - F)^k",
    "seed.partial_count.germination_after_none":
        "sum w_k (a + k) / (a + b + n) / sum w_k, w_k = BetaBin(k; n, a, b) (1 - F)^k",
    "seed.partial_count.final_count_chances": "C(n-y, k) B(a+y+k, b+n-y-k) (1 - F)^k, summing to 1",
    "seed.germination_indices.mean_days": "sum n t / Ng",
    "seed.germination_indices.variance_days": "sum n (t - mean)^2 / (Ng - 1)",
    "seed.germination_indices.mean_rate": "1 / mean time",
    "seed.germination_indices.kotowski_velocity": "100 / mean time",
    "seed.germination_indices.speed": "sum n_i / t_i",
    "seed.germination_indices.corrected_speed": "sum (100 n_i / N) / t_i / (100 Ng / N)",
    "seed.germination_indices.accumulated_speed": "sum cumulative_i / t_i",
    "seed.germination_indices.weighted_percent": "100 sum (k - i + 1) n_i / (k N)",
    "seed.germination_indices.germination_index": "sum (t_k - t_i) n_i / N",
    "seed.germination_indices.emergence_rate_index": "sum n_i (k - i)",
    "seed.germination_indices.uniformity": "Ng / sum n (t - mean)^2",
    "seed.germination_indices.synchrony": "sum n (n - 1) / (Ng (Ng - 1))",
    "seed.germination_indices.uncertainty_bits": "-sum f log2 f, f = n_i / Ng",
    "seed.germination_indices.mean_percent_per_day": "100 Ng / N / t_k",
    "seed.germination_indices.mean_number_per_day": "Ng / t_k",
    "seed.germination_indices.peak_value": "largest of 100 cumulative_i / N / t_i",
    "seed.germination_times.t50_farooq": "t_i + (Ng/2 - c_i) (t_j - t_i) / (c_j - c_i)",
    "seed.germination_times.t50_coolbear": "t_i + ((Ng + 1)/2 - c_i) (t_j - t_i) / (c_j - c_i)",
    "seed.hill.fit_hill": "y = a t^b / (c^b + t^b)",
    "seed.survival.kaplan_meier": "S = prod(1 - d/n), error S sqrt(sum d / (n (n - d)))",
    "numbers.shares.wilson": "(y + z^2/2 +- z sqrt(y (n - y) / n + z^2/4)) / (n + z^2)",
    "seed.cells_needed.share_with_plant": "1 - (1 - g)^s",
    "seed.cells_needed.blank_share": "(1 - g)^s",
    "seed.cells_needed.chance_enough": "P(Bin(n, p) >= N)",
    "seed.cells_needed.first_guess":
        "((z sqrt(q) + sqrt(z^2 q + 4 (N - 1/2))) / (2 sqrt(p)))^2, q = 1 - p, z = Phi^-1(P)",
    "seed.cells_needed.cells_needed": "least n with P(Bin(n, p) >= N) >= P",
    "seed.cells_needed.cells_needed_uncertain":
        "least n with sum C(m-1, N-1) E[p^N (1-p)^(m-N)] >= P, m from N to n",
    "seed.weight.weigh": "(n sum x^2 - (sum x)^2) / (n (n - 1))",
    "seed.viability.days_per_deviate": "log10 sigma = KE - CW log10 m - CH t - CQ t^2",
    "seed.viability.viability_after": "Phi(Phi^-1(start) - days / sigma)",
    "seed.viability.days_until": "(Phi^-1(start) - Phi^-1(end)) sigma",
    "seed.viability.half_life_days": "Phi^-1(start) sigma",
    "seed.viability.equilibrium_moisture":
        "(1 - oil) sqrt(-440 ln(1 - RH)) / (1.1 + t / 90)",
    "learning.share.shrunk_share": "(k m + y) / (k + n)",
    "learning.share.old_seed_belief": "Beta(1 + sum d^age y, 1 + sum d^age (n - y))",
    "learning.share.count_sd": "sqrt(n p q (1 + (n - 1) phi))",
    "learning.days.middle_of_look": "(day of the look before + day of the look) / 2",
    "learning.days.shrunk_median": "exp((k ln m0 + sum ln x) / (k + n))",
    "learning.losses.james_stein_factor": "c = 1 - (k - 3) s^2 / sum (y - mean)^2, not below 0",
    "learning.lot_spread.spread_of_lots": "greatest product of BetaBin(y; n, m (a+b), (1-m) (a+b))",
    "numbers.distributions.beta_cdf": "integral from 0 to x of t^(a-1) (1-t)^(b-1) dt / B(a, b)",
    "numbers.distributions.t_quantile":
        "t^2 = v (1 - x) / x, x = I^-1(2 min(q, 1-q); v/2, 1/2)",
    "sky.sun.extraterrestrial_mj":
        "(24 60 / pi) 0.0820 dr (ws sin(lat) sin(d) + cos(lat) cos(d) sin(ws))",
    "sky.sun.radiation_from_sky_word_mj": "(0.25 + 0.50 n/N) Ra",
    "frame.weather.radiation_mj": "(0.25 + 0.50 n/N) Ra, else kRs sqrt(Tmax - Tmin) Ra",
    "sky.hourly.hour_temp_two_harmonics_c":
        "Tmax G + Tmin (1 - G), G = 0.44 - 0.46 sin(0.9 + w t) + 0.11 sin(0.9 + 2 w t), w = pi/12",
    "sky.degreedays.single_sine":
        "((m - T)(pi/2 - u) + a cos u) / pi, u = asin((T - m) / a), between the extremes",
    "sky.degreedays.single_triangle": "(Tmax - T)^2 / (2 (Tmax - Tmin)) between the extremes",
    "sky.degreedays.double_sine": "half a sine from this minimum, half from the next night's",
    "sky.degreedays.double_triangle": "half a triangle from this minimum, half from the next",
    "sky.frost.is_harmed": "Tmin <= 5, 0, -2, -4, -7, -10 degC, from hurt above freezing to hardy",
    "sky.tonight.guessed_dew_point_c": "Td = Tmin of last night",
    "sky.frost_line.quantile": "x_k + (h - k) (x_k+1 - x_k), h = (n - 1) p + 1, k whole part of h",
    "sky.vapour.mean_saturation_kpa": "(e0(Tmax) + e0(Tmin)) / 2",
    "sky.vapour.actual_from_extremes_kpa":
        "(e0(Tmin) RHmax / 100 + e0(Tmax) RHmin / 100) / 2",
    "sky.vapour.actual_from_mean_humidity_kpa": "RHmean / 100 (e0(Tmax) + e0(Tmin)) / 2",
    "sky.vapour.actual_from_dew_point_kpa": "e0(Td)",
    "sky.vapour.actual_from_minimum_kpa": "e0(Tmin)",
    "sky.vapour.dew_point_c": "237.3 x / (17.27 - x), x = ln(e / 0.6108)",
    "sky.penman.net_longwave_mj":
        "s (Tmax^4 + Tmin^4) / 2 (0.34 - 0.14 sqrt(ea)) (1.35 Rs/Rso - 0.35), T in K",
    "sky.penman.penman_monteith_mm":
        "(0.408 D (Rn - G) + g 900 / (T + 273) u2 (es - ea)) / (D + g (1 + 0.34 u2))",
    "sky.penman.open_water_mm": "D / (D + g) Rn / L + g / (D + g) f(u) (es - ea)",
    "sky.evapotranspiration.radiation_mj": "(0.25 + 0.50 n/N) Ra, else kRs sqrt(Tmax - Tmin) Ra",
    "sky.evapotranspiration.actual_vapour_kpa": "RHmean / 100 es, else e0(Tmin)",
    "sky.evapotranspiration.under_cover_et": "Penman-Monteith with r_a = 150 s/m under the cover",
    "water.balance.weight_share_to_water_at":
        "(full weight - allowed share x available water) / full weight",
    "frame.balance.gain_c":
        "taken (1-E) (1-S) = dT (Ul Al + Uw Aw + rho cp (V ach / 3600 + Q)), solved for dT",
    "planning.succession.heat_between_sowings": "gap at harvest x (harvest mean - base)",
    "planning.succession.days_to_collect": "heat / (mean - base), stepped up",
    "planning.succession.two_point_base": "Tb = (T2 - r T1) / (1 - r), r = d1 / d2",
}  # fmt: skip
"""Equations in one line, where the docstring has them in several or leaves them to its source."""

GIVES: dict[str, str] = {
    "seed.lateness.lognormal_nothing":
        "the chance that a good batch shows nothing on a day, log-normal",
    "seed.lateness.loglogistic_nothing":
        "the chance that a good batch shows nothing on a day, log-logistic",
    "seed.lateness.loglogistic_steepness":
        "the log-logistic steepness with the spread of a log-normal",
    "seed.germination_indices.mean_days": "the mean germination time",
    "seed.germination_indices.variance_days": "the variance of that time",
    "seed.germination_indices.mean_rate": "the mean germination rate",
    "seed.germination_indices.kotowski_velocity": "the coefficient of velocity",
    "seed.germination_indices.speed": "the speed of germination",
    "seed.germination_indices.accumulated_speed": "the speed from cumulative counts",
    "seed.germination_indices.weighted_percent": "a percentage that weighs early seedlings more",
    "seed.germination_indices.germination_index": "an index that weighs early seedlings more",
    "seed.germination_indices.emergence_rate_index": "an index of how soon they emerge",
    "seed.germination_indices.uniformity": "how evenly they come",
    "seed.germination_indices.synchrony": "the chance that two came up together",
    "seed.germination_indices.uncertainty_bits": "how scattered they come, in bits",
    "seed.germination_indices.mean_number_per_day": "seedlings over the day of the last look",
    "seed.germination_times.t50_farooq": "the median time, at Ng / 2",
    "seed.germination_times.t50_coolbear": "the median time, at (Ng + 1) / 2",
    "seed.hill.fit_hill": "the curve through the cumulative percentages",
    "seed.survival.kaplan_meier": "the share not yet up, some watched no longer, with its error",
    "numbers.shares.wilson": "the range a share y of n may lie in",
    "seed.cells_needed.share_with_plant": "the share of cells with at least one seedling",
    "seed.cells_needed.blank_share": "the share of cells with no seedling",
    "seed.cells_needed.chance_enough": "the chance of at least N plants from so many cells",
    "seed.cells_needed.first_guess": "the guess the exact sum starts from",
    "learning.share.shrunk_share": "the packet's share drawn to your own counts",
    "learning.share.old_seed_belief": "the belief from counts of some years, older ones worth less",
    "learning.share.count_sd": "the standard deviation of a count",
    "learning.days.shrunk_median": "the library's median drawn to your own batches",
    "learning.losses.james_stein_factor": "how far to trust differences between crops or packets",
    "learning.lot_spread.spread_of_lots": "how far lots differ beyond chance",
    "numbers.distributions.t_quantile": "Student's t with chance q below it",
    "planning.succession.two_point_base": "a base temperature from two sowings, and the heat",
}  # fmt: skip
"""In other words than the docstring's first sentence, where that is an equation itself."""

ZALOM = "Zalom et al. 1983, UC leaflet 21373"
SOURCES: dict[str, str] = {
    "sky.frost.us_freeze": "US National Weather Service, Jackson",
    "sky.frost.is_harmed": "review in PMC10202904, table 2",
    "seed.survival.kaplan_meier":
        "Kaplan & Meier 1958, J. Am. Stat. Assoc. 53:457-481; Greenwood 1926 (from memory)",
    "sky.degreedays.single_sine": f"Baskerville & Emin 1969, Ecology 50:514; {ZALOM}",
    "seed.hill.fit_hill": "El-Kassaby et al. 2008, as documented in germinationmetrics",
    "seed.weight.weigh": "FRSA tutorial on AOSA Appendix 4, 2001 (read)",
    "sky.degreedays.double_triangle": ZALOM,
    "numbers.shares.none_up_limit": "follows from the laws of chance",
    "frame.balance.ventilation_m3_s":
        "Boulard & Baille 1995, Agricultural and Forest Meteorology 76:145 (symbols read)",
    "planning.succession.heat_between_sowings":
        "Ottosson, heat units in sowing programmes of vining peas, ISHS article 27_34 (read)",
}  # fmt: skip
"""Sources told at the head of a file, or in other words than author and year."""

REACHES: dict[str, str] = {
    "seed.thermal_model.heat_of_day": "any mean temperature of the compost",
    "seed.weight.weigh": "two weighings or more, each above 0 g",
    "sky.frost_line.quantile": "share 0 to 1, one value or more",
    "sky.sun.radiation_from_sky_word_mj": "share of sun 0 to 1",
    "learning.days.middle_of_look": "the look not before the one before",
    "learning.days.shrunk_median": "days above 0",
}  # fmt: skip
"""Ranges the code checks and the docstring leaves to it."""
