# SPDX-License-Identifier: MIT
"""Nut and saddle on paper: their tables, the figures led out of their views, sections, cuts."""
import math
import re

from packs import FRAME_LEFT, length, stands_led_out
from shown import DOWN, UP, radius, rounded, size, unknown
from part import LEAST_PASS

CUTS_LEAST, GENERAL = 0.005, 0.5  # mm: what a size in a table has a tolerance for


def tolerances(pack, columns):
    """How many columns of a table say to within how much they hold."""
    return sum(any(not unknown(v) and CUTS_LEAST <= abs(v) < GENERAL for v in column)
               for column in columns)


def count_within(pack, title, tool):
    """How often a tolerance stands on a paper; it may be rounded either way just at a half."""
    figure = length(pack, tool)
    return sum(text[:1] == "±" and figure == text[1:] for text in pack.texts(title))


def nut_table(pack):
    def wanted(i):
        slot = pack.part.slot(i)
        amount = slot["deepen"] if slot["does"] == "deeper" else slot["does"]
        stop = slot["stack"] if slot["does"] in ("deeper", "fill", "new") else "-"
        return [slot[key] for key in ("gauge", "width", "along", "floor", "depth")] + [
            amount, slot["first"], slot["stack_first"], stop]
    pack.table("Nut", wanted)
    rows, shim = pack.result["nut"]["strings"], pack.result["nut"]["shim"]
    slots = [pack.part.slot(i) for i in range(pack.count)]
    shim = shim if pack.result["nut"]["remedy"] == "shim" else 0.0
    own = [0.0 if row["verdict"] == "leave" else row["deepen"] for row in rows]
    sizes = [[row["width"] for row in rows], [row["depth"] for row in rows],
             [o + shim if slot["deepen"] != "-" else None for o, slot in zip(own, slots)],
             [row["first_pass"] + shim if slot["first"] != "-" else None
              for row, slot in zip(rows, slots)]]
    told = any(y < last - 4 for page in pack.pages["Nut"] for last in [table_end(pack, page)]
               for x, y, text in page.texts if y > 66 and x > FRAME_LEFT)
    pack.same("nut: how to stop, under the table", told, pack.result["nut"]["remedy"] != "none")
    pack.same("nut: how good the feelers are", [
        re.findall(r"\d*\.\d+", text) for text in pack.texts("Nut")
        if text.startswith("Feelers: ")], feelers(pack))
    pack.same("nut: tolerances", count_within(pack, "Nut", pack.job.tools.first),
              tolerances(pack, sizes))


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
        deep = row["deepen"] if row["verdict"] == "file" else 0.0
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
        top = length(pack, row["floor"] + row["depth"])
        stack = length(pack, row["stack"], UP)
        pack.has("Nut", "section", stack, length(pack, row["floor"]), top,
                 size(crossing, pack.unit))
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


def nut(pack):
    if pack.waits("nut"):
        return
    nut_table(pack)
    nut_head(pack)
    nut_section(pack)
    leans(pack, "nut", "Nut")
    result, lean = pack.result["nut"], math.cos(math.radians(pack.result["nut"]["slant"]))
    along = [pack.part.slot(i)["along"] for i in range(pack.count)]
    floors = [pack.part.slot(i)["floor"] for i in range(pack.count)]
    pack.has("Nut", "centres", *along, *along)  # in the view and in the table
    from_the_end(pack, "Nut", along)
    led_out(pack, "Nut", "floor", lambda i: floors[i])
    pack.has("Nut", "length", length(pack, pack.job.nut.width / lean))
    tops = [row["floor"] + row["depth"] for row in result["strings"] if row["floor"] is not None]
    if len(tops) == pack.count:
        pack.has("Nut", "height", length(pack, max(tops)))
    pack.has("Nut", "gap", length(pack, None if unknown(result["gap"]) else result["gap"] / lean))
    if result["fall_angle"] is not None:
        said = [t for t in pack.texts("Nut") if re.match(r"\d+° to", t)]
        pack.same("nut: fall", [t.split("°")[0] for t in said], [rounded(result["fall_angle"], 0)])
    if result["remedy"] == "shim":
        pack.has("Nut", "shim", length(pack, result["shim"]))


# --- the saddle ---------------------------------------------------------------------------------

def amount(pack, i):
    bearing = pack.part.bearing(i)
    return {"lower": bearing["by"], "raise": f"up {bearing['by']}"}.get(bearing["does"],
                                                                       bearing["does"])


def angle(value):
    return "-" if unknown(value) else f"{rounded(value, 0)}°"


def saddle_table(pack):
    result = pack.result["saddle"]
    dressed = any(pack.part.bearing(i)["dress"] != "-" for i in range(pack.count))

    def wanted(i):
        row, bearing = result["strings"][i], pack.part.bearing(i)
        height = None if unknown(row["height"]) else row["height"] + pack.part.left_on(i)
        share = None if unknown(row["in_slot"]) or unknown(height) else \
            100 * row["in_slot"] * row["height"] / height
        return [bearing["present"], amount(pack, i)] + \
            [bearing["base_first"]] * (result["bottom_cut"] is not None) + \
            [bearing["dress"]] * dressed + \
            [bearing["height"], bearing["out"], rounded(share, 0), angle(row["break_angle"])] + \
            [length(pack, row["peak"])] * (row["peak"] is not None)
    pack.table("Saddle", wanted)
    cut = result["bottom_cut"]
    rows = result["strings"]
    sizes = [[row["lower"] if row["verdict"] in ("lower", "raise") and
              result["remedy"] != "replace" else None for row in rows],
             [pack.part.base_at(cut["first_pass"], i) if cut else None
              for i in range(pack.count)],
             [row["dress"] if pack.part.bearing(i)["dress"] != "-" else None
              for i, row in enumerate(rows)]]
    pack.same("saddle: tolerances", count_within(pack, "Saddle", pack.job.tools.caliper),
              tolerances(pack, sizes))


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
    pack.has("Saddle", "first pass along the bottom", *firsts, *along)
    said = [re.findall(r"treble|bass|\d*\.\d+", t) for t in texts if re.match(r"treble [\d.]", t)]
    whole = ends_of(pack, cut, DOWN)
    wanted = [] if pack.part.one_pass() else [["treble", whole[0], "bass", whole[1]]]
    pack.same("saddle: whole cut", said, wanted)


def saddle_section(pack):
    rows = pack.result["saddle"]["strings"]
    out = {i: row["protrusion"] + pack.part.left_on(i) for i, row in enumerate(rows)
           if not unknown(row["protrusion"])}
    captions = [re.search(r"string (\d+)", t) for t in pack.texts("Saddle")
                if re.match(r"Section at string \d", t)]
    least = min(out, key=lambda i: (out[i], i)) if out else None
    pack.same("saddle: sections", [int(m.group(1)) for m in captions],
              [] if least is None else [least + 1])
    if least is not None:
        row = rows[least]
        wall = row["height"] - row["protrusion"] + pack.job.saddle.pickup
        pack.has("Saddle", "section", length(pack, out[least]),
                 pack.part.bearing(least)["height"], size(wall, pack.unit))
        if not unknown(pack.job.saddle.thickness):
            pack.has("Saddle", "thickness", size(pack.job.saddle.thickness, pack.unit))


def saddle_piece(pack):
    saddle_table(pack)
    saddle_cut(pack)
    saddle_section(pack)
    leans(pack, "saddle", "Saddle")
    result, lean = pack.result["saddle"], math.cos(math.radians(pack.result["saddle"]["slant"]))
    heights = [pack.part.bearing(i)["height"] for i in range(pack.count)]
    if result["remedy"] != "shim":
        led_out(pack, "Saddle", "height", lambda i: heights[i])
    centres = [length(pack, (pack.job.saddle.length / 2 + row["saddle_z"]) / lean)
               for row in pack.result["strings"]]
    from_the_end(pack, "Saddle", centres)
    pack.has("Saddle", "length", length(pack, pack.job.saddle.length / lean))
    if lean == 1:
        pack.has("Saddle", "radius", radius(result["top_radius"], pack.unit))
    if result["remedy"] == "shim":
        pack.has("Saddle", "shim", length(pack, result["shim"]))
    most = max(pack.part.left_on(i) for i in range(pack.count))
    said = [re.search(r"\d*\.\d+", t).group() for t in pack.texts("Saddle")
            if re.match(r"up to [\d.]+:", t)]
    pack.same("saddle: left on", said, [length(pack, most)] if most >= LEAST_PASS else [])


def saddle_screws(pack):
    result = pack.result["saddle"]

    def wanted(i):
        bearing = pack.part.bearing(i)
        way = bearing["way"]
        way = way if way != "-" else "wait" if bearing["does"] == "wait" else "stays"
        return [bearing["action_before"], way, bearing["moves"], bearing["turns"],
                bearing["action_done"]]
    pack.table("Saddle", wanted)
    heads = [row[0] for row in pack.rows("Saddle")[:2]]
    if result["posts"]:
        for head, end in zip(heads, ("treble", "bass")):
            by = result["posts"][end]
            pack.same(f"saddle: {end} post", re.findall(r"Treble|Bass|\bup|down|\d*\.\d+|\d+", head),
                      [end.capitalize(), "up" if by < 0 else "down", length(pack, abs(by)),
                       rounded(abs(result["posts"]["turns"][end]), 2)])


def saddle(pack):
    if not pack.waits("saddle"):
        (saddle_piece if pack.part.cut_to_height else saddle_screws)(pack)


CHECKS = (nut, saddle)
