# SPDX-License-Identifier: MIT
"""What a part can be: the table of docs/arithmetic.md, held against a result.

faults(result) yields (what, where, the figure) of every figure outside of it.
"""
import math
import re

INFINITE = math.inf
OVER = 1e-6          # a height of 0 is none
ROUNDING = -1e-9     # a millionth of what any tool reads
OVER_BOARD = 4.0     # the fret height and the gap together, mm
LEAN = 45.0          # degrees
THICK = 3.0          # no sheet allows a thicker shim, mm
DECIMALS = 12        # more is the noise of floating point, 2.3000000000000003 for 2.3

SIGNED = {"relief", "relief-target", "relief-before", "cents", "cents-left", "cents-within"}

SLOT = {"floor": (OVER, INFINITE), "stack": (OVER, OVER_BOARD), "now": (0, INFINITE),
        "first_pass": (0, INFINITE), "depth": (0, INFINITE), "width": (OVER, INFINITE),
        "leave": (0, INFINITE), "stack_u": (0, INFINITE), "stack_bend": (0, INFINITE),
        "deepen_u": (0, INFINITE)}
BEARING = {"present": (OVER, INFINITE), "height": (OVER, INFINITE), "protrusion": (ROUNDING, INFINITE),
           "stands_out": (ROUNDING, INFINITE), "in_slot": (0, 1), "now": (0, INFINITE),
           "first_pass": (0, INFINITE), "dress": (0, INFINITE), "dress_first": (0, INFINITE),
           "leave": (0, INFINITE), "lower_u": (0, INFINITE), "peak": (OVER, INFINITE)}
ASKED = {"dress": (0, INFINITE), "dress_now": (0, INFINITE), "height": (OVER, INFINITE), "protrusion": (ROUNDING, INFINITE),
         "action": (0, INFINITE)}
STAGE = {"action": (0, INFINITE), "first_open": (0, INFINITE), "first_held2": (0, INFINITE),
         "first_held3": (0, INFINITE)}
BLANK = {"length": (OVER, INFINITE), "thickness": (OVER, INFINITE), "height": (OVER, INFINITE)}


def outside(value, low, high):
    return value is not None and not low <= value <= high


def of_row(place, row, table):
    for key, (low, high) in table.items():
        if outside(row[key], low, high):
            yield key, place, row[key]


def walk(value, path=()):
    """(path, figure) of every figure of a result."""
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from walk(inner, (*path, key))
    elif isinstance(value, list):
        for n, inner in enumerate(value):
            yield from walk(inner, (*path, n))
    elif isinstance(value, float):
        yield path, value


def of_nut(nut):
    for row in nut["strings"]:
        place = ("nut", row["number"])
        yield from of_row(place, row, SLOT)
        if row["floor"] is not None and row["first_pass"] is not None \
                and row["first_pass"] > row["floor"] + row["depth"] + max(0.0, row["goal"] or 0.0):
            yield "first_pass past the bottom", place, row["first_pass"]


def of_saddle(saddle, thickness):
    for row in saddle["strings"]:
        place = ("saddle", row["number"])
        yield from of_row(place, row, BEARING)
        yield from of_row((*place, "asked"), row["asked"], ASKED)
        if outside(row["peak"], 0, thickness):
            yield "peak off the piece", place, row["peak"]
        for key in ("goal", "dress", "first_pass", "dress_first"):
            over = (row["present"] or INFINITE) + (saddle["shim"] or 0.0)
            if row[key] is not None and row[key] >= over:
                yield f"{key} past the bottom", place, row[key]


def of_part(name, part):
    if part["blank"]:
        yield from of_row((name, "blank"), part["blank"], BLANK)
    if outside(part["shim"], OVER, THICK):
        yield "shim", name, part["shim"]
    if outside(part["slant"], -LEAN, LEAN):
        yield "slant", name, part["slant"]


def of_replaced(name, part):
    """A part that is replaced is not worked: no dressing, no pass, no shim's share."""
    if part["remedy"] != "replace":
        return
    for row in part["strings"]:
        for key in ("first_pass", "dress", "dress_first"):
            if row.get(key):
                yield f"{key} of a part to be replaced", (name, row["number"]), row[key]
    for key in ("shim", "bottom_cut"):
        if part.get(key) is not None:
            yield f"{key} of a part to be replaced", name, part[key]


def of_steps(plan):
    """Nothing but a new one is asked for of a part that is replaced."""
    work = {"nut": {"file-slots", "fill-slot", "shim-nut"},
            "saddle": {"sand-saddle", "dress-saddle", "shim-saddle", "turn-screws"}}
    for name, acts in work.items():
        for step in plan["steps"]:
            if plan[name]["remedy"] == "replace" and step["act"] in acts:
                yield "step at a part to be replaced", name, step["act"]


def of_sentences(plan):
    """What is told in words is a result, too; of what cannot be only the finding that says so."""
    for found in plan["findings"]:
        if re.match("(slot|saddle|zero-fret)-(low|high)$|at-edge$", found["code"]):
            for row in found["figures"]:
                if row["of"] in ("read", "low", "high") and (row["value"] or 0) < 0 and not SIGNED & {
                        "cents" if "Cents" in found["text"] else "", "relief" if "Relief" in
                        found["text"] else ""}:
                    yield f"{found['code']} in words", found["string"], row["value"]
    for step in plan["steps"]:
        for row in step["figures"] + step["check_figures"]:
            if row["value"] is None or (row["of"] not in SIGNED and row["value"] < 0):
                yield f"{step['act']} in words", row["of"], row["value"]


def faults(plan, thickness=INFINITE):
    yield from of_nut(plan["nut"])
    yield from of_saddle(plan["saddle"], thickness)
    for name in ("nut", "saddle"):
        yield from of_part(name, plan[name])
        yield from of_replaced(name, plan[name])
    yield from of_steps(plan)
    yield from of_sentences(plan)
    for stage in plan["stages"]:
        for row in stage["strings"]:
            yield from of_row((stage["stage"], row["number"]), row, STAGE)
    for visit in plan["visits"]:
        for value in visit["predicted"] or []:
            if outside(value, 0, INFINITE):
                yield "predicted", visit["date"], value
    for path, value in walk(plan):
        if value != round(value, DECIMALS):
            yield "noise", path, value
