"""What a phone keeps of the table page, so that it opens with no signal.

The worker's text names every file with the digest of all of them: a new version is fetched whole
beside the old one, and takes its place only when it is all there.
"""

import json
from collections.abc import Mapping
from functools import cache
from hashlib import sha256
from importlib.resources import files
from typing import Any

PARTS = (
    *("board", "tally", "limits", "who", "entry", "store", "meeting", "element", "leaf"),
    *("drawing", "tapping", "table"),
)
"""The modules of the page, each after those that it needs."""
STATIC = (
    "look.css",
    "table.css",
    "font/hyperlegible.woff2",
    "icon.svg",
    *(f"table/{name}.js" for name in PARTS),
)
"""Below `/static/`; what the page needs and nothing else."""
ICONS = {180: "table/icon-180.png", 192: "table/icon-192.png", 512: "table/icon-512.png"}
"""Of the home screen, by their width in pixels."""


@cache
def static(name: str) -> bytes:
    """One of our own files."""
    return files("paradestate.web").joinpath("static", name).read_bytes()


def worker_text(page: str, *, address: str) -> str:
    """The service worker of one force's table page."""
    digest = sha256(page.encode())
    for name in (*STATIC, "table/worker.js"):
        digest.update(name.encode() + static(name))
    said = {
        "page": address,
        "files": [f"/static/{name}" for name in STATIC],
        "version": digest.hexdigest()[:16],
    }
    return f"const KEPT = {json.dumps(said)};\n{static('table/worker.js').decode()}"


def manifest(title: str, *, address: str) -> Mapping[str, Any]:
    """How the home screen is to show it (Web Application Manifest, W3C)."""
    return {
        "id": address,
        "name": f"Table: {title}",
        "short_name": title[:12],
        "start_url": address,
        "scope": address,
        "display": "standalone",
        "orientation": "portrait",
        "background_color": "#101518",
        "theme_color": "#101518",
        "icons": [
            {"src": f"/static/{name}", "sizes": f"{size}x{size}", "type": "image/png"}
            for size, name in ICONS.items()
            if size != APPLE
        ],
    }


APPLE = 180
"""The one that a page names for phones which don't look into the manifest."""
