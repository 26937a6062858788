"""Exact chances: dice, odds of a plan, fall-backs, and the number of legal forces."""
