# SPDX-License-Identifier: MIT
"""The board, computed a second time: places of frets and strings, and the bent neck."""
import functools
import math

import numpy as np


class Board:
    """Frets, strings across and the crown line; crowns are affine in the bend K.

    Drawn in plan, from the square fret: each outer string has its own frets, 2^(-n/12) of its scale
    from where it would end without setback; a fret is the straight line through a pair of them, and
    an inner string has it where the two lines cross. `spine` is the centre line, `place` the crowns
    along it under each string, `x` each string's own from its own nut.
    """

    def __init__(self, job):
        b, self.count = job.board, job.count
        self.frets, self.join = b.frets, b.join
        self.gap, self.z_nut = across_nut(job)
        self.z_saddle = across_saddle(job)
        self.spine, self.scale, self.place, self.x, self.end = plan(
            tuple(b.scale), b.square, max(b.frets, 12), tuple(job.saddle.setback),
            tuple(self.z_nut), tuple(self.z_saddle))
        self.nut_at = self.place[:, 0]
        self.radius, self.fall = b.radius, b.fall
        self.bow, self.under = self.crowns()
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

    def crowns(self):
        """Of each string's crowns: how far a unit of bend lowers one, and how far it lies under the
        middle of a straight neck. Asked for so often that plain lists are worth it."""
        across = self.z_saddle - self.z_nut
        z = self.z_nut[:, None] + across[:, None] * self.x / self.end[:, None]
        bow = [[self.span_at(x) for x in row] for row in self.place]
        under = [[self.sag_at(0.0, x) + self.drop(x, off) for x, off in zip(row, offs)]
                 for row, offs in zip(self.place.tolist(), z.tolist())]
        return bow, under

    def crown(self, bend, off, i, n):
        """Height of crown n under string i; on the centre line and sound where i is None."""
        if i is None:
            return -self.sag(bend, n)
        return -bend * self.bow[i][n] - self.under[i][n] + off[i, n]


@functools.lru_cache(8)   # all of a job's visits are of one instrument
def plan(scale, square, most, setback, z_nut, z_saddle):
    """Spine, scale, place, x and end."""
    left, setback, count = 2.0 ** (-np.arange(most + 1) / 12), np.array(setback), len(z_nut)
    if count == 1:   # one string has no other to be fanned from
        spine = scale[0] * (1 - left)
        return spine, np.array(scale[:1]), spine[None, :], spine[None, :], scale[0] + setback
    ends = [(0, scale[0]), (-1, scale[1])]
    sides = [drawn(length * (2 ** (-square / 12) - 1), length + setback[i], z_nut[i], z_saddle[i])
             for i, length in ends]

    def across(rest):
        """The line through the outer strings with this share of their scales still to go."""
        return cross(*(on(side, length * (2 ** (-square / 12) - rest))
                       for side, (_, length) in zip(sides, ends)))
    nut, last, frets = across(1.0), across(0.0), [across(rest) for rest in left]
    spine = np.array([meet(fret, level(0.0)) for fret in frets])
    start = np.array([meet(nut, level(z)) for z in z_nut])
    length = np.full(count, sum(scale) / 2)
    for _ in range(40):   # each string is drawn to where the last drawing says that it ends
        lines = [drawn(*row) for row in zip(start, length + setback, z_nut, z_saddle)]
        length = np.array([meet(last, line) for line in lines]) - start
    place = np.array([[meet(fret, line) for fret in frets] for line in lines]) - spine[0]
    return spine - spine[0], length, place, place - place[:, :1], length + setback


def cross(one, other):
    """Of two points their line, and of two lines their point; in homogeneous coordinates."""
    a, b, c = one
    u, v, w = other
    return b * w - c * v, c * u - a * w, a * v - b * u


def drawn(start, length, z_nut, z_saddle):
    """A string in plan: the line through its two ends."""
    return cross((start, z_nut, 1.0), (start + length, z_saddle, 1.0))


def level(z):
    """A line along the board."""
    return 0.0, 1.0, -z


def on(line, x):
    """The point of a line at a place along the board."""
    return cross(line, (1.0, 0.0, -x))


def meet(one, other):
    """How far along the board two lines cross."""
    point = cross(one, other)
    return point[0] / point[2]


def kept_centres(job):
    """Slots kept where they were, told along a nut that may lean: by how much follows from how far
    apart its ends then are across the board, so it is drawn until it stays."""
    told, b = np.array(job.nut.centres), job.board
    apart = (b.scale[0] - b.scale[1]) * (2 ** (-b.square / 12) - 1)
    across = told[0] - told[-1]
    for _ in range(400):
        across = (told[0] - told[-1]) * across / math.hypot(across, apart) if across else 0.0
    longer = math.hypot(across, apart) / across if across else 1.0
    return told / longer - job.nut.width / 2


def across_nut(job):
    nut, gauges = job.nut, [s.gauge for s in job.strings]
    if not math.isnan(nut.centres[0]):
        return math.nan, kept_centres(job)
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
