"""Mutants that no test can tell from the program: the module, the line, what it became, and why."""

_YEAR, _MERGING = "warmup/schoolyear.py", "warmup/journal/merging.py"
_ROWS, _LOG = "warmup/journal/rows.py", "warmup/journal/log.py"
_NO_CASE = "SQL takes the names of tables and columns in any case"
_ANY_NUMBER = "any number will do that is the same for both"
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
    (
        _ROWS,
        'ABOUT = "started, touched, shape, routine, position, furthest, rough, closed"',
        'ABOUT = "STARTED, TOUCHED, SHAPE, ROUTINE, POSITION, FURTHEST, ROUGH, CLOSED"',
    ): _NO_CASE,
    (_ROWS, 'PROMPT = "position, item, wording"', 'PROMPT = "POSITION, ITEM, WORDING"'): _NO_CASE,
    (
        _ROWS,
        'MARK = "position, mark, cue, adult, from_memory, at"',
        'MARK = "POSITION, MARK, CUE, ADULT, FROM_MEMORY, AT"',
    ): _NO_CASE,
    (_ROWS, 'for table in ("prompts", "marks"):', 'for table in ("PROMPTS", "marks"):'): _NO_CASE,
    (_ROWS, 'for table in ("prompts", "marks"):', 'for table in ("prompts", "MARKS"):'): _NO_CASE,
    (
        _LOG,
        'COLUMNS = "id, child, date, sitting, at, window, what, position, before, after, takes_back"',
        'COLUMNS = "ID, CHILD, DATE, SITTING, AT, WINDOW, WHAT, POSITION, BEFORE, AFTER, TAKES_BACK"',
    ): _NO_CASE,
    (
        _LOG,
        "return (*(str(part) for part in row._replace(session=0)), str(began))",
        "return (*(str(part) for part in row._replace(session=None)), str(began))",
    ): _ANY_NUMBER,
    (
        _LOG,
        "return (*(str(part) for part in row._replace(session=0)), str(began))",
        "return (*(str(part) for part in row._replace(session=1)), str(began))",
    ): _ANY_NUMBER,
    (
        "warmup/engine/picking.py",
        "return c.item.places == 1 or c.begins or c.level.rested(today.index, 0) >= APART",
        "return c.item.places == 1 or c.begins or c.level.rested(today.index, None) >= APART",
    ): "a level that has begun has a last morning, so when it opened is not asked",
    ("warmup/engine/targets.py", 'skill: str = ""', 'skill: str = "XXXX"'): "no skill has that name either",
    ("warmup/engine/targets.py", 'code: str = ""', "code: str = None"): "no item has that code either",
    (
        "warmup/engine/memory.py",
        "return interval + 2 * rested if rested <= interval else 3 * min(rested, 2 * interval)",
        "return interval + 2 * rested if rested < interval else 3 * min(rested, 2 * interval)",
    ): "the two meet where an item has rested just its interval",
    (
        "warmup/engine/rules.py",
        'Rule("any", SlotKind.OLDER, _any, 12),',
        'Rule("any", SlotKind.OLDER, _any, 13),',
    ): "a morning has ten prompts at most",
}
