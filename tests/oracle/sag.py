# SPDX-License-Identifier: MIT
"""A bridge in one piece whose middle has sagged, said again from docs/arithmetic.md, "The saddle": an inner
string's notch under the straight line through those of the outer strings, its own way to the target taken
off. What is least is common practice, no source."""
import math

import parts

LEAST, UNCERTAINTIES = 0.15, 4.0  # mm, standard uncertainties


def in_one_piece(saddle):
    return parts.on_posts(saddle) or saddle.kind == "floating"


def sags(job, z, rows):
    """{string: by how much} of those that sag, by where they cross the saddle and its rows, with the way to the
    target of each."""
    if not in_one_piece(job.saddle) or job.standing.saddle_odd:
        return {}
    lower = [row["lower"] for row in rows]
    told = {}
    for i in range(1, job.count - 1):
        ends = lower[0], lower[-1], lower[i], rows[i]["lower_u"]
        if any(one is None or math.isnan(one) for one in ends) or job.standing.action_odd[i]:
            continue
        share = (z[0] - z[i]) / (z[0] - z[-1])
        under = lower[0] + (lower[-1] - lower[0]) * share - lower[i]
        if under > max(LEAST, UNCERTAINTIES * rows[i]["lower_u"]) + 1e-9:
            told[i + 1] = under
    return told
