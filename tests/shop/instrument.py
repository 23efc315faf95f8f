# SPDX-License-Identifier: MIT
"""The instruments of a simulated shop. Their true heights are known only through readings.

Everything stands in the frame of the body: the saddle is fixed there, and the neck bends from the
joint on. Its curvature is not even along it, and the joint gives way too, so that the action moves
by 1.4 to 2.6 times the relief (common practice, no source) where an even bend moves it by 2.5. None
of the program's arithmetic is used.
"""
import copy
import math
import random

import numpy as np
import yaml

KINDS = {"steel-string-acoustic": 5, "electric-guitar": 2, "electric-bass": 1,
         "nylon-string-classical": 2}
# What a shop's tools read to, plus or minus, and the step they are read in, mm.
TOOLS = {"action": [(0.1, 0.05)] * 3 + [(0.05, 0.05), (0.02, 0.01), (0.15, 0.05)],
         "first": [(0.02, 0.01)] * 3 + [(0.01, 0.01), (0.03, 0.01)],
         "relief": [(0.02, 0.01)] * 3 + [(0.03, 0.01)], "caliper": [(0.05, 0.01)]}
COARSE = {"action": [(0.2, 0.05)], "first": [(0.04, 0.01)], "relief": [(0.03, 0.01)],
          "caliper": [(0.1, 0.05)]}
INCH = 25.4
# Readings that are off by nothing but the rounding to their scale. A rule in fractions of an inch is
# written so, and its graduation is not told to the program; of every other tool it is.
MARKED = {"action": [(INCH / 128, INCH / 64)] * 3 + [(INCH / 64, INCH / 32), (0.25, 0.5), (0.05, 0.1)],
          "first": [(0.025, 0.05), (0.01, 0.02), (0.005, 0.01)],
          "relief": [(0.025, 0.05), (0.01, 0.02)], "caliper": [(0.05, 0.1)] * 2 + [(0.025, 0.05)]}
RULES = {INCH / d: d for d in (32, 64)}
UNTOLD = 0.1    # what the sheet says of a rule in inches: as the profiles have it, mm
ROUGH = 0.008   # crowns that pass for sound


def mm(node):
    """A length of a profile, in mm."""
    if isinstance(node, str) and node.endswith(" in"):
        return float(node[:-3]) * 25.4
    return float(node)


def run(pair, count):
    """Even from the treble to the bass."""
    return np.linspace(mm(pair["treble"]), mm(pair["bass"]), count)


def bands(node, count):
    return np.array([np.linspace(node["treble"][key], node["bass"][key], count)
                     for key in ("low", "aim", "high")]).T


class Neck:
    """Heights of the neck over the body for a relief of 1 on the centre line."""

    def __init__(self, rng, scale, join, over, share):
        """`share`: the change of action at fret 12 for that of the relief over fret `over`."""
        self.joint = scale * (1 - 2 ** (-join / 12))
        self.tilt, self.after = 0.0, rng.uniform(0, 1)
        self.skew, self.belly = rng.uniform(-0.35, 0.35), rng.uniform(-0.2, 0.2)
        at = [scale * (1 - 2 ** (-n / 12)) for n in (0, 1, over, join, 12)]
        nut, one, mid, last, twelve = (self.height(x) for x in at)
        gap = one + (last - one) * (at[2] - at[1]) / (at[3] - at[1]) - mid
        t = at[4] / scale
        moved, turned = (1 - t) * nut - twelve, (1 - t) * self.joint - (self.joint - at[4])
        self.tilt = (share * gap - moved) / turned
        self.size = 1 / gap

    def curvature(self, x):
        s = math.pi * x / self.joint
        return 1 + self.skew * np.cos(s) + self.belly * np.cos(2 * s)

    def height(self, x):
        """Before it is brought to size: bent from the joint toward the nut, tilted at the joint."""
        if x >= self.joint:
            return -self.tilt * self.after * (x - self.joint)
        places = np.linspace(x, self.joint, 401)
        bent = np.trapz((places - x) * self.curvature(places), places)
        return bent + self.tilt * (self.joint - x)

    def at(self, x):
        return self.size * self.height(x)


class Instrument:
    def __init__(self, rng, kind, tools):
        self.rng, self.kind = rng, kind
        with open(f"profiles/{kind}.yaml", encoding="utf-8") as file:
            self.profile = yaml.safe_load(file)
        board, bone = self.profile["instrument"], self.profile["saddle"]
        self.count, self.join = len(self.profile["strings"]), board["join"]
        self.over = 7 if self.join > 7 else (1 + self.join) // 2
        self.scale = round(board["scale"] * rng.uniform(0.99, 1.01), 1)
        self.frets = board["frets"]
        self.x = [self.scale * (1 - 2 ** (-n / 12)) for n in range(self.frets + 1)]
        self.end = self.scale + run(bone["setback"], self.count)
        self.stated_radius = board["radius"]
        flat = self.stated_radius == "flat"
        self.radius = math.inf if flat else self.stated_radius * rng.uniform(0.99, 1.01)
        self.z_nut, self.z_saddle = self.across()
        wanted = self.profile["targets"]
        self.relief_band = [wanted["relief"][key] for key in ("low", "aim", "high")]
        self.action_band = bands(wanted["action"], self.count)
        self.first_band = bands(wanted["first"], self.count)
        self.share = rng.uniform(1.4, 2.6)
        self.neck = Neck(rng, self.scale, self.join, self.over, self.share)
        self.bent = np.array([self.neck.at(x) for x in self.x])
        self.tools = {name: rng.choice(choice) for name, choice in tools.items()}
        self.neck_left = False   # with its bow, since the owner wants no work on it
        self.rod_works = kind != "nylon-string-classical" and rng.random() < 0.93
        self.crown, self.worn_off, self.note = round(rng.uniform(0.95, 1.2), 2), 0.0, None
        self.misread, self.lift = 0.0, np.zeros(self.count)
        self.off = self.rough()
        self.put_out_of_order()
        self.by_edge = False
        self.slips, self.slipped, self.wish = 0.0, [], {}

    def owned_by(self, slips):
        """A shop where the pen slips in this share of the readings, and a third of the owners want
        the strings as low as they go, under a pick they name."""
        self.slips, self.pen = slips, random.Random(self.rng.random())
        if self.pen.random() < 1 / 3:
            self.action_band = np.round(self.action_band * 0.8, 2)
            ends = {end: dict(zip(("low", "aim", "high"), map(float, self.action_band[i])))
                    for end, i in (("treble", 0), ("bass", -1))}
            self.action_band = bands(ends, self.count)
            self.wish = {"targets": {"action": ends}, "attack": self.pen.choice(["light", "medium"])}

    def across(self):
        """Where the strings run: equal gaps between them at the nut, equal centres at the saddle."""
        gauges = [mm(s["gauge"]) for s in self.profile["strings"]]
        nut, half = self.profile["nut"], self.profile["saddle"]["spread"] / 2
        room = nut["width"] - nut["edge"]["treble"] - nut["edge"]["bass"] - sum(gauges)
        at, centres = nut["width"] / 2 - nut["edge"]["treble"], []
        for gauge in gauges:
            centres.append(at - gauge / 2)
            at -= gauge + room / (self.count - 1)
        return centres, np.linspace(half, -half, self.count)

    # Its state

    def rough(self):
        return np.array([[self.rng.uniform(-ROUGH, ROUGH) for _ in range(self.frets + 1)]
                         for _ in range(self.count)])

    def put_out_of_order(self):
        rng = self.rng
        low, aim, high = self.relief_band
        out = self.rod_works and rng.random() < 0.55
        self.relief = rng.uniform(-0.12, 0.5) if out else rng.uniform(low, high)
        if not self.rod_works and rng.random() < 0.15:
            self.relief = rng.uniform(0.0, 0.55)
        self.spoil_crowns()
        first = rng.choice([(-0.3, 0.9), (0.5, 5), (0.5, 5), (0.8, 2), (-3, 1)])
        action = rng.choice([(-0.3, 0.9), (0.5, 4), (0.5, 4), (1, 2), (-3, 0.5)])
        push = [rng.uniform(*first), rng.uniform(*action)]
        least = 0.5 + 2.6 * max(0.0, self.relief - aim)   # the rod turned, no string lies on a fret
        self.nut, self.saddle = np.zeros(self.count), np.zeros(self.count)
        for i in range(self.count):
            gap, height = (aim + (p + rng.uniform(-0.5, 0.5)) * (high - aim)
                           for p, (_, aim, high) in zip(push, (self.first_band[i],
                                                               self.action_band[i])))
            self.put(i, max(gap, -0.06), max(height, least))
        tall = rng.uniform(2.8, 5.5) + self.profile["limits"]["least_protrusion"] - 1.5
        self.slot_depth = round(rng.uniform(4, 6), 1)
        # The seat is straight, and strings 1 and N stand `tall` over the bridge or nearly so.
        ends = [self.saddle[i] - self.slot_depth - tall + rng.uniform(-0.3, 0.3) for i in (0, -1)]
        self.seat = np.linspace(*ends, self.count)

    def spoil_crowns(self):
        """Worn under the treble strings at the first frets, or one fret standing proud."""
        kind = self.rng.choices(["sound", "worn", "proud"], [84, 9, 7])[0]
        if kind == "worn":
            for fret in range(1, self.rng.randint(2, 5)):
                for i in range(self.rng.randint(1, max(1, self.count // 2))):
                    self.off[i][fret] -= self.rng.uniform(0.05, 0.22)
        elif kind == "proud":
            fret = self.rng.randint(1, self.frets)
            self.off[:, fret] += self.rng.uniform(0.05, 0.2)

    def put(self, i, first, action):
        """Slot and saddle of one string so that its true gaps are these."""
        crown = {n: self.crown_at(i, n) for n in (1, 3, 12)}
        share, t = self.x[1] / self.x[3], self.x[12] / self.end[i]
        nut = (first + crown[1] - crown[3] * share) / (1 - share)
        self.nut[i] = nut - self.relief * self.bent[0]
        self.saddle[i] = (action + crown[12] - nut * (1 - t)) / t

    # Its true gaps

    def crown_at(self, i, n, sound=False):
        z = 0.0 if i is None else (self.z_nut[i] + (self.z_saddle[i] - self.z_nut[i])
                                   * self.x[n] / self.end[i])
        drop = z * z / (2 * self.radius) * (1 + z * z / (4 * self.radius ** 2))
        off = 0.0 if i is None else self.off[i][n]
        return self.relief * self.bent[n] - drop - self.worn_off + off

    def nut_at(self, i):
        return self.relief * self.bent[0] + self.nut[i]

    def over_board(self, i):
        """Height of the string at the nut over the end of the board right in front of it."""
        z = self.z_nut[i]
        drop = z * z / (2 * self.radius) * (1 + z * z / (4 * self.radius ** 2))
        return self.nut[i] + drop + self.worn_off + self.crown

    def measure_frets(self):
        """The fret height by caliper, off by up to what that reads to; how much of the lift that
        stiffness can give each string has: nothing where it has taken a set at the edge."""
        half = self.tools["caliper"][0]
        self.misread = self.rng.uniform(-half, half)
        self.lift = np.array([self.rng.choice([0, self.rng.uniform(0, 1)])
                              for _ in range(self.count)])

    def clear(self, i, start, end, n):
        """Height over crown n of what runs straight from start to end."""
        share = (self.x[n] - start[0]) / (end[0] - start[0])
        return start[1] + (end[1] - start[1]) * share - self.crown_at(i, n)

    def action(self, i):
        return self.clear(i, (0.0, self.nut_at(i)), (self.end[i], self.saddle[i]), 12)

    def first(self, i):
        return self.clear(i, (0.0, self.nut_at(i)), (self.x[3], self.crown_at(i, 3)), 1)

    def first_open(self, i):
        return self.clear(i, (0.0, self.nut_at(i)), (self.end[i], self.saddle[i]), 1)

    def relief_under(self, i):
        ends = [(self.x[n], self.crown_at(i, n)) for n in (1, self.join)]
        return self.clear(i, *ends, self.over)

    def gaps(self):
        """(actions, gaps at fret 1): the truth."""
        return (np.array([self.action(i) for i in range(self.count)]),
                np.array([self.first(i) for i in range(self.count)]))

    # What is read of it

    def tool(self, name, value):
        """Off by anything up to what the tool reads to, the rounding to its step counted in."""
        half, step = self.tools[name]
        own = half - step / 2
        read = round((value + self.rng.uniform(-own, own)) / step) * step
        return round(float(read), 3)

    def ruler(self, value):
        """Action, in fractions where the rule is marked so."""
        marks = RULES.get(self.tools["action"][1])
        return f"{round(value * marks / INCH)}/{marks} in" if marks else self.tool("action", value)

    def read_frets(self):
        """Looked at once, and again after work on them."""
        if self.note is None:
            read = [(i + 1, n, self.tool("first", self.off[i][n])) for i in range(self.count)
                    for n in range(1, self.frets + 1) if abs(self.off[i][n]) > 0.03]
            self.note = [{"string": i, "fret": n, "off": off} for i, n, off in read] or "sound"
        return copy.deepcopy(self.note)

    def read_relief(self):
        if self.by_edge:
            return {"gap": self.tool("relief", self.relief_under(None)), "by": "straightedge"}
        i = self.count - 1
        return {"gap": max(0.0, self.tool("relief", self.relief_under(i))), "string": i + 1}

    def misspell(self, figure):
        """A figure as the pen writes it when it slips: a digit wrong, or the point moved."""
        if isinstance(figure, str):
            return f"{int(figure.split('/')[0]) + self.pen.choice([-10, -4, 4, 10])}/{figure.split('/')[1]}"
        if self.pen.random() < 0.3:
            return round(figure * self.pen.choice([0.1, 10]), 3)
        text = f"{figure:.2f}"
        at = self.pen.choice([i for i, mark in enumerate(text) if mark.isdigit()])
        other = self.pen.choice([d for d in "0123456789" if d != text[at]])
        return float(text[:at] + other + text[at + 1:])

    def slip(self, node, of):
        """Each figure of a list or a mapping may be misspelled or change places with the next."""
        keys = list(node.keys()) if isinstance(node, dict) else list(range(len(node)))
        for place, key in enumerate(keys):
            if not isinstance(node[key], (str, float)) or self.pen.random() >= self.slips:
                continue
            was = node[key]
            if place + 1 < len(keys) and self.pen.random() < 0.4:
                after = keys[place + 1]
                node[key], node[after] = node[after], node[key]
            else:
                node[key] = self.misspell(node[key])
            if node[key] != was:
                self.slipped.append((of, place, was, node[key]))

    def misread_some(self, node):
        if not self.slips:
            return node
        for of in ("action", "first", "saddle_height"):
            if of in node:
                self.slip(node[of], of)
        gap = {"relief": node["relief"]["gap"]}
        self.slip(gap, "relief")
        node["relief"]["gap"] = gap["relief"]
        return node

    def stands_out(self):
        """Over the top of the bridge, string by string: the truth."""
        return self.saddle - self.seat - self.slot_depth

    def read(self, day):
        return self.misread_some(self.read_truly(day))

    def read_truly(self, day):
        strings = range(self.count)
        node = {"date": f"2026-{1 + day // 28:02d}-{1 + day % 28:02d}",
                "humidity": f"{self.rng.randint(46, 50)} %", "relief": self.read_relief(),
                "action": [self.ruler(self.action(i)) for i in strings],
                "first": [max(0.0, self.tool("first", self.first(i))) for i in strings],
                "frets": self.read_frets()}
        if min(node["first"]) <= 0:   # held it shows nothing; raised on paper it would
            node["first_open"] = [max(0.001, self.tool("first", self.first_open(i)))
                                  if node["first"][i] <= 0 else None for i in strings]
        if self.profile["saddle"]["kind"] == "slotted":
            node["saddle_height"] = {
                end: self.tool("caliper", self.saddle[i] - self.seat[i])
                for end, i in (("treble", 0), ("bass", -1))}
        return node

    def sheet(self, readings):
        board = {"scale": self.scale, "crown": round(self.crown + self.misread, 2),
                 "head_angle": "12 deg"}
        if self.kind != "nylon-string-classical":
            board.update(rod="two-way", rod_state="works" if self.rod_works else "accepted" if self.neck_left else "at-end")
        bone = {"material": "bone"}
        if self.profile["saddle"]["kind"] == "slotted":
            bone.update(slot_depth=self.slot_depth, pin_distance=9)
        return {"sillet": 1, "profile": self.kind, "instrument": board,
                "nut": {"seat_to_board": 6.0}, "saddle": bone, **self.wish,
                "tools": {name: UNTOLD if step in RULES else half
                          for name, (half, step) in self.tools.items()},
                "readings": readings}
