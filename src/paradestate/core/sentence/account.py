"""Points of a game in words: where they come from and where they went."""

from paradestate.core.play.account import Account
from paradestate.core.sentence.wording import several


def points_words(account: Account) -> str:
    """Points left with their sum: `19 points left: 26 to spend, less 7 for the formation`."""
    if account.left is None:
        return "The allowance isn't rolled yet."
    return f"{several(account.left, 'point')} left: {sum_words(account)}."


def sum_words(account: Account) -> str:
    """Where the points come from and where they went: `26 to spend, less 7 for the formation`."""
    terms = account.terms
    grades = sum(terms.grade_costs.values())
    parts = [f"{account.allowance} to spend"]
    if terms.formation_cost:
        parts.append(f"less {terms.formation_cost} for the formation")
    if grades:
        parts.append(f"{'less' if grades > 0 else 'and'} {abs(grades)} for grades")
    if account.paid:
        parts.append(f"less {account.paid} for supporting troops")
    if account.lost:
        parts.append(f"{account.lost} of them for nothing")
    return ", ".join(parts)
