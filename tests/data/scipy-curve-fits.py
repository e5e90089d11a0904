#!/usr/bin/env python3
"""Writes scipy-curve-fits.csv: 200 random noisy curves fitted by scipy.optimize.curve_fit, for tests/curve/tst_scipy.

    python3 scipy-curve-fits.py > scipy-curve-fits.csv

RandomState is frozen by NumPy's policy, so any version draws the same curves. Readings are rounded as a bench sheet would be.
"""
import sys

import numpy as np
import scipy
from scipy.optimize import curve_fit

ZERO = 273.15
rng = np.random.RandomState(1968)
tight = dict(ftol=1e-15, xtol=1e-15, gtol=1e-15, maxfev=20000)


def beta(t0):
    def value(t, r0, b):
        return np.log(r0) + b * (1 / t - 1 / t0)

    def slopes(t, r0, b):
        return np.column_stack((np.full_like(t, 1 / r0), 1 / t - 1 / t0))

    return value, slopes


def exponential(t, a, b, c):
    return np.log(a) + b / (t + c)


def exponential_slopes(t, a, b, c):
    return np.column_stack((np.full_like(t, 1 / a), 1 / (t + c), -b / (t + c) ** 2))


def polynomial(t, r0, *a):
    s = t - ZERO
    return r0 * (1 + sum(k * s ** (i + 1) for i, k in enumerate(a)))


def polynomial_slopes(t, r0, *a):
    s = t - ZERO
    return np.column_stack([polynomial(t, r0, *a) / r0] + [r0 * s ** (i + 1) for i in range(len(a))])


def powers(l, terms):
    return np.column_stack((np.ones_like(l), l, l**3, l**2))[:, :terms]


def draw(rising):
    """Temperatures in degC to 0.01, ohms to five digits."""
    n = rng.randint(8, 15)
    t = np.round(np.linspace(rng.uniform(10, 30), rng.uniform(90, 120), n) + rng.uniform(-1, 1, n), 2)
    k = t + ZERO
    if rising:
        r = np.exp(rng.uniform(4, 7)) * (1 + rng.uniform(0.003, 0.007) * t + rng.uniform(-3e-6, 1e-5) * t**2)
    else:
        b, c = rng.uniform(2500, 4500), rng.uniform(-100, -20)
        width = b * ((330 + c) / 330) ** 2
        r = np.exp(rng.uniform(5, 9) + width / (k + c) - width / (330 + c))
    r *= np.exp(rng.uniform(0.0005, 0.004) * rng.standard_normal(n))
    return t, np.array([float("%.5g" % v) for v in r])


def inverse_on_data(coefficients, l, terms, at):
    """ln R where the Steinhart-Hart cubic passes 1/T, by Newton from the nearest reading."""
    out = []
    for t in at:
        x = l[np.argmin(np.abs(1 / (powers(l, terms) @ coefficients) - t))]
        for _ in range(60):
            p = np.array([1, x, x**3, x**2])[:terms] @ coefficients
            d = np.array([0, 1, 3 * x**2, 2 * x])[:terms] @ coefficients
            x -= (p - 1 / t) / d
        out.append(x)
    return np.array(out)


def fitted(form, t, r):
    """Parameters' covariance and ln R at five temperatures."""
    k, l = t + ZERO, np.log(r)
    at = np.round(np.linspace(t[0], t[-1], 5), 2)
    if form == "beta":
        value, slopes = beta(1 / np.mean(1 / k))
        p, c = curve_fit(value, k, l, p0=(np.median(r), 3000), jac=slopes, **tight)
        return c, at, value(at + ZERO, *p), None
    if form.startswith("steinhart-hart"):
        terms = int(form[-1])
        u = np.round(rng.uniform(0.05, 0.3, len(t)), 3)
        columns = powers(l, terms)
        p, c = curve_fit(lambda _, *q: columns @ np.array(q), l, 1 / k, p0=[3e-3] + [1e-5] * (terms - 1), sigma=u / k**2,
                         absolute_sigma=True, jac=lambda _, *q: columns, **tight)
        return c, at, inverse_on_data(p, l, terms, at + ZERO), u
    if form == "exponential":
        p, c = curve_fit(exponential, k, l, p0=(0.05, 2500, -50), jac=exponential_slopes, **tight)
        return c, at, exponential(at + ZERO, *p), None
    degree = int(form[-1])
    p, c = curve_fit(polynomial, k, r, p0=[r[0]] + [0.004] + [0] * (degree - 1), jac=polynomial_slopes, **tight)
    return c, at, np.log(polynomial(at + ZERO, *p)), None


forms = ["beta", "steinhart-hart-3", "steinhart-hart-4", "exponential", "polynomial-1", "polynomial-2", "polynomial-3"]
print(f"# computed: scipy.optimize.curve_fit (SciPy {scipy.__version__}, NumPy {np.__version__}) on 200 random noisy curves, by scipy-curve-fits.py beside this file.")
print("# beta: ln R unweighted, t0 = 1/mean(1/T); exponential: ln R unweighted; polynomial: R unweighted, (r0, a1, ...); all with covariance from the scatter.")
print("# steinhart-hart: 1/T on powers of ln R, sigma = u/T^2 absolute; covariance as stated.")
print("# rows: sample,degC,ohms,u_kelvin ; predict,degC,lnR ; cov,i,j,value (upper triangle)")
print("case,form,record,v1,v2,v3")
for case in range(200):
    form = forms[case % len(forms)]
    t, r = draw(form.startswith("polynomial"))
    c, at, predicted, u = fitted(form, t, r)
    for i in range(len(t)):
        print(f"{case},{form},sample,{t[i]:.2f},{r[i]:.5g},{'' if u is None else '%.3f' % u[i]}")
    for a, v in zip(at, predicted):
        print(f"{case},{form},predict,{a:.2f},{v:.10g},")
    for i in range(c.shape[0]):
        for j in range(i, c.shape[0]):
            print(f"{case},{form},cov,{i},{j},{c[i, j]:.7e}")
sys.stdout.flush()
