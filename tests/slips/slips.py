#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Slips of the pen: every reading of every example written ten times and a tenth of what it was.

    /usr/bin/python3 tests/slips/slips.py [--program build/sillet] [--list] SHEET..

Each slip is planned. It goes deeper where a first pass at nut or saddle, or a levelling, takes more
than the true reading's does; it goes without a word where neither a warning of the sheet nor a
finding tells of the reading that slipped. A slip that goes deeper without a word has failed; with a
word, one in fifty may, where what was written could well be so.
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

# Whose figures are readings; what else stands in a reading counts something or names a place.
KEYS = {"relief", "gap", "action", "first", "first_open", "off", "saddle_height", "bridge_top",
        "humidity"}
MOST_DEEPER = 0.02   # of all slips
DEEPER = 0.005   # mm: less than a file or a sheet of paper tells
WORDS = {"reading-odd", "saddle-curve", "readings-disagree", "off-forecast", "moved"}
LENGTHS = {"relief", "frets", "first", "first_open", "action", "saddle_height", "bridge_top"}


def scalars(node, key=None, path=()):
    """(path, node) of every figure of a reading."""
    if isinstance(node, yaml.MappingNode):
        for name, value in node.value:
            yield from scalars(value, name.value, (*path, name.value))
    elif isinstance(node, yaml.SequenceNode):
        for n, value in enumerate(node.value):
            yield from scalars(value, key, (*path, n))
    elif key in KEYS | {"treble", "bass"} and re.match(r"-?[\d.]+", node.value) \
            and float(re.match(r"-?[\d.]+", node.value)[0]) != 0:
        yield path, node


def slipped(text, node, times):
    """The sheet with one figure's point a place to the right or the left."""
    figure = re.match(r"-?[\d.]+", node.value)[0]
    wrong = f"{float(figure) * times:.6f}".rstrip("0").rstrip(".")
    at = node.start_mark.index + (text[node.start_mark.index] in "\"'")
    return text[:at] + wrong + text[at + len(figure):]


def slips_of(name):
    """(what slipped, the sheet's text) of every slip in the readings of a sheet."""
    text = open(name, encoding="utf-8").read()
    root = dict((key.value, value) for key, value in yaml.compose(text).value)
    for n, reading in enumerate(root["readings"].value if "readings" in root else []):
        for path, node in scalars(reading):
            if path[0] in LENGTHS | {"humidity"}:
                for times in (10, 0.1):
                    yield (n, path, times), slipped(text, node, times)


def planned(options, text, folder):
    """(the plan or None, what was complained of)."""
    with tempfile.NamedTemporaryFile("w", dir=folder, prefix=".", suffix=".yaml", encoding="utf-8") as sheet:
        sheet.write(text)
        sheet.flush()
        run = subprocess.run([options.program, "plan", "--json", sheet.name], check=False,
                             capture_output=True, text=True)
    return (json.loads(run.stdout) if run.stdout else None), run.stderr


def known(value):
    return 0.0 if value is None else value


def passes(plan):
    """How far today's work goes down, place by place."""
    nut, saddle = plan["nut"], plan["saddle"]
    found = {("nut", row["number"]): known(row["first_pass"]) for row in nut["strings"]}
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
    found["new part"] = float(bool(step & {"new-nut", "new-saddle", "new-frets"}))
    return found


def deeper_by(plan, true):
    """{place: mm} of what goes deeper than by the true reading."""
    return {place: round(depth - true.get(place, 0.0), 3) for place, depth in passes(plan).items()
            if depth > true.get(place, 0.0) + DEEPER}


def is_told(plan, warned, what):
    """Whether a warning or a finding tells of the reading that slipped."""
    key, strings = what[1][0], [n + 1 for n in what[1] if isinstance(n, int)]
    each = key in ("action", "first", "first_open")
    for found in plan["findings"]:
        whole = found["string"] is None or not each
        if found["code"] in WORDS and (whole or not strings or found["string"] in strings):
            return True
    return warned


def fate(options, folder, slip, true, quiet):
    what, text = slip
    plan, said = planned(options, text, folder)
    if plan is None:
        return what, "refused", {}
    deeper, told = deeper_by(plan, true), is_told(plan, said.count("warning:") > quiet.count("warning:"), what)
    return what, ("deeper" if deeper else "no deeper") + (", told" if told else ", not told"), deeper


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", default="build/sillet")
    parser.add_argument("--list", action="store_true", help="every slip that goes deeper")
    parser.add_argument("sheets", nargs="+")
    options = parser.parse_args()
    total, silent = Counter(), 0
    with tempfile.TemporaryDirectory() as scratch, ThreadPoolExecutor(2) as two:
        for name in options.sheets:
            folder = os.path.dirname(name) or scratch
            plan, quiet = planned(options, open(name, encoding="utf-8").read(), folder)
            true = passes(plan)
            rows = two.map(lambda slip, f=folder, t=true, q=quiet: fate(options, f, slip, t, q),
                           list(slips_of(name)))
            for what, end, where in rows:
                total[end] += 1
                if end.startswith("deeper"):
                    silent += end == "deeper, not told"
                    if options.list or end == "deeper, not told":
                        print(f"{os.path.basename(name)}: {what}: {end}: {where}")
    for end, count in sorted(total.items()):
        print(f"| {end} | {count} |")
    count = sum(total.values())
    many = total["deeper, told"] > MOST_DEEPER * count
    if many:
        print(f"over {MOST_DEEPER:.0%} go deeper")
    print(f"{count - silent - many} passed, {silent + many} failed")
    return 1 if silent or many or not total else 0


if __name__ == "__main__":
    sys.exit(main())
