"""Mutants that no test can tell from the program: the module, the line, what it became, and why."""

EQUIVALENT: dict[tuple[str, str, str], str] = {}
