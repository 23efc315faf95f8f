#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""The arithmetic, sheets and plans on other machines, another C library and by other compilers.

    /usr/bin/python3 tests/elsewhere/elsewhere.py SOURCES [KIND..]

SOURCES has libyaml, cjson and cmocka unpacked. Every room but the drawing and the page is built with
them, of one kind after another, warnings being errors. Each kind must run the tests of these rooms,
plan every sheet in a thread of 64 KiB, and give the plans of the first kind: the same words, and every
figure within 1e-6. What a kind lacks is told in one line, and that kind is left out.
"""
import glob
import json
import os
import re
import shutil
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor

NEAR = 1e-6
CLANG = ["-Wno-unused-command-line-argument"]
# name: (compiler, flags, what runs its programs). The first one gives the plans that count. By the
# standard gcc makes no product and sum one operation unless it is told to, clang does where it can.
KINDS = {
    "gcc -O2": (["gcc"], ["-O2", "-ffp-contract=off"], []),
    "aarch64": (["aarch64-linux-gnu-gcc"], ["-O2"], ["qemu-aarch64"]),
    "aarch64 fused": (["aarch64-linux-gnu-gcc"], ["-O2", "-ffp-contract=fast"], ["qemu-aarch64"]),
    "s390x": (["s390x-linux-gnu-gcc"], ["-O2"], ["qemu-s390x"]),
    "musl": (["musl-gcc"], ["-O2"], []),
    "gcc -O0": (["gcc"], ["-O0"], []),
    "gcc -O1": (["gcc"], ["-O1"], []),
    "gcc -O3": (["gcc"], ["-O3"], []),
    "gcc -O3 -flto": (["gcc"], ["-O3", "-flto"], []),
    "clang -O0": (["clang"], ["-O0", *CLANG], []),
    "clang -O1": (["clang"], ["-O1", *CLANG], []),
    "clang -O2": (["clang"], ["-O2", *CLANG], []),
    "clang -O3": (["clang"], ["-O3", *CLANG], []),
    "clang -O3 -flto": (["clang"], ["-O3", "-flto", "-fuse-ld=lld", *CLANG], []),
}
ROOMS = ("core", "text", "json", "job", "sheet", "plan", "part", "brief", "report")
SHEETS = ("examples/*.yaml", "examples/first-job/*.yaml", "tests/sheets/good-*.yaml")
WARNINGS = ["-Wall", "-Wextra", "-Wpedantic", "-Wshadow", "-Werror"]
YAML = ["-DYAML_VERSION_MAJOR=0", "-DYAML_VERSION_MINOR=2", "-DYAML_VERSION_PATCH=5",
        '-DYAML_VERSION_STRING="0.2.5"']
CMOCKA = ["-DHAVE_INTTYPES_H", "-DHAVE_SIGNAL_H", "-DHAVE_STRINGS_H", "-DHAVE_SIGLONGJMP",
          "-DHAVE_STRUCT_TIMESPEC", "-DHAVE_CLOCK_REALTIME", "-DHAVE_GCC_THREAD_LOCAL_STORAGE"]
# What a test that needs the drawing or the page names.
OTHER_ROOMS = ('"../src/drawing/', '"../src/page/', "<sillet/drawing.h>", "sil_drawing", "sil_view_make",
               "sil_outlines_make", "sil_file_save")


class Kind:
    """One way of building: its folder, compiler and flags, and what it found."""

    def __init__(self, name, sources):
        self.name, self.sources = name, sources
        self.compiler, self.flags, self.runner = KINDS[name]
        self.folder = "build/elsewhere/" + name.replace(" ", "")
        self.library, self.newest = [], newest()

    def is_there(self, target):
        """Whether it was made since any source was changed."""
        return os.path.exists(target) and os.path.getmtime(target) > self.newest

    def missing(self):
        tools = [self.compiler[0], *self.runner[:1], *(["ld.lld"] if "-fuse-ld=lld" in self.flags else [])]
        return [tool for tool in tools if not shutil.which(tool)]

    def compiled(self, source, extra=()):
        """The object of a source."""
        target = f"{self.folder}/{source.replace('/', '_')}.o"
        if self.is_there(target):
            return target
        include = [f"-isystem{self.sources}/{name}/include" for name in ("libyaml", "cmocka")]
        run([*self.compiler, "-std=c17", "-D_XOPEN_SOURCE=700", "-g", *self.flags, "-Iinclude", *include,
             f"-isystem{self.sources}/include", *(extra or WARNINGS), "-c", "-o", target, source])
        return target

    def linked(self, target, objects):
        if self.is_there(target):
            return target
        run([*self.compiler, "-static", *self.flags, "-o", target, *objects, *self.library, "-lm", "-pthread"])
        return target

    def ran(self, *command, check=True):
        environment = dict(os.environ, SILLET_PROFILES="profiles")
        done = subprocess.run([*self.runner, *command], env=environment, check=False,
                              stdin=subprocess.DEVNULL, capture_output=True, text=True)
        if check and done.returncode != 0:
            raise Failed(f"{' '.join(command)}: exit {done.returncode}\n"
                         f"{(done.stdout + done.stderr)[-1500:]}")
        return done.stdout


class Failed(Exception):
    pass


def run(command):
    done = subprocess.run(command, check=False, capture_output=True, text=True)
    if done.returncode != 0:
        raise Failed(f"{' '.join(command)}\n{done.stderr[-1500:]}")


def newest():
    """When a source was changed last."""
    names = [__file__, *(name for folder in ("src", "include", "tests") for ending in ("c", "h")
                         for name in glob.glob(f"{folder}/**/*.{ending}", recursive=True))]
    return max(os.path.getmtime(name) for name in names)


def sources_of(*rooms):
    return sorted(name for room in rooms
                  for name in glob.glob(f"src/{room}/**/*.c", recursive=True))


def with_headers(name):
    """A test's text, and under it that of its headers in tests/ and of theirs."""
    with open(name, encoding="utf-8") as file:
        text = file.read()
    return text + "".join(with_headers(f"tests/{header}") for header in re.findall(r'#include "(\w+\.h)"', text))


def tests():
    """The tests of these rooms: those that name neither the drawing nor the page."""
    for name in sorted(glob.glob("tests/test_*.c")):
        text = with_headers(name)
        if not any(word in text for word in OTHER_ROOMS):
            yield name


def build(kind, pool):
    os.makedirs(kind.folder, exist_ok=True)
    carried = [(f"{kind.sources}/libyaml/src/{name}.c", [*YAML, "-w"])
               for name in ("api", "reader", "scanner", "parser")]
    carried += [(f"{kind.sources}/cjson/cJSON.c", ["-w"]), (f"{kind.sources}/cmocka/src/cmocka.c", [*CMOCKA, "-w"])]
    rooms = [(name, ()) for name in sources_of(*ROOMS)]
    objects = list(pool.map(lambda job: kind.compiled(*job), [*carried, *rooms]))
    library = f"{kind.folder}/rooms.a"
    if os.path.exists(library):
        os.remove(library)
    archiver = {"clang": "llvm-ar"}.get(kind.compiler[0], "gcc-ar") if "-flto" in kind.flags else "ar"
    run([shutil.which(archiver) or archiver, "rcs", library, *objects])
    kind.library = [library]
    program = [name for name in sources_of("cli") if not name.startswith("src/cli/draw/")]
    kind.linked(f"{kind.folder}/sillet", list(pool.map(kind.compiled, program)))
    stack = kind.compiled("tests/stack/stack.c", ("-D_GNU_SOURCE",))
    kind.linked(f"{kind.folder}/stack", [stack])

    def test(name):
        return kind.linked(f"{kind.folder}/{os.path.basename(name)[:-2]}", [kind.compiled(name)])
    return list(pool.map(test, tests()))


def plans(kind):
    """{sheet: its result} of all sheets."""
    found = {}
    sheets = sorted(name for pattern in SHEETS for name in glob.glob(pattern))
    for line in kind.ran(f"{kind.folder}/sillet", "plan", "--json", *sheets, check=False).splitlines():
        row = json.loads(line)
        found[row["sheet"]] = row["result"]
    if sorted(found) != sheets or not all(found.values()):
        raise Failed("not every sheet was planned")
    return found


def furthest(place, wanted, got):
    """(how far the two are apart at most, how many figures); fails where they differ otherwise."""
    if isinstance(wanted, (dict, list)) and type(wanted) is type(got) and len(wanted) == len(got):
        keys = wanted if isinstance(wanted, dict) else range(len(wanted))
        rows = [furthest(f"{place}.{key}", wanted[key], got[key]) for key in keys]
        return max((far for far, _ in rows), default=0.0), sum(count for _, count in rows)
    if isinstance(wanted, float) and isinstance(got, (int, float)) or \
            isinstance(got, float) and isinstance(wanted, int):
        far = abs(wanted - got)
        if not far <= NEAR * max(1.0, abs(wanted)):
            raise Failed(f"{place}: wanted {wanted}, got {got}")
        return far, 1
    if wanted != got:
        raise Failed(f"{place}: wanted {wanted}, got {got}")
    return 0.0, int(isinstance(wanted, int) and not isinstance(wanted, bool))


def tried(kind, pool, true):
    """(the plans of a kind, how many tests passed, what to tell)."""
    programs = build(kind, pool)
    list(pool.map(kind.ran, programs))
    sheets = sorted(name for pattern in SHEETS for name in glob.glob(pattern))
    stack = kind.ran(f"{kind.folder}/stack", *sheets).splitlines()[0]
    found = plans(kind)
    far, figures = furthest("plans", true or found, found)
    return found, len(programs), (f"{len(programs)} tests in C; {figures} figures of {len(found)} plans, "
                                  f"furthest off {far:.1e}; {stack.split(', ')[-1]}")


def main():
    sources, names = sys.argv[1], sys.argv[2:] or list(KINDS)
    true, passed, failed = None, 0, 0
    first = next(iter(KINDS))
    with ThreadPoolExecutor(len(os.sched_getaffinity(0))) as pool:
        for name in [first, *(name for name in names if name != first)]:
            kind, began = Kind(name, sources), time.monotonic()
            missing = kind.missing()
            if missing:
                print(f"{name:16} left out: no {' and no '.join(missing)}", flush=True)
                continue
            try:
                found, count, told = tried(kind, pool, true)
                true = true or found
                passed += count + len(found)
                print(f"{name:16} {time.monotonic() - began:6.1f} s  {told}", flush=True)
            except Failed as error:
                failed += 1
                print(f"{name:16} {error}", flush=True)
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
