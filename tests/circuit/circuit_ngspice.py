#!/usr/bin/env python3
"""Node volts of invented gauge circuits with faults, solved by ngspice.

Writes CSV to standard output; kept as tests/data/circuit-ngspice.csv and run again by tst_network where ngspice is
installed. Fixed seed. Each circuit: battery, key, fuse, feed, board, in half of them a regulator, gauge, lead, connector,
sender, thread, strap, grounds, lamps, a second gauge; ohms invented; up to three parts open, shorted, of high resistance
over decades, or leaking. A short is a source of 0 V, an open is left out. A regulator is a source of its volts whose
current a second source takes from the input; where that would have to push, its contact is closed instead.
"""
import math
import random
import re
import subprocess
import sys
import tempfile

CIRCUITS = 300
EARTH = 0
(BATTERY, IGNITION, FUSED, BOARD_FEED, REG_IN, GAUGE_FEED, SENDER_POST, BOARD_LEAD, LEAD_END, TERMINAL, HEX, ENGINE, GAUGE_GROUND,
 CLUSTER, BODY, OTHER, HOUSING) = range(1, 18)
OPEN, CONTACT = math.inf, 0.05


def invent(rng):
    def logs(low, high):
        return math.exp(rng.uniform(math.log(low), math.log(high)))

    regulated = rng.random() < 0.5
    good = lambda: rng.choice([0, logs(0.002, 0.2)])
    heater = logs(8, 40)
    parts = [[IGNITION, BATTERY, good()], [IGNITION, FUSED, good()], [FUSED, BOARD_FEED, good()], [BOARD_FEED, REG_IN, good()],
             [GAUGE_FEED, SENDER_POST, heater if regulated else logs(30, 400)],
             [SENDER_POST, GAUGE_GROUND, OPEN if regulated else logs(30, 400)],
             [GAUGE_FEED, SENDER_POST, rng.choice([OPEN, logs(50, 1000)])], [GAUGE_GROUND, CLUSTER, good()], [CLUSTER, BODY, good()],
             [BODY, EARTH, good()], [SENDER_POST, BOARD_LEAD, good()], [BOARD_LEAD, LEAD_END, good()], [LEAD_END, TERMINAL, good()],
             [TERMINAL, HEX, logs(10, 2000)], [HEX, ENGINE, 0], [ENGINE, EARTH, good()], [HOUSING, CLUSTER, good()],
             [GAUGE_FEED, OTHER, heater if regulated else logs(30, 400)], [OTHER, CLUSTER, OPEN if regulated else logs(30, 400)],
             [OTHER, BODY, logs(10, 200)]]
    for _ in range(rng.choice([0, 1, 1, 2, 3])):
        part = rng.choice(parts)
        part[2] = rng.choice([OPEN, 0, part[2] + logs(0.1, 1e5)])
    loads = [[BATTERY, CLUSTER, rng.choice([OPEN, logs(4, 20)])], [IGNITION, ENGINE, logs(2, 6)], [IGNITION, BODY, rng.choice([OPEN, logs(2, 20)])],
             [BOARD_FEED, BOARD_LEAD, rng.choice([OPEN, OPEN, logs(20, 1e4)])], [LEAD_END, BODY, rng.choice([OPEN, OPEN, logs(1, 1e4)])],
             [LEAD_END, EARTH, rng.choice([OPEN, OPEN, logs(1, 1e3)])]]
    battery = (rng.uniform(6, 15), logs(0.01, 0.1))
    if not regulated:
        parts.append([REG_IN, GAUGE_FEED, 0])
    return parts + loads, battery, rng.uniform(4.5, 5.5) if regulated else None


def islands(parts, extra):
    above = list(range(18))

    def top(n):
        while above[n] != n:
            n = above[n]
        return n
    for a, b, ohms in parts + extra:
        if not math.isinf(ohms):
            above[max(top(a), top(b))] = min(top(a), top(b))
    return [top(n) for n in range(18)]


def netlist(name, parts, battery, volts, state):
    """Lines of one circuit; an island nothing joins to earth is tied there, which carries no current."""
    node = lambda n: "0" if n == 0 else f"n{name}_{n}"
    lines = [f"Vb{name} p{name} 0 {battery[0]!r}", f"Rb{name} p{name} {node(BATTERY)} {battery[1]!r}"]
    for i, (a, b, ohms) in enumerate(parts):
        if ohms == 0:
            lines.append(f"Vs{name}_{i} {node(a)} {node(b)} 0")
        elif not math.isinf(ohms):
            lines.append(f"R{name}_{i} {node(a)} {node(b)} {ohms!r}")
    extra = [[BATTERY, EARTH, 1]]
    if state == "regulates":
        lines += [f"Vr{name} {node(GAUGE_FEED)} {node(HOUSING)} {volts!r}", f"Fr{name} {node(HOUSING)} {node(REG_IN)} Vr{name} 1"]
        extra += [[REG_IN, GAUGE_FEED, 1], [GAUGE_FEED, HOUSING, 1]]
    elif state == "closed":
        lines.append(f"Rr{name} {node(REG_IN)} {node(GAUGE_FEED)} {CONTACT!r}")
        extra.append([REG_IN, GAUGE_FEED, 1])
    of = islands(parts, extra)
    for n in sorted(set(of) - {0}):
        lines.append(f"Rt{name}_{n} {node(n)} 0 1000")
    return lines, [n for n in range(1, 18) if of[n] == 0]


def volts_of(circuits):
    lines, wanted = [], []
    for name, circuit in circuits.items():
        more, joined = netlist(name, *circuit)
        lines += more
        wanted += [f"v(n{name}_{n})" for n in range(1, 18)] + ([f"i(vr{name})"] if circuit[3] == "regulates" else [])
    deck = ["gauge circuits", *lines, ".options reltol=1e-12 abstol=1e-15 vntol=1e-12 gmin=1e-30", ".control", "set numdgt=15", "op",
            *[f"print {w}" for w in wanted], "quit", ".endc", ".end"]
    with tempfile.NamedTemporaryFile("w", suffix=".cir") as file:
        file.write("\n".join(deck) + "\n")
        file.flush()
        run = subprocess.run(["ngspice", "-b", file.name], capture_output=True, text=True, check=False)
    found = {m.group(1): float(m.group(2)) for m in re.finditer(r"([vi]\(\w+\)) = (\S+)", run.stdout)}
    if set(found) != set(wanted):
        sys.exit(f"ngspice left out {len(set(wanted) - set(found))} values\n{run.stderr[-2000:]}")
    return found


def loops(parts):
    """Shorts that close a ring share their current in no settled way; ngspice refuses them."""
    above = list(range(18))

    def top(n):
        while above[n] != n:
            n = above[n]
        return n
    for a, b, ohms in parts:
        if ohms == 0:
            if top(a) == top(b):
                return True
            above[top(a)] = top(b)
    return False


def main():
    rng = random.Random(1959)
    circuits = {}
    while len(circuits) < CIRCUITS:
        parts, battery, volts = invent(rng)
        if loops(parts):
            continue
        state = "none"
        if volts is not None:
            of = islands(parts, [[BATTERY, EARTH, 1]])
            state = "regulates" if of[HOUSING] == of[REG_IN] else "closed"
        circuits[str(len(circuits))] = [parts, battery, volts, state]
    first = volts_of(circuits)
    for name, circuit in circuits.items():
        if circuit[3] != "regulates":
            continue
        amperes = -first[f"i(vr{name})"]
        drop = first[f"v(n{name}_{REG_IN})"] - first[f"v(n{name}_{GAUGE_FEED})"]
        if not math.isfinite(drop) or amperes < 0 or drop < amperes * CONTACT:
            circuit[3] = "closed"
    found = volts_of(circuits)
    print("# computed by ngspice (an independent circuit simulator); generator: tests/circuit/circuit_ngspice.py, seed 1959")
    print("# rows: parts 'from to ohms' in ohms, open left out; battery volts and ohms (node 1 to earth); regulator's volts (input 5,"
          " output 6, housing 17, contact 0.05 ohm); volts of nodes 1 to 17 against earth, '-' where nothing joins the node to earth")
    print("circuit,parts,battery_volts,battery_ohms,regulator_volts,regulates,node_volts,status,verified")
    for name, (parts, battery, volts, state) in circuits.items():
        _, joined = netlist(name, parts, battery, volts, state)
        text = ";".join(f"{a} {b} {ohms!r}" for a, b, ohms in parts if not math.isinf(ohms))
        nodes = " ".join(f"{found[f'v(n{name}_{n})']:.13g}" if n in joined else "-" for n in range(1, 18))
        print(f"{name},{text},{battery[0]!r},{battery[1]!r},{'' if volts is None else repr(volts)},{'yes' if state == 'regulates' else 'no'},"
              f"{nodes},computed,yes")


if __name__ == "__main__":
    main()
