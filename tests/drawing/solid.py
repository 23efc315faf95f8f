# SPDX-License-Identifier: MIT
"""Measures a finished part as a solid back from its STL: whether it is closed, by Debian's admesh, which
is a reader that is not ours, and by the edges of its triangles; its volume, floors and peaks."""
import math
import re
import subprocess

import numpy

import outlines
import shape
from measure import near

TRIANGLE = numpy.dtype([("normal", "<f4", 3), ("corner", "<f4", (3, 3)), ("attribute", "<u2")])
CLOSE = 0.002  # mm: a chord and its arc
SLICES = 9


def admesh(report, what, path):
    """Its volume, by a reader that is told to join nothing and mend nothing."""
    told = subprocess.run(["admesh", "-e", "-n", "-u", path], capture_output=True, text=True,
                          check=True).stdout
    for name in ("Total disconnected facets", "Degenerate facets", "Backwards edges", "Facets reversed",
                 "Edges fixed", "Facets removed", "Facets added"):
        found = re.search(name + r"\s*:\s*(-?\d+)(?:\s+(-?\d+)\n)?", told)
        if found is None or any(int(n) for n in found.groups() if n):
            report.wrong(f"{what}: {name}, by admesh", 0, found and found.groups())
    return float(re.search(r"Volume\s*:\s*(\S+)", told).group(1))


def read(report, what, path):
    """Its triangles; every edge is the edge of two, once in each direction."""
    with open(path, "rb") as file:
        raw = file.read()
    count = int.from_bytes(raw[80:84], "little")
    if raw[:5] == b"solid" or len(raw) != 84 + 50 * count:
        report.wrong(f"{what}: binary file", 84 + 50 * count, (len(raw), raw[:20]))
    triangles = numpy.frombuffer(raw[84:], TRIANGLE, count)["corner"].astype(float)
    keys = [[tuple(corner) for corner in triangle] for triangle in triangles]
    edges = {}
    for a, b, c in keys:
        for edge in ((a, b), (b, c), (c, a)):
            edges[edge] = edges.get(edge, 0) + 1
    open_edges = [e for e, n in edges.items() if n != 1 or (e[1], e[0]) not in edges]
    if open_edges:
        report.wrong(f"{what}: every edge in two triangles", 0, open_edges[:2])
    points = len({corner for triangle in keys for corner in triangle})
    if points - len(edges) // 2 + count != 2:
        report.wrong(f"{what}: one body without holes", 2, points - len(edges) // 2 + count)
    a, b, c = (triangles[:, k] for k in range(3))
    areas = numpy.linalg.norm(numpy.cross(b - a, c - a), axis=1) / 2
    if areas.min() <= 0:
        report.wrong(f"{what}: triangles of some size", "> 0", areas.min())
    return triangles


def volume(triangles):
    a, b, c = (triangles[:, k] for k in range(3))
    return float(numpy.einsum("ij,ij->i", a, numpy.cross(b, c)).sum() / 6)


def has(report, what, corners, wanted):
    off = numpy.abs(corners - numpy.array(wanted)).max(axis=1).min()
    if off > CLOSE:
        report.wrong(f"{what}: a corner at", wanted, f"{off} off")


def top_of(path, nut):
    """The height of a nut's top at any place, as its outline draws it, over the slots too."""
    arcs = [e for e in shape.edges(path) if e.bulge > 0]
    if arcs:
        (cx, cy), radius = max(arcs, key=lambda e: abs(e.a[0] - e.b[0])).circle()
        return lambda x: cy + numpy.sqrt(radius ** 2 - (x - cx) ** 2)
    ends = [path.points[-1], path.points[2]]
    known = sorted([*ends, *zip([s["centre"] for s in nut], outlines.tops_of(None, nut, path))])
    return lambda x: numpy.interp(x, [p[0] for p in known], [p[1] for p in known])


def nut_volume(plan, job, path):
    """By slices from face to face: the area under the top, without the slots where they are by then; top
    and floors fall alike."""
    nut, lean = plan["nut"]["strings"], job.nut[1]
    top, slope = top_of(path, nut), math.tan(math.radians(plan["nut"]["slant"]))
    fall = math.tan(math.radians(plan["nut"]["fall_angle"])) / lean
    x = numpy.linspace(0, job.width, 20001)
    whole = numpy.trapz(top(x), x)
    areas = []
    for depth in numpy.linspace(0, job.nut_thickness, SLICES):
        area = whole - depth * fall * job.width
        for s in nut:
            r = s["width"] / lean / 2
            at = s["centre"] + depth * slope + numpy.linspace(-r, r, 801)
            round_floor = s["floor"] + r - numpy.sqrt(
                numpy.maximum(r ** 2 - numpy.linspace(-r, r, 801) ** 2, 0))
            area -= numpy.trapz(numpy.maximum(top(at) - round_floor, 0), at)
        areas.append(area)
    return float(numpy.trapz(areas, numpy.linspace(0, job.nut_thickness, SLICES)))


def check_nut(report, corners, plan, job, path):
    """Its volume; its floors and the ends of its top at both faces."""
    slope = math.tan(math.radians(plan["nut"]["slant"])) * job.nut_thickness
    drop = math.tan(math.radians(plan["nut"]["fall_angle"])) * job.nut_thickness / job.nut[1]
    for s in plan["nut"]["strings"]:
        has(report, "nut: floor", corners, (s["centre"], 0, s["floor"]))
        has(report, "nut: floor behind", corners,
            (s["centre"] + slope, job.nut_thickness, s["floor"] - drop))
    top = top_of(path, plan["nut"]["strings"])
    for x in (0, job.width):
        has(report, "nut: end of its top", corners, (x, 0, top(x)))
        has(report, "nut: end of its top behind", corners, (x, job.nut_thickness, top(x) - drop))
    return nut_volume(plan, job, path)


def check_saddle(report, corners, plan, job, path):
    """Its area times its thickness; its peaks over its own bottom."""
    cut = plan["saddle"]["bottom_cut"]
    line = sorted({(x, z) for x, y, z in corners if y == 0 and z > 0.5})
    for s, w in zip(plan["strings"], plan["saddle"]["strings"]):
        x = job.length / 2 + s["saddle_z"]
        off = cut["bass"] + (cut["treble"] - cut["bass"]) * x / job.length if cut else 0.0
        finished = w["height"] if plan["saddle"]["remedy"] == "replace" else outlines.minus(
            w["present"], w["dress"])
        if finished is None:
            continue
        got = numpy.interp(x, [p[0] for p in line], [p[1] for p in line])
        if not near(got, finished - off):
            report.wrong(f"saddle: peak {w['number']} over its own bottom", finished - off, got)
        if plan["saddle"]["shim"] is None and not near(got, w["height"]):
            report.wrong(f"saddle: height {w['number']}", w["height"], got)
    return shape.area(shape.polygon(path)) * job.thickness


CHECKS = {"nut": check_nut, "saddle": check_saddle}


def check(report, path, part, plan, job, page):
    """A solid beside the outline that it is of."""
    what, length = f"{part}, solid", job.width if part == "nut" else job.length
    thickness = job.nut_thickness if part == "nut" else job.thickness
    triangles = read(report, what, path)
    found = volume(triangles)
    if abs(admesh(report, what, path) - found) > 1e-4 * found:
        report.wrong(f"{what}: volume, by admesh", found, "another")
    corners = numpy.unique(triangles.reshape(-1, 3), axis=0)
    low, high = corners.min(axis=0), corners.max(axis=0)
    box = [low[0], high[0], low[1], high[1], low[2]]
    if not all(near(a, b, 1e-4) for a, b in zip(box, [0, length, 0, thickness, 0])):
        report.wrong(f"{what}: from 0 along, across and up", (length, thickness), box)
    if job.left_handed:
        corners = corners * (-1, 1, 1) + (length, 0, 0)
    face = outlines.from_the_bass_end(report, page, length, job.left_handed)
    wanted = CHECKS[part](report, corners, plan, job, outlines.layer(face, "finished")[0])
    if abs(found - wanted) > 3e-4 * wanted:
        report.wrong(f"{what}: volume", wanted, found)
    report.volumes.append(abs(found / wanted - 1))
