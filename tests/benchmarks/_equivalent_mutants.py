"""Mutants that no test can tell from the program: the module, the line, what it became, and why."""

_YEAR = "warmup/schoolyear.py"

EQUIVALENT: dict[tuple[str, str, str], str] = {
    (_YEAR, "before = None", 'before = ""'): "no stretch ends on what is no date, whatever that is",
}
