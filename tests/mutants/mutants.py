#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Checks that the tests of the arithmetic notice a fault, by changing one token of src/core at a time.

    mutants.py [COUNT [SEED]]       200 changes drawn by chance

The changed file is compiled, src/core linked again as one shared library, and the tests are run
that were linked with it beforehand, the quickest first, until one fails; last the lengths and the
plans of tests/lengths and tests/oracle, and the tests once more under the sanitizers. A variable
that is not set holds nonsense, never by luck what it should. What nothing fails on is printed: it
is a test to write, or it is equal, and then stands in `equal` beside this with its reason (a file,
a tab, the changed line, a tab, the reason).
"""
import collections
import glob
import os
import random
import re
import subprocess
import sys
import tempfile
import time

TOP = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
FLAGS = ["-std=c17", "-D_XOPEN_SOURCE=700", "-I" + os.path.join(TOP, "include"),
         "-I/usr/include/freetype2", "-O1", "-w", "-fPIC", "-ftrivial-auto-var-init=pattern"]
SANITIZED = ["-fsanitize=address,undefined", "-fno-sanitize-recover=all"]
LIBRARIES = ["-lhpdf", "-lfreetype", "-lyaml", "-lcjson", "-lm", "-lcmocka"]

# Every test but those of what is no arithmetic.
TESTS = {os.path.basename(path)[:-2] for path in glob.glob(os.path.join(TOP, "tests/test_*.c"))} - {
    "test_file", "test_layers", "test_pack", "test_page", "test_page_folder", "test_writers"}
SCRIPTS = {"lengths": ["/usr/bin/python3", "tests/lengths/check_lengths"],
           "plans": ["/usr/bin/python3", "tests/oracle/compare.py", "--program",
                     "build/check/sillet", "--count", "100"]}

# What may stand in a token's place. Where there is more than one, chance picks.
OTHERS = {"+": "-*", "-": "+", "*": "/+", "/": "*", "<": ["<=", ">"], "<=": ["<", ">="],
          ">": [">=", "<"], ">=": [">", "<="], "==": ["!="], "!=": ["=="], "&&": ["||"],
          "||": ["&&"], "+=": ["-="], "-=": ["+="], "++": ["--"], "--": ["++"],
          "fmin": ["fmax"], "fmax": ["fmin"], "true": ["false"], "false": ["true"],
          "sin": ["cos"], "cos": ["sin"]}
TOKEN = re.compile(r'"(?:\\.|[^"\\])*"|\'(?:\\.|[^\'\\])*\'|[A-Za-z_]\w*|'
                   r"0[xX]\w+|\d+\.?\d*(?:[eE][+-]?\d+)?\w*|"
                   r"->|\+\+|--|<<|>>|[-+*/<>=!]=|&&|\|\||.", re.DOTALL)

def others(word):
    """What may stand in this token's place."""
    if re.fullmatch(r"\d+", word):
        return [str(int(word) + 1)] + ([str(int(word) - 1)] if int(word) else [])
    if re.fullmatch(r"\d+(\.\d*|[eE]|\.\d*[eE])([+-]?\d+)?", word):
        return [other for other in ("0.0", "1.0") if float(other) != float(word)]
    return OTHERS.get(word, [])


def places(path):
    """(start, end, what may stand there) of every token that can be changed."""
    with open(path, encoding="utf-8") as file:
        text = file.read()
    code = re.sub(r"/\*.*?\*/|^#.*?$", lambda m: re.sub(r"[^\n]", " ", m.group()), text,
                  flags=re.DOTALL | re.MULTILINE)
    found = []
    for token in TOKEN.finditer(code):
        word = token.group()
        before, after = code[token.start() - 1], code[token.end():token.end() + 1]
        if word == "*" and not (before == " " and after == " "):
            continue  # of a pointer
        if others(word):
            found.append((token.start(), token.end(), others(word)))
    return text, found


def run(*command, **options):
    return subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                          check=False, **options).returncode


class Bench:
    """A tree like this one, whose programs take src/core from a library of its own."""

    def __init__(self, work, *flags):
        self.work, self.core, self.flags = work, {}, [*FLAGS, *flags]
        self.built = os.path.join(work, "build/check")
        os.makedirs(self.built)
        for name in ("tests", "profiles", "examples", "docs", "src", "include"):
            os.symlink(os.path.join(TOP, name), os.path.join(work, name))
        rest = []
        for path in glob.glob(os.path.join(TOP, "src/**/*.c"), recursive=True):
            name = os.path.relpath(path, TOP)
            made = os.path.join(work, name.replace("/", "-") + ".o")
            if name.startswith("src/core/"):
                self.core[path] = made
            elif not name.startswith(("src/page/", "src/cli/draw/")):
                rest.append(made)
            else:
                continue
            self.make("-c", "-o", made, path)
        main = [made for made in rest if "src-cli-" in made]
        rest = [made for made in rest if made not in main]
        self.link(self.core)
        self.make("-shared", "-o", os.path.join(work, "librest.so"), *rest)
        tried = ["-L" + work, "-lrest", "-lcore", "-Wl,-rpath," + work, *LIBRARIES]
        self.make("-o", os.path.join(self.built, "sillet"), *main, *tried)
        self.make("-o", os.path.join(self.built, "read_lines"),
                  os.path.join(TOP, "tests/lengths/read_lines.c"), *tried)
        for name in TESTS:
            self.make("-o", os.path.join(self.built, name),
                      os.path.join(TOP, f"tests/{name}.c"), *tried)
        self.tries = sorted(self.timed(name, [f"build/check/{name}"]) for name in TESTS)
        if flags:  # what takes long there is run as it is built elsewhere
            self.tries = [one for one in self.tries if one[0] < 30.0]
        else:
            self.tries += sorted(self.timed(*script) for script in SCRIPTS.items())

    def make(self, *command):
        if run("gcc", *self.flags, *command):
            sys.exit(f"not built: {' '.join(command)}")

    def link(self, objects):
        return run("gcc", *self.flags, "-shared", "-o", os.path.join(self.work, "libcore.so"),
                   *objects.values(), "-lm")

    def passes(self, command, limit):
        try:
            return not run(*command, cwd=self.work, timeout=limit,
                           env=dict(os.environ, SILLET_PROFILES="profiles"))
        except subprocess.TimeoutExpired:
            return False

    def timed(self, name, command):
        """With how long it takes with nothing changed."""
        start = time.monotonic()
        if not self.passes(command, 600):
            sys.exit(f"with nothing changed, {name} fails")
        return time.monotonic() - start, name, command

    def caught_by(self, path, changed):
        """What fails with that text in the place of a file of src/core; "" where nothing does, None
        where it is no program."""
        text, made = os.path.join(self.work, "mutant.c"), os.path.join(self.work, "mutant.o")
        with open(text, "w", encoding="utf-8") as file:
            file.write(changed)
        if run("gcc", *self.flags, "-I" + os.path.dirname(path), "-c", "-o", made, text):
            return None
        if self.link({**self.core, path: made}):
            return None
        for seconds, name, command in self.tries:
            if not self.passes(command, 10 + 5 * seconds):
                return name
        return ""


def known_equal():
    path = os.path.join(TOP, "tests/mutants/equal")
    if not os.path.exists(path):
        return set()
    with open(path, encoding="utf-8") as file:
        return {tuple(line.rstrip("\n").split("\t")[:2]) for line in file if "\t" in line}


def main():
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    chance = random.Random(int(sys.argv[2]) if len(sys.argv) > 2 else 1)
    changes = []
    for path in sorted(glob.glob(os.path.join(TOP, "src/core/*.c"))):
        text, found = places(path)
        changes += [(path, text, start, end, chance.choice(of)) for start, end, of in found]
    chance.shuffle(changes)
    equal, alike, survived, by = known_equal(), 0, 0, collections.Counter()
    with tempfile.TemporaryDirectory() as plain, tempfile.TemporaryDirectory() as sanitized:
        benches = [Bench(plain), Bench(sanitized, *SANITIZED)]
        for path, text, start, end, other in changes:
            if by.total() + alike + survived == count:
                break
            name = os.path.relpath(path, TOP)
            changed = text[:start] + other + text[end:]
            number = text.count("\n", 0, start) + 1
            line = changed.splitlines()[number - 1].strip()
            if (name, line) in equal:
                alike += 1
                continue
            catcher = benches[0].caught_by(path, changed)
            if catcher == "" and benches[1].caught_by(path, changed):
                catcher = "sanitizers"
            if catcher:
                by[catcher] += 1
            elif catcher == "":
                survived += 1
                print(f"{name}:{number}: {text[start:end]} to {other}: {line}", flush=True)
            print(f"{by.total() + alike + survived} of {count}", end="\r", file=sys.stderr)
    caught = by.total()
    print(", ".join(f"{name} {times}" for name, times in by.most_common()))
    print(f"{caught} caught, {survived} not, {alike} equal: "
          f"{100 * caught / max(caught + survived, 1):.1f} % of those not shown equal")
    return 0 if caught >= 0.95 * (caught + survived) and alike <= 0.05 * count else 1


if __name__ == "__main__":
    sys.exit(main())
