"""All that a file tells whoever looks into it: text, metadata, attachments, every stream."""

import io
import re
import zlib

import pypdfium2  # type: ignore[import-untyped]

from tests.sheet.paper.papers import opened

STREAM = re.compile(rb"stream\r?\n(.*?)\r?\nendstream", re.DOTALL)


def everything_in(pdf: bytes) -> str:
    """Whatever can be read out of a file by two libraries and by force, as one text."""
    parts = [pdf.decode("latin-1"), *_streams(pdf), *_plumbed(pdf), *_by_pdfium(pdf)]
    return "\n".join(parts)


def _streams(pdf: bytes) -> list[str]:
    """Every stream as it is, unpacked, in one-byte and in two-byte letters."""
    found = []
    for packed in STREAM.findall(pdf):
        try:
            data = zlib.decompress(packed)
        except zlib.error:
            data = packed
        found += [data.decode("latin-1"), data.decode("utf-16-be", "replace")]
    return found


def _plumbed(pdf: bytes) -> list[str]:
    """Text in drawing order, letter by letter, with what isn't drawn on the page itself."""
    with opened(pdf) as file:
        drawn = ["".join(char["text"] for char in page.chars) for page in file.pages]
        objects = [repr(page.annots) + repr(page.hyperlinks) for page in file.pages]
        return [*drawn, *objects, repr(file.metadata), repr(file.doc.catalog)]


def _by_pdfium(pdf: bytes) -> list[str]:
    document = pypdfium2.PdfDocument(io.BytesIO(pdf))
    texts = [page.get_textpage().get_text_range() for page in document]
    outline = [mark.get_title() for mark in document.get_toc()]
    attached = [
        document.get_attachment(number).get_name() for number in range(document.count_attachments())
    ]
    return [*texts, *outline, *attached, repr(document.get_metadata_dict())]


def number_of_attachments(pdf: bytes) -> int:
    """Files within the file."""
    return int(pypdfium2.PdfDocument(io.BytesIO(pdf)).count_attachments())
