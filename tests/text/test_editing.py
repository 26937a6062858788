"""Changes that leave everything else in a file as it was."""

from collections import Counter
from collections.abc import Iterator, Mapping

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from paradestate.core.place import KeyPath
from paradestate.text.codec import Plain
from paradestate.text.editing import Edit, Put, TakeOut, edited, said
from paradestate.text.error import EditError
from paradestate.text.extent import comments_in
from paradestate.text.spelling import tidy
from paradestate.text.yaml_tree import read_yaml
from tests.text.drawn_files import NAMES, DrawnFile, files, plains

FILE = """\
# A force.
format: 1
title: "Marenz"   # quoted

raise:            # what there is
  formation: battalion
  date: 1943      # the crossing
  numbers: {company: 4}
  # wished: all

marks: {a: 1,     # first
  b: 2,           # second
}
"""


def changed(text: str, *edits: Edit) -> str:
    return edited(text.encode(), edits, file="force.yaml").data.decode()


def lines_that_differ(before: str, after: str) -> tuple[list[str], list[str]]:
    """Lines only in the one, and lines only in the other."""
    old, new = Counter(before.splitlines()), Counter(after.splitlines())
    return list((old - new).elements()), list((new - old).elements())


@pytest.mark.parametrize(
    ("edit", "gone", "come"),
    [
        (
            Put(path=("raise", "date"), value="1942-07"),
            ["  date: 1943      # the crossing"],
            ["  date: 1942-07      # the crossing"],
        ),
        (
            Put(path=("raise", "numbers", "company"), value="3"),
            ["  numbers: {company: 4}"],
            ["  numbers: {company: 3}"],
        ),
        (
            Put(path=("raise", "numbers", "truck"), value="2"),
            ["  numbers: {company: 4}"],
            ["  numbers: {company: 4, truck: 2}"],
        ),
        (Put(path=("raise", "wished"), value=["a, b", "c"]), [], ["  wished: ['a, b', c]"]),
        (Put(path=("raise", "names", "company"), value="No #"), [], ["  names: {company: 'No #'}"]),
        (
            Put(path=("title",), value="Marenz, 2nd"),
            ['title: "Marenz"   # quoted'],
            ['title: "Marenz, 2nd"   # quoted'],
        ),
        (Put(path=("marks", "c"), value="3"), [], ["  c: 3,"]),
        (TakeOut(path=("raise", "date")), ["  date: 1943      # the crossing"], []),
        (TakeOut(path=("marks", "b")), ["  b: 2,           # second"], []),
        (
            TakeOut(path=("raise", "numbers", "company")),
            ["  numbers: {company: 4}"],
            ["  numbers: {}"],
        ),
        (Put(path=("table", "size"), value="90 x 90 mm"), [], ["table: {size: 90 x 90 mm}"]),
    ],
)
def test_only_the_lines_concerned_differ(edit: Edit, gone: list[str], come: list[str]) -> None:
    for line_break in ("\n", "\r\n"):
        text = FILE.replace("\n", line_break)
        after = changed(text, edit)
        assert lines_that_differ(text, after) == (gone, come)
        assert after.count("\n") == after.count(line_break)


def test_several_edits_are_made_one_after_the_other() -> None:
    edits = (TakeOut(path=("raise", "date")), Put(path=("raise", "date"), value="1941"))
    assert "  # wished: all" in changed(FILE, *edits)
    assert said(read_yaml(changed(FILE, *edits), file="f").node) == said(
        read_yaml(FILE.replace("1943", "1941"), file="f").node
    )


def test_the_byte_order_mark_stays_and_none_is_added() -> None:
    marked = b"\xef\xbb\xbf" + FILE.encode()
    edit = Put(path=("title",), value="X")
    assert edited(marked, [edit], file="f").data.startswith(b"\xef\xbb\xbf#")
    assert edited(FILE.encode(), [edit], file="f").data.startswith(b"#")


def test_what_is_there_already_changes_nothing() -> None:
    edits = (
        Put(path=("raise", "numbers"), value={"company": "4"}),
        Put(path=("title",), value=" Marenz "),
    )
    assert changed(FILE, *edits) == FILE


def test_of_a_mapping_only_the_entries_that_differ_are_written() -> None:
    text = "raise:\n  date: 1943  # kept\n  theatre: x\n  numbers: {a: 1}  # kept too\n"
    wanted: dict[str, Plain] = {"date": "1943", "numbers": {"a": "2"}, "wished": "all"}
    assert changed(text, Put(path=("raise",), value=wanted)) == (
        "raise:\n  date: 1943  # kept\n  numbers: {a: 2}  # kept too\n  wished: all\n"
    )


def test_comments_inside_what_is_replaced_are_named() -> None:
    text = "a:\n  - x # one\n  # two\n  - y # three\nb: 1 # four\n"
    done = edited(text.encode(), [Put(path=("a",), value=["z"])], file="f")
    assert done.comments_gone == ("# one", "# two", "# three")
    assert done.data == b"a:\n  - z\nb: 1 # four\n"


@pytest.mark.parametrize("text", ["", "# nothing yet", "# nothing yet\n", "# x\r\n"])
def test_a_file_without_anything_gets_its_first_entry(text: str) -> None:
    after = changed(text, Put(path=("raise", "date"), value="1943"))
    assert after.startswith(text)
    assert said(read_yaml(after, file="f").node) == {"raise": {"date": "1943"}}


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("a: [1\n", "ends in the middle"),
        ("a: 1\na: 2\n", "twice"),
        ("a: &x 1\n", "can't be changed by a program"),
    ],
)
def test_a_file_with_a_stop_in_its_form_is_refused(text: str, message: str) -> None:
    with pytest.raises(EditError, match=message):
        changed(text, Put(path=("b",), value="1"))


def test_a_file_that_is_no_text_is_refused() -> None:
    with pytest.raises(EditError, match="picture"):
        edited(b"\x89PNG", [Put(path=("b",), value="1")], file="f")


@pytest.mark.parametrize(
    ("edit", "message"),
    [
        (Put(path=("title", "x"), value="1"), "'x' can't be put"),
        (Put(path=("list", "4"), value="1"), "'4' can't be put"),
        (Put(path=(), value="1"), "needs the key"),
        (TakeOut(path=("gone",)), "isn't there"),
        (TakeOut(path=("list", "1")), "isn't a mapping"),
        (TakeOut(path=("none", "x")), "isn't a mapping"),
        (TakeOut(path=("title", "x", "y")), "isn't a mapping"),
    ],
)
def test_what_can_not_be_meant_is_refused(edit: Edit, message: str) -> None:
    with pytest.raises(EditError, match=message):
        changed("title: x\nlist: [a, b]\n", edit)


def test_what_would_read_otherwise_is_refused() -> None:
    """A key that is too long for one line of YAML: the checker sees that it isn't read again."""
    with pytest.raises(EditError, match="change it in an editor"):
        changed("a: 1\n", Put(path=("x" * 2000,), value="1"))
    with pytest.raises(EditError, match="change it in an editor"):
        changed("a: 1\n", Put(path=("<<",), value=""), Put(path=("",), value="1"))


def test_nothing_can_be_taken_out_of_an_empty_file() -> None:
    with pytest.raises(EditError, match="isn't a mapping"):
        changed("", TakeOut(path=("a",)))


# Any edits on any file.


def paths_in(value: object, *, path: KeyPath = ()) -> Iterator[KeyPath]:
    """The path of everything below a value."""
    named = (
        value.items()
        if isinstance(value, dict)
        else ((str(n), item) for n, item in enumerate(value, start=1))
        if isinstance(value, list)
        else ()
    )
    for name, child in named:
        yield (*path, name)
        yield from paths_in(child, path=(*path, name))


@st.composite
def edits_of(draw: st.DrawFn, says: Mapping[str, Plain]) -> Edit:
    """An edit of what is there, or of what isn't."""
    known = list(paths_in(says))
    new = st.tuples(NAMES) | st.tuples(NAMES, NAMES)
    below = st.tuples(st.sampled_from(known or [("a",)]), NAMES).map(lambda two: (*two[0], two[1]))
    path = draw(st.one_of(st.sampled_from(known or [("a",)]), below, new))
    put = st.builds(Put, path=st.just(path), value=plains())
    return draw(st.one_of(put, put, st.just(TakeOut(path=path))))


def model(says: object, edit: Edit, *, path: KeyPath) -> object:
    """What the file says after the edit, by a plain walk; None where it can't be made."""
    step, rest = path[0], path[1:]
    taken_out = isinstance(edit, TakeOut)
    if isinstance(says, list):
        place = int(step) if step.isdecimal() else 0
        if not 0 < place <= len(says) or (taken_out and not rest):
            return None
        below = model(says[place - 1], edit, path=rest) if rest else put_by(edit)
        return None if below is None else [*says[: place - 1], below, *says[place:]]
    if not isinstance(says, dict):
        return None
    if taken_out and not rest:
        others = {name: child for name, child in says.items() if name != step}
        return others if step in says else None
    below = model(says.get(step, {}), edit, path=rest) if rest else put_by(edit)
    return None if below is None else {**says, step: below}


def put_by(edit: Edit) -> object:
    assert isinstance(edit, Put)
    return edit.value


def read_by_another(text: str) -> object:
    """What a YAML reader of another kind makes of a text, with names and texts tidied."""

    def tidied(value: object) -> object:
        if isinstance(value, dict):
            return {tidy(name): tidied(child) for name, child in value.items()}
        return [tidied(item) for item in value] if isinstance(value, list) else tidy(str(value))

    return tidied(yaml.load(text, Loader=yaml.BaseLoader) or {})  # noqa: S506 - text only


@pytest.mark.slow
@given(files(), st.data())
def test_any_edits_give_the_expected_tree_and_touch_no_other_section(
    file: DrawnFile, data: st.DataObject
) -> None:
    """What the file says is worked out apart, and read by a reader that isn't ours."""
    says: object = dict(file.says)
    text, pieces = file.text, dict(file.pieces)
    for _ in range(2):
        assert isinstance(says, dict)
        edit = data.draw(edits_of(says))
        wanted = model(says, edit, path=edit.path)
        before = comments_in(text)
        if wanted is None:
            with pytest.raises(EditError):
                changed(text, edit)
            continue
        done = edited(text.encode(), [edit], file="f")
        says, text = wanted, done.data.decode()
        assert read_by_another(text) == wanted
        assert (said(read_yaml(text, file="f").node) or {}) == wanted
        assert not Counter(done.comments_gone) - Counter(before)
        assert Counter(before) - Counter(done.comments_gone) == Counter(comments_in(text))
        pieces.pop(edit.path[0], None)
        lines = iter(text.splitlines(keepends=True))
        kept = "".join(pieces.values()).splitlines(keepends=True)
        assert all(line in lines for line in kept)  # each of them, in the same order
