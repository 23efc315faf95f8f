# SPDX-License-Identifier: MIT
"""The bench card: which step is next, the figures it is worked to and whose they are, the readings that
tell when it is done, what stops the work, and the steps after it."""
import re

from figures_bench import action_then, words
from packs import inside, length
from shown import sixty_fourths

CARD = "Bench card"
# What a step is worked to, and what goes with it, by the words of docs/result.md.
WORKED_TO = {
    "rod": ("relief-target", "relief"), "neck-bow": ("relief", "relief-limit"),
    "rod-first": ("relief", "relief-target"), "back-bow": ("relief", "relief-target"),
    "seat-frets": ("proud",), "level-frets": ("level",), "new-frets": ("worn",),
    "zero-fret": ("zero-fret",), "raise-zero-fret": ("zero-fret-height", "zero-fret-over"),
    "file-slots": ("stack", "slot"), "fill-slot": ("stack-first", "slot"),
    "shim-nut": ("shim", "stack-first"), "fit-nut-blank": ("thickness", "length"),
    "fit-saddle-blank": ("thickness", "length"), "mark-nut": ("centre",),
    "cut-nut-slots": ("stack-first", "stack"), "shape-nut": ("depth", "height"),
    "sand-saddle": ("caliper", "base"), "dress-saddle": ("top",), "shim-saddle": ("shim",),
    "new-saddle": ("height-first", "height"), "shape-saddle": ("height-first", "height"),
    "turn-screws": ("turns", "screw"), "turn-posts": ("turns", "screw"),
    "neck-shim": ("wedge", "lift"), "neck-reset": ("heel", "lift"),
    "tune-screws": ("tune", "tune-turns"), "tune-ends": ("tune-end",)}
WAYS = ("turns", "tune", "tune-end")  # each goes up, down, back or forward
LEAST = 0.01  # mm: less is no pass
MOST = 12     # of one kind on the card; the sentence has them all
ACTION = {"sand-saddle", "dress-saddle", "shim-saddle", "new-saddle", "turn-screws", "turn-posts",
          "bridge-curve"}
FIRST = {"file-slots", "fill-slot", "shim-nut"}
READS = {"rod": "a", "measure-action": "a", "fit-saddle": "a", "measure-first": "f",
         "measure-gaps-again": "f", "zero-fret": "f", "raise-zero-fret": "f",
         "measure-again": "af", "measure-new-part": "af",
         "choose-attack": "af", "check": "af", **dict.fromkeys(ACTION, "a"), **dict.fromkeys(FIRST, "f")}


def next_step(pack):
    """The first step but for getting ready, which is work only where new strings go on; the screen and
    the table of many sheets name the same."""
    condition = pack.doc["readings"][-1].get("condition", {})
    worn = isinstance(condition, dict) and condition.get("strings") == "worn"
    return next((s for s in pack.result["steps"] if worn or s["act"] != "prepare"), None)


def sands_now(pack):
    cut = pack.result["saddle"]["bottom_cut"]
    return bool(cut) and max(cut["first_pass"].values()) >= LEAST


def worked_to(pack, step):
    """The figures a step is worked to, row by row; a tool too coarse for any pass leaves none."""
    if step["act"] == "sand-saddle" and not sands_now(pack):
        return []
    rows = [[f for f in step["figures"] if f["of"] == of][:MOST]
            for of in WORKED_TO.get(step["act"], ())]
    return [[f for f in row if f["shown"] != "-"] for row in rows if row]


def mark(figure):
    if figure.get("fret") is not None:
        return f"fret {figure['fret']}"
    if figure.get("string") is not None:
        return str(figure["string"])
    return figure.get("end")


def card_figures(pack):
    """Each row of figures, and in the rows over it whose they are and which way they go."""
    step = next_step(pack)
    if step is None:
        return
    rows = pack.rows(CARD)
    for row in worked_to(pack, step):
        halves = [row] if len(row) < 4 else [row[:(len(row) + 1) // 2], row[(len(row) + 1) // 2:]]
        if stands(rows, row) or all(stands(rows, half) for half in halves):
            continue
        pack.report.wrong(f"card: {step['act']}", [(mark(f), f["shown"]) for f in row], rows)


def stands(rows, figures):
    """Figures side by side, their marks in the same order within the rows over them, their ways too."""
    marks = [mark(f) for f in figures]
    turned = figures[0]["of"] in WAYS
    for k, row in enumerate(rows):
        if not inside(row, [f["shown"] for f in figures]):
            continue
        above = rows[max(0, k - 5):k]
        if any(marks) and not any(inside(over, marks) for over in above):
            continue
        ways = [f["way"] for f in figures] if turned else []
        if not ways or any(inside(over, ways) for over in above):
            return True
    return False


def card_readings(pack):
    """The readings that the next step changes: now, and what they will be."""
    step = next_step(pack)
    reads = READS.get(step["act"], "") if step else ""
    if step and step["act"] == "sand-saddle" and not sands_now(pack):
        reads = "a"
    saddle, act = pack.result["saddle"]["strings"], step["act"] if step else ""
    every = range(pack.count)
    lines = []
    if "a" in reads:
        lines.append([length(pack, saddle[i]["now"]) for i in every])
        if act in ACTION and not (act == "sand-saddle" and not sands_now(pack)):
            lines.append([pack.part.action_curved(i) for i in every])
        if act == "turn-posts" and any(pack.part.curved(i) for i in every):
            lines.append([pack.part.bearing(i)["action_done"] for i in every])
        if act == "new-saddle":
            lines.append([pack.part.bearing(i)["action_made"] for i in every])
        if act == "sand-saddle" and sands_now(pack) and not pack.part.one_pass():
            lines.append([action_then(pack, i) for i in every])
    if "f" in reads:
        lines.append([length(pack, pack.part.first_now(i)) for i in every])
        again = act == "file-slots" and pack.part.files_again()
        if act in FIRST and not (again and not any(row[0] == "range, from" for row in pack.rows(CARD))):
            lines.append([length(pack, pack.part.first_after(i)) for i in every])   # unless room is short
        if again:
            lines.append([length(pack, pack.part.first_passed(i)) for i in every])
    if "a" in reads and pack.unit == "in":
        exact = saddle[0]["now"] is not None and [
            row["now"] if act not in ACTION else pack.job.targets.action[i][1] if pack.part.curved(i)
            else row["asked"]["action"] for i, row in enumerate(saddle)]
        marks = [sixty_fourths(value) for value in exact or []]
        ruled = [cell for row in pack.rows(CARD) if row[0].strip() == "on a rule" for cell in row[1:]]
        if act in ACTION - {"sand-saddle", "bridge-curve"} and set(marks) - {"-"}:
            pack.same(f"card: {act}: 64ths", ruled[-len(marks):], marks)
    for cells in lines:
        if any(cell != "-" for cell in cells):
            pack.row(CARD, f"{act}: readings", cells)


def card_stops(pack):
    stop = any(row["level"] == "stop" for row in pack.result["findings"])
    waits = pack.waits("nut") or pack.waits("saddle")  # withheld, or since a reading is missing
    rows = [row[0] for row in pack.rows(CARD)]
    pack.same("card: STOP", "STOP" in rows, stop)
    pack.same("card: WAIT", "WAIT" in rows, waits and not stop)


def leads(pack, step):
    """The figures that stand with the name of a step that is not the next: those it is worked to."""
    return (worked_to(pack, step) or [[]])[0]


def in_line(figure):
    """A figure among others in a line: whose it is, the way it goes, how much."""
    whose, way = mark(figure) or "", figure["way"] if figure["of"] in WAYS else ""
    if whose.isdigit() or whose.startswith("fret"):
        whose += ":"
    return " ".join(word for word in (whose, way, figure["shown"]) if word)


def card_steps(pack):
    """One paper; on it every step, by its number, and the figures that each is worked to, in order."""
    pack.same("card: papers", len(pack.pages[CARD]), 1)
    told, after = words(pack, CARD), False
    numbers = [row[0] for row in pack.rows(CARD)]
    at, the_next = told.find("After that"), next_step(pack)
    for step in pack.result["steps"]:
        if after:
            pack.same(f"card: step {step['step']}", str(step["step"]) in numbers, True)
            for figure in leads(pack, step):
                at = told.find(in_line(figure), at)
                if at < 0:
                    pack.report.wrong(f"card: {step['act']}", in_line(figure), "nowhere after that")
                    return
        elif step is not the_next:  # in full
            pack.same(f"card: {step['act']}", step["do"] in told, not pack.result["done"])
        after = after or step is the_next
    for step in pack.result["steps"]:
        if step["act"] == "file-slots":
            slots = len(leads(pack, step))
            pack.same("card: slots to file", re.findall("File the nut slots?(?= |$)", told)[:1] if slots else [],
                      [f"File the nut slot{'s' if slots > 1 else ''}"] if slots else [])
    if the_next:
        word = "LAST" if pack.result["done"] else "NEXT"
        pack.same("card: next", f"{word}: step {the_next['step']}" in told, True)
    if the_next and the_next["act"] == "prepare":
        pack.same("card: what is next", "Fit new strings" in told, True)


TILES = ("1", "2", "3", "4")   # relief, frets, nut, saddle
WORKS = {"1": {"rod", "neck-bow", "rod-first", "back-bow"}, "2": {"seat-frets", "level-frets", "new-frets"},
         "3": FIRST | {"zero-fret", "raise-zero-fret"}, "4": ACTION - {"dress-saddle", "bridge-curve"}}


def card_tiles(pack):
    """No stage is to be left where a step works on it or waits for a repairer."""
    acts = {step["act"] for step in pack.result["steps"]}
    rows = pack.rows(CARD)
    heads = next(k for k, row in enumerate(rows) if any("Relief" in cell for cell in row))
    told = dict(zip(TILES, rows[heads + 1]))
    for tile in TILES:
        if acts & WORKS[tile]:
            pack.same(f"card: tile {tile}", told[tile].startswith("leave"), False)


CHECKS = (card_figures, card_readings, card_stops, card_steps, card_tiles)
