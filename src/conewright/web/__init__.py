"""Serves the pages to a browser."""
