# SPDX-License-Identifier: MIT
"""What many sheets at once cost, over the bare libyaml reader on the same files, and whether memory
grows with them. The sheets are those of examples/, again and again under other references."""
import glob
import os
import resource
import subprocess

BARE = os.path.abspath("build/bench/bare_yaml")
SILLET = os.path.abspath("build/sillet")


def write(folder, count):
    """A folder of so many sheets; their paths."""
    texts = []
    for path in sorted(glob.glob("examples/*.yaml")):
        with open(path, encoding="utf-8") as file:
            texts.append(file.read())
    os.mkdir(folder)
    paths = [os.path.join(folder, f"{k:05}.yaml") for k in range(count)]
    for k, path in enumerate(paths):
        with open(path, "w", encoding="utf-8") as file:
            file.write(texts[k % len(texts)].replace("ref: 26-", f"ref: {k:05}-"))
    return paths


def seconds(*commands):
    """Processor time of each of these, the best of seven runs. They run in turn, because a machine
    with neighbours is half as fast again in one minute as in the next."""
    best = [float("inf")] * len(commands)
    for _ in range(7):
        for k, command in enumerate(commands):
            before = resource.getrusage(resource.RUSAGE_CHILDREN)
            subprocess.run(command, stdout=subprocess.DEVNULL, check=True)
            after = resource.getrusage(resource.RUSAGE_CHILDREN)
            spent = after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime
            best[k] = min(best[k], spent)
    return best


def rows(folder, instructions, peak_mib, row):
    """The benchmark's rows; the functions are the benchmark's own."""
    # Names are read 256 at a time: memory is steady from there on.
    hundred, more, most = (os.path.join(folder, name) for name in ("hundred", "more", "most"))
    files = {place: write(place, count) for place, count in ((hundred, 100), (more, 300), (most, 10000))}

    def each(*command):
        """Instructions a sheet: starting up and loading taken away."""
        few, lot = (instructions(*command, *(files[place] if command[0] == BARE else [place]))
                    for place in (hundred, more))
        return (lot - few) / (len(files[more]) - len(files[hundred]))

    def steady_mib(*command):
        """Peak memory where the system lays every process alike; else it moves by a tenth."""
        return peak_mib("setarch", "-R", *command)

    ways = (["plan"], 10), (["plan", "--json"], 12)
    bare, *times = seconds([BARE, *files[most]], *([SILLET, *words, most] for words, _ in ways))
    yardstick = each(BARE)
    print(f"10000 sheets: {bare:.2f} s of processor time read bare by libyaml, {yardstick:.0f} "
          "instructions a sheet\n")
    made = []
    # As JSON a sheet of two thousand bytes gives twenty-five thousand: that is what the rest goes into.
    for (words, bound), time in zip(ways, times):
        name = " ".join(words)
        made += [
            row(f"{name}, 10000 sheets, over libyaml on the same files, time",
                time / bare, bound, "x"),
            row(f"{name}, the same in instructions a sheet",
                each(SILLET, *words) / yardstick, bound, "x"),
            row(f"{name}, peak memory of 10000 sheets over that of 300",
                steady_mib(SILLET, *words, most) / steady_mib(SILLET, *words, more), 1.05, "x"),
        ]
    return made
