"""Chooses and sizes an evening for whoever came; must not know files, clocks, pages or how a text is read."""
