#!/usr/bin/env python3
"""Times scipy.optimize.curve_fit on the data of bm_fit.cpp, for the ratio in one run:

    bm_fit --benchmark_min_time=1 & python3 scipy_fit_baseline.py [FILE.json]    (or one after the other on a quiet machine)

CPU time of one core, as Google Benchmark reports it too. Same points, same spreads, same response as the C++ fits; covariance comes along in both. Analytic Jacobians, which is the faster way for SciPy too.
"""
import json
import sys
import time

import numpy as np
from scipy.optimize import curve_fit


def points(n=12):
    t = 293.15 + 8.0 * np.arange(n)
    x = 1 / t
    noise = 0.003 * np.sin(7.0 * np.arange(n))
    return t, np.log(100.0) + 3500 * (x - 1 / 323.15) + 2e5 * (x - 1 / 323.15) * (x - 1 / 353.15) + noise


measured = []


def timed(name, short, fit, seconds=2.0):
    fit()
    count, start = 0, time.process_time()
    while time.process_time() - start < seconds:
        fit()
        count += 1
    each = (time.process_time() - start) / count
    print(f"{name:40s} {each * 1e6:8.1f} us  {1 / each:8.0f} fits/s")
    measured.append({"name": short, "real_time": each * 1e6, "time_unit": "us"})


t, ln_r = points()
sigma = 0.1 / t**2


def steinhart_hart(l, a, b, c):
    return a + b * l + c * l**3


def steinhart_hart_slopes(l, a, b, c):
    return np.column_stack((np.ones_like(l), l, l**3))


def exponential(t, a, b, c):
    return np.log(a) + b / (t + c)


def exponential_slopes(t, a, b, c):
    return np.column_stack((np.full_like(t, 1 / a), 1 / (t + c), -b / (t + c) ** 2))


timed("Steinhart-Hart, 12 points", "steinhart_hart", lambda: curve_fit(steinhart_hart, ln_r, 1 / t, p0=(1e-3, 2e-4, 1e-7), sigma=sigma, jac=steinhart_hart_slopes))
timed("Steinhart-Hart, 12 points, no Jacobian", "steinhart_hart/no_jacobian", lambda: curve_fit(steinhart_hart, ln_r, 1 / t, p0=(1e-3, 2e-4, 1e-7), sigma=sigma))
timed("a exp(b/(T+c)), 12 points", "exponential", lambda: curve_fit(exponential, t, ln_r, p0=(0.01, 3000, 0.0), jac=exponential_slopes))
timed("a exp(b/(T+c)), 12 points, no Jacobian", "exponential/no_jacobian", lambda: curve_fit(exponential, t, ln_r, p0=(0.01, 3000, 0.0), maxfev=5000))
if len(sys.argv) > 1:
    with open(sys.argv[1], "w", encoding="utf-8") as file:
        json.dump({"benchmarks": measured}, file)
