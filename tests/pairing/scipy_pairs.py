#!/usr/bin/env python3
"""Independent computation of indicated errors and best trims, with NumPy and SciPy.

Writes tests/data/pairing-errors-scipy.csv and pairing-trims-scipy.csv; with --check it recomputes both and compares with what is there. All gauges,
senders and bands are random; nothing in here is a real part. Shares no code with the program: extremes by scipy.optimize.minimize_scalar on a dense grid,
the hot mark by brentq, Steinhart-Hart by brentq on its own equation, the best trim by trying every network of the E24 series.
"""
import csv
import math
import pathlib
import sys

import numpy as np
from scipy.optimize import brentq, minimize_scalar

DATA = pathlib.Path(__file__).resolve().parent.parent / "data"
ZERO = 273.15
PAIRS = 60
TRIMS = 50
TEMPERATURES = 60
LOW_WEIGHT = 2.0


def e24():
    with open(DATA / "iec60063-e-series.csv", encoding="utf-8") as file:
        rows = csv.DictReader(line for line in file if not line.startswith("#"))
        mantissas = [float(row["value"]) for row in rows if row["series"] == "E24"]
    values = [round(m * 10.0**k, 6) for k in range(6) for m in mantissas]
    return np.array([v for v in values if v <= 100e3 * (1 + 1e-12)])


def beta(cold_ohms, hot_ohms, cold, hot):
    """r0, t0, b through two points in kelvin."""
    return cold_ohms, cold, math.log(cold_ohms / hot_ohms) / (1 / cold - 1 / hot)


def ln_ohms(kind, c, t):
    """ln R of the sender at t (scalar or array), kelvin."""
    if kind == "beta":
        return np.log(c[0]) + c[2] * (1 / t - 1 / c[1])
    if kind == "exponential":
        return np.log(c[0]) + c[1] / (t + c[2])
    solve = lambda one: brentq(lambda x: c[0] + c[1] * x + c[2] * x**3 - 1 / one, -5.0, 20.0, xtol=1e-14, rtol=1e-14)
    return np.vectorize(solve)(t)


class Gauge:
    def __init__(self, row):
        self.kind = row["gauge"]
        self.family = (row["g1"], row["g2"], row["g3"])  # beta: r0, t0, b
        self.coil = (row["grounded"], row["sweep"], row["half"])
        self.marks = [(row[f"t{i}"], row[f"a{i}"]) for i in (1, 2, 3)]

    def shown(self, ohms):
        ohms = np.asarray(ohms, dtype=float)
        if self.kind == "family":
            r0, t0, b = self.family
            return 1 / (1 / t0 + np.log(ohms / r0) / b)
        grounded, sweep, half = self.coil
        x, d = ohms / half, math.radians(sweep)
        angle = grounded + np.degrees(np.arctan2(x * math.sin(d), 1 + x * math.cos(d)))
        (t1, a1), (t2, a2), (t3, a3) = self.marks
        first = t1 + (angle - a1) * (t2 - t1) / (a2 - a1)
        second = t2 + (angle - a2) * (t3 - t2) / (a3 - a2)
        return np.where(angle <= a2, first, second)

    def family_shown(self, t):
        r0, t0, b = self.family
        return self.shown(r0 * np.exp(b * (1 / t - 1 / t0)))


def seen(topology, s, p, r):
    if topology == "series":
        return r + s
    if topology == "parallel":
        return 1 / (1 / r + 1 / p)
    if topology == "parallel then series":
        return 1 / (1 / r + 1 / p) + s
    if topology == "series then parallel":
        return 1 / (1 / (r + s) + 1 / p)
    return r


def random_pair(rng):
    cold, hot = rng.uniform(303, 318), rng.uniform(378, 393)
    own = beta(rng.uniform(200, 1600), rng.uniform(40, 110), cold, hot)
    row = {"gauge": rng.choice(["family", "coil"]), "g1": own[0], "g2": own[1], "g3": own[2]}
    mark_hot = rng.uniform(383, 395)
    middle, mark_cold = mark_hot - rng.uniform(25, 40), rng.uniform(308, 323)
    family = lambda t: own[0] * math.exp(own[2] * (1 / t - 1 / own[1]))
    row["grounded"], row["sweep"], row["half"] = rng.uniform(50, 80), -rng.uniform(100, 150), family(rng.uniform(340, 375))
    for i, t in enumerate((mark_cold, middle, mark_hot), start=1):
        d, x = math.radians(row["sweep"]), family(t) / row["half"]
        angle = row["grounded"] + math.degrees(math.atan2(x * math.sin(d), 1 + x * math.cos(d)))
        row[f"t{i}"], row[f"a{i}"] = t, round(angle + rng.uniform(-0.5, 0.5), 1)  # printed, not perfect
    row["sender"] = rng.choice(["beta", "exponential", "sh"])
    other = beta(own[0] * rng.uniform(0.5, 3.0), family(hot) * rng.uniform(0.6, 1.5), cold, hot)
    if row["sender"] == "beta":
        c = other
    elif row["sender"] == "exponential":
        shift = rng.uniform(-60, 20)
        hot_ohms = other[0] * math.exp(other[2] * (1 / hot - 1 / cold))
        b = math.log(other[0] / hot_ohms) / (1 / (cold + shift) - 1 / (hot + shift))
        c = (other[0] * math.exp(-b / (cold + shift)), b, shift)
    else:
        c2 = rng.uniform(1e-8, 4e-7)
        c1 = 1 / other[2] * rng.uniform(0.85, 1.0)
        l0 = math.log(other[0])
        c = (1 / cold - c1 * l0 - c2 * l0**3, c1, c2)
    row["c1"], row["c2"], row["c3"] = c
    row["band_low"], row["band_high"] = mark_hot - rng.uniform(25, 40), mark_hot
    return row


def errors(row):
    gauge, topology = Gauge(row), row["topology"]
    c = (row["c1"], row["c2"], row["c3"])
    shown = lambda t: gauge.shown(seen(topology, row["s"], row["p"], np.exp(ln_ohms(row["sender"], c, t))))
    error = lambda t: shown(t) - t
    grid = np.linspace(row["band_low"], row["band_high"], 2001)
    values = error(grid)

    def extreme(sign):
        i = int(np.argmin(sign * values))
        around = grid[max(i - 1, 0)], grid[min(i + 1, len(grid) - 1)]
        found = minimize_scalar(lambda t: sign * float(error(t)), bounds=around, method="bounded", options={"xatol": 1e-9})
        return sign * min(found.fun, sign * values[i])

    low, high = extreme(1), extreme(-1)
    mark = row["t3"]
    crossing = lambda f: brentq(lambda t: float(f(t)) - mark, 300, mark + 20, xtol=1e-11)
    try:
        late = crossing(shown) - (mark if gauge.kind == "family" else crossing(gauge.family_shown))
    except ValueError:
        late = math.nan
    return {"low": low, "high": high, "late": late}


def best_trim(row, values):
    gauge = Gauge(row)
    c = (row["c1"], row["c2"], row["c3"])
    t = np.linspace(row["band_low"], row["band_high"], TEMPERATURES)
    r = np.exp(ln_ohms(row["sender"], c, t))

    def weighted(ohms):
        error = gauge.shown(ohms) - t
        return np.maximum(error, -LOW_WEIGHT * error).max(axis=-1)

    one, two = values[:, None], values[:, None, None]
    best = {"none": float(weighted(r))}
    best["series"] = weighted(seen("series", one, None, r)).min()
    best["parallel"] = weighted(seen("parallel", None, one, r)).min()
    for topology in ("parallel then series", "series then parallel"):
        best[topology] = min(weighted(seen(topology, one, p, r)).min() for p in values)
    topology = min(best, key=best.get)
    return {"best_topology": topology, "best": best[topology], **{f"best_{k.replace(' ', '_')}": v for k, v in best.items()}}


def tables():
    rng = np.random.default_rng(1959)
    values = e24()
    pairs, trims = [], []
    for _ in range(PAIRS):
        row = random_pair(rng)
        row["topology"] = rng.choice(["none", "series", "parallel", "parallel then series", "series then parallel"])
        row["s"], row["p"] = float(rng.choice(values[0:30])), float(rng.choice(values[48:96]))
        pairs.append({**row, **errors(row)})
    for _ in range(TRIMS):
        row = random_pair(rng)
        trims.append({**row, **best_trim(row, values)})
    return {"pairing-errors-scipy.csv": pairs, "pairing-trims-scipy.csv": trims}


def text(value):
    return repr(float(value)) if isinstance(value, float) else str(value)


def write(name, rows):
    with open(DATA / name, "w", encoding="utf-8", newline="\n") as file:
        file.write("# computed by tests/pairing/scipy_pairs.py with SciPy; kelvin, ohms, degrees. Random, invented pairs.\n")
        if "best" in rows[0]:
            file.write(f"# best: least weighted worst error over {TEMPERATURES} temperatures, E24 from 1 ohm to 100 kilohm, "
                       f"low counted {LOW_WEIGHT:g} times, every network tried\n")
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(rows[0])
        for row in rows:
            writer.writerow([text(v) for v in row.values()])


def check(name, rows):
    with open(DATA / name, encoding="utf-8") as file:
        there = list(csv.DictReader(line for line in file if not line.startswith("#")))
    assert len(there) == len(rows), name
    for old, new in zip(there, rows):
        for key, value in new.items():
            if isinstance(value, float):
                same = math.isnan(value) and math.isnan(float(old[key])) or abs(float(old[key]) - value) <= 1e-7 * (1 + abs(value))
                assert same, (name, key, old[key], value)
            else:
                assert old[key] == str(value), (name, key)


if __name__ == "__main__":
    for table, content in tables().items():
        (check if "--check" in sys.argv else write)(table, content)
