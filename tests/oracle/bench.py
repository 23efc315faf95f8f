# SPDX-License-Identifier: MIT
"""The arithmetic of the bench, computed a second time by general methods to check the program.

Every height comes from solving the equations of the readings as a linear system; every
uncertainty from moving one reading by a whole unit through all the stages with the verdicts held
(the stages are affine in the readings, so that is exact). An unknown is NaN all the way through.
"""
import math
from types import SimpleNamespace as Plain

import numpy as np

import parts
import ring
import room
import sense
import tone
import tuned
import zero_fret
from board import Board

EDGE = 1e-9   # a reading exactly at an edge of its range is in range, whatever the last bit says


def bend_of(board, relief, gap):
    """K from a gap over `at` under what lies on two crowns; the gap is affine in K."""
    if board.join < 3:
        return 0.0
    a, b = relief.held
    x = board.spine if relief.string is None else board.place[relief.string]
    share = (x[relief.at] - x[a]) / (x[b] - x[a])

    def shown(bend):
        c = [board.crown(bend, board.off, relief.string, n) for n in (a, b, relief.at)]
        return c[0] + (c[1] - c[0]) * share - c[2]
    flat = shown(0.0)
    return (gap - flat) / (shown(1.0) - flat)


def open_row(board, i, n):
    t = board.x[i, n] / board.end[i]
    return [1 - t, t]


def held_row(board, i, h):
    return [1 - board.x[i, 1] / board.x[i, h], 0.0]


def heights_of(board, job, bend, read):
    """Nut and saddle heights from whatever was read of each string."""
    r = job.readings
    nut, end = np.full(job.count, math.nan), np.full(job.count, math.nan)
    for i in range(job.count):
        def crown(n):
            return board.crown(bend, board.off, i, n)
        rows, known = [], []
        if r.capo:
            u = (board.x[i, r.at] - board.x[i, 1]) / (board.end[i] - board.x[i, 1])
            rows.append([0.0, u])
            known.append(read.action[i] + crown(r.at) - crown(1) * (1 - u))
        else:
            rows.append(open_row(board, i, r.at))
            known.append(read.action[i] + crown(r.at))
        if r.held == 0 or not math.isnan(read.first_open[i]):
            gap = read.first[i] if math.isnan(read.first_open[i]) else read.first_open[i]
            rows.append(open_row(board, i, 1))
            known.append(gap + crown(1))
        else:
            rows.append(held_row(board, i, r.held))
            known.append(read.first[i] + crown(1)
                         - crown(r.held) * board.x[i, 1] / board.x[i, r.held])
        nut[i], end[i] = solve(rows, known)
    return nut, end


def solve(rows, known):
    """Two equations in two unknowns, of which either may not have been read."""
    if not any(map(math.isnan, known)):
        return both(rows, known)
    answer = [math.nan, math.nan]
    for row, value in zip(rows, known):
        for j in (0, 1):
            if row[1 - j] == 0 and not math.isnan(value):
                answer[j] = value / row[j]
    return answer


def both(rows, known):
    """Cramer's rule."""
    (a, b), (c, d) = rows
    one, other = known
    det = a * d - b * c
    return [(one * d - b * other) / det, (a * other - one * c) / det]


def first_of(board, state, i, held):
    """Gap at fret 1: open where held is 0, else with the string on that crown."""
    def crown(n):
        return board.crown(state.bend, state.off, i, n)
    if held > board.frets:
        return math.nan
    if held == 0:
        at_nut, at_end = open_row(board, i, 1)
        return at_nut * state.nut[i] + at_end * state.end[i] - crown(1)
    return (held_row(board, i, held)[0] * state.nut[i]
            + crown(held) * board.x[i, 1] / board.x[i, held] - crown(1))


def action_of(board, state, i):
    row = open_row(board, i, 12)
    return (row[0] * state.nut[i] + row[1] * state.end[i]
            - board.crown(state.bend, state.off, i, 12))


def side_of(value, band, width=0.0, heard=False):
    """Where a value is to its range. Past an edge by less than the width it is at the edge; a low
    one with its note heard to buzz is out at once."""
    if value > band[2] + EDGE:
        return "over" if value > band[2] + width + EDGE else "at-high"
    if value < band[0] - EDGE:
        return "under" if heard or value < band[0] - width - EDGE else "at-low"
    return "within"


def verdict_of(value, side, high, low, odd=False):
    if math.isnan(value) or odd:
        return "wait"
    return {"over": high, "under": low}.get(side, "leave")


def relief_in(board, job, state):
    return state.bend * board.span(job.readings.relief.at)


def rod_stage(board, job, state, ratio, turned):
    """The relief to its aim, where a working rod is there to bring it."""
    if not turned:
        return Plain(**vars(state))
    aim = job.targets.relief[1] / board.span(job.readings.relief.at)
    nut, end = board.moved(ratio * (aim - state.bend))
    return Plain(bend=aim, off=state.off, nut=state.nut + nut, end=state.end + end)


def frets_stage(job, state):
    """Levelled to the deepest dent, renewed, or proud crowns dressed alone."""
    limits, crown = job.limits, job.board.crown
    if job.standing.crowns_odd:
        return None, 0.0, Plain(**vars(state))
    deepest = max(0.0, float(np.max(-state.off)))
    after = Plain(bend=state.bend, off=np.zeros_like(state.off), nut=state.nut, end=state.end)
    if deepest > limits.wear + EDGE:
        if crown - deepest < limits.least_crown - EDGE:
            return "crown-thin", 0.0, after
        after.nut, after.end = state.nut + deepest, state.end + deepest
        return "fret-worn", deepest, after
    proud = state.off > limits.wear + EDGE
    after.off = np.where(proud, 0.0, state.off)
    return ("dressed" if proud.any() else None), 0.0, after


def nut_aim(board, job, state, i):
    """The nut height that puts first at its aim; an open one together with action at its aim."""
    aim, held = job.targets.first[i][1], job.targets.held
    crown1 = board.crown(state.bend, state.off, i, 1)
    if held:
        there = board.crown(state.bend, state.off, i, held)
        part = board.x[i, 1] / board.x[i, held]
        return (aim + crown1 - there * part) / held_row(board, i, held)[0]
    crown12 = board.crown(state.bend, state.off, i, 12)
    rows = [open_row(board, i, 1), open_row(board, i, 12)]
    return both(rows, [aim + crown1, job.targets.action[i][1] + crown12])[0]


def nut_stage(board, job, state, held):
    count = range(job.count)
    first = np.array([first_of(board, state, i, job.targets.held) for i in count])
    aim = np.array([nut_aim(board, job, state, i) for i in count])
    deepen = state.nut - aim
    moved = np.array([v in ("file", "raise") for v in held.nut])
    put = np.where(moved, aim + held.raised, state.nut)
    after = Plain(bend=state.bend, off=state.off,
                  nut=np.where(held.lifted, state.nut + held.shim, put), end=state.end)
    return Plain(first=first, deepen=deepen, aim=aim, verdict=held.nut, after=after,
                 side=held.first_side, raised=held.raised, hold=held.hold, on_fret=held.on_fret,
                 zero_fret=held.zero_fret if job.nut.zero_fret else [])


def judge_nut(board, job, done, u, held, finish):
    """The verdicts on the gaps at fret 1, each with what its own uncertainty leaves open. finish:
    strings in range that are worked all the same."""
    standing, r, slots = job.standing, job.readings, done.slots
    told = r.crowns_read and (r.relief.gap > 0 or not r.relief.by_string)
    for i in range(job.count):
        width = u[i] * (2 if standing.first_settled[i] else 1)
        side = side_of(slots.first[i], job.targets.first[i], width, (i, 0) in r.buzz)
        verdict = verdict_of(slots.first[i], side, "file", "raise", standing.first_odd[i])
        deepen = slots.deepen[i]
        if math.isnan(deepen):
            verdict = "wait"
        if (verdict == "file" and deepen <= 0) or (verdict == "raise" and deepen >= 0):
            verdict = "leave"
        if finish.nut[i]:
            verdict = "file"
        held.first_side[i] = side
        held.zero_fret[i] = verdict   # what its crown would be said of, over a zero fret
        held.nut[i] = "leave" if job.nut.zero_fret and verdict != "wait" else verdict
        held.on_fret[i] = bool(told and held.nut[i] == "wait" and r.on_fret_1[i]
                               and not standing.first_odd[i] and not math.isnan(slots.aim[i]))
        if held.on_fret[i]:
            held.nut[i] = "leave" if job.nut.zero_fret else "raise"
    held.raised, held.hold = kept_clean(board, job, done.frets, slots.aim, held.nut, slots.deepen)


def give_shim(board, job, done, u, held):
    """A shim under the nut, where two slots or more must rise by known amounts. held.lifted: the slots
    that stay where it lifts them, not past the high edge of their range; held.back: what is filed back
    today of one that was not too high before."""
    slots = done.slots
    held.shim, held.back = math.nan, np.full(job.count, math.nan)
    held.lifted = np.zeros(job.count, bool)
    rise = [-slots.deepen[i] for i, v in enumerate(held.nut) if v == "raise"]
    if len(rise) < 2 or any(held.on_fret) or "wait" in held.nut \
            or parts.two_filled(job, held.nut, rise):
        return
    shim = parts.rounded_up(max(rise), job.allowances.shim_step)
    if shim > job.limits.most_shim + EDGE:
        return
    held.shim, state = shim, done.frets
    up = Plain(**{**vars(state), "nut": state.nut + shim})
    for i in range(job.count):
        if held.nut[i] == "file":
            continue
        low, _, high = job.targets.first[i]
        gap, held.back[i] = first_of(board, up, i, job.targets.held), 0.0
        if gap > high + u[i] + EDGE:
            far = board.x[i, job.targets.held] if job.targets.held else board.end[i]
            lever = 1 - board.x[i, 1] / far
            cut = shim + (slots.deepen[i] if held.nut[i] == "raise" else 0.0)
            back = parts.guarded(cut, (slots.first[i] - low) / lever + shim, held.deepen_u[i],
                                 job.allowances.leave.slot)
            held.back[i] = back if back >= 0.01 else 0.0
        held.lifted[i] = held.back[i] == 0.0


def kept_clean(board, job, state, aim, verdict, deepen):
    """(how far over its aim each slot ends, how far down a first pass may go; NaN where it may go all
    the way), so that the open string rings clean. A string with nothing left to file is left."""
    raised, hold = np.zeros(job.count), np.full(job.count, math.nan)
    for i in range(job.count):
        if verdict[i] != "file":
            continue
        action, band = action_of(board, state, i), job.targets.action[i]
        least = ring.nut(board, job, state, i, band[1] if action > band[2] + ring.EDGE else action)
        if not least > aim[i] + ring.EDGE:
            continue
        there = Plain(**{**vars(state), "nut": np.where(np.arange(job.count) == i, least, state.nut)})
        if first_of(board, there, i, job.targets.held) > job.targets.first[i][2] + ring.EDGE:
            hold[i] = max(0.0, state.nut[i] - least)
        else:
            raised[i] = min(state.nut[i], least) - aim[i]
        if not deepen[i] > raised[i] + ring.EDGE:
            verdict[i] = "leave"
    return raised, hold


def saddle_stage(board, job, state, held):
    """Judges the saddle on the nut as it now is; the bottom cut comes after, in parts."""
    count = range(job.count)
    action = np.array([action_of(board, state, i) for i in count])
    aim = np.empty(job.count)
    for i in count:
        row = open_row(board, i, 12)
        crown = board.crown(state.bend, state.off, i, 12)
        aim[i] = (job.targets.action[i][1] + crown - row[0] * state.nut[i]) / row[1]
    verdict = held.bone
    moved = np.array([v in ("lower", "raise") for v in verdict])
    after = Plain(bend=state.bend, off=state.off, nut=state.nut,
                  end=np.where(moved, aim, state.end))
    return Plain(action=action, lower=state.end - aim, verdict=verdict, after=after,
                 side=held.action_side,
                 before=state.end, on_posts=parts.on_posts(job.saddle))


NONE = Plain(nut=[], saddle=[])


def judge_saddle(job, bone, u, held, finish):
    standing, heard = job.standing, job.readings.buzz
    for i in range(job.count):
        width = u[i] * (2 if standing.action_settled[i] else 1)
        buzzes = any(string == i for string, _ in heard)
        held.action_side[i] = side_of(bone.action[i], job.targets.action[i], width, buzzes)
        held.bone[i] = verdict_of(bone.action[i], held.action_side[i], "lower", "raise",
                                  standing.action_odd[i] or standing.first_odd[i])
        if finish.saddle[i]:
            held.bone[i] = "lower"


def decide(board, job, read, finish):
    """The verdicts, stage by stage, each on what the stages before it leave and on how sure that
    is."""
    n, b, heard = job.count, job.board, job.readings.buzz
    held = Plain(turned=False, nut=["leave"] * n, first_side=["within"] * n, raised=np.zeros(n),
                 shim=math.nan, lifted=np.zeros(n, bool), back=np.full(n, math.nan),
                 hold=np.full(n, math.nan), on_fret=[False] * n,
                 zero_fret=["leave"] * n, bone=["leave"] * n, action_side=["within"] * n)

    def known_to(what):
        return what(run(board, job, read, held)), spread(board, job, read, held, what)
    relief, u = known_to(lambda d: np.full(n, relief_in(board, job, d.now)))
    low = any(fret < job.readings.relief.at for _, fret in heard)
    held.relief_side, held.relief_u = side_of(relief[0], job.targets.relief, u[0], low), u[0]
    works = b.rod != "none" and b.rod_state == "works" and b.join >= 3
    held.turned = (works and (held.relief_side in ("over", "under") or job.straighten)
                   and not job.standing.relief_odd)
    held.first_u = spread(board, job, read, held, lambda d: d.slots.first)
    judge_nut(board, job, run(board, job, read, held), held.first_u, held, finish)
    held.deepen_u = spread(board, job, read, held, lambda d: d.slots.deepen)
    give_shim(board, job, run(board, job, read, held), held.first_u, held)
    held.action_u = spread(board, job, read, held, lambda d: d.bone.action)
    judge_saddle(job, run(board, job, read, held).bone, held.action_u, held, finish)
    return held


def work(board, job, read, finish=NONE):
    """All five stages on one set of readings. finish: strings in range that are worked all the same.
    """
    give_pluck(board, job)
    finish = Plain(nut=finish.nut or [False] * job.count,
                   saddle=finish.saddle or [False] * job.count)
    held = decide(board, job, read, finish)
    done = run(board, job, read, held)
    done.held, done.turned, done.relief_side = held, held.turned, held.relief_side
    return done


def run(board, job, read, held):
    """The stages with the verdicts given."""
    bend = bend_of(board, job.readings.relief, read.relief)
    nut, end = heights_of(board, job, bend, read)
    now = Plain(bend=bend, off=board.off, nut=nut, end=end)
    rod = rod_stage(board, job, now, read.ratio, held.turned)
    crowns, level, frets = frets_stage(job, rod)
    slots = nut_stage(board, job, frets, held)
    bone = saddle_stage(board, job, slots.after, held)
    return Plain(now=now, rod=rod, crowns=crowns, level=level, frets=frets,
                 slots=slots, bone=bone)


def to_finish(cut, verdict, again, leave, to_low, u, guard):
    """In range, cut before by less than its cut, and over its aim by more than may be left."""
    return [bool(a and v == "leave" and c > max(s, leave / 2)
                 and parts.guarded(c, low, s, 0.0, guard) >= 0.01)
            for c, v, a, low, s in zip(cut, verdict, again, to_low, u)]


def work_finished(board, job, read):
    """The stages, with what was cut short at the visit before brought to its aim."""
    leave, finish = job.allowances.leave, Plain(nut=[], saddle=[])
    done = work(board, job, read)
    done.u_nut, done.u_saddle, done.u_stand = uncertainty(board, job, read, done)
    held = job.targets.held
    lever = np.array([held_row(board, i, held)[0] if held else open_row(board, i, 1)[0]
                      for i in range(job.count)])
    low = (done.slots.first - np.array([band[0] for band in job.targets.first])) / lever
    if not job.nut.zero_fret:
        finish.nut = to_finish(done.slots.deepen, done.slots.verdict, job.finish.nut, leave.slot,
                               low, done.u_nut, parts.FIRST_CUT)
    if any(finish.nut):
        done = work(board, job, read, finish)
        done.u_nut, done.u_saddle, done.u_stand = uncertainty(board, job, read, done)
    spare = leave.top if job.saddle.kind == "glued" else leave.base
    finish.saddle = to_finish(done.bone.lower, done.bone.verdict, job.finish.saddle, spare,
                              room.to_edge(board, job, done.bone, 0), done.u_saddle,
                              parts.FIRST_BOTTOM)
    if any(finish.saddle):
        u = done.u_nut, done.u_saddle, done.u_stand
        done = work(board, job, read, finish)
        done.u_nut, done.u_saddle, done.u_stand = u
    done.finish = Plain(nut=finish.nut or [False] * job.count,
                        saddle=finish.saddle or [False] * job.count)
    return done


def sureness(job):
    """Standard uncertainty of each input: a tool's, wider where the reading was carried over."""
    third, standing = 1 / math.sqrt(3), job.standing

    def carried(tool, flags):
        return tool * third * np.where(np.array(flags), 1.5, 1.0)
    relief = carried(job.tools.relief, [standing.relief_carried])[0]
    if standing.relief_carried:
        relief = math.hypot(relief, 0.03 * third)
    return {("relief",): relief, ("action",): carried(job.tools.action, standing.action_carried),
            ("first", "first_open"): carried(job.tools.first, standing.first_carried),
            ("ratio",): job.spread}


def spread(board, job, read, held, what):
    """u of something of each string, verdicts held (JCGM 100 5.1.2, 4.3.7)."""
    there, total = what(run(board, job, read, held)), 0.0
    for names, u in sureness(job).items():
        moved = Plain(**vars(read))
        for name in names:
            setattr(moved, name, getattr(read, name) + 1.0)
        total = total + ((what(run(board, job, moved, held)) - there) * u) ** 2
    return np.sqrt(total)


def uncertainty(board, job, read, done):
    """u of each string's cuts at nut and saddle, and of its finished slot over the board's end."""
    def stand(then):
        return then.slots.after.nut + then.slots.after.bend * np.array(
            [board.span_at(x) for x in board.nut_at])
    return [spread(board, job, read, done.held, what)
            for what in (lambda d: d.slots.deepen, lambda d: d.bone.lower, stand)]


def reading_of(job):
    r = job.readings
    opened = np.where(np.array(r.first_open) == 0, math.nan, r.first_open)
    first = np.array(r.first)
    if r.held:   # an open gap of 0 decides too: the height is not known
        first = np.where(np.array(r.first_open) == 0, math.nan, first)
    opened = np.where(first > 0, math.nan, opened)   # the one the nut is judged by decides
    line = getattr(job, "on_line", None)   # set where a whole top is dressed by it
    action = np.array(r.action) if line is None else line
    return Plain(relief=r.relief.gap, action=action, first=first, first_open=opened,
                 ratio=job.ratio)


def give_pluck(board, job):
    """The tension of each string; no pluck is held to on one whose mass nobody knows, or by an
    assumed core."""
    job.tension = [(s.mass if s.weighed else math.nan) * (2 * (board.end[i] - job.nut.advance[i]) / 1000 * s.hz) ** 2
                   for i, s in enumerate(job.strings)]


def string_rows(board, job):
    rows = []
    for i, s in enumerate(job.strings):
        tension = s.mass * (2 * (board.end[i] - job.nut.advance[i]) / 1000 * s.hz) ** 2
        rows.append({"number": i + 1, "note": s.note, "hz": s.hz, "unit_mass": s.mass,
                     "tension": tension, "nut_z": board.z_nut[i], "saddle_z": board.z_saddle[i],
                     "saddle_x": board.end[i], "leverage": board.t12[i],
                     "scale": board.scale[i], "nut_x": board.nut_at[i],
                     "course": job.courses[i] + 1,
                     "assumed": ["core"] if s.assumed else []})
    return rows


def stage_row(board, job, name, state, changed, forecast):
    m = job.readings.relief.at
    return {"stage": name, "changed": bool(changed), "forecast": bool(forecast),
            "relief": state.bend * board.span(m),
            "strings": [{"number": i + 1, "nut_height": state.nut[i], "saddle_height": state.end[i],
                         "first_open": sense.on_fret(first_of(board, state, i, 0)),
                         "first_held2": sense.on_fret(first_of(board, state, i, 2)),
                         "first_held3": sense.on_fret(first_of(board, state, i, 3)),
                         "action": sense.over(action_of(board, state, i))}
                        for i in range(job.count)]}


def gaps_apart(board, job, done, i):
    """A held gap and an open one of one string that tell of different slots: further apart than the
    gap, the action and the relief as read can add up to. Or a gap and a zero fret's crown that do."""
    r, explained = job.readings, zero_fret.explained(job.tools, job.tools.action)
    if zero_fret.apart(board, job, done, i):
        return True
    if r.held == 0:
        return False
    alone = reading_of(job)   # what the open gaps tell by themselves
    alone.first = np.full(job.count, math.nan)
    alone.first_open = np.where(np.array(r.first_open) == 0, math.nan, r.first_open)
    state = Plain(**vars(done.now))
    state.nut, state.end = heights_of(board, job, state.bend, alone)
    told = first_of(board, state, i, r.held)
    apart = told > explained if r.on_the_fret[i] else abs(told - r.first[i]) > explained
    # One that lies on fret 1 open has no gap there when held.
    return r.first_open[i] > 0 and apart or r.first_open[i] == 0 and r.first[i] > explained


def bowed_for_good(board, job, done):
    """More relief than any setup carries, and no rod that works."""
    b = job.board
    works = b.rod != "none" and b.rod_state == "works"
    relief = done.now.bend * board.span(job.readings.relief.at)
    return not works and relief > job.limits.most_relief + EDGE


def withheld(board, job, done):
    """Codes that stop both nut and saddle."""
    r, (low, high) = job.readings, job.limits.humidity
    dead = r.relief.gap == 0 and r.relief.by_string and job.board.join >= 3
    codes = {"readings-disagree": any(done.apart),
             "reading-odd": job.standing.relief_odd or job.standing.crowns_odd,
             "rod-limit": bowed_for_good(board, job, done),
             "relief-unknown": math.isnan(done.now.bend), "back-bow": dead,
             "climate": r.humidity < low or r.humidity > high, "bridge-lifted": r.lifted,
             "braces-loose": r.loose, "not-tuned": r.untuned, "forecast": done.turned,
             "fret-worn": done.crowns == "fret-worn", "crown-thin": done.crowns == "crown-thin"}
    return {code for code, true in codes.items() if true}


def plan(job):
    return plan_and_cuts(job)[0]


def plan_and_cuts(job):
    """The part of the result that is arithmetic, NaN as None; and what stands behind the cuts. Where
    the saddle has too little room only for a relief that the rod can take out, that comes first."""
    job.straighten, job.on_line, job.off_line = False, None, np.zeros(job.count)
    result, found = planned(job)
    if found.straightens:
        job.straighten = True
        result, found = planned(job)
    told, line = found.now, line_of_actions(job, found.board)
    if whole_top(job, result) and line is not None:
        job.on_line = line
        result, found = planned(job)
        if not whole_top(job, result):
            job.on_line = None
            result, found = planned(job)
    for i, row in enumerate(result["saddle"]["strings"]):
        job.off_line[i] = row["off_line"] = 0.0 if job.on_line is None else float(
            action_of(found.board, told, i) - action_of(found.board, found.now, i))
    return result, found


def whole_top(job, result):
    """Whether half the strings of a glued saddle or more are dressed."""
    falls = [row["verdict"] for row in result["saddle"]["strings"]].count("lower")
    return (job.saddle.kind == "glued" and result["saddle"]["remedy"] == "sand"
            and 2 * falls >= job.count)


def line_of_actions(job, board):
    """The line of least squares at every string; None where one was read farther off than its tool."""
    read = np.array(job.readings.action)
    if job.count < 3 or not (read > 0).all():
        return None
    z = board.z_saddle
    line = np.polyval(np.polyfit(z, read, 1), z) if np.ptp(z) else np.full(job.count, read.mean())
    return line if np.max(np.abs(read - line)) <= job.tools.action + EDGE else None


def planned(job):
    board, read = Board(job), reading_of(job)
    give_pluck(board, job)
    done = work_finished(board, job, read)
    strings = string_rows(board, job)
    done.tension = [row["tension"] for row in strings]
    done.apart = [bool(gaps_apart(board, job, done, i)) for i in range(job.count)]
    done.low_zero_fret = zero_fret.low(board, job, done)
    codes = withheld(board, job, done)
    nut = parts.nut(board, job, done, codes)
    saddle, last = parts.saddle(board, job, done, codes)
    made = tuned.tuning(board, job, done, nut, saddle, last.state)
    for row, peak, short in zip(saddle["strings"], made.peak, made.short):
        row.update(peak=peak, peak_short=short)
    touched = done.crowns in ("fret-worn", "crown-thin")
    frets_guess = done.turned or touched
    nut_guess = frets_guess or bool(nut["withheld_by"])
    rows = [("now", done.now, False, False), ("rod", done.rod, done.turned, done.turned),
            ("frets", done.frets, done.crowns, frets_guess),
            ("nut", done.slots.after, any(v in ("file", "raise") for v in done.slots.verdict),
             nut_guess),
            ("saddle", last.state, last.changed, nut_guess or bool(saddle["withheld_by"]))]
    result = plain({"strings": strings, "stages": [stage_row(board, job, *row) for row in rows],
                    "nut": nut, "saddle": saddle, "tune": made.row})
    found = Plain(board=board, verdict=last.cuts.verdict, cuts=last.cuts, radius=last.radius,
                  made=made, now=done.now, relief_side=done.relief_side, last=last.state,
                  straightens=last.straightens, action_u=done.held.action_u,
                  tension=[s["tension"] for s in strings])
    return result, found


def with_its_curve(job, found, remedy):
    """The state when all is done: strings that a bridge on posts leaves out of their ranges get their notches
    to the target."""
    if not parts.on_posts(job.saddle) or remedy == "wait":
        return found.last
    last = Plain(**vars(found.last))
    last.end = np.array(last.end, dtype=float)
    for i in range(job.count):
        width, heard = found.action_u[i], any(string == i for string, _ in job.readings.buzz)
        action = action_of(found.board, found.last, i)
        if side_of(action, job.targets.action[i], width, heard) in ("over", "under"):
            last.end[i] += (job.targets.action[i][1] - action) / open_row(found.board, i, 12)[1]
    return last


def ring_and_tune(job, found, remedy):
    """Clearance, causes and compensation, NaN as None. remedy: of the saddle."""
    last = with_its_curve(job, found, remedy)
    return plain(tone.rooms(found.board, job, found.tension, found.now, last,
                            found.relief_side, found.made.move))


def plain(node):
    if isinstance(node, dict):
        return {key: plain(value) for key, value in node.items()}
    if isinstance(node, (list, tuple)):
        return [plain(value) for value in node]
    if isinstance(node, (float, np.floating)):
        return None if math.isnan(node) else float(node)
    return int(node) if isinstance(node, np.integer) else node
