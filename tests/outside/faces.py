"""Make faces.json: proven least costs of small layouts, and wrap-around discrepancies.

`faces-joint-asked.json` asks for layouts of fabrics and denims at once: how many squares are
of each denim, how light each denim is, and what is wished for them; `faces-joint.json` has
the answers. Costs by OR-tools CP-SAT (PyPI `ortools`), a general exact solver, from the formulas at
the head of `arrange/mod.rs`; discrepancies by SciPy's `scipy.stats.qmc` on random sets of
squares. `faces-asked.json` says which grids, and how many squares of each print lie on
each face. Run from this folder:

    pip install ortools==9.15.6755 scipy==1.17.1 && python3 faces.py

`python3 faces.py joint` stops after the joint layouts.
"""

import itertools
import json
import random
import sys

from ortools.sat.python import cp_model
from scipy.stats import qmc

EVEN, EVEN_PRINT, THICK, ALIKE = 1000, 400, 45, 2500
DENIM_TOUCHES, DENIM_BORDER, SHADE = 300, 400, 8
SCALE = 1000


def part(d, n):
    return 3 * n * n - 2 * d * (n - d)


def denim_costs(model, across, down, covered, denims):
    """The costs of the denims: of each so many squares, apart, together or by shade."""
    places = range(across * down)
    of = [[model.new_bool_var("") for _ in places] for _ in denims["counts"]]
    for i in places:
        model.add_exactly_one(on[i] for on in of)
    for on, count in zip(of, denims["counts"]):
        model.add(sum(on) == count)
    beside = [(i, i + 1) for i in places if i % across + 1 < across]
    beside += [(i, i + across) for i in places if i + across < across * down]
    cost = []
    for i, j in beside:
        for on in of:
            if denims["wish"] == "apart":
                for covers in covered:
                    seen = model.new_bool_var("")
                    model.add(seen >= on[i] + on[j] - covers[i] - covers[j] - 1)
                    cost.append((SCALE * DENIM_TOUCHES, seen))
        if denims["wish"] == "bands":
            border = model.new_bool_var("")
            for on in of:
                model.add(border >= on[i] - on[j])
            cost.append((SCALE * DENIM_BORDER, border))
    if denims["shade-rows"]:
        want = sorted((light for light, n in zip(denims["light"], denims["counts"]) for _ in range(n)),
                      reverse=True)
        for on, light in zip(of, denims["light"]):
            cost += [(SCALE * SHADE * abs(light - want[i]), on[i]) for i in places]
    return cost


def least(across, down, counts, denims=None):
    places = [(r, c) for r in range(down) for c in range(across)]
    total = len(places)

    def kernel(a, b):
        return part(abs(a[0] - b[0]), down) * part(abs(a[1] - b[1]), across)

    k0 = kernel(places[0], places[0])
    row = sum(kernel(places[0], p) for p in places)
    model = cp_model.CpModel()
    cost, constant = [], 0

    def even(on, n, weight):
        nonlocal constant
        floor = n * n * row // total
        chance = n * k0 + n * (n - 1) * (row - k0) // (total - 1)
        unit = (chance - floor) // n if n else 0
        if unit <= 0:
            return
        constant += weight * (n * k0 - floor) / unit
        both = []
        for i, j in itertools.combinations(range(total), 2):
            z = model.new_bool_var("")
            model.add(z >= on[i] + on[j] - 1)
            both.append(z)
            cost.append((round(SCALE * weight * 2 * kernel(places[i], places[j]) / unit), z))
        model.add(sum(both) == n * (n - 1) // 2)

    covered = []
    for of_face in counts:
        prints = []
        for count in of_face:
            on = [model.new_bool_var("") for _ in places]
            model.add(sum(on) == count)
            prints.append(on)
        covers = []
        for i in range(total):
            any_print = model.new_bool_var("")
            model.add(sum(on[i] for on in prints) == any_print)
            covers.append(any_print)
        covered.append(covers)
        even(covers, sum(of_face), EVEN)
        for on, count in zip(prints, of_face):
            even(on, count, EVEN_PRINT)
            for i, j in itertools.combinations(range(total), 2):
                (a, b), (c, d) = places[i], places[j]
                if max(abs(a - c), abs(b - d)) == 1:
                    z = model.new_bool_var("")
                    model.add(z >= on[i] + on[j] - 1)
                    cost.append((SCALE * ALIKE, z))
    for r in range(down - 1):
        for c in range(across - 1):
            corner = [r * across + c, r * across + c + 1, (r + 1) * across + c, (r + 1) * across + c + 1]
            met = sum(covers[i] for covers in covered for i in corner)
            squared = model.new_int_var(0, 64, "")
            for j in range(8):
                model.add(squared >= (2 * j + 1) * met - j * (j + 1))
            cost.append((SCALE * THICK, squared))
    if denims:
        cost += denim_costs(model, across, down, covered, denims)
    model.minimize(sum(weight * var for weight, var in cost))
    solver = cp_model.CpSolver()
    solver.parameters.max_time_in_seconds = 1500
    solver.parameters.num_workers = 4
    status = solver.solve(model)
    return solver.status_name(status), round(solver.objective_value / SCALE + constant, 3), solver.wall_time


def proven(name):
    optima = []
    for case in json.load(open(name)):
        status, value, seconds = least(case["across"], case["down"], case["counts"], case.get("denims"))
        print(case, status, value, round(seconds, 1), flush=True)
        optima.append({**case, "status": status, "least": value})
    return optima


with open("faces-joint.json", "w") as out:
    json.dump(proven("faces-joint-asked.json"), out, indent=1)
    out.write("\n")
if "joint" in sys.argv:
    sys.exit()
optima = proven("faces-asked.json")
dice = random.Random(77)
discrepancies = []
for _ in range(60):
    across, down = dice.randrange(1, 61), dice.randrange(2, 61)
    n = dice.randrange(1, across * down + 1)
    places = sorted(dice.sample(range(across * down), min(n, 400)))
    points = [((p % across + 0.5) / across, (p // across + 0.5) / down) for p in places]
    discrepancies.append({"across": across, "down": down, "places": places,
                          "wd": qmc.discrepancy(points, method="WD")})

with open("faces.json", "w") as out:
    json.dump({"optima": optima, "discrepancies": discrepancies}, out)
    out.write("\n")
