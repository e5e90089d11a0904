#!/usr/bin/env python3
"""Whose curve is it, by another way: the posterior over families and what a further reading would tell.

The common factors of a part and of its curve are integrated numerically on a dense grid (no closed form, no matrix),
the readings' densities multiplied point by point; the expected information is scipy.integrate.quad over dense
covariances (numpy.linalg). Families and readings are invented; the model is the one stated in src/bench/identify.h.

    identify_reference.py > tests/data/identify-posterior.csv
    identify_reference.py --check tests/data/identify-posterior.csv
"""
import csv
import sys

try:
    import numpy as np
    from scipy import integrate
except ImportError:
    print("SciPy is not there", file=sys.stderr)
    sys.exit(77)

SHARE, ASSUMED = 0.8, 0.10
P_NONE, M, LEVEL, SLOPE, SPREAD, BEND, MIDDLE = 0.05, 5.3, 1.5, -0.025, 0.02, 0.1, 333.15
LEAST = 1e-4

# r0 at t0 (C), B, knowledge (standard, of ln R), tolerance (None: assumed), valid from, to (C), weight
FAMILIES = [
    (1380.0, 20.0, 3450.0, 0.010, 0.10, -20, 130, 1.0),
    (1250.0, 20.0, 3300.0, 0.020, 0.10, -20, 130, 2.0),
    (1300.0, 20.0, 3900.0, 0.005, None, -20, 130, 1.0),
    (700.0, 20.0, 3000.0, 0.015, 0.08, 40, 130, 1.0),  # its curve begins at 40
    (51.0, 95.0, 3600.0, 0.030, 0.15, 60, 120, 0.5),  # and this one's is known hot only
    (300.0, 20.0, 2600.0, 0.010, 0.05, 0, 120, 1.0),
]
# temperature (C), its standard uncertainty (K), ohms, standard uncertainty of ln ohms
CASES = [
    [(21.0, 1.0, 1290.0, 0.01)],
    [(21.0, 1.0, 1290.0, 0.01), (95.0, 0.5, 128.0, 0.01)],
    [(0.0, 0.1, 3100.0, 0.006), (50.0, 0.3, 470.0, 0.006), (99.0, 0.3, 112.0, 0.006)],
    [(95.0, 0.5, 52.0, 0.02)],
    [(20.0, 0.5, 9000.0, 0.01), (90.0, 0.5, 4000.0, 0.01)],
    [(20.0, 0.0, 310.0, 0.004), (20.0, 0.0, 309.0, 0.004), (80.0, 0.4, 68.0, 0.004), (60.0, 0.4, 105.0, 0.004)],
    [(22.0, 0.5, 660.0, 0.01), (70.0, 0.5, 150.0, 0.01)],
    [(40.0, 0.3, 620.0, 0.005), (46.0, 0.3, 505.0, 0.005), (53.0, 0.3, 395.0, 0.005), (90.0, 0.3, 130.0, 0.005)],
]
NEXT_U, NEXT_LN = 0.5, 0.005
FACTOR = np.linspace(-16, 16, 1067)  # the likelihoods are at least 0.03 wide: the trapezium rule errs by less than 1e-8


def ln_ohms(f, t):
    return np.log(f[0]) + f[2] * (1 / (t + 273.15) - 1 / (f[1] + 273.15))


def spread(f):
    return np.log(1 + (ASSUMED if f[4] is None else f[4])) / np.sqrt(3)


def reaches(f, t):
    return f[5] <= t <= f[6]


def crowd(case, t):
    return sum(max(0.0, 1 - abs(other - t) / 20) for other, *_rest in case)


def family_terms(f, t, ut, ul, n):
    """mean, share of the part, share of the curve, variance of the rest"""
    s, k = spread(f), f[3]
    slope = -f[2] / (t + 273.15) ** 2
    noise = max(ul, LEAST) ** 2 + (slope * ut) ** 2 + n * ((1 - SHARE) * s * s + k * k / 2)
    return ln_ohms(f, t), np.sqrt(SHARE) * s, np.sqrt(0.5) * k, noise


def unnamed_terms(t, ut, ul, n):
    away = t + 273.15 - MIDDLE
    return M + SLOPE * away, LEVEL, SPREAD * away, max(ul, LEAST) ** 2 + (SLOPE * ut) ** 2 + n * BEND**2


def ln_evidence(rows):
    """rows of (y, terms): integrates the two factors on the grid, nothing solved."""
    tau, c = FACTOR[:, None], FACTOR[None, :]
    ln = -0.5 * (tau**2 + c**2) - np.log(2 * np.pi)
    for y, (mean, one, two, noise) in rows:
        off = (y - mean - one * tau) - two * c
        off *= off
        off *= -0.5 / noise
        ln += off
        ln -= 0.5 * np.log(2 * np.pi * noise)
    top = ln.max()
    ln -= top
    return top + np.log(np.exp(ln, out=ln).sum() * (FACTOR[1] - FACTOR[0]) ** 2)


def evidences(case):
    y = [np.log(r) for _, _, r, _ in case]
    none = [unnamed_terms(t, ut, ul, crowd(case, t)) for t, ut, _, ul in case]
    whole = ln_evidence(list(zip(y, none)))
    out = []
    for f in FAMILIES:
        inside = [i for i, (t, *_rest) in enumerate(case) if reaches(f, t)]
        own = ln_evidence([(y[i], family_terms(f, case[i][0], case[i][1], case[i][3], crowd(case, case[i][0]))) for i in inside])
        partly = ln_evidence([(y[i], none[i]) for i in inside])
        out.append(own + whole - partly)
    return out, whole


def posterior(ln, none):
    weights = np.array([f[7] for f in FAMILIES])
    joint = np.concatenate([np.log((1 - P_NONE) * weights / weights.sum()) + ln, [np.log(P_NONE) + none]])
    p = np.exp(joint - joint.max())
    return p / p.sum()


def predictive(rows, new):
    """Normal predictive of one more, by conditioning the dense covariance."""
    mean, one, two, noise = new
    if not rows:
        return mean, np.sqrt(one**2 + two**2 + noise)
    y = np.array([r[0] for r in rows])
    terms = np.array([r[1] for r in rows])
    cov = np.outer(terms[:, 1], terms[:, 1]) + np.outer(terms[:, 2], terms[:, 2]) + np.diag(terms[:, 3])
    cross = terms[:, 1] * one + terms[:, 2] * two
    gain = np.linalg.solve(cov, cross)
    return mean + gain @ (y - terms[:, 0]), np.sqrt(one**2 + two**2 + noise - gain @ cross)


def separation(case, p, t):
    y = [np.log(r) for _, _, r, _ in case]
    none_rows = [(y[i], unnamed_terms(r[0], r[1], r[3], crowd(case, r[0]))) for i, r in enumerate(case)]
    none = predictive(none_rows, unnamed_terms(t, NEXT_U, NEXT_LN, 1 + crowd(case, t)))
    parts = []
    for f in FAMILIES:
        rows = [(y[i], family_terms(f, r[0], r[1], r[3], crowd(case, r[0]))) for i, r in enumerate(case) if reaches(f, r[0])]
        parts.append(predictive(rows, family_terms(f, t, NEXT_U, NEXT_LN, 1 + crowd(case, t))) if reaches(f, t) else none)
    parts.append(none)
    kept = [(q, m, s) for q, (m, s) in zip(p, parts)]

    weights, means, widths = np.array(kept).T

    def joint(x):
        return weights * np.exp(-0.5 * ((x - means) / widths) ** 2) / (widths * np.sqrt(2 * np.pi))

    def information(x):
        j = joint(x)
        total = j.sum()
        return sum(a * np.log(a / q / total) for a, (q, _, _) in zip(j, kept) if a > 0)

    ends = sorted({m + k * s for _, m, s in kept for k in (-9, -5, -3, -1.5, 0, 1.5, 3, 5, 9)})
    bits = sum(integrate.quad(information, a, b, limit=200)[0] for a, b in zip(ends, ends[1:])) / np.log(2)
    sure = sum(integrate.quad(lambda x: joint(x).max(), a, b, limit=200)[0] for a, b in zip(ends, ends[1:]))
    return max(bits, 0.0), sure


def rows():
    for i, f in enumerate(FAMILIES):
        yield ["family", "", i, *["" if v is None else v for v in f]]
    for c, case in enumerate(CASES):
        for i, r in enumerate(case):
            yield ["reading", c, i, *r, "", "", "", ""]
        ln, none = evidences(case)
        p = posterior(ln, none)
        ln, none = evidences(case)
        for i, value in enumerate([*ln, none]):
            yield ["posterior", c, i, f"{p[i]:.12e}", f"{value:.10f}", "", "", "", "", "", ""]
        if c in (0, 1, 6, 7):
            for t in (0, 20, 45, 70, 95):
                bits, sure = separation(case, p, t)
                yield ["next", c, t, f"{bits:.6f}", f"{sure:.6f}", "", "", "", "", "", ""]


HEADER = ["kind", "case", "item", "x1", "x2", "x3", "x4", "x5", "x6", "x7", "x8"]


def main():
    if len(sys.argv) == 3 and sys.argv[1] == "--check":
        with open(sys.argv[2], encoding="utf-8") as file:
            kept = list(csv.reader(line for line in file if not line.startswith("#")))[1:]
        fresh = [[str(v) for v in row] for row in rows()]
        assert len(kept) == len(fresh), "another number of rows"
        for old, new in zip(kept, fresh):
            assert old[:3] == new[:3], (old, new)
            for a, b in zip(old[3:], new[3:]):
                assert a == b or abs(float(a) - float(b)) <= 2e-6 * max(1e-6, abs(float(b))), (old, new)
        return
    print("# Identification by numerical integration over the two common factors; made by tests/bench/identify_reference.py (NumPy, SciPy).")
    print("# Families and readings are invented. family: x1 r0 ohm at x2 C, x3 B, x4 knowledge of ln R, x5 tolerance (blank: 0.1 assumed), x6 to x7 C valid, x8 weight.")
    print("# reading: x1 C, x2 standard K, x3 ohm, x4 standard of ln ohm. posterior: item = family (the last: none of these), x1 probability, x2 ln evidence (below -60 it lies off the grid: not a value).")
    print("# next: item = C, x1 expected information in bits of one more reading there (0.5 K, 0.005 of ohms), x2 expected greatest posterior.")
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(HEADER)
    out.writerows(rows())


main()
