"""Every setting of family.toml with an example and what it means, for ``warmup check --settings``.

The lines make a whole family.toml. A test holds that the parser reads each key, and no key besides.
"""

from collections.abc import Iterator
from typing import NamedTuple


class Setting(NamedTuple):
    """One key: an example as it is written, what it means, and what holds where it is left out."""

    example: str
    means: str
    otherwise: str


_MUST = "must be there"
SETTINGS: tuple[tuple[str, tuple[Setting, ...]], ...] = (
    ("", (Setting("format = 1", "the form of this file", "1"),)),
    (
        "[school]",
        (
            Setting("first_day = 2026-08-31", "the first school day of the year", _MUST),
            Setting("first_week = 3", "the week of lessons that day belongs to, 1 to 36", "1"),
            Setting("held_weeks = [9]", "weeks of lessons that take one school week more, each time", "none"),
            Setting("skipped_weeks = [11]", "weeks of lessons that take none", "none"),
            Setting("last_day = 2027-05-21", "the year ends here, whatever is left", "when week 36 is done"),
            Setting(
                'weekdays = ["Monday", "Tuesday", "Thursday", "Friday"]',
                "the days of the week with school",
                "Monday to Thursday",
            ),
            Setting(
                'days_off = [2026-10-12, {from = 2026-12-21, to = 2027-01-01}, "last Monday of May", '
                '{yearly = "fourth Thursday of November", days = 2}]',
                "days with no school, once (both ends of a stretch are off) or every year",
                "none",
            ),
            Setting("extra = [2026-12-05]", "school mornings on other days", "none"),
            Setting("began = 2026-11-25", "the day you first used warmup", "the first school day"),
            Setting("settled = 2026-12-04", "up to this day you have said which days were school", "no day"),
        ),
    ),
    (
        "[[child]]",
        (
            Setting(
                'nickname = "Bean"', "what your child is called on the screen, one for each child", _MUST
            ),
            Setting('record = "Sunshine"', "the name the marks are kept by: leave it alone", "the nickname"),
            Setting(
                'held = ["coins:worth"]',
                "levels you have not taught yet: they wait, as skill:level (warmup catalogue lists them)",
                "none",
            ),
            Setting(
                'opened = ["make-ten:see-places"]',
                "levels you have taught early: they may come at once",
                "none",
            ),
            Setting(
                "paused = 2026-12-10",
                "up to and on this day nothing new begins; 2999-12-31 means until you say",
                "no pause",
            ),
            Setting(
                "reads = true",
                "whether your child reads words like seven: answers then start covered",
                "asked once, in week 21",
            ),
            Setting(
                "prompts = 5", "how many prompts a morning of this child has, 4 to 10", "as the family's"
            ),
            Setting(
                "began = 2027-01-11", "the day of this child's first warm-up", "the day you first used warmup"
            ),
            Setting("resting = true", "no mornings of this child for now", "false"),
            Setting(
                "first_day = 2027-01-11",
                "this child's own first school day, where it is not the family's",
                "the family's weeks",
            ),
            Setting("first_week = 2", "the week of lessons that day belongs to", "1"),
            Setting("held_weeks = [2]", "as under [school], for a child with weeks of its own", "none"),
            Setting("skipped_weeks = [3]", "as under [school], for a child with weeks of its own", "none"),
        ),
    ),
    (
        "[child.taught]",
        (
            Setting(
                '"make-ten/seven-three" = 2026-12-03',
                "the day you taught this item again, so that it may come back",
                "it rests",
            ),
        ),
    ),
    (
        "[[countdown]]",
        (
            Setting('name = "the lake"', "a day to look forward to, counted in sleeps", _MUST),
            Setting("date = 2027-06-04", "when it is", "yearly says it"),
        ),
    ),
    (
        "[[countdown]]",
        (
            Setting('name = "the feast"', "another one", _MUST),
            Setting(
                'yearly = "fourth Thursday of November"',
                'when it comes every year; "December 25" and "last Monday of May" will do too',
                "date says it",
            ),
        ),
    ),
    (
        "[preferences]",
        (
            Setting('theme = "light"', "dark, light, or contrast (the most there is)", "dark"),
            Setting('answers = "covered"', "shown or covered when a prompt comes up", "shown"),
            Setting("pennies = false", "whether prompts may use pennies", "true"),
            Setting('animal = "Moose"', "what the stuffed animal in some prompts is called", "Bear"),
            Setting(
                "prompts = 6",
                "how many prompts a morning has from now on, 4 to 10",
                "5 at first, 8 from January on, as routines/year.toml says",
            ),
            Setting(
                "together = true",
                "whether the prompts of several children take turns in one morning",
                "false: one child after the other",
            ),
            Setting(
                "pixels = false",
                "whether the stage shows true pixels, where the terminal can and resvg_py is installed",
                "true",
            ),
            Setting('adult = "Dad"', "who marks on this machine, kept with each mark", "nobody"),
        ),
    ),
    (
        "[household]",
        (
            Setting(
                "toddler = true",
                "a toddler is in the house: no prompt wants small things (no guarantee: look yourself)",
                "false",
            ),
            Setting(
                'without = ["wall calendar", "clock with hands"]',
                "things your house does not have: no prompt wants them",
                "it has all",
            ),
            Setting(
                'printed = ["ten-frames", "coins"]',
                "sheets you have on paper: warmup sheets week leaves them out",
                "none",
            ),
        ),
    ),
    (
        "[keys]",
        (
            Setting(
                'undo = "f2"',
                "a key of your own, or a list of keys, for an action that warmup check --keys lists",
                "the usual keys",
            ),
        ),
    ),
    (
        "[keeping]",
        (
            Setting(
                'copies = "/media/stick/warmup"',
                "a folder, on a stick say, that gets a copy of the journal once a week",
                "no copies",
            ),
            Setting(
                'forgotten = ["0f1e2d3c4b5a69788796a5b4c3d2e1f0-00112233445566778899aabbccddeeff"]',
                "children you took out with warmup forget, unreadable: leave it alone",
                "none",
            ),
        ),
    ),
)
"""The headings of family.toml in their order, each with its settings."""


def lines() -> Iterator[str]:
    """A whole family.toml, each setting under what it means."""
    yield "# Every setting of family.toml, with an example. first_day and one nickname are enough."
    for heading, settings in SETTINGS:
        yield ""
        if heading:
            yield heading
        for setting in settings:
            left_out = _MUST if setting.otherwise == _MUST else f"left out: {setting.otherwise}"
            yield f"# {setting.means} ({left_out})"
            yield setting.example
