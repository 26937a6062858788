"""The command `months` with `--bench`: money and bench together."""

from pathlib import Path

from paradestate.cli.bench_months_json import months_at_bench_json
from paradestate.cli.finding_report import print_findings
from paradestate.cli.interruption import stopping_softly
from paradestate.cli.option import finish, today
from paradestate.cli.order_progress import shown_progress
from paradestate.cli.output import print_json
from paradestate.core.choice import Choice
from paradestate.journeys.bench.bench_months import months_at_bench
from paradestate.journeys.months import Terms
from paradestate.journeys.order import Request, Search


def show(
    folder: Path,
    *,
    choice: Choice,
    request: Request,
    seconds: float,
    terms: Terms,
    as_json: bool,
) -> None:
    """Prints what to order when, and ends the command."""
    with stopping_softly() as stop, shown_progress() as progress:
        answer = months_at_bench(
            folder,
            today=today(),
            choice=choice,
            request=request,
            search=Search(seconds=seconds, stop=stop, progress=progress),
            terms=terms,
        )
    print_findings(answer.checked.findings, answer.checked.texts)
    if answer.chosen is not None and as_json:
        print_json(months_at_bench_json(answer))
    elif answer.chosen is not None:
        from paradestate.cli.bench_months_report import print_bench_months

        print_bench_months(answer)
    finish(stopped=answer.chosen is None)
