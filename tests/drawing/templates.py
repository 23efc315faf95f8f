# SPDX-License-Identifier: MIT
"""Measures the templates back from the file, against the plan as JSON: what a slip of paper glued on
a blank would have one cut."""
import outlines
from measure import is_red, near, pen

OUTLINE, THIN, CONTACT, MARK = 0.18, 0.18, 0.15, 0.13  # mm: hairlines
TEMPLATES = ("nut face", "slot centres", "saddle face", "saddle plan")


def size(path):
    left, bottom, right, top = path.box()
    return right - left, top - bottom


def lines(page, width):
    """Lines of two points, solid and black."""
    return [p for p in page.paths if len(p.points) == 2 and pen(p, width) and not p.dash
            and not p.filled and not is_red(p)]


def upright(path):
    return near(size(path)[0], 0, 1e-3)


def level(path):
    return near(size(path)[1], 0, 1e-3)


class Slip:
    """Where the part's bass end and base lie on the paper, and which way x runs."""

    def __init__(self, box, left_handed):
        self.left, self.base, self.right, self.top = box
        self.left_handed = left_handed

    def place(self, x, y):
        return (self.right - x if self.left_handed else self.left + x), self.base + y


def have(report, what, wanted, found):
    """Each point wanted is among those found."""
    for x, y in wanted:
        if not any(near(x, a) and near(y, b) for a, b in found):
            close = min(found, key=lambda p: abs(p[0] - x) + abs(p[1] - y), default=None)
            report.wrong(f"template, {what}", (x, y), close)


def ends_told(report, page, slip, part, below=7):
    """The words at the ends of a slip stand at the ends they name."""
    words = {}
    for x, y, text in page.texts:
        if text in ("BASS", "TREBLE") and slip.base - below < y < slip.base + 7:
            words.setdefault(text, []).append(x)
    at = {text: xs[0] for text, xs in words.items()}
    if set(at) != {"BASS", "TREBLE"} or (at["BASS"] < at["TREBLE"]) == slip.left_handed:
        report.wrong(f"{part}: ends", "bass and treble at theirs", words)


def numbers_told(report, page, slip, part, wanted):
    """The number of each string, in the middle of its place along the part, once on the slip."""
    for number, x in wanted:
        near_by = [a for a, b, text in page.texts if text == str(number)
                   and abs(a - slip.place(x, 0)[0]) < 2.2 and slip.base - 8 < b < slip.top + 6]
        if not near_by:
            report.wrong(f"{part}: number of string {number}", slip.place(x, 0), "none")


def nut_face(report, page, plan, job):
    nut = plan["nut"]["strings"]
    if None in [s["floor"] for s in nut]:
        return False
    faces = [p for p in page.paths if p.closed and not p.filled and pen(p, OUTLINE)
             and near(size(p)[0], job.width)]
    if not faces:
        report.wrong("nut face: an outline as wide as", job.width, None)
        return True
    face = max(faces, key=lambda p: p.box()[1])
    slip = Slip(face.box(), job.left_handed)
    ends_told(report, page, slip, "nut face")
    slots = [p.box() for p in lines(page, THIN) if upright(p)]
    by_slot = [min((b for b in slots if near(b[0], slip.place(s["centre"], 0)[0])),
                   key=lambda b: -b[3], default=None) for s in nut]
    if None in by_slot:
        report.wrong("nut face: a line for each slot", len(nut), by_slot)
        return True
    heights = outlines.nut_tops(report, nut, [b[3] - slip.base for b in by_slot])
    tops = [slip.place(s["centre"], height) for s, height in zip(nut, heights)]
    numbers_told(report, page, slip, "nut face", [(s["number"], s["centre"]) for s in nut if s["floor"] > 3.4])
    if len(tops) > 1:
        have(report, "tops of the nut on its outline", tops, face.points)
    have(report, "tops of the slots", tops, [(b[0], b[3]) for b in slots])
    marks = [p.box() for p in lines(page, MARK) if level(p)]
    have(report, "marks at the floors", [slip.place(s["centre"], s["floor"]) for s in nut
                                         if s["floor"] > 3.2],
         [((b[0] + b[2]) / 2, b[1]) for b in marks])
    have(report, "floors of the slots", [slip.place(s["centre"], s["floor"]) for s in nut],
         [(b[0], b[1]) for b in slots])
    return True


def slot_centres(report, page, plan, job):
    """The strip: two ends, and a line a slot up to the same edge."""
    ends = sorted((p for p in lines(page, OUTLINE) if upright(p) and near(size(p)[1], 12.5)),
                  key=lambda p: p.box()[0])
    if len(ends) != 2 or not near(ends[1].box()[0] - ends[0].box()[0], job.width):
        report.wrong("slot centres: ends", job.width, [p.box() for p in ends])
        return True
    slip = Slip(ends[0].box()[:2] + ends[1].box()[2:], job.left_handed)
    ends_told(report, page, slip, "slot centres")
    found = sorted(p.box()[0] for p in lines(page, THIN) if upright(p)
                   and near(p.box()[3], slip.top, 1e-3) and near(size(p)[1], 12.5 - 3.2))
    numbers_told(report, page, slip, "slot centres", [(s["number"], s["centre"]) for s in plan["nut"]["strings"]])
    wanted = sorted(slip.place(s["centre"], 0)[0] for s in plan["nut"]["strings"])
    if len(found) != len(wanted) or not all(near(a, b) for a, b in zip(found, wanted)):
        report.wrong("slot centres", wanted, found)
    return True


def profile(plan, string):
    """Height of the finished top over the base as it is; of a new saddle over its seat."""
    if plan["saddle"]["remedy"] == "replace":
        return string["height"]
    return None if string["present"] is None else string["present"] - string["dress"]


def saddle_x(plan, job):
    return [job.length / 2 + s["saddle_z"] for s in plan["strings"]]


def base_of(page, plan, job):
    """The base as it is: dashed where it is cut, else thick."""
    cut = plan["saddle"]["bottom_cut"] is not None
    bases = [p for p in page.paths if len(p.points) == 2 and level(p) and near(size(p)[0], job.length)
             and bool(p.dash) == cut and pen(p, THIN if cut else OUTLINE) and not is_red(p)]
    return min(bases, key=lambda p: p.box()[1], default=None)


def cut_lines(report, page, plan, job, slip):
    cut = plan["saddle"]["bottom_cut"]
    reds = [p for p in page.paths if is_red(p) and len(p.points) == 2]
    if cut is None:
        if reds:
            report.wrong("saddle face: no cut is asked for", "no line", len(reds))
        return
    for what, wanted, dashed in (("whole", cut, True), ("first", cut["first_pass"], False)):
        have(report, f"{what} cut of the base at its ends",
             [slip.place(0, wanted["bass"]), slip.place(job.length, wanted["treble"])],
             [point for p in reds if bool(p.dash) == dashed for point in p.points])


def saddle_face(report, page, plan, job):
    tops = [profile(plan, s) for s in plan["saddle"]["strings"]]
    if None in tops or too_long(page, job.length):
        return False
    page = next((p for p in (page, *page.following) if base_of(p, plan, job) is not None), page)
    base = base_of(page, plan, job)
    if base is None:
        report.wrong("saddle face: a base as long as", job.length, None)
        return True
    slip = Slip(base.box(), job.left_handed)
    ends_told(report, page, slip, "saddle face")
    cut_lines(report, page, plan, job, slip)
    slip.top = slip.base + max(tops)
    numbers_told(report, page, slip, "saddle face", [
        (i + 1, x) for i, (x, top) in enumerate(zip(saddle_x(plan, job), tops)) if top > 6.5])
    wanted = [slip.place(x, top) for x, top in zip(saddle_x(plan, job), tops)]
    have(report, "marks at the finished top", wanted,
         [(p.box()[0], p.box()[3]) for p in lines(page, THIN) if upright(p)])
    if len(tops) > 1:
        have(report, "the finished top", wanted, [point for p in page.paths if len(p.points) > 2
                                                  and pen(p, OUTLINE) for point in p.points])
    return True


def too_long(page, length):
    """Whether the sheet says the part does not go on this paper, and that may be: a slip is the part
    and its tabs, and the narrowest paper has 170 mm."""
    return length > 115 and any("longer than this paper" in text for _, _, text in page.texts)


def plans_on(page, job):
    return [p for p in page.paths if p.closed and pen(p, OUTLINE) and near(size(p)[0], job.length)
            and near(size(p)[1], job.thickness)]


def saddle_plan(report, page, plan, job):
    if job.thickness != job.thickness or too_long(page, job.length):
        return False
    page = next((p for p in (page, *page.following) if plans_on(p, job)), page)
    plans = plans_on(page, job)
    if not plans:
        report.wrong("saddle plan", (job.length, job.thickness), None)
        return True
    slip = Slip(min((p.box() for p in plans), key=lambda b: b[1]), job.left_handed)
    ends_told(report, page, slip, "saddle plan", 25)  # arrows may point off it
    arms = [p.box() for p in lines(page, CONTACT)]
    across = [((l + r) / 2, b) for l, b, r, t in arms if near(b, t, 1e-3)]
    up = [(l, (b + t) / 2) for l, b, r, t in arms if near(l, r, 1e-3)]
    wanted = [slip.place(x + aside, job.thickness / 2 - behind) for x, (off, aside, behind)
              in zip(saddle_x(plan, job), outlines.peaks_behind(plan, job))
              if abs(off) <= job.thickness / 2 + 3]
    have(report, "peaks", wanted, across)
    have(report, "peaks", wanted, up)
    if not len(wanted) == len(across) == len(up):
        report.wrong("peaks", len(wanted), (len(across), len(up)))
    return True


def row_under(page, title, name):
    """The figures of the first row of a name under a title, in its column of the sheet."""
    x, y = next((x, y) for x, y, text in page.texts if text == title)
    rows = [(b, text) for a, b, text in page.texts if text == name and b < y and x <= a < x + 166]
    level_at = max(rows)[0]
    return [text for a, _, text in sorted(t for t in page.texts if abs(t[1] - level_at) < 1
                                          and x <= t[0] < x + 166)][1:]


def check_order(report, page, plan, part):
    """What is ordered is at least the blank; a withheld part waits."""
    title, blank = f"{part.capitalize()} blank", plan[part]["blank"]
    pages = [p for p in (page, *page.following) if title in [text for _, _, text in p.texts]]
    page = pages[0] if pages else page
    words = [text for _, _, text in page.texts]
    if plan[part]["remedy"] == "wait":
        if "WAIT" not in words or title in words:
            report.wrong(f"{part} blank: withheld", "WAIT", words[:5])
    elif blank and not pages:
        report.wrong(f"{part} blank", "on the order", words[:5])
    elif blank:
        unit = 1.0 if "mm" in words else 25.4
        step = 0.011 if unit == 1.0 else 0.0011 * unit
        for name, size in blank.items():
            order, done, spare = row_under(page, title, name)
            if size is None:
                if order != "-":
                    report.wrong(f"{part} blank: {name}", None, order)
                continue
            got = float(order) * unit
            if not -1e-6 <= got - size <= step:
                report.wrong(f"{part} blank: {name}", size, got)
            if not near(float(done) + float(spare), got / unit, 2.5 * step / unit):
                report.wrong(f"{part} blank: {name}, finished and left", got, (done, spare))


def check(report, page, order, plan, job):
    """The templates that there was something to measure of."""
    measured = []
    for part in ("nut", "saddle"):
        check_order(report, order, plan, part)
        screws = part == "saddle" and job.kind not in ("slotted", "glued", "feet")
        if plan[part]["remedy"] == "wait":
            if "WAIT" not in [text for _, _, text in page.texts]:
                report.wrong(f"{part} templates: withheld", "WAIT", None)
        elif not screws:
            pair = (nut_face, slot_centres) if part == "nut" else (saddle_face, saddle_plan)
            measured += [f.__name__.replace("_", " ") for f in pair if f(report, page, plan, job)]
    if plan["saddle"]["remedy"] == "wait" and any(is_red(p) for p in page.paths):
        report.wrong("templates: withheld", "no cut line", "one")
    return measured
