# SPDX-License-Identifier: MIT
"""Sheets with figures that no bench ever read: each figure of a sheet, one or two at a time, made
nothing, hardly anything, ten times as much, a tenth, or absurd."""
import math
import re

import yaml

FIGURE = re.compile(r"-?\d+(\.\d+)?(?![\w.]*[-:])")
EDGES = {"0": lambda figure: 0.0, "0.0001": lambda figure: 0.0001, "x10": lambda figure: 10.0 * figure,
         "/10": lambda figure: figure / 10.0, "9999": lambda figure: 9999.0}
MILD = (0.3, 3.0)  # a figure that may pass for another one
NOT_FIGURES = {"sillet", "title", "ref", "owner", "by", "date", "material", "note", "notes", "profile", "name"}


def figures(node, key=None, path=()):
    """(path, node) of every figure of a sheet: dimensions and counts as well as readings."""
    if isinstance(node, yaml.MappingNode):
        for name, value in node.value:
            yield from figures(value, name.value, (*path, name.value))
    elif isinstance(node, yaml.SequenceNode):
        for n, value in enumerate(node.value):
            yield from figures(value, key, (*path, n))
    elif key not in NOT_FIGURES and FIGURE.match(node.value):
        yield path, node


def written(value):
    return f"{value:.6f}".rstrip("0").rstrip(".") or "0"


def rewritten(text, node, new):
    """The sheet's text with other words for the figure of a node."""
    at = node.start_mark.index + (text[node.start_mark.index] in "\"'")
    return text[:at] + new + text[at + len(FIGURE.match(node.value)[0]):]


def replaced(text, changes):
    """The sheet's text with the figure of each node written anew."""
    for node, value in sorted(changes, key=lambda change: -change[0].start_mark.index):
        text = rewritten(text, node, written(value))
    return text


def figure_of(node):
    return float(FIGURE.match(node.value)[0])


def one_at_a_time(text):
    """(what was changed, the text) of every figure with every edge."""
    for path, node in figures(yaml.compose(text)):
        for name, edge in EDGES.items():
            yield (path, name), replaced(text, [(node, edge(figure_of(node)))])


def several_at_a_time(text, draw, count):
    """The same of `count` sheets in each of which two to four figures are wrong. draw: random.Random."""
    every = list(figures(yaml.compose(text)))
    for _ in range(count):
        changes = []
        for path, node in draw.sample(every, min(len(every), draw.randint(2, 4))):
            value = figure_of(node) * math.exp(draw.uniform(*map(math.log, MILD)))
            if draw.random() < 0.3:
                value = draw.choice(list(EDGES.values()))(figure_of(node))
            changes.append((path, node, round(value, 4)))
        yield (tuple((path, value) for path, _, value in changes),
               replaced(text, [(node, value) for _, node, value in changes]))
