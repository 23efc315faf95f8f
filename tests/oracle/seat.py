# SPDX-License-Identifier: MIT
"""The height of the saddle's bottom, by caliper and by a straightedge on the crowns."""
import math

import numpy as np


def edge_pair(board, job, bend):
    """The two sound crowns a straightedge lies on, run on toward the saddle."""
    points = [(board.spine[n], -board.sag(bend, n)) for n in range(1, board.frets + 1)]
    hull = []
    for p in points:
        while len(hull) > 1 and turn(hull[-2], hull[-1], p) >= 0:
            hull.pop()
        hull.append(p)
    middle = min((board.spine[1] + board.nut_at[0] + board.end[0]) / 2, board.spine[board.frets])
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


def top_by_edge(board, job, now):
    """The bridge's top under each string."""
    gap = np.array(job.readings.bridge_top)
    pair = edge_pair(board, job, now.bend)
    if pair is None:
        return np.full(job.count, math.nan)
    (xa, ya), (xb, yb) = pair
    edge = ya + (yb - ya) * ((board.nut_at + board.end)[[0, -1]] - xa) / (xb - xa)
    return linear(board.z_saddle, *(edge - gap))


def seat_by_edge(board, job, now):
    return top_by_edge(board, job, now) - job.saddle.slot_depth + job.saddle.pickup


def linear(z, treble, bass):
    if len(z) == 1:
        return np.array([treble])
    return treble + (bass - treble) * (z[0] - z) / (z[0] - z[-1])


def standing(board, job, now):
    """How far the saddle stands over the bridge's top under each string, three ways, each with its
    standard uncertainty; NaN where not read."""
    third, tools, bone = 1 / math.sqrt(3), job.tools, job.saddle
    depth = bone.slot_depth - bone.pickup
    ruled = np.array(job.readings.stands_out)
    over = now.end - linear(board.z_saddle, now.end[0] - ruled[0], now.end[-1] - ruled[-1])
    return [(now.end - seat_by_caliper(board, job, now) - depth,
             np.full(job.count, math.sqrt(2) * tools.caliper * third)),
            (now.end - top_by_edge(board, job, now),
             np.hypot(tools.caliper, tools.action / board.t12) * third),
            (np.where(np.isnan(ruled), over, ruled), np.full(job.count, tools.ruler * third))]


def disagree(ways):
    """Whether two ways differ at a string by more than 0.3 and than their tools explain."""
    for k, (one, u) in enumerate(ways):
        for other, v in ways[k + 1:]:
            if (np.abs(one - other) > np.maximum(0.3, 2 * np.hypot(u, v)) + 1e-6).any():
                return True
    return False


def present_heights(board, job, now):
    """(from the saddle's seat to the string, how far it stands out), as read; nothing where two
    readings disagree.

    The caliper gives a seat only with both outer strings' heights; the bridge's top needs none.
    """
    ways, nothing = standing(board, job, now), np.full(job.count, math.nan)
    if disagree(ways):
        return nothing, nothing, True
    caliper = now.end - seat_by_caliper(board, job, now)
    present = now.end - seat_by_edge(board, job, now) if np.isnan(caliper).all() else caliper
    out = nothing
    for way, _ in ways:
        out = np.where(np.isnan(out), way, out)
    return present, out, False
