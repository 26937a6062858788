"""Two versions of one file shown together, where another program has written it meanwhile."""

from paradestate.text.error import FileChangedError


def difference(error: FileChangedError) -> str:
    """What is there now and what was to be written, line by line."""
    from difflib import unified_diff

    lines = unified_diff(
        _lines(error.there or b""),
        _lines(error.mine),
        fromfile="there now",
        tofile="to be written",
        lineterm="",
    )
    return "\n".join(lines)


def _lines(data: bytes) -> list[str]:
    return data.decode("utf-8-sig", errors="replace").splitlines()
