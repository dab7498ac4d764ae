"""Runs Conewright from the command line."""
