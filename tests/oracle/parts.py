# SPDX-License-Identifier: MIT
"""What is done to the nut and the saddle: what may be cut, to which figure, and what is left."""
import math
from types import SimpleNamespace as Plain

import numpy as np
from scipy.optimize import least_squares, linprog

EDGE = 1e-9
FIRST_CUT, FIRST_BOTTOM = 1.68, 2.2   # times u: 5 % a cut, and 5 % any string of a set


def rounded_up(rise, step):
    return math.ceil(rise / step - EDGE) * step


def first_pass(verdict, down, cut, to_low, u):
    if verdict == "wait":
        return math.nan
    return min(cut, max(0.0, to_low - FIRST_CUT * u)) if verdict == down else 0.0


def with_spare(spare, length, thickness, height):
    return {"length": length + spare.length, "thickness": thickness + spare.thickness,
            "height": height + spare.height}


def greatest(values):
    """NaN where any is unknown: the greatest is then unknown too."""
    return float(np.max(values))


# Nut

def nut_remedy(job, done, held_back):
    """(remedy, shim, every string waits)."""
    verdict = done.slots.verdict
    rising = [-done.slots.deepen[i] for i, v in enumerate(verdict) if v == "raise"]
    if held_back or ("wait" in verdict and rising):
        return "wait", math.nan, True
    if len(rising) == 1:
        return "fill", math.nan, False
    if rising:
        shim = rounded_up(max(rising), job.allowances.shim_step)
        return ("replace" if shim > job.limits.most_shim + EDGE else "shim"), shim, False
    if "file" in verdict:
        return "file", math.nan, False
    return ("wait" if "wait" in verdict else "none"), math.nan, False


def slot_width(job, s):
    """The nearest file not under the gauge; of two as near the narrower; else the figure itself."""
    spare = job.allowances.slot_wound if s.wound else job.allowances.slot_plain
    want = s.gauge + spare
    wide_enough = [f for f in job.files if f >= s.gauge - EDGE]
    return min(wide_enough, key=lambda f: (round(abs(f - want), 9), f), default=want)


def fall_angle(job):
    angle = job.allowances.fall_share * job.board.head_angle
    return angle if math.isnan(angle) else min(10.0, max(3.0, angle))


def nut(board, job, done, codes):
    slots, after = done.slots, done.slots.after
    codes = set(codes)
    if not job.readings.crowns_read and "file" in slots.verdict:
        codes.add("crowns-unread")
    remedy, shim, waiting = nut_remedy(job, done, bool(codes))
    lift = after.bend * board.x[1] * board.x[board.join] if board.join >= 3 else 0.0
    crown = job.board.crown - done.level
    rows = []
    for i, s in enumerate(job.strings):
        verdict = "wait" if waiting else slots.verdict[i]
        bury = job.allowances.bury_wound if s.wound else job.allowances.bury_plain
        low = job.targets.first[i][0]
        held = job.targets.held
        lever = 1 - board.x[1] / (board.x[held] if held else board.end[i])
        shown = math.nan if verdict == "wait" else 0.0
        rows.append({"number": i + 1, "centre": job.nut.width / 2 + board.z_nut[i],
                     "width": slot_width(job, s), "deepen": slots.deepen[i],
                     "deepen_u": done.u_nut[i], "verdict": verdict,
                     "first_pass": first_pass(verdict, "file", slots.deepen[i],
                                              (slots.first[i] - low) / lever, done.u_nut[i]),
                     "floor": shown + job.nut.seat_to_board + crown + after.nut[i] - lift,
                     "stack": shown + crown + after.nut[i] + board.drop(0.0, board.z_nut[i])
                     - lift,
                     "depth": shown + bury * s.gauge})
    blank = None if remedy == "wait" else with_spare(
        job.allowances.blank, job.nut.width, job.nut.thickness,
        greatest([row["floor"] + row["depth"] for row in rows]))
    return {"withheld_by": sorted(codes), "remedy": remedy, "strings": rows, "gap": board.gap,
            "shim": shim, "fall_angle": fall_angle(job), "blank": blank}


# Saddle

class Cut:
    """A straight line off the bottom, by its depths at the ends of the saddle."""

    def __init__(self, length, ends):
        self.length, self.ends = length, np.array(ends)

    def at(self, z):
        return float(share(self.length, z) @ self.ends)


def share(length, z):
    return np.array([0.5 + z / length, 0.5 - z / length])


def programme(goal, rows, caps, bounds):
    tight = {"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10}
    done = linprog(goal, A_ub=rows, b_ub=caps, bounds=bounds, method="highs", options=tight)
    assert done.status == 0, done.message
    return done.x


def bottom(length, z, caps, lowering, most=(None, None)):
    """Most in total off the strings to lower, then the least tilt, under every string's cap."""
    if len(z) == 1:
        depth = min([caps[0]] + [m for m in most if m is not None])
        return Cut(length, [depth, depth])
    rows = np.array([share(length, zi) for zi in z])
    total = rows[lowering].sum(axis=0)
    bounds = [(0, m) for m in most]
    best = programme(-total, rows, caps, bounds)
    # The third unknown is the size of the difference between the ends.
    wide = np.column_stack([rows, np.zeros(len(rows))])
    tilt = np.array([[1, -1, -1], [-1, 1, -1], [*-total, 0]])
    caps_too = np.concatenate([caps, [0, 0, -(total @ best)]])
    return Cut(length, programme([0, 0, 1], np.vstack([wide, tilt]), caps_too,
                                 bounds + [(0, None)])[:2])


def bottom_cuts(board, job, done):
    """(the bottom cut, its first pass, the two rows of caps), with an unknown string none."""
    bone = done.bone
    lowering = np.array([v == "lower" for v in bone.verdict])
    low = np.array([band[0] for band in job.targets.action])
    to_low = (bone.action - low) / board.t12
    kept = np.maximum(0.0, to_low - FIRST_CUT * done.u_saddle)
    caps = np.where(lowering, bone.lower, kept)
    whole = bottom(job.saddle.length, board.z_saddle, caps, lowering)
    caps_first = np.minimum(caps, np.maximum(0.0, to_low - FIRST_BOTTOM * done.u_saddle))
    first = bottom(job.saddle.length, board.z_saddle, caps_first, lowering, tuple(whole.ends))
    return whole, first, (caps, caps_first)


def edge_pair(board, job, bend):
    """The two sound crowns a straightedge lies on, run on toward the saddle."""
    points = [(board.x[n], -board.sag(bend, n)) for n in range(1, board.frets + 1)]
    hull = []
    for p in points:
        while len(hull) > 1 and turn(hull[-2], hull[-1], p) >= 0:
            hull.pop()
        hull.append(p)
    middle = min((board.x[1] + board.end[0]) / 2, board.x[board.frets])
    for a, b in zip(hull, hull[1:]):
        if a[0] <= middle <= b[0]:
            return a, b
    return None


def turn(a, b, c):
    """Over zero where b lies under the line from a to c."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def seat_by_caliper(board, job, now):
    high = job.readings.saddle_height
    seats = now.end[0] - high[0], now.end[-1] - high[1]
    return linear(board.z_saddle, *seats)


def seat_by_edge(board, job, now):
    gap = np.array(job.readings.bridge_top)
    pair = edge_pair(board, job, now.bend)
    if pair is None:
        return np.full(job.count, math.nan)
    (xa, ya), (xb, yb) = pair
    edge = ya + (yb - ya) * (board.end[[0, -1]] - xa) / (xb - xa)
    return linear(board.z_saddle, *(edge - gap - job.saddle.slot_depth + job.saddle.pickup))


def linear(z, treble, bass):
    if len(z) == 1:
        return np.array([treble])
    return treble + (bass - treble) * (z[0] - z) / (z[0] - z[-1])


def present_heights(board, job, now):
    """From the saddle's seat to the string, as read; nothing where two readings disagree.

    The caliper gives a seat only with both outer strings' heights; the bridge's top needs none.
    """
    edge = now.end - seat_by_edge(board, job, now)
    caliper = now.end - seat_by_caliper(board, job, now)
    read = job.readings.saddle_height
    if any(abs(edge[i] - read[i]) > 0.3 for i in ((0, -1) if job.count > 1 else (0,))):
        return np.full(job.count, math.nan)
    seat_unknown = np.isnan(caliper).all()
    return edge if seat_unknown else caliper


def top_radius(z, y):
    """The circle with the least squares of radial distance; its bend may be near none.

    Unknowns: the angle of the normal, the distance from the origin and the curvature k. The
    distance of a point to the circle is 2q / (1 + sqrt(1 + 2kq)), which a flat top leaves finite.
    """
    if len(z) < 3 or np.isnan(y).any():
        return math.nan
    bend, slope, middle = np.polyfit(z, y, 2)

    def residuals(v):
        normal = math.sin(v[0]), math.cos(v[0])
        dz, dy = z - v[1] * normal[0], y - v[1] * normal[1]
        q = normal[0] * dz + normal[1] * dy + v[2] * (dz * dz + dy * dy) / 2
        return 2 * q / (1 + np.sqrt(np.maximum(0, 1 + 2 * v[2] * q)))
    fit = least_squares(residuals, [-math.atan(slope), middle * math.cos(math.atan(slope)),
                                    -2 * bend],
                        x_scale=[1e-2, 1.0, 1e-3], xtol=1e-15, ftol=1e-15, gtol=1e-15)
    return 1 / fit.x[2] if fit.x[2] else math.inf


def saddle_shim(job, verdict, lower):
    """Under a slotted saddle with a string to raise; also the forecast of a withheld one."""
    rising = [-lower[i] for i, v in enumerate(verdict) if v == "raise"]
    if job.saddle.kind != "slotted" or not rising or "wait" in verdict:
        return math.nan
    return rounded_up(max(rising), job.allowances.shim_step)


def saddle_remedy(job, verdict, shim, held_back):
    """(remedy, every string waits)."""
    kind = job.saddle.kind
    rising = verdict.count("raise")
    unknown, moving = "wait" in verdict, rising or "lower" in verdict
    if held_back or (unknown and (kind != "individual" or not moving)):
        return "wait", held_back or kind != "individual"
    if kind == "individual":
        return ("screw" if moving else "none"), False
    if rising and kind == "glued":
        return "replace", False
    if rising:
        worn_notch = rising == 1 < job.count
        new = worn_notch or shim > job.limits.most_shim + EDGE
        return ("replace" if new else "shim"), False
    return ("sand" if moving else "none"), False


def taken_off(verdict, lower, cut, z):
    """What comes off under each string, the forecast one while the saddle is withheld."""
    off = np.where([v == "leave" for v in verdict], 0.0, lower)
    if cut:
        off = np.where([v == "leave" for v in verdict], [cut.at(zi) for zi in z], off)
    return off


def dressing(kind, verdict, lower, cut, shim, z):
    """What comes off the top string by string."""
    if kind == "individual" or verdict == "wait" or (kind == "glued" and verdict == "raise"):
        return math.nan
    if kind == "slotted" and not math.isnan(shim):
        return (0.0 if verdict == "leave" else lower) + shim
    if verdict == "leave":
        return 0.0
    return lower - (cut.at(z) if cut else 0.0)


def saddle(board, job, done, codes):
    bone, kind, codes = done.bone, job.saddle.kind, set(codes)
    cut = first = caps = None
    if kind == "slotted" and "lower" in bone.verdict \
            and not {"raise", "wait"} & set(bone.verdict):
        cut, first, caps = bottom_cuts(board, job, done)
    off = taken_off(bone.verdict, bone.lower, cut, board.z_saddle)
    present = present_heights(board, job, done.now)
    height = present - off
    fixed = math.nan if kind == "individual" else 0.0
    depth = job.saddle.slot_depth - job.saddle.pickup + fixed
    down = (off > EDGE) & (height - depth < job.limits.least_protrusion - EDGE)
    if down.any():
        codes.add("protrusion-low")
    shim = saddle_shim(job, bone.verdict, bone.lower)
    remedy, waiting = saddle_remedy(job, bone.verdict, shim, bool(codes))
    under = 0.0 if math.isnan(shim) else shim
    rows = []
    for i in range(job.count):
        verdict = "wait" if waiting else bone.verdict[i]
        to_low = (bone.action[i] - job.targets.action[i][0]) / board.t12[i]
        protrusion = height[i] - depth
        turns = math.nan
        if kind == "individual" and verdict != "wait":
            turns = 0.0 if verdict == "leave" else bone.lower[i] / job.saddle.pitch
        rows.append({"number": i + 1, "lower": bone.lower[i], "lower_u": done.u_saddle[i],
                     "first_pass": first_pass(verdict, "lower", bone.lower[i], to_low,
                                              done.u_saddle[i]),
                     "verdict": verdict,
                     "dress": dressing(kind, verdict, bone.lower[i], cut, shim,
                                       board.z_saddle[i]),
                     "present": present[i], "height": height[i], "protrusion": protrusion,
                     "in_slot": (depth - under) / (height[i] - under),
                     "break_angle": math.degrees(math.atan2(protrusion, job.saddle.pin[i])),
                     "turns": turns})
    seen = cut if remedy != "wait" else None
    blank = None if remedy == "wait" or kind == "individual" else with_spare(
        job.allowances.blank, job.saddle.length, job.saddle.thickness, greatest(height))
    radius = math.nan if kind == "individual" else top_radius(board.z_saddle, height)
    part = {"withheld_by": sorted(codes), "remedy": remedy, "strings": rows,
            "bottom_cut": seen and cut_row(board, present, cut, first),
            "shim": math.nan if waiting else shim,
            "top_radius": radius if 0 < radius <= 3000 else math.nan, "blank": blank}
    last = last_stage(board, bone, cut)
    last.cuts, last.radius = Plain(whole=cut, first=first, caps=caps), radius
    return part, last


def cut_row(board, present, cut, first):
    def ends(pair):
        return {"treble": float(pair[0]), "bass": float(pair[1])}
    z = board.z_saddle
    return {**ends(cut.ends), "first_pass": ends(first.ends),
            "caliper": ends((present[0] - first.at(z[0]), present[-1] - first.at(z[-1])))}


def last_stage(board, bone, cut):
    """The state the saddle stage leaves, where a bottom cut takes from strings left alone too."""
    state = Plain(**vars(bone.after))
    moved = np.array([v in ("lower", "raise") for v in bone.verdict])
    changed = moved.any()
    if cut:
        taken = np.array([cut.at(z) for z in board.z_saddle])
        state.end = np.where(moved, state.end, state.end - taken)
    return Plain(state=state, changed=changed)
