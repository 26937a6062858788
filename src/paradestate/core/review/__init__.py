"""Doubts and mistakes in the meaning of a force, found by rules that are plain functions."""
