# SPDX-License-Identifier: MIT
"""Measures the full-size outlines of a part, as SVG or DXF gave them, against the plan as JSON.

The part's own coordinates: the bass end of its seat is the origin, the treble end at +length, or at
-length on a left-handed instrument, y up."""
import numpy
from scipy.optimize import linprog

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


def check_nut(report, page, plan, job, hand):
    nut = plan["nut"]["strings"]
    if any(s["floor"] is None for s in nut):
        return False
    tops = [(hand * s["centre"], s["floor"] + s["depth"]) for s in nut]
    check_outline(report, "nut", layer(page, "outline")[0], hand * job.width, tops)
    slots = [p.points for p in layer(page, "slot")]
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
    return CHECKS[part](report, page, plan, job, hand)


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
