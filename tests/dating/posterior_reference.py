#!/usr/bin/env python3
"""Values of tests/data/dating-posterior.csv by another way: every combination of what may be so is enumerated one by one.

Each casting was fitted at assembly or changed, the stamp is true or false, the engine is the vehicle's first or not: 2^n cases, each a
sum over days with dense lag matrices, lags from scipy.stats.lognorm. The program multiplies mixtures and keeps running sums instead.
Usage: posterior_reference.py FILE writes the table; posterior_reference.py --check FILE recomputes and compares. Exit 77: no SciPy.
"""
import csv
import itertools
import sys
from datetime import date, timedelta

try:
    import numpy as np
    from scipy.linalg import toeplitz
    from scipy.stats import lognorm
except ImportError:
    print("SciPy is not installed: nothing recomputed")
    sys.exit(77)

# The beliefs the test sets; judgement from memory, no source.
MEDIAN_CASTING, SIGMA_CASTING, LONGEST_CASTING = 12.0, 0.9, 180
MEDIAN_VEHICLE, SIGMA_VEHICLE, LONGEST_VEHICLE = 10.0, 0.91, 180
FIRST_ENGINE, HEAD_STAYS, BLOCK_STAYS, STAMP_TRUE, RECUT_TRUE = 0.7, 0.97, 0.995, 0.95, 0.4

INPUTS = ["name", "window_from", "window_until", "c1_role", "c1_from", "c1_until", "c1_readings", "c2_role", "c2_from", "c2_until",
          "c2_readings", "stamp_readings", "pad_recut", "vehicle_from", "vehicle_until", "probe"]
OUTPUTS = ["assembly_mode", "assembly_mode_p", "assembly_probe_p", "first_engine", "c1_mode", "c1_mode_p", "c1_probe_p", "c1_fitted",
           "c2_mode", "c2_mode_p", "c2_fitted"]

# Readings: first day/day after the last*weight, several divided by a bar. Invented.
SCENARIOS = [
    ["one head known", "1966-07-01", "1977-07-01", "head", "", "", "1971-03-14/1971-03-15*1", "", "", "", "", "", "0", "", "",
     "1971-03-26"],
    ["one digit, span and build date", "1966-07-01", "1978-01-01", "head", "1966-09-01", "1972-01-01",
     "1967-03-14/1967-03-15*1|1977-03-14/1977-03-15*1|1968-03-14/1968-03-15*0.05", "", "", "", "", "", "0", "1967-04-20", "1967-04-21",
     "1967-03-30"],
    ["two heads and a stamp that agree", "1966-07-01", "1977-07-01", "head", "", "", "1971-03-14/1971-03-15*1", "head", "", "",
     "1971-03-10/1971-03-11*1|1970-03-10/1970-03-11*0.05", "1971-04-02/1971-04-03*1", "0", "1970-07-01", "1971-09-01", "1971-04-02"],
    ["head long after the stamp", "1966-07-01", "1977-07-01", "head", "", "", "1975-06-01/1975-06-02*1", "block", "", "",
     "1970-01-20/1970-01-21*1", "1970-02-10/1970-02-11*1", "0", "1970-02-25", "1970-02-26", "1970-02-10"],
    ["head against a sound stamp", "1966-07-01", "1977-07-01", "head", "", "", "1975-06-01/1975-06-02*1", "", "", "", "",
     "1970-02-10/1970-02-11*1", "0", "", "", "1970-02-10"],
    ["head against a re-cut stamp", "1966-07-01", "1977-07-01", "head", "", "", "1975-06-01/1975-06-02*1", "", "", "", "",
     "1970-02-10/1970-02-11*1", "1", "", "", "1970-02-10"],
    ["month only and a week", "1966-07-01", "1977-07-01", "head", "", "", "1968-02-01/1968-03-01*1|1978-02-01/1978-03-01*1", "head", "",
     "", "1968-02-12/1968-02-19*1", "", "0", "1967-07-01", "1968-09-01", "1968-03-01"],
    ["span alone against a model year", "1966-07-01", "1977-07-01", "head", "1969-08-01", "1973-02-01", "", "", "", "", "", "", "0",
     "1969-07-01", "1970-09-01", "1970-03-01"],
    ["engine far younger than the vehicle", "1966-07-01", "1977-07-01", "head", "", "", "1976-05-01/1976-05-02*1", "head", "", "",
     "1976-05-03/1976-05-04*1", "1976-05-20/1976-05-21*0.8|1966-05-20/1966-05-21*0.8", "0", "1967-02-01", "1967-02-02", "1976-05-20"],
]


def day(text):
    return date.fromisoformat(text)


def lag(median, sigma, longest):
    edges = np.concatenate([[0.0], np.arange(longest + 1) + 0.5])
    mass = np.diff(lognorm.cdf(edges, sigma, scale=median))
    return mass / mass.sum()


def after(mass, size):
    """after[a, c]: probability that what happened on day c is followed on day a."""
    column = np.zeros(size)
    column[:min(len(mass), size)] = mass[:size]
    return toeplitz(column, np.zeros(size))


def likelihood(readings, start, size):
    seen = np.zeros(size)
    for reading in filter(None, readings.split("|")):
        days, weight = reading.split("*")
        first, until = (max((day(d) - start).days, 0) for d in days.split("/"))
        seen[first:until] = np.maximum(seen[first:until], float(weight))
    return seen


def solve(row):
    s = dict(zip(INPUTS, row))
    start = day(s["window_from"])
    size = (day(s["window_until"]) - start).days
    to_assembly = after(lag(MEDIAN_CASTING, SIGMA_CASTING, LONGEST_CASTING), size)
    to_vehicle = after(lag(MEDIAN_VEHICLE, SIGMA_VEHICLE, LONGEST_VEHICLE), size)
    castings = []
    for c in ("c1", "c2"):
        if not s[c + "_role"]:
            continue
        seen = likelihood(s[c + "_readings"], start, size) if s[c + "_readings"] else np.ones(size)
        if s[c + "_from"]:
            seen[:max((day(s[c + "_from"]) - start).days, 0)] = 0
            seen[(day(s[c + "_until"]) - start).days:] = 0
        castings.append((c, seen, BLOCK_STAYS if s[c + "_role"] == "block" else HEAD_STAYS))
    stamp = likelihood(s["stamp_readings"], start, size) if s["stamp_readings"] else None
    vehicle = None
    if s["vehicle_from"]:
        vehicle = np.zeros(size)
        vehicle[(day(s["vehicle_from"]) - start).days:(day(s["vehicle_until"]) - start).days] = 1
    reliability = RECUT_TRUE if s["pad_recut"] == "1" else STAMP_TRUE

    assembly = np.zeros(size)
    first_share = 0.0
    poured = {c: np.zeros(size) for c, _, _ in castings}
    fitted = {c: 0.0 for c, _, _ in castings}
    for case in itertools.product((True, False), repeat=len(castings) + 2):
        stays, stamp_true, first = case[:-2], case[-2], case[-1]
        if (stamp is None and not stamp_true) or (vehicle is None and not first):
            continue
        factors = []  # over assembly days, those of the castings first
        for (c, seen, share), stay in zip(castings, stays):
            factors.append((to_assembly @ seen) * share if stay else np.full(size, seen.sum() / size * (1 - share)))
        if stamp is not None:
            factors.append(reliability * stamp if stamp_true else np.full(size, (1 - reliability) * stamp.mean()))
        if vehicle is not None:
            factors.append(FIRST_ENGINE * (vehicle @ to_vehicle) if first else np.full(size, (1 - FIRST_ENGINE) * vehicle.mean()))
        weight = np.prod(factors, axis=0)
        assembly += weight
        if first:
            first_share += weight.sum()
        for i, ((c, seen, share), stay) in enumerate(zip(castings, stays)):
            others = np.prod([np.ones(size)] + factors[:i] + factors[i + 1:], axis=0)
            by_day = seen * (share * (others @ to_assembly) if stay else (1 - share) * others.sum() / size)
            poured[c] += by_day
            if stay:
                fitted[c] += by_day.sum()

    probe = (day(s["probe"]) - start).days
    result = dict.fromkeys(OUTPUTS, "")
    total = assembly.sum()

    def mode(p):
        return (start + timedelta(days=int(p.argmax()))).isoformat()

    result["assembly_mode"] = mode(assembly)
    result["assembly_mode_p"] = assembly.max() / total
    result["assembly_probe_p"] = assembly[probe] / total
    result["first_engine"] = first_share / total if vehicle is not None else ""
    for c, _, _ in castings:
        result[c + "_mode"] = mode(poured[c])
        result[c + "_mode_p"] = poured[c].max() / poured[c].sum()
        result[c + "_fitted"] = fitted[c] / poured[c].sum()
    if castings:
        result["c1_probe_p"] = poured["c1"][probe] / poured["c1"].sum()
    return [result[o] for o in OUTPUTS]


def text(value):
    return value if isinstance(value, str) else f"{value:.15g}"


def main():
    check = sys.argv[1] == "--check"
    name = sys.argv[2 if check else 1]
    table = [list(map(text, row + solve(row))) for row in SCENARIOS]
    if not check:
        with open(name, "w", newline="") as out:
            out.write("# Posterior over days in invented scenarios, by tests/dating/posterior_reference.py (SciPy, full enumeration of cases).\n")
            out.write("# Beliefs as set there: judgement from memory, no source. Readings: first day/day after the last*weight.\n")
            csv.writer(out, lineterminator="\n").writerows([INPUTS + OUTPUTS] + table)
        return 0
    with open(name) as kept:
        rows = list(csv.reader(line for line in kept if not line.startswith("#")))[1:]
    if len(rows) != len(table):
        print("the table has another number of rows")
        return 1
    for old, new in zip(rows, table):
        for column, a, b in zip(INPUTS + OUTPUTS, old, new):
            same = a == b
            if not same and column in OUTPUTS and not column.endswith("mode"):
                same = abs(float(a) - float(b)) <= 1e-12 + 1e-9 * abs(float(b))
            if not same:
                print(f"{old[0]}: {column} is {a}, recomputed {b}")
                return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
