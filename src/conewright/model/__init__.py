"""Records that travel between the rings, and pure readings of them; imports nothing else of Conewright."""
