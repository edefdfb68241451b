"""Every prompt can be asked from text alone: a picture's exact words are enough to build it again."""

import pytest

from tests.bank import prompts
from tests.pictures.examples import EXAMPLES
from tests.pictures.rebuilt import READERS, rebuilt, seen
from warmup.cli.plain import prompt_lines
from warmup.pictures import Picture, kinds
from warmup.skills import SKILLS

ALL = [
    pytest.param(picture, id=f"{kind}-{n}")
    for kind, some in EXAMPLES.items()
    for n, picture in enumerate(some)
]


def test_there_is_a_reader_for_every_kind() -> None:
    missing = set(kinds()) - set(READERS)
    assert not missing, f"no reader in tests/pictures/rebuilt.py of: {', '.join(sorted(missing))}"
    assert set(READERS) <= set(kinds())


@pytest.mark.parametrize("picture", ALL)
def test_an_example_is_rebuilt_from_its_words(picture: Picture) -> None:
    again = rebuilt(picture.kind, picture.exactly())
    assert again is not None and seen(again) == seen(picture), picture.exactly()


@pytest.mark.slow
@pytest.mark.parametrize("skill", SKILLS)
def test_what_a_skill_draws_is_rebuilt_from_the_plain_text(skill: str) -> None:
    """The question's picture and those of its cues, as the plain text tells them."""
    for prompt in prompts(skill, 25):
        lines = list(prompt_lines(prompt))
        shown = [(prompt.picture, f"Picture: {prompt.picture.exactly()}.")] if prompt.picture else []
        shown += [(cue.picture, f"(Show {cue.picture.exactly()}.)") for cue in prompt.cues if cue.picture]
        for picture, words in shown:
            assert any(line.endswith(words) for line in lines), (prompt.item, words)
            again = rebuilt(picture.kind, picture.exactly())
            assert again is not None and seen(again) == seen(picture), (prompt.item, words)
