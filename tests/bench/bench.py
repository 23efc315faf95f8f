#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Speed and memory as ratios to yardsticks measured in the same run.

Instructions are counted by callgrind, so the machine's load does not enter; memory is the peak the
kernel saw. Each row says what was held against what, and the bound it is meant to keep.
"""
import re
import subprocess
import sys
import tempfile

import drawing
import many
import page

SHEET = "examples/high-saddle.yaml"


def instructions(*command):
    """Instructions of a whole process, loading included."""
    with tempfile.TemporaryDirectory() as folder:
        run = subprocess.run(
            ["valgrind", "--tool=callgrind", f"--callgrind-out-file={folder}/out", *command],
            capture_output=True, text=True, check=True)
    return int(re.search(r"Collected : (\d+)", run.stderr).group(1))


def peak_mib(*command):
    """Peak memory of a process, MiB. By time(1), which is small: a child's peak begins with that of
    the process it was forked from."""
    run = subprocess.run(["/usr/bin/time", "-f", "%M", *command],
                         stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True, check=True)
    return int(run.stderr.split()[-1]) / 1024


def once(part):
    """Instructions of one run of a part of the arithmetic."""
    few = instructions("build/bench/arithmetic", SHEET, part, "20")
    more = instructions("build/bench/arithmetic", SHEET, part, "40")
    return (more - few) / 20


def row(what, got, bound, unit):
    verdict = "ok" if got <= bound else "OVER"
    print(f"{what:<62} {got:>10.2f} {unit:<5} at most {bound:<8g} {verdict}")
    return got <= bound


def main():
    bare = instructions("build/bench/bare_yaml", SHEET)
    plan = instructions("build/sillet", "plan", SHEET, "--json")
    print(f"{SHEET}: {bare} instructions read bare by libyaml, {plan} planned\n")
    rows = [
        row("plan --json over a bare libyaml reading of the same sheet", plan / bare, 10, "x"),
        row("stages and cuts, six strings, instructions", once("cuts"), 60000, ""),
        row("clearance now and after", once("clearance"), 120000, ""),
        row("compensation", once("compensation"), 600000, ""),
        row("lowest clean setup", once("lowest"), 2000000, ""),
        row("peak memory of plan --json", peak_mib("build/sillet", "plan", SHEET, "--json"), 8, "MiB"),
    ]
    with tempfile.TemporaryDirectory() as folder:
        rows += drawing.rows(folder, SHEET, instructions, peak_mib, row)
        rows += many.rows(folder, instructions, peak_mib, row)
        rows += page.rows(folder, SHEET, row)
    return 0 if all(rows) else 1


if __name__ == "__main__":
    sys.exit(main())
