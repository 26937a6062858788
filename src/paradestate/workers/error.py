"""What can go wrong with workers.

WorkersError
"""


class WorkersError(Exception):
    """Workers can't be reached, or were lost again and again over the same questions."""
