"""Proves that an exercise runs, and says what to mend where it does not."""
