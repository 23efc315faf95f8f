# SPDX-License-Identifier: MIT
"""Measures the full-size outlines of a part, as SVG or DXF gave them, against the plan as JSON.

The part's own coordinates: the bass end of its seat is the origin, the treble end at +length, or at
-length on a left-handed instrument, y up."""
from dataclasses import replace

import numpy
from scipy.optimize import linprog, minimize

from measure import EXACT, near

WORDS = {"outline", "slot", "contact", "cut", "cut-first", "present", "hidden", "centre",
         "dimension", "text", "frame"}


def layer(page, word):
    return [p for p in page.paths if p.layer == word]


def same(points, wanted):
    return len(points) == len(wanted) and all(near(a[0], b[0]) and near(a[1], b[1])
                                              for a, b in zip(points, wanted))


def through(points, x):
    """Height of a line of points at x."""
    for (x1, y1), (x2, y2) in zip(points, points[1:]):
        if min(x1, x2) <= x <= max(x1, x2) and x1 != x2:
            return y1 + (y2 - y1) * (x - x1) / (x2 - x1)
    return None


def check_outline(report, part, path, length, tops):
    """Closed, on its seat from the origin, its top through the point of each string."""
    if not (path.closed and same(path.points[:2], [(0.0, 0.0), (length, 0.0)])):
        report.wrong(f"{part}: seat of a closed outline", (0, length), path.points[:2])
    ends = path.points[2][0], path.points[-1][0]
    if not (near(ends[0], length) and near(ends[1], 0)):
        report.wrong(f"{part}: upright ends", (length, 0), ends)
    for x, height in tops:
        got = through(path.points[2:], x)
        if got is None or not near(got, height):
            report.wrong(f"{part}: top at {x:.2f}", height, got)


MOST_OVER = 0.05  # mm: how much deeper than wanted a slot may be, so that the top is an arc


def nut_tops(report, nut, drawn):
    """Where the slots end at the top: as deep as wanted, or so little more that the top is an arc."""
    tops = []
    for s, top in zip(nut, drawn):
        wanted = s["floor"] + s["depth"]
        if not -EXACT <= top - wanted <= MOST_OVER + EXACT:
            report.wrong(f"nut: depth of slot {s['number']}", s["depth"], top - s["floor"])
        tops.append(top)
    return tops


def spread(curve, x, y):
    """How far wanted heights lie from an arc of this curvature and crest, from the least to the most."""
    radius = 1.0 / curve[0] if curve[0] > 1e-4 else 1e4
    inside = radius ** 2 - (x - curve[1]) ** 2
    if numpy.any(inside <= 0):
        return 1e3
    return numpy.ptp(y - numpy.sqrt(inside))


def check_top(report, nut, x, line):
    """The top is straight from string to string, or one arc; straight only where no arc with its crest
    on the piece comes as near as it may."""
    xs, ys = numpy.array([p[0] for p in line]), numpy.array([p[1] for p in line])
    if len(nut) < 3 or len(line) <= len(nut) + 2:
        wanted = numpy.array([s["floor"] + s["depth"] for s in nut])
        at = numpy.array(x)
        if len(nut) > 3 and straight_off(at, wanted) > 0.02:
            grid = [(k, c) for k in (1 / 100, 1 / 200, 1 / 400, 1 / 800) for c in (10, 20, 30)]
            best = min((minimize(spread, start, (at, wanted), method="Nelder-Mead",
                                 options={"xatol": 1e-6, "fatol": 1e-5}) for start in grid),
                       key=lambda found: found.fun)
            on = 0.5 < best.x[1] < max(xs) - 0.5 and 30 < 1 / best.x[0] < 2500
            if on and best.fun < MOST_OVER - 0.02:
                report.wrong("nut: an arc would do", 1 / best.x[0], best.fun)
        return
    # The circle through three of its points holds all the others, and its radius is whole.
    a, b, c = line[0], line[len(line) // 2], line[-1]
    m = numpy.array([[2 * (b[0] - a[0]), 2 * (b[1] - a[1])], [2 * (c[0] - a[0]), 2 * (c[1] - a[1])]])
    square = [p[0] ** 2 + p[1] ** 2 for p in (a, b, c)]
    centre = numpy.linalg.solve(m, [square[1] - square[0], square[2] - square[0]])
    radius = numpy.hypot(a[0] - centre[0], a[1] - centre[1])
    off = numpy.hypot(xs - centre[0], ys - centre[1]) - radius
    if numpy.abs(off).max() > 0.002 or abs(radius - round(radius)) > 0.02 * radius / 20:
        report.wrong("nut: a top that is one arc", radius, numpy.abs(off).max())


def straight_off(x, y):
    return numpy.abs(y - numpy.interp(x, [x[-1], x[0]], [y[-1], y[0]])).max()


def check_nut(report, page, plan, job, hand):
    nut = plan["nut"]["strings"]
    if any(s["floor"] is None for s in nut):
        return False
    slots = [p.points for p in layer(page, "slot")]
    tops = [(hand * s["centre"], top) for s, top in zip(nut, nut_tops(report, nut, [
        p[-1][1] for p in slots]))]
    outline = layer(page, "outline")[0]
    check_outline(report, "nut", outline, hand * job.width, tops)
    check_top(report, nut, [hand * x for x, _ in tops], [(hand * x, y) for x, y in outline.points[2:]])
    wanted = [[(x, s["floor"]), (x, top)] for s, (x, top) in zip(nut, tops)]
    if len(slots) != len(wanted) or not all(same(a, b) for a, b in zip(slots, wanted)):
        report.wrong("nut: slots, string 1 first, from floor to top", wanted, slots)
    return True


def check_cuts(report, page, cut, length):
    """Both lines from end to end, over the seat as it is."""
    for word, ends in (("cut", cut), ("cut-first", cut and cut["first_pass"])):
        lines = [sorted(p.points, key=lambda at: abs(at[0])) for p in layer(page, word)]
        wanted = [[(0.0, ends["bass"]), (length, ends["treble"])]] if cut else []
        if len(lines) != len(wanted) or not all(same(a, b) for a, b in zip(lines, wanted)):
            report.wrong(f"saddle: {word}", wanted, lines)


def peaks_behind(plan, job):
    """Where each string leaves the finished top: how far behind its middle along the string, and the
    same along the saddle's own two ways."""
    # The string runs straight to the tail; the saddle by its unit vector, and behind it square to it.
    tail, treble = job.saddle
    offs = [(s["peak"] - job.thickness / 2) / treble for s in plan["saddle"]["strings"]]
    return [(off, off * tail, off * treble) for off in offs]


def check_contacts(report, page, plan, job, hand):
    """A cross a string, string 1 first: where across, and how far behind the saddle's middle."""
    arms = [p.points for p in layer(page, "contact")]
    plans = [p for p in layer(page, "outline") if len(p.points) == 4 and p.box()[3] < 0]
    if len(arms) != 2 * len(plan["strings"]) or len(plans) != 1:
        report.wrong("saddle: two arms a string, over a plan", len(plan["strings"]),
                     (len(arms), len(plans)))
        return
    left, bottom, right, top = plans[0].box()
    if not (near(right - left, job.length) and near(top - bottom, job.thickness)):
        report.wrong("saddle: plan", (job.length, job.thickness), (right - left, top - bottom))
    for i, (string, place) in enumerate(zip(plan["strings"], peaks_behind(plan, job))):
        _, aside, behind = place
        (x1, y1), (x2, y2) = arms[2 * i]
        (x3, y3), (x4, y4) = arms[2 * i + 1]
        x, y = (x1 + x2) / 2, (y3 + y4) / 2
        wanted = hand * (job.length / 2 + string["saddle_z"] + aside)
        if not (near(x, wanted) and near(x3, x) and near(x4, x) and near(y1, y) and near(y2, y)):
            report.wrong(f"saddle: cross {i + 1}", wanted, arms[2 * i:2 * i + 2])
        off = (top + bottom) / 2 - y
        if not near(off, behind):
            report.wrong(f"saddle: cross {i + 1} behind the middle", behind, off)


def check_saddle(report, page, plan, job, hand):
    if job.kind not in ("slotted", "glued"):
        if page.paths:
            report.wrong("saddle on screws", "no lines", len(page.paths))
        return False
    length, strings = hand * job.length, plan["saddle"]["strings"]
    anew = plan["saddle"]["remedy"] == "replace"
    tops = [(hand * (job.length / 2 + s["saddle_z"]),
             w["height"] if anew else
             None if None in (w["present"], w["dress"]) else w["present"] - w["dress"])
            for s, w in zip(plan["strings"], strings)]
    closed = [p for p in layer(page, "outline") if p.box()[3] > 0]
    if all(top is not None for _, top in tops):
        check_outline(report, "saddle", closed[0], length, tops)
    elif all(top is None for _, top in tops) and closed:
        report.wrong("saddle of no known height", "no outline", len(closed))
    check_cuts(report, page, plan["saddle"]["bottom_cut"], length)
    if job.kind != "feet":
        check_contacts(report, page, plan, job, hand)
    return True


CHECKS = {"nut": check_nut, "saddle": check_saddle}


def check(report, page, part, plan, job):
    """Whether there was something to measure."""
    hand = -1 if job.left_handed else 1
    strange = {p.layer for p in page.paths} - WORDS
    if strange:
        report.wrong("layers", WORDS, strange)
    if plan[part]["remedy"] == "wait":
        if page.paths or not any("WAIT" in text for _, _, text in page.texts):
            report.wrong(f"{part}: withheld", "WAIT and no line", (len(page.paths), page.texts))
        return False
    if job.left_handed:
        page = from_the_bass_end(report, page, job.width if part == "nut" else job.length)
    return CHECKS[part](report, page, plan, job, hand)


def from_the_bass_end(report, page, length):
    """A mirrored drawing with its bass end, which is at the right, at 0. A part lies in positive x for
    either hand."""
    if any(p.box()[0] < -EXACT or p.box()[2] > length + EXACT for p in layer(page, "outline")):
        report.wrong("left hand: the part from 0 to its length", length,
                     [p.box() for p in layer(page, "outline")])
    moved = [replace(p, points=[(x - length, y) for x, y in p.points]) for p in page.paths]
    return replace(page, paths=moved)


def check_alike(report, svg, dxf):
    """Both formats hold the same lines in the same order, and say the same."""
    for a, b in zip(svg.paths, dxf.paths):
        if a.layer != b.layer or a.closed != b.closed or not same(a.points, b.points):
            report.wrong("SVG and DXF", a, b)
    if len(svg.paths) != len(dxf.paths):
        report.wrong("lines in SVG and DXF", len(svg.paths), len(dxf.paths))
    alike = [near(a[0], b[0]) and near(a[1], b[1]) and a[2] == b[2]
             for a, b in zip(svg.texts, dxf.texts)]
    if len(svg.texts) != len(dxf.texts) or not all(alike):
        report.wrong("texts in SVG and DXF", svg.texts, dxf.texts)


def check_both(report, both, nut, saddle):
    """The whole job is the nut as it is and the saddle as it is, straight below."""
    if len(both.paths) != len(nut.paths) + len(saddle.paths):
        report.wrong("all: lines", len(nut.paths) + len(saddle.paths), len(both.paths))
        return
    drops = []
    for word in sorted(WORDS):
        pair = layer(both, word)
        for at, alone in enumerate(layer(nut, word)):
            if not same(pair[at].points, alone.points):
                report.wrong(f"all: {word} of the nut", alone.points, pair[at].points)
        below = pair[len(layer(nut, word)):]
        for alone, it in zip(layer(saddle, word), below):
            drop = alone.points[0][1] - it.points[0][1]
            if not same([(x, y - drop) for x, y in alone.points], it.points):
                report.wrong(f"all: {word} of the saddle", alone.points, it.points)
            drops.append(drop)
    if drops and not (near(min(drops), max(drops)) and (min(drops) > 0) == bool(nut.texts)):
        report.wrong("all: the saddle", "straight below", drops)
    if both.height < nut.height + saddle.height - 10 - EXACT:
        report.wrong("all: height", nut.height + saddle.height, both.height)
