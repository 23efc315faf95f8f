# SPDX-License-Identifier: MIT
"""All that the program says of many sheets: as a page to read, and as lines to compare."""
import concurrent.futures
import hashlib
import itertools
import json
import os
import re
import subprocess
import sys
import tempfile

TOP = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
sys.path.insert(0, os.path.join(TOP, "tests", "brief"))
import sheets  # noqa: E402

PROGRAM = os.path.join(TOP, os.environ.get("SILLET", "build/sillet"))
PAGE = os.path.join(TOP, "docs", "sentences.md")
TOLD = os.path.join(TOP, "tests", "words", "told")
RANDOMS, CROSSED = 80, 200
ENVIRONMENT = {**os.environ, "SILLET_PROFILES": os.path.join(TOP, "profiles")}
LEVELS = {"stop": "stop", "act": "do", "watch": "watch", "fine": "note"}
HEAD = """# Every finding and every step in words

An example of each, as the program says it now, from a sheet that raises it; some have more forms than one. The page is written
by `tests/words/sentences --write` and kept current by `tests/words/check_sentences`. Read it aloud after a change.
"""


def paths_into(made, randoms=0, crossed=0):
    """The sheets, in a fixed order, and behind them so many random and crossed ones; by names that are the same everywhere,
    since a line that names its sheet is wrapped by how long that is."""
    texts = [*sheets.kept(sheets.KEPT[0]), *(text for _, text, _ in sheets.every(randoms)), *sheets.crossed(crossed)]
    for number, text in enumerate(texts):
        with open(os.path.join(made, f"{number:03}.yaml"), "w", encoding="utf-8") as file:
            file.write(text)
    return [f"{number:03}.yaml" for number in range(len(texts))]


def said(made, *words):
    return subprocess.run([PROGRAM, *words], cwd=made, capture_output=True, text=True, check=False, env=ENVIRONMENT).stdout


def results(made, paths, *options):
    for line in said(made, "plan", "--json", *options, *paths).splitlines():
        yield json.loads(line).get("result")


def plans():
    with tempfile.TemporaryDirectory() as made:
        yield from filter(None, results(made, paths_into(made)))


def figures(rows):
    """What a sentence's figures are of, as they are shown, and which way each goes."""
    return " ".join(" ".join(str(value) for value in (one["of"], one.get("string"), one.get("fret"), one.get("end"),
                                                      one["shown"], one.get("way")) if value is not None) + ";"
                    for one in rows)


def owner_page(made, path):
    return "".join(re.findall(r"<text[^>]*>([^<]+)</text>", said(made, "draw", path, "--sheet", "owner", "--as", "svg", "-o", "-")))


def sentences_of(result):
    """Every step and finding of a sheet, with what its figures are of and which way each goes."""
    for row in result["steps"]:
        yield f"{row['stage']}, {row['act']}: {row['do']} {row['way'] or ''} {row['strings']} {figures(row['figures'])}"
        yield f"{row['act']}, check: {row['check']} {figures(row['check_figures'])} {row['care'] or ''}"
    for row in result["findings"]:
        yield f"{row['code']}, {row['level']}: {row['text']} {figures(row['figures'])}"


def mark(text):
    return hashlib.sha256(text.encode()).hexdigest()[:10]


def rounded(value):
    """A result with its numbers to a ten-thousandth."""
    if isinstance(value, float):
        return round(value, 4) + 0.0
    if isinstance(value, list):
        return [rounded(one) for one in value]
    return {key: rounded(one) for key, one in value.items()} if isinstance(value, dict) else value


def words_on(made, path, *order):
    """Every word and figure on papers, in the order they are drawn in."""
    papers = path.replace(".yaml", ".pdf")
    said(made, *order, path, "-o", papers)
    done = subprocess.run(["pdftotext", "-raw", papers, "-"], cwd=made, capture_output=True, text=True, check=False)
    return "".join(done.stdout.split())


def marks_of(made, path, result, number, units):
    """A short mark of each thing that is said of a sheet."""
    plan = said(made, "plan", "--units", units, *(["--full"] if number % 4 < 2 else []), path)
    things = ["\n".join(sentences_of(result)) if result else "", json.dumps(rounded(result)), plan,
              words_on(made, path, "draw", "--all", "--units", units),
              words_on(made, path, "sheet", "--units", units)]
    if number % 3 == 0:
        things.append(owner_page(made, path))
    return f"{number}: {' '.join(map(mark, things))}"


class Told:
    """All that is said of the sheets."""

    def __init__(self, made):
        self.made, self.paths = made, paths_into(made, RANDOMS, CROSSED)
        self.units = [("mm", "in")[number % 2] for number in range(len(self.paths))]
        self.results = [None] * len(self.paths)
        for first, unit in enumerate(("mm", "in")):
            self.results[first::2] = results(made, self.paths[first::2], "--units", unit)

    def lines(self):
        """Each sentence once, with the numbers of the sheets that it is said of, but for random and crossed ones."""
        lines = {}
        for number, result in enumerate(self.results[:-RANDOMS - CROSSED]):
            for line in dict.fromkeys(sentences_of(result)) if result else ():
                lines.setdefault(line, []).append(number)
        return [f"{line}\t{' '.join(str(one) for one in numbers)}" for line, numbers in lines.items()]

    def marks(self):
        with concurrent.futures.ThreadPoolExecutor(2) as several:
            yield from several.map(marks_of, itertools.repeat(self.made), self.paths, self.results,
                                   range(len(self.paths)), self.units)


def told():
    with tempfile.TemporaryDirectory() as made:
        it = Told(made)
        return "".join(line + "\n" for line in [*it.lines(), *it.marks()])


def page():
    findings, steps = {}, {}
    for result in plans():
        for row in result["findings"]:
            findings.setdefault((row["code"], row["level"]), row["text"])
        for row in result["steps"]:
            steps.setdefault(row["act"], (row["do"], row["check"]))
    lines = [HEAD, "## Findings", ""]
    lines += [f"- `{code}` ({LEVELS[level]}): {words}" for (code, level), words in sorted(findings.items())]
    lines += ["", "## Steps", ""]
    lines += [f"- `{act}`: {do} *{check}*" for act, (do, check) in sorted(steps.items())]
    return "\n".join(lines) + "\n"
