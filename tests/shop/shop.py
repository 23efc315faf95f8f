#!/usr/bin/python3
# SPDX-License-Identifier: MIT
"""A simulated shop: random instruments set up by the program's own plans, visit by visit.

    /usr/bin/python3 tests/shop/shop.py [--program build/sillet] [--count 1000] [--keep FOLDER]

Each instrument is read with tools of their stated error, worked as the plan says but not quite
exactly, and read again, until the plan calls it done or has nothing more to ask.
"""
import argparse
import json
import os
import random
import subprocess
import sys
import tempfile
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from types import SimpleNamespace as Plain

import numpy as np

import instrument
import tech


# Each shop: what its tools read to, how well its tech keeps to a figure, and what must come out of
# hundreds of instruments. An edge is as wide as its reading is unsure, so that what is left at one
# may truly be out by that: what counts is within the tools; strictly in range is only watched. Past
# the low edge: one cut in twenty at most, by design.
SHOPS = {
    "as shops are": Plain(
        tools=instrument.TOOLS, kept=tech.KEPT, many=1, few=1, feelers=False,
        least={"done": 0.85, "in range": 0.60, "within the tools": 0.98},
        most={"visits": 5, "past": 0.03, "spoiled": 0.01}),
    "slips of the pen": Plain(
        tools=instrument.TOOLS, kept=tech.KEPT, many=1, few=0.5, feelers=False, slips=0.02,
        least={"done": 0.85, "ended well": 0.99},
        most={"visits": 4, "visits of 95 %": 6, "past": 0.02, "spoiled": 0.0}),
    "coarse tools, steady hand": Plain(
        tools=instrument.COARSE, kept=tech.STEADY, many=0.25, few=0.5, feelers=False,
        least={"done": 0.75, "in range": 0.15, "within the tools": 0.95},
        most={"visits": 8, "past": 0.02, "spoiled": 0.01}),
    "scales alone, to feelers": Plain(
        tools=instrument.MARKED, kept=tech.STEADY, many=1.5, few=0.5, feelers=True,
        least={"done": 0.70, "in range": 0.50, "ended well": 0.97},
        most={"visits": 8, "past": 0.05, "spoiled": 0.01}),
}
MANY = 1000   # instruments: with fewer, a shop's part of them is another
FEW = 0.1   # what shares of only tens of instruments may miss theirs by; of cuts, which are more, half


def outside(values, bands):
    """How far the worst of a set is outside its range; under 0 inside."""
    return float(np.max(np.maximum(bands[:, 0] - values, values - bands[:, 2])))


def worst_under(values, bands, cut):
    """How far the lowest of the strings last moved by a cut is under its range."""
    return float(np.max((bands[:, 0] - values)[cut], initial=0.0))


def refused_rightly(it, end, out):
    """Whether what was refused could truly not be put right with this neck, rod and saddle; `out`:
    of relief and action. What the tools read to is granted."""
    if end.endswith("rod-limit") or end == "sent on: the neck":
        return not it.rod_works and out[0] > -it.tools["relief"][0]
    if end not in ("stopped: neck-angle", "stopped: short-by-bow"):
        return False
    over = (it.gaps()[0] - it.action_band[:, 2]) / (it.x[12] / it.end)
    spare = 2 * (it.tools["action"][0] + it.tools["caliper"][0])
    short = bool(np.any(over > it.stands_out() - it.profile["limits"]["least_protrusion"] - spare))
    return short and not (end.endswith("bow") and it.rod_works)


def one(options, folder, number, shop):
    """An instrument from the door to the end of its work."""
    rng = random.Random(f"{options.seed}/{number}")
    kinds, weights = zip(*instrument.KINDS.items())
    it = instrument.Instrument(rng, rng.choices(kinds, weights)[0], shop.tools)
    if shop.feelers:
        it.measure_frets()
    if getattr(shop, "slips", 0):
        it.owned_by(shop.slips)
    bench = tech.Tech(it, shop.kept, options.program, folder, number, shop.feelers)
    end = bench.follow()
    action, first = it.gaps()
    relief, wanted = np.array([it.relief_under(None)]), np.array([it.relief_band])
    out = [outside(relief, wanted), outside(action, it.action_band), outside(first, it.first_band)]
    spare = [it.tools[n][0] for n in ("relief", "action", "first")]
    if end == "done" and not it.rod_works:
        out[0] = 0.0   # no rod puts it right, and the neck is left as it is
    within = all(o <= s for o, s in zip(out, spare))
    # An edge is as wide as its reading is unsure, and the reading itself off by what the tool reads to.
    at_edge = all(o <= s + s / 3 ** 0.5 for o, s in zip(out, spare))
    low = [worst_under(action, it.action_band, bench.last_cut[0]),
           worst_under(first, it.first_band, bench.last_cut[1])]
    return Plain(number=number, kind=it.kind, end=end, visits=len(bench.readings), out=out,
                 in_range=max(out) <= 0, within=within,
                 well=at_edge if end == "done" else refused_rightly(it, end, out),
                 low=max(low), spoiled=any(o > s for o, s in zip(low, spare[1:])),
                 cuts=bench.cuts, past=bench.past, sets=bench.sets,
                 sets_past=bench.sets_past, finer=bench.finer, asked=bench.asked,
                 needless=bench.needless, slipped=it.slipped, refused=bench.refused,
                 again=bench.again)


def share(values):
    return float(np.mean(values)) if len(values) else float("nan")


def summed(rows, name):
    total = Counter()
    for row in rows:
        total.update(getattr(row, name))
    return total


def figures(rows):
    """What is held against a bound."""
    done = [r for r in rows if r.end == "done"]
    cuts, past = summed(rows, "cuts"), summed(rows, "past")
    return {"done": len(done) / len(rows), "in range": share([r.in_range for r in done]),
            "within the tools": share([r.within for r in done]),
            "ended well": share([r.well for r in rows]),
            "visits": float(np.median([r.visits for r in done])),
            "visits of 95 %": float(np.quantile([r.visits for r in done], 0.95)),
            "past": sum(past.values()) / sum(cuts.values()),
            "spoiled": share([r.spoiled for r in rows])}


def column(rows):
    """(what, figure) for each line of the table but why some are not done."""
    done = [r for r in rows if r.end == "done"]
    got, cuts, past = figures(rows), summed(rows, "cuts"), summed(rows, "past")
    visits = [r.visits for r in done]
    low = [r.low for r in rows if r.low > 0]
    lines = {"instruments": len(rows), "called done": f"{got['done']:.1%}",
             "of these truly in range": f"{got['in range']:.1%}"}
    for k, name in enumerate(("relief", "action, all strings", "gap at the 1st, all strings")):
        lines[f"- {name}"] = f"{share([r.out[k] <= 0 for r in done]):.1%}"
    lines["in range within what the tools read to"] = f"{got['within the tools']:.1%}"
    lines["in range to its edge's width, or rightly refused"] = f"{got['ended well']:.1%}"
    lines["slips of the pen"] = sum(len(r.slipped) for r in rows)
    lines["- refused as they were written, and read again"] = sum(r.refused for r in rows)
    lines["- doubted by the plan, and read again at once"] = sum(r.again for r in rows)
    lines["visits: middle, nine in ten, most"] = \
        f"{got['visits']:.0f}, {np.quantile(visits, 0.9):.0f}, {max(visits)}"
    for what, count in cuts.items():
        lines[f"cuts at the {what}, of these past the low edge"] = \
            f"{count}, {past[what] / max(1, count):.1%}"
    lines["all cuts, past the low edge"] = f"{sum(cuts.values())}, {got['past']:.1%}"
    sets, sets_past = summed(rows, "sets"), summed(rows, "sets_past")
    for what, count in sets.items():
        lines[f"sets of cuts at the {what} in one visit, with one past the low edge"] = \
            f"{count}, {sets_past[what] / max(1, count):.1%}"
    lines["left with a string truly under its low edge by a cut"] = len(low)
    lines["- by, in the middle and at most"] = \
        f"{np.median(low or [0]):.3f}, {max(low or [0]):.3f} mm"
    lines["- by more than the tools read to"] = sum(r.spoiled for r in rows)
    lines["strings to be worked, though truly in range"] = \
        f"{sum(r.needless for r in rows) / sum(r.asked for r in rows):.1%}"
    lines["a finer tool taken up"] = sum(r.finer > 0 for r in rows)
    for why, count in Counter(r.end for r in rows if r.end != "done").most_common():
        lines[f"not done: {why}"] = count
    return lines


def table(found):
    columns = [column(rows) for rows in found.values()]
    names = list(dict.fromkeys(name for lines in columns for name in lines))
    body = [[name, *(str(lines.get(name, 0)) for lines in columns)] for name in names]
    head = [["", *found], ["---"] * (len(found) + 1)]
    return "\n".join("| " + " | ".join(row) + " |" for row in head + body)


def judge(name, shop, rows):
    """What is not as it must be; and whoever has no end worth the name."""
    got, few = figures(rows), FEW if len(rows) < 200 else 0.0
    wrong = [f"{key}: {got[key]:.3f}, wanted at least {limit - few:g}"
             for key, limit in shop.least.items() if not got[key] >= limit - few]
    wrong += [f"{key}: {got[key]:.3f}, wanted at most {limit + few / 2:g}"
              for key, limit in shop.most.items() if not got[key] <= limit + few / 2]
    wrong += [f"instrument {r.number}: {r.end}" for r in rows
              if r.end.startswith(("no plan", "nothing to do: tool", "saddle", "nothing to dress"))]
    return [f"{name}: {line}" for line in wrong]


def true_u(half, step):
    """Of a reading off by up to half less half a step, rounded to the step: two rectangles."""
    return float(np.hypot((half - step / 2) / 3 ** 0.5, step / 12 ** 0.5))


def tools_found(program, folder, tools):
    """{tool: (pairs, u found, u true)}, of tools of which the shop has only one."""
    done = subprocess.run([program, "tools", folder, "--json"], capture_output=True, text=True,
                          check=False)
    found = json.loads(done.stdout)["tools"]
    return {name: (found[name]["pairs"], found[name]["u"], true_u(*choice[0]))
            for name, choice in tools.items() if len(set(choice)) == 1}


def judge_tools(name, found):
    """Found within 15 %, or within three of what so few pairs can tell."""
    return [f"{name}: {tool} reads to {u:.4f} by {pairs} pairs, in truth to {true:.4f}"
            for tool, (pairs, u, true) in found.items() if pairs >= 12
            and not abs(u / true - 1) <= max(0.15, 3 / (2 * (pairs - 1)) ** 0.5)]


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--program", default="build/sillet")
    parser.add_argument("--count", type=int, default=1000)
    parser.add_argument("--start", type=int, default=0, help="number of the first instrument")
    parser.add_argument("--seed", default="1")
    parser.add_argument("--keep", help="a folder that keeps the sheets")
    options = parser.parse_args()
    found, wrong, told, total = {}, [], [], 0
    with tempfile.TemporaryDirectory() as scratch, ThreadPoolExecutor(2) as two:
        for name, shop in SHOPS.items():
            folder = os.path.join(options.keep or scratch, name)
            os.makedirs(folder, exist_ok=True)
            share = shop.many if options.count >= MANY else shop.few
            numbers = range(options.start, options.start + int(options.count * share))
            found[name] = list(two.map(lambda n, f=folder, s=shop: one(options, f, n, s), numbers))
            wrong += judge(name, shop, found[name])
            proved = tools_found(options.program, folder, shop.tools)
            wrong += judge_tools(name, proved)
            for tool, (pairs, u, true) in proved.items():
                told.append(f"{name}: {tool} reads to u {u or 0:.4f} by {pairs} pairs, in truth {true:.4f}")
            total += len(proved)
            total += len(found[name]) + len(shop.least) + len(shop.most)
    print("\n".join([table(found), *told, *wrong]))
    print(f"{total - len(wrong)} passed, {len(wrong)} failed")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
