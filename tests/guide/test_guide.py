"""The guide: its files have their form, and what they name is there."""

import re
from importlib.resources import files

import pytest

from warmup import guide
from warmup.guide import NAMES, Topic, topic, topics
from warmup.tui.actions import ACTIONS
from warmup.tui.choice import LABEL, SENTENCE


def test_every_file_is_a_topic() -> None:
    there = {each.name.removesuffix(".md") for each in files(guide).iterdir() if each.name.endswith(".md")}
    assert there == {*NAMES} and len(there) == len(NAMES)


@pytest.mark.parametrize("each", topics(), ids=lambda each: each.name)
def test_a_topic_has_a_title_and_a_sentence_that_fit_a_list(each: Topic) -> None:
    assert 0 < len(each.title) < LABEL and "#" not in each.title
    assert 0 < len(each.about) <= SENTENCE and each.about.endswith(".") and "*" not in each.about
    assert each.whole.startswith(f"# {each.title}\n\n") and len(each.text) > 200


def test_what_stands_in_the_menu_by_the_guide_does() -> None:
    named = re.findall(r"\*([^*]+)\* \(in the menu", "\n".join(each.text for each in topics()))
    labels = {action.label.casefold().replace("’", "'") for action in ACTIONS if action.menu}
    labels |= {"nothing new until i say"}
    assert len(named) > 5 and [name for name in named if name.casefold() not in labels] == []


def test_there_is_no_other_topic() -> None:
    with pytest.raises(KeyError):
        topic("../__init__")
