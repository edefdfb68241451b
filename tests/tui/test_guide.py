"""The pages of the guide: from the menu and from the help, to be read and left with either hand."""

from tests.tui.frame import frame
from tests.tui.pressing import morning, press
from warmup.guide import topics
from warmup.tui.app import WarmupApp
from warmup.tui.guide import GuideScreen
from warmup.tui.help import HelpScreen
from warmup.tui.topic import TopicScreen


async def test_every_topic_opens_and_the_list_is_there_again(app: WarmupApp) -> None:
    async with app.run_test(size=(80, 24)) as pilot:
        await press(pilot, "question_mark", "i")
        assert isinstance(app.screen, GuideScreen)
        for each in topics():
            await press(pilot, "enter")
            assert isinstance(app.screen, TopicScreen) and each.title in frame(app).splitlines()[1]
            await press(pilot, "escape")
            assert isinstance(app.screen, GuideScreen) and each.about in frame(app)
            await press(pilot, "down")
        await press(pilot, "backspace")
        assert isinstance(app.screen, HelpScreen)
        await press(pilot, "escape")
        assert morning(app)


async def test_the_left_hand_reads_as_well(app: WarmupApp) -> None:
    async with app.run_test(size=(40, 12)) as pilot:
        await press(pilot, "4", "g", "s", "e")
        assert isinstance(app.screen, TopicScreen) and "Keys" in frame(app)
        before = frame(app)
        await press(pilot, "s")
        assert frame(app) != before
        await press(pilot, "a", "a")
        assert isinstance(app.screen, HelpScreen)
