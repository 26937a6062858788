"""The solver failing.

Exception
  SolverError    the solver broke down, or its answer doesn't stand up to the plain check
"""


class SolverError(Exception):
    """The solver broke down, or gave an answer that the plain check refuses."""
