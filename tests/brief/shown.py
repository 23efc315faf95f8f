# SPDX-License-Identifier: MIT
"""How a figure is to be shown: rounded in decimal arithmetic, independently of the program. A cut is
rounded down and a place to stop at up, since wood does not go back on."""
import math
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal

DOWN, UP, NEAREST = ROUND_FLOOR, ROUND_CEILING, ROUND_HALF_UP
INCH = Decimal("25.4")


def unknown(value):
    return value is None or math.isnan(value)


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
    """A length as a bench reads it: hundredths of a millimetre, thousandths of an inch."""
    if unknown(value):
        return "-"
    mm = Decimal(repr(round(value, 9)))
    if unit == "mm":
        return rounded(mm, 2, way)
    return rounded(mm / INCH, 4 if abs(mm) < Decimal("1.3") else 3, way)


def limits(upper, lower, unit):
    """How far a part may be off a figure: 0, or a length with its sign."""
    told = [shown(mm, NEAREST, unit) if mm else "0" for mm in (upper, lower)]
    return f"{'+' if upper > 0 else ''}{told[0]}/{told[1]}"


def size(value, unit):
    """A length for which a tenth of a millimetre says enough."""
    return rounded(value, 1) if unit == "mm" or unknown(value) else rounded(value / 25.4, 2)


def radius(value, unit):
    return rounded(value, 0) if unit == "mm" or unknown(value) else rounded(value / 25.4, 1)
