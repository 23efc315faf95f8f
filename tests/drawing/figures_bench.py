# SPDX-License-Identifier: MIT
"""The bench plan on paper: readings, visits, the steps with their forms, and findings."""
import re

from packs import band, length, once
from shown import gauge, on_a_rule, rounded, sixty_fourths, unknown

LEAST = 0.01  # mm: less at both ends is not sanded


def bench_readings(pack):
    targets, shown_of = pack.job.targets, pack.part

    def wanted(i):
        action = pack.result["saddle"]["strings"][i]
        return [gauge(pack.job.strings[i].gauge, pack.unit),
                *band(pack, action["now"], targets.action[i],
                      length(pack, action["asked"]["action"])),
                *band(pack, shown_of.first_now(i), targets.first[i],
                      length(pack, shown_of.first_after(i)))]
    exact = all(not hasattr(length(pack, v), "other") for i in range(pack.count)
                for v in (*targets.action[i], *targets.first[i]))
    if exact:  # a range half way between two figures could be either pair
        pack.table("Bench plan", wanted)
    said = " ".join(pack.texts("Bench plan"))
    every = range(pack.count)
    now = [sixty_fourths(pack.result["saddle"]["strings"][i]["now"]) for i in every]
    pack.same("bench plan: 64ths", on_a_rule(said, pack.count),
              [now, [sixty_fourths(targets.action[i][1]) for i in every]]
              if pack.unit == "in" and set(now) - {"-"} else None)
    stages = pack.part.stages
    line = next((t for t in pack.texts("Bench plan") if re.match(r"Relief .*: .*now", t)), "")
    if all(not hasattr(length(pack, v), "other") for v in targets.relief):
        numbers = re.findall(r"(?<![\d.])-?\d*\.\d+|- *(?=,)|-$", line)
        low, aim, high = (length(pack, v) for v in targets.relief)
        pack.same("bench plan: relief", [n.strip() for n in numbers], [
            length(pack, stages["now"]["relief"]), aim, low, high,
            length(pack, stages["saddle"]["relief"])])


def has_ratio(visit):
    return not unknown(visit["ratio"]) and visit["ratio"] > 0


def bench_visits(pack):
    """A row for what was read at each of the last four visits, and over it one for what was expected; no
    column of dashes alone."""
    visits = pack.result["visits"]
    if len(visits) < 2:
        return
    stride = 2 if pack.count > 8 else 1
    table, names = [], []
    for k, visit in list(enumerate(visits))[-4:]:
        if k > 0:
            table.append(["-", "-", *(length(pack, v) for v in visit["predicted"][::stride]), "-"])
            names.append("expected")
        humid = "-" if unknown(visit["humidity"]) else f"{rounded(visit['humidity'], 0)} %"
        table.append([humid, length(pack, visit["relief"]), *(length(pack, v) for v in visit["read"][::stride]),
                      f"{rounded(100 * visit['ratio'], 0)} % of it" if has_ratio(visit) else "-"])
        names.append("read")
    kept = [k for k in range(len(table[0])) if any(row[k] != "-" for row in table)]
    rows = [row[1:] for row in pack.rows("Bench plan")]
    due = [row[1:] for row in rows if row[:1] and row[0].startswith("after ")]
    for name, row in zip(names, table):
        if name == "read":
            pack.same(f"visits: {row}", ["read", *(row[k] for k in kept)] in rows, True)
        else:
            pack.same(f"visits: due {row}", [row[k] for k in kept if 2 <= k < len(row) - 1] in due, True)


def action_then(pack, i):
    cut = pack.result["saddle"]["bottom_cut"]["first_pass"]
    before = pack.part.stages["nut"]["strings"][i]["action"]
    if unknown(before):
        return "-"
    lever = pack.result["strings"][i]["leverage"]
    return length(pack, before - pack.part.base_at(cut, i) * lever)


def off_the_top(pack, i):
    """In this pass, where that is anything; in all where the bottom has passes to come first."""
    bearing = pack.part.bearing(i)
    return bearing["dress" if pack.part.dresses_later() else "dress_now"]


def dressed_then(pack, i):
    """After the first pass off the top, where nothing comes off the bottom."""
    before, row = pack.part.stages["nut"]["strings"][i]["action"], pack.result["saddle"]["strings"][i]
    if pack.result["saddle"]["bottom_cut"] or unknown(before):
        return "-"
    saddle = pack.result["saddle"]
    shim = saddle["shim"] if saddle["remedy"] == "shim" else 0.0
    filed = row["dress_first"] if pack.part.bearing(i)["dress"] != "-" else 0.0
    return length(pack, before - (filed - shim) * pack.result["strings"][i]["leverage"])


def zero_gap(pack, i):
    """The target of the gap, of a string that the step names."""
    named = next(step["strings"] for step in pack.result["steps"] if step["act"].endswith("zero-fret"))
    return length(pack, pack.job.targets.first[i][1]) if i + 1 in named else "-"


def has_form(pack, step):
    """One that has the figures of each string; sanding has none while nothing is sanded yet."""
    cut = pack.result["saddle"]["bottom_cut"]
    sands = cut and max(cut["first_pass"].values()) >= LEAST
    return step["act"] in ACTS and (step["act"] != "sand-saddle" or sands)


FORMS = {
    "nut": [("first pass", lambda pack, i: pack.part.slot(i)["first"]),
            ("gap when done, or of this pass", lambda pack, i: length(
                pack, (pack.part.first_passed if pack.part.files_again() else pack.part.first_after)(i)) if
             pack.part.slot(i)["does"] in ("deeper", "fill", "new") else "-")],
    "zero": [("stop at gap", zero_gap)],
    "sand": [("off the bottom", lambda pack, i: pack.part.bearing(i)["base_first"]),
             ("action then", action_then)],
    "dress": [("off the top", off_the_top), ("action then", dressed_then),
              ("action", lambda pack, i: pack.part.bearing(i)["action_done"])],
    "new": [("action", lambda pack, i: pack.part.bearing(i)["action_done"]),
            ("action at first", lambda pack, i: pack.part.bearing(i)["action_made"])],
    "saddle": [("action", lambda pack, i: pack.part.bearing(i)["action_done"])],
    "curve": [("action", lambda pack, i: pack.part.action_curved(i))]}
ACTS = {"file-slots": "nut", "fill-slot": "nut", "shim-nut": "nut",
        "sand-saddle": "sand", "dress-saddle": "dress", "shim-saddle": "saddle",
        "new-saddle": "new", "turn-screws": "saddle", "turn-posts": "saddle",
        "bridge-curve": "curve", "zero-fret": "zero", "raise-zero-fret": "zero"}


def bench_steps(pack):
    """The figures of each string in the form under a step; the step's own as its sentence has them."""
    told = words(pack, "Bench plan")
    for step in pack.result["steps"]:
        if has_form(pack, step):
            for what, figure in FORMS[ACTS[step["act"]]]:
                cells = [figure(pack, i) for i in range(pack.count)]
                if any(cell != "-" for cell in cells):
                    pack.row("Bench plan", f"{step['act']}: {what}", cells)
        at = 0
        for row in step["figures"]:
            at = told.find(row["shown"].replace("<", "less than "), at)
            if at < 0:
                pack.report.wrong(f"step {step['step']}", row["shown"], "nowhere")
                break
    checks = [step["check"] for step in pack.result["steps"] if not has_form(pack, step) or says_how(step)]
    for step in pack.result["steps"]:  # where the form has the figures, it need not be said
        pack.same(f"check of {step['act']}", told.count(step["check"]),
                  sum(step["check"] in check for check in checks) if step["check"] else len(told) + 1)


def says_how(step):
    """How a gap is measured is said even where the form has its figures."""
    return step["act"] in ("zero-fret", "raise-zero-fret")


def words(pack, title):
    return " ".join(" ".join(row) for row in pack.rows(title))


def bench_findings(pack):
    """Each under its level, and all under one title."""
    words = {"fine": "note", "watch": "watch", "act": "do", "stop": "stop"}
    levels = [words[row["level"]] for row in pack.result["findings"]]
    rows = pack.rows("Bench plan")
    found = [k for k, row in enumerate(rows) if len(row) > 1 and row[0] in words.values()]
    pack.same("findings: levels", once([rows[k][0] for k in found]), once(levels))
    if found:
        pack.same("findings: titles", rows.count(rows[found[0] - 1]), 1)


CHECKS = (bench_readings, bench_visits, bench_steps, bench_findings)
