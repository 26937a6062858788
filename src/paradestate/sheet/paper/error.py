"""The typesetting library failing.

Exception
  TypesettingError   a page can't be set, or says that something on it is amiss
"""


class TypesettingError(Exception):
    """The library refuses a template, or warns of it."""
