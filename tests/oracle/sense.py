# SPDX-License-Identifier: MIT
"""What no part can be: which of the figures worked out for nut and saddle are left out, and whether
the part waits for them."""
import numpy as np

EDGE = 1e-6
NONE = 1e-3         # a height under this is none, mm
OVER_BOARD = 4.0    # most that a slot's floor stands over the board, mm


def under(values, low):
    return np.array(values) < low - EDGE    # what is not known is not


def slots(floor, stack):
    """Which slots have a floor under the nut's bottom, or one that is not over the board."""
    return under(floor, NONE) | under(stack, NONE) | under(-np.array(stack), -OVER_BOARD)


def level(stops, row):
    """A stopped saddle that would come to stand under the bridge's top is level with it."""
    if stops and under(row["protrusion"], 0.0):
        if row["goal"] > row["stands_out"]:
            row["goal"] = row["stands_out"]
        row.update(height=row["height"] - row["protrusion"], protrusion=0.0, in_slot=1.0,
                   break_angle=np.nan)


def seat(row):
    """Whether a string's place on the saddle cannot be; what follows from it is then left out."""
    share = row["in_slot"]
    cannot = under(row["present"], NONE) or under(row["height"], NONE) or under(row["stands_out"], 0.0) \
        or under(row["protrusion"], 0.0) or under(share, 0.0) or under(-share, -1.0)
    if cannot:
        row.update(dict.fromkeys(("present", "stands_out", "height", "protrusion", "in_slot",
                                  "break_angle", "goal", "room"), np.nan))
    return bool(cannot)


def on_fret(gap):
    """A gap under 0 is one at or under."""
    return 0.0 if gap < 0 else gap


def over(action):
    """No string lies under the frets: no height follows from such a forecast."""
    return np.nan if under(action, 0.0) else max(action, 0.0)
