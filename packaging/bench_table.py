#!/usr/bin/env python3
"""One table of Google Benchmark's JSON files, with each figure's ratio to the baseline measured in the same run."""
import json
import re
import sys

# (program, what is measured, its baseline): patterns on names; \1 of the first may stand in the second.
BASELINES = [
    ("bm_catalogue", r"(?:Open|AMatchs|OnePoint).*", "BareSelectOne"),
    ("bm_import_readings", r"aMillionRowsImported/(.*)", r"sqlite3DotImportOfTheSame/\1"),
    ("bm_match", r"Match/(.*)", r"BareQueries/\1"),
    ("bm_next_test", r"nextTest/(.*)", r"weighed/\1"),
    ("bm_next_test", r"predictions/(.*)", r"predictionsOneByOne/\1"),
    ("bm_trim", r"bounded/(.*)", r"exhaustive/\1"),
    ("bm_monte_carlo", r"(.*)/2(/.*)", r"\1/1\2"),
]
SECONDS = {"ns": 1e-9, "us": 1e-6, "ms": 1e-3, "s": 1.0}


def readable(seconds):
    for unit, size in (("s", 1.0), ("ms", 1e-3), ("µs", 1e-6), ("ns", 1e-9)):
        if seconds >= size:
            return f"{seconds / size:.3g} {unit}"
    return f"{seconds / 1e-9:.3g} ns"


def baseline_of(program, name, times):
    for where, measured, against in BASELINES:
        match = re.fullmatch(measured, name) if where == program else None
        other = match.expand(against) if match else None
        if other in times and other != name:
            return other
    return None


print(f"{'program':<16}{'benchmark':<48}{'time':>10}{'ratio':>9}  to")
for path in sys.argv[1:]:
    program = path.rsplit("/", 1)[-1].removesuffix(".json")
    with open(path, encoding="utf-8") as file:
        runs = json.load(file)["benchmarks"]
    times = {run["name"]: run["real_time"] * SECONDS[run["time_unit"]] for run in runs if "real_time" in run}
    for name, seconds in times.items():
        other = baseline_of(program, name, times)
        ratio = f"{seconds / times[other]:9.3g}  {other}" if other else ""
        print(f"{program:<16}{name:<48}{readable(seconds):>10}{ratio}")
