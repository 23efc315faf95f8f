# SPDX-License-Identifier: MIT
"""Reads a drawing back from its SVG, by an XML parser, into what the PDF's reader gives: paths with
their pen, in millimetres, y up. Any element no drawing uses is an error, so that nothing goes
unseen."""
import math
import re
import xml.etree.ElementTree as tree

import pdf

NAME = "{http://www.w3.org/2000/svg}"
IDENTITY = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def times(m, n):
    """One matrix (a b c d e f) after another."""
    return (m[0] * n[0] + m[2] * n[1], m[1] * n[0] + m[3] * n[1], m[0] * n[2] + m[2] * n[3],
            m[1] * n[2] + m[3] * n[3], m[0] * n[4] + m[2] * n[5] + m[4],
            m[1] * n[4] + m[3] * n[5] + m[5])


def transform(text):
    matrix = IDENTITY
    for name, numbers in re.findall(r"(\w+)\(([^)]*)\)", text or ""):
        v = [float(n) for n in numbers.replace(",", " ").split()]
        if name == "scale":
            step = (v[0], 0.0, 0.0, v[-1], 0.0, 0.0)
        elif name == "rotate":
            c, s = math.cos(math.radians(v[0])), math.sin(math.radians(v[0]))
            x, y = v[1:] or (0.0, 0.0)
            step = (c, s, -s, c, x - c * x + s * y, y - s * x - c * y)
        else:
            raise ValueError(f"a transform no drawing uses: {text}")
        matrix = times(matrix, step)
    return matrix


def placed(matrix, points):
    """Root coordinates count down: here they count up."""
    a, b, c, d, e, f = matrix
    return [(a * x + c * y + e, -(b * x + d * y + f)) for x, y in points]


def bulge(a, b, radius, large, sweep):
    """Of an arc command; a radius too small for its chord is stretched to half of it (SVG 1.1, F.6.6)."""
    angle = 2 * math.asin(min(1.0, math.dist(a, b) / 2 / radius))
    return (1 if sweep else -1) * math.tan((2 * math.pi - angle if large else angle) / 4)


def outline(text):
    """Points, closed, and the bulge of the way from each point."""
    points, closed, bulges, command = [], False, [], None
    tokens = re.findall(r"[A-Za-z]|-?[\d.]+", text)
    while tokens:
        if tokens[0].isalpha():
            command = tokens.pop(0)
        if command == "Z":
            closed = True
        elif command in ("M", "L", "A"):
            take = 7 if command == "A" else 2
            values, tokens = [float(t) for t in tokens[:take]], tokens[take:]
            if command == "A":
                if values[0] != values[1] or values[2] != 0:
                    raise ValueError(f"an arc of no circle: {text[:80]}")
                bulges[-1] = bulge(points[-1], values[-2:], values[0], *values[3:5])
            points.append(tuple(values[-2:]))
            bulges.append(0.0)
        else:
            raise ValueError(f"a path no drawing uses: {text[:80]}")
    return points, closed, bulges


def colour(text):
    return tuple(int(text[i:i + 2], 16) / 255 for i in (1, 3, 5))


def read_element(page, group, element):
    name = element.tag.removeprefix(NAME)
    matrix = times(transform(group.get("transform")), transform(element.get("transform")))
    layer, string = group.get("id") or group.get("class"), int(element.get("data-string", 0))
    if name == "text":
        x, y = placed(matrix, [(float(element.get("x")), float(element.get("y")))])[0]
        page.texts.append((x, y, "".join(element.itertext())))
        return
    if name == "path":
        points, closed, bulges = outline(element.get("d"))
    elif name == "circle":
        x, y, r = (float(element.get(k)) for k in ("cx", "cy", "r"))
        points, closed, bulges = [(x - r, y), (x, y - r), (x + r, y), (x, y + r)], True, [1.0]
    else:
        raise ValueError(f"an element no drawing uses: {name}")
    dash = tuple(float(v) for v in group.get("stroke-dasharray", "").split())
    page.paths.append(pdf.Path(placed(matrix, points), closed, element.get("fill", "none") != "none",
                               float(group.get("stroke-width")), dash, colour(group.get("stroke")),
                               any(bulges), layer, string, tuple(bulges)))


def read(path):
    """The page of a drawing; left, bottom: where its corner lies."""
    root = tree.parse(path).getroot()
    left, top, width, height = (float(v) for v in root.get("viewBox").split())
    if (root.get("width"), root.get("height")) != (f"{width:g}mm", f"{height:g}mm"):
        size = [float(root.get(k).removesuffix("mm")) for k in ("width", "height")]
        if size != [width, height]:
            raise ValueError(f"a unit is no millimetre: {root.attrib}")
    page = pdf.Page(width, height)
    page.left, page.bottom = left, -(top + height)
    for group in root:
        if group.tag == NAME + "title":
            page.title = group.text
        elif group.tag == NAME + "g":
            for element in group:
                read_element(page, group, element)
        else:
            raise ValueError(f"an element no drawing uses: {group.tag}")
    ids = [g.get("id") for g in root if g.get("id")]
    if len(ids) != len(set(ids)):
        raise ValueError(f"an id twice: {ids}")
    return page
