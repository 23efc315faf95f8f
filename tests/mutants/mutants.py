#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Whether the tests notice when the program is wrong: one token changed at a time.

    mutants.py [ROOM [COUNT [SEED]]]

`core` is the arithmetic of src/core; `words` is what a person is told: src/plan, src/part,
src/brief, src/report; `paper` is what the drawings dimension and print: their views, their papers,
their dimensions, tables and figures. Without a room, words (200 changes) and paper (100) are tried.

The changed file is compiled, its room linked again as one shared library, and the tests are run
that were linked with it beforehand, the quickest first, until one fails; those of the arithmetic
once more under the sanitizers. What reads the program's output and takes long is run only where
sift.py saw any of it change, first what holds every sentence. Two changes are tried at a time. A
variable that is not set holds nonsense, never by luck what it should, and an index past its list
ends the program. What nothing
fails on is printed: it is a test to write, or it changes nothing anybody could see, and then stands
in `equal` beside this with its reason (a file, a tab, the changed line, a tab, the reason).

Beyond the arithmetic also the names are changed that a person acts on: treble and bass, up and
down, tighten and ease, how a figure is rounded, whether wood is taken or added. What counts only
where memory ran out is left out there (a line with `failed` or `no_memory`): tests/fault fails
every allocation in turn.

On paper, what only places things is left out, and the pictures of how to measure, which show no
figure of the plan (src/drawing/views/figure_*.c). Layout is, by changes.py: a number from 2 up and
every floating one, but for one alone in a subscript; a 0 or 1 that is an argument or a coordinate by
itself; a + or - beside such a number; and on a line that names nothing of the brief, the plan, the
part or its sheet and places nothing by draw_at() (which is how a view lays out the part itself), all
arithmetic with its numbers, what is a double, and what decides on anchors, heights of letters,
widths and room; and a loop over nothing but anchors.
"""
import collections
import concurrent.futures
import contextlib
import glob
import itertools
import os
import queue
import random
import subprocess
import sys
import tempfile
import time

sys.dont_write_bytecode = True
import changes  # noqa: E402
import sift  # noqa: E402

TOP = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
FLAGS = ["-std=c17", "-D_XOPEN_SOURCE=700", "-I" + os.path.join(TOP, "include"),
         "-I/usr/include/freetype2", "-O1", "-w", "-fPIC", "-ftrivial-auto-var-init=pattern"]
SANITIZED = ["-fsanitize=address,undefined", "-fno-sanitize-recover=all"]
# Bounds are watched even so, at no cost to speak of.
WATCHED = ["-fsanitize=bounds", "-fsanitize-undefined-trap-on-error"]
LIBRARIES = ["-lhpdf", "-lfreetype", "-lyaml", "-lcjson", "-lm", "-lcmocka"]
AT_A_TIME = 2
READ_AT_ONCE = 1.5  # seconds: what reads the program's output that quickly is not worth sifting for
ALL_THAT_IS_SAID = "sentences"  # holds every sentence of many sheets: first of those that read longer

Room = collections.namedtuple("Room", "sources tests scripts count caught equal flags printed randoms crossed",
                              defaults=(None, 0, 0))
PYTHON = "/usr/bin/python3"
EXAMPLES = sorted(os.path.relpath(path, TOP) for path in glob.glob(os.path.join(TOP, "examples/*.yaml")))


def unit(*names):
    """The programs of these tests, which have not been renamed since."""
    for name in names:
        if not os.path.exists(os.path.join(TOP, f"tests/test_{name}.c")):
            sys.exit(f"mutants: there is no tests/test_{name}.c")
    return {"test_" + name for name in names}


# Views, papers and the board they are drawn on, read back from their shapes.
DRAWN = unit("bench_paper", "dimension", "measure", "nut_views", "papers", "saddle_paper",
             "saddle_views", "screws_paper", "side_view", "table", "tone_views", "view_pages")
PAGES = unit("long_parts", "measure_pages", "pack")
# Every test but those of what is no arithmetic.
ARITHMETIC = {os.path.basename(path)[:-2] for path in glob.glob(os.path.join(TOP, "tests/test_*.c"))
              if "test_page" not in path} - unit("file", "layers", "writers") - DRAWN - PAGES
ROOMS = {
    "core": Room(
        ["src/core/*.c"], ARITHMETIC,
        {"lengths": [PYTHON, "tests/lengths/check_lengths"],
         "plans": [PYTHON, "tests/oracle/compare.py", "--program", "build/check/sillet",
                   "--count", "100"]}, 200, 0.95, 0.05, [[], SANITIZED]),
    "words": Room(
        [f"src/{room}/*.c" for room in ("plan", "part", "brief", "report")],
        unit("report", "find", "row", "visit", "plan", "part", "kinds", "one_string", "properties",
             "blame", "brief", "brief_saddle", "brief_words", "carry", "cuts", "curve", "even",
             "feelers", "find_tone", "fresh", "glance", "leaves", "make", "odd", "order", "outline", "repeat", "side_view", "style",
             "text_columns", "tune"),
        {"tools": [PYTHON, "tests/cli/check_tools"],
         "lift": [PYTHON, "tests/oracle/check_lift"],
         "filed": [PYTHON, "tests/oracle/check_filed"],
         "a few senses": [PYTHON, "tests/sense/sense.py", "--program", "build/check/sillet",
                          "--every", "48", *EXAMPLES],
         "a few screens": [PYTHON, "tests/report/check_screen", "2", "30"],
         "tuned": [PYTHON, "tests/oracle/check_tuned"],
         "made": [PYTHON, "tests/oracle/made.py", "--program", "build/check/sillet", "--count",
                  "20"],
         "a few tables": [PYTHON, "tests/report/check_tables", "6", "9"],
         "a few acts": [PYTHON, "tests/brief/check_prescription", "sand-saddle", "turn-posts",
                        "file-slots", "rod"],
         "prescription": [PYTHON, "tests/brief/check_prescription"],
         "sentences": [PYTHON, "tests/words/check_sentences"],
         "later steps": [PYTHON, "tests/brief/check_next"],
         "planted": [PYTHON, "tests/oracle/planted.py", "--program", "build/check/sillet", "--count",
                     "20"],
         "quick": [PYTHON, "tests/brief/check_quick"],
         "tables": [PYTHON, "tests/report/check_tables"],
         "solids": [PYTHON, "tests/drawing/check_measured", "12", "64"],
         "figures": [PYTHON, "tests/drawing/check_figures"],
         "plans": [PYTHON, "tests/oracle/compare.py", "--program", "build/check/sillet",
                   "--count", "100"]}, 200, 0.95, 0.08, [WATCHED], sift.printed, 80, 200),
    "paper": Room(
        ["src/drawing/views/[!f]*.c", "src/drawing/views/facts.c", "src/drawing/papers/*.c",
         *(f"src/drawing/board/{name}.c" for name in ("dimension", "table", "words"))],
        DRAWN | PAGES | unit("sheet_tone"),
        {"a few figures": [PYTHON, "tests/drawing/check_figures", "4", "9"],
         "a few blanks": [PYTHON, "tests/drawing/check_measuring", "8", "11"],
         "a few makers": [PYTHON, "tests/drawing/check_maker", "12", "4", "12"],
         "rounding": [PYTHON, "tests/drawing/check_rounding", "40", "12"],
         "told": [PYTHON, "tests/drawing/check_told"],
         "sentences": [PYTHON, "tests/words/check_sentences"],
         "comma": [PYTHON, "tests/drawing/check_comma"],
         "figures": [PYTHON, "tests/drawing/check_figures"],
         "measuring": [PYTHON, "tests/drawing/check_measuring"],
         "measured": [PYTHON, "tests/drawing/check_measured", "12", "64"]}, 100, 0.90, 0.08, [WATCHED],
        sift.drawn, 20, 60)}


def run(*command, **options):
    return subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                          check=False, **options).returncode


def sources(patterns):
    return sorted(path for pattern in patterns
                  for path in glob.glob(os.path.join(TOP, pattern), recursive=True))


class Bench:
    """A tree like this one, whose programs take the room from a library of its own."""

    def __init__(self, room, work, flags):
        self.work, self.flags = work, [*FLAGS, *flags]
        self.built = os.path.join(work, "build/check")
        os.makedirs(self.built)
        for name in ("tests", "profiles", "examples", "docs", "src", "include"):
            os.symlink(os.path.join(TOP, name), os.path.join(work, name))
        objects = self.objects()
        self.room = {path: objects.pop(path) for path in sources(room.sources)}
        cli = {path: objects.pop(path) for path in list(objects) if "/src/cli/" in path}
        self.lent = queue.SimpleQueue()  # a folder with the room's library for each change tried
        for k in range(AT_A_TIME):
            folder = os.path.join(work, f"try{k}")
            os.mkdir(folder)
            self.link(folder, self.room)
            self.lent.put(folder)
        self.make("-shared", "-o", os.path.join(work, "librest.so"), *objects.values())
        self.programs(cli, folder, room)
        tests = [(name, [f"build/check/{name}"]) for name in room.tests]
        scripts = [] if flags == SANITIZED else list(room.scripts.items())
        with concurrent.futures.ThreadPoolExecutor(AT_A_TIME) as several:
            self.tries = sorted(several.map(lambda one: self.timed(folder, *one), tests + scripts))
        if flags == SANITIZED:  # what takes long there is run as it is built elsewhere
            self.tries = [one for one in self.tries if one[0] < 30.0]
        self.quick = [one for one in self.tries if not one[2][0] == PYTHON or one[0] < READ_AT_ONCE]
        readers = [one for one in self.tries if one not in self.quick]
        self.readers = sorted(readers, key=lambda one: one[1] != ALL_THAT_IS_SAID)
        self.sift = self.sifted(room, folder) if room.printed else None

    def objects(self):
        """Every source but the web page's, compiled: where its object is, by its path."""
        made = {path: os.path.join(self.work, os.path.relpath(path, TOP).replace("/", "-") + ".o")
                for path in sources(["src/**/*.c"]) if "/src/page/" not in path}
        with concurrent.futures.ThreadPoolExecutor(AT_A_TIME) as several:
            list(several.map(lambda one: self.make("-c", "-o", one[1], one[0]), made.items()))
        return made

    def programs(self, cli, folder, room):
        """What the tests are and what they run, all linked with the room in that folder."""
        with_room = ["-L" + self.work, "-L" + folder, "-lrest", "-lroom", "-Wl,-rpath," + self.work,
                     *LIBRARIES]
        drawing = [made for path, made in cli.items() if "/cli/draw/" in path]
        common = [made for path, made in cli.items()
                  if os.path.basename(path) in ("cli.c", "commands.c", "arguments.c", "help.c")]
        linked = {"sillet": [made for made in cli.values() if made not in drawing],
                  "sillet-draw": drawing + common,
                  "read_lines": [os.path.join(TOP, "tests/lengths/read_lines.c")]}
        linked |= {name: [os.path.join(TOP, f"tests/{name}.c")] for name in room.tests}
        with concurrent.futures.ThreadPoolExecutor(AT_A_TIME) as several:
            list(several.map(lambda one: self.make("-o", os.path.join(self.built, one[0]), *one[1],
                                                   *with_room), linked.items()))

    def make(self, *command):
        if run("gcc", *self.flags, *command):
            sys.exit(f"not built: {' '.join(command)}")

    def link(self, folder, objects):
        return run("gcc", *self.flags, "-shared", "-o", os.path.join(folder, "libroom.so"),
                   *objects.values(), "-lm")

    def environment(self, folder):
        return dict(os.environ, SILLET="build/check/sillet", SILLET_PROFILES="profiles", LD_LIBRARY_PATH=folder)

    def sifted(self, room, folder):
        sheets = sift.sheets_into(os.path.join(self.work, "sheets"), room.randoms, room.crossed)
        made = sift.Sift(self.work, room.printed(sheets))
        made.keep(self.environment(folder))
        return made

    def passes(self, folder, command, limit):
        try:
            return not run(*command, cwd=self.work, timeout=limit, env=self.environment(folder))
        except subprocess.TimeoutExpired:
            return False

    def timed(self, folder, name, command):
        """With how long it takes with nothing changed."""
        start = time.monotonic()
        if not self.passes(folder, command, 600):
            sys.exit(f"with nothing changed, {name} fails")
        return time.monotonic() - start, name, command

    def caught_by(self, path, changed):
        """What fails with that text in the place of a file of the room; "" where nothing does, None
        where it is no program."""
        folder = self.lent.get()
        try:
            return self.tried(folder, path, changed)
        finally:
            self.lent.put(folder)

    def tried(self, folder, path, changed):
        text, made = os.path.join(folder, "mutant.c"), os.path.join(folder, "mutant.o")
        with open(text, "w", encoding="utf-8") as file:
            file.write(changed)
        if run("gcc", *self.flags, "-I" + os.path.dirname(path), "-c", "-o", made, text):
            return None
        if self.link(folder, {**self.room, path: made}):
            return None
        if failed := self.failing(folder, self.quick):
            return failed
        if self.sift and self.sift.alike(self.environment(folder)):
            return ""
        return self.failing(folder, self.readers)

    def failing(self, folder, tries):
        """The first of them that fails; "" where none does."""
        return next((name for seconds, name, command in tries
                     if not self.passes(folder, command, 15 + 5 * seconds)), "")


def known_equal():
    path = os.path.join(TOP, "tests/mutants/equal")
    with open(path, encoding="utf-8") as file:
        return {tuple(line.rstrip("\n").split("\t")[:2]) for line in file if "\t" in line}


class Change:
    """One token of a file with another in its place."""

    def __init__(self, path, text, start, end, other):
        self.path, self.text = path, text[:start] + other + text[end:]
        number = text.count("\n", 0, start)
        self.file, self.line = os.path.relpath(path, TOP), self.text.splitlines()[number].strip()
        self.told = f"{self.file}:{number + 1}: {text[start:end]} to {other}: {self.line}"


def changes_of(name, room, seed):
    """Every change there is in a room, in an order drawn by chance."""
    chance, found = random.Random(seed), []
    for path in sources(room.sources):
        with open(path, encoding="utf-8") as file:
            text = file.read()
        found += [(path, text, start, end, chance.choice(of)) for start, end, of in
                  changes.places(text, name != "core", name == "paper")]
    chance.shuffle(found)
    return [Change(*one) for one in found]


def catcher(benches, change, equal):
    """What notices a change: a test, "sanitizers", or "equal"; "" where nothing does."""
    if (change.file, change.line) in equal:
        return "equal"
    caught = benches[0].caught_by(change.path, change.text)
    if caught == "" and any(more.caught_by(change.path, change.text) for more in benches[1:]):
        return "sanitizers"
    return caught


def try_room(name, count, seed):
    """Tries that many changes of a room; whether enough of them was caught."""
    room, equal, began = ROOMS[name], known_equal(), time.monotonic()
    alike, survived, by = 0, 0, collections.Counter()
    with contextlib.ExitStack() as held:
        benches = [Bench(room, held.enter_context(tempfile.TemporaryDirectory()), flags)
                   for flags in room.flags]
        left, done = iter(changes_of(name, room, seed)), 0
        several = held.enter_context(concurrent.futures.ThreadPoolExecutor(AT_A_TIME))
        while done < count and (batch := list(itertools.islice(left, count - done))):
            tried = several.map(lambda change: catcher(benches, change, equal), batch)
            for change, caught in zip(batch, tried):
                done += caught is not None
                alike += caught == "equal"
                if caught == "":
                    survived += 1
                    print(change.told, flush=True)
                elif caught and caught != "equal":
                    by[caught] += 1
                print(f"{name}: {done} of {count}", end="\r", file=sys.stderr)
    caught = by.total()
    print(", ".join(f"{test} {times}" for test, times in by.most_common()))
    print(f"{name}, seed {seed}: {caught} caught, {survived} not, {alike} equal: "
          f"{100 * caught / max(caught + survived, 1):.1f} % of those not shown equal, "
          f"in {(time.monotonic() - began) / 60:.0f} minutes", flush=True)
    return caught >= room.caught * (caught + survived) and alike <= room.equal * count


def main():
    names = sys.argv[1:2] or ["words", "paper"]
    seed = int(sys.argv[3]) if len(sys.argv) > 3 else 1
    return 0 if all([try_room(name, int(sys.argv[2]) if len(sys.argv) > 2 else ROOMS[name].count,
                              seed) for name in names]) else 1


if __name__ == "__main__":
    sys.exit(main())
