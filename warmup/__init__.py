"""A short spoken math warm-up for a five-year-old, computed and remembered for the adult at the table."""

__version__ = "0.1.0"
