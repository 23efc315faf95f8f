#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""No plan has a figure that no part can have, however wrong its sheet.

    /usr/bin/python3 tests/sense/sense.py [--program build/sillet] [--every 1] [--every-profile 1]
        [--several 600] SHEET..

Every figure of every sheet is made nothing, hardly anything, ten times as much, a tenth, and absurd,
one at a time; then two to four at a time, some only a few times too large or too small. So is every
figure of the profiles that they name. Each sheet is planned, and its result held against possible.py. A
part that is replaced carries nothing of its work.
"""
import argparse
import json
import os
import random
import re
import subprocess
import sys
import tempfile
from collections import Counter
from concurrent.futures import ThreadPoolExecutor

import mutated
import possible

BATCH = 400  # sheets that one process plans
SHOWN = 20
PROFILE = re.compile(r"^profile: ([a-z0-9-]+)$", re.MULTILINE)


def planned(program, sheets):
    """The result of each sheet, None where it was refused, planned in one process. A sheet is its text
    and its profile's, None where that is as it is."""
    with tempfile.TemporaryDirectory() as folder:
        os.mkdir(f"{folder}/profiles")
        for k, (text, profile) in enumerate(sheets):
            if profile:
                text = PROFILE.sub(f"profile: profiles/{k:06}.yaml", text)
                with open(f"{folder}/profiles/{k:06}.yaml", "w", encoding="utf-8") as out:
                    out.write(profile)
            with open(f"{folder}/{k:06}.yaml", "w", encoding="utf-8") as out:
                out.write(text)
        run = subprocess.run([program, "plan", "--json", folder], check=False, capture_output=True,
                             text=True)
        rows = {int(os.path.basename(row["sheet"])[:6]): row
                for row in map(json.loads, run.stdout.splitlines())}
    assert len(rows) == len(sheets), f"{len(rows)} answers to {len(sheets)} sheets: {run.stderr[-300:]}"
    return [rows[k]["result"] for k in range(len(sheets))]


def judged(options, batch):
    """Of each sheet (where it came from, whether it was planned, what cannot be)."""
    results = planned(options.program, [sheet for _, _, sheet in batch])
    for (name, what, _), result in zip(batch, results):
        wrong = list(possible.faults(result)) if result else []
        replaced = [part for part in ("nut", "saddle") if result and result[part]["remedy"] == "replace"]
        yield f"{name}: {what}", result is not None, replaced, wrong


def sheets_of(options):
    draw = random.Random(options.seed)
    for name in options.sheets:
        with open(name, encoding="utf-8") as file:
            text = file.read()
        start = draw.randrange(options.every)
        one = list(mutated.one_at_a_time(text))[start::options.every]
        several = mutated.several_at_a_time(text, draw, options.several // options.every)
        for what, sheet in [*one, *several]:
            yield os.path.basename(name), what, (sheet, None)


def profiles_of(options):
    """Each profile once, with its figures wrong, under the first sheet that names it."""
    draw, used, every = random.Random(options.seed), set(), options.every_profile
    for name in options.sheets:
        with open(name, encoding="utf-8") as file:
            text = file.read()
        profile = PROFILE.search(text)[1]
        if profile not in used:
            used.add(profile)
            with open(f"profiles/{profile}.yaml", encoding="utf-8") as file:
                under = file.read()
            start = draw.randrange(every)
            one = list(mutated.one_at_a_time(under))[start::every]
            several = mutated.several_at_a_time(under, draw, options.several // every)
            for what, wrong in [*one, *several]:
                yield f"{profile}.yaml", what, (text, wrong)


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", default="build/sillet")
    parser.add_argument("--every", type=int, default=1, help="one in so many of all sheets")
    parser.add_argument("--every-profile", type=int, default=1, help="and of all profiles")
    parser.add_argument("--several", type=int, default=600,
                        help="sheets with several wrong figures, an example")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("sheets", nargs="+")
    options = parser.parse_args()
    every = [*sheets_of(options), *profiles_of(options)]
    batches = [every[k:k + BATCH] for k in range(0, len(every), BATCH)]
    count, new, failed = Counter(), Counter(), 0
    with ThreadPoolExecutor(2) as two:
        for rows in two.map(lambda batch: list(judged(options, batch)), batches):
            for where, is_planned, replaced, wrong in rows:
                count["planned" if is_planned else "refused"] += 1
                new.update(replaced)
                failed += bool(wrong)
                if wrong and failed <= SHOWN:
                    print(f"{where}: {wrong[0]}")
    print(f"{sum(count.values())} sheets: {count['planned']} planned, {count['refused']} refused, "
          f"{new['nut']} with a new nut, {new['saddle']} with a new saddle")
    print(f"{sum(count.values()) - failed} passed, {failed} failed")
    enough = count["planned"] and new["nut"] and new["saddle"]
    return 1 if failed or not enough else 0


if __name__ == "__main__":
    sys.exit(main())
