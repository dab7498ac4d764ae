"""Data that ships with Conewright and is read at the edge."""
