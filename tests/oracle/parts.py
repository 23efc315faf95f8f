# SPDX-License-Identifier: MIT
"""The work at nut and saddle: what may be cut, how much, and what remains."""
import math
from types import SimpleNamespace as Plain

import numpy as np
from scipy.optimize import least_squares, linprog

import tuned
from seat import present_heights

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


def slot_lift(job, i, tension, length):
    """How far a stiff string stands over the front edge of its slot: the heights of a beam under
    tension over the two edges are two linear equations in its turns over them and the lift. A core
    that is only assumed tells nothing of it."""
    s = job.strings[i]
    if s.assumed:
        return math.nan
    stiff = s.modulus * 1e3 * math.pi * (s.core / 2) ** 4 / 4
    reach = math.sqrt(stiff / tension)
    fall = math.tan(math.radians(fall_angle(job)))
    head = math.tan(math.radians(job.board.head_angle))
    if math.isnan(reach * fall):
        return math.nan
    total = fall if math.isnan(head) else max(head, fall)
    if math.isnan(length):
        return reach * fall / 2
    near, far = reach / 2, reach / 2 * math.exp(-length / reach)
    front, back, lift = np.linalg.solve(
        [[1, 1, 0], [-near, -far, 1], [-far - length, -near, 1]], [total, 0, -length * fall])
    if front < 0:     # an edge does not pull: only the other is touched
        return near * total - length * fall
    return near * total if back < 0 else lift


def nut(board, job, done, codes):
    slots, after = done.slots, done.slots.after
    codes = set(codes)
    if not job.readings.crowns_read and "file" in slots.verdict + slots.zero_fret:
        codes.add("crowns-unread")
    if sum(job.standing.first_odd) > 1:
        codes.add("reading-odd")
    remedy, shim, waiting = nut_remedy(job, done, bool(codes))
    crown = job.board.crown - done.level
    along = job.nut.thickness / math.cos(leaning(board.nut_at, board.z_nut))
    rows = []
    for i, s in enumerate(job.strings):
        verdict = "wait" if waiting else slots.verdict[i]
        bury = job.allowances.bury_wound if s.wound else job.allowances.bury_plain
        low = job.targets.first[i][0]
        held = job.targets.held
        lever = 1 - board.x[i, 1] / (board.x[i, held] if held else board.end[i])
        shown = math.nan if verdict == "wait" or job.nut.zero_fret else 0.0
        lift = -after.bend * board.span_at(board.nut_at[i])
        stack = shown + crown + after.nut[i] + board.drop(board.nut_at[i], board.z_nut[i]) - lift
        unsure = math.hypot(done.u_stand[i], job.caliper / math.sqrt(3)) + 0 * stack
        moved = 0.0
        if job.stacks[i] is not None:
            stack, moved, unsure = job.stacks[i], job.stacks[i] - stack, done.u_nut[i]
        rows.append({"number": i + 1, "centre": job.nut.width / 2 + board.z_nut[i],
                     "width": slot_width(job, s), "deepen": slots.deepen[i],
                     "deepen_u": done.u_nut[i], "verdict": verdict,
                     "at_edge": slots.side[i].startswith("at-"),
                     "first_pass": first_pass(verdict, "file", slots.deepen[i],
                                              (slots.first[i] - low) / lever, done.u_nut[i]),
                     "floor": shown + job.nut.seat_to_board + crown + after.nut[i] - lift + moved,
                     "stack": stack, "stack_u": unsure,
                     "stack_bend": slot_lift(job, i, done.tension[i], along) + 0 * stack,
                     "depth": shown + bury * s.gauge})
    slant = leaning(board.nut_at, board.z_nut)
    blank = None if remedy == "wait" or job.nut.zero_fret else with_spare(
        job.allowances.blank, job.nut.width / math.cos(slant), job.nut.thickness,
        greatest([row["floor"] + row["depth"] for row in rows]))
    return {"withheld_by": sorted(codes), "remedy": remedy, "strings": rows, "gap": board.gap,
            "shim": shim, "fall_angle": fall_angle(job), "blank": blank,
            "slant": math.degrees(slant)}


def leaning(x, z):
    """By how much a straight part through its outer contacts leans from square."""
    return math.atan((x[-1] - x[0]) / (z[0] - z[-1])) if len(z) > 1 else 0.0


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


def on_posts(saddle):
    return saddle.kind == "two-post" or (saddle.kind == "floating" and not math.isnan(saddle.pitch))


def sanded(saddle):
    """Whether it is worked at its base: a slotted saddle, the feet of a loose bridge."""
    return saddle.kind == "slotted" or (saddle.kind == "floating" and not on_posts(saddle))


def saddle_shim(job, verdict, lower):
    """Under a saddle with a string to raise; also the forecast of a withheld one."""
    rising = [-lower[i] for i, v in enumerate(verdict) if v == "raise"]
    if not sanded(job.saddle) or not rising or "wait" in verdict:
        return math.nan
    return rounded_up(max(rising), job.allowances.shim_step)


def saddle_remedy(job, verdict, shim, held_back, posts):
    """(remedy, every string waits)."""
    kind = job.saddle.kind
    rising = verdict.count("raise")
    unknown, moving = "wait" in verdict, rising or "lower" in verdict
    if held_back or (unknown and (kind != "individual" or not moving)):
        return "wait", held_back or kind != "individual"
    if kind == "individual":
        return ("screw" if moving else "none"), False
    if on_posts(job.saddle):
        return ("screw" if posts else "none"), False
    if rising and kind == "glued":
        return "replace", False
    if rising:
        worn_notch = rising == 1 < job.count
        new = worn_notch or shim > job.limits.most_shim + EDGE
        return ("replace" if new else "shim"), False
    return ("sand" if moving else "none"), False


def turned_posts(board, job, bone):
    """The line of least squares through what each string wants, by its depths at the posts; none
    where no string is out of range, one was not read, or the posts would move by next to nothing.
    """
    if not on_posts(job.saddle) or "wait" in bone.verdict \
            or not {"lower", "raise"} & set(bone.verdict):
        return None
    width, z = job.saddle.post_spread, board.z_saddle
    rows = np.array([share(width, zi) for zi in z])
    level = np.ptp(z) == 0
    ends = np.full(2, np.mean(bone.lower)) if level else np.linalg.lstsq(rows, bone.lower,
                                                                         rcond=None)[0]
    return Cut(width, ends) if np.max(np.abs(ends)) >= 0.01 else None


def taken_off(bone, cut, z, posts):
    """What comes off under each string, the forecast one while the saddle is withheld."""
    if posts:
        return np.array([posts.at(zi) for zi in z])
    if bone.on_posts and not {"lower", "raise"} & set(bone.verdict):
        return np.where(np.isnan(bone.lower), math.nan, 0.0)
    if bone.on_posts and "wait" not in bone.verdict:
        return np.zeros(len(z))
    verdict, lower = bone.verdict, bone.lower
    off = np.where([v == "leave" for v in verdict], 0.0, lower)
    if cut:
        off = np.where([v == "leave" for v in verdict], [cut.at(zi) for zi in z], off)
    return off


def dressing(bone, verdict, lower, cut, shim, replaced, z):
    """What comes off the top string by string; nothing comes off one that is to be replaced."""
    if bone.kind == "individual" or on_posts(bone) or verdict == "wait":
        return math.nan
    if replaced:
        return 0.0
    if not math.isnan(shim):
        return (0.0 if verdict == "leave" else lower) + shim
    if verdict == "leave":
        return 0.0
    return lower - (cut.at(z) if cut else 0.0)


def saddle(board, job, done, codes):
    bone, kind, codes = done.bone, job.saddle.kind, set(codes)
    cut = first = caps = None
    if sanded(job.saddle) and "lower" in bone.verdict \
            and not {"raise", "wait"} & set(bone.verdict):
        cut, first, caps = bottom_cuts(board, job, done)
    posts = turned_posts(board, job, bone)
    off = taken_off(bone, cut, board.z_saddle, posts)
    present = present_heights(board, job, done.now)
    height = present - off
    slotted = kind in ("slotted", "glued")
    fixed = 0.0 if slotted else math.nan
    depth = job.saddle.slot_depth - job.saddle.pickup + fixed
    falls = np.array([v == "lower" for v in bone.verdict])
    if cut:
        falls = off > EDGE
    past = job.limits.least_protrusion - (height - depth)
    if not slotted:
        past = (max(posts.ends) if posts else bone.lower) - job.saddle.travel
    stopped = falls & (past > EDGE)
    codes.update(zero_fret_codes(done))
    codes.update({"saddle-loose"} if job.readings.leaning else ())
    standing = job.standing
    if standing.saddle_odd or (kind != "individual"
                               and any(standing.action_odd + standing.first_odd)):
        codes.add("reading-odd")
    if stopped.any():
        codes.add("protrusion-low" if slotted else "adjust-limit")
    stops_alone = len(codes) == 1 and bool(codes & {"protrusion-low", "adjust-limit"})
    shim = saddle_shim(job, bone.verdict, bone.lower)
    freely = saddle_remedy(job, bone.verdict, shim, False, posts)[0]
    passes = [first_pass(bone.verdict[i], "lower", bone.lower[i],
                         (bone.action[i] - job.targets.action[i][0]) / board.t12[i],
                         done.u_saddle[i]) for i in range(job.count)]
    if tuned.peaks_first(board, job, bone, freely, passes):
        codes.add("tune-out")
    remedy, waiting = saddle_remedy(job, bone.verdict, shim, bool(codes), posts)
    replaced = saddle_remedy(job, bone.verdict, shim, False, posts)[0] == "replace"
    under = 0.0 if math.isnan(shim) or replaced else shim
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
                     "verdict": verdict, "at_edge": bone.side[i].startswith("at-"),
                     "dress": dressing(job.saddle, verdict, bone.lower[i], cut, shim,
                                       replaced, board.z_saddle[i]),
                     "present": present[i], "height": height[i], "protrusion": protrusion,
                     "in_slot": (depth - under) / (height[i] - under),
                     "break_angle": math.degrees(math.atan2(protrusion, job.saddle.pin[i])),
                     "turns": turns})
    seen = cut if remedy != "wait" else None
    slant = leaning(board.nut_at + board.scale, board.z_saddle)
    blank = None if remedy == "wait" or not slotted else with_spare(
        job.allowances.blank, job.saddle.length / math.cos(slant), job.saddle.thickness,
        greatest(height))
    radius = top_radius(board.z_saddle, height) if slotted else math.nan
    part = {"withheld_by": sorted(codes), "remedy": remedy, "strings": rows,
            "bottom_cut": seen and cut_row(board, present, cut, first),
            "shim": math.nan if waiting else shim,
            "top_radius": radius if 0 < radius <= 3000 else math.nan, "blank": blank,
            "slant": math.degrees(slant), "posts": None if waiting else post_row(job, posts),
            "neck": neck_row(board, job, np.where(stopped, past, 0.0)) if stops_alone else None}
    last = last_stage(board, bone, cut, posts)
    last.cuts, last.radius = Plain(whole=cut, first=first, caps=caps), radius
    return part, last


def zero_fret_codes(done):
    """One level with its neighbours leaves next to no gap, and is sound: only too high is a fault."""
    return {"zero-fret-high"} if "file" in done.slots.zero_fret else set()


def post_row(job, posts):
    if posts is None:
        return None
    treble, bass = posts.ends
    return {"treble": treble, "bass": bass, "turns": {"treble": treble / job.saddle.pitch,
                                                      "bass": bass / job.saddle.pitch}}


def neck_row(board, job, past):
    """The neck tilted about where it meets the body, until the string stopped most can come down.

    Similar triangles: a rise at the saddle over its distance from there is one at the joint's other
    end over its own length.
    """
    i = int(np.argmax(past))
    saddle, join = board.nut_at[i] + board.end[i], board.spine[board.join]
    front = join if math.isnan(job.board.pocket_at) else job.board.pocket_at
    return {"lift": past[i], "shim": job.board.pocket * past[i] / (saddle - front),
            "heel": job.board.heel * past[i] / (saddle - join)}


def cut_row(board, present, cut, first):
    def ends(pair):
        return {"treble": float(pair[0]), "bass": float(pair[1])}
    z = board.z_saddle
    return {**ends(cut.ends), "first_pass": ends(first.ends),
            "caliper": ends((present[0] - first.at(z[0]), present[-1] - first.at(z[-1])))}


def last_stage(board, bone, cut, posts):
    """The state the saddle stage leaves, where a bottom cut takes from strings left alone too."""
    state = Plain(**vars(bone.after))
    moved = np.array([v in ("lower", "raise") for v in bone.verdict])
    changed = moved.any()
    if cut:
        taken = np.array([cut.at(z) for z in board.z_saddle])
        state.end = np.where(moved, state.end, state.end - taken)
    if posts:
        state.end = bone.before - np.array([posts.at(z) for z in board.z_saddle])
    elif bone.on_posts and "wait" not in bone.verdict:
        state.end, changed = bone.before, False
    return Plain(state=state, changed=changed)
