"""Odds of a plan: whether it is paid for and comes, what else may turn up, whom to ask first."""
