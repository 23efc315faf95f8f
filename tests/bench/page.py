# SPDX-License-Identifier: MIT
"""What the page costs: plans a second over a hundred connections, held against a libmicrohttpd
program that answers as many bytes, always the same; and its memory over many requests. Both run on
this machine's own address; the loads alternate, so that what else runs weighs on both alike."""
import os
import re
import signal
import subprocess

CONNECTIONS = "100"


def load(port, requests, target, sheet):
    """Requests a second, 99th percentile in ms, bytes of an answer."""
    told = subprocess.run(["build/bench/load", str(port), CONNECTIONS, str(requests), target, sheet],
                          capture_output=True, text=True, check=True).stdout.split()
    return float(told[0]), float(told[1]), int(told[2])


def resident_mib(process):
    with open(f"/proc/{process.pid}/status", encoding="ascii") as status:
        return int(re.search(r"VmRSS:\s+(\d+)", status.read()).group(1)) / 1024


def rows(folder, sheet, row):
    """The benchmark's rows; row is the benchmark's own."""
    page = subprocess.Popen(["build/sillet", "serve", "--port", "0", "--folder", folder],
                            stdout=subprocess.PIPE, text=True)
    port = int(re.search(r":(\d+)/", page.stdout.readline()).group(1))
    size = load(port, 2000, "/plan", sheet)[2]
    bare = subprocess.Popen(["build/bench/bare_http", str(size)], stdin=subprocess.PIPE,
                            stdout=subprocess.PIPE, text=True)
    bare_port = int(bare.stdout.readline())
    load(bare_port, 2000, "/", sheet)
    plans, constants = [], []
    for _ in range(5):
        plans.append(load(port, 4000, "/plan", sheet))
        constants.append(load(bare_port, 20000, "/", sheet))
    plan, constant = sorted(plans)[2], sorted(constants)[2]
    before = resident_mib(page)
    requests = int(os.environ.get("REQUESTS", "100000"))
    load(port, requests, "/plan", sheet)
    grown = resident_mib(page) - before
    page.send_signal(signal.SIGINT)
    page.wait()
    bare.communicate("\n")
    print(f"\n{sheet}, {CONNECTIONS} connections: {plan[0]:.0f} plans a second, 99 % within "
          f"{plan[1]:.1f} ms; a constant of {size} bytes {constant[0]:.0f} a second, 99 % within "
          f"{constant[1]:.1f} ms\n")
    return [row("a constant's requests a second over the plans'", constant[0] / plan[0], 30, "x"),
            row("a plan's 99th percentile over a constant's", plan[1] / constant[1], 30, "x"),
            row(f"memory grown by over {requests} requests", grown, 4, "MiB")]
