"""One morning by keys: what is asked before it, each prompt with its mark, and the close."""

import re
import time
from collections.abc import Callable

from tests.benchmarks._lived_child import FLUENT, NONE, SKIPPED, Answer, Row
from tests.benchmarks._lived_compare import Compared
from tests.benchmarks._lived_house import OFF, House, Machine
from tests.benchmarks._lived_program import OPENING, ROOM, SCRIPT, Now, Screen

GLYPHS = {FLUENT: "●", "hesitated": "◐", "not_yet": "○", SKIPPED: "–", NONE: "·"}
FORM, BY_DAY, MANY = "Nickname", "school, or off?", "mornings have no warm-up."
COUNTS, READS = "Does it count as a school day?", "read words like"
_BEADS = re.compile(r"(?:(?:[●◐○–·]|\[[^]]+\])(?: |$))+", re.MULTILINE)
_SHOWN = re.compile(r"^([●◐○–·])  ")


PAINTED = 3.0
"""For so many seconds what is to be on screen may take to get there."""
RARE = {"undo": 2, "another": 2, "leave": 1, "wind down": 1}
"""What rarely happens, and how often in a hundred prompts."""


class Lived:
    """One child's morning, at a machine, with the program on screen."""

    def __init__(self, house: House, machine: Machine, screen: Screen, compared: Compared) -> None:
        self.house, self.machine, self.screen, self.compared = house, machine, screen, compared
        self.day = screen.day
        self.child = house.children[0]
        self.glyphs: list[str] = []
        self.plain = True
        """Whether the beads are just the marks in their order: nothing was left, replaced or cut short."""

    def same(self, what: str, shown: object, counted: object) -> None:
        """Compare a figure on screen."""
        self.compared.same(what, shown, counted, f"{self.house.name} {self.child.name} {self.day}")

    def shows(self, what: str, read: Callable[[], object], counted: object) -> None:
        """Compare a figure that may still be on its way to the screen."""
        end = time.perf_counter() + PAINTED
        while read() != counted and time.perf_counter() < end:
            self.screen.settle(0.05)
        self.same(what, read(), counted)

    # -- up to the opening

    def arrive(self) -> None:
        """Answer what is asked first, until the opening is on screen."""
        answered = set[str]()
        asks = (FORM, BY_DAY, MANY, COUNTS, READS)
        while True:
            text = self.screen.wait(
                lambda text: OPENING in text or any(ask in text for ask in asks if ask not in answered)
            )
            self.screen.settle()
            if OPENING in text:
                return
            ask = next(ask for ask in asks if ask in text and ask not in answered)
            answered.add(ask)
            self._answer(ask)

    def _answer(self, ask: str) -> None:
        if ask == FORM:
            self.screen.press(*self.child.name, "enter")
        elif ask == MANY:
            self.same("mornings asked about", self._many(), len(self.machine.missing(self.day)))
            self.screen.press("o")
        elif ask == BY_DAY:
            self._by_day()
        else:
            self.screen.press("enter")

    def _many(self) -> int:
        found = re.search(rf"(\d+) {MANY}", self.screen.terminal.text())
        return int(found[1]) if found else 0

    def _by_day(self) -> None:
        """Say of each missed morning what it was, and go on."""
        missing = self.machine.missing(self.day)
        for number, day in enumerate(missing):
            if number:
                self.screen.press("right")
            off = self.house.fates[day] == OFF
            self.screen.press("space", *["space"] * off)
            if off:
                self.machine.year.off.add(day)
            else:
                self.machine.told_school.add(day)
        told = self.machine.year
        text = self.screen.terminal.text()
        found = re.search(r"Today: school day (\d+), week (\d+)", text)
        shown = (int(found[1]), int(found[2])) if found else text
        self.same("missed mornings: today is", shown, (told.number(self.day), told.week(self.day)))
        self.machine.told_until = missing[-1]
        self.screen.press("enter")

    def opening(self) -> None:
        """Whose morning it is, and what the opening's first line says; then on to the first prompt."""
        self.screen.wait(lambda _text: "school day" in self.first_line())
        first = self.first_line()
        if len(self.house.children) > 1:
            self.child = next(each for each in self.house.children if first.endswith(f"· {each.name}"))
        several = f" · {self.child.name}" if len(self.house.children) > 1 else ""
        self.shows("opening: date and school day", self.first_line, f"{self._date()}{several}")
        self.glyphs, self.plain = [], True
        self.screen.press("right")
        self.screen.wait(lambda _text: self.screen.at()[0] == 1)

    def first_line(self) -> str:
        """The first words on the adult's side."""
        lines = (line[SCRIPT:].strip() for line in self.screen.terminal.screen.display)
        return next((line for line in lines if line), "")

    def _date(self) -> str:
        """The date and the school day; where there is room for it beside a name, that it is the last one."""
        year, several = self.machine.year, len(self.house.children) > 1
        date = f"{self.day:%a %b} {self.day.day} · school day {year.number(self.day)}"
        last = f"{date}, the last"
        fits = len(last + f" · {self.child.name}" * several) <= ROOM
        return last if fits and self.day == year.mornings[-1] else date

    # -- the prompts

    def prompts(self) -> None:
        """Mark prompt after prompt, up to the close."""
        while not self.screen.closed():
            now = self.screen.laptop.now(self.child.name, self.day)
            assert now is not None, f"no prompt in the journal, on screen:\n{self.screen.terminal.text()}"
            self._see(now)
            if self.plain and self._rare(now, "another"):
                self._another()
            elif self._rare(now, "leave"):
                self._leave(now)
            elif self.plain and now.position > 2 and self._rare(now, "wind down"):
                self._wind_down()
            else:
                self._mark(now, self.child.answer(now.prompt["item"], self.day))

    def _rare(self, now: Now, what: str) -> bool:
        return 100 * self.child.chance(self.day, now.position, what) < RARE[what]

    def _see(self, now: Now) -> None:
        """Compare what is on screen with the journal's prompt, and the beads with what was keyed."""
        say = " ".join(now.prompt["say"].split())
        self.shows(
            "words on screen are the journal's", lambda: say if say in self.screen.script() else "", say
        )
        if self.plain:
            at, _ = self.screen.at()
            self.same("prompt: its number", at, now.position + 1)
            self.shows("prompt: beads before it", lambda: self._beads()[: at - 1], self.glyphs)

    def _beads(self) -> list[str]:
        """The beads at the top, that of the prompt on screen without its brackets."""
        head = "\n".join(line[SCRIPT:].strip() for line in self.screen.terminal.screen.display[:4])
        row = next(found[0] for found in _BEADS.finditer(head) if "[" in found[0])
        return [each.strip("[]") for each in row.split()]

    def _went_on(self, at: int) -> None:
        self.screen.wait(lambda _text: self.screen.closed() or self.screen.at()[0] not in (0, at))
        self.screen.settle(0.015)

    def _mark(self, now: Now, answer: Answer) -> None:
        at, _ = self.screen.at()
        self.screen.press(*["space"] * answer.cues)
        self._key(self.child.key(answer.mark, self.day, now.position), at)
        if answer.mark and self._rare(now, "undo"):
            self.screen.press("u")
            self.screen.wait(lambda _text: self.screen.at()[0] == at)
            self.screen.settle()
            again = self.screen.laptop.now(self.child.name, self.day)
            self.same("after undo the same prompt", again and again.position, now.position)
            self._key(self.child.key(answer.mark, self.day, "again"), at)
        if answer.mark:
            row = Row(
                self.day, now.position, now.prompt["item"], answer.mark, answer.cues, self.machine.adult
            )
            self.child.keyed(row)
        self.glyphs.append(GLYPHS[answer.mark])

    def _key(self, key: str, at: int) -> None:
        self.screen.terminal.press(key)
        self._went_on(at)

    def _another(self) -> None:
        """Ask another one: the next prompt of the journal stands in its place."""
        self.plain = False
        self.screen.press("k")
        self.screen.wait("Another one. Why?")
        self.screen.press("enter")
        self.screen.wait(lambda _text: self.screen.at()[0] > 0 or self.screen.closed())
        self.screen.settle(0.1)
        self.compared.done["another one"] += 1

    def _leave(self, now: Now) -> None:
        at, _ = self.screen.at()
        self.screen.choose("leave it")
        self._went_on(at)
        self.child.keyed(Row(self.day, now.position, now.prompt["item"], SKIPPED, 0, self.machine.adult))
        self.glyphs.append(GLYPHS[SKIPPED])
        self.compared.done["prompts left"] += 1

    def _wind_down(self) -> None:
        self.plain = False
        self.screen.press("m")
        self.screen.wait("Wind down.")
        self.screen.press("i")
        self.screen.wait(lambda _text: self.screen.at()[0] > 0 or self.screen.closed())
        self.screen.settle(0.1)
        self.compared.done["mornings wound down"] += 1

    # -- the close

    def close(self) -> None:
        """Compare the close with what was keyed."""
        self.screen.settle(0.1)
        if self.plain:
            lines = [line[SCRIPT:].strip() for line in self.screen.terminal.screen.display]
            shown = [found[1] for line in lines if (found := _SHOWN.match(line))]
            asked = [each for each in self.glyphs if each != GLYPHS[SKIPPED]]
            self.same(
                "close: beads", shown, (self.glyphs if len(shown) > len(asked) else asked)[: len(shown)]
            )
        self.shows("close: date and school day", lambda: self.first_line().startswith(self._date()), True)
        if self.child.kind == "wobbly" and self.child.chance(self.day, "rough") < 0.03:
            self.screen.press("h")
            self.child.rough.add(self.day)
            self.compared.done["rough days"] += 1
