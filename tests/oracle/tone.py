# SPDX-License-Identifier: MIT
"""Whether a note buzzes, on which fret and why, and how far off pitch it is, computed a second time.

The envelope comes from the travelling waves themselves, taken at the moments where they turn;
compensation from general root finding and Gauss-Newton steps with exact slopes (complex steps).
"""
import math
from decimal import ROUND_HALF_UP, Decimal
from types import SimpleNamespace as Plain

import numpy as np
from scipy.optimize import brentq, least_squares, root

import bench

EDGE = 1e-6           # a crown this near its limit is within it
TIE = 1e-9            # distances, and forces relative to each other, this near are equal
WELL_CLEAR = 1.25     # times the pick, from where a buzz may be the player's
REMEDIES = ("relief", "crown", "slot", "saddle")
OCTAVE = 1200 / math.log(2)


# The pluck

def triangle(u, length, peak):
    """Odd, repeating after twice the length; 1 at `peak` from the stop, 0 at both ends."""
    u = u - 2 * length * np.round(u / (2 * length))
    far = np.abs(u)
    return np.sign(u) * np.where(far <= peak, far / peak, (length - far) / (length - peak))


def envelope(length, at, u):
    """The farthest a string pulled aside by 1, either way, ever stands from rest at u.

    Half a triangle runs each way (d'Alembert). What is seen at u is made of straight pieces in
    time, so it is farthest at rest at a moment when a peak of one of the two passes.
    """
    peak = length - min(at, 0.75 * length)
    one = (1 + triangle(2 * u - peak, length, peak)) / 2
    other = (triangle(2 * u + peak, length, peak) - 1) / 2
    return np.maximum(np.abs(one), np.abs(other))


def depth_of(tension, length, at):
    """Under 1 N: the two halves of the string pull back by T times their slopes."""
    p = min(at, 0.75 * length)
    return 1 / (tension * (1 / p + 1 / (length - p)))


def crown_table(board, state):
    """Crown heights [string][fret]; fret 0 is nothing."""
    return np.array([[math.nan] + [board.crown(state.bend, state.off, i, n)
                                   for n in range(1, len(board.spine))] for i in range(board.count)])


def unit_depths(board, tension, at, i, k):
    """How deep 1 N sends the string over each fret past stop k."""
    length = board.end[i] - board.x[i, k]
    u = board.x[i, k + 1:board.frets + 1] - board.x[i, k]
    return depth_of(tension, length, at) * envelope(length, at, u)


class Pluck:
    """How one board is plucked: the depths do not change with its heights."""

    def __init__(self, board, tension, at):
        self.depths = [[unit_depths(board, tension[i], at, i, k) for k in range(board.frets)]
                       for i in range(board.count)]


def clean(board, state, pluck):
    """Clean forces [string][stop], the fret that sets each, and how clearly it does."""
    crowns = crown_table(board, state)
    shape = board.count, board.frets
    found = Plain(force=np.full(shape, math.nan), fret=np.zeros(shape, int),
                  clear=np.zeros(shape, bool))
    for i in range(board.count):
        for k in range(board.frets):
            low, x = state.nut[i] if k == 0 else crowns[i, k], board.x[i, k:board.frets + 1]
            rise = (state.end[i] - low) / (board.end[i] - x[0])
            gaps = low + rise * (x[1:] - x[0]) - crowns[i, k + 1:board.frets + 1]
            force = gaps / pluck.depths[i][k]
            if np.isnan(force).any():
                continue
            order = np.sort(force)
            found.force[i, k], found.fret[i, k] = order[0], k + 1 + int(np.argmin(force))
            found.clear[i, k] = len(order) == 1 or order[1] - order[0] > TIE * abs(order[0])
    return found


def clean_rows(found):
    return [{"number": i + 1, "clean_force": list(force),
             "at_fret": [int(n) or math.nan for n in found.fret[i]],
             "clear": [bool(c) for c in found.clear[i]]} for i, force in enumerate(found.force)]


# Causes

def remedied(board, job, state, remedies):
    """The state with some things put to their aims, in bench order."""
    state = Plain(**vars(state))
    if "relief" in remedies and board.join >= 3:
        bend = job.targets.relief[1] / board.span(job.readings.relief.at)
        nut, end = board.moved((bend - state.bend) * job.ratio)
        state.nut, state.end = state.nut + nut, state.end + end
        state.bend = bend
    if "crown" in remedies:
        state.off = np.zeros_like(state.off)
    if "slot" in remedies:
        state.nut = np.array([bench.nut_aim(board, job, state, i) for i in range(job.count)])
    if "saddle" in remedies:
        state.end = np.array([saddle_aim(board, job, state, i) for i in range(job.count)])
    return state


def saddle_aim(board, job, state, i):
    near, far = bench.open_row(board, i, 12)
    crown = board.crown(state.bend, state.off, i, 12)
    return (job.targets.action[i][1] + crown - near * state.nut[i]) / far


def out_of_range(value, band, tool, side):
    """How far out a reading is, in the narrower half of its range; None where it is in, or at an
    edge."""
    low, aim, high = band
    if side not in ("over", "under") or math.isnan(value):
        return None
    return abs(value - aim) / max(min(high - aim, aim - low), tool)


def candidates(board, job, state, i, relief_side, stop=0):
    """{remedy: distance} of what is out of range under one string, from a stop on."""
    wanted, tools = job.targets, job.tools
    off = float(np.max(np.abs(state.off[i][stop:])))
    bends = board.join >= 3   # else relief is not a reading of anything
    relief = state.bend * board.span(job.readings.relief.at) if bends else math.nan
    heard, sure = job.readings.buzz, bench.sureness(job)
    buzzes = any(string == i for string, _ in heard)
    first, action = bench.first_of(board, state, i, wanted.held), bench.action_of(board, state, i)
    slot = bench.side_of(first, wanted.first[i], sure["first", "first_open"][i], (i, 0) in heard)
    saddle = bench.side_of(action, wanted.action[i], sure["action",][i], buzzes)
    far = {"relief": out_of_range(relief, wanted.relief, tools.relief, relief_side),
           "crown": off / job.limits.wear if off > job.limits.wear + EDGE else None,
           "slot": out_of_range(first, wanted.first[i], tools.first, slot),
           "saddle": out_of_range(action, wanted.action[i], tools.action, saddle)}
    return {name: distance for name, distance in far.items() if distance is not None}


def shown(force):
    """As a figure of newtons is shown, halves away from zero."""
    return force if math.isnan(force) else \
        float(Decimal(repr(round(force, 9))).quantize(Decimal("0.01"), rounding=ROUND_HALF_UP))


def rings(force, enough):
    return shown(force) >= shown(enough)


def buzzes(force, enough):
    return shown(force) < shown(enough)


class Causes:
    """Tries the remedies on the model; each combination is worked out once. last: the state that the
    whole plan leaves."""

    def __init__(self, board, job, state, pluck, relief_side, last):
        self.left = clean(board, last, pluck).force
        self.board, self.job, self.state, self.pluck = board, job, state, pluck
        self.relief_side = relief_side
        self.forces = {}

    def after(self, remedies, i, k):
        key = frozenset(remedies)
        if key not in self.forces:
            state = remedied(self.board, self.job, self.state, key)
            self.forces[key] = clean(self.board, state, self.pluck).force
        return self.forces[key][i, k]

    def of(self, i, k, heard):
        """The causes that may be named: more than one only where they tie."""
        now, enough = self.after((), i, k), self.job.attack.force[i]
        if math.isnan(now):
            return ["slot" if k == 0 and self.job.readings.on_fret_1[i] else "unexplained"]
        if heard and not buzzes(now, enough):
            return self.excuse(i, k, now / enough)
        far = candidates(self.board, self.job, self.state, i, self.relief_side)
        cures = {name: far[name] for name in far if rings(self.after((name,), i, k), enough)}
        if cures:
            most = max(cures.values())
            return [name for name in cures if cures[name] >= most - TIE]
        if rings(self.left[i, k], enough):
            return ["combined"]
        return ["targets" if rings(self.after(REMEDIES, i, k), enough) else "attack"]

    def excuse(self, i, k, clear):
        """Why a note is heard that has `clear` times the force it needs; the player comes last."""
        met = self.met(i, k)
        low = self.low(i, met)
        if met and not low:
            return ["unexplained"]   # no string buzzes for being too high
        met = low
        if met:
            return [name for name in met if met[name] >= max(met.values()) - TIE]
        if not self.job.readings.crowns_read or math.isnan(clear):
            return ["unexplained"]   # of any pick nothing is asked
        if clear < WELL_CLEAR:
            return ["too-close"]
        return ["technique" if k > 0 else "unexplained"]

    def met(self, i, k):
        """What is out of range of all that a note meets: no slot once it is stopped."""
        far = candidates(self.board, self.job, self.state, i, self.relief_side, k)
        return {name: far[name] for name in far if k == 0 or name != "slot"}

    def low(self, i, met):
        """What of it can make a string buzz."""
        board, job, wanted = self.board, self.job, self.job.targets
        first, action = (bench.first_of(board, self.state, i, wanted.held),
                         bench.action_of(board, self.state, i))
        high = {"slot": first > wanted.first[i][1], "saddle": action > wanted.action[i][1]}
        return {name: far for name, far in met.items() if not high.get(name)}

    def likely(self, i, k, heard):
        """Whether the cause is only the reading farthest out of a note that should ring clean."""
        now = self.after((), i, k)
        clear = now == now and not buzzes(now, self.job.attack.force[i])
        return bool(heard and clear and self.low(i, self.met(i, k)))

    def rows(self):
        rows = []
        for i in range(self.job.count):
            for k in range(self.board.frets):
                heard, now = (i, k) in self.job.readings.buzz, self.after((), i, k)
                if heard or buzzes(now, self.job.attack.force[i]):
                    row = {"string": i + 1, "fret": k, "heard": heard,
                           "likely": self.likely(i, k, heard), "clean_force": now}
                    row.update({name: self.after((name,), i, k) for name in REMEDIES})
                    rows.append({**row, "cause": self.of(i, k, heard)})
        return rows


# Compensation

def stiff(ends, b):
    if ends == "pinned":
        return np.sqrt(1 + math.pi ** 2 * b * b)
    if ends == "clamped":
        return 1 + 2 * b + 4 * (1 + math.pi ** 2 / 8) * b * b
    return 1 + b + (1 + math.pi ** 2 / 2) * b * b


class Tuned:
    """One string's cents over frets 1..12 as a smooth function of setback and advance."""

    def __init__(self, board, job, state, crowns, i):
        s, self.ends = job.strings[i], job.model.ends
        self.scale, self.x, self.crowns = board.scale[i], board.x[i, 1:13], crowns[i, 1:13]
        self.press = job.model.press
        self.nut, self.end = state.nut[i], state.end[i]
        self.mass, self.hz = s.mass, s.hz
        area = math.pi * (s.core / 2) ** 2                    # mm2
        self.pull = s.modulus * 1000 * area                   # E A, N
        self.bending = s.modulus * 1000 * math.pi * s.core ** 4 / 64   # E I, N mm2
        self.known = not math.isnan(self.nut + self.end + self.mass + self.pull + self.hz)

    def cents(self, setback, advance):
        saddle, p, x, c = self.scale + setback, self.press, self.x, self.crowns
        speaking = saddle - advance
        tension = self.mass * (2 * speaking / 1000 * self.hz) ** 2
        open_string = np.sqrt(speaking ** 2 + (self.end - self.nut) ** 2)
        sounding = np.sqrt((saddle - x) ** 2 + (self.end - c) ** 2)
        # Past the fret the string runs on straight to where the finger is, then up to the nut.
        under = c - p * (self.end - c) / (saddle - x)
        behind = (p * sounding / (saddle - x)
                  + np.sqrt((x - p - advance) ** 2 + (self.nut - under) ** 2))
        stretch = (sounding + behind - open_string) / open_string
        tighter = 1 + self.pull / tension * stretch
        b = np.sqrt(self.bending / tension) / open_string
        fretted = stiff(self.ends, b * open_string / sounding / np.sqrt(tighter))
        ratio = (open_string / sounding * np.sqrt((1 + stretch) * tighter)
                 * fretted / stiff(self.ends, b))
        return OCTAVE * np.log(ratio) - 100 * np.arange(1, 13)

    def setback_for(self, cents_at_12, advance):
        def over(setback):
            return float(self.cents(setback, advance)[11]) - cents_at_12
        return brentq(over, -0.3 * self.scale, 0.6 * self.scale, xtol=1e-12, rtol=1e-14)

    def slopes(self, v):
        """Exact: a step in the imaginary direction has nothing to cancel."""
        tiny = 1e-30j
        return np.column_stack([self.cents(v[0] + tiny, v[1]).imag,
                                self.cents(v[0], v[1] + tiny).imag]) / 1e-30

    def uphill(self, v):
        """Half the gradient of the sum of squares."""
        return self.slopes(v).T @ self.cents(*v)

    def best(self):
        """Gauss-Newton; where cents too large to be taken away lead it astray, the sum of squares
        is searched first and the place where it is level then solved for."""
        v = np.zeros(2)
        for _ in range(20):
            step = np.linalg.lstsq(self.slopes(v), self.cents(*v), rcond=None)[0]
            v = v - step * min(1.0, 20.0 / float(np.max(np.abs(step))))
            if float(np.max(np.abs(step))) < 1e-9:
                return v
        near = least_squares(lambda v: self.cents(*v), np.zeros(2), jac=self.slopes).x
        level = root(self.uphill, near, tol=1e-13)
        assert float(np.max(np.abs(level.x - near))) < 0.1, (near, level)
        return level.x


def at_pair(tuned, pair):
    """What is left at a pair of places: its rms, and fret by fret."""
    left = tuned.cents(*pair)
    return {"rms": math.sqrt(float(np.mean(left ** 2))), "cents": list(left)}


def compensation(board, job, last, moves):
    """A row a string; beside the result's names `tuned`, to ask of other places."""
    rows = []
    at_last = crown_table(board, last)
    for i in range(job.count):
        nu, built = job.nut.advance[i], job.saddle.setback[i]
        tuned = Tuned(board, job, last, at_last, i)
        row = {"number": i + 1, "tuned": None, "saddle_only": math.nan,
               "best": [math.nan, math.nan], "move": moves[i], "as_built_cents": [math.nan] * 12}
        if tuned.known:
            as_built = tuned.cents(built, nu)
            row.update(tuned=tuned, saddle_only=tuned.setback_for(0.0, nu),
                       best=list(tuned.best()), as_built_cents=list(as_built))
        rows.append(row)
    return {"ends": job.model.ends, "press": job.model.press, "strings": rows}


def rooms(board, job, tension, now, last, relief_side, moves):
    """clearance, causes and compensation of a result; each cause as the list it may be."""
    pluck = Pluck(board, tension, job.attack.at)
    return {"clearance": {"attack": {"force": list(job.attack.force), "at": job.attack.at},
                          "strings": clean_rows(clean(board, now, pluck)),
                          "after": clean_rows(clean(board, last, pluck))},
            "causes": Causes(board, job, now, pluck, relief_side, last).rows(),
            "compensation": compensation(board, job, last, moves)}
