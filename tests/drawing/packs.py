# SPDX-License-Identifier: MIT
"""The papers of one sheet, drawn and read back, with the result and what of it is to be shown."""
import json
import math
import os
import re

import drawn
import part
import pdf
import sheet
from shown import NEAREST, shown, without_idle

FRAME_LEFT, FRAME_BOTTOM, FRAME_BOTTOM_BARE = 26, 56, 41  # mm: the title, and rulers, lie outside


def rows_of(page):
    """The texts of a page within its frame in rows from the top, each from the left."""
    rows, low = [], None
    rulers = pdf.has_rulers(page)
    bottom = FRAME_BOTTOM if rulers else FRAME_BOTTOM_BARE
    inside = (t for t in page.texts if t[1] > bottom and t[0] > FRAME_LEFT)
    for x, y, text in sorted(inside, key=lambda t: -t[1]):
        if low is None or low - y > 1.2:
            rows.append([])
            low = y
        rows[-1].append((x, text))
    return [[text for _, text in sorted(row)] for row in rows]


# What the columns of the parts' tables have, by a word of their heads.
NUT_HEADS = {"note": "note", "cut": "slot width", "bass end": "slot centre", "final floor": "floor",
             "top over": "slot top", "of slot": "depth", "deepen": "whole", "pass": "slot first",
             "now": "stack now", "final": "stack"}
SADDLE_HEADS = {"note": "note", "now": "present", "lower": "lower", "at first": "lower", "bottom, first": "base first",
                "then off": "dress", "top, first": "dress", "finished": "height", "out of the": "out", "slot %": "share",
                "angle": "angle", "front": "peak"}


def string_table(rows, count, heads):
    """{string: {what: cell}} of a table, by the words of its head: a column of dashes alone is not there."""
    words = {cell for row in rows for cell in row}
    columns = [what for head, what in heads.items() if head in words]
    return {int(row[0]): dict(zip(columns, row[1:])) for row in rows if len(row) == 1 + len(columns)
            and row[0].isdigit() and 1 <= int(row[0]) <= count}


class Pack:
    """The papers of one sheet, and what they are to print."""

    def __init__(self, folder, number, name, text, doc):
        self.unit = ("mm", "in")[number % 2]
        self.report = drawn.Report(f"{name} in {self.unit}")
        self.path = path = os.path.join(folder, f"{number}.yaml")
        with open(path, "w", encoding="utf-8") as file:
            file.write(text)
        self.result = json.loads(drawn.run("plan", path, "--json", "--units", self.unit).stdout)
        self.doc, self.job = doc, sheet.read(doc)
        self.part = part.Shown(self.job, doc, self.result, self.unit)
        self.count, self.left = self.part.count, doc["instrument"].get("handed") == "left"
        done = drawn.draw(path, "-o", path + ".pdf", "--units", self.unit,
                         "--all")
        self.pages = {}
        if done.returncode or done.stderr.decode().count("error"):
            self.report.wrong("the program", "a drawing", done.stderr.decode())
            return
        self.pages = pdf.by_title(pdf.read(path + ".pdf"))
        self.same("papers", list(self.pages), list(pdf.SHEETS))

    def same(self, what, got, wanted):
        if got != wanted:
            self.report.wrong(what, wanted, got)

    def rows(self, title):
        return [row for page in self.pages.get(title, []) for row in rows_of(page)]

    def texts(self, title):
        return [text for page in self.pages[title] for _, _, text in page.texts]

    def note(self, i):
        return self.result["strings"][i]["note"] or "-"

    def marked_note(self, i):
        """A star where what is told of the string stands on an assumed core."""
        return self.note(i) + ("*" if self.result["strings"][i]["assumed"] else "")

    def table(self, title, wanted, note=None):
        """A row for each string, behind its number and note; no column of dashes alone."""
        rows = self.rows(title)
        table = without_idle([[str(i + 1), (note or self.note)(i), *wanted(i)] for i in range(self.count)])
        for cells in table:
            if cells not in rows:
                self.report.wrong(f"{title}: string {cells[0]}", cells,
                                  [row for row in rows if row[:2] == cells[:2]])

    def idle_columns(self, title):
        """Of each table with a row for every string on a paper: no column has a dash in all of them."""
        rows = self.rows(title)
        for k in range(len(rows) - self.count + 1):
            table = rows[k:k + self.count]
            if all(row[:2] in ([str(i + 1), self.note(i)], [str(i + 1), self.marked_note(i)])
                   for i, row in enumerate(table)) and len({len(row) for row in table}) == 1:
                idle = [c for c in range(len(table[0])) if all(row[c] == "-" for row in table)]
                self.same(f"{title}: idle columns", idle, [])

    def has(self, title, what, *figures):
        """Figures that stand somewhere on a paper, each as often as it is wanted."""
        texts = self.texts(title)
        for figure in figures:
            often = sum(str(figure) == str(other) for other in figures)
            if figure != "-" and sum(figure == text for text in texts) < often:
                self.report.wrong(f"{title}: {what}", figures, sorted(texts))
                return

    def row(self, title, what, cells):
        """A row of exactly these cells behind its label; many strings may lie in two rows."""
        rows, half = [row[1:] for row in self.rows(title)], math.ceil(len(cells) / 2)
        if cells not in rows and not (cells[:half] in rows and cells[half:] in rows):
            self.report.wrong(f"{title}: {what}", cells, "no such row")

    def waits(self, which):
        return self.result[which]["remedy"] == "wait"


def length(pack, value, way=NEAREST):
    return shown(value, way, pack.unit)


def band(pack, reading, band_of, after):
    low, aim, high = (length(pack, value) for value in band_of)
    return [length(pack, reading), aim, f"{low}–{high}", after]


def once(words):
    """Without those that are as the one before."""
    return [word for k, word in enumerate(words) if k == 0 or word != words[k - 1]]


def inside(row, cells):
    return any(row[k:k + len(cells)] == cells for k in range(len(row) - len(cells) + 1))


def stands_led_out(pack, title, figures):
    """Whether figures stand side by side in that order; upright ones need not begin level."""
    for page in pack.pages[title]:
        texts = sorted(t for t in page.texts if re.fullmatch(r"0|-|-?\d*\.\d+", t[2]))
        for top in {y for _, y, _ in texts}:
            if inside([t for _, y, t in texts if top - 9 < y <= top], figures):
                return True
    return False
