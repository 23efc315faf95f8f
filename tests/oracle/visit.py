# SPDX-License-Identifier: MIT
"""Random readings: an invented state of crowns, neck and strings, and the readings of that state."""
import copy
import math
import random
from types import SimpleNamespace as Plain

import numpy as np

import bench
import seat
import sheet


def crowns(m, count, frets):
    kind = m.rng.choice(["sound"] * 6 + ["unknown"] * 2 + ["slight"] * 4 + ["proud"] * 2
                        + ["worn", "deep"])
    if kind == "unknown":
        return None
    if kind == "sound":
        return "sound"
    reach = {"slight": (-0.04, 0.04), "proud": (-0.04, 0.15), "worn": (-0.2, 0.12),
             "deep": (-0.6, 0.02)}[kind]
    places = {(m.rng.randint(1, count), m.rng.randint(1, m.rng.choice([frets, min(3, frets)])))
              for _ in range(m.rng.randint(1, 6))}
    return [{"string": s, "fret": f, "off": m.length(m.between(*reach))}
            for s, f in sorted(places)]


def off_aim(m, bands):
    """True gaps of a set: over, under, in range, or some of each."""
    kind = m.rng.choice(["high", "high", "low", "in", "mixed", "nearly", "nearly"])
    push = {"high": m.between(1.2, 4), "low": -m.between(1.0, 2.5), "in": 0, "mixed": 0,
            "nearly": m.between(0.6, 1.3)}[kind]
    spread = {"mixed": 1.6, "in": 0.7}.get(kind, 0.4)
    found = []
    for low, aim, high in bands:
        by = push + m.between(-spread, spread)
        found.append(aim + by * (high - aim if by > 0 else aim - low))
    return found


def true_state(m, job, board):
    """A neck and a string set the readings will be taken from."""
    calm = m.chance(0.75)
    low, aim, high = job.targets.relief
    relief = aim + 0.8 * m.between(low - aim, high - aim) if calm else m.between(-0.12, 0.55)
    span = board.span(job.readings.relief.at)
    bend = relief / span if span else 0.0
    state = Plain(bend=bend, off=board.off, nut=np.zeros(job.count), end=np.zeros(job.count))
    action, first = off_aim(m, job.targets.action), off_aim(m, job.targets.first)
    for i in range(job.count):
        def crown(n):
            return board.crown(bend, board.off, i, n)
        h = job.targets.held
        row = bench.held_row(board, i, h) if h else bench.open_row(board, i, 1)
        rest = crown(h) * board.x[i, 1] / board.x[i, h] if h else 0.0
        rows = np.array([row, bench.open_row(board, i, 12)])
        state.nut[i], state.end[i] = np.linalg.solve(
            rows, [max(first[i], 0.02) + crown(1) - rest, max(action[i], 0.5) + crown(12)])
    return state


def read_relief(m, job, board, bend):
    r, join, frets = m.rng, board.join, board.frets
    if join < 3 or m.chance(0.03):
        return None
    at = job.readings.relief.at
    form = r.choice(["plain", "plain", "string", "named", "edge", "edge"])
    node, name, held = {}, None, [1, join]
    if form != "plain":
        at = r.choice([at, r.randint(2, join - 1)])
        held = r.choice([[1, join], [1, frets], [1, r.randint(at + 1, frets)],
                         [r.randint(1, at - 1), join]])
        node = {"at": at, "held": held}
        if held == [1, join] and m.chance(0.5):
            node.pop("held")
        if at == job.readings.relief.at and m.chance(0.5):
            node.pop("at")
        if form == "edge" or m.chance(0.3):
            node["by"] = "straightedge" if form == "edge" else "string"
        if form == "named":
            name = node["string"] = r.randint(1, job.count)
    a, b = held
    c = [board.crown(bend, board.off, name and name - 1, n) for n in (a, b, at)]
    x = board.spine
    gap = c[0] + (c[1] - c[0]) * (x[at] - x[a]) / (x[b] - x[a]) - c[2]
    gap = m.length(gap) if form == "edge" or gap > 0.005 else 0
    return gap if form == "plain" else {"gap": gap, **node}


def some_missing(m, values):
    if m.chance(0.88):
        return values
    return [m.rng.choice([v] * 8 + [None, 0.0]) for v in values]


def fraction(mm, most=64):
    """Inches to the nearest 64th, or to another fraction."""
    whole, part = divmod(round(mm / 25.4 * most), most)
    if part == 0:
        return f"{whole} in"
    shared = math.gcd(part, most)
    text = f"{part // shared}/{most // shared} in"
    return f"{whole} {text}" if whole else text


def on_a_rule(m, values):
    """Now and then in fractions of an inch, all of them or some."""
    most, some = m.rng.choice([16, 32, 64, 128]), m.chance(0.3)
    return [m.length(v, 2) if some and m.chance(0.5) else fraction(v, most) for v in values]


def per_string(m, values, digits):
    if digits == 2 and min(values) > 0.6 and m.chance(0.1):
        return on_a_rule(m, values)
    form = m.rng.choice(["list"] * 5 + ["pair", "pair", "one"])
    if form == "pair":
        return {"treble": m.length(values[0], digits), "bass": m.length(values[-1], digits)}
    if form == "one":
        return m.length(sum(values) / len(values), digits)
    return m.lengths(some_missing(m, values), digits)


def read_strings(m, job, board, state):
    """Action and first in one of their forms."""
    frets, count, node = board.frets, range(job.count), {}
    at, capo = 12, m.chance(0.15)
    if frets >= 5 and m.chance(0.3):
        at = node["action_at"] = m.rng.randint(5, frets)
    action = []
    for i in count:
        low = board.crown(state.bend, state.off, i, 1) if capo else state.nut[i]
        start = board.x[i, 1] if capo else 0.0
        part = (board.x[i, at] - start) / (board.end[i] - start)
        action.append(low + (state.end[i] - low) * part
                      - board.crown(state.bend, state.off, i, at))
    if capo or m.chance(0.3):
        node["action_capo"] = 1 if capo else 0
    held = m.rng.choice([h for h in (3, 3, 3, 2, 2) if h <= frets] + [0])
    first = [max(0.0, bench.first_of(board, state, i, held)) for i in count]
    if held != 3 or m.chance(0.6):
        node["first_held"] = held or "open"
    if held and m.chance(0.12):
        opened = [max(0.0, bench.first_of(board, state, i, 0)) for i in count]
        node["first_open"] = m.lengths([m.rng.choice([None, v]) for v in opened])
    if m.chance(0.97):
        node["action"] = per_string(m, action, 2)
    if m.chance(0.97):
        node["first"] = per_string(m, first, 3)
    turn_round(node)
    return node


def turn_round(node):
    """Now and then the lists of a visit are begun at the bass end, or two actions are swapped. The draw
    is by the figures, so that every other sheet stays as it was."""
    draw = random.Random(repr(node))
    if draw.random() < 0.05:
        for key in ("action", *["first"] * (draw.random() < 0.5)):
            if isinstance(node.get(key), list):
                node[key].reverse()
    action = node.get("action")
    if draw.random() < 0.04 and isinstance(action, list):
        one, other = draw.randrange(len(action)), draw.randrange(len(action))
        action[one], action[other] = action[other], action[one]


def read_saddle(m, job, board, state):
    """Present heights that go with the bridge's top, or do not."""
    bone, node = job.saddle, {}
    depth = 4.0 if math.isnan(bone.slot_depth) else bone.slot_depth - bone.pickup
    over = [state.end[i] + m.between(-0.5, 1.5) for i in (0, -1)]
    present = [o + depth for o in over]
    form = m.rng.choice(["caliper"] * 4 + ["edge"] * 2 + ["both", "neither"])
    # Without setback the middle of the edge is crown 13, on which it would rock if that is high.
    rocks = state.bend < 0 and bone.setback[0] == 0
    pair = None if rocks else seat.edge_pair(board, job, state.bend)
    if form in ("edge", "both") and bone.kind in ("slotted", "glued") and pair and min(over) > 0.3:
        (xa, ya), (xb, yb) = pair
        gap = [ya + (yb - ya) * (board.nut_at[i] + board.end[i] - xa) / (xb - xa) - state.end[i] + o
               for i, o in zip((0, -1), over)]
        if min(gap) > 0.02:
            node["bridge_top"] = {"treble": m.length(gap[0]), "bass": m.length(gap[1])}
    if form in ("caliper", "both") and min(present) > 1:
        slip = m.rng.choice([0, 0, 0, 0.8]) if form == "both" else 0
        ends = [present[0] + slip, present[1]]
        ends = on_a_rule(m, ends) if m.chance(0.1) else m.lengths(ends)
        node["saddle_height"] = {"treble": ends[0], "bass": ends[1]}
    if bone.kind in ("slotted", "glued") and min(over) > 0.3 and m.chance(0.7):
        node["stands_out"] = ruled(m, board, state, over, 0.95 * min(present))
    return node


def ruled(m, board, state, over, most):
    """How far the saddle stands out, by a ruler that may slip: of every string, or at the ends; not
    more than the whole saddle."""
    top = seat.linear(board.z_saddle, *(state.end[[0, -1]] - over))
    out = np.maximum(0.05, state.end - top + m.rng.choice([0, 0, 0, 1.0]))
    out = [float(value) + m.between(-0.2, 0.2) * (value > 0.5) for value in out]
    out = [min(value, most) for value in out]
    each = [m.length(value) for value in out]
    if m.chance(0.15):
        each = [m.rng.choice([value, None]) for value in each]
    form = m.rng.choice(["list", "pair", "pair", "one"])
    if form == "pair" and len(out) > 1:
        return {"treble": m.length(out[0]), "bass": m.length(out[-1])}
    return m.length(out[0]) if form == "one" else each


def worked(m, doc, state, seen):
    """The same instrument at a later visit: the work the plan asks for, done more or less, or not;
    and what a season does to a neck."""
    job = sheet.written(doc)
    board = bench.Board(job)
    done = bench.work(board, job, bench.reading_of(job))
    after = Plain(bend=state.bend, off=state.off, nut=state.nut.copy(), end=state.end.copy())
    if done.crowns and m.chance(0.8):
        seen, after.off = "sound", np.zeros_like(state.off)
        after.nut, after.end = after.nut + done.level, after.end + done.level
    if board.join >= 3 and (done.turned or m.chance(0.3)):
        change = 0.0
        if done.turned:
            change = (done.rod.bend - state.bend) * m.between(0.6, 1.1)
        change += m.between(-0.03, 0.03) / board.span(job.readings.relief.at)
        ratio = m.between(0.5, 1.1)
        after.bend = state.bend + change
        nut, end = board.moved(ratio * change)
        after.nut, after.end = after.nut + nut, after.end + end
        return after, seen
    share, slip = m.rng.choice([0, 0.5, 0.6, 0.75, 1, 1]), m.between(-0.05, 0.05)
    for name, wanted in (("nut", done.slots), ("end", done.bone)):
        cut = np.nan_to_num(wanted.deepen if name == "nut" else wanted.lower)
        asked = [v not in ("leave", "wait") for v in wanted.verdict]
        setattr(after, name, getattr(after, name) - share * np.where(asked, cut + slip, 0.0))
    return after, seen


def condition(m, slotted):
    node = {"bridge": m.rng.choice(["sound"] * 15 + ["lifted"]),
            "braces": m.rng.choice(["sound"] * 15 + ["loose"]),
            "saddle": m.rng.choice(["firm"] * 15 + ["loose"]),
            "strings": m.rng.choice(["new", "worn"]),
            "tuned": m.rng.choice(["yes"] * 14 + [True, False, "no"])}
    return {k: v for k, v in node.items() if m.chance(0.7) and (slotted or k != "saddle")}


def left_out(m, job, node):
    """A later visit need not tell everything."""
    if m.chance(0.5):
        return
    for key in ("relief", "frets", "saddle_height", "bridge_top", "action", "first", "first_open"):
        if key in node and m.chance(0.5):
            del node[key]
        elif isinstance(node.get(key), list) and key != "frets" and len(node[key]) == job.count:
            node[key] = [None if m.chance(0.4) else value for value in node[key]]


def readings(m, job, board, state, seen):
    days = ["2026-03-14", "2026-03-14", "2026-03-30", "2026-04-13", "2026-04-14"]
    node = {"date": m.rng.choice(days)} if m.chance(0.6) else {}
    if m.chance(0.7):
        node["humidity"] = f"{m.rng.choice([45, 47, 50, 52, 48, 44, 46, 51, 49, 22, 75])} %"
    if m.chance(0.4):
        node["condition"] = condition(m, job.saddle.kind in ("slotted", "glued"))
    node.update(relief=read_relief(m, job, board, state.bend))
    node.update(read_strings(m, job, board, state))
    node.update(read_saddle(m, job, board, state))
    if seen is not None:
        node["frets"] = copy.deepcopy(seen)   # YAML would tell the same twice by an alias
    if m.chance(0.15):
        node["confirmed"] = sorted(m.rng.sample(range(1, job.count + 1),
                                                m.rng.randint(1, job.count)))
    return node


def heard(m, count, frets):
    """Notes that buzz, and how sharp the strings play at fret 12."""
    node = {}
    if m.chance(0.5):
        notes = {(m.rng.randint(1, count), m.rng.choice([0, 0, m.rng.randint(0, frets - 1)]))
                 for _ in range(m.rng.randint(1, 6))}
        node["buzz"] = [{"string": s, "fret": f} for s, f in sorted(notes)]
    if m.chance(0.4):
        cents = [round(m.between(-6, 12), 1) for _ in range(count)]
        node["cents"] = m.rng.choice([cents, cents[0], some_missing(m, cents)])
    return node


def sharpness(m, count):
    wide = m.rng.choice([0.3, 1, 1, 4])
    cents = [round(m.between(-6, 12) * wide, 1) for _ in range(count)]
    return {"cents": m.rng.choice([cents, cents[0], some_missing(m, cents)])}


def too_near(job, board, done):
    """A verdict within a hair of an edge, yet not on it, is nobody's to call."""
    relief = bench.relief_in(board, job, done.now), job.targets.relief, done.held.relief_u
    sure = bench.sureness(job)
    judged = [relief, *zip(done.slots.first, job.targets.first, done.held.first_u),
              *zip(done.bone.action, job.targets.action, done.held.action_u),
              *zip([bench.first_of(board, done.now, i, job.targets.held)
                    for i in range(job.count)], job.targets.first, sure["first", "first_open"]),
              *zip([bench.action_of(board, done.now, i) for i in range(job.count)],
                   job.targets.action, sure["action",])]
    edges = [(value, edge) for value, (low, _, high), u in judged
             for edge in (low, low - u, low - 2 * u, high, high + u, high + 2 * u)]
    return any(1e-9 < abs(value - edge) < 1e-5 for value, edge in edges)


def leans_too_far(board):
    """No part stands at more than 45 degrees across the strings."""
    return any(abs(x[-1] - x[0]) > abs(z[-1] - z[0]) for x, z in (
        (board.nut_at, board.z_nut), (board.nut_at + board.scale, board.z_saddle)) if len(z) > 1)


def possible(job):
    """No string under a crown: the program refuses readings that contradict each other."""
    board, read = bench.Board(job), bench.reading_of(job)
    done = bench.work(board, job, read)
    now, relief, r = done.now, job.readings.relief, job.readings
    if too_near(job, board, done) or leans_too_far(board):
        return False
    if any(height < 0 for height in r.raw_action):
        return False
    if relief.gap > 0:
        a, b = relief.held
        if over_crowns(board, now, relief.string, *ends_of(board, now, relief.string, a, b)) < 0:
            return False
    for i in range(job.count):
        c1 = (board.x[i, 1], board.crown(now.bend, now.off, i, 1))
        top = (board.end[i], now.end[i])
        if over_crowns(board, now, i, (0.0, now.nut[i]), top) < 0.02:
            return False
        if r.capo and over_crowns(board, now, i, c1, top) < 0.02:
            return False
        if r.held == 3 and over_crowns(board, now, i, (0.0, now.nut[i]),
                                       (board.x[i, 3], board.crown(now.bend, now.off, i, 3))) < 0:
            return False
    return True


def ends_of(board, state, i, a, b):
    x = board.spine if i is None else board.x[i]
    return [(x[n], board.crown(state.bend, state.off, i, n)) for n in (a, b)]


def over_crowns(board, state, i, start, end):
    """Least gap of a straight string over the crowns inside its length; none or unknown: 1."""
    least, x = 1.0, board.spine if i is None else board.x[i]
    for n in range(1, board.frets + 1):
        if start[0] + 1e-6 < x[n] < end[0] - 1e-6:
            y = start[1] + (end[1] - start[1]) * (x[n] - start[0]) / (end[0] - start[0])
            least = min(least, y - board.crown(state.bend, state.off, i, n))
    return least
