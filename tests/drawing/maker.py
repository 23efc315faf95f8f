# SPDX-License-Identifier: MIT
"""A maker who has nothing but the papers: the figures of nut and saddle as they are printed, with how far
each may be off, and where they put the strings, by the second arithmetic (tests/oracle)."""
import math
import re
from itertools import product
from types import SimpleNamespace as Plain

import bench
import parts
from packs import NUT_HEADS, SADDLE_HEADS, rows_of, string_table

LIMITS = re.compile(r"0/-[\d.]+|\+[\d.]+/0")
LIMIT = re.compile(r"0|[+-][\d.]+")
UNITS = {"mm": 1.0, "in": 25.4}
NARROW = "a range narrower than a step of the figures and their tolerance"
EXACT = 1e-6  # mm: where two arithmetics may differ


class Figure:
    """What is printed, in mm: how much more and less the piece may have, and how far the figure itself may
    be from what it was rounded from."""

    def __init__(self, shown, limits, unit):
        more, less = (abs(float(part)) for part in limits.split("/"))
        self.ends = [round((float(shown) + off) * unit, 9) for off in sorted({-less, more})]
        self.step = 10.0 ** -len(shown.split(".")[1]) * unit
        self.most = (more + less) * unit + self.step


def number(cell):
    return re.fullmatch(r"\d*\.\d+", cell) is not None


def tables(pages):
    """The rows of a paper's table, and the limits in its head from the left: those that may be more, and
    those that may be less."""
    rows = [row for page in pages for row in rows_of(page)]
    limits = {(round(x, 1), t) for page in pages for x, _, t in page.texts if LIMITS.fullmatch(t)}
    for page in pages:  # a wide table has the upper limit over the lower one
        parts = [(x, y, t) for x, y, t in page.texts if LIMIT.fullmatch(t)]
        limits |= {(round(x, 1), f"{upper}/{lower}") for x, y, upper in parts for at, under, lower in parts
                   if abs(x - at) < 6 and 1 < y - under < 5 and (upper == "0") != (lower == "0")}
    limits = sorted(limits)
    return rows, [t for _, t in limits if t[0] == "+"], [t for _, t in limits if t[0] == "0"]


def nut_printed(pages, count, unit):
    """For each string the figures that a slot may be filed to: feelers, floor, or how much deeper; none
    for a slot that is left."""
    rows, more, less = tables(pages)
    shim = [row[k + 1] for row in rows for k in range(len(row) - 1) if row[k] == "shim"]
    found = []
    table = string_table(rows, count, NUT_HEADS)
    for i in range(count):
        row = table.get(i + 1, {})
        does, stack, floor = (row.get(what, "-") for what in ("whole", "stack", "floor"))
        told = {}
        if number(does) or does in ("fill", "new"):
            if number(stack):
                told["feelers"] = Figure(stack, more[-1], unit)
            if number(floor):
                told["floor"] = Figure(floor, more[1], unit)
            if number(does):
                told["deeper"] = Figure(does, less[0], unit)
        found.append(told)
    return found, float(shim[0]) * unit if shim else 0.0


def saddle_printed(pages, count, unit):
    """For each string the figures that the saddle may be made to: its height over the bottom or over the
    bridge, or how much lower."""
    rows, more, less = tables(pages)
    table, found = string_table(rows, count, SADDLE_HEADS), []
    for i in range(count):
        row, told = table.get(i + 1, {}), {}
        height, out, lower = (row.get(what, "-") for what in ("height", "out", "lower"))
        if number(height):
            told["height"] = Figure(height, more[0], unit)
        elif number(out):
            told["out"] = Figure(out, more[0], unit)
        if number(lower) and less:
            told["lower"] = Figure(lower, less[0], unit)
        found.append(told)
    return found


def slot_heights(view, i, told, shim):
    """Where a slot filed to each printed figure holds its string over the line of the crowns: from the
    board and the crown's height, or, where the gap has told how high the string lies, down from there."""
    job, board, state = view.job, view.board, view.done.frets
    lift = -state.bend * board.span_at(board.nut_at[i])
    drop = board.drop(board.nut_at[i], board.z_nut[i])
    filed_to = None if job.stacks[i] is None else \
        job.stacks[i] + view.result["nut"]["strings"][i]["goal"]
    for way, figure in told.items():
        for end in figure.ends:
            if way == "deeper":
                yield way, state.nut[i] + shim - end
                continue
            stack = end if way == "feelers" else end + shim - job.nut.seat_to_board + drop
            yield way, (stack - job.board.crown - drop + lift if filed_to is None
                        else state.nut[i] - (filed_to - stack))


def saddle_heights(view, i, told):
    """Where the saddle made to each printed figure holds its string."""
    before = view.done.bone.before[i]
    for way, figure in told.items():
        row = view.result["saddle"]["strings"][i]
        for end in figure.ends:
            if way == "lower":
                yield way, before - end
            else:
                yield way, before + end - row["present" if way == "height" else "stands_out"]


def corners(view, i, printed):
    """(ways, gap, action) of a string in every corner of what its figures allow."""
    slot, saddle = printed.slots[i], printed.bones[i]
    state = view.done.bone.after
    slots = list(slot_heights(view, i, slot, printed.shim)) or [("left", view.done.frets.nut[i] + printed.shim)]
    # Without a printed height, by its screws or a shim, it comes to where it is wanted.
    moved = view.result["saddle"]["remedy"] not in ("wait", "none")
    bones = list(saddle_heights(view, i, saddle)) or \
        [("left", view.last.end[i] if moved else view.done.bone.before[i])]
    for (slot_way, nut), (bone_way, end) in product(slots, bones):
        at = Plain(bend=state.bend, off=state.off, nut={i: nut}, end={i: end})
        yield ((slot_way, bone_way), bench.first_of(view.board, at, i, view.job.targets.held),
               bench.action_of(view.board, at, i))


def outside(value, band):
    """Whether a value is past its range."""
    return not band[0] - EXACT <= value <= band[2] + EXACT


def reach(board, i, x, held, printed):
    """How far the figures of a string may move the gap at a place, by similar triangles: at most that of
    its slot, and that of its saddle unless the string lies on a crown in between. The shim under a floor
    is rounded as well."""
    slot, saddle = printed.slots[i], printed.bones[i]
    far = board.x[i, held] if held else board.end[i]
    shim = slot["floor"].step / 2 if printed.shim and "floor" in slot else 0.0
    nut = max((figure.most for figure in slot.values()), default=0.0) + shim
    bone = max((figure.most for figure in saddle.values()), default=0.0)
    return (1 - x / far) * nut + (0.0 if held else x / far * bone)


def reason(view, i, gap, printed):
    """Why a string may end past its range: None where nothing excuses it."""
    job, board, bone = view.job, view.board, printed.bones[i]
    row = view.result["nut" if gap else "saddle"]["strings"][i]
    held = job.targets.held if gap else 0
    band = (job.targets.first if gap else job.targets.action)[i]
    value = bench.first_of(board, view.last, i, held) if gap else bench.action_of(board, view.last, i)
    if row["at_edge"]:
        return "at the edge of its range, and left there"
    if gap and row.get("filed_back"):
        return "filed back to where it was with the shim in, by a first stroke: the rest goes by the gap"
    if math.isnan(value) or not held and view.result["saddle"]["remedy"] == "wait":
        return "the saddle waits"
    if outside(value, band):
        return "the target gives way"
    if not gap and view.result["nut"]["remedy"] == "wait":
        return "the nut waits, and the action is measured again after it"
    x = board.x[i, 1] if gap else board.x[i, 12]
    if band[2] - value < reach(board, i, x, held, printed):
        return NARROW
    if not gap and view.result["saddle"]["remedy"] != "replace" and value - band[0] < max(
            (figure.step for figure in bone.values()), default=0.0) / 2:
        return "brought to the low edge of its range"
    return None
