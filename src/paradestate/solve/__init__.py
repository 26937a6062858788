"""Whole-number programs; every answer is priced and checked by core before anyone sees it."""
