# SPDX-License-Identifier: MIT
"""Where on a pack a quantity is printed. Each is known by what it is and whose, and is taken from the rows,
the rings and the words of a paper, in the digits that stand there."""
import re
from collections import defaultdict

from packs import NUT_HEADS, SADDLE_HEADS, rows_of, string_table

NUMBER = r"-?\d*\.\d+"


class Places:
    """The digits of each quantity, place by place."""

    def __init__(self):
        self.told = defaultdict(dict)

    def add(self, what, digits, place):
        """Digits without brackets, and without 64ths behind them; a dash or a word is no figure."""
        found = re.fullmatch(rf"\(?({NUMBER})(?:\)| \(\d+/\d+\))?", digits)
        if found:
            self.told[what].setdefault(found.group(1), []).append(place)

    def add_each(self, what, cells, place):
        for i, cell in enumerate(cells):
            self.add((what, i + 1), cell, place)

    def again(self):
        """Quantities that stand in two places or more."""
        return {what: told for what, told in self.told.items() if sum(map(len, told.values())) > 1}

    def apart(self):
        return {what: told for what, told in self.told.items() if len(told) > 1}


def rows(pages):
    return [row for page in pages for row in rows_of(page)]


def pairs(all_rows):
    """What stands beside a name."""
    return {row[k]: row[k + 1] for row in all_rows for k in range(len(row) - 1)}


def ringed(pages, count):
    """The figure under the ring of a string, over the tables, where the rings have room beside each other."""
    for page in pages:
        heads = [y for _, y, t in page.texts if t == "string"]
        above = [t for t in page.texts if t[1] > max(heads, default=0) + 8]
        for i in range(count):
            rings = [(x, y) for x, y, t in above if t == str(i + 1) and roomy(x, y, above)]
            for rx, ry in rings:
                near = [(ry - y, t) for x, y, t in above if re.fullmatch(NUMBER, t)
                        and abs(x - rx) < 4.5 and 0 < ry - y < 12]
                if near:
                    yield i + 1, min(near)[1]


def roomy(x, y, texts):
    return not any(t.isdigit() and abs(y - oy) < 1 and 0.1 < abs(x - ox) < 9 for ox, oy, t in texts)


def row_of_centres(all_rows, count):
    """The strings' centres in a row that begins at 0, from string 1."""
    for row in all_rows:
        if len(row) == count + 1 and all(re.fullmatch(NUMBER, t) for t in row[1:]) and row[0] == "0":
            return row[:0:-1]
        if len(row) == count + 1 and all(re.fullmatch(NUMBER, t) for t in row[:-1]) and row[-1] == "0":
            return row[:-1]
    return []


def nut(places, pages, count):
    all_rows = rows(pages)
    for who, cells in string_table(all_rows, count, NUT_HEADS).items():
        for what, cell in cells.items():
            places.add((what, who), cell, "nut's table")
    for who, figure in ringed(pages, count):
        places.add(("floor", who), figure, "led out of the nut's face")
    places.add_each("slot centre", row_of_centres(all_rows, count), "centres of the nut")
    facts = pairs(all_rows)
    for name, what in (("height", "nut's height"), ("shim", "nut's shim"), ("spacing, clear", "nut's gap")):
        places.add((what,), facts.get(name, "-"), "nut's facts")
    fits(places, pages, "nut")


def fits(places, pages, part):
    for page in pages:
        for _, _, t in page.texts:
            found = re.match(rf"push fit in ({NUMBER}):", t)
            if found:
                places.add((f"{part}'s thickness",), found.group(1), f"{part}'s fit")


def saddle(places, pages, count, glued):
    all_rows = rows(pages)
    first = any("bottom, first" in row for row in all_rows)
    for who, cells in string_table(all_rows, count, SADDLE_HEADS).items():
        for what, cell in cells.items():
            places.add((what, who), cell, "saddle's table")
    for who, figure in ringed(pages, count):
        places.add(("out" if glued else "height", who), figure, "led out of the saddle's face")
    for row in all_rows:
        told = re.findall(rf"({NUMBER}) at string (\d+)", row[0])
        for figure, who in told:
            places.add(("caliper", int(who)), figure, "saddle's headline")
        if len(row) == count + 2 and first and all(re.fullmatch(NUMBER, t) for t in row):
            along(places, row, count)
    facts = pairs(all_rows)
    for end, figure in re.findall(rf"(treble|bass) ({NUMBER})", facts.get("whole cut", "")):
        places.add(("whole cut", end), figure, "saddle's facts")
    for end, figure in re.findall(rf"(treble|bass) ({NUMBER})", facts.get("first pass", "")):
        places.add(("base end", end), figure, "saddle's facts")
    places.add(("saddle's radius",), facts.get("top radius", "-"), "saddle's facts")
    fits(places, pages, "saddle")


def along(places, row, count):
    """What comes off the bottom: at the bass end, under the strings from the last, at the treble end."""
    if row[0] == row[-1] or count == 1:
        return
    left = Places()
    left.add_each("base first", row[-2:0:-1], "")
    turned = any(what in places.told and set(told) - set(places.told[what]) for what, told in left.told.items())
    seen = row[::-1] if turned else row   # of a left hand
    places.add_each("base first", seen[-2:0:-1], "along the saddle's bottom")
    places.add(("base end", "bass"), seen[0], "along the saddle's bottom")
    places.add(("base end", "treble"), seen[-1], "along the saddle's bottom")


def readings(places, pages, count):
    """The bench plan's table of readings and the forms under its steps."""
    all_rows = rows(pages)
    head = next((row for row in all_rows if row[0] == "string" and "range" in row), [])
    sides, side = [], "action"
    for word in head:
        side = "gap" if word in ("now", "target") and (side, "range") in sides else side
        sides.append((side, word.replace("about", "after")))
    for row in all_rows:
        if len(row) == len(head) and row[0].isdigit() and 1 <= int(row[0]) <= count:
            for (side, what), cell in list(zip(sides, row))[3:]:
                low, _, high = cell.partition("\u2013")
                for name, figure in (("low", low), ("high", high)) if what == "range" else ((what, cell),):
                    places.add((f"{side} {name}", int(row[0])), figure, "table of readings")
    for row in all_rows:
        relief = re.match(rf"Relief at fret \d+:  now ({NUMBER}),.*after ({NUMBER})", row[0])
        if relief:
            places.add(("relief now",), relief.group(1), "bench plan")
            places.add(("relief after",), relief.group(2), "bench plan")
    forms(places, all_rows, count, {"first pass": "slot first", "gap when done": "gap done",
                                    "gap, this pass": "gap first",
                                    "off, first pass": "base first", "action then": "action then",
                                    "action when done": "action after"}, "form of a step")


def forms(places, all_rows, count, names, place):
    """Rows with a figure for each string behind a name; many strings lie in two."""
    half = (count + 1) // 2
    seen = defaultdict(list)
    for row in all_rows:
        if row[0] in names and len(row) - 1 in (count, half, count - half):
            seen[row[0]] += row[1:]
    for name, cells in seen.items():
        if len(cells) == count:
            places.add_each(names[name], cells, place)


def card(places, pages, count):
    all_rows = rows(pages)
    of = next((side for side in ("action", "gap") for row in all_rows
               if row[0].lower().startswith(f"{side} at the")), None)
    both = sum(row[0].startswith(("Action at the", "Gap at the")) for row in all_rows) > 1
    if of and not both:
        forms(places, all_rows, count, {
            "now": f"{of} now", "range, from": f"{of} low", "to": f"{of} high", "after this pass": "action then",
            "when all is done": f"{of} after"}, "bench card")


def owner(places, pages, visits):
    """After one visit its readings are those now; after more the second column is."""
    for row in rows(pages):
        who = re.match(r"string (\d+)", row[0])
        column = 1 if visits == 1 else 2
        if who and len(row) > column:
            places.add(("action now", int(who.group(1))), row[column], "owner's page")
        elif row[0].startswith("bow of ") and len(row) > column:
            places.add(("relief now",), row[column], "owner's page")


def blanks(places, pages):
    part = None
    for row in rows(pages):
        found = re.match(r"(Nut|Saddle) blank", row[0])
        part = found.group(1).lower() if found else part
        if part and row[0] in ("length", "thickness", "height") and len(row) == 4:
            shimmed = part == "nut" and row[0] == "height" and ("nut's shim",) in places.told
            if not shimmed:   # a new nut would stand without the shim
                places.add((f"{part}'s {row[0]}",), row[2], "blank order")
        radius = re.search(rf"to radius (\S+) ", " ".join(row))
        if part and radius:
            places.add((f"{part}'s radius",), radius.group(1), "blank order")


def templates(places, pages):
    """The length printed under the slip of a face, which has its name on it."""
    part = None
    for row in rows(pages):
        found = re.match(r"(Nut|Saddle|Bridge) face\b", row[0])
        titled = row[0].startswith(("Nut, ", "Saddle, ", "Bridge, "))
        part = ("nut" if found.group(1) == "Nut" else "saddle") if found else None if titled else part
        if part and len(row) == 1 and re.fullmatch(NUMBER, row[0]):
            places.add((f"{part}'s length",), row[0], "template")
            part = None


SAID = {"stack": "stack", "stack-first": "stack now", "caliper": "caliper", "centre": "slot centre",
        "peak": "peak", "height-first": "height first", "gap": "gap done", "gap-first": "gap first"}


def step(places, row):
    """The figures of a step's sentence."""
    act = row["act"]
    for figure in row["figures"] + row["check_figures"]:
        what, who = SAID.get(figure["of"]), figure.get("string")
        if act == "file-slots":   # what it stops at in this pass
            what = {"slot": "slot first", "stack": "stack now"}.get(figure["of"], what)
        if figure["of"] == "height" and act in ("new-saddle", "shape-saddle"):
            what = "height"
        if figure["of"] == "shim" and act == "shim-nut":
            places.add(("nut's shim",), figure["shown"], act)
        if figure["of"] == "base" and figure.get("end"):
            places.add(("base end", figure["end"]), figure["shown"], act)
        if what and who:
            places.add((what, who), figure["shown"], act)
