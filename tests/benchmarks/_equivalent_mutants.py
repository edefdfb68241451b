"""Mutants that no test can tell from the program: the module, the line, what it became, and why."""

_YEAR, _MERGING = "warmup/schoolyear.py", "warmup/journal/merging.py"
_ROWS, _LOG = "warmup/journal/rows.py", "warmup/journal/log.py"
_SAME_MARK = "marks that tie in all they are ordered by are the same in all, so either may be kept"

EQUIVALENT: dict[tuple[str, str, str], str] = {
    (_YEAR, "before = None", 'before = ""'): "no stretch ends on what is no date, whatever that is",
    (
        _MERGING,
        "if position not in marks or _later_mark(mark) > _later_mark(marks[position]):",
        "if position not in marks or _later_mark(mark) >= _later_mark(marks[position]):",
    ): _SAME_MARK,
    (
        _MERGING,
        "if at not in marks or _later_mark(older.marks[at]) > _later_mark(marks[at]):",
        "if at not in marks or _later_mark(older.marks[at]) >= _later_mark(marks[at]):",
    ): _SAME_MARK,
    (
        _MERGING,
        'return row.at, row.mark.value if row.mark else "", row.cue, row.adult, row.from_memory',
        'return row.at, row.mark.value if row.mark else "XXXX", row.cue, row.adult, row.from_memory',
    ): "capitals come before the small letters of every mark, as nothing does",
    (
        _ROWS,
        "numbers = {number for number in taken if 0 < number < TOO_HIGH}",
        "numbers = {number for number in taken if 0 <= number < TOO_HIGH}",
    ): "a zero among the numbers counts as much as none: one comes after it",
}
