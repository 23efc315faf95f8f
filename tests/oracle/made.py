# SPDX-License-Identifier: MIT
"""Nuts and saddles from a blank, computed a second time on random instruments: the places, feelers,
floors and heights, a saddle's peaks, what stays on at first, and the new nut read back.

    /usr/bin/python3 tests/oracle/made.py [--program build/sillet] [--count 300] [--seed 1]
"""
import argparse
import copy
import math
import os
import random
import tempfile
from types import SimpleNamespace as Plain

import numpy as np

import bench
import compare
import jobs
import parts
import ring
import room
import seat
import sense
import sheet
import tuned

THIRD = 1 / math.sqrt(3)
STANDS = 0.1               # how true a target is that stands for a reading, plus or minus


def strung(m, doc):
    """One visit of a calm instrument: what can be read with the strings off, and at times more."""
    job = sheet.written(doc)
    doc["nut"].pop("kind", None)
    doc["saddle"].update(kind=m.rng.choice(["slotted", "slotted", "glued"]), slot_depth="5 mm",
                         thickness="3 mm", length=f"{job.saddle.spread + 16} mm")
    for key in ("pitch", "travel", "post_spread", "intonation", "intonation_pitch", "peak"):
        doc["saddle"].pop(key, None)
    doc["limits"]["least_protrusion"] = "0.1 mm"
    reading = {"frets": m.rng.choice(["sound", slight(m, job)])}
    low, aim, high = job.targets.relief
    if m.chance(0.7) and job.board.join >= 3:
        gap = aim + 0.8 * m.between(low - aim, high - aim)
        reading["relief"] = {"gap": f"{gap:.9f} mm", "by": "straightedge"}
    if m.chance(0.3):
        reading["condition"] = {"tuned": "no"}
    doc["readings"] = [reading]


def slight(m, job):
    """Crowns off their line by no more than is left alone."""
    most = min(0.03, 0.9 * job.limits.wear)
    places = sorted({(m.rng.randint(1, job.count), m.rng.randint(1, min(3, job.board.frets)))
                     for _ in range(3)})
    return [{"string": s, "fret": n, "off": f"{m.between(-most, most):.6f} mm"} for s, n in places]


def made_of(m, doc):
    """Which parts are made, and whether they are copies."""
    doc["make"] = m.rng.choice(["nut", "nut", "saddle", ["nut", "saddle"]])
    job = sheet.written(doc)
    board = bench.Board(job)
    longer = 1 / math.cos(parts.leaning(board.nut_at, board.z_nut))
    if "nut" in doc["make"] and m.chance(0.3):
        doc["nut"]["centres"] = [f"{(z + job.nut.width / 2) * longer:.9f} mm" for z in board.z_nut]
    if "nut" in doc["make"] and m.chance(0.2):
        board_at = 5.0 if math.isnan(job.nut.seat_to_board) else job.nut.seat_to_board
        doc["nut"]["floors"] = [f"{board_at + m.between(0.7, 1.8):.4f} mm" for _ in range(job.count)]
    if "saddle" in doc["make"]:
        doc["readings"][0]["bridge_top"] = {"treble": f"{m.between(0.2, 1.5):.4f} mm",
                                            "bass": f"{m.between(0.2, 1.5):.4f} mm"}
        if m.chance(0.2):
            doc["saddle"]["old"] = [f"{m.between(7, 11):.4f} mm" for _ in range(job.count)]


def draw(seed, number):
    m = jobs.Maker(random.Random(f"made {seed}/{number}"))
    doc, _ = jobs.make(f"made {seed}", number)
    strung(m, doc)
    made_of(m, doc)
    return doc


class Made:
    """What is to come out."""

    def __init__(self, doc):
        self.doc, self.job = doc, sheet.written(doc)
        job = self.job
        self.board = bench.Board(job)
        self.nut_made, self.saddle_made = (part in doc["make"] for part in ("nut", "saddle"))
        relief, span = job.readings.relief, self.board.span(job.readings.relief.at)
        self.reads = not math.isnan(relief.gap) and not job.readings.untuned
        bent = relief.gap if self.reads else job.targets.relief[1]
        self.bend = bent / span if job.board.join >= 3 else 0.0
        u = job.tools.relief if self.reads else STANDS
        self.step = u * THIRD / span if job.board.join >= 3 else 0.0
        self.copied = not math.isnan(job.nut.floors[0])
        bench.give_pluck(self.board, job)
        self.over = np.array(self.board.off)   # the crowns that the slots are cut for
        if self.nut_made:
            self.over[:, 1] = np.maximum(self.over[:, 1], 0.0)   # none for a worn spot at fret 1
        self.raised, self.chosen = np.zeros(job.count), np.zeros(job.count, bool)
        if self.nut_made and not self.copied:
            self.keep_slots_clean()

    def keep_slots_clean(self):
        """How far over its target each slot is made so that its open string rings clean; past its range
        it is to be chosen first what gives way."""
        job, board = self.job, self.board
        for i in range(job.count):
            state, aim = self.state(self.bend), job.targets.action[i][1]
            over = ring.nut(board, job, state, i, aim) - state.nut[i]
            if over > ring.EDGE:
                state.nut[i] += over
                state.end[i] = self.end_for(state, i)
                gap = bench.first_of(board, self.to_cut(state), i, job.targets.held)
                fits = not gap > job.targets.first[i][2] + ring.EDGE
                self.raised[i], self.chosen[i] = over if fits else 0.0, not fits

    def end_for(self, state, i):
        """Where the saddle holds a string for its target action."""
        near, far = bench.open_row(self.board, i, 12)
        crown = self.board.crown(state.bend, self.board.off, i, 12)
        return (self.job.targets.action[i][1] + crown - near * state.nut[i]) / far

    def to_cut(self, state):
        return Plain(**{**vars(state), "off": self.over})

    def state(self, bend):
        """Nut and saddle at their targets on a neck so bent, the nut where its strings ring clean."""
        job, board = self.job, self.board
        state = Plain(bend=bend, off=board.off, nut=np.zeros(job.count), end=np.zeros(job.count))
        for i in range(job.count):
            state.nut[i] = bench.nut_aim(board, job, self.to_cut(state), i) + self.raised[i]
            if self.nut_made and self.copied:
                state.nut[i] = job.nut.floors[i] - job.nut.seat_to_board - job.board.crown \
                    + self.lift(bend, i)
            state.end[i] = self.end_for(state, i)
        return state

    def lift(self, bend, i):
        """How far the fret tops stand over the chord, carried on to the nut on the centre line."""
        return -bend * self.board.span_at(self.board.nut_at[i])

    def over_tops(self, bend):
        """How far the slots stand over the fret tops, which is all but the fret height."""
        job, board = self.job, self.board
        tops = np.array([self.lift(bend, i) - board.drop(board.nut_at[i], board.z_nut[i])
                         for i in range(job.count)])
        return self.state(bend).nut - tops

    def nut(self):
        if self.chosen.any():
            return {"remedy": "wait", "make": False}
        job, board = self.job, self.board
        stack = job.board.crown + self.over_tops(self.bend)
        bowed = self.over_tops(self.bend + self.step) - self.over_tops(self.bend)
        sure = np.hypot(bowed, job.caliper * THIRD)
        drops = np.array([board.drop(board.nut_at[i], board.z_nut[i]) for i in range(job.count)])
        if self.copied:
            stack = np.array(job.nut.floors) - job.nut.seat_to_board + drops
            sure = np.full(job.count, job.caliper * THIRD)
        floor = job.nut.seat_to_board + stack - drops
        if self.copied:
            floor = np.array(job.nut.floors)
        if sense.slots(floor, stack).any():
            return {"remedy": "wait", "make": False}
        rows = []
        for i in range(job.count):
            held, (low, aim, _) = job.targets.held, job.targets.first[i]
            lever = 1 - board.x[i, 1] / (board.x[i, held] if held else board.end[i])
            more = 1.68 * sure[i] - (aim - low) / lever
            spare = job.allowances.leave.slot
            leave = spare if self.copied or math.isnan(more) else max(spare, more)
            rows.append({"centre": job.nut.width / 2 + board.z_nut[i], "stack": stack[i],
                         "floor": floor[i], "stack_u": sure[i] + 0 * stack[i], "leave": leave,
                         "verdict": "file", "first_pass": math.nan})
        return {"remedy": "replace", "make": True, "strings": rows}

    def heights(self, bend):
        now = self.state(bend)
        return now.end - seat.seat_by_edge(self.board, self.job, now)

    def stands_out(self, height):
        """(how much higher than its target each string is made for the saddle to stand out, whether
        even the high edge of a range is too low for it)."""
        job, board = self.job, self.board
        out = height - job.saddle.slot_depth + job.saddle.pickup
        to_high = np.array([band[2] - band[1] for band in job.targets.action]) / board.t12
        least, sound = room.straight_down(job, out)
        if not math.isnan(job.saddle.old[0]):
            return np.zeros(job.count), (least < -room.EDGE).any()
        up = np.where(sound < -room.EDGE, np.minimum(-sound, to_high), 0.0)
        return up, (least + to_high < -room.EDGE).any()

    def sure(self, bowed, i):
        """How sure a height by the bridge's top is."""
        job, board = self.job, self.board
        h, t = 3 if job.board.frets >= 3 else 2, board.t12[i]
        gap = 0.0 if self.nut_made else STANDS * THIRD / (1 - board.x[i, 1] / board.x[i, h])
        return math.hypot(bowed, gap * (1 - t) / t, job.tools.caliper * THIRD)

    def rings_clean(self, up, i):
        """(how much higher still it is made to ring clean, whether that is to be chosen first)."""
        state, (_, aim, high) = self.state(self.bend), self.job.targets.action[i]
        over = ring.saddle(self.board, self.job, state, i) - state.end[i] - up
        if not over > ring.EDGE:
            return 0.0, False
        past = aim + (up + over) * self.board.t12[i] > high + ring.EDGE
        return (0.0, True) if past else (over, False)

    def peaks(self, raised, copied):
        """(where each string is to leave the finished top, by how much the piece is short of that): by its
        physics, on the heights it is made to; of a copy, where it left the old one."""
        board, job, last = self.board, self.job, self.state(self.bend)
        last.end = last.end + raised
        for i in range(job.count):
            there = job.saddle.thickness / 2
            by = tuned.by_physics(board, job, last, i, math.nan)
            if abs(by) >= tuned.LEAST and not copied:
                there += by * tuned.slanted(board)
            held = min(max(there, tuned.MARGIN), job.saddle.thickness - tuned.MARGIN)
            yield held, there - held

    def saddle(self):
        job, board = self.job, self.board
        copied = not math.isnan(job.saddle.old[0])
        height = np.array(job.saddle.old) if copied else self.heights(self.bend)
        bowed = self.heights(self.bend + self.step) - self.heights(self.bend)
        up, stops = self.stands_out(height)
        if stops or np.isnan(height).any():
            return {"remedy": "wait", "make": False}
        spare, rows = job.allowances.leave, []
        spare = spare.top if job.saddle.kind == "glued" else spare.base
        clean = [(0.0, False) if copied else self.rings_clean(up[i], i) for i in range(job.count)]
        if any(chosen for _, chosen in clean):
            return {"remedy": "wait", "make": False}
        raised = np.array([up[i] + clean[i][0] for i in range(job.count)])
        for i, (peak, short) in enumerate(self.peaks(raised, copied)):
            low, aim, _ = job.targets.action[i]
            leave = max(spare, 2.2 * self.sure(bowed[i], i) - (aim - low) / board.t12[i])
            at = height[i] + raised[i]
            rows.append({"height": at, "leave": spare if copied else leave,
                         "peak": peak, "peak_short": short,
                         "protrusion": at - job.saddle.slot_depth + job.saddle.pickup,
                         "verdict": "lower", "dress": 0.0, "dress_first": 0.0, "room": math.nan})
        return {"remedy": "replace", "make": True, "strings": rows}


def possible(made):
    """What the two would not differ about: an edge on the middle of the board rocks where that is a
    crest."""
    return not made.saddle_made or made.bend > 0


def check(report, made, got):
    if made.nut_made:
        report.same("nut", bench.plain(made.nut()), got["nut"])
    if made.saddle_made:
        report.same("saddle", bench.plain(made.saddle()), got["saddle"])
    if got["done"]:
        report.wrong("done", False, True)


def read_back(made):
    """The new nut cut to its stacks for good and read, lying on the crown its target names."""
    doc, job, held = made.doc, made.job, made.job.targets.held
    state = made.state(made.bend)
    gap = [bench.first_of(made.board, state, i, held) for i in range(job.count)]
    action = [bench.action_of(made.board, state, i) for i in range(job.count)]
    second = {"frets": copy.deepcopy(doc["readings"][0]["frets"]), "first_held": held or "open",
              "first": [f"{v:.12f} mm" for v in gap], "action": [f"{v:.12f} mm" for v in action]}
    if job.board.join >= 3:
        second["relief"] = {"gap": f"{made.bend * made.board.span(job.readings.relief.at):.12f} mm",
                            "by": "straightedge"}
    return {**doc, "readings": [doc["readings"][0], second]}


def check_back(report, made, got):
    """Read back it is where it was made to, and nothing is left to file."""
    state = made.state(made.bend)
    for i, row in enumerate(got["nut"]["strings"]):
        gap = bench.first_of(made.board, state, i, made.job.targets.held)
        report.same_number(f"read back {i + 1}", gap, row["now"], 1e-6)
        if row["verdict"] != "leave":
            report.wrong(f"read back {i + 1}", "leave", row["verdict"])


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", default="build/sillet")
    parser.add_argument("--count", type=int, default=300)
    parser.add_argument("--seed", default="1")
    options = parser.parse_args()
    all_made = [(n, Made(draw(options.seed, n))) for n in range(options.count)]
    all_made = [(n, made) for n, made in all_made if possible(made)]
    with tempfile.TemporaryDirectory() as folder:
        os.makedirs(folder, exist_ok=True)
        reports = [compare.Report(f"made {n}") for n, _ in all_made]
        results = compare.planned(options.program, folder, reports,
                                  [jobs.text_of(made.doc, random.Random(n)) for n, made in all_made])
        for report, (_, made), got in zip(reports, all_made, results):
            if got is not None:
                check(report, made, got)
        nuts = [(n, made) for n, made in all_made if made.nut_made and not made.copied
                and made.doc["make"] == "nut" and made.nut()["make"]]
        backs = [compare.Report(f"made {n} read back") for n, _ in nuts]
        results = compare.planned(options.program, folder, backs,
                                  [jobs.text_of(read_back(made), random.Random(n))
                                   for n, made in nuts])
        for report, (_, made), got in zip(backs, nuts, results):
            if got is not None:
                check_back(report, made, got)
    failed = [r for r in reports + backs if r.lines]
    for report in failed[:20]:
        print("\n".join(report.lines[:6]))
    print(f"{len(reports) + len(backs) - len(failed)} passed, {len(failed)} failed")
    return len(failed) > 0


if __name__ == "__main__":
    raise SystemExit(main())
