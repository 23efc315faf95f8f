# SPDX-License-Identifier: MIT
"""Drawings as a printer would put them, by poppler: where the ink lies."""
import subprocess

DPI = 600
HUNDRED = 100 / 25.4 * DPI  # pixels


def render(path, dpi=DPI):
    """Width, height and rows of grey of a file's first page."""
    raw = subprocess.run(["pdftoppm", "-r", str(dpi), "-gray", "-f", "1", "-l", "1", path],
                         capture_output=True, check=True).stdout
    width, height = (int(v) for v in raw.split(None, 3)[1:3])
    pixels = memoryview(raw)[len(raw) - width * height:]
    return width, height, pixels


def runs(dark):
    """The middles of the stretches of dark pixels."""
    middles, start = [], None
    for i, on in enumerate(list(dark) + [False]):
        if on and start is None:
            start = i
        elif not on and start is not None:
            middles.append((start + i - 1) / 2)
            start = None
    return middles


def ticks_every_ten(middles):
    """Whether eleven marks stand a tenth of the ruler apart, and how far it reaches."""
    for first in middles:
        reach = [min(middles, key=lambda m, at=first + k * HUNDRED / 10: abs(m - at))
                 for k in range(11)]
        if all(abs(m - first - k * HUNDRED / 10) <= 1.5 for k, m in enumerate(reach)):
            return reach[-1] - first
    return None


def check_rulers(report, path):
    """Lines cut across the long ticks: 2.9 mm over the level ruler, 2.3 mm inside the frame."""
    width, height, pixels = render(path)

    def row(y):
        return [pixels[y * width + x] < 128 for x in range(width)]

    def column(x):
        return [pixels[y * width + x] < 128 for y in range(height)]

    spans = [ticks_every_ten(runs(row(y))) for y in range(height - 1300, height - 1000, 4)]
    level = [s for s in spans if s is not None]
    frame = runs(row(height // 2))[0]
    upright = ticks_every_ten(runs(column(int(frame + 2.2 / 25.4 * DPI))))
    if not level or abs(level[0] - HUNDRED) > 1.5:
        report.wrong("level ruler, pixels", HUNDRED, level[:1])
    if upright is None or abs(upright - HUNDRED) > 1.5:
        report.wrong("upright ruler, pixels", HUNDRED, upright)
