"""Reading and writing exercises as sentences; must not know of time, drawing or where texts are kept."""
