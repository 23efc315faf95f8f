# SPDX-License-Identifier: MIT
"""Buzz and intonation on paper: what rings, what plays in tune."""
import math
import re

from packs import inside, length
from shown import UP, rounded, unknown

TITLE = "Buzz and intonation"


def signed(value, figure):
    return f"+{figure}" if not unknown(value) and value > 0 and re.search("[1-9]", figure) \
        else figure


def pitch(pack):
    """Setbacks of each string, the tuner's cents, and where in the saddle's thickness they fall."""
    cents = pack.job.readings.cents
    told, lean = pack.result["compensation"]["strings"], pack.result["saddle"]["slant"]
    half = pack.job.saddle.thickness / 2 / math.cos(math.radians(lean))
    in_slot = pack.part.kind in ("slotted", "glued") and not math.isnan(half)

    def place(off):
        if unknown(off):
            return "-"
        past = off - half if off > half + 1e-9 else off + half if off < -half - 1e-9 else 0
        much = length(pack, abs(past))
        return f"{much} ahead" if past < 0 else f"{much} behind" if past > 0 else "inside"

    def wanted(i):
        row = told[i]
        cells = [length(pack, v) for v in (pack.job.saddle.setback[i], row["saddle_only"],
                                           row["best"]["setback"], row["best"]["advance"])]
        cells += [signed(cents[i], rounded(cents[i], 1)),
                  signed(row["move"], length(pack, row["move"]))]
        return cells + ([place(row["off_slot"])] if in_slot else [])
    if any(not unknown(row["best"]["setback"]) for row in told):
        pack.table(TITLE, wanted, pack.marked_note)


def assumed(pack):
    """What the star means, beside the strings that have one, and the star over their columns."""
    marked = [i for i, row in enumerate(pack.result["strings"])
              if row["assumed"] and not unknown(row["tension"])]
    told = " ".join(" ".join(row) for row in pack.rows(TITLE))
    found = re.search(r"usual one is assumed(: all strings|[:,] strings? \d+(?:, \d+)*(?: and \d+)?)?", told)
    which = (found.group(1) or "") if found else ""
    numbers = list(range(1, pack.count + 1)) if "all" in which else \
        [int(n) for n in re.findall(r"\d+", which)]
    if pack.count == 1:
        pack.same("assumed cores", found is not None, bool(marked))
    else:
        pack.same("assumed cores", numbers, [i + 1 for i in marked])


def newtons(force):
    """Three figures; of a note that lies on a fret, a word."""
    if unknown(force) or force < 0:
        return "-" if unknown(force) else "dead"
    return rounded(force, 2 if force < 9.995 else 1 if force <= 99.95 else 0)


def shown_when(pack):
    """Whether there is a table of now, and one of after the work: none where nothing is known."""
    now, after = (any(known(row) for row in pack.result["clearance"][which]) for which in ("strings", "after"))
    heard = any(cause["heard"] for cause in pack.result["causes"])
    return [now or (heard and after), after]


def clearance(pack):
    """Each fretted note's hardest clean pluck, the fret it would touch beside it."""
    rows = pack.rows(TITLE)
    told = [words.split(",")[0] for words in pack.texts(TITLE)]
    pack.same("clearance: tables", ["Now" in told, "After" in told], shown_when(pack))
    for which in ("strings", "after"):
        for stop in range(0, pack.job.board.frets):
            cells = []
            for row in pack.result["clearance"][which]:
                force = row["clean_force"][stop]
                fret = row["at_fret"][stop]
                cells.append([newtons(force)] + ([str(fret)] if fret else []))
            if any(known(row) for row in pack.result["clearance"][which]) and not any(contains(row, cells, pack.left) for row in rows):
                pack.report.wrong(f"clearance {which}, fret {stop}", cells, "no such row")
                return


def known(row):
    return any(not unknown(force) for force in row["clean_force"])


def contains(row, cells, left):
    """Whether a row has the cells of all strings, as they lie: string 1 at the right."""
    seen = [cell for pair in (cells if left else cells[::-1]) for cell in pair]
    return inside(row, seen)


def heads(pack):
    """How many notes buzz under the pick, now and after; how far out the worst string is."""
    clearance = pack.result["clearance"]
    force = clearance["attack"]["force"]
    rows = [row[0] for row in pack.rows(TITLE)]
    buzz = [sum(not unknown(v) and not unknown(force[i]) and round(v, 2) < round(force[i], 2) for i, row in enumerate(clearance[which])
                for v in row["clean_force"][:pack.job.board.frets])
            for which in ("strings", "after")]
    heard = sum(bool(cause["heard"]) for cause in pack.result["causes"])
    if any(known(row) for row in clearance["strings"]) and not unknown(force[0]):
        numbers = re.findall(r"\d+|none", rows[0])
        wanted = [str(n) if n else "none" for n in buzz] if any(buzz) else \
            [str(heard)] if heard else []
        pack.same("buzz: notes", numbers, wanted)
    worst = [farthest(row) for row in pack.result["compensation"]["strings"]]
    out = [[v for v in side if not unknown(v)] for side in zip(*worst)]
    if out[0]:
        wanted = [rounded(max(side), 1) for side in out]
        numbers = [re.findall(r"\d+\.\d", row) for row in rows]
        pack.same("pitch: farthest out", wanted in numbers, True)


def farthest(row):
    """The most cents a string is out by, as built and at best; nothing where a fret is not known."""
    return [None if any(map(unknown, row[key])) else max(map(abs, row[key]))
            for key in ("as_built_cents", "best_cents")]


def graphs(pack):
    """Each string's two curves of cents over frets, all to one scale; what a string is out by."""
    strings = pack.result["compensation"]["strings"]
    known_ones = [i for i, row in enumerate(strings) if None not in farthest(row)]
    if not any(farthest(row)[0] is not None for row in strings):
        return
    for i in known_ones:
        figures = [rounded(v, 1) for v in farthest(strings[i])]
        if not any([str(i + 1), pack.note(i)] == row[k:k + 2] and
                   re.findall(r"\d+\.\d", row[k + 2]) == figures
                   for row in pack.rows(TITLE) for k in range(len(row) - 2)):
            pack.report.wrong(f"cents of string {i + 1}", figures, "nowhere")
    paths = [path for page in pack.pages[TITLE] for path in page.paths
             if len(path.points) == 12 and not path.filled]
    curves = [path for path in paths if path.dash] + [path for path in paths if not path.dash]
    wanted = [strings[i][key] for key in ("as_built_cents", "best_cents") for i in known_ones]
    pack.same("cents: curves", [path.closed for path in curves], [False] * len(wanted))
    scales = []
    for path, cents in zip(curves, wanted):
        steps = [b[0] - a[0] for a, b in zip(path.points, path.points[1:])]
        pack.same("cents: frets apart", max(steps) - min(steps) < 0.01, True)
        low, high = min(range(12), key=lambda k: cents[k]), max(range(12), key=lambda k: cents[k])
        if cents[high] - cents[low] > 0.5:
            scale = (path.points[high][1] - path.points[low][1]) / (cents[high] - cents[low])
            scales.append(scale)
            good = all(abs(y - path.points[low][1] - scale * (c - cents[low])) < 0.01
                       for (_, y), c in zip(path.points, cents))
            pack.same("cents: the curve", good, True)
    if scales:
        pack.same("cents: one scale", max(scales) - min(scales) < 0.02 * max(scales), True)


def wanted_first(pack):
    """The strings that lack what is needed to say what buzzes, and what plays in tune."""
    at = pack.part.stages["saddle" if shown_when(pack) == [False, True] else "now"]
    unread = [i + 1 for i, row in enumerate(at["strings"]) if unknown(at["relief"]) or
              unknown(row["nut_height"]) or unknown(row["saddle_height"])]
    untold = [i + 1 for i, row in enumerate(pack.result["compensation"]["strings"])
              if farthest(row)[0] is None]
    told = " ".join(" ".join(row) for row in pack.rows(TITLE))
    lists = [[int(n) for n in re.findall(r"\d+", found)] or list(range(1, pack.count + 1))
             for found in re.findall(r" for (strings? \d+(?:, \d+)*|all strings)\.", told)]
    pack.same("what is wanted first", lists, [numbers for numbers in (unread, untold) if numbers])


def lowest(pack):
    """The lowest clean setup beside what the work leaves, as the strings lie."""
    told = pack.result["lowest"]
    rings = any(known(row) for which in ("strings", "after")
                for row in pack.result["clearance"][which])
    if told is None or unknown(told["relief"]) or not rings:
        return
    rows = [[pack.part.action_curved(i) for i in range(pack.count)],
            [length(pack, row["action"], UP) for row in told["strings"]],
            [length(pack, row["first_held3"], UP) for row in told["strings"]]]
    for cells in rows:
        pack.row(TITLE, "lowest", cells if pack.left else cells[::-1])
    pack.same("lowest: relief", any(re.findall(r"-?\d*\.\d+", row[0]) == [length(
        pack, told["relief"])] and len(row) == 1 for row in pack.rows(TITLE)), True)


def slot(pack):
    """The best straight slot, and the saddle that would carry every string in it."""
    told = pack.result["compensation"]
    lean = math.cos(math.radians(pack.result["saddle"]["slant"]))
    half = pack.job.saddle.thickness / 2
    out = any(not unknown(row["off_slot"]) and abs(row["off_slot"]) > half / lean + 1e-9
              for row in told["strings"])
    if not out or pack.part.kind not in ("slotted", "glued") or unknown(told["slot_best"]["treble"]):
        return
    if all(unknown(row["saddle_only"]) for row in told["strings"]):
        return   # where no string's physics is known, the whole of that part of the paper is left out
    low, high = (pack.result["strings"][k]["saddle_z"] for k in (-1, 0))
    most = 0.0
    for i, (row, string) in enumerate(zip(told["strings"], pack.result["strings"])):
        share = (string["saddle_z"] - low) / (high - low) if high != low else 0.0
        line = told["slot_best"]["bass"] * (1 - share) + told["slot_best"]["treble"] * share
        there = row["saddle_only"] if row["move"] is None \
            else pack.job.saddle.setback[i] + row["move"]   # a tuner is believed first
        if not unknown(there):
            most = max(most, abs(there - line))
    wanted = [length(pack, told["slot_best"][end]) for end in ("treble", "bass")[:pack.count]]
    if 2 * most * lean > pack.job.saddle.thickness + 1e-9:
        wanted.append(length(pack, 2 * most * lean, UP))
    told = " ".join(" ".join(row) for row in pack.rows(TITLE))
    found = re.search(r"setback (-?\d*\.\d+.*?)\.(?: |$)", told)
    numbers = re.findall(r"-?\d*\.\d+", found.group(1)) if found else []
    pack.same("the best slot", numbers, wanted)


CHECKS = (heads, graphs, wanted_first, lowest, slot, pitch, clearance, assumed)
