# SPDX-License-Identifier: MIT
"""Necks that their rods cannot put right, and saddles that are short, computed a second time on random
instruments: what waits, what a bow that is accepted costs, and half a cure short of work on the neck.

    /usr/bin/python3 tests/oracle/bowed.py [--program build/sillet] [--count 200] [--seed 1]
"""
import argparse
import random
import tempfile

import compare
import history
import jobs
import sheet
import visit
import yaml

CASES = ("high", "back", "short")
STATES = ("slack", "at-end", "stuck", "accepted")


def with_neck(m, doc, case):
    """A rod that does not do it; or, of a short saddle, one that may."""
    rod = m.rng.choice(["one-way", "two-way", "none"])
    doc["instrument"].update(rod=rod, rod_state=m.rng.choice(STATES))
    if case == "short" and m.chance(0.5):
        doc["instrument"].update(rod="two-way", rod_state="works")


def gap_of(m, job, case):
    low, aim, high = job.targets.relief
    if case == "back":
        return -m.between(0.01, 0.15)
    return high + m.between(-0.02, 0.25) if case == "high" else m.between(low, high)


def drawn(seed, number):
    """One visit, by what an edge reads, on an instrument of the random sheets."""
    case, m = CASES[number % 3], jobs.Maker(random.Random(f"bowed {seed}/{number}"))
    doc, _ = jobs.make(f"bowed {seed}", number)
    with_neck(m, doc, case)
    for key in ("make", "date"):
        doc.pop(key, None)
    if case == "short" or m.chance(0.5):
        doc["saddle"].update(kind=m.rng.choice(["slotted", "slotted", "glued"]), slot_depth="5 mm",
                             thickness="3 mm",
                             length=f"{sheet.written(doc).saddle.spread + 16} mm")
        for key in ("pitch", "travel", "post_spread", "intonation", "intonation_pitch",
                    "peak"):
            doc["saddle"].pop(key, None)
    job = sheet.written(doc)
    least, off = job.limits.least_protrusion, m.between(-0.2, 1.5)
    gaps = [band[1] + m.rng.choice([0.0, m.between(0, 0.15)]) for band in job.targets.first]
    reading = {"relief": {"gap": f"{gap_of(m, job, case):.6f} mm", "by": "straightedge"},
               "frets": "sound", "first_held": job.targets.held or "open",
               "first": [f"{max(0.02, gap):.5f} mm" for gap in gaps],
               "action": [f"{max(0.5, band[1] + off + m.between(-0.1, 0.1)):.5f} mm"
                          for band in job.targets.action]}
    if doc["saddle"].get("kind") in ("slotted", "glued"):
        reading["stands_out"] = [f"{least + m.between(0.3, 0.6) + (case != 'short') * 3:.4f} mm"
                                 for _ in range(job.count)]
        if case == "short":
            least_out, more = least + m.between(0.2, 1.5), m.between(0, 0.5)
            reading["stands_out"] = [f"{least_out + more * i / job.count:.4f} mm"
                                     for i in range(job.count)]
    doc["readings"] = [reading]
    return doc


def sheets(seed, count):
    for number in range(count):
        doc = drawn(seed, number)
        text = jobs.text_of(doc, random.Random(number))
        read = yaml.load(text, sheet.LOADER)
        if sheet.written(doc).board.join >= 3 and visit.possible(history.up_to(read, 1)) \
                and not history.follow(text)[3]:
            yield number, text


def seen(got, counts):
    """What the sheets came to: a case that never comes up is not tested."""
    saddle, acts = got["saddle"], [step["act"] for step in got["steps"]]
    counts["costs"] += saddle["bow_accepted"] is not None
    counts["half"] += bool(saddle["short"] and saddle["short"]["half"])
    counts["no half"] += bool(saddle["short"] and not saddle["short"]["half"])
    for part in ("nut", "saddle"):
        counts[f"{part} waits"] += "rod-limit" in got[part]["withheld_by"]
    for act in ("rod-first", "back-bow"):
        counts[act] += act in acts


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", default="build/sillet")
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--seed", default="1")
    options = parser.parse_args()
    made = list(sheets(options.seed, options.count))
    reports = [compare.Report(f"bowed {number}") for number, _ in made]
    counts = dict.fromkeys(("costs", "half", "no half", "nut waits", "saddle waits", "rod-first",
                            "back-bow"), 0)
    with tempfile.TemporaryDirectory() as folder:
        results = compare.planned(options.program, folder, reports, [text for _, text in made])
    for report, (_, text), got in zip(reports, made, results):
        if got is not None:
            compare.check(report, text, got, False)
            seen(got, counts)
    failed = [report for report in reports if report.lines]
    for report in failed[:20]:
        print("\n".join(report.lines[:6]))
    never = [what for what, count in counts.items() if count == 0]
    if never:
        print(f"never came up: {', '.join(never)}")
    print(f"{len(reports) - len(failed)} passed, {len(failed) + len(never)} failed")
    return bool(failed or never)


if __name__ == "__main__":
    raise SystemExit(main())
