# SPDX-License-Identifier: MIT
"""Whether a change alters anything that is printed or drawn of many sheets.

A test that reads what the program prints cannot fail on what leaves every letter of it alone, and takes
minutes. So all that is printed of these sheets is kept by its sum before anything is changed, and such tests
are tried only where a sum is another afterwards. A change that they would have caught on a sheet of their own
counts as not caught then, never the other way round.
"""
import hashlib
import os
import subprocess
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "words"))
import all_said  # noqa: E402


def sheets_into(folder, randoms, crossed):
    """Those that the words are kept of, and so many random and crossed ones; their paths."""
    os.makedirs(folder)
    return [os.path.join(folder, name) for name in all_said.paths_into(folder, randoms, crossed)]


def printed(paths):
    """What is run to see all that is said of the sheets."""
    yield ["plan", "--json", *paths]
    yield ["plan", "--json", "--units", "in", *paths]
    yield ["plan", *paths]
    for number, path in enumerate(paths):
        units = ("mm", "in")[number % 2]
        yield ["plan", "--units", units, *(["--full"] if number % 4 < 2 else []), path]
        yield ["draw", path, "--units", units, "--all", "--as", "pdf", "-o", "-"]
        yield ["draw", path, "--as", ("stl", "svg")[number % 2], "-o", "-"]
        if number % 3 == 0:
            yield ["draw", path, "--units", units, "--sheet", "owner", "--as", "svg", "-o", "-"]


def drawn(paths):
    """What is run to see all that is drawn of them."""
    for number, path in enumerate(paths):
        units, paper = ("mm", "in")[number % 2], ("A4", "Letter", "A3")[number % 3]
        mark = ("point", "comma")[number // 2 % 2]
        yield ["draw", path, "--units", units, "--paper", paper, "--decimal", mark, "--all", "--as", "pdf", "-o", "-"]
        yield ["draw", path, "--as", "svg", "-o", "-"]
        yield ["draw", path, "--as", "dxf", "-o", "-"]
        if number % 4 == 0:
            yield ["sheet", path, "--units", units, "--paper", paper, "-o", "-"]


class Sift:
    """The sums of what those commands print, and how the program is run for them."""

    def __init__(self, cwd, commands):
        self.cwd, self.commands, self.sums = cwd, list(commands), []

    def keep(self, environment):
        self.sums = [self.sum(command, environment) for command in self.commands]

    def sum(self, command, environment):
        try:
            done = subprocess.run(["build/check/sillet", *command], cwd=self.cwd, env=environment, stdin=subprocess.DEVNULL,
                                  capture_output=True, check=False, timeout=60)
        except subprocess.TimeoutExpired:
            return None
        return done.returncode, hashlib.sha256(done.stdout + done.stderr).digest()

    def alike(self, environment):
        """Whether all that is printed is as it was kept; it looks no further than the first difference."""
        return all(self.sum(command, environment) == kept for command, kept in zip(self.commands, self.sums))
