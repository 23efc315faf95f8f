# SPDX-License-Identifier: MIT
"""Nut and saddle on paper: their tables, the figures led out of their views, sections, cuts."""
import math
import re

import shape
from figures_bench import off_the_top
from packs import FRAME_LEFT, length, stands_led_out
from shown import action, DOWN, Either, eighths, UP, limits, radius, rounded, size, unknown
from part import LEAST_PASS

# How far each size may be off, mm: the floor, the slot, the fit, a height, a cut. Common practice.
FLOOR, WIDTH, FIT, HEIGHT = (0.02, 0.0), (0.05, 0.0), (-0.02, -0.05), (0.05, 0.0)
OFF_SLOT, OFF_SADDLE = (0.0, -0.02), (0.0, -0.05)


def bracketed(figure):
    """A figure for reference: nothing is made to it."""
    if isinstance(figure, Either):
        return Either(f"({figure})", f"({figure.other})")
    if isinstance(figure, Within):
        return figure  # in brackets or without, as it is compared
    return figure if figure == "-" else f"({figure})"


def plain(figure):
    return figure


def dimensioned_once(pack):
    """What has its limits in a caption, in the head of a table or with its fit is in brackets elsewhere."""
    for title in ("Nut", "Saddle"):
        again = [t for t in pack.texts(title) if re.fullmatch(r"\d*\.\d+ [+-].*", t)]
        pack.same(f"{title}: limits at a dimension", again, [])


def heads(pack, title, columns):
    """The limits under the heads of a table: one for each column that has a figure with them."""
    wanted = sorted(limits(*within, pack.unit) for within, column in columns
                    if any(figure != "-" for figure in column))
    got = [t for t in pack.texts(title) if re.fullmatch(r"0/-[\d.]+|[+-][\d.]+/-?[\d.]+", t)]
    rows = pack.rows(title)
    for upper, lower in zip(rows, rows[1:]):  # a wide table has the upper limit over the lower one
        if len(upper) == len(lower) and all(re.fullmatch(r"0|\+[\d.]+", t) for t in upper) and \
                all(re.fullmatch(r"0|-[\d.]+", t) for t in lower):
            got += [f"{a}/{b}" for a, b in zip(upper, lower)]
    got.sort()
    pack.same(f"{title}: limits", got, wanted)


WIDE = 70.0  # mm: twice that, and the figures beside it, go across no paper
MOST_OVER = 0.05  # mm: how much deeper than wanted a slot may be, so that the top is an arc


def arc_of(pack, title):
    """The arc of a top as its paper tells it, in mm: radius, crest from the bass end, its height; None
    for another top."""
    rows, unit = pack.rows(title), 1.0 if pack.unit == "mm" else 25.4
    told = {row[k]: row[k + 1] for row in reversed(rows) for k in range(len(row) - 1)}
    if "its crest" not in told:
        return None
    figures = [float(f) * unit for f in re.findall(r"\d*\.\d+", told["its crest"])]
    height = figures[0] if len(figures) > 1 else float(told["height"]) * unit
    return float(told["top radius"]) * unit, figures[-1], height


def on_arc(arc, x):
    radius, centre, crest = arc
    return crest - radius + math.sqrt(radius ** 2 - (x - centre) ** 2)


class Within(str):
    """A figure that may lie anywhere between two bounds."""

    def __new__(cls, low, high):
        made = super().__new__(cls, f"{low:.4f} to {high:.4f}")
        made.low, made.high = low, high
        return made

    def __eq__(self, told):
        number = re.fullmatch(r"\(?(\d*\.\d+)\)?", str(told))
        return bool(number) and self.low <= float(number.group(1)) <= self.high

    __hash__ = str.__hash__


def nut_top(pack, i):
    """The top over the bottom at a string, and the slot's depth. With an arc the slot is as deep as
    wanted, or a little deeper; what is printed is of that arc, as its own figures tell it."""
    row, arc = pack.result["nut"]["strings"][i], arc_of(pack, "Nut")
    if row["floor"] is None:
        return "-", pack.part.slot(i)["depth"]
    floor = row["floor"] - pack.part.nut_shim()
    if arc is None:
        return length(pack, floor + row["depth"]), pack.part.slot(i)["depth"]
    unit, slack = (1.0, 0.012) if pack.unit == "mm" else (25.4, 0.035)  # R to 0.1 in, x to 0.001
    top = on_arc(arc, pack.part.slot_at(i))
    if not -slack <= top - floor - row["depth"] <= MOST_OVER + slack:
        pack.report.wrong(f"nut: slot {i + 1} with the arc", row["depth"], top - floor)
    bounds = [((height - slack) / unit, (height + slack) / unit) for height in (top, top - floor)]
    return Within(*bounds[0]), Within(*bounds[1])


def count_within(pack, title, tool):
    """How often a tolerance stands on a paper; it may be rounded either way just at a half."""
    figure = length(pack, tool)
    return sum(text[:1] == "±" and figure == text[1:] for text in pack.texts(title))


def nut_table(pack):
    def wanted(i):
        slot = pack.part.slot(i)
        amount = slot["deepen"] if slot["does"] == "deeper" else slot["does"]
        stop = slot["stack"] if slot["does"] in ("deeper", "fill", "new") else "-"
        top, depth = nut_top(pack, i)
        return [slot[key] for key in ("width", "along", "floor")] + [
            top, bracketed(depth), amount, slot["first"], slot["stack_now"], stop]
    pack.table("Nut", wanted)
    told = any(y < last - 4 for page in pack.pages["Nut"] for last in [table_end(pack, page)]
               for x, y, text in page.texts if y > 66 and x > FRAME_LEFT)
    stops = any(pack.part.slot(i)["stack_now"] != "-" for i in range(pack.count))
    rolled = any(text.startswith("No file fits") for text in pack.texts("Nut"))
    pack.same("nut: how to stop, under the table", told, stops or rolled)
    pack.same("nut: down to which feelers", sum(t.startswith("Feelers now") for t in pack.texts("Nut")), int(stops))
    pack.same("nut: how good the feelers are", [
        re.findall(r"\d*\.\d+", text) for text in pack.texts("Nut")
        if text.startswith("Feelers: ")], feelers(pack))
    slots = [pack.part.slot(i) for i in range(pack.count)]
    worked = [slot for slot in slots if slot["does"] in ("deeper", "fill", "new")]
    heads(pack, "Nut", [
        (WIDTH, [slot["width"] for slot in slots]), (FLOOR, [slot["floor"] for slot in slots]),
        (OFF_SLOT, [slot["deepen"] for slot in slots]), (OFF_SLOT, [slot["first"] for slot in slots]),
        (FLOOR, [slot["stack_now"] for slot in slots]), (FLOOR, [slot["stack"] for slot in worked])])
    large_stacks(pack)


def large_stacks(pack):
    """The figures in large letters in the table are the stacks to stop at now, as the step says them: where
    a first pass leaves something, not those of the finished slots. The dense table of many strings has none."""
    large, dense = [], False
    for page in pack.pages["Nut"]:
        at = sorted({y for x, y, text in page.texts if x < 40 and text in ("1", "2")}, reverse=True)
        dense = dense or any(3.5 < upper - lower < 4.6 for upper, lower in zip(at, at[1:]))
        low, high = table_end(pack, page) - 2, table_top(pack, page)
        large += [(y, text) for (_, y, text), (name, em) in zip(page.texts, page.letters)
                  if low < y < high and NUMBER.fullmatch(text) and em > LARGE]
    dense = dense and pack.count > 8
    told = [text for _, text in sorted(large, reverse=True)]
    wanted = [figure for i in range(pack.count) if (figure := pack.part.slot(i)["stack_now"]) != "-"]
    said = {figure["string"]: figure["shown"] for act in NUT_ACTS for step in pack.result["steps"]
            if step["act"] == act for figure in step["figures"]
            if figure["of"] == ("stack-first" if act in ("cut-nut-slots", "fill-slot", "shim-nut") else "stack")}
    pack.same("nut: the stacks now, as the steps have them", [
        pack.part.slot(i)["stack_now"] for i in range(pack.count) if i + 1 in said],
        [said[i + 1] for i in range(pack.count) if i + 1 in said])
    pack.same("nut: the figures in large letters", told, [] if dense else wanted)


NUMBER = re.compile(r"\d*\.\d+")
LARGE = 4.5  # mm: between the em of the usual lettering and that of the next larger
NUT_ACTS = ("shim-nut", "fill-slot", "cut-nut-slots", "file-slots")  # the last has its own slots


def feelers(pack):
    """The figures of the line that says how good the stacks are; no such line without a stack."""
    worked = [row for i, row in enumerate(pack.result["nut"]["strings"])
              if row["stack"] is not None
              and pack.part.slot(i)["does"] in ("deeper", "fill", "new")]
    if not worked:
        return []
    lift = max([row["stack_bend"] for row in worked if row["stack_bend"] is not None], default=0.0)
    return [[length(pack, 2 * max(row["stack_u"] for row in worked)),
             *([length(pack, lift)] if lift >= 0.01 else [])]]


def blades(pack):
    """The feelers of each slot that is worked: at most three of a usual set, each once, together at
    least the stack and no more over it than a floor may be off."""
    mm = pack.unit == "mm"
    usual = {0.03, 0.04, *(round(0.05 * k, 2) for k in range(1, 21))} if mm else \
        {0.0015, *(round(0.001 * k, 3) for k in range(2, 26))}
    most = FLOOR[0] if mm else FLOOR[0] / 25.4
    told = {int(m.group(1)): [float(f) for f in re.findall(r"\d*\.\d+", m.group(2))]
            for t in pack.texts("Nut") if (m := re.match(r"string (\d+): (.*)", t))}
    for i in range(pack.count):
        slot, leaves = pack.part.slot(i), told.get(i + 1, [])
        if slot["stack_now"] == "-":
            pack.same(f"nut: feelers of slot {i + 1}", leaves, [])
            continue
        over = sum(leaves) - float(slot["stack_now"])
        thickest = sum(sorted(usual)[-3:])
        if float(slot["stack_now"]) <= thickest * 0.9 and not (
                1 <= len(leaves) <= 3 and len(set(leaves)) == len(leaves) and
                usual.issuperset(leaves) and -1e-9 <= over <= most + 1e-9):
            pack.report.wrong(f"nut: feelers of slot {i + 1}", slot["stack_now"], leaves)


def from_the_end(pack, title, centres):
    """The centres of the strings from the bass end, which is 0, as they lie."""
    seen = ["0", *centres[::-1]]
    seen = seen[::-1] if pack.left else seen
    if not stands_led_out(pack, title, seen):
        pack.report.wrong(f"{title}: centres", seen, "no such row")


def led_out(pack, title, what, figure):
    """The figure that stands at each string's ringed number, over the tables."""
    near = {i: [] for i in range(pack.count)}
    for page in pack.pages[title]:
        above = table_top(pack, page)
        texts = [(x, y, t) for x, y, t in page.texts if y > above]
        for i, figures in near.items():
            rings = [(x, y) for x, y, t in texts if t == str(i + 1)]
            figures += [t for x, y, t in texts for rx, ry in rings if re.fullmatch(r"-?\d*\.\d+", t)
                        and abs(x - rx) < 4.5 and 0 < abs(y - ry) < 16]
    for i, figures in near.items():
        if figure(i) != "-" and not any(figure(i) == told for told in figures):
            pack.report.wrong(f"{title}: {what} at string {i + 1}", figure(i), figures)


def table_top(pack, page):
    """Over the heads of the table on a page, by its row of string 1; where it has none, all of it."""
    texts = page.texts
    numbers = [y for x, y, text in texts if x < 40 and text == "1"]
    return max((y for x, y, text in texts if x < 60 and text == pack.note(0) and
                any(abs(y - at) < 0.1 for at in numbers)), default=58) + 12


def table_end(pack, page):
    """The last string's row of the table on a page; a page without has all its words above."""
    count = str(pack.count)
    rows = [y for x, y, text in page.texts if x < 40 and text == count]
    return max((y for x, y, text in page.texts if x < 60 and text == pack.note(pack.count - 1) and
                any(abs(y - at) < 0.1 for at in rows)), default=0)


def strings_said(words, count):
    if re.search(r"\ball slots\b", words):
        return list(range(1, count + 1))
    named = re.search(r"\bslots? (\d+(?:(?:, | and )\d+)*)", words)
    return [int(n) for n in re.findall(r"\d+", named.group(1))] if named else []


def made_to_fit(pack, which, title, thickness, bottom):
    """A new part names its fit in the slot it is pushed into; a bottom that is worked is flat."""
    texts, anew = pack.texts(title), pack.result[which]["remedy"] == "replace"
    told = length(pack, thickness)
    pack.same(f"{which}: fit", [t for t in texts if t.startswith("push fit")],
              [f"push fit in {told}: {limits(*FIT, pack.unit)}"] if anew and told != "-" else [])
    pack.same(f"{which}: bottom", [re.search(r"\d*\.\d+", t).group() for t in texts
                                  if t.startswith("flat within")],
              [length(pack, 0.02)] if bottom or anew else [])


def nut_head(pack):
    """What the paper begins with: which slots, and how thick a shim or how large a blank."""
    nut, words = pack.result["nut"], pack.rows("Nut")[0][0]
    verdicts = [row["verdict"] for row in nut["strings"]]
    of = {"file": "file", "fill": "raise"}.get(nut["remedy"])
    zero = pack.job.nut.zero_fret
    if of:
        wanted = [i + 1 for i, v in enumerate(verdicts) if v == of]
        pack.same("nut: slots named", strings_said(words, pack.count), wanted)
    elif nut["remedy"] == "none" and not zero:
        wanted = [i + 1 for i, v in enumerate(verdicts) if v == "wait"]
        pack.same("nut: slots not read", strings_said(words, pack.count), wanted)
    numbers = re.findall(r"\d*\.\d+", words)
    if nut["remedy"] == "shim":
        pack.same("nut: shim", numbers, [length(pack, nut["shim"])])
    elif nut["remedy"] == "replace":
        pack.same("nut: blank", numbers, pack.part.blank("nut") or [])


def section_string(pack):
    """The slot with most to file, else the first that can be shown."""
    best, most = None, -math.inf
    for i, row in enumerate(pack.result["nut"]["strings"]):
        deep = (row["deepen"] or 0.0) if row["verdict"] == "file" else 0.0
        if row["floor"] is not None and row["stack"] is not None and deep > most:
            best, most = i, deep
    known = not unknown(pack.job.nut.thickness) and pack.result["nut"]["fall_angle"] is not None
    return best if known else None


def nut_section(pack):
    cut = section_string(pack)
    captions = [re.search(r"\d+", t) for t in pack.texts("Nut") if re.match(r"A-A, ", t)]
    pack.same("nut: sections", [int(m.group()) for m in captions],
              [] if cut is None else [cut + 1])
    pack.same("nut: planes", pack.texts("Nut").count("A"), 0 if cut is None else 2)
    if cut is not None:
        row = pack.result["nut"]["strings"][cut]
        crossing = pack.job.nut.thickness / math.cos(math.radians(pack.result["nut"]["slant"]))
        top = nut_top(pack, cut)[0]
        slot = pack.part.slot(cut)
        stack = slot["stack"] if slot["stack_now"] in ("-", slot["stack"]) else f"{slot['stack_now']} now"
        floor = slot["floor"]
        pack.has("Nut", "section", stack, bracketed(floor), top)
        fall = math.tan(math.radians(pack.result["nut"]["fall_angle"])) * crossing
        scale = [int(m.group(1)) for t in pack.texts("Nut") if (m := re.search(r"(\d+):1, falls", t))]
        under = row["floor"] - fall - (row["floor"] + row["depth"]) / 2
        if under * min(scale, default=1) > 9:  # else its lines would cross the whole height's figure
            pack.has("Nut", "drop of the slot", length(pack, fall))
        pack.has("Nut", "thickness", bracketed(length(pack, pack.job.nut.thickness)))
        if abs(pack.result["nut"]["slant"]) >= 0.05:
            pack.has("Nut", "along the slot", bracketed(length(pack, crossing)))
        section_string_runs(pack, row, crossing)


def section_string_runs(pack, row, crossing):
    """The string's two edges in the section: level, down along the slot's floor, down to the tuner."""
    caption = next(t for t in pack.texts("Nut") if re.match(r"A-A, ", t))
    scale = float(re.search(r"(\d+):1", caption).group(1))
    fall = math.tan(math.radians(pack.result["nut"]["fall_angle"])) * crossing * scale
    gauge = pack.job.strings[row["number"] - 1].gauge * scale
    edges = []
    for page in pack.pages["Nut"]:
        for path in page.paths:
            p = path.points
            if len(p) == 4 and not path.closed and abs(p[0][1] - p[1][1]) < 1e-3 < p[1][0] - p[0][0]:
                edges.append([p[2][0] - p[1][0], p[1][1] - p[2][1], p[2][1] - p[3][1], p[1][1]])
    good = len(edges) == 2 and all(
        abs(run - crossing * scale) < 0.01 and abs(down - fall) < 0.01 and after >= -1e-6
        for run, down, after, _ in edges) and abs(abs(edges[0][3] - edges[1][3]) - gauge) < 0.01
    if not good:
        pack.report.wrong("nut: the string in the section", (crossing * scale, fall, gauge), edges)


def leans(pack, which, title):
    """How far a part leans, and which way; nothing of one that stands square."""
    slant = pack.result[which]["slant"]
    said = [t for t in pack.texts(title) if re.match(r"[\d.]+°, ", t)]
    if abs(slant) < 0.05:
        pack.same(f"{which}: leans", said, [])
        return
    end = "headstock" if slant < 0 else "tail"
    pack.same(f"{which}: leans", [(t.split("°")[0], t.split()[-1]) for t in said],
              [(rounded(abs(slant), 1), end)])


def nut_height(pack):
    """An arc's crest is at least every slot's top; another top is highest at a string or at an end, and
    goes straight on beyond the outer ones."""
    floors = [row["floor"] for row in pack.result["nut"]["strings"]]
    if any(floor is None for floor in floors) or arc_of(pack, "Nut"):
        return
    tops = [floor - pack.part.nut_shim() + row["depth"]
            for floor, row in zip(floors, pack.result["nut"]["strings"])]
    width = pack.job.nut.width / math.cos(math.radians(pack.result["nut"]["slant"]))
    at = [pack.part.slot_at(i) for i in range(pack.count)]
    ends = [tops[0], tops[-1]]
    if pack.count > 1:
        points = list(zip(at, tops))
        ends = [shape.past(points, width), shape.past(points[::-1], 0.0)]
    pack.has("Nut", "height", length(pack, max(tops + ends)))
    told = [re.findall(r"\d*\.\d+", t) for t in pack.texts("Nut") if re.match(r"bass [\d.]", t)]
    pack.same("nut: ends", told, [[length(pack, end) for end in ends[::-1]]])


def nut(pack):
    if pack.waits("nut"):
        return
    nut_table(pack)
    nut_head(pack)
    blades(pack)
    nut_section(pack)
    leans(pack, "nut", "Nut")
    made_to_fit(pack, "nut", "Nut", pack.job.nut.thickness, pack.result["nut"]["remedy"] == "shim")
    lean = math.cos(math.radians(pack.result["nut"]["slant"]))
    along = [pack.part.slot(i)["along"] for i in range(pack.count)]
    floors = [pack.part.slot(i)["floor"] for i in range(pack.count)]
    words = " ".join(pack.texts("Nut"))
    if not magnified(pack, words):
        pack.has("Nut", "centres", *along)
        nut_sizes(pack, lean)
        return
    pack.has("Nut", "centres", *along, *along)  # in the view and in the table
    from_the_end(pack, "Nut", along)
    told = re.findall(r"centres from \w+ end(?: along it)?", words)
    pack.same("nut: where the centres are from", told[:1],
              ["centres from bass end along it" if lean < 1 else "centres from bass end"])
    pack.same("nut: limits of the floors", f"over bottom {limits(*FLOOR, pack.unit)}, centres" in words,
              any(floor != "-" for floor in floors))
    led_out(pack, "Nut", "floor", lambda i: floors[i])
    nut_sizes(pack, lean)


def magnified(pack, words):
    """Whether the face is drawn larger than it is: only a nut too wide for that at twice its size is not."""
    is_seen = " from the body" in words
    if not is_seen and pack.job.nut.width < WIDE:
        pack.report.wrong("nut: its face", "magnified", "at full size alone")
    return is_seen


def nut_sizes(pack, lean):
    result = pack.result["nut"]
    pack.has("Nut", "length", length(pack, pack.job.nut.width / lean))
    nut_height(pack)
    pack.has("Nut", "gap", length(pack, None if unknown(result["gap"]) else result["gap"] / lean))
    if result["fall_angle"] is not None:
        said = [re.search(r"(?:falls (\d+\.\d)°|(\d+\.\d)° to the tuners)", t) for t in pack.texts("Nut")]
        pack.same("nut: fall", [m.group(1) or m.group(2) for m in said if m], [rounded(result["fall_angle"], 1)])
    told = [row[row.index("neck to board") + 1] for row in pack.rows("Nut") if "neck to board" in row]
    pack.same("nut: neck to board", told, [] if unknown(pack.job.nut.seat_to_board) else
              [length(pack, pack.job.nut.seat_to_board)])
    told = [row[row.index("shim") + 1] for row in pack.rows("Nut") if "shim" in row]
    pack.same("nut: shim", told,
              [length(pack, result["shim"])] if result["remedy"] == "shim" else [])


# --- the saddle ---------------------------------------------------------------------------------

def amount(pack, i):
    bearing = pack.part.bearing(i)
    if pack.result["saddle"]["remedy"] == "replace" and bearing["height_first"] != "-":
        return bearing["height_first"]
    if bearing["does"] == "leave" and bearing["by"] != "-":
        return ("up " if pack.part.taken(i) < 0 else "") + bearing["by"]   # it comes along with the others
    return {"lower": bearing["by"], "raise": f"up {bearing['by']}"}.get(bearing["does"],
                                                                       bearing["does"])


def adds_up(pack):
    """In each row of the saddle's table: the height now, less what it is lowered by or with what it is
    raised by, is the finished height within the rounding of the three."""
    unit = 0.01 if pack.unit == "mm" else 0.001
    if all(pack.part.bearing(i)["present"] == "-" for i in range(pack.count)):
        return
    for row in pack.rows("Saddle"):
        if len(row) < 8 or not row[0].isdigit() or not 1 <= int(row[0]) <= pack.count or not NUMBER.fullmatch(row[2]):
            continue
        if pack.result["saddle"]["remedy"] == "replace" or row[3] == "wait":
            continue
        first = any(pack.part.bearing(i)["base_first"] != "-" for i in range(pack.count))
        dressed = any(pack.part.bearing(i)["dress"] != "-" for i in range(pack.count))
        done = row[4 + first + dressed].strip("()")
        up = row[3].startswith("up ")
        by = 0.0 if row[3] == "leave" else float(row[3].removeprefix("up ")) * (-1 if up else 1)
        if NUMBER.fullmatch(done) and abs(float(row[2]) - by - float(done)) > 2.0 * unit + 1e-9:
            pack.report.wrong(f"saddle: string {row[0]}, now less lower by", done, float(row[2]) - by)


def angle(value):
    return "-" if unknown(value) else f"{rounded(value, 0)}°"


def glued(pack):
    """A glued saddle is made to its height over the bridge: a caliper does not reach its bottom."""
    return pack.part.kind == "glued"


def made(pack):
    """How the heights over the bottom and over the bridge are told: one of them for reference."""
    return (bracketed, plain) if glued(pack) else (plain, bracketed)


def saddle_table(pack):
    result = pack.result["saddle"]

    def wanted(i):
        row, bearing = result["strings"][i], pack.part.bearing(i)
        share = None if unknown(row["in_slot"]) else math.floor(100 * row["in_slot"] + 1e-9)
        return [bearing["present"], amount(pack, i)] + \
            [bearing["base_first"]] * (result["bottom_cut"] is not None) + \
            [off_the_top(pack, i)] + \
            [*(f(bearing[key]) for f, key in zip(made(pack), ("height", "out")))] + \
            [rounded(share, 0), angle(row["break_angle"])] + \
            [length(pack, row["peak"])]
    pack.table("Saddle", wanted)
    rows = [pack.part.bearing(i) for i in range(pack.count)]
    lowered = result["remedy"] != "replace"
    heads(pack, "Saddle", [
        (OFF_SADDLE, [row["by"] for i, row in enumerate(rows)
                      if row["does"] in ("lower", "leave") and lowered and not amount(pack, i).startswith("up ")]),
        (OFF_SADDLE, [row["base_first"] for row in rows]),
        (OFF_SADDLE, [off_the_top(pack, i) for i in range(pack.count)]),
        (HEIGHT, [row["out" if glued(pack) else "height"] for row in rows])])


def ends_of(pack, line, way):
    return [length(pack, line[end], way) for end in ("treble", "bass")]


def saddle_cut(pack):
    """The line to sand to: where the caliper is to stop, and the figures along it."""
    result, texts = pack.result["saddle"], pack.texts("Saddle")
    cut = result["bottom_cut"]
    if cut is None:
        return
    stops = [pack.part.caliper(end) for end in ("treble", "bass")]
    takes = max(cut["first_pass"].values()) >= 0.01   # less is no pass: then nothing is sanded yet
    if "-" not in stops and takes:
        wanted = f"{stops[0]} at string 1,  {stops[1]} at string {pack.count}"
        pack.has("Saddle", "caliper", wanted if pack.count > 1 else stops[0])
    firsts = [pack.part.bearing(i)["base_first"] for i in range(pack.count)]
    along = ends_of(pack, cut["first_pass"], DOWN)
    ends = [re.findall(r"\d*\.\d+", t) for t in texts if t.startswith("ends: treble ")]
    if not takes:
        pack.same("saddle: first pass at the ends", ends, [])
    elif ends:  # a dense paper leads nothing out along the bottom: the ends are told, the rest tabled
        pack.same("saddle: first pass at the ends", ends, [[str(figure) for figure in along]])
        pack.has("Saddle", "first pass", *firsts)
    else:
        pack.has("Saddle", "first pass along the bottom", *firsts, *along)
    said = [re.findall(r"treble|bass|\d*\.\d+", t) for t in texts if re.match(r"treble [\d.]", t)]
    whole = ends_of(pack, cut, DOWN)
    wanted = [] if pack.part.one_pass() else [["treble", whole[0], "bass", whole[1]]]
    pack.same("saddle: whole cut", said, wanted)


def most_off(pack, i):
    """What comes off the top of the saddle at a string: in this pass, or in all where the bottom comes first."""
    if pack.part.bearing(i)["dress"] == "-":
        return 0.0
    later = pack.part.dresses_later()
    return (pack.result["saddle"]["strings"][i]["dress"] if later else pack.part.dress_now(i)) or 0.0


def saddle_section(pack):
    """Where most comes off the top, else where it stands out least."""
    rows = pack.result["saddle"]["strings"]
    out = {i: row["protrusion"] + pack.part.left_on(i) for i, row in enumerate(rows)
           if not unknown(row["protrusion"]) and not unknown(row["height"])}
    captions = [re.search(r"string (\d+)", t) for t in pack.texts("Saddle")
                if re.match(r"A-A, at string \d", t)]
    pack.same("saddle: planes", pack.texts("Saddle").count("A"), 2 if out else 0)
    least = min(out, key=lambda i: (-most_off(pack, i), out[i], i)) if out else None
    pack.same("saddle: sections", [int(m.group(1)) for m in captions],
              [] if least is None else [least + 1])
    if least is not None:
        row = rows[least]
        wall = row["height"] - row["protrusion"] + pack.job.saddle.pickup
        told = [pack.part.bearing(least)[key] for key in ("out", "height")]
        told = told if glued(pack) else told[::-1]
        pack.has("Saddle", "section", bracketed(told[0]), bracketed(told[1]),
                 bracketed(length(pack, wall)))
        if pack.job.saddle.pickup > 0 and not pack.waits("saddle"):
            pack.same("saddle: pickup", pack.texts("Saddle").count(f"{length(pack, pack.job.saddle.pickup)} thick, under it"), 1)
        if not unknown(pack.job.saddle.thickness):
            pack.has("Saddle", "thickness", bracketed(length(pack, pack.job.saddle.thickness)))


def saddle_top(pack):
    """A new saddle's top is an arc through the heights that are printed, or has its ends told."""
    anew = pack.result["saddle"]["remedy"] == "replace"
    heights = [row["height"] for row in pack.result["saddle"]["strings"]]
    ends = [t for t in pack.texts("Saddle") if re.match(r"bass [\d.]", t)]
    arc = arc_of(pack, "Saddle")
    if not anew or any(map(unknown, heights)):
        pack.same("saddle: top", (arc, ends), (None, []))
        return
    pack.same("saddle: ends or an arc", (arc is None, len(ends)), (arc is None, arc is None))
    slack = 0.016 if pack.unit == "mm" else 0.05
    lean = math.cos(math.radians(pack.result["saddle"]["slant"]))
    for row, height in zip(pack.result["strings"], heights):
        x = (pack.job.saddle.length / 2 + row["saddle_z"]) / lean
        if arc and abs(on_arc(arc, x) - height) > slack:
            pack.report.wrong("saddle: arc", height, on_arc(arc, x))


def saddle_piece(pack):
    saddle_table(pack)
    adds_up(pack)
    ends_named(pack)
    saddle_cut(pack)
    saddle_section(pack)
    leans(pack, "saddle", "Saddle")
    if pack.part.kind != "feet":
        made_to_fit(pack, "saddle", "Saddle", pack.job.saddle.thickness,
                    pack.result["saddle"]["bottom_cut"] is not None)
    result, lean = pack.result["saddle"], math.cos(math.radians(pack.result["saddle"]["slant"]))
    heights = [pack.part.bearing(i)["out" if glued(pack) else "height"]
               for i in range(pack.count)]
    if result["remedy"] != "shim":
        led_out(pack, "Saddle", "height", lambda i: heights[i])
    centres = [length(pack, (pack.job.saddle.length / 2 + row["saddle_z"]) / lean)
               for row in pack.result["strings"]]
    from_the_end(pack, "Saddle", centres)
    pack.has("Saddle", "length", length(pack, pack.job.saddle.length / lean))
    saddle_top(pack)
    if result["remedy"] == "shim":
        pack.has("Saddle", "shim", length(pack, result["shim"]))
    most = max(pack.part.left_on(i) for i in range(pack.count))
    said = [re.search(r"\d*\.\d+", t).group() for t in pack.texts("Saddle")
            if re.match(r"up to [\d.]+:", t)]
    pack.same("saddle: left on", said, [length(pack, most)] if most >= LEAST_PASS else [])


def ends_named(pack):
    """Every face from the tail has its two ends named, the bass end at the left but for a left hand."""
    for page in pack.pages["Saddle"]:
        faces = [y for _, y, t in page.texts if re.match(r"Face.* from the tail", t)]
        for top in faces:
            at = {t: x for x, y, t in page.texts if t in ("bass", "treble") and 0 < top - y < 75}
            pack.same("saddle: ends named", (len(at), len(at) == 2 and (at["bass"] < at["treble"]) != pack.left),
                      (2, True))


def saddle_screws(pack):
    result = pack.result["saddle"]
    pack.same("saddle: screws make no dust", [t for t in pack.texts("Saddle") if "dust" in t], [])

    def wanted(i):
        bearing = pack.part.bearing(i)
        way = bearing["way"]
        way = way if way != "-" else "wait" if bearing["does"] == "wait" else "stays"
        curve = [pack.part.curve_off(i), action(result["strings"][i]["asked"]["action"], pack.unit)]
        return [action(pack.part.stages["nut"]["strings"][i]["action"], pack.unit), way, bearing["moves"],
                bearing["turns"], action(pack.part.action_turned(i), pack.unit),
                *(curve if any(pack.part.curved(k) for k in range(pack.count)) else [])]
    pack.table("Saddle", wanted)
    heads = [row[0] for row in pack.rows("Saddle")[:2]]
    if result["posts"]:
        for head, end in zip(heads, ("treble", "bass")):
            by = result["posts"][end]
            pack.same(f"saddle: {end} post", re.findall(r"Treble|Bass|\bup|down|\d*\.\d+|(?:\d+-|<)?\d/\d|\d+", head.replace("less than ", "<")),
                      [end.capitalize(), "up" if by < 0 else "down", length(pack, abs(by)),
                       eighths(result["posts"]["turns"][end])])


def saddle(pack):
    if not pack.waits("saddle"):
        (saddle_piece if pack.part.cut_to_height else saddle_screws)(pack)


CHECKS = (nut, saddle, dimensioned_once)
