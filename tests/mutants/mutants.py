#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""Whether the tests of the arithmetic notice when it is wrong: one token of src/core changed at a time.

    mutants.py [COUNT [SEED]]       200 changes drawn by chance

Each changed file is compiled and the tests of the arithmetic are run until one fails. What none
fails on is printed: it is a test to write, or it is equal, and then stands in `equal` beside this
with its reason (a file, a tab, the changed line, a tab, the reason).
"""
import glob
import os
import random
import re
import subprocess
import sys
import tempfile

TOP = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
SANITIZED = ["-fsanitize=address,undefined", "-fno-sanitize-recover=all"]
FLAGS = ["-std=c17", "-D_XOPEN_SOURCE=700", "-I" + os.path.join(TOP, "include"),
         "-I" + os.path.join(TOP, "tests"), "-O1", "-w", *SANITIZED]
LIBRARIES = ["-lhpdf", "-lfreetype", "-lyaml", "-lcjson", "-lm", "-lcmocka"]

SWAPS = [("+", "-"), ("*", "/"), ("<", "<="), (">", ">="), ("==", "!="), ("&&", "||"),
         ("+=", "-="), ("++", "--"), ("fmin", "fmax"), ("true", "false"), ("sin", "cos")]
OTHER = dict(SWAPS) | {b: a for a, b in SWAPS}
TOKEN = re.compile(r'"(?:\\.|[^"\\])*"|\'(?:\\.|[^\'\\])*\'|[A-Za-z_]\w*|\d[\w.]*(?:[eE][+-]\w+)?|'
                   r"->|\+\+|--|<<|>>|[-+*/<>=!]=|&&|\|\||.", re.DOTALL)

# The tests that know a source best come first, so that most changes are met at once.
FIRST = {"units": "units", "number": "number", "figure": "units", "nut": "nut", "saddle": "saddle",
         "seat": "saddle", "slot_line": "saddle", "circle": "saddle", "pitch": "pitch",
         "string": "published", "clearance": "clearance", "lowest": "lowest", "stages": "find",
         "fit": "fit", "board": "fit", "line": "fit"}


def places(path):
    """(start, end, what to put there) of every change one token allows."""
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
        if word in OTHER:
            found.append((token.start(), token.end(), OTHER[word]))
        elif re.fullmatch(r"\d+", word):
            found.append((token.start(), token.end(), str(int(word) + 1)))
        elif re.fullmatch(r"\d+\.\d+", word):
            found.append((token.start(), token.end(), "1.0" if float(word) == 0 else "0.0"))
    return text, found


def run(*command, **options):
    return subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                          check=False, **options).returncode


def build(work):
    """Objects of the library, and of the tests."""
    objects, tests = {}, {}
    for path in glob.glob(os.path.join(TOP, "src/**/*.c"), recursive=True):
        if "/cli/" in path:
            continue
        objects[path] = os.path.join(work, os.path.relpath(path, TOP).replace("/", "-") + ".o")
        freetype = ["-I/usr/include/freetype2"] if "/drawing/" in path else []
        if run("gcc", *FLAGS, *freetype, "-c", "-o", objects[path], path):
            sys.exit(f"{path} does not compile")
    for name in {*FIRST.values(), "properties", "visit"}:
        path = os.path.join(TOP, f"tests/test_{name}.c")
        tests[name] = os.path.join(work, name + ".o")
        if run("gcc", *FLAGS, "-c", "-o", tests[name], path):
            sys.exit(f"{path} does not compile")
    return objects, tests


def caught_by(work, objects, tests, source):
    """The test that fails with the objects as they are, or None."""
    best = FIRST.get(os.path.basename(source)[:-2], "")
    for name in sorted(tests, key=lambda name: (name != best, name == "properties", name)):
        program = os.path.join(work, "program")
        if run("gcc", *SANITIZED, "-o", program, tests[name], *objects.values(), *LIBRARIES):
            return "the linker"
        try:
            if run(program, cwd=TOP, env=dict(os.environ, SILLET_PROFILES="profiles"), timeout=120):
                return name
        except subprocess.TimeoutExpired:
            return name
    return None


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
        changes += [(path, text, place) for place in found]
    chance.shuffle(changes)
    equal, caught, alike, survived = known_equal(), 0, 0, 0
    with tempfile.TemporaryDirectory() as work:
        objects, tests = build(work)
        failing = caught_by(work, objects, tests, "")
        if failing:
            sys.exit(f"with nothing changed, {failing} fails")
        for path, text, (start, end, other) in changes:
            if caught + alike + survived == count:
                break
            name = os.path.relpath(path, TOP)
            changed = text[:start] + other + text[end:]
            number = text.count("\n", 0, start) + 1
            line = changed.splitlines()[number - 1].strip()
            if (name, line) in equal:
                alike += 1
                continue
            mutant, kept = os.path.join(work, "mutant.c"), objects[path]
            with open(mutant, "w", encoding="utf-8") as file:
                file.write(changed)
            made = os.path.join(work, "mutant.o")
            if run("gcc", *FLAGS, "-I" + os.path.dirname(path), "-c", "-o", made, mutant):
                continue  # not a program: no change to catch
            objects[path] = made
            by = caught_by(work, objects, tests, path)
            objects[path] = kept
            caught += by is not None
            survived += by is None
            if by is None:
                print(f"{name}:{number}: {text[start:end]} to {other}: {line}", flush=True)
    print(f"{caught} caught, {survived} not, {alike} equal: "
          f"{100 * caught / max(caught + survived, 1):.1f} % of those not shown equal")
    return 0 if caught >= 0.95 * (caught + survived) and alike <= 0.05 * count else 1


if __name__ == "__main__":
    sys.exit(main())
