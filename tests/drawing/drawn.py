# SPDX-License-Identifier: MIT
"""What the checks of the drawings share: random sheets, drawing them, counting what held."""
import json
import math
import os
import random
import re
import subprocess
import sys
from types import SimpleNamespace

TESTS = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
sys.path[:0] = [os.path.join(TESTS, "oracle"), os.path.join(TESTS, "brief")]
os.environ.setdefault("SILLET_PROFILES", os.path.join(os.path.dirname(TESTS), "profiles"))
# The program as people run it. The tests in C draw packs of random jobs under the sanitizers, which take
# longer to start than a pack to draw.
PROGRAM = os.environ.get("SILLET", "build/sillet")


class Report:
    """What did not hold in one case."""

    def __init__(self, case):
        self.case, self.lines = case, []

    def wrong(self, what, wanted, got):
        self.lines.append(f"{self.case}: {what}: wanted {wanted}, got {got}")


def finish(reports):
    """Prints what failed and the sum; the exit code."""
    failed = [r for r in reports if r.lines]
    for report in failed:
        print("\n".join(report.lines))
    print(f"{len(reports) - len(failed)} passed, {len(failed)} failed")
    return 1 if failed or not reports else 0


def run(*arguments, **options):
    return subprocess.run([PROGRAM, *arguments], capture_output=True, check=False, **options)


def field_labels():
    """The label of every field of a sheet, by its path, as the table of their words has it."""
    with open(os.path.join(TESTS, "..", "src", "job", "words.c"), encoding="utf-8") as file:
        return dict(re.findall(r'^    \{"([\w.]+)", "([^"]+)",', file.read(), re.MULTILINE))


def draw(*arguments, command="draw", **options):
    """As `sillet draw`, or `sillet sheet`, by the program that these run: one process less to start."""
    return subprocess.run([command, *arguments], executable=f"{PROGRAM}-draw", capture_output=True,
                          check=False, **options)


WORKED = {"nut": ("file", "fill", "shim"), "saddle": ("sand", "shim")}


def made_ready(doc, wish):
    """Takes off a sheet what mostly holds a part up: `nut` and `saddle` are to be worked on as they are,
    `new nut` and `new saddle` made from a blank."""
    last = doc["readings"][-1]
    for key in ("buzz", "confirmed"):
        last.pop(key, None)
    last.update(relief="0.18 mm", frets="sound", humidity="47 %",
                condition={"bridge": "sound", "saddle": "firm", "tuned": True})
    doc["readings"] = [last]
    doc["targets"]["relief"] = {"low": "0.05 mm", "aim": "0.18 mm", "high": "0.3 mm"}
    doc["nut"]["kind"] = "slotted"
    if wish.startswith("new "):
        doc["make"] = wish.removeprefix("new ")


def wished_sheet(wish, number):
    """The text of a random sheet by whose plan the part that is wished for is cut."""
    import jobs
    part = wish.split()[-1]
    wanted = ("replace",) if wish.startswith("new ") else WORKED[part]
    for attempt in range(200):
        rng = random.Random(f"{wish} {number}/{attempt}")
        doc = jobs.draw(rng)
        if part == "saddle" and doc["saddle"]["kind"] not in ("slotted", "glued"):
            continue
        made_ready(doc, wish)
        text = jobs.text_of(doc, rng)
        told = run("plan", "-", "--json", input=text.encode())
        if told.returncode != 1 and json.loads(told.stdout)[part]["remedy"] in wanted:
            return text
    raise LookupError(f"no sheet with a {wish} among 200")


def random_sheet(folder, number, wish=None):
    """A sheet of that number written into a folder, and what of it a drawing shows."""
    import bench
    import jobs
    import sheet as reader
    text = wished_sheet(wish, number) if wish else jobs.make("drawing", number)[1]
    path = os.path.join(folder, f"{number}.yaml")
    with open(path, "w", encoding="utf-8") as file:
        file.write(text)
    sheet = reader.Sheet(text)
    saddle, count = sheet.doc["saddle"], len(sheet.doc["strings"])
    board = bench.Board(reader.read(text))
    kind = saddle["kind"]
    if kind == "floating" and "pitch" not in saddle:
        kind = "feet"
    return path, SimpleNamespace(width=sheet.length(sheet.doc["nut"]["width"]),
                                 length=sheet.length(saddle.get("length")), kind=kind,
                                 nut=along(board.nut_at, board.z_nut),
                                 saddle=along(board.nut_at + board.scale, board.z_saddle),
                                 thickness=sheet.length(saddle.get("thickness")),
                                 nut_thickness=sheet.length(sheet.doc["nut"].get("thickness")),
                                 setback=sheet.each(saddle["setback"], count),
                                 left_handed=sheet.doc["instrument"].get("handed") == "left")


def along(x, z):
    """Of a part across the strings, as seen from above: the unit vector from its bass end to its treble
    end, (toward the tail, toward the treble), by the outer strings."""
    run, rise = (x[0] - x[-1], z[0] - z[-1]) if len(z) > 1 else (0.0, 1.0)
    return run / math.hypot(run, rise), rise / math.hypot(run, rise)


def plan_of(path):
    return json.loads(run("plan", path, "--json").stdout)


def as_parts_lie(plan, job):
    """What is told square across the board, told along the parts: a drawing shows them so."""
    nut, saddle = job.nut[1], job.saddle[1]
    job.width /= nut
    job.length /= saddle
    for row in plan["nut"]["strings"]:
        row["centre"] /= nut
        if plan["nut"]["remedy"] == "shim" and row["floor"] is not None:
            row["floor"] -= plan["nut"]["shim"]  # a nut is drawn from its own bottom
    for row in plan["strings"]:
        row["square_z"], row["saddle_z"] = row["saddle_z"], row["saddle_z"] / saddle
