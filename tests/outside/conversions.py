"""Make conversions.csv: 1,000 random lengths put into millimetres by Pint.

Pint (PyPI `pint`) is a general units library; it is asked with exact decimals, so
what it says is exact where the decimal ends. Run from this folder:

    pip install pint==0.25.3 && python3 conversions.py
"""

import csv
import decimal
import random

import pint

decimal.getcontext().prec = 60
units = pint.UnitRegistry(non_int_type=decimal.Decimal)
names = {"in": "inch", "ft": "foot", "yd": "yard", "mm": "millimeter", "cm": "centimeter", "m": "meter"}
most = {"in": 3900, "ft": 320, "yd": 100, "mm": 99000, "cm": 9900, "m": 99}
places = {"in": 5, "ft": 4, "yd": 3, "mm": 3, "cm": 4, "m": 5}
dice = random.Random(1959)

with open("conversions.csv", "w", newline="") as out:
    rows = csv.writer(out, lineterminator="\n")
    rows.writerow(["typed", "millimetres"])
    for i in range(1000):
        unit = dice.choice(list(names))
        if unit == "in" and i % 2:
            # As on a ruler: whole inches and sixty-fourths.
            whole, part = dice.randrange(100), dice.randrange(1, 64)
            typed = f"{whole} {part}/64 in"
            value = decimal.Decimal(whole * 64 + part) / 64
        else:
            shift = dice.randrange(places[unit] + 1)
            value = decimal.Decimal(dice.randrange(1, most[unit] * 10**shift)).scaleb(-shift)
            typed = f"{value:f} {unit}"
        mm = units.Quantity(value, names[unit]).to("millimeter").magnitude
        rows.writerow([typed, f"{mm.normalize():f}"])
