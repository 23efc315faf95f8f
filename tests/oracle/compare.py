# SPDX-License-Identifier: MIT
"""Compares `sillet plan --json` with the independent computation on random sheets.

    /usr/bin/python3 tests/oracle/compare.py [--program build/sillet] [--count 1000] [--seed 1]

Each sheet is one test, with all its visits; so is each second reading: where nothing waits, the instrument the plan
predicts is written down as a new sheet, and the program must then leave all of it alone.
"""
import argparse
import json
import math
import os
import subprocess
import sys
import tempfile
from concurrent.futures import ProcessPoolExecutor
from itertools import repeat

import numpy as np

import bench
import history
import jobs
import lowest
import parts
import sag
import tone

NEAR = 1e-6
NEAR_FLAT = 2e-5   # curvature about 1/3000, where a radius may as well be called none
NEVER_PAST = 1e-9
NEAR_LEAST = 1e-8  # where two searches for the least may stop, as a share of it
NEAR_PLACE = 1e-5  # where a string is to leave nut and saddle
NO_PAIR = 5.0      # cents; no string of an instrument is left so far off by its best pair
BATCH = 50         # sheets that one process plans
JOINT = 3          # every so many sheets the lowest setup is held against one joint programme


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
    if not found.cuts.whole or not isinstance(got, dict) or found.cuts.way != "base":
        return   # a line with nothing at one end is compared as it is
    board, verdict = found.board, found.verdict
    lowering = [v == "lower" for v in verdict]
    none = (math.inf, math.inf)
    cut_holds(report, "saddle.bottom_cut", got, found.cuts.whole, found.cuts.caps[0], board,
              lowering, none)
    cut_holds(report, "saddle.bottom_cut.first_pass", got["first_pass"], found.cuts.first,
              found.cuts.caps[1], board, lowering, found.cuts.most)


def compare_radius(report, wanted, got, fit):
    if abs(abs(1 / fit) - 1 / 3000) < NEAR_FLAT:
        return
    if is_number(wanted) and is_number(got):
        report.same_number("saddle.top_radius", wanted, got, 1e-4)
    elif wanted != got:
        report.wrong("saddle.top_radius", wanted, got)


def compare_notes(report, place, wanted, got):
    """Clean forces; the fret that sets one only where no other is as near."""
    for i, row in enumerate(wanted):
        clear = row.pop("clear")
        frets, got_frets = row.pop("at_fret"), got[i].get("at_fret", [])
        report.same(f"{place}.{i}", row, got[i])
        known = [fret if sure else other for fret, sure, other in zip(frets, clear, got_frets)]
        report.same(f"{place}.{i}.at_fret", known, got_frets)


def plain_picks(job, rows):
    """Rows but those of a pick that is shown as either of two figures, half way between them."""
    def halved(force):
        return abs(force * 100 % 1 - 0.5) < 1e-9
    return [row for row in rows if not halved(job.attack.force[row["string"] - 1])]


def compare_causes(report, wanted, got):
    """Two readings equally far out are one as good a cause as the other."""
    report.same("causes", [{k: v for k, v in row.items() if k != "cause"} for row in wanted], got)
    for k, (row, other) in enumerate(zip(wanted, got)):
        if other.get("cause") not in row["cause"]:
            report.wrong(f"causes.{k}.cause", row["cause"], other.get("cause"))


def same_place(report, place, wanted, got):
    if is_number(wanted) and is_number(got):
        report.same_number(place, wanted, got, NEAR_PLACE)
    else:
        report.same(place, wanted, got)


def compare_pair(report, place, tuned, wanted, got):
    """The best pair; its cents as they are at the program's own, which may be a hair off ours.

    A string so stiff that the best pair leaves it out of tune by more than a few cents has none
    worth the name: the program may say so, but then must not tell a worse one.
    """
    pair = got["best"]["setback"], got["best"]["advance"]
    if tuned is None or pair[0] is None:
        if tuned is None or tone.at_pair(tuned, wanted)["rms"] < NO_PAIR:
            report.same(f"{place}.best", None if tuned is None else wanted, pair[0])
        report.same(f"{place}.best", dict.fromkeys(("setback", "advance", "rms")), got["best"])
        report.same(f"{place}.best_cents", [None] * 12, got["best_cents"])
        return
    ours, theirs = tone.at_pair(tuned, wanted), tone.at_pair(tuned, pair)
    report.same_number(f"{place}.best.rms", theirs["rms"], got["best"]["rms"], NEAR)
    report.same(f"{place}.best_cents", theirs["cents"], got["best_cents"])
    if theirs["rms"] > ours["rms"] + NEAR_LEAST * max(1.0, ours["rms"]):
        report.wrong(f"{place}.best.rms", f"the least, {ours['rms']}", theirs["rms"])
    if ours["rms"] < NO_PAIR:
        for name, value, it in zip(("setback", "advance"), wanted, pair):
            report.same_number(f"{place}.best.{name}", value, it, NEAR_PLACE)


def compare_slot(report, job, strings, got):
    """By these a slot is cut: by the tuner, else by the string's physics, and then not by a core that is
    assumed."""
    told = [row["move"] is not None or (not s.assumed and row["saddle_only"] is not None)
            for s, row in zip(job.strings, got["strings"])]
    report.same("compensation: off the slot", told,
                [row["off_slot"] is not None for row in got["strings"]])
    report.same("compensation: best slot", [all(told)] * 2,
                [got["slot_best"][end] is not None for end in ("treble", "bass")])
    ends, z = got["slot_as_built"], [row["saddle_z"] for row in strings]
    for i, row in enumerate(got["strings"]):
        if told[i]:
            line = np.interp(z[i], [z[-1], z[0]], [ends["bass"], ends["treble"]])
            there = row["saddle_only"] if row["move"] is None else job.saddle.setback[i] + row["move"]
            same_place(report, f"compensation.strings.{i}.off_slot", there - line, row["off_slot"])


def compare_tuning(report, wanted, got):
    """Cents to a millionth; places less closely, since cents hardly move about the best pair."""
    for i, row in enumerate(wanted["strings"]):
        place, other = f"compensation.strings.{i}", got["strings"][i]
        for name in ("saddle_only", "move"):
            same_place(report, f"{place}.{name}", row.pop(name), other[name])
        compare_pair(report, place, row.pop("tuned"), row.pop("best"), other)
    report.same("compensation", wanted, got)


def compare_lowest(report, job, found, got, joint):
    """What the program calls the lowest setup, as a programme's answer."""
    if not lowest.asked(found.board, found.tension, job.attack.force):
        if got is not None:
            report.wrong("lowest", None, got)
    elif got is None:
        report.wrong("lowest", "a setup", None)
    elif joint:
        for place, wanted, it in lowest.problems(found.board, job, found.tension, found.last.off,
                                                 got):
            report.wrong(f"lowest, {place}", wanted, it)


def compare_sound(report, job, found, got, joint):
    """The rooms of sound; the lowest setup only now and then, since its solver is slow."""
    wanted = bench.ring_and_tune(job, found, got["saddle"]["remedy"])
    for key in ("strings", "after"):
        compare_notes(report, f"clearance.{key}", wanted["clearance"].pop(key),
                      got["clearance"][key])
    report.same("clearance", wanted["clearance"], got["clearance"])
    compare_causes(report, plain_picks(job, wanted["causes"]), plain_picks(job, got["causes"]))
    compare_slot(report, job, got["strings"], got["compensation"])
    compare_tuning(report, wanted["compensation"], got["compensation"])
    compare_lowest(report, job, found, got["lowest"], joint)


def run(program, paths):
    """A pair for each sheet, all of them planned by one process: its result, or None and why."""
    if len(paths) == 1:  # alone it would be answered with its result and nothing round it
        return run(program, paths * 2)[:1]
    done = subprocess.run([program, "plan", "--json", *paths], capture_output=True, text=True,
                          check=False)
    try:
        lines = [json.loads(line) for line in done.stdout.splitlines()]
    except ValueError as fault:
        return [(None, f"not JSON: {fault}")] * len(paths)
    if [line["sheet"] for line in lines] != paths:
        return [(None, f"exit {done.returncode}, not a line a sheet: {done.stderr.strip()}")] * len(paths)
    return [(line["result"], f"exit {line['exit']}: {done.stderr.strip()}" if line["exit"] else None)
            for line in lines]


def compare_sag(report, job, z, rows, findings):
    """Which strings of a bridge in one piece lie low because it sagged, and by how much."""
    told = {row["string"]: row["figures"] for row in findings if row["code"] == "bridge-sag"}
    wanted = sag.sags(job, z, rows)
    report.same("sag: strings", sorted(wanted), sorted(told))
    for string in wanted.keys() & told.keys():
        report.same_number(f"sag: string {string}", wanted[string],
                           next(one["value"] for one in told[string] if one["of"] == "read"), NEAR)


def compare_curve(report, job, found, saddle):
    """The actions when all is done, on a bridge on posts: with its curve, where that is wrong."""
    if not parts.on_posts(job.saddle):
        return
    last = bench.with_its_curve(job, found, saddle["remedy"])
    for i, row in enumerate(saddle["strings"]):
        action = bench.action_of(found.board, last, i)
        if row["asked"]["action"] is not None or not math.isnan(action):
            report.same_number(f"asked: string {i + 1}", max(action, 0.0), row["asked"]["action"], NEAR)


def check(report, sheet, got, joint):
    """Compares all arithmetic of one sheet."""
    job, visits, done, _ = history.follow(sheet)
    wanted, found = bench.plan_and_cuts(job)
    radius = wanted["saddle"].pop("top_radius")
    got_radius = got.get("saddle", {}).get("top_radius", "nothing of that name")
    report.same("visits", visits, got.get("visits"))
    report.same("done", done, got.get("done"))
    whole, each = job.carried_rows
    report.same("carried", whole, got.get("carried"))
    for part, dates in zip(("nut", "saddle"), each):
        report.same(f"{part}.carried", dates, [row["carried"] for row in got[part]["strings"]])
    report.same("result", wanted, {key: got.get(key) for key in wanted})
    if report.lines:
        return job
    compare_radius(report, radius, got_radius, found.radius)
    compare_cut(report, found, got["saddle"]["bottom_cut"])
    compare_sag(report, job, [row["saddle_z"] for row in got["strings"]], wanted["saddle"]["strings"], got["findings"])
    compare_sound(report, job, found, got, joint)
    compare_curve(report, job, found, got["saddle"])
    return job


def settled(job, got):
    """Nothing withheld, nothing waiting, and an aim that a held reading can show."""
    parts_of = got["nut"], got["saddle"]
    if parts.on_posts(job.saddle) and any(s["verdict"] != "leave" for s in parts_of[1]["strings"]):
        return False   # one line through all that the strings want leaves some beside their aims
    low, _, high = job.targets.relief
    bent, rod = got["stages"][-1]["relief"], job.board.rod != "none" and job.board.rod_state == "works"
    if rod and bent is not None and not low - 1e-9 <= bent <= high + 1e-9:
        return False   # at an edge, which is narrower for a straightedge than for a string
    if parts_of[0]["remedy"] == "shim":   # it leaves some past their range, by no more than was read to
        gaps = [s[f"first_held{job.targets.held or 2}"] for s in got["stages"][-1]["strings"]]
        if any(gap > high + 1e-9 for gap, (_, _, high) in zip(gaps, job.targets.first)):
            return False
    return (job.targets.held and not any(part["withheld_by"] for part in parts_of)
            and all(s["verdict"] != "wait" and not s["at_edge"]   # read anew, its edge is narrower
                    for part in parts_of for s in part["strings"]))


def check_again(report, got, job, first):
    """After the predicted work nothing is left to do, and what was worked on is at its aim."""
    for part in ("nut", "saddle"):
        if got[part]["remedy"] != "none":
            report.wrong(f"{part}.remedy", "none", got[part]["remedy"])
    for i in range(job.count):
        now = got["stages"][0]["strings"][i]
        bone = first["saddle"]["strings"][i]
        short = abs(bone["goal"] - bone["lower"]) > 1e-6   # it ends where its room does
        if bone["verdict"] in ("lower", "raise") and not short:
            report.same(f"now.{i}.action", job.targets.action[i][1], now["action"])
        slot = first["nut"]["strings"][i]
        on_fret = slot["deepen"] is None   # raised to its target by its feelers, without a figure
        if slot["verdict"] in ("file", "raise") and (
                on_fret or abs(slot["goal"] - slot["deepen"]) < 1e-6):
            report.same(f"now.{i}.first", job.targets.first[i][1],
                        now[f"first_held{job.targets.held}"])


def planned(program, folder, reports, texts):
    """What the program makes of each sheet, once written into the folder; None where it fails."""
    paths = [os.path.join(folder, report.name.replace(" ", "-") + ".yaml") for report in reports]
    for path, text in zip(paths, texts):
        with open(path, "w", encoding="utf-8") as file:
            file.write(text)
    results = run(program, paths) if paths else []
    for report, (_, fault) in zip(reports, results):
        if fault:
            report.wrong("the program", "a plan", fault)
    return [None if fault else got for got, fault in results]


def compare(options, folder, numbers):
    """The reports of some numbers: of each its sheet, and its second reading where there is one."""
    made = [jobs.make(options.seed, number) for number in numbers]
    reports = [Report(f"sheet {number}") for number in numbers]
    again = []
    results = planned(options.program, folder, reports, [text for _, text in made])
    for number, (doc, text), report, got in zip(numbers, made, reports, results):
        if got is None:
            continue
        job = check(report, text, got, number % JOINT == 0)
        if not report.lines and settled(job, got):
            again.append((Report(f"{report.name} again"), jobs.again(doc, job, got), job, got))
    seconds = [report for report, *_ in again]
    results = planned(options.program, folder, seconds, [text for _, text, *_ in again])
    for (report, _, job, first), got in zip(again, results):
        if got is not None:
            check_again(report, got, job, first)
    return reports + seconds


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", default="build/sillet")
    parser.add_argument("--count", type=int, default=1000)
    parser.add_argument("--start", type=int, default=0, help="number of the first sheet")
    parser.add_argument("--seed", default="1")
    parser.add_argument("--keep", help="a folder that keeps the sheets")
    options = parser.parse_args()
    end = options.start + options.count
    batches = [range(n, min(n + BATCH, end)) for n in range(options.start, end, BATCH)]
    with tempfile.TemporaryDirectory() as scratch, ProcessPoolExecutor(2) as two:
        folder = options.keep or scratch
        os.makedirs(folder, exist_ok=True)
        reports = [r for batch in two.map(compare, repeat(options), repeat(folder), batches)
                   for r in batch]
    failed = [r for r in reports if r.lines]
    for report in failed:
        print("\n".join(report.lines))
    print(f"{len(reports) - len(failed)} passed, {len(failed)} failed")
    return 1 if failed or not reports else 0


if __name__ == "__main__":
    sys.exit(main())
