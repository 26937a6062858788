"""The contract of a journal, the same on both databases."""

import tracemalloc
from collections.abc import Iterator
from dataclasses import replace
from hashlib import sha256

import pytest

from paradestate.core.digest_chain import START, Altered, Checkpoint, Head, Link, linked
from paradestate.store.address import Address, JournalFile, ServerJournal
from paradestate.store.error import OtherTextError, StoreError
from paradestate.store.journal import PAGE
from paradestate.store.opening import opened
from tests.store.writing import alteration, by_hand, identity, lines, write

TEXTS = ('{"kind": "received"}', "", "naïve – 3 × “platoon” 兵", '{"note": "a\\nb"}', "x" * 100_000)


def test_a_journal_that_nobody_wrote_has_no_lines(address: Address) -> None:
    with opened(address, writing=False) as journal:
        assert journal.head() == START
        assert list(journal.links()) == []
        assert journal.link(identity(1)) is None
        assert journal.ids_beginning("", 5) == ()
        assert journal.checkpoint() is None


def test_what_was_appended_is_there_in_order_and_as_it_was(address: Address) -> None:
    written = write(address, *TEXTS)
    assert lines(address) == written
    assert [link.text for link in written] == list(TEXTS)
    assert [link.number for link in written] == [1, 2, 3, 4, 5]
    assert alteration(address) is None


def test_the_digests_are_those_that_a_plain_computation_gives(address: Address) -> None:
    before = "0" * 64
    for number, link in enumerate(write(address, *TEXTS), start=1):
        plain = before.encode() + b"\n" + identity(number).encode() + b"\n" + link.text.encode()
        before = sha256(plain).hexdigest()
        assert link.digest == before
    with opened(address, writing=False) as journal:
        assert journal.head() == Head(number=5, digest=before)


def test_the_same_entry_again_is_stored_once_in_its_block_and_after_it(address: Address) -> None:
    with opened(address, writing=True) as journal:
        first = journal.append(id=identity(1), text="one")
        assert journal.append(id=identity(1), text="one") == first
    write(address, "two", first=2)
    assert write(address, "one") == [first]
    assert [link.text for link in lines(address)] == ["one", "two"]


def test_the_same_id_with_another_text_is_refused_and_the_block_writes_nothing(
    address: Address,
) -> None:
    before = write(address, "one")
    with (
        pytest.raises(OtherTextError, match=r"line 1, with another text") as caught,
        opened(address, writing=True) as journal,
    ):
        journal.append(id=identity(2), text="two")
        journal.append(id=identity(1), text="other")
    assert identity(1) in str(caught.value)
    assert lines(address) == before


def test_a_refusal_that_the_block_sees_to_leaves_the_rest_of_it(address: Address) -> None:
    write(address, "one")
    with opened(address, writing=True) as journal:
        with pytest.raises(OtherTextError):
            journal.append(id=identity(1), text="other")
        journal.append(id=identity(2), text="two")
    assert [link.text for link in lines(address)] == ["one", "two"]
    assert alteration(address) is None


def test_a_block_that_raises_writes_nothing(address: Address) -> None:
    before = write(address, "one")
    with (
        pytest.raises(ZeroDivisionError),
        opened(address, writing=True) as journal,
    ):
        journal.append(id=identity(2), text="two")
        journal.keep(Checkpoint(head=journal.head(), text="all"))
        raise ZeroDivisionError
    assert lines(address) == before
    with opened(address, writing=False) as journal:
        assert journal.checkpoint() is None


def test_a_block_sees_what_it_wrote(address: Address) -> None:
    with opened(address, writing=True) as journal:
        link = journal.append(id=identity(1), text="one")
        assert journal.head() == Head(number=1, digest=link.digest)
        assert list(journal.links()) == [journal.link(identity(1))] == [link]


def test_a_line_is_found_by_its_id(address: Address) -> None:
    written = write(address, "one", "two")
    with opened(address, writing=False) as journal:
        assert journal.link(identity(2)) == written[1]
        assert journal.link(identity(3)) is None


def test_ids_are_found_by_their_beginning_in_order_and_not_too_many(address: Address) -> None:
    ids = [f"{start}-0000-4000-8000-000000000000" for start in ("f0000000", "a0000000", "a00000ff")]
    with opened(address, writing=True) as journal:
        for each in ids:
            journal.append(id=each, text="")
        assert journal.ids_beginning("a", 5) == (ids[1], ids[2])
        assert journal.ids_beginning("", 2) == (ids[1], ids[2])
        assert journal.ids_beginning(ids[0], 5) == (ids[0],)
        assert journal.ids_beginning("a00000ff-", 5) == (ids[2],)
        assert journal.ids_beginning("b", 5) == ()
        assert journal.ids_beginning("_", 5) == journal.ids_beginning("%", 5) == ()


def test_lines_are_streamed_from_any_number_over_the_edges_of_pages(address: Address) -> None:
    written = write(address, *(str(number) for number in range(PAGE + 2)))
    with opened(address, writing=False) as journal:
        for after in (0, 1, PAGE - 1, PAGE, PAGE + 1, PAGE + 2, PAGE + 9):
            assert list(journal.links(after=after)) == written[after:]


def test_streaming_holds_a_page_in_memory_however_long_the_journal_is(file: JournalFile) -> None:
    """Also where it isn't sound; by hand, as two thousand letters a line take long to append."""
    write(file)
    row = f"SELECT OURS, value, printf('%036d', value), '{'x' * 2000}', '' FROM generate"
    more = f"SELECT 1 UNION ALL SELECT value + 1 FROM generate WHERE value < {20 * PAGE}"
    by_hand(file, f"WITH RECURSIVE generate(value) AS ({more}) INSERT INTO entry {row}")
    with opened(file, writing=False) as journal:
        tracemalloc.start()
        try:
            assert sum(1 for _ in journal.links()) == 20 * PAGE
            _, most = tracemalloc.get_traced_memory()
        finally:
            tracemalloc.stop()
    assert most < 4 * PAGE * 2500, "of 20 pages never more than a few"


def test_a_stream_left_in_the_middle_is_no_trouble(address: Address) -> None:
    write(address, *(str(number) for number in range(PAGE + 2)))
    with opened(address, writing=False) as journal:
        assert next(journal.links()).number == 1


def test_reading_is_of_one_moment_while_others_write(address: Address) -> None:
    write(address, "one")
    with opened(address, writing=False) as journal:
        write(address, "two", first=2)
        assert journal.head().number == 1
        assert [link.text for link in journal.links()] == ["one"]


def test_the_checkpoint_kept_last_comes_back(address: Address) -> None:
    written = write(address, "one", "two", "three")
    heads = [Head(number=link.number, digest=link.digest) for link in written]
    for head, text in ((START, ""), (heads[1], "兵 two"), (heads[2], "three"), (heads[0], "one")):
        with opened(address, writing=True) as journal:
            journal.keep(Checkpoint(head=head, text=text))
            assert journal.checkpoint() == Checkpoint(head=head, text=text)
        with opened(address, writing=False) as journal:
            assert journal.checkpoint() == Checkpoint(head=head, text=text)


@pytest.mark.parametrize(
    "damage",
    [
        "UPDATE checkpoint SET text = 'twice' WHERE collection = OURS",
        "UPDATE checkpoint SET number = 1 WHERE collection = OURS",
        "UPDATE checkpoint SET digest = 'x' WHERE collection = OURS",
        "UPDATE checkpoint SET line_digest = 'x' WHERE collection = OURS",
        "UPDATE entry SET digest = 'x' WHERE collection = OURS AND number = 2",
        "DELETE FROM entry WHERE collection = OURS AND number = 2",
    ],
)
def test_a_checkpoint_that_is_damaged_or_not_of_its_line_is_none(
    address: Address, damage: str
) -> None:
    write(address, "one", "two")
    with opened(address, writing=True) as journal:
        journal.keep(Checkpoint(head=journal.head(), text="both"))
    by_hand(address, damage)
    with opened(address, writing=False) as journal:
        assert journal.checkpoint() is None


def test_a_checkpoint_of_no_line_of_this_journal_is_a_mistake_of_ours(address: Address) -> None:
    write(address, "one")
    with opened(address, writing=True) as journal:
        for head in (replace(journal.head(), number=2), replace(journal.head(), digest="1" * 64)):
            with pytest.raises(ValueError, match=r"of a line of this journal"):
                journal.keep(Checkpoint(head=head, text=""))
        with pytest.raises(ValueError, match=r"of a line of this journal"):
            journal.keep(Checkpoint(head=replace(START, digest="1" * 64), text=""))


@pytest.mark.parametrize(
    ("id", "text"), [("id-1", ""), (identity(10).upper(), ""), ("", ""), (identity(1), "a\0b")]
)
def test_an_id_that_is_no_uuid_and_a_text_with_a_null_are_mistakes_of_ours(
    address: Address,
    id: str,  # noqa: A002 - as the parameter is called
    text: str,
) -> None:
    with pytest.raises(ValueError, match=r"an id is a UUID"), opened(address, writing=True) as each:
        each.append(id=id, text=text)
    assert lines(address) == []


def test_writing_to_what_was_opened_for_reading_is_a_mistake_of_ours(address: Address) -> None:
    write(address, "one")
    with opened(address, writing=False) as journal:
        with pytest.raises(RuntimeError):
            journal.append(id=identity(2), text="two")
        with pytest.raises(RuntimeError):
            journal.keep(Checkpoint(head=START, text=""))


@pytest.mark.parametrize(
    ("damage", "found"),
    [
        ("UPDATE entry SET text = 'tow' WHERE collection = OURS AND number = 2", (2, identity(2))),
        ("UPDATE entry SET digest = 'x' WHERE collection = OURS AND number = 3", (3, identity(3))),
        (f"UPDATE entry SET id = '{identity(9)}' WHERE collection = OURS AND number = 1",
         (1, identity(9))),
        ("DELETE FROM entry WHERE collection = OURS AND number = 2", (2, "")),
        ("DELETE FROM entry WHERE collection = OURS AND number = 4", (4, "")),
        ("UPDATE collection SET number = 3 WHERE name = OURS", (4, "")),
        (f"INSERT INTO entry VALUES (OURS, 5, '{identity(5)}', 'x', 'x')", (5, identity(5))),
    ],
)  # fmt: skip
def test_a_line_altered_by_hand_is_named(
    address: Address, damage: str, found: tuple[int, str]
) -> None:
    write(address, "one", "two", "three", "four")
    by_hand(address, damage)
    assert alteration(address) == Altered(number=found[0], id=found[1])


def test_where_a_line_was_put_in_the_next_is_not_written_over_it(address: Address) -> None:
    write(address, "one")
    by_hand(address, f"INSERT INTO entry VALUES (OURS, 2, '{identity(5)}', 'x', 'x')")
    with pytest.raises(StoreError, match=r"another program altered the journal. Nothing was writt"):
        write(address, "two", first=2)


def test_a_failure_that_the_block_swallows_is_raised_at_its_end(address: Address) -> None:
    """The database may have given up the whole transaction: nobody may think that it was kept."""
    before = write(address, "one")
    by_hand(address, f"INSERT INTO entry VALUES (OURS, 3, '{identity(5)}', 'x', 'x')")
    with (
        pytest.raises(StoreError, match=r"Nothing was written"),
        opened(address, writing=True) as journal,
    ):
        journal.append(id=identity(2), text="two")
        with pytest.raises(StoreError, match=r"Nothing was written"):
            journal.append(id=identity(3), text="three")
    assert lines(address)[:1] == before
    assert [link.number for link in lines(address)] == [1, 3]


def test_collections_of_one_database_know_nothing_of_each_other(cluster: str) -> None:
    ours, theirs = (ServerJournal(url=cluster, collection=f"apart {name}") for name in "ab")
    write(ours, "one", "two")
    with opened(ours, writing=True) as journal:
        journal.keep(Checkpoint(head=journal.head(), text="ours"))
    write(theirs, "other")
    assert [link.text for link in lines(ours)] == ["one", "two"]
    assert [link.text for link in lines(theirs)] == ["other"]
    with opened(theirs, writing=True) as journal:
        assert journal.head().number == 1
        assert journal.checkpoint() is None
        assert journal.link(identity(2)) is None
        assert journal.ids_beginning("0", 9) == (identity(1),)
        journal.keep(Checkpoint(head=journal.head(), text="theirs"))
    with opened(ours, writing=False) as journal:
        checkpoint = journal.checkpoint()
        assert checkpoint is not None
        assert checkpoint.text == "ours"
    assert alteration(ours) is alteration(theirs) is None


def test_an_archived_journal_comes_back_with_the_same_digests(address: Address) -> None:
    written = write(address, *TEXTS)
    end = Head(number=5, digest=written[-1].digest)
    with opened(address, writing=True) as journal, pytest.raises(ValueError, match="without"):
        journal.put_back(written, end=end)
    goal = (
        replace(address, collection="goal")
        if isinstance(address, ServerJournal)
        else (JournalFile(path=address.path.with_name("goal.sqlite")))
    )
    with opened(goal, writing=True) as journal:
        journal.put_back(written, end=end)
        assert journal.head() == end
    assert lines(goal) == written
    assert alteration(goal) is None


def test_an_altered_line_comes_back_as_altered(address: Address) -> None:
    one, two, three = chained("1", "2", "3")
    altered = replace(two, text="altered")
    with opened(address, writing=True) as journal:
        journal.put_back([one, altered, three], end=Head(number=3, digest=three.digest))
    assert lines(address) == [one, altered, three]
    assert alteration(address) == Altered(number=2, id=two.id)


def chained(*texts: str) -> Iterator[Link]:
    head = START
    for number, text in enumerate(texts, start=1):
        link = linked(head, id=identity(number), text=text)
        head = Head(number=link.number, digest=link.digest)
        yield link
