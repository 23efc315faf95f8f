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


def seat_by_edge(board, job, now):
    gap = np.array(job.readings.bridge_top)
    pair = edge_pair(board, job, now.bend)
    if pair is None:
        return np.full(job.count, math.nan)
    (xa, ya), (xb, yb) = pair
    edge = ya + (yb - ya) * ((board.nut_at + board.end)[[0, -1]] - xa) / (xb - xa)
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
