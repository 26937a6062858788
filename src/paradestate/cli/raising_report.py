"""What was raised anew, for people and for programs."""

import shlex
from collections.abc import Iterator
from pathlib import Path

import click

from paradestate.cli.count_json import change_json
from paradestate.core.establishment import Establishment
from paradestate.core.sentence.wording import several
from paradestate.journeys.raising import Raised, RaisingAnswer


def print_raising(answer: RaisingAnswer, *, folder: Path) -> None:
    """What was decided, what that changes, where the former version is and the way back."""
    if answer.raised is None:
        click.echo(f"{answer.file} says so already; nothing was written.")
        return
    for line in _lines(answer.raised, folder=folder):
        click.echo(line)


def _lines(raised: Raised, *, folder: Path) -> Iterator[str]:
    if raised.put_back is not None:
        yield f"Put back: {raised.put_back.path}, replaced on {raised.put_back.when}."
    yield f"Written: {raised.file}"
    for decision in raised.decisions:
        before, after = decision.before or "nothing", decision.after or "nothing"
        yield f"  {', '.join(decision.what)}: {before} -> {after}"
    if raised.beside:
        yield "  The force differs in more than what is raised."
    for comment in raised.comments_gone:
        yield f"  A note stood in what was replaced and is gone: {comment}"
    yield _counted(raised)
    if raised.changes:
        yield (
            f"In all {several(len(raised.changes), 'number')} of the count differ; `count "
            "--changes` lists them before they are written."
        )
    yield f"Former version: {raised.former}"
    yield f"To take it back: {shlex.join(['paradestate', 'raise', str(folder), '--back'])}"


def _counted(raised: Raised) -> str:
    """Stands and figures of the must layer, before and after."""
    stands, figures = _stands(raised.after), _figures(raised.after)
    if raised.before is None:
        return f"Must have: {stands} stands, {figures} figures."
    old_stands, old_figures = _stands(raised.before), _figures(raised.before)
    return f"Must have: {old_stands} -> {stands} stands, {old_figures} -> {figures} figures."


def _stands(made: Establishment) -> int:
    return sum(made.must.stands.values())


def _figures(made: Establishment) -> int:
    return sum(made.must.figures.values())


def raising_json(answer: RaisingAnswer) -> dict[str, object]:
    """The same with the keys that programs rely on; null where nothing was written."""
    raised = answer.raised
    if raised is None:
        return {"file": str(answer.file), "written": False}
    before = raised.before
    return {
        "file": str(raised.file),
        "written": True,
        "former": str(raised.former),
        "put_back": None if raised.put_back is None else str(raised.put_back.path),
        "decisions": [
            {
                "what": list(decision.what),
                "from": decision.before or None,
                "to": decision.after or None,
            }
            for decision in raised.decisions
        ],
        "differs_elsewhere": raised.beside,
        "comments_gone": list(raised.comments_gone),
        "stands": {"from": before and _stands(before), "to": _stands(raised.after)},
        "figures": {"from": before and _figures(before), "to": _figures(raised.after)},
        "changes": [change_json(change) for change in raised.changes],
    }
