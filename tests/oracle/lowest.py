# SPDX-License-Identifier: MIT
"""The lowest clean setup as one joint linear programme, solved by HiGHS.

Unknowns: relief over the fret where it is told (it stands for the bend), then each string's height
at nut and saddle. Everything asked is linear in them.
"""
import math

import numpy as np
from scipy.optimize import linprog
from scipy.sparse import csr_matrix

import tone

TIGHT = {"primal_feasibility_tolerance": 1e-10, "dual_feasibility_tolerance": 1e-10}
SLACK = 1e-9    # mm of mean action within which two setups are as low as each other


class Programme:
    """rows @ v >= least, 0 <= relief <= most_relief, mean action = goal @ v + rest."""

    def __init__(self, board, job, tension, off):
        self.board, self.count = board, job.count
        self.span = board.span(job.readings.relief.at) if board.join >= 3 else math.inf
        self.flat = tone.crown_table(board, _state(0.0, off))
        # Crowns move with the relief by this much for a millimetre of it.
        self.lean = np.array([[0.0] + [-board.span_at(x) / self.span for x in places[1:]]
                              for places in board.place])
        self.rows, self.least = [], []
        for i in range(job.count):
            self.first(i, job.limits.least_first)
            for k in range(board.frets):
                self.notes(i, k, tone.unit_depths(board, tension[i], job.attack.at, i, k)
                           * job.attack.force[i])
        self.rows, self.least = np.array(self.rows), np.array(self.least)
        self.goal, self.rest = self.mean_action()
        most = job.limits.most_relief if board.join >= 3 else 0.0
        self.bounds = [(0, most)] + [(None, None)] * (2 * job.count)

    def over(self, i, n, low, share):
        """Gap over crown n of a line `share` of the way from `low` to the saddle.

        `low`: (fret 0 is the nut).
        """
        row, rest = np.zeros(1 + 2 * self.count), -self.flat[i, n]
        row[0] = -self.lean[i, n]
        row[2 + 2 * i] = share
        if low == 0:
            row[1 + 2 * i] = 1 - share
        else:
            row[0] += (1 - share) * self.lean[i, low]
            rest += (1 - share) * self.flat[i, low]
        return row, rest

    def notes(self, i, k, depths):
        x, end = self.board.x[i], self.board.end[i]
        for n, depth in zip(range(k + 1, self.board.frets + 1), depths):
            row, rest = self.over(i, n, k, (x[n] - x[k]) / (end - x[k]))
            self.rows.append(row)
            self.least.append(depth - rest)

    def first_row(self, i):
        part = self.board.x[i, 1] / self.board.x[i, 3]
        row = np.zeros(1 + 2 * self.count)
        row[1 + 2 * i] = 1 - part
        row[0] = part * self.lean[i, 3] - self.lean[i, 1]
        return row, part * self.flat[i, 3] - self.flat[i, 1]

    def first(self, i, least):
        row, rest = self.first_row(i)
        self.rows.append(row)
        self.least.append(least - rest)

    def action_row(self, i):
        return self.over(i, 12, 0, self.board.x[i, 12] / self.board.end[i])

    def mean_action(self):
        each = [self.action_row(i) for i in range(self.count)]
        return (sum(row for row, _ in each) / self.count,
                sum(rest for _, rest in each) / self.count)

    def solve(self, goal, rows=None, least=None, bounds=None):
        rows = self.rows if rows is None else rows
        least = self.least if least is None else least
        done = linprog(goal, A_ub=csr_matrix(-rows), b_ub=-least, bounds=bounds or self.bounds,
                       method="highs", options=TIGHT)
        assert done.status == 0, done.message
        return done.x

    def as_low_as(self, mean):
        """The programme's rows and one more: no higher a mean action than this."""
        return np.vstack([self.rows, -self.goal]), np.append(self.least, self.rest - mean)

    def mean_of(self, v):
        return float(self.goal @ v) + self.rest

    def heights(self, relief, strings):
        """The unknowns from a result's figures."""
        v = np.zeros(1 + 2 * self.count)
        v[0] = relief
        for i, s in enumerate(strings):
            row, rest = self.first_row(i)
            v[1 + 2 * i] = (s["first_held3"] - rest - row[0] * relief) / row[1 + 2 * i]
            row, rest = self.action_row(i)
            v[2 + 2 * i] = (s["action"] - rest - row @ v) / row[2 + 2 * i]
        return v

    def short(self, v):
        """By how much the worst of what is asked is missed; in mm."""
        low, high = self.bounds[0]
        return max(float(np.max(self.least - self.rows @ v)), low - v[0], v[0] - high)


def _state(bend, off):
    return tone.Plain(bend=bend, off=off)


def asked(board, tension, force):
    """Whether there is a lowest setup at all: a pick to hold to, and every tension."""
    return board.frets >= 3 and not any(math.isnan(t + f) for t, f in zip(tension, force))


def problems(board, job, tension, off, got):
    """What is wrong with the answer of a program, as (place, wanted, got)."""
    programme = Programme(board, job, tension, off)
    v = programme.heights(got["relief"], got["strings"])
    best = programme.mean_of(programme.solve(programme.goal))
    mean, short, wrong = programme.mean_of(v), programme.short(v), []
    if not short <= 1e-9:
        wrong.append(("every note clean", "missed by at most 1e-9", short))
    if not abs(mean - best) <= 1e-6:
        wrong.append(("mean action", best, mean))
    if wrong:
        return wrong
    return least_relief(programme, best, v) + lowest_nuts(programme, v)


def least_relief(programme, best, v):
    """Of equal means the least relief; where that is hard to tell apart, within what it can be."""
    goal = np.zeros(len(v))
    goal[0] = 1.0
    # Best is known to the solver's tolerance only: a setup a hair lower is always as low.
    low, high = (programme.solve(goal, *programme.as_low_as(best + slack))[0]
                 for slack in (1e-7, SLACK))
    return [] if low - 1e-4 <= v[0] <= high + 1e-4 else [("relief", (low, high), v[0])]


def lowest_nuts(programme, v):
    """At that relief, the lowest nut under each string among the lowest actions."""
    held = [(v[0], v[0])] + programme.bounds[1:]
    goal = np.zeros(len(v))
    goal[1::2] = 1.0
    mean = programme.mean_of(v)
    lowest = [programme.solve(goal, *programme.as_low_as(mean + slack), bounds=held)[1::2].sum()
              for slack in (1e-7, SLACK)]
    total = v[1::2].sum()
    return [] if lowest[0] - 1e-5 <= total <= lowest[1] + 1e-5 else [("nuts", lowest, total)]
