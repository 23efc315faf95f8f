# SPDX-License-Identifier: MIT
"""How far each string can come down at the saddle: first the aim is given up, then the range."""
import math
from types import SimpleNamespace as Plain

import numpy as np

import ring

EDGE = 1e-6
DRIBBLE = 0.05  # less off the bottom at a time is not worth taking the saddle out, mm
DRESSED = 0.8   # more than this is not dressed off one string's top, mm


def to_edge(board, job, bone, edge):
    """How far down an edge of the range of the action is, 0 low, 2 high."""
    return (bone.action - np.array([band[edge] for band in job.targets.action])) / board.t12


def straight_down(job, out):
    """(the room of each string, how much of it leaves the saddle sound); NaN: no limit."""
    limits, bone = job.limits, job.saddle
    if bone.kind == "individual":
        return (np.full(job.count, bone.travel[0]),) * 2
    if bone.kind not in ("slotted", "glued"):
        return (np.full(job.count, math.nan),) * 2
    rise = bone.exit_height + np.array(bone.pin) * math.tan(math.radians(limits.least_break))
    sound = np.where(rise > limits.least_protrusion, rise, limits.least_protrusion)
    return out - limits.least_protrusion, out - sound


def goals(board, job, bone, out, u):
    """Where each string to lower goes; `missing`: how far short of its range one ends. u: how sure each
    string's cut is."""
    room, sound = straight_down(job, out)
    high = to_edge(board, job, bone, 2)
    falls = np.array([v == "lower" for v in bone.verdict])
    missing = np.where(falls & (high > room + EDGE), high - room, 0.0)
    goal = np.where([v == "leave" for v in bone.verdict], 0.0, bone.lower)
    for i in np.flatnonzero(falls & (bone.lower > out + EDGE) & missing.any()):
        goal[i] = max(0.0, out[i])   # no string goes under the bridge's top
    if not missing.any():
        for i in np.flatnonzero(falls):
            if goal[i] > sound[i] + EDGE:
                goal[i] = min(goal[i], max(sound[i], high[i]))
            if goal[i] > room[i] + EDGE:
                goal[i] = room[i]
            goal[i] = max(0.0, goal[i])
    hold, raised = np.full(job.count, math.nan), np.zeros(job.count, bool)
    clean = np.full(job.count, math.nan)
    if not missing.any() and not two_posts(job.saddle):
        state = Plain(bend=bone.after.bend, off=bone.after.off, nut=bone.after.nut, end=bone.before)
        clean = np.array([bone.before[i] - ring.saddle(board, job, state, i)
                          for i in range(job.count)])
        for i in np.flatnonzero(falls & (goal > clean + EDGE)):
            if bone.action[i] - clean[i] * board.t12[i] > job.targets.action[i][2] + EDGE:
                hold[i] = max(0.0, clean[i])
            else:
                goal[i], raised[i] = max(0.0, clean[i]), True
    verdict = ["leave" if falls[i] and not goal[i] > EDGE else v
               for i, v in enumerate(bone.verdict)]
    to = Plain(room=room, goal=goal, missing=missing, stops=missing.any(), verdict=verdict,
               hold=hold, raised=raised, clean=clean)
    if job.saddle.kind == "individual" and not to.stops and {"lower", "raise"} & set(verdict):
        for i, was in enumerate(bone.verdict):
            if was == "leave" and abs(bone.lower[i]) > u[i] + EDGE:
                to.verdict[i], to.goal[i] = along(board, job, bone, to, i, high[i])
    return to


def along(board, job, bone, to, i, high):
    """(verdict, goal) of a string in range that goes to its target while others' screws are turned:
    not down where it was heard to buzz, has no way, or would buzz before it is out of its range."""
    stays, down = ("leave", 0.0), bone.lower[i]
    if down < 0:
        return "raise", down
    if high > to.room[i] + EDGE or any(string == i for string, _ in job.readings.buzz):
        return stays
    goal = np.fmin(down, to.room[i])    # a travel that is not known limits nothing
    if goal > to.clean[i] + EDGE:
        if bone.action[i] - to.clean[i] * board.t12[i] > job.targets.action[i][2] + EDGE:
            return stays
        goal = to.clean[i]
    return ("lower", goal) if goal > 0 else stays


def two_posts(bone):
    return bone.kind == "two-post" or (bone.kind == "floating" and not math.isnan(bone.pitch))


def of_posts(board, job, bone, ends, at):
    """Both posts kept within their travel; `at`: the line from depths at the posts, at a string."""
    kept = np.minimum(ends, job.saddle.travel[0])
    high = to_edge(board, job, bone, 2)
    missing = np.zeros(job.count)
    for i, z in enumerate(board.z_saddle):
        part, whole = at(kept, z), at(ends, z)
        if bone.verdict[i] == "lower" and high[i] > part + EDGE and not high[i] > whole + EDGE:
            missing[i] = high[i] - part
    return (ends if missing.any() else kept), missing


def way(verdict, goal):
    """What of a saddle is worked where nothing rises: its base, its base from the "treble" or the
    "bass" end alone, or its "top"."""
    falls = [v == "lower" for v in verdict]
    count, strings = sum(falls), len(falls)
    if 2 * count >= strings:
        return "base"
    if all(falls[:count]):
        return "treble"
    if all(falls[strings - count:]):
        return "bass"
    few = not falls[0] and not falls[-1] and all(
        g <= DRESSED + EDGE for g, low in zip(goal, falls) if low)
    return "top" if few else "base"


def held_up(to, cut, first):
    """Strings to leave hold the bottom up so much that the few to lower are dressed at the top."""
    goals = [g for g, v in zip(to.goal, to.verdict) if v == "lower"]
    few = 2 * len(goals) < len(to.verdict) and max(goals) <= DRESSED + EDGE
    once, whole = max(first.ends), max(cut.ends)
    return few and once < DRIBBLE and whole - once >= DRIBBLE


def short(board, job, done, missing, moved):
    """Why the saddle has too little room: (cause, what the bow of the neck accounts for)."""
    b, (_, aim, _) = job.board, job.targets.relief
    relief = done.now.bend * board.span(job.readings.relief.at)
    works = b.rod != "none" and b.rod_state == "works"
    worst = int(np.argmax(missing))
    if board.join >= 3 and not works and relief > aim + job.tools.relief + EDGE:
        bow = moved(worst, aim / board.span(job.readings.relief.at))
        if bow > 0:
            return ("relief" if bow >= missing[worst] else "relief-and-angle"), bow
    return ("bridge" if job.saddle.kind == "floating" else "angle"), math.nan


def rod_is_enough(board, job, done, missing, moved):
    """The same relief where a rod that works can take it out, so that nothing else is short."""
    b, (_, aim, _), at = job.board, job.targets.relief, job.readings.relief.at
    works = b.rod != "none" and b.rod_state == "works" and b.join >= 3
    relief, worst = done.now.bend * board.span(at), int(np.argmax(missing))
    if not works or job.standing.relief_odd or not relief > aim + job.tools.relief + EDGE:
        return False
    return moved(worst, aim / board.span(at)) >= missing[worst]
