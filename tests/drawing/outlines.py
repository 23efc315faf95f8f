# SPDX-License-Identifier: MIT
"""Measures the full-size outlines of a part, as SVG or DXF gave them, against the plan as JSON.

The part's own coordinates: the bass end of its bottom is the origin, the treble end at +length, y up; a
left-handed drawing is mirrored back first."""
import math
from dataclasses import replace

import numpy
from scipy.optimize import minimize

import shape
from measure import EXACT, near
from part import LEAST_PASS, left_to_file

WORDS = {"finished", "cut-first", "present", "slot", "contact", "centre", "text"}


def layer(page, word):
    return [p for p in page.paths if p.layer == word]


def same(points, wanted):
    return len(points) == len(wanted) and all(near(a[0], b[0]) and near(a[1], b[1])
                                              for a, b in zip(points, wanted))


def check_outline(report, part, path, length, bottom=(0.0, 0.0)):
    """Closed, from the bass end of its bottom to the treble end, with upright ends."""
    start = [(0.0, bottom[0]), (length, bottom[1])]
    if not (path.closed and same(path.points[:2], start)):
        report.wrong(f"{part}: bottom of a closed outline", start, path.points[:2])
    ends = path.points[2][0], path.points[-1][0]
    if not (near(ends[0], length) and near(ends[1], 0)):
        report.wrong(f"{part}: upright ends", (length, 0), ends)


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


def check_top(report, nut, x, path):
    """A top of straight lines only where no arc with its crest on the piece comes as near as it may."""
    wanted = numpy.array([s["floor"] + s["depth"] for s in nut])
    at = numpy.array(x)
    length = path.points[1][0]
    if len(nut) > 3 and straight_off(at, wanted) > 0.02:
        grid = [(k, c) for k in (1 / 100, 1 / 200, 1 / 400, 1 / 800) for c in (10, 20, 30)]
        best = min((minimize(spread, start, (at, wanted), method="Nelder-Mead",
                             options={"xatol": 1e-6, "fatol": 1e-5}) for start in grid),
                   key=lambda found: found.fun)
        on = 0.5 < best.x[1] < length - 0.5 and 30 < 1 / best.x[0] < 2500
        if on and best.fun < MOST_OVER - 0.02:
            report.wrong("nut: an arc would do", 1 / best.x[0], best.fun)


def straight_off(x, y):
    return numpy.abs(y - numpy.interp(x, [x[-1], x[0]], [y[-1], y[0]])).max()


def check_slots(report, nut, path, floors, lean):
    """Each slot has its round floor at its place and height, as wide as it is cut, and walls over it
    only where it is deeper than half its width."""
    slots = sorted((e for e in shape.edges(path) if e.bulge < 0), key=lambda e: -e.a[0])
    if len(slots) != len(nut):
        report.wrong("nut: round floors", len(nut), len(slots))
        return
    for s, floor, edge in zip(nut, floors, slots):
        (x, y), radius = edge.circle()
        wanted = (s["centre"], floor, s["width"] / lean / 2)
        if not all(near(a, b) for a, b in zip((x, y - radius, radius), wanted)):
            report.wrong(f"nut: centre, floor and half width of slot {s['number']}", wanted,
                         (x, y - radius, radius))
        for end in (edge.a, edge.b):
            if end[1] > y + EXACT:
                report.wrong(f"nut: floor of slot {s['number']}", "no more than half a circle", end)


def lands(path):
    """The edges of a nut's top between its slots, from the treble end."""
    top = [e for e in shape.edges(path)[2:-1] if e.bulge >= 0 and not near(e.a[0], e.b[0], 1e-4)]
    return sorted(top, key=lambda e: -e.a[0])


def tops_of(report, nut, path):
    """How high the top is over each string, which has cut it away: on with its arc or its lines."""
    edges = lands(path)
    arcs = [e for e in edges if e.bulge > 0]
    if arcs:
        first = max(arcs, key=lambda e: abs(e.a[0] - e.b[0])).circle()
        for e in arcs:
            (x, y), radius = e.circle()
            if not (len(arcs) == len(edges) and near(radius, first[1], 0.02)
                    and near(radius, round(radius), 0.02)):
                report.wrong("nut: a top that is one arc", first, (x, y, radius))
        (x, y), radius = first
        off = [abs(numpy.hypot(p[0] - x, p[1] - y) - radius) for e in edges for p in (e.a, e.b)]
        if max(off) > 0.002:
            report.wrong("nut: a top that is one arc", radius, max(off))
        return [y + numpy.sqrt(radius ** 2 - (s["centre"] - x) ** 2) for s in nut]
    found = []
    for s in nut:
        right = min((e for e in edges if e.b[0] > s["centre"]), key=lambda e: e.b[0])
        left = max((e for e in edges if e.a[0] < s["centre"]), key=lambda e: e.a[0])
        pair = [e.a[1] + (e.b[1] - e.a[1]) * (s["centre"] - e.a[0]) / (e.b[0] - e.a[0])
                for e in (right, left)]
        if not near(*pair):
            report.wrong(f"nut: a top that is straight from string to string, at {s['number']}", *pair)
        found.append(pair[0])
    return found


def check_nut_first(report, page, plan, nut, lean):
    """The first pass: its floors stand higher by what is left, and its top with them."""
    every = [left_to_file(plan["nut"], s) or 0.0 for s in nut]
    left = [l if l >= LEAST_PASS else 0.0 for l in every]
    found = layer(page, "cut-first")
    if len(found) != (max(left) > 0) and abs(max(left) - LEAST_PASS) > 1e-6:
        report.wrong("nut: outlines of the first pass", max(left) > 0, len(found))
    for path in found:
        check_outline(report, "nut, first pass", path, page.length)
        check_slots(report, nut, path, [s["floor"] + l for s, l in zip(nut, left)], lean)
        tops = tops_of(report, nut, path)
        nut_tops(report, [{**s, "floor": s["floor"] + l} for s, l in zip(nut, left)], tops)


def check_nut_plan(report, page, plan, job, path):
    """The nut from above, and each slot across it at its angle; its fall is in the words."""
    left, bottom, right, top = path.box()
    if not (path.closed and near(right - left, job.width) and near(top - bottom, job.nut_thickness)):
        report.wrong("nut: plan", (job.width, job.nut_thickness), path.box())
    slope = math.tan(math.radians(plan["nut"]["slant"]))
    slots = layer(page, "slot")
    if len(slots) != len(plan["nut"]["strings"]):
        report.wrong("nut: slots from above", len(plan["nut"]["strings"]), len(slots))
    for s, slot in zip(plan["nut"]["strings"], slots):
        half = s["width"] / job.nut[1] / 2
        wanted = [(s["centre"] + side * half + up * slope, bottom + up)
                  for side, up in ((-1, -1), (1, -1), (1, job.nut_thickness + 1), (-1, job.nut_thickness + 1))]
        if not (slot.closed and same(slot.points, wanted)):
            report.wrong(f"nut: slot {s['number']} from above", wanted, slot.points)
    angle = plan["nut"]["fall_angle"]
    told = {by: "headstock up" if angle is None else f"slots angled down {angle + by:.1f}\u00b0" for by in (-1e-9, 1e-9)}
    if not any(fall in text for _, _, text in page.texts for fall in told.values()):   # half way is either
        report.wrong("nut: fall", told, page.texts)


def crowded(nut, length, lean):
    """Slots that run into each other or off the end."""
    edges = [length] + [x for s in nut for x in (s["centre"] + s["width"] / lean / 2,
                                                 s["centre"] - s["width"] / lean / 2)] + [0.0]
    return any(a - b < 0.02 for a, b in zip(edges[::2], edges[1::2]))


def check_nut(report, page, plan, job):
    nut = plan["nut"]["strings"]
    if any(s["floor"] is None for s in nut):
        return False
    closed = layer(page, "finished")
    if not closed and crowded(nut, job.width, job.nut[1]):
        return False
    if len(closed) != (2 if job.nut_thickness == job.nut_thickness else 1):
        report.wrong("nut: face and plan", 2, len(closed))
        return False
    page.length = job.width
    check_outline(report, "nut", closed[0], job.width)
    check_slots(report, nut, closed[0], [s["floor"] for s in nut], job.nut[1])
    nut_tops(report, nut, tops_of(report, nut, closed[0]))
    if not any(e.bulge > 0 for e in shape.edges(closed[0])):
        check_top(report, nut, [s["centre"] for s in nut], closed[0])
    check_nut_first(report, page, plan, nut, job.nut[1])
    if len(closed) > 1:
        check_nut_plan(report, page, plan, job, closed[1])
    return True


def peaks_behind(plan, job):
    """Where each string leaves the finished top: how far behind its middle along the string, and the
    same along the saddle's own two ways."""
    # The string runs straight to the tail; the saddle by its unit vector, and behind it square to it.
    tail, treble = job.saddle
    offs = [(s["peak"] - job.thickness / 2) / treble for s in plan["saddle"]["strings"]]
    return [(off, off * tail, off * treble) for off in offs]


def check_contacts(report, page, plan, job):
    """A cross a string, string 1 first: where across, and how far behind the saddle's middle."""
    arms = [p.points for p in layer(page, "contact")]
    plans = [p for p in layer(page, "finished") if p.box()[3] < 0]
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
        wanted = job.length / 2 + string["saddle_z"] + aside
        if not (near(x, wanted) and near(x3, x) and near(x4, x) and near(y1, y) and near(y2, y)):
            report.wrong(f"saddle: cross {i + 1}", wanted, arms[2 * i:2 * i + 2])
        off = (top + bottom) / 2 - y
        if not near(off, behind):
            report.wrong(f"saddle: cross {i + 1} behind the middle", behind, off)


def check_state(report, word, path, job, bottom, tops):
    """One state of the saddle: its bottom, and its top through the point of each string."""
    check_outline(report, f"saddle, {word}", path, job.length, bottom)
    for x, height in tops:
        got = shape.height_at(path, x)
        if got is None or not near(got, height):
            report.wrong(f"saddle, {word}: top at {x:.2f}", height, got)
    arcs = [e for e in shape.edges(path) if e.bulge]
    if arcs and not (len(arcs) == 1 and near(arcs[0].circle()[1], round(arcs[0].circle()[1]), 0.02)):
        report.wrong(f"saddle, {word}: a top that is one arc of whole mm", 1, arcs)


def states_of(plan, job):
    """What the saddle is to look like when: word, bottom at bass and treble, heights; and whether a
    state is told from the one before it only by as much as rounding decides."""
    saddle = plan["saddle"]
    strings, cut = saddle["strings"], saddle["bottom_cut"]
    anew = saddle["remedy"] == "replace"
    first = cut and cut["first_pass"]
    ends = {"present": (0.0, 0.0), "finished": (cut["bass"], cut["treble"]) if cut else (0.0, 0.0),
            "cut-first": (first["bass"], first["treble"]) if cut else (0.0, 0.0)}
    tops = {"present": [w["present"] for w in strings],
            "cut-first": [plus(w["height"], w["leave"]) if anew else minus(w["present"], w["dress_first"])
                          for w in strings],
            "finished": [w["height"] if anew else minus(w["present"], w["dress"]) for w in strings]}
    dress = [w["dress"] or 0.0 for w in strings]
    left = [b - a for a, b in zip(ends["cut-first"], ends["finished"])]
    left += [(w["dress"] or 0.0) - (w["dress_first"] or 0.0) for w in strings]
    if anew:   # nothing comes off yet, but a new saddle stands a little high at first
        left = [w["leave"] or 0.0 for w in strings]
    there = {"finished": True, "present": not anew and bool(cut or max(dress) >= LEAST_PASS),
             "cut-first": max(left) >= LEAST_PASS}
    unsure = {"finished": False, "present": near(max(dress), LEAST_PASS, 1e-6),
              "cut-first": near(max(left), LEAST_PASS, 1e-6)}
    taken = [*ends["cut-first"], *((w["dress_first"] or 0.0) for w in strings)]
    if not anew and max(taken) < LEAST_PASS:   # it would be the saddle as it is
        there["cut-first"], unsure["cut-first"] = False, near(max(taken), LEAST_PASS, 1e-6)
    return {word: (there[word], unsure[word], ends[word], tops[word]) for word in ends}


def falls_below(finished, x, length):
    """Whether a top that goes straight on beyond its outer strings ends below the bottom."""
    _, _, bottoms, heights = finished
    points = sorted((at, top) for at, top in zip(x, heights) if top is not None)
    if len(points) < 2:
        return False
    ends = shape.past(points, 0.0), shape.past(points[::-1], length)
    return any(end <= bottom for end, bottom in zip(ends, bottoms))


def minus(a, b):
    return None if None in (a, b) else a - b


def plus(a, b):
    return None if None in (a, b) else a + b


def check_saddle(report, page, plan, job):
    if job.kind not in ("slotted", "glued", "feet"):
        if page.paths:
            report.wrong("saddle on screws", "no lines", len(page.paths))
        return False
    states = states_of(plan, job)
    x = [job.length / 2 + s["saddle_z"] for s in plan["strings"]]
    known = [top is not None for top in states["finished"][3]]
    if not page.paths and (not any(known) or job.thickness != job.thickness
                           or falls_below(states["finished"], x, job.length)):
        return False
    for word, (there, unsure, ends, heights) in states.items():
        found = [p for p in layer(page, word) if p.box()[3] > 0]
        if len(found) != there and not unsure:
            report.wrong(f"saddle: outlines {word}", there, len(found))
        for path in found:
            check_state(report, word, path, job, ends,
                        [(at, top) for at, top in zip(x, heights) if top is not None])
    check_contacts(report, page, plan, job)
    return True


CHECKS = {"nut": check_nut, "saddle": check_saddle}


def check(report, page, part, plan, job):
    """Whether there was something to measure."""
    strange = {p.layer for p in page.paths} - WORDS
    if strange:
        report.wrong("layers", WORDS, strange)
    shape.check(report, part, page)
    if plan[part]["remedy"] == "wait":
        if page.paths or not any("WAIT" in text for _, _, text in page.texts):
            report.wrong(f"{part}: withheld", "WAIT and no line", (len(page.paths), page.texts))
        return False
    length = job.width if part == "nut" else job.length
    if page.paths:
        check_layer_told(report, part, page)
    return CHECKS[part](report, from_the_bass_end(report, page, length, job.left_handed), plan, job)


def check_layer_told(report, part, page):
    """The words name the layer to cut, which is there: the first pass, where there is one."""
    cut = "cut-first" if layer(page, "cut-first") else "finished"
    told = [text for _, _, text in page.texts if f"the layer {cut}" in text]
    if len(told) != 1:
        report.wrong(f"{part}: the layer to cut", cut, page.texts)


def from_the_bass_end(report, page, length, left_handed):
    """The part lies in positive x for either hand; mirrored back, its bass end is at 0."""
    boxes = [p.box() for word in ("finished", "cut-first", "present") for p in layer(page, word)]
    if any(not (near(box[0], 0) and near(box[2], length)) for box in boxes):
        report.wrong("the part from 0 to its length", length, boxes)
    if not left_handed:
        return page
    moved = [replace(p, points=[(length - x, y) for x, y in p.points],
                     bulges=tuple(-b for b in p.bulges)) for p in page.paths]
    return replace(page, paths=moved)


def check_alike(report, svg, dxf):
    """Both formats hold the same lines in the same order, and say the same."""
    for a, b in zip(svg.paths, dxf.paths):
        alike = same(a.points, b.points) and all(
            near(p.bulge * math.dist(p.a, p.b) / 2, q.bulge * math.dist(q.a, q.b) / 2, 0.002)
            for p, q in zip(shape.edges(a), shape.edges(b)))
        if a.layer != b.layer or a.closed != b.closed or not alike:
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
