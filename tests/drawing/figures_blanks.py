# SPDX-License-Identifier: MIT
"""Templates and the order for blanks."""
import math
import re

from packs import length, stands_led_out
from shown import UP, radius, unknown


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
    lists = [[int(n) for n in re.findall(r"\d+", found)] for t in said
             for found in re.findall(r"strings? ([\d, ]+)", t)]
    cut_short = any(t.endswith("...") for t in said)
    if not cut_short:
        pack.same("templates: crosses", lists, [filed] if filed else [])


def fine(mm):
    """ISO 2768-1, class f."""
    return next((off for upto, off in ((6, 0.05), (30, 0.1), (120, 0.15), (400, 0.2))
                 if mm <= upto), 0.3)


def blank(pack, which, done, spacing, top_radius):
    sizes = pack.result[which]["blank"]
    if sizes is None:
        return
    for key in ("length", "thickness", "height"):
        order, finished = sizes[key], done[key]
        spare = None if unknown(order) or unknown(finished) else order - finished
        within = "-" if unknown(order) else f"±{length(pack, fine(order))}"
        pack.row("Blank order", f"{which}: {key}", [
            length(pack, order, UP), within, length(pack, finished), length(pack, spare)])
    pack.has("Blank order", f"{which}: spacing",
             f"{length(pack, spacing)} {pack.unit}, {pack.count} strings")
    if top_radius and top_radius != "-" and not any(
            t.endswith(f" {top_radius} {pack.unit}") for t in pack.texts("Blank order")):
        pack.report.wrong(f"{which}: radius of a blank", top_radius, "nowhere")


def blanks(pack):
    result, nut_row = pack.result, pack.result["nut"]["strings"]
    lean = math.cos(math.radians(result["nut"]["slant"]))
    tops = [unknown(r["floor"]) and math.nan or r["floor"] + r["depth"] for r in nut_row]
    at = [pack.part.slot_at(i) for i in range(pack.count)]
    blank(pack, "nut", {"length": pack.job.nut.width / lean, "thickness": pack.job.nut.thickness,
                        "height": math.nan if any(map(math.isnan, tops)) else max(tops)},
          at[0] - at[-1], None)
    lean = math.cos(math.radians(result["saddle"]["slant"]))
    heights = [r["height"] for r in result["saddle"]["strings"]]
    z = [row["saddle_z"] / lean for row in result["strings"]]
    blank(pack, "saddle", {
        "length": pack.job.saddle.length / lean, "thickness": pack.job.saddle.thickness,
        "height": math.nan if any(map(unknown, heights)) else max(heights)}, z[0] - z[-1],
          radius(result["saddle"]["top_radius"], pack.unit) if lean == 1 else None)
    ordered = [which for which in ("nut", "saddle") if result[which]["blank"]]
    hand = "left" if pack.left else "right"
    pack.same("blanks: hand", pack.texts("Blank order").count(hand), len(ordered))


CHECKS = (templates, crosses, blanks)
