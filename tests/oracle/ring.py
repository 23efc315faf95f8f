# SPDX-License-Identifier: MIT
"""The least heights at which a string rings clean under the pick that the sheet chose.

Every gap is a straight line in the height, so two heights tell the height at which it is just enough.
"""
import math
from types import SimpleNamespace as Plain

import numpy as np

import tone

EDGE = 1e-6
SLOT = 4   # over crowns 1 to 4 the slot decides for the open string, past them the saddle


def just_enough(gap, needed):
    """The height at which every straight `gap(height)` reaches what is needed."""
    none, one = gap(0.0), gap(1.0)
    return float(np.max((needed - none) / (one - none)))


def sound(board, state):
    return Plain(**{**vars(state), "off": np.zeros_like(state.off)})


def saddle(board, job, state, i):
    """Notes fretted over sound crowns, and the open one past the first; NaN: nothing to hold to."""
    force, tension = job.attack.hold[i], job.tension[i]
    if math.isnan(force + tension + job.attack.at + state.bend + state.nut[i]):
        return math.nan
    level, least = sound(board, state), []
    crown = [board.crown(level.bend, level.off, i, n) for n in range(1, board.frets + 1)]
    for k in range(board.frets):
        low, x = state.nut[i] if k == 0 else crown[k - 1], board.x[i, k:board.frets + 1] - board.x[i, k]
        over, length = np.array(crown[k:]), board.end[i] - board.x[i, k]
        needed = force * tone.unit_depths(board, tension, job.attack.at, i, k)
        first = SLOT if k == 0 else 0

        def gap(end):
            return (low + (end - low) * x[1:] / length - over)[first:]
        if len(needed[first:]):
            least.append(just_enough(gap, needed[first:]))
    return max(least, default=math.nan)


def nut(board, job, state, i, action):
    """The open string over the first crowns, its action over fret 12 as it is to be."""
    force, tension = job.attack.hold[i], job.tension[i]
    if math.isnan(force + tension + job.attack.at + state.bend + action):
        return math.nan
    level = sound(board, state)
    last = min(SLOT, board.frets)
    crown = np.array([board.crown(level.bend, level.off, i, n) for n in range(1, last + 1)])
    high = action + board.crown(state.bend, state.off, i, 12)
    needed = force * tone.unit_depths(board, tension, job.attack.at, i, 0)[:last]

    def gap(low):
        return low + (high - low) * board.x[i, 1:last + 1] / board.x[i, 12] - crown
    return just_enough(gap, needed)
