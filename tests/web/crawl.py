"""Every request that a browser could send from the pages: each link followed, each form filled in.

What is added to a page later is found without being named here.
"""

from collections import deque
from collections.abc import Iterator, Sequence
from html.parser import HTMLParser
from urllib.parse import urldefrag, urlencode, urljoin

from tests.web.asking import Asking
from tests.web.mutation import Sent

MOST_OF_ONE_KIND = 20
"""Links that differ in their query alone, such as that of each stand: a few stand for all."""

BOUNDARY = "x"
URL_ENCODED = b"application/x-www-form-urlencoded"
MULTIPART = b"multipart/form-data; boundary=" + BOUNDARY.encode()

Fields = list[tuple[str, str]]


class _Reader(HTMLParser):
    """The links and forms of a page."""

    def __init__(self) -> None:
        super().__init__()
        self.links: list[str] = []
        self.forms: list[tuple[str, str, Fields]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        found = {name: value or "" for name, value in attrs}
        self.links.extend(
            found[name] for name in ("href", "src", "hx-get", "sse-connect") if name in found
        )
        if tag == "form":
            self.forms.append((found.get("method", "get"), found.get("action", ""), []))
        elif "name" in found and self.forms and tag in {"input", "select", "textarea", "button"}:
            self.forms[-1][2].append((found["name"], found.get("value", "1")))


def crawled(asking: Asking, *, starts: Sequence[str] = ("/",)) -> list[Sent]:
    """The requests of every page that is reached from these, with the cookies it was given."""
    waiting, seen = deque(starts), set(starts)
    gets: list[str] = []
    posts: dict[str, Sent] = {}
    kinds: dict[str, int] = {}
    while waiting:
        target = waiting.popleft()
        answer = asking.get(target)
        gets.append(target)
        page = urljoin(target, answer.header("location")) if answer.header("location") else ""
        reader = _Reader()
        if answer.header("content-type").startswith("text/html"):
            reader.feed(answer.text)
        for method, action, fields in reader.forms:
            if method.lower() == "post":
                key = action + str([name for name, _ in fields])
                posts.setdefault(key, _post(action, _url_encoded(fields)))
                posts.setdefault(f"{key} in parts", _post(action, _in_parts(fields)))
        for link in [*reader.links, page]:
            found = urldefrag(urljoin(target, link)).url
            kind = found.partition("?")[0]
            is_new = found not in seen and kinds.get(kind, 0) < MOST_OF_ONE_KIND
            if is_new and found.startswith("/") and not found.startswith("//"):
                seen.add(found)
                kinds[kind] = kinds.get(kind, 0) + 1
                waiting.append(found)
    return [*(_get(target) for target in gets), *posts.values()]


def with_browser_headers(sent: Sequence[Sent], *, asking: Asking) -> tuple[Sent, ...]:
    """The same requests with what a browser would say of itself."""
    return tuple(
        Sent(
            method=each.method,
            target=each.target,
            headers=tuple(_browser(each, asking=asking)),
            body=each.body,
        )
        for each in sent
    )


def _browser(sent: Sent, *, asking: Asking) -> Iterator[tuple[bytes, bytes]]:
    yield b"host", asking.host.encode()
    yield b"origin", f"{asking.scheme}://{asking.host}".encode()
    yield b"accept-encoding", b"identity"
    yield b"cookie", "; ".join(f"{key}={value}" for key, value in asking.cookies.items()).encode()
    yield b"content-length", str(len(sent.body)).encode()
    if sent.method == "POST":
        yield b"content-type", MULTIPART if sent.body.startswith(b"--") else URL_ENCODED


def _get(target: str) -> Sent:
    return Sent(method="GET", target=target.encode("ascii", "replace"))


def _post(action: str, body: bytes) -> Sent:
    target, _, _ = action.partition("#")  # no browser sends the rest
    return Sent(method="POST", target=target.encode("ascii"), body=body)


def _url_encoded(fields: Fields) -> bytes:
    return urlencode(fields).encode()


def _in_parts(fields: Fields) -> bytes:
    """As a form with files is sent (RFC 7578)."""
    parts = [
        f'--{BOUNDARY}\r\nContent-Disposition: form-data; name="{name}"\r\n\r\n{value}\r\n'
        for name, value in fields
    ]
    return "".join([*parts, f"--{BOUNDARY}--\r\n"]).encode()
