"""A family with ten weeks behind it: two children, own prompts, days off, a Saturday, skipped prompts."""

import datetime as dt
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.household import OWN, StandingClock
from warmup import skills
from warmup.cli.demo import write_history
from warmup.config import family as families
from warmup.config.family import Child, CountdownRule, Family
from warmup.config.places import Places
from warmup.journal.journal import Journal, MarkRow
from warmup.journal.routine_json import routine_text
from warmup.model import ItemId, Mark, Prompt, Routine
from warmup.randomness import SeededRandom
from warmup.session.context import Context, open_context
from warmup.skills.own import own

FIRST = dt.date(2026, 8, 31)
TODAY = dt.date(2026, 11, 12)
SATURDAY = dt.date(2026, 10, 3)
OFF = (dt.date(2026, 10, 12), dt.date(2026, 10, 13))
KNOWN_UNTIL = dt.date(2026, 11, 5)
REASON = "the leaf trip"
CHILD, OTHER = "Bean", "Wren"
FAMILY = Family(
    first_day=FIRST,
    began=FIRST,
    children=(Child(CHILD, reads=False), Child(OTHER, reads=False)),
    off=(OFF,),
    countdowns=(CountdownRule(REASON, dt.date(2026, 11, 20)),),
    extra=(SATURDAY,),
    known_until=KNOWN_UNTIL,
    adult="Aunt Juniper",
)


@dataclass(frozen=True)
class Home:
    """Where the family's files lie, and its folder as a place."""

    folder: Path

    @property
    def journal(self) -> Path:
        return self.folder / "journal.db"

    def context(self, child: str = CHILD, family: Family | None = None) -> Context:
        """A context for printing, as the command has it."""
        places = Places(self.folder, self.folder)
        journal = Journal.open(self.folder, StandingClock(at_eight(TODAY)), read_only=True)
        family = family or families.load(self.folder / "family.toml")
        return open_context(places, family, TODAY, journal, child=child, saved=False)


def at_eight(day: dt.date) -> dt.datetime:
    return dt.datetime.combine(day, dt.time(8))


@pytest.fixture(scope="session")
def lived_in(tmp_path_factory: pytest.TempPathFactory) -> Home:
    """The family's home; nothing in it may be changed."""
    home = tmp_path_factory.mktemp("reported")
    families.save(home / "family.toml", FAMILY)
    places = Places(home, home)
    write_history(open_context(places, FAMILY, dt.date(2026, 11, 5), None), places, FIRST)
    (home / "own.toml").write_text(
        f'[[prompt]]\nname = "{OWN.name}"\nsay = "{OWN.say}"\nanswer = "42 Pear Tree Lane"\n', "utf-8"
    )
    context = open_context(places, FAMILY, TODAY, None)
    _keep(context, CHILD, SATURDAY, {f"own/{OWN.name}": Mark.FLUENT, "weekday/today": Mark.SKIPPED})
    _keep(context, CHILD, dt.date(2026, 11, 9), {"make-ten/seven-three": None, "count/to-20": Mark.NOT_YET})
    _keep(context, CHILD, dt.date(2026, 11, 10), {"coins/name-it": Mark.FLUENT}, 2, f"{OTHER}’s cup, tray")
    _keep(context, OTHER, dt.date(2026, 11, 9), {"clock/o-clock": Mark.FLUENT})
    return Home(home)


def _keep(
    context: Context, child: str, day: dt.date, marks: dict[str, Mark | None], cue: int = 0, table: str = ""
) -> None:
    """Put a second or a first session of a day into the journal, with these marks by item."""
    journal = Journal.open(context.places.data, StandingClock(at_eight(day)))
    morning, made = context.morning(day), own([OWN])
    prompts: tuple[Prompt, ...] = tuple(
        skills.prompt(ItemId(item), morning, SeededRandom("kept", item), own=made.skill) for item in marks
    )
    if table:
        prompts = tuple(prompt._replace(table=table) for prompt in prompts)
    journal.start(
        child,
        day,
        "daily",
        routine_text(Routine(child, morning, "daily", prompts)),
        [(prompt.item, prompt.wording) for prompt in prompts],
        [MarkRow(mark, cue, "Aunt Juniper", False, f"{day}T08:00:00") for mark in marks.values()],
    )
    journal.shut()
