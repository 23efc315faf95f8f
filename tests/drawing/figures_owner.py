# SPDX-License-Identifier: MIT
"""The owner's page: one page; the readings before and after, the humidity and the gauges; how far the
strings were past their ranges."""
import os
import re

import drawn
import pdf
from packs import length, rows_of
from shown import action, gauge, rounded, unknown, without_idle


def wanted_after(pack):
    """The second column: the last readings, or what they come to, or their targets; none when done."""
    result, targets = pack.result, pack.job.targets
    every = range(pack.count)
    if len(result["visits"]) > 1:
        relief = pack.part.stages["now"]["relief"]
        return [length(pack, relief), *(action(result["saddle"]["strings"][i]["now"], pack.unit) for i in every)]
    if result["done"]:
        return None
    if pack.waits("nut") or pack.waits("saddle") or any(
            stage["forecast"] for stage in result["stages"] if stage["stage"] in ("nut", "saddle")):
        return [length(pack, targets.relief[1]), *(action(targets.action[i][1], pack.unit) for i in every)]
    return [length(pack, pack.part.stages["saddle"]["relief"]),
            *(action(result["saddle"]["strings"][i]["asked"]["action"], pack.unit) for i in every)]


def owner_readings(pack, page):
    first = pack.result["visits"][0] if pack.result["visits"] else None
    if first is None:
        return
    before = [length(pack, first["relief"]), *(action(v, pack.unit) for v in first["read"])]
    after = wanted_after(pack)
    rows = [row for row in rows_of(page) if row[0].startswith(("string ", "bow of "))]
    got = [row[1:] for row in rows]
    cells = [[b] if after is None else [b, after[k]] for k, b in enumerate(before)]
    for k, row in enumerate(rows[1:]):
        number = int(re.match(r"string (\d+)", row[0]).group(1))
        pack.same("owner: strings in order", number, k + 1)
    pack.same("owner: readings", got, without_idle(cells))


def strings_in(words, count):
    """The strings that words name: "All strings", "The string", "Strings 1, 3 and 5 to 7"."""
    if not re.search(r"\d", words):
        return list(range(1, count + 1))
    named = []
    for first, last in re.findall(r"(\d+)(?: to (\d+))?", words):
        named += range(int(first), int(last or first) + 1)
    return named


def before_work(visits, part):
    """How many visits were before the first one after work on a part; all of them where there was none."""
    return next((k for k, visit in enumerate(visits) if k > 0 and part in visit["work"]), len(visits))


def owner_past(pack, told):
    """Which strings are past their ranges over the neck, to which side, and how far the farthest."""
    past = re.search(r"((?:All s|S|The s)trings?[\d, andto]*?) (were|was|are|is) (?:up to )?(\d*\.\d+) "
                     r"\w+ too (high|low) over the neck", told)
    if not past:
        return
    names, tense, by, side = past.groups()
    visits = pack.result["visits"]
    after = before_work(visits, "saddle")
    pack.same("owner: was or is", tense.startswith("w"), after < len(visits))
    reads = visits[after - 1]["read"]
    off = {i + 1: read - pack.job.targets.action[i][2] if side == "high" else pack.job.targets.action[i][0] - read
           for i, read in enumerate(reads) if not unknown(read)}
    pack.same("owner: past the range", str(length(pack, max(off.values()))), by)
    pack.same("owner: strings past it", strings_in(names, pack.count),
              sorted(n for n, value in off.items() if value > 1e-6))


def owner_nut(pack, told):
    """What is said of the strings close to the headstock: which are off today, and to which side."""
    result, codes = pack.result, {row["code"] for row in pack.result["findings"]}
    today = next(stage["changed"] for stage in result["stages"] if stage["stage"] == "nut")
    was = before_work(result["visits"], "nut") < len(result["visits"])
    pack.same("owner: nut worked before", "the strings were not at the right height" in told, was)
    pack.same("owner: a new nut", "A new nut is needed" in told, today and not was and "make-nut" in codes)
    high, low = ([n + 1 for n, row in enumerate(result["nut"]["strings"]) if row["verdict"] == verdict]
                 for verdict in ("file", "raise"))
    both, now = bool(high and low), today and not was and "make-nut" not in codes
    pack.same("owner: some high, some low", "some strings are too high, others too low" in told, now and both)
    one = re.search(r"Close to the headstock ((?:all |the )?strings?[\d, andto]*?) (?:is|are) too (high|low)", told)
    got = (strings_in(one.group(1), pack.count), one.group(2)) if one else None
    wanted = (high or low, "high" if high else "low") if now and not both and (high or low) else None
    pack.same("owner: strings off at the nut", got, wanted)
    for side in ("high", "low"):
        words = {"high": "beside the nut stands too high", "low": "beside the nut is too low"}[side]
        pack.same(f"owner: zero fret {side}", words in told, f"zero-fret-{side}" in codes)


# What is done at nut and saddle, by remedy; of a saddle in its slot, and of a bridge without one.
NUT = {"file": "Lower the strings at the nut", "fill": "Raise the low strings at the nut", "shim": "Raise the nut,",
       "replace": "Make a new nut"}
SADDLE = {"sand": "Lower the strings at the saddle", "shim": "Raise the strings at the saddle",
          "screw": "Set the height of the strings at the bridge", "replace": "Make a new saddle"}
BRIDGE = {**SADDLE, "sand": "Lower the bridge that", "shim": "Raise the bridge that", "replace": "Make a new bridge"}


def owner_next(pack, told):
    """What is still to be done at nut and saddle: as the result has it, and nothing else."""
    bridge = BRIDGE if pack.job.saddle.kind == "floating" else SADDLE
    done = pack.result["done"]
    for part, words in (("nut", NUT), ("saddle", bridge)):
        remedy = pack.result[part]["remedy"]
        pack.same(f"owner: next at the {part}", sorted(key for key in words if words[key] in told),
                  [] if done or remedy not in words else [remedy])


def owner_words(pack, page, limits):
    told = " ".join(" ".join(row) for row in rows_of(page))
    low, high = (rounded(value, 0) for value in limits)
    pack.same("owner: humidity", f"{low} to {high} %" in told, True)
    gauges = [string.gauge for string in pack.job.strings]
    if pack.count > 1 and not any(map(unknown, gauges)):
        pack.same("owner: gauges", re.findall(r"as thick as these, (\S+) to (\S+) (mm|in):", told),
                  [(gauge(min(gauges), pack.unit), gauge(max(gauges), pack.unit), pack.unit)])
    owner_past(pack, told)
    owner_nut(pack, told)
    owner_next(pack, told)
    for jargon in ("relief", "action", "crown", "truss", "feeler", "setback", "intonation"):
        pack.same(f"owner: {jargon}", jargon in told.lower(), False)


STOPS = {"bridge-lifted": "coming away from the body", "braces-loose": "brace inside is loose",
         "climate": "too dry or too damp", "not-tuned": "It was not in tune", "rod-limit": "too far for the rod inside",
         "short-by-bow": "bowed so far that", "neck-angle": "leans too far forward", "short-by-bridge": "bridge cannot come down"}


def owner_causes(pack, page):
    """What stops all work, each in its own words and no other's; and the notes that are not in tune."""
    told = " ".join(" ".join(row) for row in rows_of(page))
    stops = {row["code"] for row in pack.result["findings"] if row["level"] == "stop"}
    wanted = {STOPS[code] for code in stops if code in STOPS}
    pack.same("owner: a cause for every stop", bool(stops), bool(wanted))
    pack.same("owner: stops", sorted(words for words in set(STOPS.values()) if words in told), sorted(wanted))
    tunes = pack.result["tune"]["remedy"] in ("screws", "ends", "peaks", "replace")
    pack.same("owner: tune", ["not in tune." in told, "play in tune up the neck" in told], [tunes, tunes])


def owner(pack):
    out = pack.path + ".owner.pdf"
    done = drawn.draw(pack.path, "--sheet", "owner", "-o", out, "--units", pack.unit)
    if done.returncode:
        pack.report.wrong("owner's page", "a page", done.stderr.decode())
        return
    pages = pdf.read(out)
    os.remove(out)
    pack.same("owner: pages", len(pages), 1)
    owner_readings(pack, pages[0])
    owner_words(pack, pages[0], pack.job.limits.humidity)
    owner_causes(pack, pages[0])


CHECKS = (owner,)
