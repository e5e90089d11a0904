#!/usr/bin/env python3
"""Needle angles of invented crossed-coil gauges, their circuits solved by ngspice.

Writes CSV to standard output; kept as tests/data/crossed-coil-ngspice.csv and run again by tst_kirchhoff where ngspice is
installed. Fixed seed. Each gauge: coils tapped at the sender post or side by side from the feed, half of them with a bucking
coil across the feed, shunts on any pair of posts, ohms in the feed. Angles clockwise from straight up.
"""
import math
import random
import re
import subprocess
import sys
import tempfile

GAUGES = 60
SENDERS = [0, 3.3, 20, 56, 100, 240, 700, 2500, "open"]


def invent(rng):
    def log_ohms(low, high):
        return math.exp(rng.uniform(math.log(low), math.log(high)))

    def turns():
        direction, amount = rng.uniform(0, 2 * math.pi), rng.uniform(0.3, 2)
        return amount * math.sin(direction), amount * math.cos(direction)

    coils = [("f", "s", log_ohms(30, 400), turns()),
             (rng.choice("sf"), "g", log_ohms(30, 400), turns())]
    if rng.random() < 0.5:
        coils.append(("f", "g", log_ohms(30, 400), turns()))
    shunts = [(a, b, log_ohms(20, 2000)) for a, b in ("fs", "fg", "sg") if rng.random() < 0.5]
    return coils, shunts, rng.uniform(0.01, 20)


def netlist(name, gauge, sender):
    """Lines of one circuit and the names of the ammeters (0 V sources) in its coils."""
    coils, shunts, feed = gauge
    node = {"f": f"f{name}", "s": f"s{name}", "g": "0"}
    lines = [f"Vb{name} b{name} 0 12", f"Rb{name} b{name} f{name} {feed!r}"]
    meters = []
    for i, (a, b, ohms, _) in enumerate(coils):
        lines.append(f"Vm{name}_{i} {node[a]} m{name}_{i} 0")
        lines.append(f"Rm{name}_{i} m{name}_{i} {node[b]} {ohms!r}")
        meters.append(f"vm{name}_{i}")
    lines += [f"Rx{name}_{i} {node[a]} {node[b]} {ohms!r}" for i, (a, b, ohms) in enumerate(shunts)]
    if sender == 0:
        lines.append(f"Vs{name} s{name} 0 0")
    elif sender != "open":
        lines.append(f"Rs{name} s{name} 0 {float(sender)!r}")
    return lines, meters


def currents(lines, meters):
    deck = ["crossed coils", *lines, ".options reltol=1e-12 abstol=1e-18 vntol=1e-15 gmin=1e-30", ".control",
            "set numdgt=15", "op", *[f"print i({m})" for m in meters], "quit", ".endc", ".end"]
    with tempfile.NamedTemporaryFile("w", suffix=".cir") as file:
        file.write("\n".join(deck) + "\n")
        file.flush()
        run = subprocess.run(["ngspice", "-b", file.name], capture_output=True, text=True, check=False)
    found = {m.group(1): float(m.group(2)) for m in re.finditer(r"i\((\w+)\) = (\S+)", run.stdout)}
    if set(found) != set(meters):
        sys.exit(f"ngspice left out {len(set(meters) - set(found))} currents\n{run.stderr}")
    return found


def field(gauge, amperes):
    return tuple(sum(turns[axis] * i for (*_, turns), i in zip(gauge[0], amperes)) for axis in (0, 1))


def usable(readings):
    """A sweep that can be told from none and from half a turn, between fields that are there."""
    sweep = abs(math.remainder(readings["open"] - readings[0], 360))
    first = abs(math.remainder(readings[100] - readings[0], 360))
    return 5 < sweep < 175 and 0.05 * sweep < first < 0.95 * sweep


def main():
    rng = random.Random(1959)
    gauges = [invent(rng) for _ in range(2 * GAUGES)]
    lines, meters, where = [], [], {}
    for g, gauge in enumerate(gauges):
        for s, sender in enumerate(SENDERS):
            name = f"{g}x{s}"
            more, where[g, sender] = netlist(name, gauge, sender)
            lines += more
            meters += where[g, sender]
    found = currents(lines, meters)
    print("# computed by ngspice (an independent circuit simulator); generator: tests/gauge/crossed_coil_ngspice.py, seed 1959")
    print("# rows: needle angle in degrees clockwise from straight up, of invented crossed-coil gauges, by ohms of the sender")
    print("circuit,sender_ohms,degrees,status,verified")
    kept = 0
    for g, gauge in enumerate(gauges):
        readings = {s: math.degrees(math.atan2(*field(gauge, [found[m] for m in where[g, s]]))) for s in SENDERS}
        if kept == GAUGES or not usable(readings):
            continue
        kept += 1
        for sender, degrees in readings.items():
            print(f"{kept},{sender},{degrees:.12g},computed,yes")
    if kept < GAUGES:
        sys.exit(f"only {kept} usable gauges")


if __name__ == "__main__":
    main()
