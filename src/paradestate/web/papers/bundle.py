"""Papers in one file, in a folder for each sort of eyes: private, and what others may see.

The same papers give the same bytes: nothing in the file says when or where it was put together.
"""

import io
from collections.abc import Iterable
from zipfile import ZIP_STORED, ZipFile, ZipInfo

from paradestate.journeys.paper.one_paper import OnePaper

LONG_AGO = (1980, 1, 1, 0, 0, 0)
"""The first day that the format knows (APPNOTE 4.4.6)."""
READABLE = 0o644 << 16


def bundle(papers: Iterable[OnePaper]) -> bytes:
    """The papers as one file, each in the folder of those whose eyes it is for."""
    made = io.BytesIO()
    with ZipFile(made, "w", compression=ZIP_STORED) as file:  # a PDF is packed already
        for paper in papers:
            if paper.sheet is not None:
                path = f"{paper.kind.eyes.value}/{paper.sheet.file_name}"
                entry = ZipInfo(path, date_time=LONG_AGO)
                entry.external_attr = READABLE
                file.writestr(entry, paper.sheet.printed.pdf)
    return made.getvalue()
