"""Make drift.json: what SciPy finds in 50 seeded sets of block measures.

SciPy (PyPI `scipy`) is a general library of statistics. Deviations are whole
nanometres, handed to it in millimetres. Run from this folder:

    pip install scipy==1.17.1 && python3 drift.py
"""

import json
import random

from scipy import stats

dice = random.Random(241)
sets = []
for i in range(50):
    count = dice.choice([3, 4, 5, 6, 8, 12, 20, 48, 200])
    spread = 10 ** dice.uniform(-2, 1)
    offset = dice.choice([0.0, 0.5, -1.5, 10.0]) * dice.random()
    apart = dice.choice([0.0, 0.0, 1.0, -2.0]) * dice.random()
    slope = dice.choice([0.0, 0.0, 0.2, -0.05])
    uneven = dice.choice([1.0, 3.0])
    across, down = [], []
    for k in range(count):
        at = offset + slope * k
        across.append(round(1e6 * (at + apart + dice.gauss(0, spread))))
        down.append(round(1e6 * (at + dice.gauss(0, spread * uneven))))
    wide = [a / 1e6 for a in across]
    high = [d / 1e6 for d in down]
    off = [(a + d) / 2e6 for a, d in zip(across, down)]
    about = stats.describe(off, ddof=1)
    line = stats.linregress(range(count), off)
    low, top = stats.t.interval(0.95, count - 1, loc=about.mean, scale=stats.sem(off))
    sets.append({
        "across": across,
        "down": down,
        "mean": float(about.mean),
        "spread": float(about.variance) ** 0.5,
        "low": float(low),
        "top": float(top),
        "p": float(stats.ttest_1samp(off, 0.0).pvalue),
        "slope": float(line.slope),
        "error": float(line.stderr),
        "slope_p": float(line.pvalue),
        "welch_p": float(stats.ttest_ind(wide, high, equal_var=False).pvalue),
    })

with open("drift.json", "w") as out:
    out.write("[\n" + ",\n".join(json.dumps(s) for s in sets) + "\n]\n")
