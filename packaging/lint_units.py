#!/usr/bin/env python3
"""Puts files that are compiled alike together into units for clang-tidy, so that their headers are read once.

    lint_units.py BUILD MOC FILE…

BUILD holds compile_commands.json. The units and a compile_commands.json of their own go into BUILD/units; printed is
one line a unit: its path, a tab, and the files in it. Files whose own names would meet (two anonymous helpers of one
name, two classes) are kept apart; what moc writes for a test is written here.
"""

import json
import pathlib
import re
import shlex
import subprocess
import sys

FILES_A_UNIT = 12

COMMENT_OR_TEXT = re.compile(r'//[^\n]*|/\*.*?\*/|R"\((?:.*?)\)"|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])+\'', re.S)
NAMESPACE = re.compile(r"(?:inline\s+)?namespace(\s+[\w:]+)?\s*$")
TYPE = re.compile(r"\b(?:struct|class|enum(?:\s+class)?|union)\s+(\w+(?:::\w+)*)[^;=()]*$")
NAME = re.compile(r"(?<![\w:])(\w+)\s*(?:\[\w*\])?\s*=?\s*$")
CALLED = re.compile(r"(?<![\w:.>])(\w+)\(")
NO_NAMES = {"operator", "const", "noexcept", "override", "default", "delete", "main", "Q_OBJECT"}


def own_names(text):
    """Names of the file: (what it keeps to itself, what it defines or calls). Rather too many than too few."""
    text = COMMENT_OR_TEXT.sub(" ", text)
    macros = set(re.findall(r"^\s*#\s*define\s+(\w+)", text, re.M))
    text = re.sub(r"^\s*#[^\n]*(?:\\\n[^\n]*)*", "", text, flags=re.M)
    kept, every, head, parens = set(macros), set(macros), "", 0
    inside = []  # of each open brace: "named", "unnamed", or "" for anything but a namespace

    def note(found, own=False):
        if found is None or found.group(1) in NO_NAMES:
            return
        every.add(found.group(1))
        if own or "unnamed" in inside or re.match(r"\s*static\b", head):
            kept.add(found.group(1))

    for part in re.split(r"([{}();])", text):
        outside = parens == 0 and all(inside)
        if part == "{":
            namespace = NAMESPACE.search(head) if parens == 0 else None
            if namespace is None and outside:
                found = TYPE.search(head)
                note(found or NAME.search(head), own=found is not None)
            inside.append(("named" if namespace.group(1) else "unnamed") if namespace else "")
            head = "" if parens == 0 else head
        elif part == "}":
            if inside:
                inside.pop()
            head = "" if parens == 0 else head
        elif part == "(":
            if outside:
                note(NAME.search(head))
            parens += 1
        elif part == ")":
            parens = max(0, parens - 1)
        elif part == ";":
            if outside:
                note(re.search(r"(?<![\w:])(\w+)\s*(?:\[\w*\])?\s*=", head) or NAME.search(head))
            head = "" if parens == 0 else head
        elif parens == 0:
            head += part
    return kept, every | set(CALLED.findall(text))


def flags_of(command):
    """What decides how a file is read: its order kept, what belongs to the one file left out."""
    words, kept = shlex.split(command), []
    skip = False
    for word in words[1:]:
        if skip or word in ("-o", "-c"):
            skip = not skip
            continue
        if "_autogen/include" in word or word.endswith(".cpp"):
            continue
        kept.append(word)
    return kept


def write_moc(moc, source, folder):
    if re.search(r'^#include "[^"]+\.moc"', source.read_text(), re.M) is None:
        return
    folder.mkdir(parents=True, exist_ok=True)
    subprocess.run([moc, str(source), "-o", str(folder / (source.stem + ".moc"))], check=True)


def main():
    build, moc = pathlib.Path(sys.argv[1]).resolve(), sys.argv[2]
    wanted = {str(pathlib.Path(name).resolve()) for name in sys.argv[3:]}
    units = build / "units"
    alike = {}
    for entry in json.loads((build / "compile_commands.json").read_text()):
        if entry["file"] not in wanted:
            continue
        wanted.discard(entry["file"])
        source = pathlib.Path(entry["file"])
        text = source.read_text()
        namespaces = tuple(sorted(set(re.findall(r"^using namespace ([\w:]+);", text, re.M))))
        key = (str(source.parent), namespaces)
        alike.setdefault(key, []).append((source, *own_names(text), flags_of(entry["command"])))
    packed = []
    for _, files in sorted(alike.items()):
        groups = []
        for source, kept, every, flags in files:
            place = next((g for g in groups if len(g["files"]) < FILES_A_UNIT and not kept & g["every"]
                          and not every & g["kept"]), None)
            if place is None:
                place = {"files": [], "kept": set(), "every": set(), "flags": []}
                groups.append(place)
            place["files"].append(source)
            place["kept"] |= kept
            place["every"] |= every
            place["flags"].append(flags)
        packed += groups
    commands = []
    units.mkdir(parents=True, exist_ok=True)
    for number, group in enumerate(packed):
        unit = units / f"unit_{number}.cpp"
        mocs = units / "moc" / str(number)
        lines = []
        for place, source in enumerate(group["files"]):
            write_moc(moc, source, mocs)
            with_main = re.search(r"^QTEST_\w*MAIN|^int main\(", source.read_text(), re.M) is not None
            if with_main:
                lines.append(f"#define main main_{place}")
            lines.append(f'#include "{source}"')
            if with_main:
                lines.append("#undef main")
        unit.write_text("\n".join(lines) + "\n")
        flags, met = [], set()
        for one in group["flags"]:
            words = iter(one)
            for word in words:
                pair = (word, next(words)) if word in ("-isystem", "-I", "-include", "-D") else (word,)
                if pair not in met:
                    met.add(pair)
                    flags += pair
        command = ["c++", *flags, f"-I{mocs}", "-c", str(unit)]
        commands.append({"directory": str(build), "file": str(unit), "arguments": command})
        print(unit, *group["files"], sep="\t")
    (units / "compile_commands.json").write_text(json.dumps(commands, indent=1))
    for name in sorted(wanted):
        print(f"not compiled, so not looked at: {name}", file=sys.stderr)


if __name__ == "__main__":
    main()
