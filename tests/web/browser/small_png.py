"""PNG files (ISO/IEC 15948) of few colours, so that pictures of pages stay small in the docs."""

import struct
import zlib
from collections.abc import Iterator

import numpy as np
import numpy.typing as npt

MOST_COLOURS = 32
SIGNATURE = b"\x89PNG\r\n\x1a\n"

Pixels = npt.NDArray[np.uint8]


def small_png(pixels: Pixels, *, most: int = MOST_COLOURS) -> bytes:
    """A picture of rows, columns and red, green, blue, in few of its colours: 32 at most.

    Those that are there most often are kept, and every other becomes the nearest of them.
    """
    height, width, _ = pixels.shape
    # as one number each, which is sorted far sooner than three
    packed = pixels.astype(np.uint32) @ np.array([1 << 16, 1 << 8, 1], np.uint32)
    found, places, numbers = np.unique(packed, return_inverse=True, return_counts=True)
    colours = np.stack([found >> 16, found >> 8 & 255, found & 255], axis=1)
    kept = colours[np.argsort(-numbers, kind="stable")[:most]].astype(np.int64)
    far = ((colours[:, None, :].astype(np.int64) - kept[None, :, :]) ** 2).sum(axis=2)
    rows = far.argmin(axis=1).astype(np.uint8)[places].reshape(height, width)
    plain = np.hstack([np.zeros((height, 1), np.uint8), rows])  # each row begins: no filter
    header = struct.pack(">IIBBBBB", width, height, 8, 3, 0, 0, 0)
    return b"".join(
        [
            SIGNATURE,
            *_chunk(b"IHDR", header),
            *_chunk(b"PLTE", kept.astype(np.uint8).tobytes()),
            *_chunk(b"IDAT", zlib.compress(plain.tobytes(), 9)),
            *_chunk(b"IEND", b""),
        ]
    )


def _chunk(kind: bytes, data: bytes) -> Iterator[bytes]:
    yield struct.pack(">I", len(data))
    yield kind
    yield data
    yield struct.pack(">I", zlib.crc32(kind + data))
