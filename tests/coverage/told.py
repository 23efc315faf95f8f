#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""How much of src/ the tests went through, as gcov counts it, room by room.

    told.py FOLDER      of a tree whose programs were built with --coverage and run

Ends with 1 where src/core falls under 98 % of its lines or 95 % of its branches, or all of src under
90 % of its lines. With --missing, the lines and branches not gone through are printed first.
"""
import collections
import glob
import gzip
import json
import os
import subprocess
import sys
import tempfile


def files(folder):
    """gcov's account of each object, one a source."""
    objects = glob.glob(os.path.join(folder, "build/check/objects/**/*.gcno"), recursive=True)
    with tempfile.TemporaryDirectory() as work:
        subprocess.run(["gcov", "--branch-probabilities", "--json-format", "--preserve-paths",
                        *map(os.path.abspath, objects)], cwd=work, check=True,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        for path in glob.glob(os.path.join(work, "*.json.gz")):
            with gzip.open(path, "rt") as account:
                yield from json.load(account)["files"]


def main():
    folder, missing = sys.argv[1], "--missing" in sys.argv
    lines = collections.defaultdict(lambda: collections.defaultdict(int))
    branches = collections.defaultdict(dict)
    for file in files(folder):
        name = os.path.normpath(file["file"])
        if not name.startswith("src/"):
            continue
        for line in file["lines"]:
            lines[name][line["line_number"]] += line["count"]
            for k, branch in enumerate(line["branches"]):
                at = (line["line_number"], k)
                branches[name][at] = branches[name].get(at, 0) + branch["count"]
    if missing:
        for name in sorted(lines):
            for number, count in sorted(lines[name].items()):
                untaken = [k for (at, k), times in branches[name].items()
                           if at == number and times == 0]
                if count == 0 or untaken:
                    print(f"{name}:{number}: {'not run' if count == 0 else f'branches {untaken}'}")
    sums = collections.defaultdict(lambda: [0, 0, 0, 0])
    for name in lines:
        for room in (os.path.dirname(name), "src"):
            s = sums[room]
            s[0] += sum(count > 0 for count in lines[name].values())
            s[1] += len(lines[name])
            s[2] += sum(count > 0 for count in branches[name].values())
            s[3] += len(branches[name])
    print(f"{'room':24} {'lines':>15} {'branches':>15}")
    for room, (hit, count, taken, ways) in sorted(sums.items()):
        print(f"{room:24} {100 * hit / count:6.1f} % of {count:5} "
              f"{100 * taken / max(ways, 1):6.1f} % of {ways:5}")
    core, whole = sums["src/core"], sums["src"]
    enough = (core[0] >= 0.98 * core[1] and core[2] >= 0.95 * core[3] and
              whole[0] >= 0.90 * whole[1])
    return 0 if enough else 1


if __name__ == "__main__":
    sys.exit(main())
