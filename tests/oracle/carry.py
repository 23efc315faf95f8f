# SPDX-License-Identifier: MIT
"""What a visit does not tell and the visit before did, taken over where nothing has moved it."""
import datetime
import math

import bench
import standing

DAYS, SWING = 30, 10.0
PAIRS = ("saddle_height", "bridge_top")


def day(text):
    try:
        return datetime.date.fromisoformat(text or "").toordinal() if len(text or "") == 10 else None
    except ValueError:
        return None


def nothing(job):
    """For each reading the index of the visit it was taken over from."""
    job.carried = dict.fromkeys(("relief", "frets", "stands_out", *PAIRS))
    job.carried.update(action=[None] * job.count, first=[None] * job.count)


def known(values):
    return any(not math.isnan(v) for v in values)


class Carrying:
    def __init__(self, job, before, past):
        self.job, self.before, self.past = job, before, past
        self.now, self.was = job.readings, before.job.readings
        self.then = before.job.standing

    def origin(self, key, i=None):
        """The visit a reading of the one before is from, where that is near enough; else None."""
        known = self.before.job.carried[key]
        known = known if i is None else known[i]
        visit = len(self.past) - 1 if known is None else known
        then, now = day(self.past[visit].date), day(self.now.date)
        near = (then is not None and now is not None and 0 <= now - then <= DAYS
                and abs(self.now.humidity - self.past[visit].humidity) <= SWING)
        return visit if near else None

    def same_strings(self):
        other = self.now.strings is not None and self.now.strings != self.was.strings
        return not (other or self.was.untuned or self.now.untuned)

    def coarsen(self, tool, visit):
        tools = self.job.tools
        setattr(tools, tool, max(getattr(tools, tool), getattr(self.past[visit].tools, tool)))

    def whole(self):
        """Frets, relief and the saddle's heights: all that the board is laid out from."""
        carried, now, was, before = self.job.carried, self.now, self.was, self.before
        stopped = standing.STOPS & set(before.result["nut"]["withheld_by"])
        if not now.crowns_read and was.crowns_read and not self.then.crowns_odd \
                and (stopped or not before.done.crowns):
            carried["frets"] = self.origin("frets")
        if carried["frets"] is not None:
            now.crowns_read, now.off, now.zero_off = True, was.off, was.zero_off
        if math.isnan(now.relief.gap) and not math.isnan(was.relief.gap) and self.same_strings() \
                and not standing.asked_neck(before) and not self.then.relief_odd:
            carried["relief"] = self.origin("relief")
        worked = any(standing.asked_saddle(before, i) for i in range(self.job.count))
        for key, moved in zip(PAIRS, (worked, standing.asked_neck(before))):
            read = [not math.isnan(v) for v in getattr(was, key)]
            if not moved and not self.then.saddle_odd and all(read) \
                    and all(math.isnan(v) for v in getattr(now, key)):
                carried[key] = self.origin(key)
            if carried[key] is not None:
                setattr(now, key, list(getattr(was, key)))
        if not worked and not self.then.saddle_odd and not known(now.stands_out) \
                and known(was.stands_out):
            carried["stands_out"] = self.origin("stands_out")
        if carried["stands_out"] is not None:
            now.stands_out = list(was.stands_out)
        if carried["relief"] is not None:
            now.relief = was.relief
            self.job.standing.relief_carried = True

    def stands(self, near):
        """Whether the neck is as it was, and so every gap that nothing was done to."""
        board, r = bench.Board(self.job), self.now.relief
        bends = board.join >= 3
        moved = abs(bench.bend_of(board, r, r.gap) * board.span(r.at) - self.before.relief)
        errors = self.before.job.tools.relief + self.job.tools.relief
        if bends and not math.isnan(moved):
            near(moved, errors)
        return (not bends or moved <= errors + 1e-9) and not standing.asked_neck(self.before) \
            and self.same_strings()

    def gaps(self):
        now, was, count = self.now, self.was, range(self.job.count)
        told = [not (math.isnan(now.raw_first[i]) and math.isnan(now.first_open[i])) for i in count]
        if all(math.isnan(v) for v in now.raw_action):
            now.at, now.capo = was.at, was.capo
            now.by_ends |= was.by_ends & {"action"}
        if not any(told):
            now.held = was.held
            now.by_ends |= was.by_ends & {"first"}
        for i in count:
            slot, bone = standing.asked_slot(self.before, i), standing.asked_saddle(self.before, i)
            self.action(i, slot or bone or self.then.action_odd[i])
            self.first(i, told[i], slot or self.then.first_odd[i], bone)
        now.finish()

    def action(self, i, worked):
        now, was = self.now, self.was
        if not worked and (now.at, now.capo) == (was.at, was.capo) \
                and math.isnan(now.raw_action[i]) and not math.isnan(was.raw_action[i]):
            self.job.carried["action"][i] = self.origin("action", i)
        if self.job.carried["action"][i] is not None:
            now.raw_action[i] = was.raw_action[i]
            self.job.standing.action_carried[i] = True

    def first(self, i, told, worked, bone):
        now, was = self.now, self.was
        held = now.held == was.held and not (now.held == 0 and bone)
        first = was.raw_first[i] if held else math.nan
        opened = math.nan if bone else was.first_open[i]
        if not worked and not told and not (math.isnan(first) and math.isnan(opened)):
            self.job.carried["first"][i] = self.origin("first", i)
        if self.job.carried["first"][i] is not None:
            now.raw_first[i], now.first_open[i] = first, opened
            self.job.standing.first_carried[i] = True


def take_over(job, before, past, near):
    """past: of each visit before, its date, humidity and tools as they read then."""
    nothing(job)
    if not before:
        return
    it = Carrying(job, before, past)
    it.whole()
    if it.stands(near):
        it.gaps()
    if job.carried["relief"] is not None:
        it.coarsen("relief", job.carried["relief"])
    for tool in ("action", "first"):
        for visit in job.carried[tool]:
            if visit is not None:
                it.coarsen(tool, visit)


def dated(job, past, visit):
    return None if visit is None else past[visit].date


def rows(job, past):
    """What the result says of it."""
    whole = {key: dated(job, past, job.carried[key]) for key in ("relief", "frets", *PAIRS)}
    return whole, [[dated(job, past, v) for v in job.carried[tool]] for tool in ("first", "action")]
