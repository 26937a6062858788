"""The command and its sub-commands, each loaded when it is called."""

from importlib import import_module

import click

from paradestate import __version__

COMMANDS = {
    "new": "Start a force: an invented example, or six questions.",
    "check": "Read everything and say what is wrong or doubtful.",
    "read-back": "Say each entry as a sentence, to proof against the book.",
    "count": "Count what must be on the table, what is owned and what is lacking.",
    "raise": "Write into the folder what is raised: numbers, date, theatre, wished items.",
    "order": "Find the cheapest order for what is lacking.",
    "months": "Say in which month each order can be bought.",
    "judge": "Say whether a plan of supporting troops is legal, and the ways out if not.",
    "odds": "Say how likely a plan of supporting troops is paid for, and comes.",
    "fallback": "Say what to ask for first, and what then if the dice refuse.",
    "forces": "Count the legal forces of a game, and name the best and what can be fielded.",
    "proof": "Prove a list of supporting troops: contradictions, what is never or always taken.",
    "compare": "Compare two versions of a list, or a list with what it would be if changed.",
    "sweep": "Try many prices, limits and worths of a list at once, here or on a cluster.",
    "attach": "Give each weapon section of a plan the host where it is worth most.",
    "marks": "Say how well marks are told apart, choose colours, say whose mark it is.",
    "trays": "Lay every stand into its tray: plan, packing list, and what has no place.",
    "bench": "Say in which order to work on stands, so that a force is playable soonest.",
    "losses": "Say who comes back after a game, and what the next one finds.",
    "next": "Say which purchase, or which hours of work, add most to the games you play.",
    "sheets": "Print labels, templates and markers to exact size, as PDF.",
    "holdings": "Say what is owned, by kind and stage, today or on a past day.",
    "log": "Write down what happened: counted, received, moved, lost, a session.",
    "play": "Write down a game: terms, honest dice, what is taken, what to do now.",
    "book": "Say whether all booked games can be played, what is short, and the remedies.",
    "serve": "Show the forces as pages in a browser of this computer.",
    "archive": "Make one file of everything, and bring it back.",
    "spreadsheet": "Write stock, prices and supporting troops to a spreadsheet.",
}
"""Each command with its line of help, so that listing them loads none."""

MODULES = {"raise": "raising"}
"""Commands whose module has another name, because Python keeps theirs for itself."""


class LazyCommands(click.Group):
    """Finds a command's module by its name."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """All commands in the order of the work."""
        del ctx  # the list is the same everywhere
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command, loaded; None for an unknown one."""
        del ctx
        if cmd_name not in COMMANDS:
            return None
        module_name = MODULES.get(cmd_name, cmd_name.replace("-", "_"))
        module = import_module(f"paradestate.cli.{module_name}")
        command: click.Command = module.command
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """The list in the help, from the lines above."""
        del ctx
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """As usual, with the nearest command offered for an unknown one."""
        try:
            return super().resolve_command(ctx, args)
        except click.UsageError as error:
            near = _nearest(args[0])
            raise click.UsageError(f"{error.message}{near}", ctx=ctx) from None


def _nearest(word: str) -> str:
    from difflib import get_close_matches

    near = get_close_matches(word, COMMANDS, n=1)
    return f" Did you mean '{near[0]}'?" if near else ""


EPILOG = """\b
Start here:
  paradestate new marenz --example marenz
  paradestate count marenz
  paradestate order marenz

\b
Completion of commands and options, for bash (zsh and fish likewise):
  eval "$(_PARADESTATE_COMPLETE=bash_source paradestate)"
"""


@click.group(
    cls=LazyCommands,
    epilog=EPILOG,
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
)
@click.version_option(__version__, prog_name="paradestate")
def program() -> None:
    """Raise a battalion for the table: what it must have, what you own, what to order.

    A force is a folder of YAML files. Every command takes that folder.
    """
