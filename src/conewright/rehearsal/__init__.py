"""Rehearses an exercise: how long each act takes, who waits for what, and what chance does to it."""
