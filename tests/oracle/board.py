# SPDX-License-Identifier: MIT
"""The board, computed a second time: places of frets and strings, and the bent neck."""
import math

import numpy as np

import sheet


class Board:
    """Frets, strings across and the crown line; crowns are affine in the bend K.

    Seen in plan, with the square fret for a ruler: fret n of a string is scale 2^(-n/12) from
    where the string would end without setback, whatever lies between. `spine` is the centre line,
    `place` the crowns along it under each string, `x` each string's own from its own nut.
    """

    def __init__(self, job):
        b, self.count = job.board, job.count
        self.frets, self.join = b.frets, b.join
        self.scale = np.array(sheet.over(job.shares, *b.scale))
        middle, left = sum(b.scale) / 2, 2 ** (-np.arange(max(b.frets, 12) + 1) / 12)
        self.spine = middle * (1 - left)
        square = middle * (1 - 2 ** (-b.square / 12))
        self.place = square + np.outer(self.scale, 2 ** (-b.square / 12) - left)
        self.nut_at = self.place[:, 0]
        self.x = self.place - self.nut_at[:, None]
        self.end = self.scale + np.array(job.saddle.setback)
        self.radius, self.fall = b.radius, b.fall
        self.gap, self.z_nut = across_nut(job)
        self.z_saddle = across_saddle(job)
        self.t12 = self.x[:, 12] / self.end
        self.off = np.zeros((job.count, len(self.spine)))
        for string, fret, off in job.readings.off:
            self.off[string, fret] = off

    def span(self, n):
        """Sag on the centre line over fret n for a unit of K."""
        return self.span_at(self.spine[n])

    def span_at(self, x):
        """The parabola, and its tangent over the body."""
        x1, xj = self.spine[1], self.spine[self.join]
        if self.join < 3:
            return 0.0
        return (x - x1) * (xj - x) if x <= xj else -(xj - x1) * (x - xj)

    def sag_at(self, bend, x):
        xj, xn = self.spine[self.join], self.spine[self.frets]
        over = self.fall * (x - xj) / (xn - xj) if x > xj and xn > xj else 0.0
        return bend * self.span_at(x) + over

    def sag(self, bend, n):
        return self.sag_at(bend, self.spine[n])

    def moved(self, change):
        """What a change of the bend lifts each string by at the nut, which the neck carries, and at
        the saddle, which the body carries."""
        x1, xj = self.spine[1], self.spine[self.join]
        return (change * (x1 - self.nut_at) * (xj - self.nut_at),
                change * (xj - x1) * (self.nut_at + self.end - xj))

    def drop(self, x, z):
        if self.radius is None:
            return 0.0
        r = self.radius[0] + (self.radius[1] - self.radius[0]) * x / self.spine[self.frets]
        return r - math.sqrt(r * r - z * z)

    def crown(self, bend, off, i, n):
        """Height of crown n under string i; on the centre line and sound where i is None."""
        if i is None:
            return -self.sag(bend, n)
        z = self.z_nut[i] + (self.z_saddle[i] - self.z_nut[i]) * self.x[i, n] / self.end[i]
        x = self.place[i, n]
        return -self.sag_at(bend, x) - self.drop(x, z) + off[i, n]


def across_nut(job):
    nut, gauges = job.nut, [s.gauge for s in job.strings]
    first = nut.width / 2 - nut.edge[0] - gauges[0] / 2
    last = -nut.width / 2 + nut.edge[1] + gauges[-1] / 2
    widths = gauges if nut.equal_gap else [0.0] * job.count
    centres, gap = spread_out(job, first, last, nut.pair, widths)
    return gap if nut.equal_gap else math.nan, centres


def across_saddle(job):
    half = job.saddle.spread / 2
    if job.count == 1:
        return np.zeros(1)
    return spread_out(job, half, -half, job.saddle.pair, [0.0] * job.count)[0]


def spread_out(job, first, last, pair, widths):
    """Centres and the gap between courses; a course alone has none and stands midway.

    Unknown: the centres and the gap; known: both outer centres and each neighbour's distance.
    """
    n = job.count
    if n == 1:
        return np.array([first]), math.nan
    if job.courses[-1] == 0:
        return (first + last) / 2 + pair * ((n - 1) / 2 - np.arange(n)), math.nan
    rows, known = np.zeros((n + 1, n + 1)), np.zeros(n + 1)
    rows[0, 0], known[0] = 1, first
    rows[1, n - 1], known[1] = 1, last
    for i in range(n - 1):
        joined = job.courses[i] == job.courses[i + 1]
        rows[i + 2, [i, i + 1, n]] = 1, -1, 0 if joined else -1
        known[i + 2] = pair if joined else (widths[i] + widths[i + 1]) / 2
    *centres, gap = np.linalg.solve(rows, known)
    return np.array(centres), gap
