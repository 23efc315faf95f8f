# SPDX-License-Identifier: MIT
"""Steel strings that are played: one is stretched over its frets, and its pitch found from a beam of
finite elements under tension. Nothing of the program's own model of strings is used."""
import math

import numpy as np
from scipy.linalg import eigh
from scipy.optimize import brentq

PIECES = 60   # of the beam; finest at the fret, where it bends within a millimetre


def element(h):
    """A piece of beam: what bends, what pulls and what is moved, for its two heights and two slopes."""
    bent = np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h * h, -6 * h, 2 * h * h],
                     [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h * h, -6 * h, 4 * h * h]]) / h ** 3
    pulled = np.array([[36, 3 * h, -36, 3 * h], [3 * h, 4 * h * h, -3 * h, -h * h],
                       [-36, -3 * h, 36, -3 * h], [3 * h, -h * h, -3 * h, 4 * h * h]]) / (30 * h)
    heavy = np.array([[156, 22 * h, 54, -13 * h], [22 * h, 4 * h * h, 13 * h, -3 * h * h],
                      [54, 13 * h, 156, -22 * h], [-13 * h, -3 * h * h, -22 * h, 4 * h * h]]) \
        * h / 420
    return bent, pulled, heavy


def pitch(tension, length, bending, mass):
    """The lowest pitch of a beam under tension, clamped at the fret, pinned at the saddle."""
    places = length * (np.arange(PIECES + 1) / PIECES) ** 2
    stiff = np.zeros((2 * PIECES + 2,) * 2)
    inert = np.zeros_like(stiff)
    for k, h in enumerate(np.diff(places)):
        bent, pulled, heavy = element(h)
        at = slice(2 * k, 2 * k + 4)
        stiff[at, at] += bending * bent + tension * pulled
        inert[at, at] += mass * heavy
    free = [n for n in range(2 * PIECES + 2) if n not in (0, 1, 2 * PIECES)]
    lowest = eigh(stiff[np.ix_(free, free)], inert[np.ix_(free, free)], eigvals_only=True,
                  subset_by_index=[0, 0])[0]
    return math.sqrt(lowest) / (2 * math.pi)


class String:
    """Of steel; what a tuner shows of it depends on where it leaves the saddle and how high."""

    def __init__(self, core, mass, hz):
        self.core, self.mass, self.hz = core / 1000, mass, hz   # m, kg/m

    def sharp(self, scale, setback, action, nut=0.5):
        """Cents of fret 12 over the octave; lengths in mm."""
        open_string, fret, high = (scale + setback) / 1000, scale / 2000, action / 1000
        area, bending = math.pi * self.core ** 2 / 4, 206e9 * math.pi * self.core ** 4 / 64

        def off(tension):
            return pitch(tension, open_string, bending, self.mass) - self.hz
        tension = brentq(off, 5, 400, xtol=1e-9)
        rise = 2 * high - nut / 1000
        rest = math.hypot(open_string, rise - nut / 1000)
        pressed = math.hypot(fret, nut / 1000) + math.hypot(open_string - fret, rise)
        tighter = tension + 206e9 * area * (pressed - rest) / rest
        sounding = pitch(tighter, math.hypot(open_string - fret, rise), bending, self.mass)
        return 1200 * math.log2(sounding / self.hz) - 1200


STEEL = [String(0.305, 0.000574, 329.63), String(0.406, 0.001016, 246.94),
         String(0.254, 0.00195, 196.00), String(0.330, 0.00338, 146.83),
         String(0.406, 0.00583, 110.00), String(0.457, 0.00950, 82.41)]
