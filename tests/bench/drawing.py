# SPDX-License-Identifier: MIT
"""What drawing costs, over a bare libharu program that embeds the same face and puts as many marks
on as many pages. The marks are counted in the drawing's own file."""
import os
import subprocess
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.dirname(os.path.abspath(__file__))), "drawing"))
sys.dont_write_bytecode = True
import pdf

FACE = "/usr/share/fonts/truetype/osifont/osifont.ttf"


def marks(path):
    """PAGES PATHS LINES CURVES TEXTS LETTERS of a drawing."""
    pages = pdf.read(path)

    def of(*operators):
        return sum(page.operators.get(name, 0) for page in pages for name in operators)

    letters = sum(len(text) for page in pages for _, _, text in page.texts)
    return [str(n) for n in (len(pages), of("m"), of("l"), of("c"), of("Tj"), letters)]


def rows(folder, sheet, instructions, peak_mib, row):
    """The benchmark's rows; the functions are the benchmark's own."""
    out, bare = os.path.join(folder, "drawn.pdf"), os.path.join(folder, "bare.pdf")
    draw = ["build/sillet", "draw", sheet, "-o", out]
    subprocess.run(draw, check=True)
    counted = marks(out)
    yardstick = instructions("build/bench/bare_pdf", bare, FACE, *counted)
    # sillet starts and hands over to the program that draws: both count.
    drawn = instructions("build/sillet", "--version") + instructions(
        "build/sillet-draw", sheet, "-o", out)
    print(f"{sheet}: {' '.join(counted)} pages, paths, lines, curves, texts, letters; {yardstick} "
          f"instructions put by libharu alone, {drawn} drawn\n")
    return [row("draw over a bare libharu program with as many marks", drawn / yardstick, 1.3, "x"),
            row("peak memory of draw", peak_mib(*draw), 16, "MiB")]
