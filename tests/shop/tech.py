# SPDX-License-Identifier: MIT
"""A simulated tech, who does what the plan says with small errors, and then measures again."""
import json
import os
import subprocess

import numpy as np
import yaml

KEPT = {"saddle": 0.03, "nut": 0.02, "rod": 0.03, "settle": 0.01}   # to plus or minus, mm
STEADY = {**KEPT, "saddle": 0.0, "nut": 0.0}
LEAST = 0.01       # what a person can take off
DRESSED = 0.1      # what a plan asks to dress off a top
MOST_VISITS = 25
FINER = {"action": [(0.05, 0.05), (0.02, 0.01), (0.01, 0.01), (0.005, 0.005)],
         "first": [(0.01, 0.01), (0.005, 0.005)]}


class Stuck(Exception):
    """The plan asks for nothing this tech could do."""


class Tech:
    def __init__(self, it, kept, program, folder, name, feelers=False):
        self.it, self.kept, self.program = it, kept, program
        self.feelers, self.stuck = feelers, set()   # files to feelers; slots they had nothing for
        self.path = os.path.join(folder, f"{name}.yaml")
        self.readings, self.day = [], 0
        self.cuts, self.past = {"nut": 0, "bottom": 0, "top": 0}, {"nut": 0, "bottom": 0, "top": 0}
        self.sets, self.sets_past = {"nut": 0, "saddle": 0}, {"nut": 0, "saddle": 0}
        self.finer, self.asked, self.needless, self.refused, self.again = 0, 0, 0, 0, 0
        self.last_cut = np.zeros((2, it.count), bool)   # action, gap at 1: last moved by a cut

    # Reading and planning

    def plan(self):
        """The plan of a new visit, once what it doubts was read again with the instrument still on
        the bench."""
        self.day += 1
        self.readings.append(None)
        result = self.read()
        codes = {f["code"] for f in result["findings"]}
        if codes & {"reading-odd", "reading-order", "readings-disagree", "saddle-moved"}:
            self.again += 1
            result = self.read()
        if "attack" in {f["code"] for f in result["findings"]}:
            self.it.wish["attack"] = "any"   # asked, the owner wants it low and bears a buzz
            result = self.ask()
        return result

    def read(self):
        """Readings that cannot be are refused at once, and taken again."""
        for _ in range(3):
            self.readings[-1] = self.it.read(self.day - 1)
            try:
                return self.ask()
            except Stuck:
                self.refused += 1
        self.readings[-1] = self.it.read(self.day - 1)
        return self.ask()

    def ask(self):
        with open(self.path, "w", encoding="utf-8") as file:
            yaml.dump(self.it.sheet(self.readings), file, sort_keys=False,
                      default_flow_style=None, width=120)
        done = subprocess.run([self.program, "plan", self.path, "--json"], capture_output=True,
                              text=True, check=False)
        if done.returncode:
            raise Stuck(f"no plan: {done.stderr.splitlines()[0].split(': ', 3)[-1]}")
        return json.loads(done.stdout)

    def follow(self):
        """How it ended: done, or why not."""
        for _ in range(MOST_VISITS):
            try:
                result = self.plan()
                if result["done"]:
                    return "done"
                stops = [f["code"] for f in result["findings"] if f["level"] == "stop"]
                if stops:
                    return f"stopped: {stops[-1]}"
                self.work(result)
            except Stuck as why:
                return str(why)
        return f"not done after {MOST_VISITS} visits"

    # Work

    def off_by(self, what):
        return self.it.rng.uniform(-self.kept[what], self.kept[what])

    def count_needless(self, part, values, bands):
        """Strings to be worked, and those of them whose gap is truly in its range."""
        asked = [i for i, row in enumerate(part["strings"]) if row["verdict"] not in
                 ("leave", "wait")]
        self.asked += len(asked)
        self.needless += sum(bands[i][0] <= values[i] <= bands[i][2] for i in asked)

    def work(self, result):
        codes = {f["code"] for f in result["findings"]}
        acts = {step["act"] for step in result["steps"]}
        waits = set(result["nut"]["withheld_by"])
        if "back-bow" in waits and not self.it.by_edge:
            self.it.by_edge = True
        elif "readings-disagree" in waits or "saddle-moved" in codes:
            pass   # read again
        elif result["stages"][1]["changed"] or waits & {"fret-worn", "crown-thin"}:
            self.neck(result, codes)
        elif "fret-high" in codes:
            self.seat(result)
        elif result["nut"]["remedy"] not in ("none", "wait"):
            self.count_needless(result["nut"], self.it.gaps()[1], self.it.first_band)
            self.as_a_set("nut", self.nut, result["nut"])
            if result["saddle"]["remedy"] not in ("none", "wait"):   # at the same visit
                self.count_needless(result["saddle"], self.it.gaps()[0], self.it.action_band)
                self.as_a_set("saddle", self.saddle, result["saddle"])
        elif result["saddle"]["remedy"] not in ("none", "wait"):
            self.count_needless(result["saddle"], self.it.gaps()[0], self.it.action_band)
            self.as_a_set("saddle", self.saddle, result["saddle"])
        elif "rod-first" in acts and self.it.rng.random() < 0.5:
            self.it.neck_left = True   # half of the owners leave the neck as it is
        elif acts & {"rod-first", "back-bow"}:
            raise Stuck("sent on: the neck")
        elif any(step["act"] == "measure-odd" for step in result["steps"]):
            pass   # read again
        else:
            raise Stuck("nothing to do: " + " ".join(
                sorted(f["code"] for f in result["findings"] if f["level"] == "act"
                       or f["code"] in ("rod-limit", "tool-coarse"))))

    def neck(self, result, codes):
        it = self.it
        if result["stages"][1]["changed"]:
            it.relief = it.relief_band[1] + self.off_by("rod")
        if codes & {"fret-worn", "crown-thin"}:
            deepest = float(np.max(-it.off))
            new = "crown-thin" in codes
            it.worn_off += 0.0 if new else deepest
            it.crown -= 0.0 if new else deepest
            it.off, it.note = it.rough(), None
            it.relief += self.off_by("rod")
        if "fret-high" in codes:
            self.seat(result)
        it.relief += self.off_by("settle")
        self.last_cut[:] = False

    def seat(self, result):
        frets = {f["fret"] for f in result["findings"] if f["code"] == "fret-high"}
        fresh = self.it.rough()
        for fret in frets:
            self.it.off[:, fret] = fresh[:, fret]
        self.it.note = None

    def finer_tool(self, name):
        better = [t for t in FINER[name] if t[0] < self.it.tools[name][0]]
        if not better:
            raise Stuck(f"tool-coarse: {name}")
        self.it.tools[name] = better[0]
        self.finer += 1

    def cut(self, what, gap, strings, take, before=None):
        """A cut that goes past the low edge of a string is an overshoot; `before`: the gaps to
        judge it from, where they are not the present ones."""
        bands = self.it.first_band if what == "nut" else self.it.action_band
        before = before or [gap(i) for i in strings]
        take()
        self.cuts[what] += 1
        for i in strings:
            self.last_cut[int(what == "nut")][i] = True
        if any(was >= bands[i][0] > gap(i) for was, i in zip(before, strings)):
            self.past[what] += 1

    def as_a_set(self, what, work, part):
        """The cuts of one visit at one part: a set that is past where any of them is."""
        cuts, past = sum(self.cuts.values()), sum(self.past.values())
        work(part)
        self.sets[what] += sum(self.cuts.values()) > cuts
        self.sets_past[what] += sum(self.past.values()) > past

    def depth(self, i, row, shim):
        """How far a slot is filed: to the feelers, or where they have had nothing to file, by the
        amount."""
        off, back = self.off_by("nut"), row["filed_back"]
        takes = row["first_pass"] + shim if back is None else back
        if not self.feelers or row["stack"] is None or i in self.stuck:
            self.stuck.discard(i)
            return max(0.0, takes + off)
        floor = self.it.over_board(i) - self.it.lift[i] * (row["stack_bend"] or 0.0)
        filed = floor - (row["stack"] + row["goal"] + shim - takes) - off
        if filed < LEAST:
            self.stuck.add(i)
        return max(0.0, filed)

    def cut_anew(self, i, row):
        """A slot cut from above: to the feelers, with the string on it or a little over it, and what
        stays on at first."""
        on = row["leave"] or 0.0
        if row["deepen"] is None:   # its gap could not be read: filled, and cut to read its aim
            share = 1 - self.it.x[1] / self.it.x[3]
            return (self.it.first(i) - self.it.first_band[i][1]) / share - on + self.off_by("nut")
        if not self.feelers or row["stack"] is None:
            return row["deepen"] - on + self.off_by("nut")
        stands = row["stack"] + on + self.it.lift[i] * (row["stack_bend"] or 0.0)
        return self.it.over_board(i) - stands + self.off_by("nut")

    def nut(self, part):
        it, shim = self.it, part["shim"] or 0.0
        remedy, rows = part["remedy"], part["strings"]
        before = it.nut.copy()
        for i, row in enumerate(rows):
            raised = row["verdict"] == "raise"
            if remedy == "replace":   # cut to the feelers of the plan
                it.nut[i] -= self.off_by("nut") - row["leave"] if row["verdict"] == "leave" \
                    else self.cut_anew(i, row)
            elif remedy == "shim":   # up by the shim, and filed back where it is then too high
                it.nut[i] += shim
            elif raised:
                it.nut[i] -= self.cut_anew(i, row)
            if raised or remedy == "replace":
                self.last_cut[1][i] = False
        files = [i for i, row in enumerate(rows) if row["verdict"] == "file"
                 and remedy != "replace" and shim + row["first_pass"] >= LEAST]
        files += [i for i, row in enumerate(rows) if (row["filed_back"] or 0.0) >= LEAST]
        for i in files:
            def take(i=i):
                it.nut[i] -= self.depth(i, rows[i], shim)
            self.cut("nut", it.first, [i], take)
        if not files and (it.nut == before).all():
            self.finer_tool("first")

    def saddle(self, part):
        it, rows, remedy = self.it, part["strings"], part["remedy"]
        cut = part["bottom_cut"]
        first = cut and cut["first_pass"]
        if remedy == "sand" and cut and max(first["treble"], first["bass"]) >= LEAST:
            self.sand(first)
            tops = {i: row["dress_first"] for i, row in enumerate(rows)
                    if row["dress"] >= DRESSED and row["dress_first"] >= LEAST}
            return self.dress(tops) if tops else None
        if remedy == "sand" and cut and max(cut["treble"], cut["bass"]) >= LEAST:
            return self.finer_tool("action")   # the bottom has to come down, but no pass is safe
        if remedy == "sand":
            return self.dress({i: row["dress_first"] for i, row in enumerate(rows)
                               if row["verdict"] == "lower" and (row["dress"] >= DRESSED or not cut)})
        if remedy == "screw":
            it.saddle -= [row["turns"] * it.profile["saddle"]["pitch"] + self.off_by("nut")
                          if row["turns"] else 0.0 for row in rows]
        elif remedy == "shim":
            left = {i: it.action(i) for i, row in enumerate(rows) if row["verdict"] == "leave"}
            it.saddle += part["shim"]
            back = {i: row["dress_first"] for i, row in enumerate(rows) if row["dress"] >= DRESSED}
            if back:   # these only go back to where they were
                self.dress(back, left)
        elif remedy == "replace":
            it.saddle -= [(0 if row["verdict"] == "leave" else row["lower"]) - row["leave"]
                          + self.off_by("saddle") for row in rows]
        else:
            raise Stuck(f"saddle: {remedy}")
        self.last_cut[0] = False
        return None

    def sand(self, first):
        it = self.it
        half = it.profile["saddle"]["length"] / 2
        ends = [max(0.0, first[end] + self.off_by("saddle")) for end in ("bass", "treble")]

        def take():
            it.saddle -= np.interp(it.z_saddle, [-half, half], ends)
        self.cut("bottom", it.action, range(it.count), take)

    def dress(self, passes, left=None):
        it, left = self.it, left or {}
        takes = {i: depth for i, depth in passes.items() if depth >= LEAST}
        if passes and not takes:
            self.finer_tool("action")
        if not passes:
            raise Stuck("nothing to dress")
        for i, depth in takes.items():
            def take(i=i, depth=depth):
                it.saddle[i] -= max(0.0, depth + self.off_by("saddle"))
            self.cut("top", it.action, [i], take, [left.get(i, it.action(i))])
