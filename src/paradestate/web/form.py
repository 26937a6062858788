"""What a form sent: texts and files, all of bounded number and length."""

import asyncio
import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from starlette.datastructures import UploadFile
from starlette.exceptions import HTTPException
from starlette.requests import ClientDisconnect, Request

from paradestate.web.guard import MOST_BYTES
from paradestate.web.token import COOKIE, FIELD, is_token

MOST_FIELDS = 2_000
MOST_FILES = 10
MOST_SECONDS = 60.0
"""For all of it to come in; who sends more slowly than that keeps others waiting."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Upload:
    """A file that was sent."""

    name: str
    """As the sender calls it; never to be used as a path."""
    data: bytes


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """The fields of a form, in their order; of several with one name the last counts."""

    texts: Mapping[str, str] = field(default_factory=dict)
    files: Mapping[str, Upload] = field(default_factory=dict)
    every: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """All values of each field, for boxes that are ticked."""

    def text(self, name: str, default: str = "") -> str:
        """The text of a field without blanks around it; a field that wasn't sent is the default."""
        return self.texts.get(name, default).strip()

    def file(self, name: str) -> Upload | None:
        """A file that was chosen; None where none was."""
        return self.files.get(name)


async def posted_form(request: Request, *, secret: bytes) -> Form:
    """The form of a request. Raises HTTPException where it can't be read or isn't ours."""
    if not _is_utf8(request.headers.get("content-type", "")):
        raise HTTPException(400, "Only forms in UTF-8 are read. Nothing was changed.")
    try:
        async with asyncio.timeout(MOST_SECONDS):
            fields = await request.form(
                max_files=MOST_FILES, max_fields=MOST_FIELDS, max_part_size=MOST_BYTES
            )
    except TimeoutError:
        raise HTTPException(408, "The form came too slowly. Nothing was changed.") from None
    except ClientDisconnect:
        raise HTTPException(400, "The form broke off. Nothing was changed.") from None
    texts: dict[str, list[str]] = {}
    files: dict[str, Upload] = {}
    for name, value in fields.multi_items():
        if isinstance(value, UploadFile):
            if value.filename:
                files[name] = Upload(name=value.filename, data=await value.read())
        else:
            texts.setdefault(name, []).append(value.replace("\r\n", "\n"))
    await fields.close()
    token = texts.pop(FIELD, [""])[-1]
    if not is_token(token, cookie=request.cookies.get(COOKIE, ""), secret=secret):
        raise HTTPException(
            403,
            "This form was made before the program was started again, or in another browser. "
            "Nothing was changed: go back, load the page anew, and send it again.",
        )
    return Form(
        texts={name: values[-1] for name, values in texts.items()},
        files=files,
        every={name: tuple(values) for name, values in texts.items()},
    )


def _is_utf8(content_type: str) -> bool:
    """Whether a form is sent as every page here has it sent: other signs aren't made of bytes."""
    named = re.findall(r"charset\s*=\s*\"?([^\s;\"]*)", content_type, re.IGNORECASE)
    return all(name.lower() in {"utf-8", "utf8"} for name in named) and (
        bool(named) or "charset" not in content_type.lower()
    )
