# SPDX-License-Identifier: MIT
"""Outlines of straight lines and arcs, whatever file they came from: whether a machine can follow them."""
import math
from dataclasses import dataclass

import numpy

CUT = ("finished", "cut-first", "present", "slot")  # the layers a machine follows
SAME = 1e-3  # mm
COURSE = 4.5  # mm: strings nearer to each other are a course


def past(points, x):
    """How high a top is that goes straight on past the first of its points: it comes from the next course,
    and is level where there is none."""
    (at, top), *rest = points
    away, other = next((one for one in rest if abs(one[0] - at) >= COURSE), (at + 1.0, top))
    return top + (other - top) * (x - at) / (away - at)


@dataclass
class Edge:
    """From a to b; bulge is the tangent of a quarter of its arc's angle, + to the left; 0 if straight."""
    a: tuple
    b: tuple
    bulge: float

    def circle(self):
        """Centre and radius, from the angle between chord and tangent."""
        chord = math.dist(self.a, self.b)
        turn = 4 * math.atan(self.bulge)
        radius = chord / 2 / abs(math.sin(turn / 2))
        toward = math.atan2(self.b[1] - self.a[1], self.b[0] - self.a[0]) - turn / 2
        side = math.copysign(math.pi / 2, turn)
        return ((self.a[0] + radius * math.cos(toward + side),
                 self.a[1] + radius * math.sin(toward + side)), radius)

    def points(self, pieces):
        """Its start and points on the way, without its end."""
        if not self.bulge:
            return [self.a]
        (x, y), radius = self.circle()
        start, turn = math.atan2(self.a[1] - y, self.a[0] - x), 4 * math.atan(self.bulge)
        return [(x + radius * math.cos(start + turn * k / pieces),
                 y + radius * math.sin(start + turn * k / pieces)) for k in range(pieces)]


def edges(path):
    ends = path.points[1:] + path.points[:1] if path.closed else path.points[1:]
    bulges = path.bulges or (0.0,) * len(path.points)
    return [Edge(a, b, c) for a, b, c in zip(path.points, ends, bulges)]


def polygon(path, pieces=64):
    return [p for e in edges(path) for p in e.points(pieces)]


def height_at(path, x):
    """The highest place of an outline at x."""
    found = []
    for e in edges(path):
        (x1, y1), (x2, y2) = e.a, e.b
        if not min(x1, x2) - 1e-9 <= x <= max(x1, x2) + 1e-9 or x1 == x2:
            continue
        if e.bulge:
            (cx, cy), radius = e.circle()
            found.append(cy + math.copysign(math.sqrt(radius ** 2 - (x - cx) ** 2), e.bulge))
        else:
            found.append(y1 + (y2 - y1) * (x - x1) / (x2 - x1))
    return max(found, default=None)


def area(points):
    x, y = numpy.array(points).T
    return 0.5 * float(numpy.dot(x, numpy.roll(y, -1)) - numpy.dot(y, numpy.roll(x, -1)))


def crosses_itself(points):
    """Whether two edges of a polygon that are not neighbours cross or touch."""
    p = numpy.array(points)
    q = numpy.roll(p, -1, axis=0)
    def side(a, b, c):
        return ((b[..., 0] - a[..., 0]) * (c[..., 1] - a[..., 1])
                - (b[..., 1] - a[..., 1]) * (c[..., 0] - a[..., 0]))
    a, b, c, d = p[:, None], q[:, None], p[None, :], q[None, :]
    meet = (side(a, b, c) * side(a, b, d) <= 0) & (side(c, d, a) * side(c, d, b) <= 0)
    n = len(p)
    for k in range(n):
        meet[k, [k, (k + 1) % n, (k - 1) % n]] = False
    box = ((numpy.maximum(a, b) >= numpy.minimum(c, d)).all(-1)
           & (numpy.maximum(c, d) >= numpy.minimum(a, b)).all(-1))
    return bool((meet & box).any())


def overlap(e, f):
    """Whether two edges run along each other."""
    if bool(e.bulge) != bool(f.bulge):
        return False
    if e.bulge:
        (c, r), (d, s) = e.circle(), f.circle()
        if math.dist(c, d) > SAME or abs(r - s) > SAME:
            return False
        middle = f.points(2)[1]
        return any(math.dist(p, middle) < SAME for p in e.points(2)[1:])
    length = math.dist(e.a, e.b)
    if length < SAME:
        return False
    ux, uy = (e.b[0] - e.a[0]) / length, (e.b[1] - e.a[1]) / length
    off = [abs(ux * (y - e.a[1]) - uy * (x - e.a[0])) for x, y in (f.a, f.b)]
    along = sorted(ux * (x - e.a[0]) + uy * (y - e.a[1]) for x, y in (f.a, f.b))
    return max(off) < SAME and min(along[1], length) - max(along[0], 0) > SAME


def check(report, part, page):
    """On the layers that are cut: every outline closed and plain, no way gone twice on one layer, no
    outline drawn twice on two."""
    for word in CUT:
        paths = [p for p in page.paths if p.layer == word]
        for path in paths:
            if not path.closed:
                report.wrong(f"{part}: layer {word}", "closed", path.points[:4])
            if min(math.dist(e.a, e.b) for e in edges(path)) < 1e-5:
                report.wrong(f"{part}: layer {word}", "no edge of no length", path.points)
            if crosses_itself(polygon(path, 6)):
                report.wrong(f"{part}: layer {word}", "a line that does not meet itself", path.points[:4])
        ways = [e for path in paths for e in edges(path)]
        twice = [(e, f) for k, e in enumerate(ways) for f in ways[:k] if overlap(e, f)]
        if twice:
            report.wrong(f"{part}: layer {word}", "no line twice", twice[0])
    closed = [p for p in page.paths if p.layer in CUT]
    for k, p in enumerate(closed):
        for q in closed[:k]:
            if len(p.points) == len(q.points) and max(
                    math.dist(a, b) for a, b in zip(p.points, q.points)) < SAME:
                report.wrong(f"{part}", f"not the same on {p.layer} and {q.layer}", p.points[:4])
