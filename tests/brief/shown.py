# SPDX-License-Identifier: MIT
"""How a figure is to be shown: rounded in decimal arithmetic, independently of the program. A cut is
rounded down and a place to stop at up, since wood does not go back on."""
import math
import re
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal
from fractions import Fraction

DOWN, UP, NEAREST = ROUND_FLOOR, ROUND_CEILING, ROUND_HALF_UP
INCH = Decimal("25.4")


def unknown(value):
    return value is None or math.isnan(value)


def without_idle(rows):
    """The rows of a table, whose cells are words or lists of words, without the columns of dashes alone."""
    kept = [k for k in range(len(rows[0])) if any(row[k] not in ("-", ["-"]) for row in rows)]
    return [[word for k in kept for word in (row[k] if isinstance(row[k], list) else [row[k]])] for row in rows]


class Either(str):
    """A figure half way between two: whoever reckons in another order may find the other one."""

    def __new__(cls, figure, other):
        made = super().__new__(cls, figure)
        made.other = other
        return made

    def __eq__(self, told):
        return str(told) in (str(self), self.other)

    __hash__ = str.__hash__


def rounded(value, places, way=NEAREST):
    """A number to so many places; "-" for none. One that is whole but for rounding stays so."""
    if unknown(value):
        return "-"
    steps, nudge = Decimal(value).scaleb(places), Decimal("1e-7")
    if way is not NEAREST:
        return written((steps + (nudge if way is DOWN else -nudge)).to_integral_value(way), places)
    less, more = (written((steps + by).to_integral_value(NEAREST), places)
                  for by in (-nudge, nudge))
    return less if less == more else Either(more, less)


def written(steps, places):
    figure = f"{steps.scaleb(-places):.{places}f}"
    return figure[1:] if float(figure) == 0 and figure.startswith("-") else figure


def shown(value, way, unit):
    """A length as a bench reads it: hundredths of a millimetre, thousandths of an inch; halves of one under
    ten of them, tenths of one under half of one."""
    if unknown(value):
        return "-"
    mm = Decimal(repr(round(value, 9)))
    if unit == "mm":
        return rounded(mm, 2, way)
    thou, edge = abs(mm / INCH * 1000), Decimal("1e-6")
    if thou >= 10 - edge:
        return rounded(mm / INCH, 3, way)
    return halves(mm, way) if thou >= Decimal("0.5") - edge else trimmed(rounded(mm / INCH, 4, way))


def halves(mm, way):
    """Of an inch to half a thousandth."""
    def half(figure):
        return trimmed(f"{Decimal(figure) / 2:.4f}")

    twice = rounded(mm / INCH * 2, 3, way)
    return Either(half(str(twice)), half(twice.other)) if isinstance(twice, Either) else half(twice)


def trimmed(figure):
    """Without the tenth of a thousandth where there is none."""
    cut = [text[:-1] if text.endswith("0") else text for text in
           ([str(figure), figure.other] if isinstance(figure, Either) else [figure])]
    return Either(*cut) if len(cut) == 2 else cut[0]


def gauge(value, unit):
    """A string's gauge, to half a thousandth of an inch."""
    return shown(value, NEAREST, unit) if unit == "mm" or unknown(value) else halves(Decimal(repr(round(value, 9))), NEAREST)


def limits(upper, lower, unit):
    """How far a part may be off a figure: 0, or a length with its sign."""
    told = [shown(mm, NEAREST, unit) if mm else "0" for mm in (upper, lower)]
    return f"{'+' if upper > 0 else ''}{told[0]}/{told[1]}"


def size(value, unit):
    """A length for which a tenth of a millimetre says enough."""
    return rounded(value, 1) if unit == "mm" or unknown(value) else rounded(value / 25.4, 2)


def radius(value, unit):
    return rounded(value, 0) if unit == "mm" or unknown(value) else rounded(value / 25.4, 1)


def spelled_out(sentence):
    """A sentence with every string of a run named, and with a figure of both ends at each."""
    def run(found):
        return re.sub(r"(\d+) to (\d+)", lambda ends: ", ".join(
            str(n) for n in range(int(ends[1]), int(ends[2]) + 1)), found[0])

    sentence = re.sub(r"\b[Ss]trings? (?:\d+(?!\d|\.\d)(?: to \d+(?!\d|\.\d))?(?:, | and )?)+", run, sentence)
    return re.sub(r"(\S+ (?:mm|in)) at both ends", r"\1 at the treble end and \1 at the bass end", sentence)


def sixty_fourths(mm):
    """On a rule in 64ths of an inch, in its lowest terms; "-" where it shows nothing."""
    marks = 0 if unknown(mm) else math.floor(mm / 25.4 * 64 + 0.5)
    return str(Fraction(marks, 64)) if marks > 0 else "-"


def on_a_rule(words, count):
    """The sentence about a rule in 64ths: what it gives each string now, and of its target ("-" where it
    gives nothing); None where there is no such sentence."""
    told = re.search(r"On a rule in 64ths the action now is ([^.;]*); its target is ([^.]*)\.", words)
    if not told:
        return None

    def marks(part):
        each = ["-"] * count
        some = r"(\d+(?:/\d+)?) on (all strings|the string|strings? \d+(?:(?:, | and | to )\d+(?!\d|/| on))*)"
        for mark, which in re.findall(some, part):
            named = [int(n) for n in re.findall(r"\d+", spelled_out(which))] or range(1, count + 1)
            for string in named:
                each[string - 1] = mark
        return each
    return [marks(part) for part in told.groups()]


def action(mm, unit):
    """An action on paper: in inches with what a rule in 64ths shows of it."""
    figure = shown(mm, NEAREST, unit)
    marks = f" ({sixty_fourths(mm)})"
    if unit == "mm" or marks == " (-)":
        return figure
    return Either(figure + marks, figure.other + marks) if isinstance(figure, Either) else figure + marks


def eighths(turns):
    """Turns of a screw as a hand counts them, to the nearest eighth; under half of one "<1/8"."""
    count = math.floor(8 * abs(turns) + 0.5 + 1e-9)
    whole, rest = divmod(count, 8)
    if count == 0:
        return "<1/8"
    of = 8
    while rest and rest % 2 == 0:
        rest, of = rest // 2, of // 2
    return "-".join(([str(whole)] if whole else []) + ([f"{rest}/{of}"] if rest else []))
