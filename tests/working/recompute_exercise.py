"""Works the problems of `seatwise exercise --format json` again, from what the sheet gives, with formulas of its own.

python3 tests/working/recompute_exercise.py SHEET.json ANSWERS.json [SHEET.json ANSWERS.json ...]

Standard library only. Formulas: rings after Lame in plane stress, Newton cooling of one body with its internal resistance as
h/(1 + Bi/n), grey-body radiation (Stefan-Boltzmann constant of CODATA 2018), sizes at 20 degrees C (ISO 1), all written here
from the textbooks' forms and from nothing of the program. Ends with an error at the first answer that differs.
"""

import json
import math
import sys

SIGMA = 5.670374419e-8
# How far an answer may be off: a share of it, and an amount in its unit.
EXACT = (1e-9, 1e-13)  # closed forms in double precision; a length is a difference of two that are 1e12 times as large
STEPPED = (0.0, 2e-5)  # K: the program follows the bath in steps
COLD = (0.0, 3e-11)  # m: a size at such a temperature
HALVED = (0.0, 0.0051)  # s: the program finds a time to a hundredth of a second


class Given:
    """What a case gives; what it does not repeat stands with the first case."""

    def __init__(self, cases, number):
        self.values = {}
        for case in [cases[0], cases[number]]:
            self.values.update({entry["at"].replace("/seats/0/", ""): entry["value"] for entry in case["given"]})

    def __getitem__(self, at):
        return self.values[at]

    def get(self, at, otherwise):
        return self.values.get(at, otherwise)

    def has(self, at):
        return at in self.values

    def size(self, part, end):
        """A diameter: given, or the nominal one and a deviation of its class."""
        at = f"basis/{part}/{end}_mm"
        if self.has(at):
            return self[at]
        return self["nominal_mm"] + self[f"fit/{part}_limits_um/{'upper' if end == 'largest' else 'lower'}"]

    def coefficient(self, part):
        return self[f"job:{'bearing' if part == 'inner' else 'housing'}.material.expansion"]

    def strain(self, part, at, temperature):
        """A change of length: given, or by the coefficient."""
        place = f"basis/{part}/{at}"
        if self.has(place):
            return self[place]
        return self.coefficient(part) * (temperature() - self["job:reference"])

    def grown(self, part, end, at, temperature):
        return self.size(part, end) * (1 + self.strain(part, at, temperature))

    def clearance(self, inner, outer):
        """On arrival, of one end of each size."""
        at = "strain_at_bore_um_m"
        shop = lambda: self["basis/shop_c"]
        return self.grown("outer", outer, at, shop) - self.grown("inner", inner, at, lambda: leaving(self))

    def in_service(self, number, inner, outer):
        at = f"strain_in_service_um_m/{number}"
        temperature = lambda part: lambda: self[f"service/{number}/{part}_c"]
        return self.grown("inner", inner, at, temperature("inner")) - self.grown("outer", outer, at, temperature("outer"))

    def bears_in_shop(self):
        shop = lambda: self["basis/shop_c"]
        at = "strain_at_shop_um_m"
        return self.grown("inner", "largest", at, shop) - self.grown("outer", "smallest", at, shop)


def time_constant(g):
    film = g["chill/film_w_m2k"] / (1 + g["chill/biot"] / g["job:way_out"])
    return g["chill/mass_kg"] * g["job:bearing.material.heat_capacity"] / (film * g["chill/area_m2"])


def leaving(g):
    medium = g["chill/medium_c"]
    return medium + (g["basis/shop_c"] - medium) * math.exp(-g["chill/hold_s"] / time_constant(g))


def tightest(g):
    return g.size("inner", "largest") - g.size("outer", "smallest")


def clears(g, part):
    size = g.size("inner", "largest") if part == "inner" else g.size("outer", "smallest")
    step = (g["at_bore/placing_clearance_um"] + tightest(g)) / (g.coefficient(part) * size)
    return g["basis/shop_c"] + (-step if part == "inner" else step)


def shortest(g):
    medium = g["chill/medium_c"]
    return -time_constant(g) * math.log((clears(g, "inner") - medium) / (g["basis/shop_c"] - medium))


def in_air(g):
    """Runge-Kutta in time until the part is as warm as the temperature that clears, and a straight line in the last step."""
    shop, goal = g["basis/shop_c"], clears(g, "inner")
    inside = g["chill/biot"] / (g["job:way_out"] * g["chill/film_w_m2k"])
    stored = g["chill/mass_kg"] * g["job:bearing.material.heat_capacity"]

    def rate(t):
        film = g["job:bench.film"] + g["job:bearing.material.emissivity"] * SIGMA * (t * t + shop * shop) * (t + shop)
        return g["chill/area_m2"] * (shop - t) / (stored * (1 / film + inside))

    now, passed, step = leaving(g), 0.0, 0.5
    while True:
        a = rate(now)
        b = rate(now + step / 2 * a)
        c = rate(now + step / 2 * b)
        d = rate(now + step * c)
        after = now + step / 6 * (a + 2 * b + 2 * c + d)
        if after >= goal:
            return passed + step * (goal - now) / (after - now)
        now, passed = after, passed + step


def pressure(g, interference, end):
    joint = g["nominal_mm"]
    inside = g.get("basis/inner/inside_mm", 0.0)
    outside = g["basis/outer/outside_mm"]
    inner = ((joint**2 + inside**2) / (joint**2 - inside**2) - g["basis/inner/poisson"]) / g["basis/inner/elastic_modulus_mpa"]
    outer = ((outside**2 + joint**2) / (outside**2 - joint**2) + g["basis/outer/poisson"]) / g["basis/outer/elastic_modulus_mpa"]
    return g.get(f"press/shape/pressure_{end}", 1.0) * interference / (joint * (inner + outer))


def force(g, at_pressure, end):
    seat = math.pi * g["nominal_mm"] * g["press/length_mm"]
    if end == "high" and g.has("press/shape/force_high"):
        at_pressure *= g["press/shape/force_high"] / g["press/shape/pressure_high"]
    return g[f"press/friction_{end}"] * seat * at_pressure


def hoop(g):
    joint, outside = g["nominal_mm"], g["basis/outer/outside_mm"]
    return pressure(g, g.bears_in_shop(), "high") * (outside**2 + joint**2) / (outside**2 - joint**2)


def holds(g):
    remains = g.in_service(0, "smallest", "largest")
    plain = pressure(g, remains, "none")
    return g.get("press/shape/force_low", 1.0) * force(g, plain, "low")


def verdict(g):
    least = g.clearance("largest", "smallest")
    middle = (least + g.clearance("smallest", "largest")) / 2
    placing = g["at_bore/placing_clearance_um"]
    return "drops in" if least >= placing else "some will not" if middle >= placing else "press"


def kind(g):
    least = g.size("inner", "smallest") - g.size("outer", "largest")
    if tightest(g) <= 1e-12:
        return "clearance fit"
    return "interference fit" if least >= -1e-12 else "transition fit"


ANSWERS = {
    "basis/inner/smallest_mm": (EXACT, lambda g: g.size("inner", "smallest")),
    "basis/inner/largest_mm": (EXACT, lambda g: g.size("inner", "largest")),
    "basis/outer/smallest_mm": (EXACT, lambda g: g.size("outer", "smallest")),
    "basis/outer/largest_mm": (EXACT, lambda g: g.size("outer", "largest")),
    "fit/interference_um/tightest": (EXACT, tightest),
    "fit/interference_um/loosest": (EXACT, lambda g: g.size("inner", "smallest") - g.size("outer", "largest")),
    "clears_at/inner_c": (STEPPED, lambda g: clears(g, "inner")),
    "clears_at/outer_c": (STEPPED, lambda g: clears(g, "outer")),
    "chill/time_constant_s": (EXACT, time_constant),
    "chill/end_c": (STEPPED, leaving),
    "at_bore/clearance_um/tightest": (EXACT, lambda g: g.clearance("largest", "smallest")),
    "time_to_clear_s/tightest": (HALVED, shortest),
    "window_s/tightest": (HALVED, in_air),
    "press/pressure_mpa/tightest": (EXACT, lambda g: pressure(g, g.bears_in_shop(), "high")),
    "press/force_n/tightest": (EXACT, lambda g: force(g, pressure(g, g.bears_in_shop(), "high"), "high")),
    "press/hoop_outer_mpa/tightest": (EXACT, hoop),
    "press/yield_factor/tightest": (EXACT, lambda g: g["press/elastic_limit_um"] / g.bears_in_shop()),
    "service/0/holds_n/loosest": (EXACT, holds),
    "service/0/holds_nm/loosest": (EXACT, lambda g: holds(g) * g["nominal_mm"] / 2),
}
for end, (inner, outer) in {"tightest": ("largest", "smallest"), "loosest": ("smallest", "largest")}.items():
    for state in (0, 1):
        ANSWERS[f"service/{state}/interference_um/{end}"] = (
            EXACT,
            lambda g, state=state, inner=inner, outer=outer: g.in_service(state, inner, outer),
        )
WORDS = {"verdict": verdict, "kind": kind}


def problem(sheet, answers, where):
    looked_at = 0
    for question in answers["questions"]:
        for answer in question["answers"]:
            if not answer["asked"]:
                continue
            given = Given(sheet["cases"], answer["case"])
            if answer["word"]:
                worked, said = WORDS[answer["word"]["of"]](given), answer["word"]["word"]
                good = worked == said
            else:
                at = answer["number"]["at"].replace("/seats/0/", "")
                (share, amount), formula = ANSWERS[at]
                if at == "at_bore/clearance_um/tightest" and given.has("chill/hold_s"):
                    share, amount = COLD
                worked, said = formula(given), answer["number"]["value"]
                good = abs(worked - said) <= share * abs(said) + amount
            if not good:
                sys.exit(f"{where}, {question['words']} case {answer['case']}: {worked} here, {said} in the answers")
            looked_at += 1
    return looked_at


def main(paths):
    looked_at = 0
    for sheet_path, answers_path in zip(paths[::2], paths[1::2]):
        with open(sheet_path, encoding="utf-8") as file:
            sheet = json.load(file)
        with open(answers_path, encoding="utf-8") as file:
            answers = json.load(file)
        if any(question["answers"] for problem in sheet["problems"] for question in problem["questions"]):
            sys.exit(f"{sheet_path} gives its answers away")
        for given, solved in zip(sheet["problems"], answers["problems"], strict=True):
            where = f"seed {sheet['seed']}, level {sheet['level']}, problem {given['number']}"
            looked_at += problem(given, solved, where)
    if not looked_at:
        sys.exit("no answers were looked at")
    print(f"{looked_at} answers worked again")


if __name__ == "__main__":
    main(sys.argv[1:])
