"""Numbers from nought up that explain what was measured with the least squares, exactly.

Given a positive definite matrix A and a vector b it finds x >= 0 with the least x'Ax/2 - b'x: the
one x for which Ax - b is nowhere below nought and is nought wherever x is above it. The places
where x is above nought are sought by exchanging all that are on the wrong side at once, and one by
one where that doesn't come nearer (block principal pivoting: Portugal, Judice and Vicente, A
comparison of block pivoting and interior-point algorithms, 1994). Everything is a fraction, so that
no tolerance is needed. Imports nothing of the project.
"""

from collections.abc import Sequence
from fractions import Fraction

Matrix = Sequence[Sequence[Fraction]]

MOST_AT_ONCE = 3
"""Exchanges of all at once that may fail to come nearer before it is done one by one."""


def least_squares(matrix: Matrix, wanted: Sequence[Fraction]) -> tuple[Fraction, ...]:
    """The x from nought up with the least x'Ax/2 - b'x.

    Raises ValueError where the matrix isn't positive definite.
    """
    number = len(wanted)
    above = set(range(number))
    fewest, patience = number + 1, MOST_AT_ONCE
    while True:
        found = _solved(matrix, wanted, above=sorted(above))
        wrong = _wrong(matrix, wanted, found=found, above=above)
        if not wrong:
            return found
        if len(wrong) < fewest:
            fewest, patience = len(wrong), MOST_AT_ONCE
        elif patience:
            patience -= 1
        else:
            wrong = wrong[-1:]
        above ^= set(wrong)


def _wrong(
    matrix: Matrix, wanted: Sequence[Fraction], *, found: Sequence[Fraction], above: set[int]
) -> list[int]:
    """The places on the wrong side: below nought, or at nought though more would be better."""
    wrong = []
    for at, row in enumerate(matrix):
        slope = sum((a * x for a, x in zip(row, found, strict=True)), -wanted[at])
        if (found[at] if at in above else slope) < 0:
            wrong.append(at)
    return wrong


def _solved(
    matrix: Matrix, wanted: Sequence[Fraction], *, above: Sequence[int]
) -> tuple[Fraction, ...]:
    """The least x where only these places may differ from nought, whatever their sign."""
    rows = [[*(matrix[at][other] for other in above), wanted[at]] for at in above]
    for step, row in enumerate(rows):
        if row[step] <= 0:
            raise ValueError("the matrix isn't positive definite")
        for lower in rows[step + 1 :]:
            times = lower[step] / row[step]
            if times:
                lower[step:] = [
                    b - times * a for a, b in zip(row[step:], lower[step:], strict=True)
                ]
    found = [Fraction(0)] * len(wanted)
    for step in range(len(above) - 1, -1, -1):
        row = rows[step]
        known = sum((row[at] * found[above[at]] for at in range(step + 1, len(above))), Fraction(0))
        found[above[step]] = (row[-1] - known) / row[step]
    return tuple(found)
