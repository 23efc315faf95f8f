# SPDX-License-Identifier: MIT
"""A zero fret that is not at the height of a nut: whether it is, and what a new one's crown is to be."""
import math
from types import SimpleNamespace as Plain

import numpy as np

import bench
import sense

EDGE = 1e-6


def over_others(board, state, i, height):
    """How far a height over the chord is over the line through the other crowns, at the nut."""
    at = board.nut_at[i]
    return height + state.bend * board.span_at(at) + board.drop(at, board.z_nut[i])


def explained(tools, action=0.0):
    """What the tools may add up to at fret 1; a string that is open brings its action's error."""
    return 2.2 * tools.first + 0.2 * (action + tools.relief)


def gap_by_crown(board, job, done, i):
    """The gap that the crown leaves by how far it was read off the others."""
    off = job.readings.zero_off[i]
    if not job.nut.zero_fret or off == 0:
        return math.nan
    nut = np.array(done.now.nut, float)
    nut[i] = off - over_others(board, done.now, i, 0.0)
    state = Plain(bend=done.now.bend, off=done.now.off, nut=nut, end=done.now.end)
    return sense.on_fret(bench.first_of(board, state, i, job.targets.held))


def gap_now(board, job, done, i):
    gap = bench.first_of(board, done.now, i, job.targets.held)
    if not math.isnan(gap):
        return sense.on_fret(gap)
    if job.readings.first_open[i] == 0:
        return 0.0
    return job.readings.raw_first[i] if job.readings.held == job.targets.held else math.nan


def apart(board, job, done, i):
    """Whether the gap and the crown as read tell of different heights."""
    by = gap_by_crown(board, job, done, i) - gap_now(board, job, done, i)
    return abs(by) > explained(job.tools)


def low(board, job, done):
    """The strings that it is too low under. Level with the others it rings as they do."""
    if not job.nut.zero_fret:
        return []
    r, slots = job.readings, done.slots
    over = [over_others(board, done.frets, i, done.frets.nut[i]) for i in range(job.count)]
    short = [(i, 0) in r.buzz or r.on_fret_1[i] or r.zero_off[i] < -job.limits.wear - EDGE
             or over[i] < -done.u_nut[i] - EDGE for i in range(job.count)]
    return [i for i in range(job.count)
            if not done.apart[i] and not job.standing.first_odd[i]
            and (slots.on_fret[i] or (slots.zero_fret[i] == "raise" and short[i]))]


def crown(board, job, done, caliper):
    """The greatest height that any string asks of a new one; None where it is not too low."""
    if not low(board, job, done):
        return None

    def over(bend, i):
        state = Plain(bend=bend, off=done.frets.off)
        return over_others(board, state, i, bench.nut_aim(board, job, state, i))
    bend = done.frets.bend
    more = bend + done.held.relief_u / board.span(job.readings.relief.at)
    each = [over(bend, i) for i in range(job.count)]
    i = int(np.argmax(each))
    relief = abs(over(more, i) - each[i])
    high = job.board.crown - done.level + each[i]
    return {"over": each[i], "over_u": relief, "height": high,
            "height_u": math.hypot(relief, caliper / math.sqrt(3)) + 0 * high}
