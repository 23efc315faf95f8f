# SPDX-License-Identifier: MIT
"""Measures a drawing's full-size views back from the file, against the plan as JSON."""
import pdf

EXACT = 0.01  # mm
OUTLINE, SLOT, CUT, CUT_FIRST = 0.5, 0.25, 0.35, 0.5


def near(a, b, tolerance=EXACT):
    return abs(a - b) <= tolerance


def is_red(path):
    return path.colour[0] > 0.5 and path.colour[1] < 0.1


def pen(path, width):
    return near(path.width, width, 0.01)


class Part:
    """A full-size view: where its seat's bass end lies and which way x runs."""

    def __init__(self, box, length, left_handed):
        self.left, self.bottom, self.right, self.top = box
        self.length, self.mirrored = length, left_handed

    def x(self, at):
        return self.right - at if self.mirrored else at - self.left

    def holds(self, path):
        l, b, r, t = path.box()
        return (l >= self.left - EXACT and r <= self.right + EXACT and b >= self.bottom - EXACT
                and t <= self.top + EXACT)


def find_nut(page, width, left_handed):
    """The closed outline as wide as the nut that stands highest: face over plan."""
    faces = [p.box() for p in page.paths if p.closed and not p.filled and pen(p, OUTLINE)
             and near(p.box()[2] - p.box()[0], width)]
    return Part(max(faces, key=lambda box: box[1]), width, left_handed) if faces else None


def uprights(page, part):
    return [p for p in page.paths if len(p.points) == 2 and pen(p, SLOT) and not p.dash
            and near(p.points[0][0], p.points[1][0], 1e-3) and part.holds(p)
            and not near(p.box()[3] - p.box()[1], part.top - part.bottom, 1e-3)]


def check_nut(report, page, plan, job):
    """Whether there was something to measure."""
    nut = plan["nut"]["strings"]
    floors = [s["floor"] for s in nut]
    if None in floors:
        return False
    part = find_nut(page, job.width, job.left_handed)
    if part is None:
        report.wrong("nut: no outline", job.width, None)
        return True
    top = max(s["floor"] + s["depth"] for s in nut)
    if part.top - part.bottom < top - EXACT:
        report.wrong("nut: height", top, part.top - part.bottom)
    slots = sorted((part.x(p.points[0][0]), p.box()[1] - part.bottom) for p in uprights(page, part))
    wanted = sorted((s["centre"], s["floor"]) for s in nut)
    if len(slots) != len(wanted):
        report.wrong("nut: slots", wanted, slots)
        return True
    for (x, floor), (centre, height) in zip(slots, wanted):
        if not (near(x, centre) and near(floor, height)):
            report.wrong("nut: a slot", (centre, height), (x, floor))
    return True


def red_lines(page, length, width, dashed):
    """Cut lines from end to end, the full-size view's first: it stands highest."""
    lines = [p for p in page.paths if is_red(p) and len(p.points) == 2 and pen(p, width)
             and bool(p.dash) == dashed and near(p.box()[2] - p.box()[0], length)]
    return sorted(lines, key=lambda p: -p.box()[1])


def ends(path, left_handed):
    bass, treble = sorted(path.points, reverse=left_handed)
    return bass, treble


def check_saddle(report, page, plan, job):
    """Whether there was something to measure."""
    cut = plan["saddle"]["bottom_cut"]
    reds = [p for p in page.paths if is_red(p)]
    if cut is None:
        if reds:
            report.wrong("saddle: no cut is asked for", "no line", len(reds))
        return False
    for part in (page, *page.following):   # a view at full size that stands for the magnified one may go on
        base = [p for p in part.paths if len(p.points) == 2 and p.dash and pen(p, SLOT)
                and not is_red(p) and near(p.points[0][1], p.points[1][1], 1e-3)
                and near(p.box()[2] - p.box()[0], job.length)]
        whole = red_lines(part, job.length, CUT, True)
        first = red_lines(part, job.length, CUT_FIRST, False)
        if base and whole and first:
            break
    else:
        report.wrong("saddle: lines full size", "base, first, whole", (base, first, whole))
        return True
    low = min(y for _, y in first[0].points) + EXACT
    seat = max((p.points[0][1] for p in base if p.points[0][1] <= low), default=None)
    if seat is None:
        report.wrong("saddle: a base under the cut", "one", None)
        return True
    for what, line, wanted in (("whole", whole[0], cut), ("first", first[0], cut["first_pass"])):
        bass, treble = ends(line, job.left_handed)
        got = treble[1] - seat, bass[1] - seat
        if not (near(got[0], wanted["treble"]) and near(got[1], wanted["bass"])):
            report.wrong(f"saddle: {what} cut at its ends", wanted, got)
    return True


def check_withheld(report, page, part):
    """A sheet that waits says so and has no line anyone could cut to."""
    words = [text for _, _, text in page.texts]
    if "WAIT" not in words:
        report.wrong(f"{part}: withheld", "WAIT", words[:5])
    if any(is_red(p) for p in page.paths):
        report.wrong(f"{part}: withheld", "no cut line", "one")


def check_rulers(report, page):
    """A level line of 4 in with a tick each mm, and 100 mm of ticks up the frame; none where nothing is to
    scale."""
    level = [p for p in page.paths if len(p.points) == 2 and near(p.points[0][1], p.points[1][1], 1e-3)
             and near(p.box()[2] - p.box()[0], 101.6)]
    to_scale = pdf.has_rulers(page)
    if not (level and to_scale):
        if level or to_scale or pdf.title(page) in ("Templates", "Blank order"):
            report.wrong("ruler", "a line of 4 in, and what to measure", None)
        return
    x, y = level[0].box()[:2]
    ticks = [p.box() for p in page.paths if len(p.points) == 2]
    for mm in range(101):
        if not any(near(t[0], x + mm) and near(t[2], x + mm) and near(t[1], y) for t in ticks):
            report.wrong("ruler: a tick at mm", mm, None)
    frame_left = min(t[0] for t in ticks)
    up = sorted(t[1] for t in ticks if near(t[0], frame_left) and near(t[1], t[3])
                and t[2] - t[0] < 3)
    if not (len(up) == 101 and near(up[-1] - up[0], 100)):
        report.wrong("ruler up the edge", 100, up[-1] - up[0] if up else None)


# A longer face is reduced, so that it keeps inside the frame, mm; no instrument has such a saddle.
WIDEST = 166

MEASURES = {"nut": check_nut, "saddle": check_saddle}


def check_sheet(report, page, part, plan, job):
    """The sheet of a part; whether there was something to measure."""
    if part == "saddle" and job.length > WIDEST:
        return False
    check_rulers(report, page)
    if plan[part]["remedy"] != "wait" and job.kind in ("slotted", "glued", "feet") and \
            not pdf.has_rulers(page):
        report.wrong(f"{part}: ruler", "one", None)
    if plan[part]["remedy"] == "wait":
        check_withheld(report, page, part)
        return False
    return (part == "nut" or job.kind in ("slotted", "glued", "feet")) and MEASURES[part](report, page, plan,
                                                                                  job)


def sheets(report, path):
    """The first page of each sheet by its title; none where a sheet is missing."""
    seen = {}
    for page in pdf.read(path):
        title = pdf.title(page)
        if seen.setdefault(title, page) is not page or str(title).lower() not in MEASURES:
            check_rulers(report, page)  # the others where their part is measured
        if seen[title] is not page:
            seen[title].following.append(page)
    if list(seen) != list(pdf.SHEETS):
        report.wrong("sheets", pdf.SHEETS, list(seen))
        return {}
    return seen


def check(report, pages, plan, job):
    """The parts that there was something to measure of."""
    return [part for part in MEASURES
            if check_sheet(report, pages[part.capitalize()], part, plan, job)]
