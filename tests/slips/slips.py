#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Slips of the pen: every figure of every example with its point a place to the right or the left, and
every two neighbours in a list, or the treble and bass of a pair, in each other's place.

    /usr/bin/python3 tests/slips/slips.py [--program build/sillet] [--list] [--held FILE] SHEET..

Each slip is planned. It goes deeper where a first pass at nut or saddle, or a levelling, takes more
than the true sheet's does; it goes without a word where neither a warning of the sheet nor a finding
tells of it. Of figures ten times too large or too small one that goes deeper without a word has failed;
with a word, one in fifty may, where what was written could well be so. --held: the table of counts in
that document must be what was counted.
"""
import argparse
import json
import os
import re
import subprocess
import sys
import tempfile
from collections import Counter
from concurrent.futures import ThreadPoolExecutor

import yaml

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "sense"))
from mutated import FIGURE, figure_of, figures, rewritten, written

# Whose figures are readings; what else stands in a reading counts something or names a place.
KEYS = {"relief", "gap", "action", "first", "first_open", "off", "saddle_height", "bridge_top",
        "humidity"}
MOST_DEEPER = 0.02   # of all figures of a kind
DEEPER = 0.005   # mm: less than a file or a sheet of paper tells
WORDS = {"reading-odd", "reading-order", "saddle-curve", "readings-disagree", "off-forecast", "moved",
         "impossible", "under-frets"}
LENGTHS = {"relief", "frets", "first", "first_open", "action", "saddle_height", "bridge_top"}
EACH = ("action", "first", "first_open")
ENDS = ("planned as before", "warned of", "held", "work is stopped", "refused", "deeper, with a word",
        "deeper without a word")


def is_reading(path):
    return path[0] == "readings"


def is_read_figure(path):
    """A figure that was measured, and not the number of a string or a fret."""
    names = [key for key in path[2:] if isinstance(key, str)]
    last = names[-1] if names[-1] not in ("treble", "bass") else names[-2]
    return names[0] in LENGTHS | {"humidity"} and last in KEYS


def neighbours(node, path=()):
    """(path, one, the other) of every two figures that stand side by side."""
    if isinstance(node, yaml.MappingNode):
        ends = {name.value: value for name, value in node.value}
        if {"treble", "bass"} <= set(ends) and not isinstance(ends["treble"], yaml.MappingNode):
            yield path, ends["treble"], ends["bass"]
        for name, value in node.value:
            yield from neighbours(value, (*path, name.value))
    elif isinstance(node, yaml.SequenceNode):
        for n, value in enumerate(node.value):
            yield from neighbours(value, (*path, n))
        for n, (one, other) in enumerate(zip(node.value, node.value[1:])):
            if isinstance(one, yaml.ScalarNode) and isinstance(other, yaml.ScalarNode):
                yield (*path, n), one, other


def swapped(text, one, other):
    first, second = (FIGURE.match(node.value)[0] for node in (one, other))
    return rewritten(rewritten(text, other, first), one, second)


def slips_of(name):
    """(kind, what slipped, the sheet's text) of every slip in a sheet."""
    with open(name, encoding="utf-8") as file:
        text = file.read()
    root = yaml.compose(text)
    for path, node in figures(root):
        if figure_of(node) != 0 and (not is_reading(path) or is_read_figure(path)):
            for times in (10, 0.1):
                kind = "reading" if is_reading(path) else "dimension"
                yield kind, (path, times), rewritten(text, node, written(figure_of(node) * times))
    for path, one, other in neighbours(root):
        both = [FIGURE.match(node.value) for node in (one, other)]
        if all(both) and is_reading(path) and float(both[0][0]) != float(both[1][0]) \
                and {"action", "first", "first_open", "saddle_height", "bridge_top"} & set(path):
            yield "neighbours", (path, "swapped"), swapped(text, one, other)


def planned(program, sheets):
    """(the plan or None, how often it was warned) of each sheet, all planned in one process."""
    with tempfile.TemporaryDirectory() as folder:
        for k, text in enumerate(sheets):
            with open(f"{folder}/{k:05}.yaml", "w", encoding="utf-8") as out:
                out.write(text)
        run = subprocess.run([program, "plan", "--json", folder], check=False, capture_output=True,
                             text=True)
    warned = Counter(int(n) for n in re.findall(r"(\d{5})\.yaml:\d+:\d+: warning:", run.stderr))
    rows = {int(os.path.basename(row["sheet"])[:5]): row["result"]
            for row in map(json.loads, run.stdout.splitlines())}
    return [(rows[k], warned[k]) for k in range(len(sheets))]


def known(value):
    return 0.0 if value is None else value


def passes(plan):
    """How far today's work goes down, place by place."""
    nut, saddle = plan["nut"], plan["saddle"]
    found = {("nut", row["number"]): known(row["first_pass"]) for row in nut["strings"]}
    if saddle["remedy"] != "screw":   # a screw is turned back
        found.update({("saddle", row["number"]): known(row["first_pass"])
                      for row in saddle["strings"]})
    first = (saddle["bottom_cut"] or {}).get("first_pass", {})
    found.update({("bottom", end): known(first.get(end)) for end in ("treble", "bass")})
    shim = known(saddle["shim"])
    found.update({("top", row["number"]): known(row["dress"]) - shim for row in saddle["strings"]
                  if saddle["remedy"] == "shim"})
    frets = plan["stages"][1]["strings"], plan["stages"][2]["strings"]
    rise = [after["nut_height"] - before["nut_height"] for before, after in zip(*frets)
            if None not in (before["nut_height"], after["nut_height"])]
    step = {step["act"] for step in plan["steps"]}
    found["frets"] = max(rise, default=0.0) if "level-frets" in step else 0.0
    found["new part"] = float(bool(step & {"fit-nut-blank", "new-saddle", "new-frets"}))
    return found


def deeper_by(plan, true):
    """{place: mm} of what goes deeper than by the true figure."""
    return {place: round(depth - true.get(place, 0.0), 3) for place, depth in passes(plan).items()
            if depth > true.get(place, 0.0) + DEEPER}


def is_told(plan, what):
    """Whether a finding tells of the figure that slipped."""
    path = what[0]
    key = path[2] if is_reading(path) else None
    if path[-1] == "slot_depth" and any(found["code"] == "seat-shallow" for found in plan["findings"]):
        return True
    strings = [n + 1 for n in path[3:] if isinstance(n, int)] if key else []
    strings += [n + 1 for n in strings] if what[1] == "swapped" else []
    for found in plan["findings"]:
        whole = found["string"] is None or key not in EACH
        if found["code"] in WORDS and (whole or not strings or found["string"] in strings):
            return True
    return False


def waits(plan):
    """(whether all work is stopped, the parts that wait)."""
    stops = any(found["level"] == "stop" for found in plan["findings"])
    return stops, {part for part in ("nut", "saddle") if plan[part]["withheld_by"]}


def fate(what, plan, warned, true):
    if plan is None:
        return "refused", {}
    deeper, told = deeper_by(plan, passes(true)), is_told(plan, what)
    if deeper:
        return ("deeper, with a word" if warned or told else "deeper without a word"), deeper
    (stops, held), (stopped, holds) = waits(true), waits(plan)
    if stopped and not stops:
        return "work is stopped", {}
    if told or holds - held:
        return "held", {}
    return ("warned of" if warned else "planned as before"), {}


def fates(options, name):
    """(kind, what slipped, how it ended, what goes deeper) of every slip of a sheet."""
    with open(name, encoding="utf-8") as file:
        text = file.read()
    slips = list(slips_of(name))
    (true, quiet), *rest = planned(options.program, [text, *(slip for _, _, slip in slips)])
    return [(os.path.basename(name), kind, what, *fate(what, plan, warned > quiet, true))
            for (kind, what, _), (plan, warned) in zip(slips, rest)]


def held_in(path):
    """{(kind, how it ended): how many} of the table in a document."""
    with open(path, encoding="utf-8") as file:
        rows = [[cell.strip() for cell in line.strip("|\n ").split("|")] for line in file
                if line.startswith("|")]
    head = next((row for row in rows if row[0] == "slips in a sheet"), ["", ""])
    return {(head[column], row[0]): int(row[column]) for row in rows if row[0] in ENDS
            for column in range(1, len(head))}


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", default="build/sillet")
    parser.add_argument("--list", action="store_true", help="every slip that goes deeper")
    parser.add_argument("--held", help="a document whose table must have these figures")
    parser.add_argument("sheets", nargs="+")
    options = parser.parse_args()
    total, failed = Counter(), 0
    with ThreadPoolExecutor(2) as two:
        for rows in two.map(lambda name: fates(options, name), options.sheets):
            for name, kind, what, end, where in rows:
                total[kind, end] += 1
                silent = end == "deeper without a word"
                failed += silent and kind != "neighbours"
                if where and (options.list or (silent and kind != "neighbours")):
                    print(f"{name}: {what}: {end}: {where}")
    kinds = ("reading", "dimension", "neighbours")
    print("| slips in a sheet | " + " | ".join(kinds) + " |")
    for end in ENDS:
        print(f"| {end} | " + " | ".join(str(total[kind, end]) for kind in kinds) + " |")
    for kind in kinds:
        count = sum(total[kind, end] for end in ENDS)
        if kind != "neighbours" and total[kind, "deeper, with a word"] > MOST_DEEPER * count:
            print(f"{kind}: over {MOST_DEEPER:.0%} go deeper")
            failed += 1
    if options.held and held_in(options.held) != {(kind, end): total[kind, end] for kind in kinds
                                                  for end in ENDS}:
        print(f"{options.held} has other figures")
        failed += 1
    print(f"{sum(total.values()) - failed} passed, {failed} failed")
    return 1 if failed or not total else 0


if __name__ == "__main__":
    sys.exit(main())
