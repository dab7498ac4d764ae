"""Keeps what must be kept: files, the database and the figures that ship with Conewright."""
