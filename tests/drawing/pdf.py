# SPDX-License-Identifier: MIT
"""Reads a drawing back from its PDF: every path with the pen it was drawn with, in millimetres.

qpdf takes the file apart; of the operators only those a drawing uses are known, and any other is
an error, so that nothing on a page goes unseen.
"""
import math
import re
import subprocess
from dataclasses import dataclass, field

MM = 25.4 / 72
TEXT = {"BT", "ET", "Tf", "Tm", "Tj", "Tr"}
SHEETS = ("Bench card", "Bench plan", "Nut", "Saddle", "Templates", "Blank order", "Buzz and intonation")


@dataclass
class Path:
    """Points in mm; curves count by their ends. width in mm, dash in mm, colour 0..1."""
    points: list
    closed: bool
    filled: bool
    width: float
    dash: tuple
    colour: tuple
    curved: bool = False
    layer: str = ""  # what a PDF does not tell: its layer, and the string it is of
    string: int = 0
    bulges: tuple = ()  # of the way from each point to the next: tan of a quarter of its arc's angle

    def box(self):
        xs, ys = [p[0] for p in self.points], [p[1] for p in self.points]
        return min(xs), min(ys), max(xs), max(ys)


@dataclass
class Page:
    width: float
    height: float
    paths: list = field(default_factory=list)
    texts: list = field(default_factory=list)  # (x, y, text)
    letters: list = field(default_factory=list)  # of each text: its face's name, and the size of its em in mm
    faces: dict = field(default_factory=dict)  # by their names on the page
    operators: dict = field(default_factory=dict)
    following: list = field(default_factory=list)  # further pages of the same sheet


def objects(path):
    plain = subprocess.run(["qpdf", "--qdf", "--normalize-content=n", path, "-"],
                           capture_output=True, check=True).stdout
    starts = list(re.finditer(rb"^(\d+) 0 obj\n", plain, re.M))
    ends = [s.start() for s in starts[1:]] + [len(plain)]
    return {int(s.group(1)): plain[s.end():e] for s, e in zip(starts, ends)}


def stream(body):
    return body[body.index(b"stream\n") + 7:body.rindex(b"endstream")]


class Pen:
    def __init__(self):
        self.width, self.dash, self.colour = 1.0, (), (0.0, 0.0, 0.0)


def read_text(raw):
    """The bytes of a string operand, whose escapes are PDF's."""
    if raw.startswith("<"):
        return bytes.fromhex(raw[1:-1]).decode("utf-16-be")
    plain = re.sub(r"\\(\d{3}|.)", lambda m: chr(int(m.group(1), 8)) if len(m.group(1)) == 3
                   else m.group(1), raw[1:-1])
    return plain.encode("latin-1").decode("cp1252", "replace")


def read_page(page, content):
    pen, points, curved, at = Pen(), [], False, (0.0, 0.0)
    face, turned = ("", 0.0), 1.0
    for line in content.decode("latin-1").split("\n"):
        line = line.strip()
        if not line:
            continue
        operands, _, operator = line.rpartition(" ")
        page.operators[operator] = page.operators.get(operator, 0) + 1
        if operator == "Tj":
            page.texts.append((at[0] * MM, at[1] * MM, read_text(operands)))
            page.letters.append((page.faces[face[0]], face[1] * turned * MM))
            continue
        if operator == "Tf":
            face = (operands.split()[0], float(operands.split()[1]))
            continue
        if operator == "d":
            dashes = re.search(r"\[(.*)\]", operands)
            if dashes:
                pen.dash = tuple(float(v) * MM for v in dashes.group(1).split())
            continue
        numbers = [float(v) for v in operands.split()]
        if operator == "m":
            points, curved = [tuple(numbers)], False
        elif operator == "l":
            points.append(tuple(numbers))
        elif operator == "c":
            points.append(tuple(numbers[4:]))
            curved = True
        elif operator in ("S", "s", "f"):
            page.paths.append(Path([(x * MM, y * MM) for x, y in points], operator != "S",
                                   operator == "f", pen.width * MM, pen.dash, pen.colour, curved))
        elif operator == "w":
            pen.width = numbers[0]
        elif operator == "RG":
            pen.colour = tuple(numbers)
        elif operator == "Tm":
            at = numbers[4:]
            turned = math.sqrt(abs(numbers[0] * numbers[3] - numbers[1] * numbers[2]))
        elif operator not in TEXT | {"rg", "j", "q", "Q"}:
            raise ValueError(f"an operator no drawing uses: {line}")


def faces_of(parts, body):
    """The names of a page's faces in the file, by their names on the page."""
    resources = body
    indirect = re.search(rb"/Resources (\d+) 0 R", body)
    if indirect:
        resources = parts[int(indirect.group(1))]
    found = re.search(rb"/Font <<(.*?)>>", resources, re.S)
    faces = {}
    for name, number in re.findall(rb"(/\S+) (\d+) 0 R", found.group(1) if found else b""):
        base = re.search(rb"/BaseFont /(?:[A-Z]{6}\+)?(\S+)", parts[int(number)]).group(1)
        faces[name.decode()] = base.decode()
    return faces


def read(path):
    """The pages of a drawing."""
    parts = objects(path)
    tree = next(body for body in parts.values() if b"/Type /Pages" in body)
    kids = re.search(rb"/Kids \[(.*?)\]", tree, re.S).group(1)
    pages = []
    for number in re.findall(rb"(\d+) 0 R", kids):
        body = parts[int(number)]
        box = re.search(rb"/MediaBox \[(.*?)\]", body, re.S).group(1).split()
        contents = int(re.search(rb"/Contents (\d+) 0 R", body).group(1))
        page = Page(float(box[2]) * MM, float(box[3]) * MM)
        page.faces = faces_of(parts, body)
        read_page(page, stream(parts[contents]))
        pages.append(page)
    return pages


def title(page):
    """The sheet a page is of: its part stands in the title block's lettering at the bottom."""
    words = [text for _, y, text in page.texts if y < 45]
    return next((w.split(" - ")[0] for w in words if w.split(" - ")[0] in SHEETS), None)


def by_title(pages):
    """The pages of each sheet, in the order of the drawing."""
    sheets = {}
    for page in pages:
        sheets.setdefault(title(page), []).append(page)
    return sheets


def has_rulers(page):
    """Whether a page is to scale, and has rulers to prove it."""
    return any("Print at 100 %" in text for _, _, text in page.texts)
