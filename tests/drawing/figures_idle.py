# SPDX-License-Identifier: MIT
"""Which papers a pack has when nothing more is asked for: none of a part that is left alone, no blank for
a part that is not replaced; and the papers it has are those of the whole pack, word for word. And no table
has a column of nothing but dashes."""
import os
import re

import drawn
import pdf

CUT = ("slotted", "glued", "feet")  # saddles that are cut; others are turned


def has_tone(pack):
    """Whether the hardest clean pluck of any note, or the cents of any string, could be worked out."""
    clean = [row["clean_force"] for when in ("strings", "after") for row in pack.result["clearance"][when]]
    cents = [row["as_built_cents"] for row in pack.result["compensation"]["strings"]]
    return any(value is not None for row in clean + cents for value in row)


def wanted(pack):
    nut, saddle = (pack.result[which]["remedy"] for which in ("nut", "saddle"))
    nut_worked = nut not in ("none", "wait")
    saddle_cut = saddle not in ("none", "wait") and pack.part.kind in CUT
    new_nut = nut == "replace" and pack.result["nut"]["blank"] is not None
    new_saddle = saddle == "replace" and pack.part.kind in ("slotted", "glued")
    there = {"Bench card": True, "Bench plan": True, "Nut": nut != "none", "Saddle": saddle != "none",
             "Templates": nut_worked and nut != "shim" or saddle_cut and saddle != "shim", "Blank order": new_nut or new_saddle,
             "Buzz and intonation": has_tone(pack)}
    return [title for title in pdf.SHEETS if there[title]]


def words_of(page):
    return sorted(text for _, _, text in page.texts if not re.fullmatch(r"\d+/\d+", text))


def idle(pack):
    out = pack.path + ".plain.pdf"
    done = drawn.draw(pack.path, "-o", out, "--units", pack.unit)
    if done.returncode:
        pack.report.wrong("the plain pack", "a drawing", done.stderr.decode())
        return
    pages = pdf.by_title(pdf.read(out))
    os.remove(out)
    pack.same("plain pack: papers", list(pages), wanted(pack))
    for title in ("Bench card", "Nut", "Saddle"):
        if title in pages:
            pack.same(f"plain pack: {title}", [words_of(page) for page in pages[title]],
                      [words_of(page) for page in pack.pages[title]])
    for title, what in (("Templates", ("nut", "saddle")), ("Blank order", ("nut", "saddle"))):
        told = " ".join(text for page in pages.get(title, []) for _, _, text in page.texts)
        for which in what:
            other = "Nut" if which == "nut" else "Saddle"
            name = f"{other} blank" if title == "Blank order" else f"{other}, "
            remedy = pack.result[which]["remedy"]
            needed = remedy == "replace" if title == "Blank order" else remedy not in ("none", "wait", "shim")
            if name in told and not needed:
                pack.report.wrong(f"plain pack: {title}", f"no {which}", name)


def columns(pack):
    for title in pack.pages:
        pack.idle_columns(title)


CHECKS = (idle, columns)
