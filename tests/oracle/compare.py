# SPDX-License-Identifier: MIT
"""Compares `sillet plan --json` with the independent computation on random sheets.

    /usr/bin/python3 tests/oracle/compare.py [--program build/sillet] [--count 1000] [--seed 1]

Each sheet is one test; so is each second reading: where nothing waits, the instrument the plan
predicts is written down as a new sheet, and the program must then leave all of it alone.
"""
import argparse
import json
import math
import os
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor

import bench
import jobs
import parts
import sheet

NEAR = 1e-6
NEAR_FLAT = 2e-5   # curvature about 1/3000, where a radius may as well be called none
NEVER_PAST = 1e-9


class Report:
    """Mismatches of one sheet: place, wanted, got, difference."""

    def __init__(self, name):
        self.name, self.lines = name, []

    def wrong(self, place, wanted, got, difference=None):
        tail = "" if difference is None else f", difference {difference:.3g}"
        self.lines.append(f"{self.name}: {place}: wanted {wanted}, got {got}{tail}")

    def same_number(self, place, wanted, got, near):
        """Passes only if a difference is shown to be small, so that a NaN fails."""
        difference = abs(got - wanted)
        if not difference <= near * max(1.0, abs(wanted)):
            self.wrong(place, wanted, got, difference)

    def same(self, place, wanted, got):
        if isinstance(wanted, dict):
            if not isinstance(got, dict):
                return self.wrong(place, "an object", got)
            for key, value in wanted.items():
                self.same(f"{place}.{key}", value, got.get(key, "nothing of that name"))
        elif place.endswith("withheld_by"):
            if not isinstance(got, list) or set(wanted) != set(got):
                self.wrong(place, wanted, got)
        elif isinstance(wanted, list):
            if not isinstance(got, list) or len(got) != len(wanted):
                return self.wrong(place, f"{len(wanted)} entries", got)
            for i, value in enumerate(wanted):
                self.same(f"{place}.{i}", value, got[i])
        elif is_number(wanted) and is_number(got):
            self.same_number(place, wanted, got, NEAR)
        elif type(wanted) is not type(got) or wanted != got:
            self.wrong(place, wanted, got)


def is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def cut_holds(report, place, got, cut, caps, board, lowering, most):
    """Feasible to 1e-9, and no less in total nor more tilted than the solver's line."""
    ours = parts.Cut(cut.length, [got["treble"], got["bass"]])
    if min(ours.ends) < -NEVER_PAST:
        report.wrong(f"{place}: both ends", "at least 0", list(ours.ends))
    if any(end > m + NEVER_PAST for end, m in zip(ours.ends, most)):
        report.wrong(f"{place}: both ends", f"at most {most}", list(ours.ends))
    for i, z in enumerate(board.z_saddle):
        if ours.at(z) > caps[i] + NEVER_PAST:
            report.wrong(f"{place} under string {i + 1}", f"at most {caps[i]}", ours.at(z))

    def total(line):
        return sum(line.at(z) for z, low in zip(board.z_saddle, lowering) if low)
    if total(ours) < total(cut) - NEVER_PAST:
        report.wrong(f"{place}: total", total(cut), total(ours), total(cut) - total(ours))


def compare_cut(report, found, got):
    """The bottom cut against the solver's, as a programme and end by end."""
    if not found.cuts.whole or not isinstance(got, dict):
        return
    board, verdict = found.board, found.verdict
    lowering = [v == "lower" for v in verdict]
    none = (math.inf, math.inf)
    cut_holds(report, "saddle.bottom_cut", got, found.cuts.whole, found.cuts.caps[0], board,
              lowering, none)
    cut_holds(report, "saddle.bottom_cut.first_pass", got["first_pass"], found.cuts.first,
              found.cuts.caps[1], board, lowering, tuple(found.cuts.whole.ends))


def compare_radius(report, wanted, got, fit):
    if abs(abs(1 / fit) - 1 / 3000) < NEAR_FLAT:
        return
    if is_number(wanted) and is_number(got):
        report.same_number("saddle.top_radius", wanted, got, 1e-4)
    elif wanted != got:
        report.wrong("saddle.top_radius", wanted, got)


def run(program, path):
    """(result or None, what went wrong)."""
    done = subprocess.run([program, "plan", path, "--json"], capture_output=True, text=True,
                          check=False)
    if done.returncode:
        return None, f"exit {done.returncode}: {done.stderr.strip()}"
    try:
        return json.loads(done.stdout), None
    except ValueError as fault:
        return None, f"not JSON: {fault}"


def check(report, program, path, text):
    """Runs the program on one sheet and compares all of its arithmetic."""
    job = sheet.read(text)
    wanted, found = bench.plan_and_cuts(job)
    got, fault = run(program, path)
    if fault:
        report.wrong("the program", "a plan", fault)
        return job, None
    radius = wanted["saddle"].pop("top_radius")
    got_radius = got.get("saddle", {}).get("top_radius", "nothing of that name")
    report.same("result", wanted, {key: got.get(key) for key in wanted})
    if report.lines:
        return job, got
    compare_radius(report, radius, got_radius, found.radius)
    compare_cut(report, found, got["saddle"]["bottom_cut"])
    return job, got


def settled(job, got):
    """Nothing withheld, nothing waiting, and an aim that a held reading can show."""
    parts_of = got["nut"], got["saddle"]
    return (job.targets.held and not any(part["withheld_by"] for part in parts_of)
            and all(s["verdict"] != "wait" for part in parts_of for s in part["strings"]))


def check_again(report, program, path, job, first):
    """After the predicted work nothing is left to do, and what was worked on is at its aim."""
    got, fault = run(program, path)
    if fault:
        return report.wrong("the program", "a plan", fault)
    for part in ("nut", "saddle"):
        if got[part]["remedy"] != "none":
            report.wrong(f"{part}.remedy", "none", got[part]["remedy"])
    for i in range(job.count):
        now = got["stages"][0]["strings"][i]
        if first["saddle"]["strings"][i]["verdict"] in ("lower", "raise"):
            report.same(f"now.{i}.action", job.targets.action[i][1], now["action"])
        if first["nut"]["strings"][i]["verdict"] in ("file", "raise"):
            report.same(f"now.{i}.first", job.targets.first[i][1],
                        now[f"first_held{job.targets.held}"])


def one(options, folder, number):
    """The reports of one number: its sheet, and its second reading where there is one."""
    doc, text = jobs.make(options.seed, number)
    path = os.path.join(folder, f"{number}.yaml")
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)
    reports = [Report(f"sheet {number}")]
    job, got = check(reports[0], options.program, path, text)
    if got is None or reports[0].lines or not settled(job, got):
        return reports
    path = os.path.join(folder, f"{number}-again.yaml")
    with open(path, "w", encoding="utf-8") as file:
        file.write(jobs.again(doc, job, got))
    reports.append(Report(f"sheet {number} again"))
    check_again(reports[1], options.program, path, job, got)
    return reports


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", default="build/sillet")
    parser.add_argument("--count", type=int, default=1000)
    parser.add_argument("--start", type=int, default=0, help="number of the first sheet")
    parser.add_argument("--seed", default="1")
    parser.add_argument("--keep", help="a folder that keeps the sheets")
    options = parser.parse_args()
    numbers = range(options.start, options.start + options.count)
    with tempfile.TemporaryDirectory() as scratch, ThreadPoolExecutor(2) as two:
        folder = options.keep or scratch
        os.makedirs(folder, exist_ok=True)
        reports = [r for batch in two.map(lambda n: one(options, folder, n), numbers)
                   for r in batch]
    failed = [r for r in reports if r.lines]
    for report in failed:
        print("\n".join(report.lines))
    print(f"{len(reports) - len(failed)} passed, {len(failed)} failed")
    return 1 if failed or not reports else 0


if __name__ == "__main__":
    sys.exit(main())
