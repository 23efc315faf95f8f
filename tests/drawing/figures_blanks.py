# SPDX-License-Identifier: MIT
"""Templates and the order for blanks."""
import math
import re

from packs import length, stands_led_out
from shown import NEAREST, UP, unknown


def templates(pack):
    lean = math.cos(math.radians(pack.result["nut"]["slant"]))
    width = pack.job.nut.width / lean
    if pack.waits("nut") or width > 120:
        return
    at = [width] + [pack.part.slot_at(i) for i in range(pack.count)] + [0.0]
    gaps = [length(pack, a - b) for a, b in zip(at, at[1:])]
    seen = gaps if pack.left else gaps[::-1]  # the bass end lies at the left, or at the right
    if not stands_led_out(pack, "Templates", seen):
        pack.report.wrong("templates: between slots", seen, "no such row")
    if all(row["floor"] is not None for row in pack.result["nut"]["strings"]):
        pack.has("Templates", "length of the nut", length(pack, width))


def in_tune_at(pack, i):
    """How far behind its middle a string should leave the saddle: by the tuner, else by its physics;
    None where neither is known."""
    told, strings = pack.result["compensation"], pack.result["strings"]
    row, ends, tuned = told["strings"][i], told["slot_as_built"], pack.result["tune"]["strings"][i]
    lean = math.cos(math.radians(pack.result["saddle"]["slant"]))
    peak = pack.job.saddle.peak[i]
    now = 0.0 if unknown(peak) else (peak - pack.job.saddle.thickness / 2) / lean
    by = row["move"] if tuned["cents"] is not None else tuned["proposed"]
    if by is not None:
        return now + by
    return row["off_slot"]


def beyond(pack):
    """Of a place in tune off the saddle it is told how far it is from the nearer face, on the saddle's
    paper and on its template."""
    if pack.waits("saddle") or not pack.part.cut_to_height or unknown(pack.job.saddle.thickness):
        return
    lean = math.cos(math.radians(pack.result["saddle"]["slant"]))
    half = pack.job.saddle.thickness / 2
    offs = [off for off in (in_tune_at(pack, i) for i in range(pack.count)) if off is not None]
    for paper in ("Saddle", "Templates"):
        if paper == "Saddle" or pack.job.saddle.length / lean <= 120:
            pack.has(paper, "beyond the saddle", *[
                length(pack, abs(off) * lean - half) for off in offs
                if abs(off) * lean > half + 1e-9])


def crosses(pack):
    """Which strings' peaks are still to be filed to their crosses."""
    if pack.waits("saddle") or not pack.part.cut_to_height or unknown(pack.job.saddle.thickness):
        return
    lean = math.cos(math.radians(pack.result["saddle"]["slant"]))
    if pack.job.saddle.length / lean > 120 or pack.result["saddle"]["strings"][0]["peak"] is None:
        return
    tune = pack.result["tune"]
    filed = [row["number"] for row in tune["strings"] if tune["remedy"] in ("peaks", "replace")
             and row["move"] is not None]
    said = [t for t in pack.texts("Templates") if t.startswith("On the top")]
    lists = [[int(n) for n in re.findall(r"\d+", found)] or list(range(1, pack.count + 1)) for t in said
             for found in re.findall(r"strings? ([\d, ]+)|all strings", t)]
    cut_short = any(t.endswith("...") for t in said)
    if not cut_short:
        pack.same("templates: crosses", lists, [filed] if filed else [])


def blank(pack, which, done, spacing, top_radius):
    sizes = pack.result[which]["blank"]
    if sizes is None:
        return
    for key in ("length", "thickness", "height"):
        order, finished = sizes[key], done[key]
        spare = None if unknown(order) or unknown(finished) else round(order - finished, 9)
        if which == "nut" and key == "height" and spare is not None:
            blank_height(pack, order, finished)
            continue
        pack.row("Blank order", f"{which}: {key}", [
            length(pack, order, UP), length(pack, finished, made_way(pack, which, key)), length(pack, spare)])
    pack.has("Blank order", f"{which}: spacing",
             f"{length(pack, spacing)} {pack.unit}, {pack.count} strings" if pack.count > 1 else "one string")
    if top_radius and top_radius != "-" and not any(
            t.endswith(f" {top_radius} {pack.unit}") for t in pack.texts("Blank order")):
        pack.report.wrong(f"{which}: radius of a blank", top_radius, "nowhere")


def made_way(pack, which, key):
    """The height of a new saddle is where the file stops."""
    anew = which == "saddle" and key == "height" and pack.result[which]["remedy"] == "replace"
    return UP if anew else NEAREST


def blank_height(pack, order, finished):
    """The finished height is known to its last figure only."""
    rows = [[float(cell) for cell in row[1:]] for row in pack.rows("Blank order")
            if row[0] == "height" and all(re.fullmatch(r"\d*\.\d+", c) for c in row[1:])]
    unit, step = (1.0, 0.0101) if pack.unit == "mm" else (25.4, 0.00101)
    if not any(row[0] == float(length(pack, order, UP)) and abs(row[1] - finished / unit) <= step
               and abs(row[2] - (order - finished) / unit) <= 2 * step for row in rows):
        pack.report.wrong("nut: height of a blank", (order, finished), rows)


def told_fact(pack, title, name, form=float):
    """A fact of a part's paper, in mm if it is a number; None where it is not told."""
    told = next((row[row.index(name) + 1] for row in pack.rows(title) if name in row[:-1]), None)
    if told is None or form is not float:
        return told
    return float(told) * (1.0 if pack.unit == "mm" else 25.4)


def blanks(pack):
    result = pack.result
    lean = math.cos(math.radians(result["nut"]["slant"]))
    made = told_fact(pack, "Nut", "height")  # which that paper's own check holds
    at = [pack.part.slot_at(i) for i in range(pack.count)]
    blank(pack, "nut", {"length": pack.job.nut.width / lean, "thickness": pack.job.nut.thickness,
                        "height": made and made + pack.part.nut_shim()},
          at[0] - at[-1], None)
    lean = math.cos(math.radians(result["saddle"]["slant"]))
    heights = [r["height"] for r in result["saddle"]["strings"]]
    z = [row["saddle_z"] / lean for row in result["strings"]]
    blank(pack, "saddle", {
        "length": pack.job.saddle.length / lean, "thickness": pack.job.saddle.thickness,
        "height": math.nan if any(map(unknown, heights)) else max(heights)}, z[0] - z[-1],
          told_fact(pack, "Saddle", "top radius", str))
    ordered = [which for which in ("nut", "saddle") if result[which]["blank"]]
    hand = "left" if pack.left else "right"
    pack.same("blanks: hand", pack.texts("Blank order").count(hand), len(ordered))


CHECKS = (templates, crosses, beyond, blanks)
