# SPDX-License-Identifier: MIT
"""What stands at one place of a job sheet, understood: lengths in their units, figures, values a string
and between the outer strings."""
import math
import re

import yaml

NAN = math.nan
UNITS = {"mm": 1.0, "in": 25.4, "thou": 0.0254}
LOADER = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


def given(node):
    return node is not None and node not in ("", "~", "null")


def number(text):
    """A number, a fraction, or a whole number and a fraction."""
    return sum(int(p.split("/")[0]) / int(p.split("/")[1]) if "/" in p else float(p)
               for p in text.split())


class Sheet:
    """Understands one sheet's scalars by their place."""

    def __init__(self, text, every=None):
        """From its text, or from what LOADER made of it; `every`: readings told of elsewhere, whose
        fractions count too."""
        self.doc = yaml.load(text, LOADER) if isinstance(text, str) else text
        self.every = every or self.doc.get("readings") or []
        self.unit = UNITS[self.doc.get("units", "mm")]
        self.courses = courses(self.doc.get("strings") or [])
        self.shares = [c / max(self.courses[-1], 1) for c in self.courses]

    def length(self, node):
        if not given(node):
            return NAN
        match = re.fullmatch(r"(-?[\d./ e+-]*\d\.?) *(mm|in|thou)?", node.strip())
        unit = UNITS[match[2]] if match[2] else self.unit
        return number(match[1]) * unit

    @staticmethod
    def figure(node):
        """A figure whose unit, if any, is the only one its place can have."""
        return float(node.split()[0].rstrip("%")) if given(node) else NAN

    def each(self, node, count, read=None):
        """A value per string from a list, a pair run linearly, or one value for all."""
        read = read or self.length
        if isinstance(node, list):
            assert len(node) == count
            return [read(item) for item in node]
        if isinstance(node, dict):
            return over(self.shares, read(node.get("treble")), read(node.get("bass")))
        return [read(node)] * count

    def pair(self, node):
        """Treble and bass, told apart or as one."""
        if isinstance(node, dict):
            return [self.length(node.get(end)) for end in ("treble", "bass")]
        return [self.length(node)] * 2

    def band(self, node, width):
        """(low, aim, high) from a mapping or from an aim alone."""
        if isinstance(node, dict):
            return tuple(self.length(node[key]) for key in ("low", "aim", "high"))
        aim = self.length(node)
        return (aim - width, aim, aim + width)

    def bands(self, node, width, count):
        if isinstance(node, list):
            return [self.band(item, width) for item in node]
        if isinstance(node, dict) and "treble" in node:
            ends = self.band(node["treble"], width), self.band(node["bass"], width)
            return list(zip(*(over(self.shares, a, b) for a, b in zip(*ends))))
        return [self.band(node, width)] * count


def run(treble, bass, count):
    """Linear by string number from string 1 to the last."""
    if count == 1:
        return [treble]
    return over([i / (count - 1) for i in range(count)], treble, bass)


def over(shares, treble, bass):
    return [treble * (1 - s) + bass * s for s in shares]   # both ends to the last bit


def courses(strings):
    """The course of each string, from 0: a number shared by neighbours joins them."""
    found = []
    for i, node in enumerate(strings):
        number = node.get("course")
        joined = i > 0 and given(number) and number == strings[i - 1].get("course")
        found.append(found[-1] + (not joined) if found else 0)
    return found
