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
import tone
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
        nut[i], end[i] = solve(np.array(rows), np.array(known))
    return nut, end


def solve(rows, known):
    """Two equations in two unknowns, of which either may not have been read."""
    have = ~np.isnan(known)
    if have.all():
        return np.linalg.solve(rows, known)
    answer = [math.nan, math.nan]
    for row, value in zip(rows[have], known[have]):
        for j in (0, 1):
            if row[1 - j] == 0:
                answer[j] = value / row[j]
    return answer


def first_of(board, state, i, held):
    """Gap at fret 1: open where held is 0, else with the string on that crown."""
    def crown(n):
        return board.crown(state.bend, state.off, i, n)
    if held > board.frets:
        return math.nan
    both = np.array([state.nut[i], state.end[i]])
    if held == 0:
        return np.dot(open_row(board, i, 1), both) - crown(1)
    return (held_row(board, i, held)[0] * state.nut[i]
            + crown(held) * board.x[i, 1] / board.x[i, held] - crown(1))


def action_of(board, state, i):
    row = open_row(board, i, 12)
    return (row[0] * state.nut[i] + row[1] * state.end[i]
            - board.crown(state.bend, state.off, i, 12))


def judge(value, band, high, low):
    if math.isnan(value):
        return "wait"
    if value > band[2] + EDGE:
        return high
    return low if value < band[0] - EDGE else "leave"


def rod_stage(board, job, state, ratio, held):
    """The relief to its aim, where a working rod is there to bring it."""
    b, m, band = job.board, job.readings.relief.at, job.targets.relief
    works = b.rod != "none" and b.rod_state == "works" and b.join >= 3
    turned = works and judge(state.bend * board.span(m), band, "high", "low") in ("high", "low")
    if held is not None:
        turned = held.turned
    if not turned:
        return turned, Plain(**vars(state))
    aim = band[1] / board.span(m)
    nut, end = board.moved(ratio * (aim - state.bend))
    return turned, Plain(bend=aim, off=state.off, nut=state.nut + nut, end=state.end + end)


def frets_stage(job, state):
    """Levelled to the deepest dent, renewed, or proud crowns dressed alone."""
    limits, crown = job.limits, job.board.crown
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
    rows = np.array([open_row(board, i, 1), open_row(board, i, 12)])
    return np.linalg.solve(rows, [aim + crown1, job.targets.action[i][1] + crown12])[0]


def nut_stage(board, job, state, held, finish):
    count = range(job.count)
    first = np.array([first_of(board, state, i, job.targets.held) for i in count])
    aim = np.array([nut_aim(board, job, state, i) for i in count])
    deepen = state.nut - aim
    verdict = [judge(first[i], job.targets.first[i], "file", "raise") for i in count]
    for i in count:
        if (verdict[i] == "file" and deepen[i] <= 0) or (verdict[i] == "raise" and deepen[i] >= 0):
            verdict[i] = "leave"
    verdict = [v if v != "leave" or not again else "file" for v, again in zip(verdict, finish.nut)]
    zero_fret = list(verdict)   # what its crown would be said of, over a zero fret
    if job.nut.zero_fret:
        verdict = ["wait" if v == "wait" else "leave" for v in verdict]
    r = job.readings
    told = r.crowns_read and (r.relief.gap > 0 or not r.relief.by_string)
    on_fret = [bool(told and verdict[i] == "wait" and r.on_fret_1[i] and not math.isnan(aim[i])
                    and not job.nut.zero_fret) for i in count]
    verdict = ["raise" if on else v for on, v in zip(on_fret, verdict)]
    if held is not None:
        verdict = held.nut
    raised, hold = kept_clean(board, job, state, aim, verdict, deepen, held)
    moved = np.array([v in ("file", "raise") for v in verdict])
    after = Plain(bend=state.bend, off=state.off, nut=np.where(moved, aim + raised, state.nut),
                  end=state.end)
    return Plain(first=first, deepen=deepen, verdict=verdict, after=after, raised=raised,
                 hold=hold, on_fret=on_fret,
                 zero_fret=zero_fret if job.nut.zero_fret else [])


def kept_clean(board, job, state, aim, verdict, deepen, held):
    """(how far over its aim each slot ends, how far down a first pass may go; NaN where it may go all
    the way), so that the open string rings clean. A string with nothing left to file is left."""
    raised, hold = np.zeros(job.count), np.full(job.count, math.nan)
    if held is not None:
        return held.raised, hold
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


def saddle_stage(board, job, state, finish):
    """Judges the saddle on the nut as it now is; the bottom cut comes after, in parts."""
    count = range(job.count)
    action = np.array([action_of(board, state, i) for i in count])
    aim = np.empty(job.count)
    for i in count:
        row = open_row(board, i, 12)
        crown = board.crown(state.bend, state.off, i, 12)
        aim[i] = (job.targets.action[i][1] + crown - row[0] * state.nut[i]) / row[1]
    verdict = [judge(action[i], job.targets.action[i], "lower", "raise") for i in count]
    verdict = [v if v != "leave" or not again else "lower"
               for v, again in zip(verdict, finish.saddle)]
    moved = np.array([v in ("lower", "raise") for v in verdict])
    after = Plain(bend=state.bend, off=state.off, nut=state.nut,
                  end=np.where(moved, aim, state.end))
    return Plain(action=action, lower=state.end - aim, verdict=verdict, after=after,
                 before=state.end, on_posts=parts.on_posts(job.saddle))


NONE = Plain(nut=[], saddle=[])


def work(board, job, read, held=None, finish=NONE):
    """All five stages on one set of readings. finish: strings in range that are worked all the same.
    """
    give_pluck(board, job)
    finish = Plain(nut=finish.nut or [False] * job.count,
                   saddle=finish.saddle or [False] * job.count)
    bend = bend_of(board, job.readings.relief, read.relief)
    nut, end = heights_of(board, job, bend, read)
    now = Plain(bend=bend, off=board.off, nut=nut, end=end)
    turned, rod = rod_stage(board, job, now, read.ratio, held)
    crowns, level, frets = frets_stage(job, rod)
    slots = nut_stage(board, job, frets, held, finish)
    bone = saddle_stage(board, job, slots.after, finish)
    return Plain(now=now, turned=turned, rod=rod, crowns=crowns, level=level, frets=frets,
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
        done = work(board, job, read, None, finish)
        done.u_nut, done.u_saddle, done.u_stand = uncertainty(board, job, read, done)
    spare = leave.top if job.saddle.kind == "glued" else leave.base
    finish.saddle = to_finish(done.bone.lower, done.bone.verdict, job.finish.saddle, spare,
                              room.to_edge(board, job, done.bone, 0), done.u_saddle,
                              parts.FIRST_BOTTOM)
    if any(finish.saddle):
        u = done.u_nut, done.u_saddle, done.u_stand
        done = work(board, job, read, None, finish)
        done.u_nut, done.u_saddle, done.u_stand = u
    done.finish = Plain(nut=finish.nut or [False] * job.count,
                        saddle=finish.saddle or [False] * job.count)
    return done


def uncertainty(board, job, read, done):
    """u of each string's cuts at nut and saddle, and of its finished slot over the board's end,
    verdicts held (JCGM 100 5.1.2, 4.3.7)."""
    def stand(then):
        return then.slots.after.nut + then.slots.after.bend * np.array(
            [board.span_at(x) for x in board.nut_at])
    held = Plain(turned=done.turned, nut=done.slots.verdict, raised=done.slots.raised)
    third = 1 / math.sqrt(3)
    moves = {("relief",): job.tools.relief * third, ("action",): job.tools.action * third,
             ("first", "first_open"): job.tools.first * third, ("ratio",): job.spread}
    total = np.zeros((3, job.count))
    for names, u in moves.items():
        moved = Plain(**vars(read))
        for name in names:
            setattr(moved, name, getattr(read, name) + 1.0)
        then = work(board, job, moved, held)
        slope = np.array([then.slots.deepen - done.slots.deepen,
                          then.bone.lower - done.bone.lower, stand(then) - stand(done)])
        total += (slope * u) ** 2
    return np.sqrt(total)


def reading_of(job):
    r = job.readings
    opened = np.where(np.array(r.first_open) == 0, math.nan, r.first_open)
    first = np.array(r.first)
    if r.held:   # an open gap of 0 decides too: the height is not known
        first = np.where(np.array(r.first_open) == 0, math.nan, first)
    return Plain(relief=r.relief.gap, action=np.array(r.action), first=first, first_open=opened,
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
                         "first_open": first_of(board, state, i, 0),
                         "first_held2": first_of(board, state, i, 2),
                         "first_held3": first_of(board, state, i, 3),
                         "action": action_of(board, state, i)} for i in range(job.count)]}


def gaps_apart(board, job, done):
    """A held gap and an open one of one string that tell of different slots: further apart than the
    gap, the action and the relief as read can add up to."""
    r, tools = job.readings, job.tools
    if r.held == 0:
        return False
    explained = 2.2 * tools.first + 0.2 * (tools.action + tools.relief)
    for i in range(job.count):
        told = first_of(board, done.now, i, r.held)
        apart = told > explained if r.on_the_fret[i] else abs(told - r.first[i]) > explained
        if r.first_open[i] > 0 and apart:
            return True
    return False


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
    codes = {"readings-disagree": gaps_apart(board, job, done),
             "rod-limit": bowed_for_good(board, job, done),
             "relief-unknown": math.isnan(done.now.bend), "back-bow": dead,
             "climate": r.humidity < low or r.humidity > high, "bridge-lifted": r.lifted,
             "braces-loose": r.loose, "not-tuned": r.untuned, "forecast": done.turned,
             "fret-worn": done.crowns == "fret-worn", "crown-thin": done.crowns == "crown-thin"}
    return {code for code, true in codes.items() if true}


def plan(job):
    return plan_and_cuts(job)[0]


def plan_and_cuts(job):
    """The part of the result that is arithmetic, NaN as None; and what stands behind the cuts."""
    board, read = Board(job), reading_of(job)
    give_pluck(board, job)
    done = work_finished(board, job, read)
    strings = string_rows(board, job)
    done.tension = [row["tension"] for row in strings]
    codes = withheld(board, job, done)
    nut = parts.nut(board, job, done, codes)
    saddle, last = parts.saddle(board, job, done, codes)
    touched = done.crowns in ("fret-worn", "crown-thin")
    frets_guess = done.turned or touched
    nut_guess = frets_guess or bool(nut["withheld_by"])
    rows = [("now", done.now, False, False), ("rod", done.rod, done.turned, done.turned),
            ("frets", done.frets, done.crowns, frets_guess),
            ("nut", done.slots.after, any(v in ("file", "raise") for v in done.slots.verdict),
             nut_guess),
            ("saddle", last.state, last.changed, nut_guess or bool(saddle["withheld_by"]))]
    result = plain({"strings": strings, "stages": [stage_row(board, job, *row) for row in rows],
                    "nut": nut, "saddle": saddle})
    found = Plain(board=board, verdict=last.cuts.verdict, cuts=last.cuts, radius=last.radius,
                  now=done.now, last=last.state, tension=[s["tension"] for s in strings])
    return result, found


def ring_and_tune(job, found):
    """Clearance, causes and compensation, NaN as None."""
    return plain(tone.rooms(found.board, job, found.tension, found.now, found.last))


def plain(node):
    if isinstance(node, dict):
        return {key: plain(value) for key, value in node.items()}
    if isinstance(node, (list, tuple)):
        return [plain(value) for value in node]
    if isinstance(node, (float, np.floating)):
        return None if math.isnan(node) else float(node)
    return int(node) if isinstance(node, np.integer) else node
