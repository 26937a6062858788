"""The world failing while files are read or written.

Exception
FileError    a file or folder can't be read or written; says which and why
"""


class FileError(Exception):
    """A file or folder can't be read or written."""
