# SPDX-License-Identifier: MIT
"""Reads a job sheet that says everything itself (no profile) into millimetres, for the check.

It trusts the sheet: telling what is wrong with one is the program's work, not the check's.
Unknown lengths are NaN, so that what follows from them is NaN too.
"""
import math
import re
from types import SimpleNamespace as Plain

import yaml

from scalars import LOADER, NAN, UNITS, Sheet, given, run  # noqa: F401 (some are for who imports this)

DUMPER = getattr(yaml, "CDumper", yaml.Dumper)
SEMITONE = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}


def pitch(node):
    if given(node.get("hz")):
        return float(node["hz"].split()[0])
    letter, sign, octave = re.fullmatch(r"([A-G])([#b]?)(-?\d)", node["note"]).groups()
    semitone = SEMITONE[letter] + {"#": 1, "b": -1, "": 0}[sign] + 12 * (int(octave) - 4)
    return 440.0 * 2 ** ((semitone - 9) / 12)


# Cores by gauge, in thousandths of an inch, as docs/arithmetic.md lists them.
UNDER_NICKEL = [17, 24, 30, 36, 46, 56, 64, 80, 100, 130], [10, 12.5, 14, 15, 16, 18, 19, 20, 22, 24]
USUAL_CORES = {
    "wound-bronze": ([20, 24, 30, 36, 42, 47, 53, 59], [10, 11, 13.5, 15, 16, 17, 18, 19]),
    "wound-nickel": UNDER_NICKEL, "wound-nickel-plated": UNDER_NICKEL, "wound-steel": UNDER_NICKEL,
    "wound-nylon": ([28, 44], [0.48 / 0.0254] * 2)}


def usual_core(make, gauge):
    """mm: on the broken line through the table, also where rounding took the gauge just past it."""
    gauges, cores = USUAL_CORES.get(make, ([math.inf], [0]))
    thou = gauge / 0.0254
    if not gauges[0] - 0.005 / 0.0254 <= thou <= gauges[-1] + 0.005 / 0.0254:
        return math.nan
    above = next((k for k in range(1, len(gauges)) if thou <= gauges[k]), len(gauges) - 1)
    (low, high), (thin, thick) = gauges[above - 1:above + 1], cores[above - 1:above + 1]
    return (thin * (high - thou) + thick * (thou - low)) / (high - low) * 0.0254


def core_of(sheet, node):
    """The core of a wound string and whether it is a usual one, since it is needed and not given:
    a nylon string is stiff over its whole gauge, so that with its mass its core says nothing."""
    if not node["make"].startswith("wound"):
        return math.nan, False
    told = sheet.length(node.get("core"))
    needless = node["make"] == "wound-nylon" and given(node.get("unit_mass"))
    if not math.isnan(told) or needless:
        return told, False
    usual = usual_core(node["make"], sheet.length(node["gauge"]))
    return usual, not math.isnan(usual)


def unit_mass(sheet, node, material, core):
    """kg/m: given, of a plain round wire, or of a core under one round wrap; else unknown."""
    if given(node.get("unit_mass")):
        return sheet.figure(node["unit_mass"]) / 1000
    gauge = sheet.length(node["gauge"]) / 1000
    density = sheet.figure(material.get("density"))
    if node["make"].startswith("plain"):
        return density * math.pi * (gauge / 2) ** 2
    core = core / 1000
    wrap = (gauge - core) / 2
    # A turn of wrap is pi (core + wrap) of wire long and moves on by one wire.
    wire = sheet.figure(material.get("wrap_density")) * math.pi * (wrap / 2) ** 2
    return density * math.pi * (core / 2) ** 2 + wire * math.pi * (core + wrap) / wrap


def string(sheet, node):
    material, wound = sheet.doc["materials"][node["make"]], node["make"].startswith("wound")
    modulus = node["modulus"] if given(node.get("modulus")) else material.get("modulus")
    gauge = sheet.length(node["gauge"])
    core, assumed = core_of(sheet, node)
    # What resists a stretch: a plain string and a nylon one whole, else the core.
    stiff = gauge if not wound or node["make"] == "wound-nylon" else core
    return Plain(hz=pitch(node), gauge=gauge, note=node.get("note"), wound=wound, core=stiff,
                 assumed=assumed, weighed=not assumed or given(node.get("unit_mass")), mass=unit_mass(sheet, node, material, core),
                 modulus=sheet.figure(modulus))


def radius(sheet, node):
    if node == "flat":
        return None
    if isinstance(node, dict):
        return sheet.length(node["nut"]), sheet.length(node["end"])
    return (sheet.length(node),) * 2


def instrument(sheet):
    node = sheet.doc["instrument"]
    fan = isinstance(node["scale"], dict)
    return Plain(scale=sheet.pair(node["scale"]), square=int(node["scale"]["square"]) if fan else 0,
                 pocket=sheet.length(node.get("pocket")), heel=sheet.length(node.get("heel")),
                 pocket_at=sheet.length(node.get("pocket_at")), frets=int(node["frets"]),
                 join=int(node["join"]), radius=radius(sheet, node["radius"]),
                 crown=sheet.length(node.get("crown")), rod=node["rod"],
                 rod_state=node.get("rod_state", "works"),
                 fall=sheet.length(node.get("fallaway", "0")),
                 head_angle=sheet.figure(node.get("head_angle")))


def nut(sheet, count):
    node = sheet.doc["nut"]
    edge = node["edge"] if isinstance(node["edge"], dict) else dict.fromkeys(
        ("treble", "bass"), node["edge"])
    return Plain(width=sheet.length(node["width"]), thickness=sheet.length(node.get("thickness")),
                 edge=(sheet.length(edge["treble"]), sheet.length(edge["bass"])),
                 equal_gap=node.get("spacing", "equal-gap") == "equal-gap",
                 advance=sheet.each(node.get("advance", "0"), count),
                 seat_to_board=sheet.length(node.get("seat_to_board")),
                 centres=sheet.each(node.get("centres"), count),
                 floors=sheet.each(node.get("floors"), count),
                 pair=sheet.length(node.get("pair")), zero_fret=node.get("kind") == "zero-fret")


def travel(sheet, node):
    """(down, up); up only from a mapping."""
    if isinstance(node, dict):
        return sheet.length(node["down"]), sheet.length(node["up"])
    return sheet.length(node), NAN


def outer(sheet, node, count):
    """A list of every string; or what was read at the outer strings alone."""
    if isinstance(node, list):
        return [sheet.length(item) for item in node]
    ends = sheet.pair(node)
    return [ends[0]] + [NAN] * (count - 2) + [ends[1]] * (count > 1)


def saddle(sheet, count):
    node = sheet.doc["saddle"]
    pin = node.get("pin_distance")
    return Plain(kind=node["kind"], length=sheet.length(node.get("length")),
                 thickness=sheet.length(node.get("thickness")), spread=sheet.length(node["spread"]),
                 setback=sheet.each(node["setback"], count),
                 old=sheet.each(node.get("old"), count),
                 slot_depth=sheet.length(node.get("slot_depth")),
                 pickup=sheet.length(node.get("pickup", "0")),
                 pin=sheet.each(None if pin == "none" else pin, count),
                 pitch=sheet.length(None if node.get("pitch") == "none" else node.get("pitch")), pair=sheet.length(node.get("pair")),
                 post_spread=sheet.length(node.get("post_spread")),
                 exit_height=sheet.length(node.get("exit_height", "0")),
                 travel=travel(sheet, node.get("travel")),
                 peak=sheet.each(node.get("peak"), count), intonation=node.get("intonation"),
                 intonation_pitch=sheet.length(node.get("intonation_pitch")))


def relief(sheet, node, join):
    """The reading as a gap under what lies on two crowns; the centre line where string is None."""
    if not given(node):
        node = {}
    elif not isinstance(node, dict):
        node = {"gap": node}
    by_string = node.get("by", "string") == "string"
    named = given(node.get("string")) and by_string
    at = 7 if join > 7 else (1 + join) // 2
    return Plain(gap=sheet.length(node.get("gap")), by_string=by_string,
                 at=int(node.get("at", at)), held=[int(n) for n in node.get("held", [1, join])],
                 string=int(node["string"]) - 1 if named else None)


def above_nothing(values):
    """0 read is `at or under`: no figure."""
    return [v if v > 0 else NAN for v in values]


class Reading(Plain):
    """One visit; what was read of the strings as written, and as figures go by it."""

    def finish(self):
        both = zip(self.raw_first, self.first_open)
        self.action, self.first = above_nothing(self.raw_action), above_nothing(self.raw_first)
        self.on_fret_1 = [0 in two for two in both]
        self.on_the_fret = [v == 0 for v in self.raw_first]
        return self


def readings(sheet, count, join):
    node = sheet.doc["readings"][-1]
    frets = node.get("frets")
    off = [] if frets == "sound" or not given(frets) else frets
    condition = node.get("condition") or {}
    held = node.get("first_held", "3")
    pair = {key: sheet.pair(node.get(key)) for key in ("saddle_height", "bridge_top")}
    pair["stands_out"] = outer(sheet, node.get("stands_out"), count)
    return Reading(
        date=node.get("date"), strings=condition.get("strings"),
        relief=relief(sheet, node.get("relief"), join), humidity=sheet.figure(node.get("humidity")),
        raw_action=sheet.each(node.get("action"), count),
        by_ends={key for key in ("action", "first") if isinstance(node.get(key), dict)},
        at=int(node.get("action_at", 12)), capo=node.get("action_capo", "0") == "1",
        raw_first=sheet.each(node.get("first"), count),
        held=0 if held == "open" else int(held),
        first_open=sheet.each(node.get("first_open"), count),
        crowns_read=given(frets),
        off=[(int(c["string"]) - 1, int(c["fret"]), sheet.length(c["off"])) for c in off
             if int(c["fret"]) > 0],
        zero_off=[sum(sheet.length(c["off"]) for c in off
                      if int(c["string"]) == i + 1 and int(c["fret"]) == 0) for i in range(count)],
        lifted=condition.get("bridge") == "lifted", loose=condition.get("braces") == "loose",
        leaning=condition.get("saddle") == "loose",
        untuned=condition.get("tuned") in ("no", "false"),
        buzz={(int(b["string"]) - 1, int(b["fret"])) for b in node.get("buzz") or []},
        confirmed=[i + 1 in {int(s) for s in node.get("confirmed") or []} for i in range(count)],
        cents=sheet.each(node.get("cents"), count, sheet.figure), **pair).finish()


def fractions(node):
    """Denominators of the inches somewhere in a reading."""
    if isinstance(node, dict):
        node = list(node.values())
    if isinstance(node, list):
        return [d for item in node for d in fractions(item)]
    match = re.fullmatch(r"(?:\d+ )?\d+/(\d+)( in)?", node.strip()) if given(node) else None
    return [int(match[1])] if match else []


def with_tuner(sheet, tools):
    """A tuner reads to 2 cents unless the sheet says otherwise."""
    node = sheet.doc["tools"].get("cents")
    tools.cents = sheet.figure(node) if given(node) else 2.0
    return tools


def graduated(sheet, tools):
    """The tools at the last visit: one whose key was read in fractions then reads to half of the
    finest fraction of that key on the sheet, or of a 32nd, where that is coarser."""
    keys = {"relief": ["relief"], "action": ["action"], "first": ["first", "first_open"],
            "caliper": ["saddle_height", "bridge_top"], "ruler": ["stands_out"]}
    for tool, names in keys.items():
        for name in names:
            if fractions(sheet.doc["readings"][-1].get(name)):
                finest = max(d for node in sheet.every for d in fractions(node.get(name)))
                half = 25.4 / max(32, finest) / 2
                setattr(tools, tool, max(getattr(tools, tool), half))
    return tools


def targets(sheet, count):
    node, width = sheet.doc["targets"], sheet.doc["allowances"]["band"]
    first = node["first"]
    held = first.get("held", "3") if isinstance(first, dict) else "3"
    band = {key: sheet.length(width[key]) for key in ("relief", "action", "first")}
    return Plain(relief=sheet.band(node["relief"], band["relief"]),
                 action=sheet.bands(node["action"], band["action"], count),
                 first=sheet.bands(first, band["first"], count),
                 held=0 if held == "open" else int(held),
                 cents=sheet.figure(node.get("cents")))


def attack(sheet, count):
    """Newtons on the sheet, or a word and what the sheet says it is worth."""
    node = sheet.doc["attack"]
    any_ = node == "any"
    if isinstance(node, str):
        node = sheet.doc["attacks"]["medium" if any_ else node]
    force = [NAN] * count if any_ else sheet.each(node["force"], count, sheet.figure)
    return Plain(force=force, hold=list(force), at=sheet.length(node["at"]))


def model(sheet):
    node = sheet.doc.get("model") or {}
    return Plain(ends=node.get("ends", "clamped-pinned"),
                 press=sheet.length(node.get("press", "0")))


def lengths(sheet, node, *keys):
    return Plain(**{key: sheet.length(node.get(key)) for key in keys})


def tools(sheet):
    read = lengths(sheet, sheet.doc["tools"], "action", "first", "relief", "caliper", "ruler")
    read.ruler = 0.3 if math.isnan(read.ruler) else read.ruler
    return with_tuner(sheet, graduated(sheet, read))


def as_read_today(count):
    none = {f"{key}_{word}": [False] * count for key in ("action", "first")
            for word in ("carried", "odd", "settled")}
    return Plain(relief_carried=False, relief_odd=False, crowns_odd=False, saddle_odd=False,
                 action_order=False, first_order=False, **none)


def read(text, every=None):
    sheet = Sheet(text, every)
    doc, count = sheet.doc, len(sheet.doc["strings"])
    board = instrument(sheet)
    limits = lengths(sheet, doc["limits"], "wear", "least_crown", "least_protrusion", "most_shim",
                     "most_relief", "least_first", "good_protrusion")
    limits.least_break = sheet.figure(doc["limits"]["least_break"])
    limits.humidity = [sheet.figure(doc["limits"]["humidity"][end]) for end in ("low", "high")]
    spare = doc["allowances"]
    allowances = lengths(sheet, spare, "slot_plain", "slot_wound", "shim_step")
    leave = doc["allowances"].get("leave") or {}
    allowances.leave = Plain(**{key: sheet.length(leave.get(key, usual))
                                for key, usual in (("slot", "0.05 mm"), ("base", "0.15 mm"),
                                                   ("top", "0.10 mm"))})
    allowances.blank = lengths(sheet, spare["blank"], "length", "thickness", "height")
    for key in ("bury_plain", "bury_wound", "fall_share"):
        setattr(allowances, key, float(spare[key]))
    # standing: what is known of each reading besides its figure; all false, as read today.
    # carried: the visits that readings were taken over from; none, as read today.
    # finish: which strings were cut by less than their cut since the reading before, at nut and
    # saddle. ratio, spread: what the readings before taught of the neck, and how far that is from sure.
    # stacks: of each slot that was filed after the visit before, the feelers that follow from it.
    return Plain(count=count, standing=as_read_today(count), ratio=1.0, spread=0.25,
                 stacks=[None] * count,
                 jumped=False, season=False, straighten=False, finish=Plain(nut=[False] * count, saddle=[False] * count),
                 caliper=sheet.length(doc["tools"].get("caliper")), courses=sheet.courses, shares=sheet.shares,
                 board=board, attack=attack(sheet, count), model=model(sheet),
                 strings=[string(sheet, node) for node in doc["strings"]],
                 nut=nut(sheet, count), saddle=saddle(sheet, count),
                 readings=readings(sheet, count, board.join),
                 files=[sheet.length(f) for f in doc.get("files") or []],
                 targets=targets(sheet, count),
                 tools=tools(sheet),
                 limits=limits, allowances=allowances)


def written(doc):
    """A job from a document that is not yet text."""
    return read(yaml.dump(doc, Dumper=DUMPER))
