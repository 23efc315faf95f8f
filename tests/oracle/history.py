# SPDX-License-Identifier: MIT
"""The readings of a sheet in order: how each compares with the plan before it, the rod ratio that
follows, and whether all work is done."""
import functools
import math
from types import SimpleNamespace as Plain

import numpy as np
import yaml

import bench
import carry
import parts
import seat
import sense
import sheet
import standing
import tuned

EDGE = 1e-6             # what stands on an edge is not past it, mm
LEARNS = 0.1            # how far relief, or a foretold action, must have moved to judge by, mm
SWING = 10.0            # of humidity, in %: past it the top moves as well
PASS = 0.01             # less off a slot is no pass, mm
RATIO = (0.3, 1.2)
SPREAD = 0.25           # standard uncertainty of a neck's ratio before it is learned
KNOWN = 0.1             # and the least it has once it is learned
HAIR = 1e-7             # figures this near a threshold are nobody's to call


def up_to(doc, count):
    """The job of a parsed sheet as it stood at one of its readings."""
    return sheet.read({**doc, "readings": doc["readings"][:count]}, doc["readings"])


def look(job):
    """All that one reading says, with what is known of the neck by then."""
    result, found = bench.plan_and_cuts(job)
    board = bench.Board(job)
    done = bench.work(board, job, bench.reading_of(job))
    relief = done.now.bend * board.span(job.readings.relief.at)
    return Plain(job=job, board=board, done=done, result=result, relief=relief,
                 made=found.made)


def actions(view, state):
    return np.array([bench.action_of(view.board, state, i) for i in range(view.job.count)])


def as_read(view):
    """Action at 12 as the heights tell it; where no height is known, as it stands on the sheet."""
    r, told = view.job.readings, actions(view, view.done.now)
    if r.at == 12 and not r.capo:
        told = np.where(np.isnan(told), np.array(r.action), told)
    return told + view.job.off_line


def mean(values):
    known = values[~np.isnan(values)]
    return float(np.mean(known)) if len(known) else math.nan


def bent(state, board, bend, ratio):
    """Nut with the neck, saddle with the body; the chord turns between them."""
    nut, end = board.moved((bend - state.bend) * ratio)
    return Plain(bend=bend, off=state.off, nut=state.nut + nut, end=state.end + end)


def taken_by_caliper(before, now):
    """What came off under each string, straight between the two places the caliper reads."""
    if before.result["saddle"]["remedy"] in ("shim", "replace") or tuned.asked_peaks(before):
        return np.full(now.job.count, math.nan)
    off = (np.array(before.job.readings.saddle_height)
           - np.array(now.job.readings.saddle_height))
    z = now.board.z_saddle
    if now.job.count == 1:
        return off[:1] + 0 * off[1]
    return off[0] + (off[1] - off[0]) * (z[0] - z) / (z[0] - z[-1])


def asked_for(before):
    """What the plan before told to take off under each string, before reading again."""
    part, stages = before.result["saddle"], before.result["stages"]
    rows, cut = part["strings"], part["bottom_cut"]
    if part["remedy"] == "sand":
        first = cut and [cut["first_pass"][end] for end in ("treble", "bass")]
        top = np.array([number(row["dress_first"]) if number(row["dress"]) >= 0.1
                        or not cut and row["verdict"] == "lower" else 0.0 for row in rows])
        if first and max(first) >= 0.01:
            half = before.job.saddle.length / 2
            return top + np.interp(before.board.z_saddle, [-half, half], first[::-1])
        return top
    if part["remedy"] in ("none", "wait"):
        return np.array(before.made.drop)
    if part["remedy"] == "shim":
        return np.array([number(row["dress_first"]) for row in rows]) - part["shim"]
    high = np.array([row["leave"] if part["remedy"] == "replace" else 0.0 for row in rows])
    return np.array([number(nut["saddle_height"]) - number(end["saddle_height"])
                     for nut, end in zip(stages[3]["strings"], stages[4]["strings"])]) - high


def number(value):
    return math.nan if value is None else value


def is_done(part):
    return part["remedy"] not in ("none", "wait")


def slots_filed(before, state):
    """A slot that is cut from above stands where the plan has it, and higher by what stays on; whether
    the old one was read or not."""
    planned = before.result["stages"][3]["strings"]   # of a new nut every slot, the good ones too
    after = Plain(**{**vars(before.done.slots.after), "nut": np.array([number(row["nut_height"]) for row in planned])})
    cut = state if math.isnan(state.bend) else bent(after, before.board, state.bend, before.job.ratio)
    for i, row in enumerate(before.result["nut"]["strings"]):
        if row["leave"] is not None:
            state.nut[i] = cut.nut[i] + row["leave"]
        elif row["verdict"] == "file":
            state.nut[i] -= row["first_pass"]
        elif row["filed_back"] is not None:   # as the shim leaves it, or filed back at first
            state.nut[i] += before.result["nut"]["shim"] - row["filed_back"]


def foretell(before, now, near):
    """(what was worked, the action to expect)."""
    done, worked = before.done, []
    stopped = bool(standing.STOPS & set(before.result["nut"]["withheld_by"]))   # nothing was asked for then
    turned, crowns = done.turned and not stopped, None if stopped else done.crowns
    moved = abs(now.relief - before.relief)
    state = Plain(bend=done.now.bend, off=done.now.off, nut=done.now.nut.copy(),
                  end=done.now.end.copy())
    bend = now.done.now.bend
    if turned:
        worked.append("rod")
        bend = done.rod.bend if math.isnan(bend) else bend
    errors = before.job.tools.relief + now.job.tools.relief
    near(moved, errors)
    if not math.isnan(bend) and (turned or moved > errors + EDGE):
        state = bent(state, before.board, bend, before.job.ratio)
    if crowns:
        worked.append("frets")
        rise = math.nan if crowns == "crown-thin" else done.level
        state.off, state.nut, state.end = done.frets.off, state.nut + rise, state.end + rise
    caliper = taken_by_caliper(before, now)
    measured = not np.isnan(caliper).any()
    ends = np.abs(caliper[[0, -1]])
    errors = before.job.tools.caliper + now.job.tools.caliper
    sanded = ends.max() > errors + EDGE if measured else is_done(before.result["saddle"]) or tuned.asked_peaks(before)
    near(ends.max(), errors)
    filed = is_done(before.result["nut"])
    if filed:
        slots_filed(before, state)
        worked.append("nut")
    nut_only = actions(before, state)
    if not sanded:
        return worked, nut_only
    state.end = state.end - (caliper if measured else asked_for(before))
    expected, read = actions(before, state), as_read(now)
    if filed and not measured and abs(mean(read - nut_only)) < abs(mean(read - expected)):
        return worked, nut_only   # nut and saddle may be visits apart
    return worked + ["saddle"], expected


def to_finish(asked, passes, whole, change, fell, again, near):
    """Cut since the reading before by less than its cut; or to be finished then, and not cut yet."""
    flags = []
    for n in range(len(passes)):
        if not asked[n] or not passes[n] >= 0.01:
            flags.append(False)
            continue
        near(fell[n], change[n] / 2)
        made = fell[n] >= change[n] / 2
        flags.append(bool(passes[n] < whole[n] - EDGE) if made else bool(again[n]))
    return flags


def cut_anew(before, now, i, fell, lever, near):
    """Whether a slot that was cut from above is read with its stroke still on: its gap is there, and of
    one that was too low by a known amount it has come up by half of that at least."""
    row, r = before.result["nut"]["strings"][i], bench.reading_of(now.job)
    first = r.first_open[i] if not math.isnan(r.first_open[i]) else r.first[i]
    if not first > 0:
        return False
    if row["verdict"] != "raise" or math.isnan(fell) or row["deepen"] is None:
        return True
    near(-fell, -row["deepen"] * lever / 2)
    return bool(-fell >= -row["deepen"] * lever / 2)


def unfinished(before, now, near):
    """Which slots, and which strings at the saddle."""
    job, part, slots = before.job, before.result["saddle"], before.result["nut"]
    hold = job.targets.held or 2
    lever = [1 - now.board.x[i, 1] / now.board.x[i, hold] for i in range(job.count)]
    passes = [number(row["first_pass"]) for row in slots["strings"]]

    def gaps(view):
        return [bench.first_of(view.board, view.done.now, i, hold) for i in range(job.count)]
    fell = np.array(gaps(before)) - np.array(gaps(now))
    filed = [row["verdict"] == "file" and slots["remedy"] != "replace" for row in slots["strings"]]
    anew = [row["leave"] is not None for row in slots["strings"]]
    nut = to_finish([a and not b for a, b in zip(filed, anew)], passes, [number(row["goal"]) for row in slots["strings"]],
                    np.array(lever) * passes, fell, job.finish.nut, near)
    nut = [slots["remedy"] == "replace" and cut_anew(before, now, i, fell[i], lever[i], near) if anew[i] else nut[i]
           for i in range(job.count)]   # one that was filled is left in its range
    saddle = [False] * job.count
    if "tune-out" in part["withheld_by"]:   # peaks first, and then what was to be finished
        saddle = list(job.finish.saddle)
    if part["remedy"] == "sand":
        passes = asked_for(before)
        fell = actions(before, before.done.now) - actions(now, now.done.now)
        saddle = to_finish([row["verdict"] == "lower" for row in part["strings"]], passes,
                           [number(row["goal"]) for row in part["strings"]],
                           now.board.t12 * passes, fell, job.finish.saddle, near)
    if part["remedy"] == "replace":
        saddle = [new_one_in(before, now, near)] * job.count
    return Plain(nut=nut, saddle=saddle)


def new_one_in(before, now, near):
    """The strings that a new saddle was made for have come up by half of what it was higher by, or more."""
    low = np.array([row["verdict"] == "raise" for row in before.result["saddle"]["strings"]])
    asked = (-asked_for(before) * now.board.t12)[low].sum()
    rose = (actions(now, now.done.now) - actions(before, before.done.now))[low].sum()
    near(rose, asked / 2)
    return bool(rose >= asked / 2)


def jumped(before, now, near):
    """Whether the caliper reads a saddle that was not worked otherwise than before."""
    if now.job.saddle.kind not in ("slotted", "glued") or is_done(before.result["saddle"]) \
            or tuned.asked_peaks(before):
        return False
    moved = np.abs(np.array(before.job.readings.saddle_height)
                   - np.array(now.job.readings.saddle_height))
    most = math.sqrt(3) * math.hypot(before.job.tools.caliper, now.job.tools.caliper)
    for by in moved:
        near(by, most)
    return bool((moved > most + EDGE).any())


def by_season(before, now, worked, near):
    """Whether the air is another than at the visit before, nothing was worked, and it moved."""
    swing = abs(now.job.readings.humidity - before.job.readings.humidity)
    tools, apart = now.job.tools, as_read(now) - as_read(before)
    relief = abs(now.relief - before.relief)
    action = abs(np.nanmean(apart)) if (~np.isnan(apart)).any() else math.nan
    near(relief, 2 * tools.relief)
    near(action, tools.action)
    return bool(not worked and swing > SWING
                and (relief > 2 * tools.relief + EDGE or action > tools.action + EDGE))


def ratio_of(before, now, worked, expected, near):
    """Of the change that was foretold, or for a neck of that an even bend gives, what came."""
    was, read = actions(before, before.done.now), as_read(now)
    moved = abs(now.relief - before.relief)
    swing = abs(now.job.readings.humidity - before.job.readings.humidity)
    if "rod" in worked:
        near(moved, LEARNS)
        if before.done.crowns in ("fret-worn", "crown-thin") or swing > SWING \
                or not moved >= LEARNS - 1e-9:
            return math.nan
        followed = [bent(before.done.now, before.board, now.done.now.bend, by) for by in (0.0, 1.0)]
        sag, even = (mean(actions(before, state) - was) for state in followed)
        return (mean(read - was) - sag) / (even - sag)
    foretold = mean(expected - was)
    near(abs(foretold), LEARNS)
    return mean(read - was) / foretold if worked and abs(foretold) >= LEARNS else math.nan


def stacks_after(before, now, near):
    """The feelers of every slot that was filed down to some after the visit before: those, less
    what its gap still asks for. None where it was not, by its gap, and where neither stiffness nor
    the error of the feelers explains how far that is off."""
    found, frets = [None] * now.job.count, now.board.frets
    held = 3 if frets >= 3 else 2
    if before.result["nut"]["remedy"] not in ("file", "fill", "replace"):
        return found
    rows = zip(before.result["nut"]["strings"], now.result["nut"]["strings"])
    for i, (was, row) in enumerate(rows):
        if was["leave"] is not None:   # cut from above: to its stack and what stayed on it
            if None not in (was["stack"], row["stack"]) and row["verdict"] in ("file", "raise"):
                moved = was["stack"] + was["leave"] - number(row["goal"])
                explained = (row["stack_bend"] or 0.0) + 3 * row["stack_u"]
                near(abs(moved - row["stack"]), explained)
                found[i] = moved if abs(moved - row["stack"]) <= explained else None
            continue
        if frets < 2:
            continue
        if was["verdict"] != "file" or was["first_pass"] < PASS or was["stack"] is None \
                or row["verdict"] not in ("file", "raise") or row["stack"] is None:
            continue
        moved = was["stack"] + (number(was["goal"]) - was["first_pass"]) - number(row["goal"])
        down = (bench.first_of(before.board, before.done.now, i, held)
                - bench.first_of(now.board, now.done.now, i, held)) \
            / bench.held_row(now.board, i, held)[0]
        explained = (row["stack_bend"] or 0.0) + 3 * row["stack_u"]
        near(was["first_pass"], PASS)
        near(down, was["first_pass"] / 2)
        near(abs(moved - row["stack"]), explained)
        if down > was["first_pass"] / 2 and abs(moved - row["stack"]) <= explained:
            found[i] = moved
    return found


def spread_of(before, now, near):
    """The standard uncertainty of the neck's ratio, by a step in each reading it is made of."""
    was, read = actions(before, before.done.now), as_read(now)
    spans = [view.board.span(view.job.readings.relief.at) for view in (before, now)]

    def ratio(more_action, more_bend):
        bend = now.done.now.bend + more_bend
        followed = [bent(before.done.now, before.board, bend, by) for by in (0.0, 1.0)]
        sag, even = (mean(actions(before, state) - was) for state in followed)
        return (mean(read - was) + more_action - sag) / (even - sag)

    step, root3 = 1e-6, math.sqrt(3)
    by_action = (ratio(step, 0) - ratio(-step, 0)) / (2 * step)
    tilt = step * abs(now.done.now.bend - before.done.now.bend)
    by_bend = (ratio(0, tilt) - ratio(0, -tilt)) / (2 * tilt)
    tools = [view.job.tools for view in (before, now)]
    u = math.hypot(*(by_action * tool.action / math.sqrt(3 * now.job.count) for tool in tools),
                   *(by_bend * tool.relief / root3 / span for tool, span in zip(tools, spans)))
    near(u, KNOWN)
    near(u, SPREAD)
    return max(u, KNOWN)


def finished(view):
    """Every reading there and in its range, and nothing left to do, wait for or doubt."""
    job, result, read = view.job, view.result, bench.reading_of(view.job)
    r, gaps = job.readings, view.result["stages"][0]["strings"]
    there = not (np.isnan(read.action).any() or np.isnan(view.done.now.bend)
                 or (np.isnan(read.first) & np.isnan(read.first_open)).any())
    flat = view.board.join < 3
    b = job.board   # what no rod is there to put right, or is left, stays as it is
    left = not (b.rod == "unknown" or b.rod != "none" and b.rod_state == "works"
                or parts.bow_first(job, view.done) or bench.bowed_for_good(view.board, job, view.done))
    straight = flat or left or view.done.relief_side in ("within", "at-low", "at-high")
    bowed_back = not flat and r.relief.gap < 0
    sound = all(abs(off) <= job.limits.wear + bench.EDGE for _, _, off in r.off)
    both = result["nut"], result["saddle"]
    idle = all(part["remedy"] == "none" and not part["withheld_by"] for part in both) \
        and view.made.remedy in ("none", "note")
    settled = not seat.present_heights(view.board, job, view.done.now)[2]
    return bool(there and straight and not bowed_back and sound and idle and gaps and settled)


@functools.lru_cache(maxsize=100)  # who makes a sheet and who compares it both ask
def follow(text):
    """(the job as its last reading leaves it, its visits, whether done, whether it is too near a
    threshold to call)."""
    doc, rows, hairs, past = yaml.load(text, sheet.LOADER), [], [], []

    def near(value, threshold):
        if 1e-12 < abs(value - threshold) < HAIR or value == threshold:
            hairs.append((value, threshold))
    before, known = None, (1.0, SPREAD)
    for k in range(len(doc["readings"])):
        job = up_to(doc, k + 1)
        job.ratio, job.spread = known
        carry.take_over(job, before, past, near)
        past.append(Plain(date=job.readings.date, humidity=job.readings.humidity,
                          tools=Plain(**vars(up_to(doc, k + 1).tools))))
        found = standing.stand(job, bench.Board(job), before)
        now, worked, ratio = look(job), [], math.nan
        expected = np.full(job.count, math.nan)
        if before:
            worked, expected = foretell(before, now, near)
            ratio = ratio_of(before, now, worked, expected, near)
        if "rod" in worked and not math.isnan(ratio):
            spread = spread_of(before, now, near)
            if spread < SPREAD:
                known = min(max(ratio, RATIO[0]), RATIO[1]), spread
            job.ratio, job.spread = known
            now = look(job)
        if before:
            job.finish = unfinished(before, now, near)
            job.jumped = jumped(before, now, near)
            job.season = by_season(before, now, worked, near)
            now = look(job) if job.jumped or job.season or any(job.finish.nut + job.finish.saddle) else now
        job.stacks = stacks_after(before, now, near) if before else job.stacks
        if any(stack is not None for stack in job.stacks):
            now = look(job)
        node = doc["readings"][k]
        rows.append(bench.plain({
            "date": node.get("date"), "humidity": job.readings.humidity, "work": worked,
            "relief": now.relief, "predicted": [sense.over(v) for v in expected],
            "read": list(as_read(now)),
            "ratio": ratio}))
        now.odd, now.read = found, as_read(now)
        before = now
    before.job.carried_rows = carry.rows(before.job, past)
    return before.job, rows, finished(before), bool(hairs)
