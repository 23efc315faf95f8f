# SPDX-License-Identifier: MIT
"""Random job sheets: an instrument is made up, then read as a bench would read it.

The same seed and number give the same sheet. Sheets say everything themselves, so that no profile
enters the check.
"""
import math
import random

import yaml

import bench
import history
import sheet
import visit
import wanted

NAMES = ["C", "C#", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"]
MATERIALS = {
    "plain-steel": {"modulus": "206 GPa", "density": "7850 kg/m3"},
    "plain-nylon": {"modulus": "4.5 GPa", "density": "1120 kg/m3"},
    "plain-fluorocarbon": {"modulus": "4 GPa", "density": "1600 kg/m3"},
    "plain-gut": {"modulus": "6 GPa", "density": "1300 kg/m3"},
    "wound-bronze": {"modulus": "206 GPa", "density": "7850 kg/m3", "wrap_density": "8800 kg/m3"},
    "wound-nickel": {"modulus": "206 GPa", "density": "7850 kg/m3", "wrap_density": "8880 kg/m3"},
    "wound-nickel-plated": {"modulus": "206 GPa", "density": "7850 kg/m3",
                            "wrap_density": "7950 kg/m3"},
    "wound-steel": {"modulus": "206 GPa", "density": "7850 kg/m3", "wrap_density": "7850 kg/m3"},
    "wound-nylon": {"modulus": "4.5 GPa", "density": "1120 kg/m3", "wrap_density": "8900 kg/m3"}}
COUNTS = [6] * 8 + [4, 4, 4, 5, 5, 7, 7, 8, 12, 12, 1, 1, 2, 3, 9, 10, 11]


class Maker:
    """Draws one sheet; `unit` is what its bare numbers are in."""

    def __init__(self, rng):
        self.rng = rng
        self.unit = rng.choice(["mm", "mm", "mm", "in"])

    def chance(self, p):
        return self.rng.random() < p

    def between(self, low, high):
        return self.rng.uniform(low, high)

    def length(self, mm, digits=2):
        """A figure as a bench writes it: bare, or with a unit of its own."""
        mm, how = float(mm), self.rng.random()
        bare, other = (digits, "in") if self.unit == "mm" else (min(4, digits + 2), "mm")
        if how < 0.85:
            return round(mm / sheet.UNITS[self.unit], bare)
        if how < 0.89:
            return f"{round(mm / sheet.UNITS[self.unit], bare)} {self.unit}"
        if how < 0.93:
            return f"{round(mm / sheet.UNITS[other], digits + 2)} {other}"
        if how < 0.97 and abs(mm) < 3 and digits > 1:
            return f"{round(mm / 0.0254, 1)} thou"
        if 3 < mm < 90 and digits < 2:
            return visit.fraction(mm)
        return f"{round(mm, digits)} mm"

    def lengths(self, values, digits=2):
        return [None if v is None else self.length(v, digits) for v in values]


# The instrument

def instrument(m):
    r = m.rng
    frets = r.choice([20, 20, 19, 21, 22, 24, r.randint(12, 24), r.randint(13, 36),
                      r.randint(1, 36), r.randint(3, 14)])
    join = min(frets, r.choice([14, 14, 12, 12, 16, 20, frets, r.randint(1, 36)]))
    node = {"scale": scale(m, frets), "frets": frets, "join": join, "radius": radius(m),
            "rod": r.choice(["two-way", "two-way", "one-way", "none"])}
    if m.chance(0.95):
        node["crown"] = m.length(m.between(0.7, 1.3))
    if m.chance(0.9):
        node["rod_state"] = r.choice(["works", "works", "works", "slack", "at-end", "stuck"])
    if m.chance(0.35):
        node["fallaway"] = m.length(m.between(0, 0.5))
    if m.chance(0.95):
        node["head_angle"] = f"{round(m.between(4, 26), 1)} deg"
    if m.chance(0.2):
        node["handed"] = r.choice(["left", "right"])
    if m.chance(0.6):
        node["pocket"] = m.length(m.between(50, 90), 1)
        if m.chance(0.3):
            node["pocket_at"] = m.length(m.between(160, 300), 1)
    if m.chance(0.6):
        node["heel"] = m.length(m.between(50, 110), 1)
    return node


def scale(m, frets):
    """One, or a fan's two; now and then a fan of two that are the same."""
    plain = m.rng.choice([m.between(600, 690), m.between(330, 880)])
    if m.chance(0.65):
        return m.length(plain, 1)
    wider = m.rng.choice([0.0, m.between(5, 60)])
    return {"treble": m.length(plain, 1), "bass": m.length(plain + wider, 1),
            "square": m.rng.choice([0, min(7, frets), m.rng.randint(0, frets)])}


def into_courses(m, strings):
    """Numbers some neighbours as courses: pairs, or as it comes."""
    count = len(strings)
    if count % 2 == 0 and m.chance(0.4):
        numbers = [i // 2 + 1 for i in range(count)]
    elif m.chance(0.1):
        numbers = [1]
        for _ in range(count - 1):
            numbers.append(numbers[-1] + (not m.chance(0.4)))
    else:
        return
    for string_node, number in zip(strings, numbers):
        if numbers.count(number) > 1 or m.chance(0.7):
            string_node["course"] = number


def radius(m):
    flat = m.between(180, 520)
    return m.rng.choice(["flat", m.length(flat, 1), m.length(flat, 1),
                         {"nut": m.length(flat, 1), "end": m.length(flat + m.between(0, 250), 1)}])


def string(m, scale, share):
    """Thicker and lower toward the bass; its pitch is the note nearest a likely tension."""
    wound = share > 0.45 and m.chance(0.9)
    make = m.rng.choice([k for k in MATERIALS if k.startswith("wound") == wound])
    gauge = m.between(0.55, 0.7) + 0.8 * share if wound else m.between(0.22, 0.45) + 0.3 * share
    node = {"gauge": m.length(gauge, 3), "make": make}
    if wound and m.chance(0.85):
        node["core"] = m.length(gauge * m.between(0.35, 0.6), 3)
    density = 7800 if "steel" in make or wound else 1300
    mass = density * math.pi * (gauge / 2000) ** 2
    if m.chance(0.15):
        node["modulus"] = f"{round(m.between(2, 220), 2)} GPa"
    if m.chance(0.15):
        node["unit_mass"] = f"{round(mass * 1000, 4)} g/m"
    hz = math.sqrt(m.between(50, 100) / mass) / (2 * scale / 1000)
    if m.chance(0.15):
        return {"hz": round(hz, 2), **node}
    key = round(69 + 12 * math.log2(hz / 440))
    return {"note": f"{NAMES[key % 12]}{key // 12 - 1}", **node}


def pair(m):
    """Wide enough for the thickest string drawn."""
    return m.between(2.0, 3.2)


def nut(m, gauges, courses):
    step, edges, inside = m.between(4.5, 8.5), [m.between(2, 4), m.between(2, 4)], pair(m)
    joined = len(gauges) - 1 - courses[-1]
    width = sum(edges) + step * max(courses[-1], 2) + inside * joined + gauges[0]
    node = {"width": m.length(width, 1), "spacing": m.rng.choice(["equal-gap", "equal-centre"]),
            "edge": m.rng.choice([{"treble": m.length(edges[0]), "bass": m.length(edges[1])},
                                  m.length(edges[0])]),
            "kind": m.rng.choice(["slotted"] * 7 + ["zero-fret"]), "material": "bone"}
    if joined or m.chance(0.1):
        node["pair"] = m.length(inside)
    if m.chance(0.3):
        node["advance"] = m.length(m.between(0, 0.8))
    if m.chance(0.96):
        node["thickness"] = m.length(m.between(3, 7))
    if m.chance(0.96):
        node["seat_to_board"] = m.length(m.between(3, 8))
    return node


def saddle(m, count, courses):
    kind = m.rng.choice(["slotted"] * 7 + ["glued"] * 2 + ["individual"] * 2 + ["two-post"] * 2
                        + ["floating"] * 2)
    inside = pair(m)
    joined = count - 1 - courses[-1]
    spread = m.between(7, 11) * max(courses[-1], 1) + inside * joined
    setbacks = [m.between(0.5, 2.5) + 3 * i / count for i in range(count)]
    node = {"kind": kind, "spread": m.length(spread, 1), "material": "bone",
            "setback": m.rng.choice([m.lengths(setbacks), m.length(setbacks[0]), 0,
                                     {"treble": m.length(setbacks[0]),
                                      "bass": m.length(setbacks[-1])}])}
    if joined or m.chance(0.1):
        node["pair"] = m.length(inside)
    wheels = kind == "floating" and m.chance(0.5)
    if kind in ("individual", "two-post") or wheels:
        node["pitch"] = m.length(m.between(0.3, 0.8))
        if m.chance(0.3):
            down = m.length(m.between(0.0, 3.0))
            node["travel"] = {"down": down, "up": m.length(m.between(0.0, 3.0))} \
                if m.chance(0.4) else down
        if kind != "individual":
            node["post_spread"] = m.length(m.between(40, 90), 1)
        return node
    node["length"] = m.length(spread + m.between(7, 14), 1)
    if kind == "floating":
        return node
    node["thickness"] = m.length(m.between(2, 4))
    if m.chance(0.95):
        node["slot_depth"] = m.length(m.between(2.5, 6))
    if m.chance(0.3):
        node["pickup"] = m.length(m.between(0.3, 1.5))
    pins = [m.between(5, 25) for _ in range(count)]
    if m.chance(0.2):
        node["exit_height"] = m.length(m.between(-1.0, 1.0))
    node["pin_distance"] = m.rng.choice(["none", m.length(pins[0], 1), m.lengths(pins, 1)])
    return node


def material(m, make):
    """Of what the make is, its modulus now and then not known."""
    node = dict(MATERIALS[make])
    if m.chance(0.05):
        del node["modulus"]
    return node


# Whole sheets

def draw(rng):
    m = Maker(rng)
    doc = {"sillet": 1}
    if m.unit == "in" or m.chance(0.5):
        doc["units"] = m.unit
    count = rng.choice(COUNTS)
    doc["instrument"] = instrument(m)
    length = sheet.instrument(sheet.Sheet(yaml.dump(doc, Dumper=sheet.DUMPER))).scale[0]
    doc["strings"] = [string(m, length, i / max(count - 1, 1)) for i in range(count)]
    into_courses(m, doc["strings"])
    plain = sheet.Sheet(yaml.dump(doc, Dumper=sheet.DUMPER))
    doc["nut"] = nut(m, [plain.length(str(s["gauge"])) for s in doc["strings"]], plain.courses)
    doc["saddle"] = saddle(m, count, plain.courses)
    if m.chance(0.7):
        sizes = {round(m.between(0.2, 1.7), 2) for _ in range(rng.randint(1, 12))}
        doc["files"] = m.lengths(sorted(sizes))
    doc["targets"] = wanted.targets(m, count, doc["instrument"]["frets"])
    doc.update(wanted.playing(m, count, length))
    doc.update(wanted.shop(m))
    doc["materials"] = {s["make"]: material(m, s["make"]) for s in doc["strings"]}
    seen = visit.crowns(m, count, doc["instrument"]["frets"])
    doc["readings"] = [{"frets": seen} if seen else {}]
    job = sheet.written(doc)
    board = bench.Board(job)
    state = visit.true_state(m, job, board)
    doc["readings"] = [visit.readings(m, job, board, state, seen)]
    for _ in range(rng.choice([0, 0, 0, 1, 2, 3])):
        state, seen = visit.worked(m, doc, state, seen)
        doc["readings"].append(visit.readings(m, job, board, state, seen))
        visit.left_out(m, job, doc["readings"][-1])
    if m.chance(0.05):
        doc["readings"].insert(0, {"date": "2025-11-02", "humidity": "40 %"})
    doc["readings"][-1].update(visit.heard(m, job.count, job.board.frets))
    if m.chance(0.1):
        at_edges(m, doc)
    tuner = Maker(random.Random(repr(doc)))   # draws of its own: the rest is as it would be without
    tuner.unit = m.unit
    in_tune(tuner, doc, count)
    eyed = Maker(random.Random("zero fret" + repr(doc)))   # and these, too
    eyed.unit = m.unit
    read_zero_fret(eyed, doc, count)
    return doc


def read_zero_fret(m, doc, count):
    """How far a zero fret's crown is off the others', as it may be read, or misread."""
    node = doc["readings"][-1]
    if doc["nut"]["kind"] != "zero-fret" or not node.get("frets") or m.chance(0.4):
        return
    listed = [] if node["frets"] == "sound" else list(node["frets"])
    near, by = m.between(-0.15, 0.15), m.chance(0.7)
    node["frets"] = listed + [
        {"string": i + 1, "fret": 0, "off": m.length(near + m.between(-0.02, 0.02) if by
                                                     else m.between(-0.3, 0.2))}
        for i in range(count) if m.chance(0.7)] or "sound"


def in_tune(m, doc, count):
    """By what the strings are brought into tune, how closely, and what a tuner told at each visit."""
    node = doc["saddle"]
    if m.chance(0.4):
        doc["targets"]["cents"] = round(m.between(2, 9), 1)
    if m.chance(0.5):
        doc["tools"]["cents"] = round(m.between(0.2, 4), 1)
    if node["kind"] in ("slotted", "glued"):
        thickness = sheet.Sheet(doc_text(doc)).length(str(node["thickness"]))
        places = [m.between(0.1, 0.9) * thickness for _ in range(count)]
        if m.chance(0.6):
            node["peak"] = m.rng.choice([m.lengths(places), m.length(places[0])])
    elif m.chance(0.4):
        node["intonation"] = m.rng.choice(["screws", "ends", "none"])
    if node["kind"] in ("individual", "two-post") and m.chance(0.7):
        node["intonation_pitch"] = m.length(m.between(0.3, 0.8))
    for read in doc["readings"]:
        if m.chance(0.5):
            read.pop("cents", None)
            read.update(visit.sharpness(m, count))


def doc_text(doc):
    return yaml.dump(doc, Dumper=sheet.DUMPER)


def at_edges(m, doc):
    """Puts readings exactly at an edge of their range, where they are still in range."""
    read, aims = doc["readings"][-1], doc["targets"]
    relief, action, first = (read.get(key) for key in ("relief", "action", "first"))
    if isinstance(relief, float) and relief > 0:
        aims["relief"] = edge_band(m, relief)
    bare = [a for a in action if isinstance(a, float) and a] if isinstance(action, list) else []
    if bare and "action_at" not in read and not read.get("action_capo"):
        aims["action"] = [edge_band(m, a if a in bare else bare[0]) for a in action]
    if isinstance(first, float) and first > 0 and "first_open" not in read:
        aims["first"] = {**edge_band(m, first), "held": read.get("first_held", 3)}


def just_thick_enough(doc):
    """The thickest shim allowed is just the one that is wanted, if one is."""
    result = bench.plan(sheet.written(doc))
    shim = result["saddle"]["shim"] or result["nut"]["shim"]
    if shim:
        doc["limits"]["most_shim"] = f"{shim:.10g} mm"


def edge_band(m, figure):
    low, high = m.rng.choice([(1, 1.2), (0.8, 1), (0.8, 1.2)])
    return {"low": figure * low, "aim": figure * (low + high) / 2, "high": figure * high}


def text_of(doc, rng):
    return yaml.dump(doc, Dumper=sheet.DUMPER, sort_keys=False,
                     default_flow_style=rng.choice([None, False, True]), width=100,
                     allow_unicode=True)


def make(seed, number):
    """The sheet of that number, as a document and as text."""
    rng = random.Random(f"{seed}/{number}")
    while True:
        doc = draw(rng)
        if rng.random() < 0.2:
            just_thick_enough(doc)
        text = text_of(doc, rng)
        read = yaml.load(text, sheet.LOADER)
        possible = all(visit.possible(history.up_to(read, k + 1))
                       for k in range(len(doc["readings"])))
        if possible and not history.follow(text)[3]:
            return doc, text


def again(doc, job, result):
    """The predicted instrument read once more: what the last stage leaves, to the last digit."""
    last, held = result["stages"][-1], job.targets.held
    fresh = {key: value for key, value in doc.items() if key != "readings"}
    node = {"action": [f"{s['action']:.12f} mm" for s in last["strings"]],
            "first": [f"{s[f'first_held{held}']:.12f} mm" for s in last["strings"]],
            "first_held": held, "confirmed": list(range(1, job.count + 1))}   # odd, but as planned
    if job.board.join >= 3:
        node["relief"] = {"gap": f"{last['relief']:.12f} mm", "at": job.readings.relief.at,
                          "by": "straightedge"}
    if job.readings.crowns_read:
        left = [{"string": i + 1, "fret": n, "off": f"{off:.12f} mm"}
                for i, n, off in job.readings.off if off <= job.limits.wear]
        node["frets"] = left or "sound"
    fresh["readings"] = [node]
    return yaml.dump(fresh, sort_keys=False)
