"""The carry file: the table page of an evening as one file, with all that it needs in itself.

The scripts and the look are those of the table page; here they are only put together. Each module
becomes a function that is called once, so that what it keeps to itself stays its own.
"""

import json
import re
from base64 import b64encode
from collections.abc import Mapping
from functools import cache
from hashlib import sha256
from html import escape
from string import Template
from typing import Any

from paradestate.web.table.files import static

MODULES = (
    *("board.js", "tally.js", "limits.js", "who.js", "entry.js", "store.js", "passing.js"),
    *("element.js", "leaf.js", "drawing.js", "tapping.js", "giving.js", "lean-qr.mjs"),
    *("handing.js", "carry.js"),
)
"""Below `static/table/`, each after those that it needs."""
LICENCES = {
    "lean-qr 2.7.4": "table/lean-qr-licence.txt",
    "Atkinson Hyperlegible": "font/hyperlegible-licence.txt",
}
"""Of what others made and the file holds a copy of."""

IMPORT = re.compile(r'^import \{([^}]*)\} from "\./([\w.-]+)";\n', re.MULTILINE)
EXPORTED = re.compile(r"^export (?:async )?(?:function|class|const) (\w+)", re.MULTILINE)
EXPORT_LIST = re.compile(r"export\{([^}]*)\};?\s*\Z")
OTHER_FACE = re.compile(r'@font-face\{font-family:"Return Serif"[^}]*\}\n')
FACE = 'url(font/hyperlegible.woff2) format("woff2")'


def carry_file(content: Mapping[str, Any]) -> bytes:
    """The file for what `journeys.carry` says of a force and its games."""
    script, style = _script(), _style()
    return (
        Template(static("table/carry.html").decode())
        .substitute(
            policy=(
                f"default-src 'none'; script-src {_digest(script)}; style-src {_digest(style)}; "
                "font-src data:; base-uri 'none'; form-action 'none'"
            ),
            title=escape(content["title"]),
            made=escape(content["made"]),
            style=style,
            carried=_as_data(json.dumps(content, ensure_ascii=False, separators=(",", ":"))),
            licences=_as_data("\n\n".join(_licences())),
            script=script,
        )
        .encode()
    )


def _licences() -> tuple[str, ...]:
    return tuple(f"{name}\n\n{static(file).decode()}" for name, file in LICENCES.items())


def _as_data(text: str) -> str:
    """A text that can't end the element in which it stands, nor begin another."""
    return text.replace("<", "\\u003c")


@cache
def _script() -> str:
    """All modules as one script, which asks for nothing."""
    made = "".join(module_text(name, static(f"table/{name}").decode()) for name in MODULES)
    return f'"use strict";\nconst parts = {{}};\n{made}'


def module_text(name: str, text: str) -> str:
    """A module as a function that is called once, and hands out what it exports."""
    body = IMPORT.sub(lambda found: f'const {{{found[1]}}} = parts["{found[2]}"];\n', text)
    listed = EXPORT_LIST.search(body)
    if listed is None:
        exports = ", ".join(EXPORTED.findall(body))
        body = re.sub(r"^export ", "", body, flags=re.MULTILINE)
    else:
        pairs = (each.split(" as ") for each in listed[1].split(","))
        exports = ", ".join(f"{outside}: {inside}" for inside, outside in pairs)
        body = f"{body[: listed.start()]};\n"
    return f'parts["{name}"] = (() => {{\n{body}return {{{exports}}};\n}})();\n'


@cache
def _style() -> str:
    """The look of the table page, with its one face in it."""
    text = f"{static('look.css').decode()}\n{static('table.css').decode()}"
    face = b64encode(static("font/hyperlegible.woff2")).decode()
    return OTHER_FACE.sub("", text).replace(FACE, f"url(data:font/woff2;base64,{face})")


def _digest(text: str) -> str:
    """How a policy names a text that may stand in the page (W3C Content Security Policy)."""
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"
