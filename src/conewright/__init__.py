"""Reads a football exercise in plain sentences, proves that it runs, rehearses it, draws it and fits it to who came."""

__version__ = "0.1.0"
