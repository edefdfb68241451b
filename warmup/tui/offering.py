"""What can be done on a morning just now, what it is called just now, and the pages that it opens."""

import datetime as dt
from collections.abc import Sequence
from typing import TYPE_CHECKING

from warmup.config.family import Child
from warmup.model import DayKind
from warmup.session.pausing import paused
from warmup.session.session import Session
from warmup.session.words import ELSEWHERE, NOTHING_KEPT, NOTHING_TO_TYPE_IN, WHOLE_MORNING, noted_words
from warmup.text import quoted
from warmup.tui.actions import BY_ID, FOR_GUESTS, Action, State, as_guest, menu_of
from warmup.tui.key_screen import KeyScreen
from warmup.tui.workspace import Workspace

if TYPE_CHECKING:
    from warmup.config.family import Family
    from warmup.session.summary import Closing

PAGES = frozenset({
    "unlocked", "menu", "another", "wind_down", "story", "review", "paper", "settings", "week", "year",
    "who", "children", "new_year", "report", "mornings", "note", "game", "play", "knows", "then", "sheets",
})  # fmt: skip
"""The pages that open on top of a morning."""
_PICKED = frozenset({"just", "swap", "hold", "known", "short", "stop", "rough"})
"""Done at a prompt when they are picked on a page of their own."""


class Offering(KeyScreen[object]):
    """The part of the morning's screen that knows it; ``endings`` is what the close says of each child."""

    def __init__(self, work: Workspace) -> None:
        super().__init__(work)
        self.endings: tuple[Closing, ...] = ()

    @property
    def session(self) -> Session | None:
        """The session, once nothing has to be asked before it."""
        return self.work.session

    @property
    def state(self) -> State:
        """The opening, a prompt, or the close."""
        if self.session and self.session.at_opening:
            return State.OPENING
        return State.CLOSE if self.session and self.session.at_close else State.PROMPT

    def belongs(self, action: str) -> bool:
        """Whether an action does something just now."""
        session = self.session
        if session is None:
            return action in ("next", "quit", "theme", "hand", "help")
        if not (super().belongs(action) or action in _PICKED):
            return False
        if self.work.guest and action not in FOR_GUESTS:
            return False
        match action:
            case "swap":
                return bool(session.prompt and session.prompt.table)
            case "review":
                return session.morning.review
            case "easy":
                return bool(session.unmarked)
            case "again":
                return session.closed
            case "pause":
                return any(ending.pause for ending in self.endings)
            case "blurted":
                return self.work.together is not None
            case "next_child":
                return self.work.next_child() is not None
            case "who":
                return bool(self.work.others())
            case "new_year":
                return session.morning.kind is DayKind.AFTER
            case "together":
                return self.work.together is not None or len(self.work.members()) > 1
            case _:
                return True

    def offered(self) -> tuple[Action, ...]:
        """What does something here just now, each as it is called just now."""
        return tuple(self._named(each) for each in super().offered() if self._useful(each.id))

    def _useful(self, action: str) -> bool:
        """Whether an action would change anything just now; a key may say that it would not."""
        session = self.session
        match action:
            case "menu" | "leave":
                return False
            case "undo":
                return self.work.can_undo
            case "back" if self.work.together:
                return True
            case "back":
                return session is not None and (session.position > 0 or session.routine.opening is not None)
            case "cue":
                return session is not None and session.cue < 3
            case _:
                return True

    def _named(self, action: Action) -> Action:
        until, next_child = paused(self.work.context), None
        if action.id == "next_child":
            next_child = self.work.next_child()
        names = {
            "next_child": f"on with {next_child.nickname}" if next_child else action.label,
            "together": "one after the other" if self.work.together else action.label,
            "new": "new things again" if until else "nothing new until I say",
            "cover": "show the answer" if self.work.covered else "hide the answer",
            "pause": "new things again" if until else action.label,
            "rough": "no rough day after all" if self.session and self.session.rough else action.label,
        }
        named = action._replace(label=names.get(action.id, action.label))
        return as_guest(named) if self.work.guest else named

    def open_page(self, page: str, session: Session) -> None:
        """A page on top of this one; what is picked on it is done."""
        match page:
            case "story":
                from warmup.tui.story import StoryScreen

                self.open(StoryScreen(self.work), self.picked)
            case "review":
                from warmup.tui.review import ReviewScreen

                self.open(ReviewScreen(self.work), self.picked)
            case "note":
                self._ask_for_note(session)
            case "another":
                from warmup.tui.another import AnotherScreen

                reasons = ["just", *["swap"] * self.belongs("swap"), "hold", "known"]
                self.open(AnotherScreen(self.work, self._entries(reasons)), self.picked)
            case "wind_down":
                from warmup.tui.wind_down import WindDownScreen

                # Where the kind end is on offer it stands first.
                ways = ["stop", "short", "rough"] if session.offers_stop else ["short", "stop", "rough"]
                if session.at_opening:
                    ways.remove("stop")
                self.open(WindDownScreen(self.work, self._entries(ways)), self.picked)
            case "menu":
                from warmup.tui.menu import MenuScreen

                entries = [self._named(each) for each in menu_of(self.state) if self.belongs(each.id)]
                self.open(MenuScreen(self.work, entries, grouped=True), self.picked)
            case _:
                self._open_page_of_the_family(page)

    def _open_page_of_the_family(self, page: str) -> None:
        """A page that is not about the prompt at hand: days, children, records, settings."""
        match page:
            case "unlocked":
                from warmup.tui.unlocked import UnlockedScreen

                self.open(UnlockedScreen(self.work))
            case "week":
                from warmup.tui.week import WeekScreen

                self.open(WeekScreen(self.work))
            case "game" | "play":
                from warmup.tui.game import GameScreen

                self.open(GameScreen(self.work))
            case "year":
                from warmup.tui.year import YearScreen

                self.open(YearScreen(self.work), lambda _: self.attempt(self.work.follow_the_year))
            case "new_year":
                from warmup.tui.new_year import NewYearScreen

                self.app.push_screen(NewYearScreen(self.work), self._take_year)
            case "who":
                from warmup.tui.who import WhoScreen

                self.open(WhoScreen(self.work), self._turn_to)
            case "children":
                from warmup.tui.children import ChildrenScreen

                self.open(ChildrenScreen(self.work), self._look_at_children)
            case "settings":
                from warmup.tui.settings import SettingsScreen

                self.open(SettingsScreen(self.work), self._take_settings)
            case _:
                self._open_past(page)

    def _open_past(self, page: str) -> None:
        """What was: mornings to look at or to type in, and a report of them."""
        match page:
            case "mornings":
                from warmup.session.past import any_kept
                from warmup.tui.mornings import MorningsScreen

                if any_kept(self.work.context, self.work.journal):
                    self.open(MorningsScreen(self.work))
                else:
                    self.work.said = NOTHING_KEPT
            case "paper":
                from warmup.session.on_paper import past_mornings
                from warmup.tui.past import PastScreen

                if days := past_mornings(self.work.context):
                    self.open(PastScreen(self.work, days), self._type_in)
                else:
                    self.work.said = NOTHING_TO_TYPE_IN
            case "knows":
                from warmup.tui.known import KnownScreen

                self.open(KnownScreen(self.work))
            case "sheets":
                from warmup.tui.sheets import SheetsScreen

                self.open(SheetsScreen(self.work), lambda _: self.show())
            case "report":
                from warmup.report.asking import Wanted
                from warmup.tui.report import ReportScreen

                self.open(ReportScreen(self.work, Wanted()), self.picked)
            case "then":
                from warmup.tui.then_and_now import ThenAndNowScreen

                self.work.context.forget()
                self.open(ThenAndNowScreen(self.work))

    def _type_in(self, date: str | None) -> None:
        """The page of a morning that was picked, to type its marks in."""
        if date:
            from warmup.tui.on_paper import PaperScreen

            self.work.context.forget()
            self.open(PaperScreen(self.work, dt.date.fromisoformat(date)))

    def _take_settings(self, family: "Family | None") -> None:
        """Keep the settings that were saved on their page."""
        if family is not None:
            self.attempt(lambda: self.work.take_settings(family))

    def _take_year(self, family: "Family | None") -> None:
        """Keep the new school year."""
        if family is not None:
            self.attempt(lambda: self.work.renew(family))
        self.show()

    def _turn_to(self, picked: str | None) -> None:
        """It is the turn of the child that was picked by its name in the journal."""
        from warmup.tui.who import WHO

        child = next((each for each in self.work.others() if f"{WHO}{each.journal_name}" == picked), None)
        if child is not None:
            self.attempt(lambda: self._begin_with(child))

    def _begin_with(self, child: Child) -> None:
        self.work.turn_to_child(child)
        self.work.start_over()

    def _look_at_children(self, changed: bool | None) -> None:
        """After the page of the children: where other children have mornings now, see whose it is."""
        if changed:
            self.attempt(self.work.see_who_is_there)

    def _ask_for_note(self, session: Session, typed: str | None = None) -> None:
        """The line for a note on the prompt on screen or on the morning, with what is there already."""
        from warmup.tui.note import NoteScreen

        kept = session.note_at(session.noting)
        text = typed if typed is not None else kept.text if kept else ""
        about = quoted(session.prompt.say) if session.prompt else WHOLE_MORNING
        self.open(NoteScreen(self.work, about, text), self._keep_note)

    def _keep_note(self, typed: str | None) -> None:
        """Keep what was typed. Where another window came before it, it is shown again where things stand."""

        def keep() -> None:
            if self.session is not None and typed is not None:
                self.work.said = noted_words(typed) if self.session.note(typed) else ""

        if typed is None:
            return
        self.attempt(keep)
        if self.work.said == ELSEWHERE and self.session is not None:
            self._ask_for_note(self.session, typed)

    def _entries(self, names: Sequence[str]) -> list[Action]:
        return [self._named(BY_ID[name]) for name in names]
