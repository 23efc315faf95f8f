# SPDX-License-Identifier: MIT
"""In tune by the tuner, computed a second time: the move as the root of the two pitches' difference,
the bridge's line by a general solver, and what comes first by what the other parts say."""
import math
from types import SimpleNamespace as Plain

import numpy as np
from scipy.optimize import brentq

import bench
import parts
import tone

STROKE = 0.15     # the saddle is near its height
LEAST = 0.1       # nothing is moved along by less
SPAN = 0.5        # of the strings, that readings must reach over to show a tilt
MARGIN = 0.3      # from a face of the saddle to a peak
BACK = math.tan(math.radians(12))
STOPS = {"climate", "bridge-lifted", "braces-loose", "not-tuned"}


def interval(longer, length, fret):
    """From the open string up to the fretted one, in cents; pitch goes as one over the length."""
    return 1200 * math.log2((length + longer) / (length + longer - fret))


def move_for(length, fret, cents):
    """How much longer takes away so many cents."""
    if math.isnan(cents):
        return math.nan

    def over(longer):
        return interval(longer, length, fret) - interval(0.0, length, fret) + cents
    return brentq(over, fret - length + 1e-3, 20 * length, xtol=1e-13, rtol=1e-15)


def lengths(board, job, i):
    return board.end[i] - job.nut.advance[i], board.x[i, 12] - job.nut.advance[i]


def heard(board, job):
    """What a tuner told of each string, and what follows from it; nothing by worn strings."""
    r, within, u = job.readings, job.targets.cents, job.tools.cents / math.sqrt(3)
    usable = r.strings != "worn" and not r.untuned and board.frets >= 12
    cents = [c if usable else math.nan for c in r.cents]
    move = [move_for(*lengths(board, job, i), c) if board.frets >= 12 else math.nan
            for i, c in enumerate(cents)]
    side = [bench.side_of(c, (-within, 0.0, within), u) for c in cents]
    return Plain(cents=cents, move=np.array(move), side=side,
                 out=np.array([s in ("over", "under") for s in side]))


def by_what(job):
    if job.saddle.intonation:
        return job.saddle.intonation
    return {"individual": "screws", "two-post": "screws", "floating": "ends"}.get(
        job.saddle.kind, "none")


def may_file(job):
    """All these sheets give their targets themselves."""
    return job.saddle.kind in ("slotted", "glued") and by_what(job) == "none" \
        and not math.isnan(job.targets.cents)


def places(board, job, found):
    """Of each string's peak: now, where it should be, and where the piece lets it be."""
    middle = job.saddle.thickness / 2
    now = np.array([middle if math.isnan(p) else p for p in job.saddle.peak])
    there = now + found.move * slanted(board)
    most = max(job.saddle.thickness - MARGIN, MARGIN)
    return now, there, np.clip(there, MARGIN, most)


def needed(board, job, found):
    """The height that filing the peaks of the strings that are out takes."""
    now, _, held = places(board, job, found)
    by = np.abs(held - now)
    return np.where(found.out & (by >= LEAST), BACK * by, 0.0)


def bone_enough(board, job, spend, found):
    need = needed(board, job, found)
    return all(spend.most[i] >= need[i] for i in np.flatnonzero(need))


def peaks_first(board, job, spend, remedy, passes):
    """Whether nothing comes off the saddle before its peaks are filed. passes: what comes off today."""
    found = heard(board, job)
    need = needed(board, job, found)
    if remedy != "sand" or not may_file(job) or not need.any() \
            or not bone_enough(board, job, spend, found):
        return False
    far = (spend.most > need + STROKE).any() and max(passes) > bench.EDGE
    spare = all(spend.most[i] - passes[i] >= need[i] for i in np.flatnonzero(need))
    return not (far and spare)


def files_at_height(board, job, done, remedy):
    """Whether peaks are to be filed, and take height, on a saddle that is else left alone."""
    found = heard(board, job)
    if remedy != "none" or not may_file(job) or not needed(board, job, found).any():
        return False
    return bone_enough(board, job, done.spend, found) \
        or (job.saddle.kind == "glued" and can_spare(board, job, done, found))


def comes_first(board, job, done, nut, saddle):
    r, standing, bone = job.readings, job.standing, done.bone
    codes = set(nut["withheld_by"])
    flat_string = r.relief.gap == 0 and r.relief.by_string and job.board.join >= 3
    if codes & STOPS:
        return "stop"
    if math.isnan(done.now.bend) or done.turned or done.crowns or flat_string \
            or standing.relief_odd or standing.crowns_odd:
        return "neck"
    if codes or nut["remedy"] != "none" or parts.zero_fret_codes(done) \
            or any(row["verdict"] == "wait" for row in nut["strings"]):
        return "nut"
    if "tune-out" in saddle["withheld_by"]:
        return "saddle" if len(saddle["withheld_by"]) > 1 else None
    if job.saddle.kind in ("slotted", "glued"):
        return None if saddle["remedy"] in ("none", "replace") else "saddle"
    far = any(v == "wait" or (v != "leave" and abs(bone.lower[i]) > STROKE)
              for i, v in enumerate(bone.verdict))
    return "saddle" if saddle["remedy"] in ("wait", "replace") or far else None


def line_of(board, found):
    """The straight move that leaves the least sum of squares."""
    read = ~np.isnan(found.move)
    z = np.array(board.z_saddle)
    tilts = np.ptp(z[read]) >= SPAN * abs(z[0] - z[-1]) and np.ptp(z[read]) > 0
    degree = 1 if tilts else 0
    return np.polyval(np.polyfit(z[read], found.move[read], degree), z)


def less(board, job, i, by):
    """The cents that a move takes away."""
    length, fret = lengths(board, job, i)
    return interval(0.0, length, fret) - interval(by, length, fret)


def slanted(board):
    return math.cos(parts.leaning(board.nut_at + board.scale, board.z_saddle))


def can_spare(board, job, done, found):
    need = needed(board, job, found)
    for i in np.flatnonzero(need):
        action = bench.action_of(board, done.now, i)
        if not action - need[i] * board.t12[i] >= job.targets.action[i][0] \
                or need[i] > done.spend.limit[i] + bench.EDGE:
            return False
    return True


def remedy_of(board, job, done, found, saddle):
    by = by_what(job)
    if by == "screws":
        return "screws"
    if by == "ends":
        line = line_of(board, found)
        return "ends" if max(abs(line[0]), abs(line[-1])) >= LEAST else "note"
    if job.saddle.kind not in ("slotted", "glued"):
        return "note"
    if saddle["remedy"] == "replace" or "tune-out" in saddle["withheld_by"]:
        return "peaks"
    if not may_file(job) or not needed(board, job, found).any():
        return "note"
    if bone_enough(board, job, done.spend, found):
        return "peaks"
    if job.saddle.kind == "slotted":
        return "replace"
    return "peaks" if can_spare(board, job, done, found) else "note"


def by_physics(board, job, last, i, cents):
    """What its physics would move a string by that nobody read, if its core is known."""
    if not math.isnan(cents) or job.strings[i].assumed:
        return math.nan
    one = tone.Tuned(board, job, last, tone.crown_table(board, last), i)
    return one.setback_for(0.0, job.nut.advance[i]) - job.saddle.setback[i] if one.known \
        else math.nan


def tuning(board, job, done, nut, saddle, last):
    """`tune` of a result, and of each string its peak, what it is short by, and its drop."""
    found, count = heard(board, job), range(job.count)
    slotted = job.saddle.kind in ("slotted", "glued")
    asked = by_what(job) != "none" or may_file(job) or saddle["remedy"] == "replace"
    waits = comes_first(board, job, done, nut, saddle) if asked and found.out.any() else None
    remedy = "none" if not found.out.any() else "wait" if waits else remedy_of(
        board, job, done, found, saddle)
    unknown = np.full(job.count, math.nan)
    peak, there, held = places(board, job, found) if slotted else [unknown] * 3
    made = Plain(peak=list(peak), short=[0.0] * job.count, drop=[0.0] * job.count,
                 filed=[False] * job.count, remedy=remedy)
    by = [0.0] * job.count
    turns = [math.nan] * job.count
    anew = saddle["remedy"] == "replace" or remedy == "replace"
    need = needed(board, job, found) if slotted else np.zeros(job.count)
    at_the_face = remedy == "note" and may_file(job) and not need.any()
    for i in count:
        out, move = found.out[i], found.move[i]
        if remedy == "screws" and out:
            by[i], turns[i] = move, move / job.saddle.intonation_pitch
        if out and slotted and not anew and (at_the_face or remedy == "peaks"):
            made.short[i] = there[i] - held[i]   # said even where the peak is as near as it can be
        if remedy in ("peaks", "replace") and (need[i] > 0 or (anew and (
                out or (not math.isnan(move) and abs(move) >= LEAST)))):
            made.peak[i], made.filed[i] = held[i], True
            made.short[i] = there[i] - held[i]
            made.drop[i] = 0.0 if anew else BACK * abs(made.peak[i] - peak[i])
            by[i] = (made.peak[i] - peak[i]) / slanted(board)
    moves = list(found.move)
    for i in count if slotted and anew and remedy != "wait" else ():
        by_strings = by_physics(board, job, last, i, found.cents[i])
        if abs(by_strings) >= LEAST:
            there = peak[i] + by_strings * slanted(board)
            made.peak[i] = min(max(there, MARGIN), max(job.saddle.thickness - MARGIN, MARGIN))
            made.short[i], made.filed[i], moves[i] = there - made.peak[i], True, by_strings
            remedy = made.remedy = "replace" if remedy == "replace" else "peaks"
    ends = None
    if remedy == "ends":
        by = line_of(board, found)
        ends = {"treble": by[0], "bass": by[-1]}
    rows = []
    for i in count:
        read = not math.isnan(found.cents[i])
        stays = remedy == "note" or (remedy == "peaks" and not made.filed[i])
        works = found.out[i] and remedy != "wait" and not stays
        way = "back" if found.move[i] > 0 else "forward"
        verdict = "unread" if not read else "wait" if found.out[i] and remedy == "wait" else \
            way if works else "leave"
        rows.append({"number": i + 1, "cents": found.cents[i], "verdict": verdict,
                     "at_edge": found.side[i].startswith("at-"),
                     "move": moves[i] if works or made.filed[i] else math.nan,
                     "turns": turns[i],
                     "left": found.cents[i] - (less(board, job, i, by[i]) if read and by[i] else 0.0)})
    made.row = {"by": by_what(job), "remedy": remedy, "waits_for": waits,
                "target": job.targets.cents, "ends": ends, "strings": rows}
    made.move = list(found.move)
    return made


def asked_peak(before, i):
    """Whether the plan before asked for a string's peak to be filed, or all of them on a new
    saddle."""
    made = before.made
    return made.remedy == "replace" or (made.remedy == "peaks" and made.filed[i]
                                        and before.result["saddle"]["remedy"] != "replace")


def asked_peaks(before):
    return any(asked_peak(before, i) for i in range(before.job.count))
