"""The lines of one journal, inside one transaction. Nothing here begins or ends it."""

import re
from collections.abc import Iterable, Iterator
from typing import Any

from sqlalchemy import Connection, bindparam, delete, insert, select, update

from paradestate.core.digest_chain import (
    BEFORE_THE_FIRST,
    START,
    Checkpoint,
    Head,
    Link,
    checkpoint_digest,
    linked,
)
from paradestate.store.address import Address
from paradestate.store.error import OtherTextError
from paradestate.store.server import wait_to_make
from paradestate.store.table import CHECKPOINT, COLLECTION, ENTRY

PAGE = 1000
"""So many lines are in memory at once while a journal is streamed."""

UUID = re.compile(r"[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}")
"""The id of an entry."""

_PAST_EVERY_DIGIT = "g"

_HERE = ENTRY.c.collection == bindparam("here")
_LINES = select(ENTRY.c.number, ENTRY.c.id, ENTRY.c.text, ENTRY.c.digest).where(_HERE)
_PAGE_AFTER = _LINES.where(ENTRY.c.number > bindparam("after")).order_by(ENTRY.c.number).limit(PAGE)
_LINE_OF_ID = _LINES.where(ENTRY.c.id == bindparam("id"))
_DIGEST_AT = select(ENTRY.c.digest).where(_HERE, ENTRY.c.number == bindparam("number"))
_IDS = (
    select(ENTRY.c.id)
    .where(_HERE, ENTRY.c.id >= bindparam("from"), ENTRY.c.id < bindparam("to"))
    .order_by(ENTRY.c.id)
    .limit(bindparam("most"))
)
_HEAD = select(COLLECTION.c.number, COLLECTION.c.digest).where(
    COLLECTION.c.name == bindparam("here")
)
_MOVE_HEAD = update(COLLECTION).where(COLLECTION.c.name == bindparam("here"))
_CHECKPOINT = select(
    CHECKPOINT.c.number, CHECKPOINT.c.line_digest, CHECKPOINT.c.text, CHECKPOINT.c.digest
).where(CHECKPOINT.c.collection == bindparam("here"))
_DROP_CHECKPOINT = delete(CHECKPOINT).where(CHECKPOINT.c.collection == bindparam("here"))


def journal_to_read(connection: Connection, *, address: Address) -> "Journal":
    """The journal as it is; without a line where nobody has written any."""
    head = _head_of(connection, here=address.collection) or START
    return Journal(connection, address=address, head=head, is_writable=False)


def journal_to_write(connection: Connection, *, address: Address) -> "Journal":
    """The journal, made where it isn't there yet; others who write to it wait until the end."""
    here = address.collection
    head = _head_of(connection, here=here, is_locking=True)
    if head is None:
        wait_to_make(connection)
        head = _head_of(connection, here=here, is_locking=True)
    if head is None:
        head = START
        row = {"name": here, "number": head.number, "digest": head.digest}
        connection.execute(insert(COLLECTION), row)
    return Journal(connection, address=address, head=head, is_writable=True)


def _head_of(connection: Connection, *, here: str, is_locking: bool = False) -> Head | None:
    statement = _HEAD.with_for_update() if is_locking else _HEAD
    row = connection.execute(statement, {"here": here}).one_or_none()
    if row is None:
        return None
    if not isinstance(row.number, int):  # altered by hand: no line has that number
        return Head(number=-1, digest=str(row.digest))
    return Head(number=row.number, digest=_text(row.digest))


def _text(value: object) -> str:
    """What is stored as text; where it was altered into something else what that looks like."""
    return value.decode(errors="replace") if isinstance(value, bytes) else str(value)


class Journal:
    """One journal for as long as its block lasts. Lines are added, never altered or removed."""

    def __init__(
        self, connection: Connection, *, address: Address, head: Head, is_writable: bool
    ) -> None:
        self._connection = connection
        self._address = address
        self._here = {"here": address.collection}
        self._head = head
        self._is_writable = is_writable

    def head(self) -> Head:
        """Where the journal says that it ends."""
        return self._head

    def append(self, *, id: str, text: str) -> Link:  # noqa: A002 - that is what it is
        """Adds a line and returns it as stored; the same line sent again is stored once.

        Raises OtherTextError where the id is there with another text.
        """
        self._must_be_writable()
        if not UUID.fullmatch(id) or "\0" in text:
            raise ValueError("an id is a UUID in lower case, and no text holds a null")
        stored = self.link(id)
        if stored is None:
            return self._added(linked(self._head, id=id, text=text))
        if stored.text != text:
            raise OtherTextError(
                f"{self._address}: entry {id} is there already, as line {stored.number}, with "
                "another text. This one was not written. Give a new entry a new id."
            )
        return stored

    def put_back(self, links: Iterable[Link], *, end: Head) -> None:
        """Fills a journal without lines with those of an archive, whatever their digests say.

        So a line that had been altered before shows as such still.
        """
        self._must_be_writable()
        if self._head != START:
            raise ValueError("only a journal without lines can be filled")
        for link in links:
            self._added(link)
        self._move_head(end)

    def link(self, id: str) -> Link | None:  # noqa: A002 - as above
        """The line of this id, if there is one."""
        row = self._connection.execute(_LINE_OF_ID, self._here | {"id": id}).one_or_none()
        if row is None:
            return None
        return _link(row.number, row.id, row.text, row.digest)

    def ids_beginning(self, prefix: str, most: int) -> tuple[str, ...]:
        """The ids that begin with these digits, in order, at most so many of them."""
        span = {"from": prefix, "to": prefix + _PAST_EVERY_DIGIT, "most": most}
        return tuple(self._connection.execute(_IDS, self._here | span).scalars())

    def links(self, *, after: int = 0) -> Iterator[Link]:
        """Every line after this number, in order, as stored: `first_altered` checks them."""
        page = self._page(after)
        while page:
            yield from page
            page = self._page(page[-1].number)

    def checkpoint(self) -> Checkpoint | None:
        """The checkpoint kept last; None where there is none, or it doesn't agree with its line."""
        row = self._connection.execute(_CHECKPOINT, self._here).one_or_none()
        if row is None:
            return None
        head = Head(number=row.number, digest=row.line_digest)
        checkpoint = Checkpoint(head=head, text=row.text)
        is_whole = checkpoint_digest(checkpoint) == row.digest
        return checkpoint if is_whole and self._is_a_line(head) else None

    def keep(self, checkpoint: Checkpoint) -> None:
        """Keeps it in place of the one before."""
        self._must_be_writable()
        if not self._is_a_line(checkpoint.head) or "\0" in checkpoint.text:
            raise ValueError("a checkpoint is of a line of this journal, and holds no null")
        row = {
            "collection": self._address.collection,
            "number": checkpoint.head.number,
            "line_digest": checkpoint.head.digest,
            "text": checkpoint.text,
            "digest": checkpoint_digest(checkpoint),
        }
        self._connection.execute(_DROP_CHECKPOINT, self._here)
        self._connection.execute(insert(CHECKPOINT), row)

    def _must_be_writable(self) -> None:
        if not self._is_writable:
            raise RuntimeError("the journal was opened for reading")

    def _added(self, link: Link) -> Link:
        row = {
            "collection": self._address.collection,
            "number": link.number,
            "id": link.id,
            "text": link.text,
            "digest": link.digest,
        }
        self._connection.execute(insert(ENTRY), row)
        self._move_head(Head(number=link.number, digest=link.digest))
        return link

    def _move_head(self, head: Head) -> None:
        moved = {"number": head.number, "digest": head.digest}
        self._connection.execute(_MOVE_HEAD, self._here | moved)
        self._head = head

    def _page(self, after: int) -> list[Link]:
        rows = self._connection.execute(_PAGE_AFTER, self._here | {"after": after})
        return [_link(*row) for row in rows]

    def _is_a_line(self, head: Head) -> bool:
        """Whether the entry at its number has its digest."""
        if head.number == 0:
            return head.digest == BEFORE_THE_FIRST
        at = self._here | {"number": head.number}
        return self._connection.execute(_DIGEST_AT, at).scalar() == head.digest


def _link(*row: Any) -> Link:  # noqa: ANN401 - of a database, where others may have altered it
    number, id_, text, digest = row
    if type(text) is not str or type(id_) is not str or type(digest) is not str:
        id_, text, digest = _text(id_), _text(text), _text(digest)
    return Link(number=number, id=id_, text=text, digest=digest)
