"""The digest chain shows whatever was done to a line."""

from dataclasses import replace
from hashlib import sha256

from hypothesis import assume, given
from hypothesis import strategies as st

from paradestate.core.digest_chain import (
    BEFORE_THE_FIRST,
    START,
    Altered,
    Checkpoint,
    Head,
    Link,
    altered_lines,
    checkpoint_digest,
    digest_of,
    first_altered,
    linked,
)

TEXTS = ("one", "two", "three", "four")


def chain_of(*texts: str) -> list[Link]:
    links: list[Link] = []
    head = START
    for number, text in enumerate(texts, start=1):
        link = linked(head, id=f"id-{number}", text=text)
        head = Head(number=link.number, digest=link.digest)
        links.append(link)
    return links


def end_of(links: list[Link]) -> Head:
    return Head(number=links[-1].number, digest=links[-1].digest) if links else START


LINKS = chain_of(*TEXTS)
END = end_of(LINKS)


def test_a_digest_is_the_sha_256_of_what_was_before_the_id_and_the_text() -> None:
    plain = sha256(b"0" * 64 + b"\nid-1\none").hexdigest()
    assert LINKS[0].digest == plain == digest_of(before=BEFORE_THE_FIRST, id="id-1", text="one")
    assert LINKS[1].digest == digest_of(before=plain, id="id-2", text="two")


def test_an_untouched_chain_holds_whole_and_from_any_line_on() -> None:
    assert first_altered(LINKS, end=END) is None
    assert first_altered([], end=START) is None
    for number, link in enumerate(LINKS, start=1):
        after = Head(number=number, digest=link.digest)
        assert first_altered(LINKS[number:], after=after, end=END) is None


def test_an_altered_line_is_named() -> None:
    altered = [*LINKS[:1], replace(LINKS[1], text="tow"), *LINKS[2:]]
    assert first_altered(altered, end=END) == Altered(number=2, id="id-2")


def test_a_removed_line_is_named_also_the_last() -> None:
    assert first_altered(LINKS[1:], end=END) == Altered(number=1, id="")
    assert first_altered([*LINKS[:1], *LINKS[2:]], end=END) == Altered(number=2, id="")
    assert first_altered(LINKS[:-1], end=END) == Altered(number=4, id="")


def test_a_line_put_in_at_the_end_shows() -> None:
    more = [*LINKS, linked(END, id="id-5", text="five")]
    assert first_altered(more, end=END) == Altered(number=5, id="")


def test_an_end_that_was_altered_shows() -> None:
    assert first_altered(LINKS, end=replace(END, digest="1" * 64)) == Altered(number=4, id="")


def test_two_lines_that_changed_places_show() -> None:
    swapped = [LINKS[0], LINKS[2], LINKS[1], LINKS[3]]
    assert first_altered(swapped, end=END) == Altered(number=2, id="")


@given(st.integers(0, 3), st.sampled_from(["id", "text", "digest"]), st.text(max_size=3))
def test_no_field_of_any_line_can_be_changed_unseen(number: int, field: str, value: str) -> None:
    before: Link = LINKS[number]
    after = {
        "id": replace(before, id=value),
        "text": replace(before, text=value),
        "digest": replace(before, digest=value),
    }[field]
    assume(after != before)
    altered = [*LINKS[:number], after, *LINKS[number + 1 :]]
    found = first_altered(altered, end=END)
    assert found == Altered(number=number + 1, id=after.id)


CHECKPOINT = Checkpoint(head=END, text="ten riflemen")


def test_a_checkpoint_has_a_digest_over_its_number_the_digest_of_its_line_and_its_text() -> None:
    plain = sha256(b"4\n" + LINKS[-1].digest.encode() + b"\nten riflemen").hexdigest()
    assert checkpoint_digest(CHECKPOINT) == plain


@given(st.integers(0, 9), st.text(max_size=3), st.text(max_size=3))
def test_no_part_of_a_checkpoint_can_be_changed_unseen(number: int, digest: str, text: str) -> None:
    for changed in (
        replace(CHECKPOINT, head=replace(END, number=number)),
        replace(CHECKPOINT, head=replace(END, digest=digest)),
        replace(CHECKPOINT, text=text),
    ):
        is_same = changed == CHECKPOINT
        assert (checkpoint_digest(changed) == checkpoint_digest(CHECKPOINT)) is is_same


def test_every_altered_line_is_named_and_every_gap() -> None:
    links = chain_of("a", "b", "c", "d", "e")
    altered = [links[0], replace(links[1], text="x"), links[2], replace(links[4], id="y")]
    assert list(altered_lines(altered, end=end_of(links))) == [
        Altered(number=2, id="id-2"),
        Altered(number=4, id=""),
    ]
    assert list(altered_lines(links[:3], end=end_of(links))) == [Altered(number=4, id="")]
