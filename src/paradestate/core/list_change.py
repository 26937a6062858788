"""What differs between two versions of a list, in the words of the read-back."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, replace

from paradestate.core.force import Force
from paradestate.core.sentence.force import sentences
from paradestate.core.sentence.price import prices_words
from paradestate.core.sentence.support import entry_clauses, entry_sentence
from paradestate.core.support.entry import Entry

TROOPS = "supporting troops"
SECTIONS = frozenset(
    {"games", "formation cost", "grades", "asking", "limits", "reserves", "worths"}
)
"""Sections that make up a list, beside the supporting troops themselves."""
ATTRIBUTES = {"when_refused": "when refused", "window": "dates", "choice_costs": "choice"}
"""Words for parts of an entry that aren't those of the format with underscores for spaces."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListChange:
    """One thing that differs."""

    section: str
    name: str
    """Of the entry, game and so on; empty where the section has one only."""
    part: str = ""
    """What of an entry differs; empty where it is new or gone, and for all else."""
    before: str = ""
    """In words; empty where there was nothing."""
    after: str = ""
    """In words; empty where there is nothing any more."""


def list_changes(old: Force, new: Force) -> tuple[ListChange, ...]:
    """Everything in which two versions of a list differ: entries first, in file order.

    Entries are told apart by their names: one with another name is gone, and another is new.
    """
    return (*_entries(old, new), *_sections(old, new))


def _entries(old: Force, new: Force) -> Iterator[ListChange]:
    was, now = old.supporting_troops, new.supporting_troops
    for name in dict.fromkeys((*was, *now)):
        if name in was and name in now:
            yield from _parts(was[name], now[name])
        else:
            yield ListChange(
                section=TROOPS,
                name=name,
                before=entry_sentence(was[name]) if name in was else "",
                after=entry_sentence(now[name]) if name in now else "",
            )


def _parts(old: Entry, new: Entry) -> Iterator[ListChange]:
    said = set()
    for field in fields(Entry):
        word = ATTRIBUTES.get(field.name, field.name.replace("_", " "))
        if getattr(old, field.name) != getattr(new, field.name) and word not in said:
            said.add(word)
            before, after = (part_words(each, field.name) for each in (old, new))
            yield ListChange(section=TROOPS, name=new.name, part=word, before=before, after=after)


def part_words(entry: Entry, attribute: str) -> str:
    """One part of an entry as the read-back says it, all others left away; empty: nothing said."""
    match attribute:
        case "cost":
            return prices_words(entry.cost)
        case "held_at" | "by_hand":
            text: str = getattr(entry, attribute)
            return text
        case "choice" | "choice_costs":
            only = replace(_BLANK, choice=entry.choice, choice_costs=entry.choice_costs)
        case _:
            only = replace(_BLANK, **{attribute: getattr(entry, attribute)})
    usual = () if attribute == "limit" else tuple(entry_clauses(_BLANK))
    return "; ".join(clause for clause in entry_clauses(only) if clause not in usual)


_BLANK = Entry(name="", cost={})


def _sections(old: Force, new: Force) -> Iterator[ListChange]:
    was, now = _said(old), _said(new)
    for path in dict.fromkeys((*was, *now)):
        before, after = was.get(path, ""), now.get(path, "")
        if before != after:
            section, *names = path
            name = " ".join(names)
            yield ListChange(section=section, name=name, before=before, after=after)


def _said(force: Force) -> Mapping[tuple[str, ...], str]:
    """Key path to sentence of all that makes up a list but its entries."""
    return {each.path: each.text for each in sentences(force) if each.path[0] in SECTIONS}
