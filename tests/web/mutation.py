"""Requests that are nearly right: what a browser would send, with something in it changed.

Not random bytes: those are refused at once and show nothing of what lies behind.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from hypothesis import strategies as st

HeaderList = tuple[tuple[bytes, bytes], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """A request as it goes over the wire."""

    method: str
    target: bytes
    """Path and query, still encoded."""
    headers: HeaderList = field(default=())
    body: bytes = b""


METHODS = ("GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "CONNECT", "ODD")

# What leads out of a folder, on any system and in any encoding that somebody might undo twice.
WAYS_OUT = (
    b"..",
    b"../secret.txt",
    b"../../secret.txt",
    b"%2e%2e/secret.txt",
    b"..%2fsecret.txt",
    b"..%252fsecret.txt",
    b"%2e%2e%5csecret.txt",
    b"..\\secret.txt",
    b"....//secret.txt",
    b"%c0%ae%c0%ae/secret.txt",
    b"/etc/passwd",
    b"%2fetc%2fpasswd",
    b"file:///etc/passwd",
    b"link-out.yaml",
    b"link-out/secret.txt",
    b"%00",
    b"force.yaml%00.txt",
    b".",
    b"%2e",
    b"~",
    b"CON",
    b"a" * 5000,
    b"%ff%fe",
    b"%F0%9F%92%A5",
    b"%e2%80%ae",
    b"%0d%0aX-Injected:%20yes",
    b"%",
    b"%zz",
    b";",
    b"//elsewhere.example/",
    b"journal.sqlite",
    b".git/config",
)

WORDS = (
    "",
    " ",
    "0",
    "-1",
    "1e400",
    "9" * 400,
    "NaN",
    "1/0",
    "\N{ARABIC-INDIC DIGIT THREE}",
    "true",
    "null",
    "../secret.txt",
    "/etc/passwd",
    "C:\\secret.txt",
    "\0",
    "\r\nX-Injected: yes",
    "<script>alert(1)</script>",
    "'; drop table entries; --",
    "{{ 7 * 7 }}",
    "${7*7}",
    "\ud800",
    "\N{RIGHT-TO-LEFT OVERRIDE}x",
    "&amp;",
    "[" * 2000,
    "{a: &a [*a, *a]}",
    "!!python/object/apply:os.system [id]",
    "2026-13-45",
    "0000-00-00",
    "9999-12-31T23:59:60Z",
    "x" * 70_000,
)

HEADERS: HeaderList = (
    (b"host", b"elsewhere.example"),
    (b"host", b""),
    (b"host", b"127.0.0.1:1"),
    (b"host", b"[::1"),
    (b"host", b"\xff\xfe"),
    (b"origin", b"null"),
    (b"origin", b"http://elsewhere.example"),
    (b"origin", b"\xff"),
    (b"referer", b"http://elsewhere.example/"),
    (b"sec-fetch-site", b"cross-site"),
    (b"cookie", b""),
    (b"cookie", b"=;=;;"),
    (b"cookie", b"a=" + b"b" * 8000),
    (b"cookie", b"\xff\xfe=\x01"),
    (b"content-type", b""),
    (b"content-type", b"application/json"),
    (b"content-type", b"text/plain"),
    (b"content-type", b"multipart/form-data"),
    (b"content-type", b"multipart/form-data; boundary="),
    (b"content-type", b"multipart/form-data; boundary=" + b"x" * 300),
    (b"content-type", b"multipart/form-data; boundary=x"),
    (b"content-type", b"application/x-www-form-urlencoded; charset=utf-7"),
    (b"content-type", b"\xff"),
    (b"content-length", b"0"),
    (b"content-length", b"-1"),
    (b"content-length", b"999999999999"),
    (b"content-length", b"many"),
    (b"content-length", b"9" * 5000),
    (b"content-encoding", b"gzip"),
    (b"accept", b"application/json"),
    (b"accept", b"text/event-stream"),
    (b"accept-encoding", b"gzip, br;q=9"),
    (b"accept-language", b"\xff"),
    (b"range", b"bytes=0-0,1-1,2-2,3-3"),
    (b"range", b"bytes=-99999999999999999999"),
    (b"range", b"bytes=a-b"),
    (b"if-modified-since", b"yesterday"),
    (b"if-none-match", b"*"),
    (b"hx-request", b"true"),
    (b"hx-boosted", b"true"),
    (b"hx-target", b"<script>"),
    (b"x-forwarded-host", b"elsewhere.example"),
    (b"x-forwarded-proto", b"https"),
    (b"x-http-method-override", b"DELETE"),
    (b"last-event-id", b"\xff"),
    (b"upgrade", b"websocket"),
)

PART = b"--x\r\nContent-Disposition: form-data; name="

BODIES = (
    b"",
    b"&&&===",
    b"\xff\xfe\x00",
    b"a=1&" * 3000,
    b"{}",
    b"[" * 5000,
    b"--x\r\n\r\n",
    PART + b'"file"; filename="../secret.txt"\r\n\r\na\r\n--x--\r\n',
    b"--x\r\nContent-Disposition: form-data\r\n\r\na\r\n--x--\r\n",
    PART + b'"file"; filename="a.xlsx"\r\n\r\nPK\x03\x04\r\n--x--\r\n',
    b"\x1f\x8b\x08\x00" + b"\x00" * 100,
    b"x" * 200_000,
)


@st.composite
def mutated(draw: st.DrawFn, sources: Sequence[Sent]) -> Sent:
    """One of the requests, changed in one to three ways."""
    sent = draw(st.sampled_from(sources))
    for change in draw(st.lists(st.sampled_from(CHANGES), min_size=1, max_size=3)):
        sent = draw(change(sent))
    return sent


@st.composite
def _method(draw: st.DrawFn, sent: Sent) -> Sent:
    return replace(sent, method=draw(st.sampled_from(METHODS)))


@st.composite
def _path(draw: st.DrawFn, sent: Sent) -> Sent:
    """A segment of the path in place of another, before it, or after all."""
    path, mark, query = sent.target.partition(b"?")
    segments = path.split(b"/")[1:]
    place = draw(st.integers(0, len(segments)))
    length = draw(st.integers(0, 1))
    segments[place : place + length] = [draw(st.sampled_from(WAYS_OUT) | st.binary(max_size=6))]
    return replace(sent, target=b"/" + b"/".join(map(_plain, segments)) + mark + query)


@st.composite
def _query(draw: st.DrawFn, sent: Sent) -> Sent:
    path, _, query = sent.target.partition(b"?")
    return replace(sent, target=path + b"?" + _plain(draw(_fields(query))))


@st.composite
def _form(draw: st.DrawFn, sent: Sent) -> Sent:
    body = draw(_fields(sent.body))
    return replace(sent, body=body, headers=_with(sent.headers, _length(body)))


@st.composite
def _fields(draw: st.DrawFn, encoded: bytes) -> bytes:
    """The same fields with one more, one less, one twice, or one of another value."""
    if encoded.startswith(b"--"):
        return draw(_parts(encoded))
    fields = [each for each in encoded.split(b"&") if each]
    name = draw(st.sampled_from([each.partition(b"=")[0] for each in fields] or [b"name"]))
    value = draw(st.sampled_from(WORDS) | st.text(max_size=12))
    changed = name + b"=" + _encoded(value)
    kept = [each for each in fields if draw(st.booleans()) or not each.startswith(name)]
    place = draw(st.integers(0, len(kept)))
    return b"&".join([*kept[:place], changed, *kept[place:]])


@st.composite
def _parts(draw: st.DrawFn, body: bytes) -> bytes:
    """The same for a form that was sent in parts: another value, or a file where none was."""
    first, *parts = body.split(b'name="')
    if not parts:
        return body
    place = draw(st.integers(0, len(parts) - 1))
    name, _, rest = parts[place].partition(b'"')
    end = rest.find(b"\r\n--")
    value = draw(st.sampled_from(WORDS) | st.text(max_size=12)).encode("utf-8", "surrogatepass")
    file = draw(st.sampled_from([b"", b'; filename="a.xlsx"', b'; filename="../secret.txt"']))
    parts[place] = name + b'"' + file + b"\r\n\r\n" + value + rest[end:]
    return b'name="'.join([first, *parts])


@st.composite
def _header(draw: st.DrawFn, sent: Sent) -> Sent:
    """A header changed, sent twice, or left out."""
    name, value = draw(st.sampled_from(HEADERS))
    others = tuple(each for each in sent.headers if each[0] != name)
    added = draw(st.sampled_from([(), ((name, value),), ((name, value), (name, value))]))
    return replace(sent, headers=others + added)


@st.composite
def _body(draw: st.DrawFn, sent: Sent) -> Sent:
    """Another body, or this one cut short, with a length that may be wrong."""
    cut = draw(st.integers(0, len(sent.body)))
    body = draw(st.sampled_from([*BODIES, sent.body[:cut], sent.body[cut:]]))
    body = draw(st.sampled_from([body, body + draw(st.binary(max_size=20))]))
    headers = _with(sent.headers, _length(body)) if draw(st.booleans()) else sent.headers
    return replace(sent, body=body, headers=headers)


CHANGES = (_method, _path, _path, _query, _form, _form, _header, _header, _body)


def _with(headers: HeaderList, header: tuple[bytes, bytes]) -> HeaderList:
    return (*(each for each in headers if each[0] != header[0]), header)


def _length(body: bytes) -> tuple[bytes, bytes]:
    return b"content-length", str(len(body)).encode()


def _encoded(text: str) -> bytes:
    data = text.encode("utf-8", "surrogatepass")
    return b"".join(b"%%%02x" % byte for byte in data) if len(data) < 100 else data


def _plain(segment: bytes) -> bytes:
    """As a server lets it through: what isn't printable ASCII is percent-encoded."""
    return b"".join(
        bytes([byte]) if 0x21 <= byte <= 0x7E and byte not in b"?#" else b"%%%02x" % byte
        for byte in segment
    )
