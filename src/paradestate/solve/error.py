"""The solver failing.

Exception
  SolverError        the solver broke down, or its answer doesn't stand up to the plain check
    TooGreatError    a number is too great for the solver to be exact
"""


class SolverError(Exception):
    """The solver broke down, or gave an answer that the plain check refuses."""


class TooGreatError(SolverError):
    """A number is too great for the solver to be exact."""
