"""What a morning that goes on loads: the skills of its own prompts, and nothing that chooses others."""

import subprocess
import sys
from pathlib import Path

from tests.household import TODAY, StandingClock, context_at, start_fixed
from warmup.skills import SKILLS

RESUME = f"""
import datetime as dt, pathlib, sys
from warmup.config.places import Places
from warmup.journal.journal import Journal
from warmup.session.context import load_family, open_context
from warmup.session.session import resume

home, today = pathlib.Path(sys.argv[1]), dt.date.fromisoformat("{TODAY}")
clock = lambda: dt.datetime(2027, 3, 3, 8)
places, journal = Places(home, home), Journal.open(home, clock)
context = open_context(places, load_family(places, today)[0], today, journal)
assert not context.unconfirmed_days() and context.morning().is_school
session = resume(context, journal, clock)
assert session and session.prompt and session.morning.date == today
print(*sorted(name for name in sys.modules if name.startswith("warmup.")))
"""


def test_a_morning_that_goes_on_loads_its_own_skills_and_not_what_chooses(
    tmp_path: Path, clock: StandingClock
) -> None:
    start_fixed(context_at(tmp_path, clock))
    run = subprocess.run(
        [sys.executable, "-c", RESUME, str(tmp_path)], capture_output=True, text=True, check=True
    )
    loaded = set(run.stdout.split())
    of_skills = {skill for skill in SKILLS if f"warmup.skills.{skill.replace('-', '_')}" in loaded}
    assert of_skills == {"make-ten", "count-on", "weekday", "by-tens", "month"}
    choosing = {"warmup.engine.picking", "warmup.engine.giveaways"}
    assert not loaded & {*choosing, "warmup.session.summary", "warmup.games"}
