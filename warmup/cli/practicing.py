"""``warmup practice``: which level it means, and a round in lines."""

import contextlib

from warmup.cli import spoken_lines
from warmup.cli.letters import chosen, not_understood, question
from warmup.cli.lines import Ended, ask, part, say, take_any_bytes
from warmup.cli.plain import SMALL_THINGS
from warmup.cli.printing import Refused
from warmup.model import LevelId, Mark
from warmup.session import undoing
from warmup.session.context import Context
from warmup.session.practice import APART, DONE, PracticeRound, levels_of, title, why_not
from warmup.session.words import has_small_things
from warmup.text import did_you_mean
from warmup.tui.actions import Hand, with_keys

MARKS = "The marks mean what they mean in a morning, and change none."


def level_named(context: Context, what: str) -> LevelId:
    """The level of "skill:level", or the last open one of "skill". Refused, with why, where there is none."""
    skill, _, key = what.partition(":")
    levels = levels_of(context, skill)
    if not levels:
        every = {item.skill for item in context.curriculum().items}
        raise Refused(f"no skill {skill!r}{did_you_mean(skill, every)}")
    named = [level for level in levels if not key or level == LevelId(what)]
    if not named:
        known = ", ".join(level.partition(":")[2] for level in levels)
        raise Refused(f"no level {key!r} in {skill}; there is {known}")
    reasons = {level: why_not(context, level) for level in named}
    able = [level for level in named if not reasons[level]]
    if not able:
        raise Refused(f"{title(named[0])}: {with_keys(reasons[named[0]], Hand.RIGHT)}")
    return able[-1]


def in_lines(context: Context, level: LevelId) -> None:
    """A whole round in lines; it ends after the last prompt, when the adult leaves, or with the input."""
    assert context.journal is not None
    take_any_bytes()
    round_ = PracticeRound(context, context.journal, level)
    say(f"Practice: {title(level)}. Prompts: {len(round_.prompts)}.")
    if has_small_things(*(prompt.table for prompt in round_.prompts)):
        say(SMALL_THINGS)
    with contextlib.suppress(Ended, KeyboardInterrupt):
        _Spoken(context, round_).run()


class _Spoken:
    """One adult who types lines. A mark is on disk before the next line is printed."""

    def __init__(self, context: Context, round_: PracticeRound) -> None:
        self._round, self._reads = round_, bool(context.child.reads)
        self._covered = self._reads or not context.family.answers_shown

    def run(self) -> None:
        """Ask and answer until all prompts are behind. Ended where the adult leaves before."""
        stands = -1
        while self._round.prompt is not None:
            if self._round.position != stands:
                # For who reads, each answer is covered until it is asked for.
                self._covered = self._covered or self._reads
                stands = self._round.position
                part(spoken_lines.prompt_lines(self._round, covered=self._covered))
            named = [choice for choice in spoken_lines.IN_PRACTICE if choice.id in spoken_lines.FIRST]
            line = ask(question(named))
            name = chosen(line, spoken_lines.IN_PRACTICE)
            if not name:
                say(not_understood(line, named))
            elif self._does(name):
                stands = -1
        part((DONE, APART))

    def _does(self, name: str) -> bool:
        """Do what a line means; whether all that stands there is to be said again."""
        round_ = self._round
        match name:
            case "quit":
                raise Ended
            case "help":
                part(spoken_lines.help_lines(spoken_lines.IN_PRACTICE, marks=False))
                say(MARKS)
            case "undo":
                say("Undone: the last mark." if round_.undo() else "Nothing to undo.")
                return True
            case "cue":
                before = round_.cue
                round_.next_cue()
                say(*spoken_lines.newest_cue(round_, before))
            case "cover":
                self._covered = not self._covered
                say(*spoken_lines.answer(round_, covered=self._covered))
            case "stage":
                say(*spoken_lines.more_about(round_, covered=self._covered))
            case "next":
                round_.next()
            case "back":
                round_.back()
            case "say_again":
                return True
            case _:
                mark = Mark(name)
                round_.mark(mark)
                say(f"{undoing.MARK_WORDS[mark].capitalize()}.")
        return False
