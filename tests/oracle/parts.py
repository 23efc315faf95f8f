# SPDX-License-Identifier: MIT
"""The work at nut and saddle: what may be cut, how much, and what remains."""
import math
from types import SimpleNamespace as Plain

import numpy as np
from scipy.optimize import least_squares, linprog

import room
import sense
import tuned
import zero_fret
from seat import present_heights

EDGE = 1e-9
FIRST_CUT, FIRST_BOTTOM = 1.68, 2.2   # times u: 5 % a cut, and 5 % any string of a set


def rounded_up(rise, step):
    return math.ceil(rise / step - EDGE) * step


def stroke(cut, leave):
    """A cut less what is left on: all of a small one, at least `leave` of one not twice as large."""
    return cut if cut <= leave else max(leave, cut - leave)


def guarded(cut, to_low, u, leave, guard=FIRST_CUT):
    return max(0.0, min(stroke(cut, leave), to_low - guard * u))


def first_pass(verdict, down, cut, to_low, u, leave=0.0, guard=FIRST_CUT):
    if verdict == "wait" or (verdict == down and math.isnan(cut + to_low + u)):
        return math.nan
    return guarded(cut, to_low, u, leave, guard) if verdict == down else 0.0


def with_spare(spare, length, thickness, height):
    return {"length": length + spare.length, "thickness": thickness + spare.thickness,
            "height": height + spare.height}


def greatest(values):
    """NaN where any is unknown: the greatest is then unknown too."""
    return float(np.max(values))


# Nut

def two_filled(job, verdict, rising):
    """Two low slots of six strings or more are filled, where no other is worked and neither is lower than
    a shim may be thick."""
    return (len(rising) == 2 and job.count >= 6 and set(verdict) == {"raise", "leave"}
            and max(rising) <= job.limits.most_shim + EDGE)


def nut_remedy(job, done, held_back):
    """(remedy, shim, every string waits)."""
    verdict = done.slots.verdict
    rising = [-done.slots.deepen[i] for i, v in enumerate(verdict) if v == "raise"]
    on_fret = sum(done.slots.on_fret) if not job.nut.zero_fret else 0
    if held_back or ("wait" in verdict and (len(rising) > on_fret or on_fret > 2)):
        return "wait", math.nan, True
    if on_fret:   # nobody knows by how much: no shim can be chosen
        return ("fill" if len(rising) <= 2 else "replace"), math.nan, False
    if len(rising) == 1 or two_filled(job, verdict, rising):
        return "fill", math.nan, False
    if rising:
        shim = rounded_up(max(rising), job.allowances.shim_step)
        if shim > job.limits.most_shim + EDGE:
            return "replace", math.nan, False
        return "shim", shim, False
    if "file" in verdict:
        return "file", math.nan, False
    return ("wait" if "wait" in verdict else "none"), math.nan, False


def slot_width(job, s):
    """The nearest file of the string's size or up to 0.1 over the wanted width; of two as near the
    narrower; else the figure itself."""
    spare = job.allowances.slot_wound if s.wound else job.allowances.slot_plain
    want = s.gauge + spare
    fit = [f for f in job.files if s.gauge - 0.01 - EDGE <= f <= want + 0.1 + EDGE]
    return min(fit, key=lambda f: (round(abs(f - want), 9), f), default=want)


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


def bare_slots(board, job, done):
    """(floors, stacks) of every slot that was read, whether it is cut today or not."""
    if job.nut.zero_fret or nut_remedy(job, done, False)[2]:
        return [], []
    over = []
    for i, verdict in enumerate(done.slots.verdict):
        lift = -done.slots.after.bend * board.span_at(board.nut_at[i])
        read = math.nan if verdict == "wait" else 0.0
        over.append(read + job.board.crown - done.level + done.slots.after.nut[i] - lift)
    drops = [board.drop(board.nut_at[i], board.z_nut[i]) for i in range(job.count)]
    return np.array(over) + job.nut.seat_to_board, np.array(over) + drops


def stays_on(job, remedy, verdict, first, band, lever, unsure):
    """What a slot that is cut from above is left higher by until its gap is read: in a new nut, or
    once it is filled. One that was in its range keeps its gap, the others get the aim's. None of a slot
    that is filed or left."""
    if remedy != "replace" and (remedy, verdict) != ("fill", "raise"):
        return math.nan
    low, aim, _ = band
    spare = ((first if verdict == "leave" else aim) - low) / lever
    more = FIRST_CUT * unsure - spare
    return job.allowances.leave.slot if math.isnan(more) else max(job.allowances.leave.slot, more)


def nut(board, job, done, codes):
    slots, after = done.slots, done.slots.after
    codes = set(codes)
    if not job.readings.crowns_read and ("file" in slots.verdict + slots.zero_fret
                                         or done.low_zero_fret):
        codes.add("crowns-unread")
    if job.standing.first_order:
        codes.add("reading-order")
    elif sum(job.standing.first_odd) > 1:
        codes.add("reading-odd")
    if not codes & {"reading-odd", "reading-order"} and sense.slots(*bare_slots(board, job, done)).any():
        codes.add("impossible")
    if bow_first(job, done) == "back" and "file" in slots.verdict + slots.zero_fret:
        codes.add("rod-limit")
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
        shimmed = remedy == "shim" and verdict in ("raise", "leave")
        moved, by_height = 0.0, unsure
        if job.stacks[i] is not None:
            stack, moved, unsure = job.stacks[i], job.stacks[i] - stack, done.u_nut[i]
        rows.append({"number": i + 1, "centre": job.nut.width / 2 + board.z_nut[i],
                     "width": slot_width(job, s), "deepen": slots.deepen[i],
                     "deepen_u": done.u_nut[i], "verdict": verdict,
                     "at_edge": slots.side[i].startswith("at-") and not done.finish.nut[i],
                     "goal": -done.held.shim if done.held.lifted[i] else 0.0 if verdict == "leave"
                     else slots.deepen[i] - slots.raised[i],
                     "filed_back": done.held.back[i] if shimmed else math.nan,
                     "first_pass": math.nan if remedy == "replace" else least_of(first_pass(
                         verdict, "file", slots.deepen[i] - slots.raised[i],
                         (slots.first[i] - low) / lever, done.u_nut[i],
                         0.0 if job.finish.nut[i] else job.allowances.leave.slot),
                         slots.hold[i] if verdict == "file" else math.nan),
                     "floor": shown + job.nut.seat_to_board + crown + after.nut[i] - lift + moved,
                     "stack": stack, "stack_u": unsure,
                     "stack_bend": slot_lift(job, i, done.tension[i], along) + 0 * stack,
                     "depth": shown + bury * s.gauge,
                     "leave": stays_on(job, remedy, verdict, slots.first[i], job.targets.first[i],
                                       lever, by_height)})
    slant = leaning(board.nut_at, board.z_nut)
    blank = None if remedy == "wait" or job.nut.zero_fret else with_spare(
        job.allowances.blank, job.nut.width / math.cos(slant), job.nut.thickness,
        greatest([row["floor"] + row["depth"] for row in rows]))
    return {"withheld_by": sorted(codes), "remedy": remedy, "strings": rows, "gap": board.gap,
            "shim": shim, "fall_angle": fall_angle(job), "blank": blank,
            "zero_fret": zero_fret.crown(board, job, done, job.caliper),
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


def tilted(length, z, caps, end, most):
    """Nothing at the other end: the deepest at this one that every cap allows."""
    shares = np.array([share(length, zi)[end] for zi in z])
    over = shares > 0
    depth = max(0.0, min([*(caps[over] / shares[over]), most]))
    return Cut(length, [depth, 0.0] if end == 0 else [0.0, depth])


def bottom_cuts(board, job, done, way, to):
    """(the bottom cut, its first pass, the two rows of caps, the ends that the first may not pass),
    with an unknown string none."""
    bone, length, z = done.bone, job.saddle.length, board.z_saddle
    lowering = np.array([v == "lower" for v in to.verdict])
    to_low = room.to_edge(board, job, bone, 0)
    kept = to_low - FIRST_CUT * done.u_saddle
    if not to.stops:
        kept = np.fmin(np.fmin(kept, to.room), to.clean)
    caps = np.where(lowering, to.goal, np.maximum(0.0, kept))
    caps_first = np.minimum(caps, np.maximum(0.0, to_low - FIRST_BOTTOM * done.u_saddle))
    caps_first = np.fmin(caps_first, to.hold)
    end = {"treble": 0, "bass": 1}.get(way)
    tilts = end is not None
    whole = tilted(length, z, caps, end, math.inf) if tilts else bottom(length, z, caps, lowering)
    fresh = any(low and not again for low, again in zip(lowering, job.finish.saddle))
    most = tuple(stroke(e, job.allowances.leave.base if fresh else 0.0) for e in whole.ends)
    first = tilted(length, z, caps_first, end, most[end]) if tilts else \
        bottom(length, z, caps_first, lowering, most)
    return whole, first, (caps, caps_first), most


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
        return None, np.zeros(job.count)
    width, z = job.saddle.post_spread, board.z_saddle
    rows = np.array([share(width, zi) for zi in z])
    level = np.ptp(z) == 0
    ends = np.full(2, np.mean(bone.lower)) if level else np.linalg.lstsq(rows, bone.lower,
                                                                         rcond=None)[0]
    missing = np.zeros(job.count)
    if max(ends) > job.saddle.travel[0] + 1e-6:
        ends, missing = room.of_posts(board, job, bone, ends, lambda e, zi: share(width, zi) @ e)
    return Cut(width, ends - lift_for_notches(board, job, bone, rows @ ends)), missing


def lift_for_notches(board, job, bone, off):
    """Where that line leaves two strings or more under their ranges, the bridge goes up until the lowest of
    them is at its target: notches are deepened, and nothing is put on."""
    short = [(job.targets.action[i][1] - (bone.action[i] - off[i] * board.t12[i])) / board.t12[i]
             for i in range(job.count)
             if bone.action[i] - off[i] * board.t12[i] < job.targets.action[i][0] - 1e-9]
    return max(short) if len(short) > 1 else 0.0


def taken_off(bone, to, cut, z, posts):
    """What comes off under each string, the forecast one while the saddle is withheld."""
    if posts:
        return np.array([posts.at(zi) for zi in z])
    if bone.on_posts and not {"lower", "raise"} & set(bone.verdict):
        return np.where(np.isnan(bone.lower), math.nan, 0.0)
    if bone.on_posts and "wait" not in bone.verdict:
        return np.zeros(len(z))
    verdict = to.verdict
    off = np.where([v == "wait" for v in bone.verdict], bone.lower, to.goal)
    if cut:
        off = np.where([v == "leave" for v in verdict], [cut.at(zi) for zi in z], off)
    return off


def staying_on(board, job, done, to, remedy, i):
    """What a new saddle is higher by at first: a stroke, and more where its strings may else be too low."""
    if remedy != "replace":
        return math.nan
    leave = job.allowances.leave
    goal = 0.0 if to.verdict[i] == "leave" else to.goal[i]
    over = done.bone.action[i] - goal * board.t12[i] - job.targets.action[i][0]
    least = FIRST_BOTTOM * done.u_saddle[i] - over / board.t12[i]
    return max(leave.top if job.saddle.kind == "glued" else leave.base, least)


def lift(board, job, bone, u, to, shim):
    """Strings that need no work rise with a shim where it leaves them in their range; the goal of each
    is then so far up. What stays in its range is not filed."""
    high = room.to_edge(board, job, bone, 2)
    lifted = np.array([v == "leave" for v in to.verdict]) & (high + shim <= (u + EDGE) / board.t12)
    to.goal = np.where(lifted, -shim, to.goal)
    return lifted


def dressing(bone, verdict, lower, cut, shim, replaced, z):
    """What comes off the top string by string; nothing comes off one that is to be replaced."""
    if bone.kind == "individual" or on_posts(bone) or verdict == "wait":
        return math.nan
    if replaced:
        return 0.0
    if not math.isnan(shim):
        return lower + shim
    if verdict == "leave":
        return 0.0
    return lower - (cut.at(z) if cut else 0.0)


def first_of_string(board, job, done, to, cut, remedy, i):
    """How far a string to lower comes down before it is measured again."""
    kind, leave = job.saddle.kind, job.allowances.leave
    base = cut is not None and remedy == "sand"
    spare = leave.base if base else leave.top
    again = job.finish.saddle[i]
    if base:   # the bottom carries them all
        again = all(f for f, v in zip(job.finish.saddle, to.verdict) if v == "lower")
    if kind in ("individual", "two-post") or on_posts(job.saddle) or again:
        spare = 0.0
    took = first_pass(to.verdict[i], "lower", to.goal[i], room.to_edge(board, job, done.bone, 0)[i],
                      done.u_saddle[i], spare, FIRST_BOTTOM if base else FIRST_CUT)
    return least_of(took, to.hold[i]) if to.verdict[i] == "lower" else took


def least_of(took, hold):
    """Held back so that it rings clean; a pass that is not known stays so."""
    return took if math.isnan(took) or math.isnan(hold) else min(took, hold)


def dress_first(board, job, done, dress, cut, first, under, hold, i):
    """The first pass at the top, from where the bottom or a shim has brought the string."""
    if not dress or (cut and max(cut.ends - first.ends) >= 0.005):
        return 0.0   # the bottom has more to lose: the top waits
    moved = under - (cut.at(board.z_saddle[i]) if cut else 0.0)
    low = room.to_edge(board, job, done.bone, 0)[i] + moved
    spare = 0.0 if job.finish.saddle[i] else job.allowances.leave.top
    took = first_pass("lower", "lower", dress, low, done.u_saddle[i], spare)
    return least_of(took, max(0.0, hold + moved) if hold == hold else hold)


def today(board, job, done, to, cut, first):
    """How far each string comes down today where the saddle is cut: with the bottom, and by its top."""
    base = np.zeros(job.count)
    if cut is not None and max(first.ends) >= 0.01:
        base = np.array([first.at(z) for z in board.z_saddle])
    for i, z in enumerate(board.z_saddle):
        dress = dressing(job.saddle, to.verdict[i], to.goal[i], cut, math.nan, False, z)
        if dress >= 0.1:
            base[i] += dress_first(board, job, done, dress, cut, first, 0.0, to.hold[i], i)
    return base


def least(*values):
    """Of those that are known."""
    return np.fmin.reduce(values)


def to_spend(bone, to):
    """How far each string's peak may be filed before the string is past its goal, its room or what
    rings clean; and the last two alone."""
    limit = least(to.room, to.clean)
    over = np.where([v == "lower" for v in to.verdict], to.goal, bone.lower)
    return Plain(limit=limit, most=np.where(np.isnan(over), math.nan, least(over, limit)))


def too_little(done, to, cut, board):
    """Strings in range are all there is to bring down, by less than can be sanded or filed."""
    if cut and max(cut.ends) >= 0.01:
        return False
    falls = [i for i, v in enumerate(to.verdict) if v == "lower"]
    left = [to.goal[i] - (cut.at(board.z_saddle[i]) if cut else 0.0) for i in falls]
    return all(done.finish.saddle[i] and by < 0.1 for i, by in zip(falls, left))


def saddle(board, job, done, codes):
    bone, kind, codes = done.bone, job.saddle.kind, set(codes)
    slotted = kind in ("slotted", "glued")
    present, out, apart = present_heights(board, job, done.now)
    to = room.goals(board, job, bone, out, done.u_saddle)
    cut = first = caps = most = None
    where = room.way(to.verdict, to.goal)
    sands = sanded(job.saddle) and "lower" in to.verdict \
        and not {"raise", "wait"} & set(to.verdict)
    if sands and where != "top":
        cut, first, caps, most = bottom_cuts(board, job, done, where, to)
        if room.held_up(to, cut, first):
            where, cut, first, caps, most = "top", None, None, None, None
    works = (sands or kind == "glued") and "lower" in to.verdict \
        and not {"raise", "wait"} & set(to.verdict)
    if works and too_little(done, to, cut, board):
        to.verdict, to.goal, cut = ["leave"] * job.count, np.zeros(job.count), None
        done.finish.saddle = [False] * job.count
    posts, missing = turned_posts(board, job, bone)
    wished = posts
    if posts and np.max(np.abs(posts.ends)) < 0.01:
        posts = None
    if on_posts(job.saddle):
        to.missing, to.stops = missing, missing.any()
    if posts:
        to.goal = np.array([posts.at(zi) for zi in board.z_saddle])
    elif wished:
        to.goal = np.zeros(job.count)
    shim = saddle_shim(job, to.verdict, bone.lower)
    would = saddle_remedy(job, to.verdict, shim, False, posts)[0]
    to.lifted = np.zeros(job.count, bool)
    if would == "shim":
        to.lifted = lift(board, job, bone, done.held.action_u, to, shim)
    off = taken_off(bone, to, cut, board.z_saddle, posts)
    height = present - off
    depth = job.saddle.slot_depth - job.saddle.pickup + (0.0 if slotted else math.nan)
    falls = np.array([v == "lower" for v in to.verdict])
    past = bone.lower - to.room
    if not slotted:
        past = (max(posts.ends) if posts else bone.lower) - job.saddle.travel[0]
    codes.update(zero_fret_codes(done))
    codes.update({"saddle-loose"} if job.readings.leaning else ())
    standing = job.standing
    if standing.action_order:
        codes.add("reading-order")
    if standing.saddle_odd or (kind != "individual" and not standing.action_order
                               and any(standing.action_odd + standing.first_odd)):
        codes.add("reading-odd")
    if to.stops:
        codes.add("protrusion-low" if slotted else "adjust-limit")
    done.spend = to_spend(bone, to)
    peaks = tuned.files_at_height(board, job, done, would)
    cuts = slotted or sanded(job.saddle)
    if bow_first(job, done) and cuts and (
            peaks or ("lower" in to.verdict and "wait" not in to.verdict)):
        codes.add("rod-limit")
    if slotted and (peaks or ("lower" in to.verdict and "wait" not in to.verdict)):
        if apart:
            codes.add("readings-disagree")
        elif np.isnan(out).any():
            codes.add("saddle-unread")
    if job.jumped and (peaks or {"lower", "raise"} & set(to.verdict)):
        codes.add("saddle-moved")
    if job.season and slotted and "lower" in to.verdict and "wait" not in to.verdict:
        codes.add("moved")
    replaced = would == "replace"
    under = 0.0 if math.isnan(shim) or replaced else shim
    seats, cannot = [], False
    for i in range(job.count):
        protrusion = out[i] - off[i] + (0.0 if slotted else math.nan)
        row = {"present": present[i], "stands_out": out[i] if slotted else math.nan,
               "goal": to.goal[i], "room": to.room[i], "height": height[i], "protrusion": protrusion,
               "in_slot": (depth - under) / (height[i] - under),
               "break_angle": math.degrees(math.atan2(protrusion - job.saddle.exit_height,
                                                      job.saddle.pin[i]))}
        sense.level(to.stops, row)
        cannot = sense.seat(row) or cannot
        seats.append(row)
    if cannot:
        codes -= {"protrusion-low", "adjust-limit"}
    if cannot and not codes & {"reading-odd", "reading-order"}:
        codes.add("impossible")
    stops_alone = len(codes) == 1 and bool(codes & {"protrusion-low", "adjust-limit"})
    if not to.stops and tuned.peaks_first(board, job, done.spend, would, today(board, job, done, to, cut, first)):
        codes.add("tune-out")
    remedy, waiting = saddle_remedy(job, to.verdict, shim, bool(codes), posts)
    rows = []
    for i in range(job.count):
        verdict = "wait" if waiting else to.verdict[i]
        turns = math.nan
        if kind == "individual" and verdict != "wait":
            turns = 0.0 if verdict == "leave" else to.goal[i] / job.saddle.pitch
        dress = dressing(job.saddle, verdict, to.goal[i], cut, shim, replaced, board.z_saddle[i])
        rows.append({"number": i + 1, "lower": bone.lower[i], "lower_u": done.u_saddle[i],
                     "first_pass": math.nan if verdict == "wait" or replaced else
                     first_of_string(board, job, done, to, cut, would, i),
                     "verdict": verdict,
                     "at_edge": bone.side[i].startswith("at-") and to.verdict[i] not in ("lower",
                                                                                         "raise"),
                     "dress": dress, "leave": staying_on(board, job, done, to, remedy, i),
                     "dress_first": math.nan if verdict == "wait" else
                     dress_first(board, job, done, dress, cut, first, under, to.hold[i], i),
                     "turns": turns, **seats[i]})
    seen = cut if remedy != "wait" else None
    slant = leaning(board.nut_at + board.scale, board.z_saddle)
    blank = None if remedy == "wait" or not slotted else with_spare(
        job.allowances.blank, job.saddle.length / math.cos(slant), job.saddle.thickness,
        greatest(height))
    radius = top_radius(board.z_saddle, height) if slotted and not cannot else math.nan
    last = last_stage(board, bone, to, cut, posts)
    last.cuts = Plain(whole=cut, first=first, caps=caps, most=most, way=where, verdict=to.verdict)
    last.radius = radius
    short = neck = None
    last.straightens = False
    if stops_alone:
        short, neck, last.straightens = stopped(
            board, job, done, to, out, np.where(falls & (past == past), past, 0.0))
    part = {"withheld_by": sorted(codes), "remedy": remedy, "strings": rows,
            "bottom_cut": seen and cut_row(board, present, cut, first),
            "shim": math.nan if waiting or replaced else shim,
            "top_radius": radius if 0 < radius <= 3000 else math.nan, "blank": blank,
            "slant": math.degrees(slant), "posts": None if waiting else post_row(job, posts),
            "short": short, "neck": neck, "bow_accepted": bow_accepted(
                board, job, done, lambda i, bend: straightened(board, job, done, i, bend))}
    return part, last


def bow_first(job, done):
    """"high" where the relief is over its range and a rod that is there cannot take it out; "back"
    where an edge showed a back-bow that no rod eases; otherwise nothing."""
    b, gap = job.board, job.readings.relief.gap
    if b.join < 3 or (b.rod != "none" and b.rod_state == "works"):
        return ""
    if done.relief_side == "over" and b.rod != "none" and b.rod_state != "accepted":
        return "high"
    return "back" if done.relief_side == "under" and gap < 0 else ""


def bow_accepted(board, job, done, moved):
    """What a bow that is left as it is costs of the action: the most of any string."""
    aim, at = job.targets.relief[1], job.readings.relief.at
    b = job.board
    left = b.rod == "none" or b.rod_state == "accepted"
    relief = done.now.bend * board.span(at)
    if b.join < 3 or not left or done.relief_side != "over" \
            or relief > job.limits.most_relief + 1e-6:
        return math.nan
    return max(0.0, *(moved(i, aim / board.span(at)) * board.t12[i] for i in range(job.count)))


def half_cure(board, job, done, to, out):
    """How far a saddle in a slot goes short of work on the neck: every string to its aim or its room,
    the others inside their ranges, and by one line of a bottom."""
    if job.saddle.kind not in ("slotted", "glued") or {"raise", "wait"} & set(done.bone.verdict):
        return None
    falls = np.array([v == "lower" for v in done.bone.verdict])
    spare = room.to_edge(board, job, done.bone, 0) - FIRST_CUT * done.u_saddle
    caps = np.maximum(0.0, np.minimum(np.where(falls, done.bone.lower, spare), to.room))
    off = np.where(falls, caps, 0.0)
    if job.saddle.kind == "slotted":
        cut = bottom(job.saddle.length, board.z_saddle, caps, falls)
        off = np.array([cut.at(z) for z in board.z_saddle])
    if np.max(off * board.t12) < 0.2 - 1e-6:
        return None
    left = out - off
    return [{"number": i + 1, "action": done.bone.action[i] - off[i] * board.t12[i],
             "stands_out": left[i],
             "break_angle": math.degrees(math.atan2(left[i] - job.saddle.exit_height,
                                                    job.saddle.pin[i]))} for i in range(job.count)]


def zero_fret_codes(done):
    codes = {"zero-fret-high"} if "file" in done.slots.zero_fret else set()
    return codes | ({"zero-fret-low"} if done.low_zero_fret else set())


def post_row(job, posts):
    if posts is None:
        return None
    treble, bass = posts.ends
    return {"treble": treble, "bass": bass, "turns": {"treble": treble / job.saddle.pitch,
                                                      "bass": bass / job.saddle.pitch}}


def straightened(board, job, done, i, bend):
    """What a neck bent so would give at the saddle, by the same tilt of its chord as a rod."""
    state = done.slots.after
    nut, end = board.moved((bend - state.bend) * job.ratio)
    now = board.crown(state.bend, state.off, i, 12) - board.crown(bend, state.off, i, 12)
    return -((1 - board.t12[i]) * nut[i] + board.t12[i] * end[i] + now) / board.t12[i]


def stopped(board, job, done, to, out, past):
    """(why the saddle has too little room, the neck that would mend it, whether it is enough to turn
    the rod until the relief is at its target)."""
    def moved(i, bend):
        return straightened(board, job, done, i, bend)
    cause, bow = room.short(board, job, done, to.missing, moved)
    tilts = cause in ("angle", "relief-and-angle")
    turns = not done.turned and room.rod_is_enough(board, job, done, to.missing, moved)
    half = half_cure(board, job, done, to, out)
    return {"cause": cause, "bow": bow, "half": half}, neck_row(board, job, past) if tilts else None, turns


def neck_row(board, job, past):
    """The neck tilted about where it meets the body, for years: until the saddle stands well out
    under the string stopped most, or its screws are in the middle of their travel.

    Similar triangles: a rise at the saddle over its distance from there is one at the joint's other
    end over its own length.
    """
    limits, (down, up) = job.limits, job.saddle.travel
    more = (down + up) / 2
    if job.saddle.kind in ("slotted", "glued"):
        more = limits.good_protrusion - limits.least_protrusion
    past = np.where(past == 0.0, 0.0, past + (max(more, 0.0) if more == more else 0.0))
    i = int(np.argmax(past))
    saddle, join = board.nut_at[i] + board.end[i], board.spine[board.join]
    front = join if math.isnan(job.board.pocket_at) else job.board.pocket_at
    return {"lift": past[i], "shim": job.board.pocket * past[i] / (saddle - front),
            "heel": job.board.heel * past[i] / (saddle - join),
            "degrees": math.degrees(math.atan(
                past[i] / (saddle - (join if math.isnan(job.board.pocket) else front))))}


def cut_row(board, present, cut, first):
    def ends(pair):
        return {"treble": float(pair[0]), "bass": float(pair[1])}
    z = board.z_saddle
    return {**ends(cut.ends), "first_pass": ends(first.ends),
            "caliper": ends((present[0] - first.at(z[0]), present[-1] - first.at(z[-1])))}


def last_stage(board, bone, to, cut, posts):
    """The state the saddle stage leaves, where a bottom cut takes from strings left alone too."""
    state = Plain(**vars(bone.after))
    moved = to.lifted | np.array([v in ("lower", "raise") for v in to.verdict])
    changed = moved.any()
    state.end = np.where(moved, bone.before - to.goal, bone.before)
    if cut:
        taken = np.array([cut.at(z) for z in board.z_saddle])
        state.end = np.where(moved, state.end, state.end - taken)
    if posts:
        state.end = bone.before - np.array([posts.at(z) for z in board.z_saddle])
    elif bone.on_posts and "wait" not in bone.verdict:
        state.end, changed = bone.before, False
    return Plain(state=state, changed=changed)
