"""The organisation in words: what a body holds and how much of it is done."""

from collections.abc import Iterator

from paradestate.core.branch import Branch, Fill, Group
from paradestate.core.number import NumberRange
from paradestate.core.sentence.wording import capital, counted, listed, plural, several


def men_words(men: NumberRange) -> str:
    """A number of men: `1 man`, `304 men`, `296-312 men`."""
    return several(men, "man")


def numbers_words(branch: Branch) -> str:
    """What a body comes to: `304 men, 37 stands`; what is nought is left out."""
    men = men_words(branch.men) if branch.men.most else ""
    stands = several(branch.stands, "stand") if branch.stands else ""
    return ", ".join(word for word in (men, stands) if word)


def fill_words(fill: Fill) -> str:
    """How much is done: `7 of 8 finished`; nothing where no stand holds figures."""
    return f"{fill.finished} of {fill.number} finished" if fill.number else ""


def lack_words(fill: Fill) -> str:
    """What is lacking: `lacks 3 mortar crews`."""
    return f"lacks {counted(fill.lacking)}" if fill.lacking else ""


def group_title(group: Group) -> str:
    """What stands there: `Company command`, `2 rifle sections`."""
    if group.number == 1:
        return capital(group.pattern)
    return f"{group.number} {plural(group.pattern)}"


def group_words(group: Group) -> tuple[str, ...]:
    """Its layer and men, and how far it is, a line each; what it lacks is left out."""
    return tuple(_group_lines(group))


def _group_lines(group: Group) -> Iterator[str]:
    if group.printed or group.is_modelled:
        yield "printed" if group.printed else "modelled"
    if group.wishes:
        yield "wished" if group.is_wanted else "wished, not counted"
    if group.men.most:
        yield men_words(group.men)
    fill = group.fill
    if group.number > 1:
        yield from filter(None, [fill_words(fill)])
    else:
        yield from fill.by_stage


def inside_words(branch: Branch) -> str:
    """What opens below a body: `3 platoons and 4 stands`."""
    bodies: dict[str, int] = {}
    for each in branch.branches:
        bodies[each.formation] = bodies.get(each.formation, 0) + 1
    counting = [group for group in branch.groups if not group.wishes and not group.printed]
    stands = sum(group.number for group in counting)
    words = [several(number, name) for name, number in bodies.items()]
    return listed([*words, *([several(stands, "stand")] if stands else [])])
