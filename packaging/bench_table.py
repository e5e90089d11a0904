#!/usr/bin/env python3
"""One table of benchmarks (Google Benchmark's JSON, and files of the same shape), each beside its baseline of the same run.

  packaging/bench_table.py FILE.json…                       everything measured, for the terminal
  packaging/bench_table.py --readme README.md FILE.json…    what matters to a user, between the marks in that file
"""
import json
import os
import platform
import re
import sys

# (program, what is measured, its baseline, the baseline's program where that is another): patterns on names; \1 of the first may stand in the second.
BASELINES = [
    ("bm_catalogue", r"(?:Open|AMatchs|OnePoint).*", "BareSelectOne"),
    ("bm_import_readings", r"aMillionRowsImported/(.*)", r"sqlite3DotImportOfTheSame/\1"),
    ("bm_import", r"from(?:File|Memory)/(.*)", r"sqlite3DotImport/\1"),
    ("bm_match", r"Match/(.*)", r"BareQueries/\1"),
    ("bm_next_test", r"nextTest/(.*)", r"weighed/\1"),
    ("bm_next_test", r"predictions/(.*)", r"predictionsOneByOne/\1"),
    ("bm_search", r"EveryKey/(.*)", r"BareFtsWithRank/\1"),
    ("bm_trim", r"bounded/(.*)", r"exhaustive/\1"),
    ("bm_monte_carlo", r"(.*)/2(/.*)", r"\1/1\2"),
    ("bm_fit", r"steinhartHart12Points/3", "steinhart_hart", "scipy_fit"),
    ("bm_fit", r"exponential12Points", "exponential", "scipy_fit"),
    ("processes", r"(?:match|pair|trim|ohmkin).*", "sqlite3, select 1"),
]
# What the README shows: in words, what was measured (a counter of it where a third part is given), and the same for its baseline.
SHOWN = [
    ("`ohmkin match`, the whole process", ("processes", "match, by options"), "`sqlite3 FILE 'select 1'`", ("processes", "sqlite3, select 1")),
    ("`ohmkin pair`, the whole process", ("processes", "pair"), "the same", ("processes", "sqlite3, select 1")),
    ("a match among a million rows", ("bm_match", "Match/1000000"), "its bare SQL", ("bm_match", "BareQueries/1000000")),
    ("a search among a million rows, three letters and more, slowest of a hundred", ("bm_search", "EveryKey/1000000/iterations:1", "more_own_p99_ms"),
     "FTS5 with rank", ("bm_search", "BareFtsWithRank/1000000/iterations:1", "more_own_p99_ms")),
    ("the best resistors of E96", ("bm_trim", "bounded/E96"), "trying every pair", ("bm_trim", "exhaustive/E96")),
    ("a Steinhart–Hart fit to 12 points", ("bm_fit", "steinhartHart12Points/3"), "SciPy's curve_fit", ("scipy_fit", "steinhart_hart")),
    ("an exponential fit to 12 points", ("bm_fit", "exponential12Points"), "SciPy's curve_fit", ("scipy_fit", "exponential")),
    ("a log of a million readings brought in, checked and fitted", ("bm_import_readings", "aMillionRowsImported/kind:2"),
     "`sqlite3 .import`", ("bm_import_readings", "sqlite3DotImportOfTheSame/kind:2")),
    ("the next best test in a search for a fault", ("bm_next_test", "nextTest/crossed_coil"), "", None),
    ("100,000 draws of a pair's error", ("bm_monte_carlo", "draws/bare/2"), "on one core", ("bm_monte_carlo", "draws/bare/1")),
    ("5 dashes by 20 engines planned", ("bm_workflow", "planOfFiveDashesAndTwentyEngines"), "", None),
]
BEGIN, END = "<!-- measured by packaging/bench -->", "<!-- as far as here -->"
SECONDS = {"ns": 1e-9, "us": 1e-6, "ms": 1e-3, "s": 1.0}


def readable(seconds):
    for unit, size in (("s", 1.0), ("ms", 1e-3), ("µs", 1e-6), ("ns", 1e-9)):
        if seconds >= size:
            return f"{seconds / size:.3g} {unit}"
    return f"{seconds / 1e-9:.3g} ns"


def read(paths):
    """{program: {name: run}}"""
    programs = {}
    for path in paths:
        with open(path, encoding="utf-8") as file:
            runs = json.load(file)["benchmarks"]
        programs[os.path.basename(path).removesuffix(".json")] = {run["name"]: run for run in runs if "real_time" in run}
    return programs


def time_of(run, counter=None):
    return run[counter] * 1e-3 if counter else run["real_time"] * SECONDS[run["time_unit"]]


def baseline_of(program, name, programs):
    for where, measured, against, *elsewhere in BASELINES:
        match = re.fullmatch(measured, name) if where == program else None
        if match:
            runs, other = programs.get((elsewhere or [program])[0], {}), match.expand(against)
            if other in runs and runs[other] is not programs[program][name]:
                return other, runs[other]
    return None


def found(programs, program, name, counter=None):
    """The run of that name, or that begins so and goes on with Google Benchmark's own "/iterations:1" and the like."""
    for each, run in programs.get(program, {}).items():
        if each == name or each.startswith(name + "/"):
            return time_of(run, counter)
    return None


def compared(seconds, other):
    ratio, words = (seconds / other, "as long") if seconds >= other else (other / seconds, "as fast")
    return f"{float(f'{ratio:.2g}'):,.0f} × {words}" if ratio >= 100 else f"{ratio:.3g} × {words}"


def machine():
    with open("/proc/cpuinfo", encoding="utf-8") as file:
        model = next((line.split(":", 1)[1].strip() for line in file if line.startswith("model name")), platform.machine())
    system = platform.freedesktop_os_release().get("PRETTY_NAME", platform.system())
    return f"{model}, {os.cpu_count()} cores, {system}"


def readme_table(programs):
    lines = ["| | time | beside | time | |", "|---|--:|---|--:|--:|"]
    for words, measured, beside, baseline in SHOWN:
        seconds = found(programs, *measured)
        other = found(programs, *baseline) if baseline else None
        if seconds is None or (baseline and other is None):
            print(f"not measured: {words}", file=sys.stderr)
            continue
        ratio = (beside, readable(other), compared(seconds, other)) if other else ("", "", "")
        lines.append(f"| {words} | {readable(seconds)} | " + " | ".join(ratio) + " |")
    return "\n".join([BEGIN, f"Measured in one run of `packaging/bench` on {machine()}:", "", *lines, "", END])


def write_into(readme, text):
    with open(readme, encoding="utf-8") as file:
        before, mark, rest = file.read().partition(BEGIN)
    _, end, after = rest.partition(END)
    if not mark or not end:
        sys.exit(f"{readme}: the marks '{BEGIN}' and '{END}' are missing")
    with open(readme, "w", encoding="utf-8") as file:
        file.write(before + text + after)


def main():
    arguments = sys.argv[1:]
    readme = None
    if arguments[:1] == ["--readme"]:
        readme, arguments = arguments[1], arguments[2:]
    if not arguments:
        sys.exit(__doc__)
    programs = read(arguments)
    if readme:
        write_into(readme, readme_table(programs))
        return
    print(f"{'program':<20}{'benchmark':<48}{'time':>10}{'ratio':>9}  to")
    for program, runs in programs.items():
        for name, run in runs.items():
            other = baseline_of(program, name, programs)
            ratio = f"{time_of(run) / time_of(other[1]):9.3g}  {other[0]}" if other else ""
            print(f"{program:<20}{name:<48}{readable(time_of(run)):>10}{ratio}")


main()
