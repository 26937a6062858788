"""Slips in the use of YAML that its own readers don't complain about."""

from paradestate.core.place import Place
from paradestate.text.slip import NOT_USED, Slip
from paradestate.text.tree import Node, Scalar

REST_UNREAD = "What follows in this file isn't read."


def key_without_value(key: Scalar, *, before: Node | None) -> tuple[Slip, Scalar]:
    """The slip for `{price: 3,50}` and `{a:1}`, and the text it is about.

    `before` is the value that ends where the key begins, apart from the comma.
    """
    if isinstance(before, Scalar) and before.text[-1:].isdigit() and key.text[:1].isdigit():
        slip = Slip(
            code="comma-decimal",
            message=f"`{before.text},{key.text}` in braces is two entries.",
            hint=f"Write {before.text}.{key.text}.",
        )
        return slip, before
    left, colon, right = key.text.partition(":")
    if colon and left and right:
        slip = Slip(
            code="key-without-value",
            message=f"'{key.text}' has no value: a colon needs a space after it.",
            hint=f"Write {left}: {right}",
        )
        return slip, key
    slip = Slip(
        code="key-without-value",
        message=f"'{key.text}' has no value.",
        hint="In braces a comma always separates: write `key: value`, or put text with a comma "
        "in quotes.",
    )
    return slip, key


def key_twice(key: Scalar, *, first: Place) -> Slip:
    """The slip for a key that is there already."""
    return Slip(
        code="key-twice",
        message=f"'{key.text}' is there twice (lines {first.line} and {key.place.line}).",
        hint="Rename one, or keep only one.",
        effect="Only the first is looked at until this is settled.",
    )


KEY_NOT_TEXT = Slip(
    code="key-not-text",
    message="a list or mapping stands where a key belongs.",
    hint="Keys are words or names. Text that holds ': ' or begins with a bracket goes in quotes.",
)

KEY_EMPTY = Slip(
    code="key-not-text",
    message="nothing stands where a key belongs.",
    hint="Write a word or a name before the colon.",
)

SECOND_DOCUMENT = Slip(
    code="second-document",
    message="A second document begins here ('---').",
    hint="Take the line '---' out, or put what follows into a file of its own.",
    effect="What follows isn't used.",
)


def not_here(what: str, text: str, *, code: str) -> Slip:
    """The slip for a part of YAML that force folders do without."""
    return Slip(
        code=code,
        message=f"'{text}' is {what}, which force folders don't use.",
        hint="Write the values out in full; text that begins with such a sign goes in quotes.",
        effect=NOT_USED,
    )


def bound_slip(what: str) -> Slip:
    """The slip for a text that has more of something than is read."""
    return Slip(
        code="too-large",
        message=f"there are {what}.",
        hint="Split the file, or take out what isn't force data.",
        effect=REST_UNREAD,
    )
