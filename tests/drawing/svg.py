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


def outline(text):
    """Points, closed, curved: arcs count by their ends."""
    points, closed, curved, command = [], False, False, None
    tokens = re.findall(r"[A-Za-z]|-?[\d.]+", text)
    while tokens:
        if tokens[0].isalpha():
            command = tokens.pop(0)
        if command == "Z":
            closed = True
        elif command in ("M", "L", "A"):
            take = 7 if command == "A" else 2
            values, tokens = [float(t) for t in tokens[:take]], tokens[take:]
            points.append(tuple(values[-2:]))
            curved = curved or command == "A"
        else:
            raise ValueError(f"a path no drawing uses: {text[:80]}")
    return points, closed, curved


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
        points, closed, curved = outline(element.get("d"))
    elif name == "circle":
        x, y, r = (float(element.get(k)) for k in ("cx", "cy", "r"))
        points, closed, curved = [(x - r, y), (x, y - r), (x + r, y), (x, y + r)], True, True
    else:
        raise ValueError(f"an element no drawing uses: {name}")
    dash = tuple(float(v) for v in group.get("stroke-dasharray", "").split())
    page.paths.append(pdf.Path(placed(matrix, points), closed, element.get("fill", "none") != "none",
                               float(group.get("stroke-width")), dash, colour(group.get("stroke")),
                               curved, layer, string))


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
