# SPDX-License-Identifier: MIT
"""What is known of a reading besides its figure: whether it is odd, and whether its string was in
range before and not worked since."""
import itertools
import math
from types import SimpleNamespace as Plain

import numpy as np

import bench
import tuned

STOPS = {"climate", "bridge-lifted", "braces-loose", "not-tuned", "back-bow"}
THIRD = 1 / math.sqrt(3)
EDGE = 1e-6
# What is likely of a reading where no profile says it (src/job/fields.c).
LIKELY = {"relief": (-1, 1.5), "action": (0.4, 4.5), "first": (0, 1.5), "first_open": (0, 1.5),
          "off": (-0.4, 0.4), "saddle_height": (2, 25), "bridge_top": (-5, 8)}


# What the visit before asked for

def asked_neck(before):
    stopped = STOPS & set(before.result["nut"]["withheld_by"])
    return not stopped and bool(before.done.turned or before.done.crowns)


def asked_slot(before, i):
    part = before.result["nut"]
    return part["remedy"] in ("shim", "replace") or (
        part["remedy"] != "wait" and part["strings"][i]["verdict"] in ("file", "raise"))


def asked_saddle(before, i):
    if tuned.asked_peak(before, i):
        return True
    part = before.result["saddle"]
    if part["remedy"] in ("none", "wait"):
        return False
    own = (part["remedy"] == "screw" and not part["posts"]) or (
        part["remedy"] == "sand" and not part["bottom_cut"])
    return not own or part["strings"][i]["verdict"] in ("lower", "raise")


# Odd by itself

def unlikely(key, value):
    low, high = LIKELY[key]
    return value != 0 and (value < low or value > high)


def odd(why, read, off=math.nan):
    return Plain(why=why, read=read, off=off, believed=False)


def first_unlikely(*pairs):
    """The first unlikely of some figures, or None."""
    return next((odd("unlikely", value) for key, value in pairs if unlikely(key, value)), None)


def studentized(z, y):
    """Residuals of the line of least squares over sqrt(1 - leverage), by the hat matrix."""
    rows = np.column_stack([np.ones(len(z)), z])
    hat = rows @ np.linalg.pinv(rows)
    return (y - hat @ y) / np.sqrt(np.maximum(1e-9, 1 - np.diag(hat)))


def off_line(job, board):
    """(the string that is off the line of the others, by how much, whether it is a curve)."""
    groups = [[i for i in range(job.count) if job.courses[i] == c]
              for c in range(job.courses[-1] + 1)]
    action = np.array(job.readings.action)
    groups = [g for g in groups if not np.isnan(action[g]).any()]
    if len(groups) < 4:
        return None
    z = np.array([np.mean(board.z_saddle[g]) for g in groups])
    y = np.array([np.mean(action[g]) for g in groups])
    limit = max(0.5, 6 * job.tools.action * THIRD)
    s = np.abs(studentized(z, y))
    most = int(np.argmax(s))
    if not s[most] > limit + EDGE:
        return None
    rest = np.arange(len(z)) != most
    line = np.polyfit(z[rest], y[rest], 1) if np.ptp(z[rest]) else [0.0, np.mean(y[rest])]
    there = np.polyval(line, z[most])
    far = {i: abs(action[i] - there) for i in groups[most]}
    string = max(groups[most], key=lambda i: (far[i], -i))
    curve = len(z) >= 5 and np.max(np.abs(studentized(z[rest], y[rest]))) > limit / 2 + EDGE
    return Plain(string=string, off=action[string] - there, curve=curve)


def deviation(z, y):
    """Of the residuals of a line, by its normal equations."""
    rows = np.column_stack([np.ones(len(z)), z])
    left = y - rows @ np.linalg.lstsq(rows, y, rcond=None)[0]
    return math.sqrt(left @ left / (len(z) - 2))


def swapped(job, board):
    """The only two actions that lie on a line once they change places, where the list does not."""
    z, y, u = board.z_saddle, np.array(job.readings.action), job.tools.action * THIRD
    if job.count < 5 or job.courses[-1] + 1 < job.count or not (y > 0).all():
        return None
    was = deviation(z, y)
    if not was > 3 * u + EDGE:
        return None
    pairs = []
    for pair in itertools.combinations(range(job.count), 2):
        other = y.copy()
        other[list(pair)] = y[list(reversed(pair))]
        if deviation(z, other) < min(u, was / 3) - EDGE:
            pairs.append(pair)
    return pairs[0] if len(pairs) == 1 else None


def fall(job, board, values, aims):
    """How far a complete list falls over the strings' width, course by course, while its aims rise and
    no course stands over the one before it."""
    groups = [[i for i in range(job.count) if job.courses[i] == c]
              for c in range(job.courses[-1] + 1)]
    values = np.array(values, float)
    if len(groups) < 4 or np.isnan(values).any() or not (values > 0).all():
        return math.nan, None
    z = np.array([np.mean(board.z_saddle[g]) for g in groups])
    y = np.array([np.mean(values[g]) for g in groups])
    t = np.array([np.mean([aims[i][1] for i in g]) for g in groups])
    width = z[0] - z[-1]
    down, up = (np.cov(z, v)[0, 1] / np.var(z, ddof=1) * width for v in (y, t))
    return (down if down > EDGE and up < -EDGE else math.nan), np.max(np.diff(y))


def order_of(job, board):
    """Which lists may have been begun at the wrong end, or None."""
    def doubted(name, aims, tool, limit):
        if name in job.readings.by_ends:
            return False
        down, step = fall(job, board, getattr(job.readings, name), aims)
        return not math.isnan(down) and step <= 2 * tool * THIRD and down > limit + EDGE
    tools = job.tools
    if not doubted("action", job.targets.action, tools.action, max(0.2, 4 * tools.action * THIRD)):
        return None
    return Plain(first=doubted("first", job.targets.first, tools.first, 2 * tools.first * THIRD),
                 believed=False)


def off_others(values, i):
    others = [v for k, v in enumerate(values) if k != i and not math.isnan(v)]
    return values[i] - float(np.median(others)) if len(others) >= 3 else math.nan


def odd_alone(job, board):
    r = job.readings
    found = Plain(
        relief=first_unlikely(("relief", r.relief.gap)),
        crowns=first_unlikely(*(("off", off) for _, _, off in r.off)),
        saddle=first_unlikely(*((key, v) for key in ("saddle_height", "bridge_top")
                                for v in getattr(r, key))),
        action=[first_unlikely(("action", v)) for v in r.action],
        first=[first_unlikely(("first", r.first[i]), ("first_open", r.first_open[i]))
               for i in range(job.count)])
    stray = off_line(job, board)
    if stray and not stray.curve and not found.action[stray.string]:
        found.action[stray.string] = odd("line", r.action[stray.string], stray.off)
    if not any(found.action) and not (stray and stray.curve):
        pair = swapped(job, board) or ()
        for i in pair:
            found.action[i] = odd("swapped", r.action[i], 2 * r.action[i] - sum(r.action[k] for k in pair))
    for i in range(job.count if r.held else 0):
        off = off_others(r.first, i)
        if abs(off) > max(0.15, 6 * job.tools.first * THIRD) + EDGE and not found.first[i]:
            found.first[i] = odd("others", r.first[i], off)
    found.order = order_of(job, board)
    return found


# Odd beside the visit before

def moved(job, board, before, found):
    r, then = job.readings, before.job.readings
    relief = bench.bend_of(board, r.relief, r.relief.gap) * board.span(r.relief.at)
    bends = board.join >= 3
    if (bends and not abs(relief - before.relief) <= 2 * job.tools.relief) or asked_neck(before) \
            or abs(r.humidity - then.humidity) > 10:
        return
    for name, tool in (("action", job.tools.action), ("first", job.tools.first)):
        moves = np.array(getattr(r, name)) - np.array(getattr(then, name))
        for i in range(job.count):
            slot, bone = asked_slot(before, i), asked_saddle(before, i)
            if name == "action":
                worked = slot or bone or (r.at, r.capo) != (then.at, then.capo)
            else:
                worked = slot or (bone and not r.held) or r.held != then.held
            turned = before.odd.order and (name == "action" or before.odd.order.first)
            if worked or turned or getattr(before.odd, name)[i] or getattr(job.standing, f"{name}_carried")[i]:
                moves[i] = math.nan
        limit, list_of = max(0.15, 5 * tool * THIRD), getattr(found, name)
        for i in range(job.count):
            apart = off_others(list(moves), i)
            alone = math.isnan(apart) or abs(apart) > limit + EDGE
            if not list_of[i] and abs(moves[i]) > limit + EDGE and alone:
                list_of[i] = odd("moved", getattr(r, name)[i], moves[i])


def believe(now, then, was, u, confirmed=False):
    """Read again the same, confirmed, or believed before and no odder since."""
    if not now:
        return
    same = abs(now.read - was) <= 2 * u + 1e-9
    still = then and then.believed and then.why == now.why and (
        now.why == "unlikely" or abs(now.off) <= abs(then.off) + 2 * u)
    now.believed = bool(confirmed or same or still)


def believe_all(job, before, found):
    r, tools = job.readings, job.tools
    then = before.job.readings if before else None
    old = before.odd if before else Plain(relief=None, crowns=None, saddle=None,
                                          action=[None] * job.count, first=[None] * job.count)

    fresh = Plain(frets=job.carried["frets"] is None,
                  saddle=job.carried["saddle_height"] is None and job.carried["bridge_top"] is None)

    def was(one, again):
        return one.read if one and again else math.nan
    for i in range(job.count):
        alike = then and (r.at, r.capo) == (then.at, then.capo)
        believe(found.action[i], old.action[i], then.action[i] if alike and not job.standing.action_carried[i] else math.nan,
                tools.action * THIRD, r.confirmed[i])
        opened = found.first[i] and found.first[i].read == r.first_open[i]
        gap = math.nan
        if then and opened:
            gap = then.first_open[i]
        elif then and r.held == then.held:
            gap = then.first[i]
        if job.standing.first_carried[i]:
            gap = math.nan
        believe(found.first[i], old.first[i], gap, tools.first * THIRD, r.confirmed[i])
    if found.order:
        then_order = before.odd.order if before else None
        again = not any(job.standing.action_carried)
        found.order.believed = all(r.confirmed) or bool(
            then_order and (again or then_order.believed))
    believe(found.relief, old.relief, then.relief.gap if then and not job.standing.relief_carried else math.nan, tools.relief * THIRD)
    believe(found.crowns, old.crowns, was(old.crowns, fresh.frets), tools.first * THIRD)
    believe(found.saddle, old.saddle, was(old.saddle, fresh.saddle), tools.caliper * THIRD)


def holds(one):
    return bool(one and not one.believed)


def settled(before, standing):
    """Strings that read in range at an earlier visit, and were not worked since."""
    if asked_neck(before):
        return
    job, was, heard = before.job, before.job.standing, before.job.readings.buzz
    sure = bench.sureness(job)
    for i in range(job.count):
        first = bench.first_of(before.board, before.done.now, i, job.targets.held)
        slot = bench.side_of(first, job.targets.first[i], sure["first", "first_open"][i],
                             (i, 0) in heard)
        action = before.read[i]
        bone = bench.side_of(action, job.targets.action[i], sure["action",][i],
                             any(string == i for string, _ in heard))
        out = ("under", "over")
        filed = asked_slot(before, i)
        standing.first_settled[i] = not filed and (
            was.first_settled[i] or (slot not in out and not math.isnan(first)))
        standing.action_settled[i] = not filed and not asked_saddle(before, i) and (
            was.action_settled[i] or (bone not in out and not math.isnan(action)))


def stand(job, board, before):
    """Sets job.standing; returns what is odd."""
    found, standing = odd_alone(job, board), job.standing
    if before:
        moved(job, board, before, found)
    believe_all(job, before, found)
    standing.relief_odd = holds(found.relief) and board.join >= 3
    standing.crowns_odd = holds(found.crowns)
    standing.saddle_odd = holds(found.saddle) and job.saddle.kind in ("slotted", "glued")
    standing.action_order = holds(found.order)
    standing.first_order = standing.action_order and found.order.first
    standing.action_odd = [holds(one) or standing.action_order for one in found.action]
    standing.first_odd = [holds(one) or standing.first_order for one in found.first]
    if before:
        settled(before, standing)
    return found
