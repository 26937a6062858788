"""A journal that can't be opened, read or written.

Exception
  StoreError            can't be opened, read or written: the disk, the folder, the server
    LockedError         another program has it, and didn't let go in time
    LaterVersionError   it was written by a later version
    OtherTextError      an entry of this id is there with another text
"""


class StoreError(Exception):
    """A journal can't be opened, read or written; says what that means and what to do."""


class LockedError(StoreError):
    """Another program is writing, and didn't end in time."""


class LaterVersionError(StoreError):
    """The journal was written by a version that is later than this one."""


class OtherTextError(StoreError):
    """An entry of this id is there already, with another text."""
