"""Patterns: repeating patterns of the Virginia Standards of Learning, worked example ex75; no CCSSM code."""

from collections import Counter

import pytest

from tests.oracles.patterns import parts
from tests.skills.asking import asked, example, sought
from warmup import skills
from warmup.pictures.pattern_row import PatternRow

NEXT = ("ab-heard", "ab-seen", "aab", "abb", "abc", "mid-start")
ITEMS = [name for level in skills.SKILLS["patterns"].levels for name in level.items]


def form(pieces: list[str]) -> str:
    """A part in letters, by first coming: ABB."""
    letters = dict(zip(dict.fromkeys(pieces), "ABC", strict=False))
    return "".join(letters[piece] for piece in pieces)


def repeating(shown: list[str]) -> list[str]:
    """The shortest part that what is shown, without a gap, can be made of."""
    return [str(piece) for piece in parts(shown, 3)[0]]


@pytest.mark.parametrize("item", NEXT)
def test_what_is_shown_goes_on_in_one_way_only(item: str) -> None:
    """Of all parts of up to three pieces, made of whatever pieces, every one that fits goes on alike."""
    for p in asked(f"patterns/{item}"):
        shown, want = p.given["shown"], p.given["want"]
        fitting = parts(shown, 3)
        goes_on = {
            tuple(part[n % len(part)] for n in range(len(shown), len(shown) + want)) for part in fitting
        }
        assert goes_on == {tuple(p.answer.split(", "))}
        assert len(shown) >= 2 * len(fitting[0]), "the part is given twice at least"


def test_a_missing_piece_can_be_one_piece_only() -> None:
    for p in asked("patterns/missing", 600):
        shown = p.given["shown"]
        gap = shown.index("?")
        assert shown.count("?") == 1 and 1 < gap < len(shown) - 1
        assert {part[gap % len(part)] for part in parts(shown, 3)} == {p.answer}


def test_short_runs_are_open_and_so_are_not_asked() -> None:
    """The check above can fail: after clap, stamp, clap a part of two and a part of three part ways."""
    fitting = parts(["clap", "stamp", "clap"], 3)
    assert len({part[3 % len(part)] for part in fitting}) > 1


def test_clap_clap_stamp() -> None:
    """examples.toml, ex75."""
    row = example("ex75")
    p = sought("patterns/aab", {"shown": row["given"]})
    assert p.answer.split(", ") == row["answer"]


@pytest.mark.parametrize(
    ("item", "forms"),
    [
        ("ab-heard", {"AB"}),
        ("ab-seen", {"AB"}),
        ("aab", {"AAB"}),
        ("abb", {"ABB"}),
        ("abc", {"ABC"}),
        ("mid-start", {"ABA"}),
        ("name-the-part", {"AB", "AAB", "ABB", "ABC"}),
        ("how-long-a-part", {"AB", "AAB", "ABB", "ABC"}),
    ],
)
def test_items_repeat_what_they_are_named_for(item: str, forms: set[str]) -> None:
    assert {form(repeating(p.given["shown"])) for p in asked(f"patterns/{item}")} == forms


def test_a_row_that_starts_in_the_middle_is_one_begun_later() -> None:
    for p in asked("patterns/mid-start"):
        part = repeating(p.given["shown"])
        assert form(part[2:] + part[:2]) == "AAB"


def test_any_turn_of_the_part_names_it() -> None:
    for p in asked("patterns/name-the-part"):
        part = repeating(p.given["shown"])
        assert p.answer == ", ".join(part)
        assert set(p.accept) == {", ".join(part[n:] + part[:n]) for n in range(1, len(part))}


@pytest.mark.parametrize("item", ITEMS)
def test_a_row_is_seen_or_said_and_its_picture_has_no_answer(item: str) -> None:
    seen = 0
    for p in asked(f"patterns/{item}"):
        shown = tuple(p.given["shown"])
        if p.picture is None:
            assert all(piece == "?" or piece in p.say.lower() for piece in shown)
            continue
        seen += 1
        assert isinstance(p.picture, PatternRow)
        assert p.picture.pieces == shown + ("?",) * p.given.get("want", 0)
        assert not any(piece in p.say for piece in shown if piece != "?")
    share = {"ab-heard": 0.0, "ab-seen": 1.0}.get(item, 1 / 3)
    assert seen / 200 == pytest.approx(share, abs=0.12)


def test_neither_the_first_nor_the_last_piece_is_the_safe_answer() -> None:
    """By turns, the next piece is the first one about half of the time; of three, about a third."""
    for item, share in (("ab-heard", 0.5), ("ab-seen", 0.5), ("abc", 1 / 3)):
        first = [p.answer == p.given["shown"][0] for p in asked(f"patterns/{item}", 600)]
        assert sum(first) / 600 == pytest.approx(share, abs=0.1)
    long = Counter(p.answer for p in asked("patterns/how-long-a-part", 600))
    assert 0.4 < long["two"] / 600 < 0.6


@pytest.mark.parametrize("item", ITEMS)
def test_a_row_that_is_not_in_the_picture_is_done_or_laid_out(item: str) -> None:
    for p in asked(f"patterns/{item}"):
        assert bool(p.do) == (p.picture is None)
        if p.do:
            laid = p.do.startswith("Set them in a row")
            assert laid == bool(p.table) and (laid or p.do.startswith("Do each one"))
            assert ("blank" in p.do) == ("?" in p.given["shown"]) == ("blank" in p.say.lower())


def test_the_doubled_second_piece_has_a_record_of_its_own() -> None:
    """ABB turned into AB: the child copies a beat, so the part is not named yet."""
    _, three, name = skills.SKILLS["patterns"].levels
    assert three.variants[0] == "aab" and three.misconceptions == ("abb",)
    assert name.waits_on == ("patterns/abb",)
    assert not any(level.codes or level.toward for level in skills.SKILLS["patterns"].levels)
