import datetime as dt
import re

from num2words import num2words

from tests.mornings import morning
from tests.skills.asking import bounds
from warmup import skills
from warmup.model import DayKind, Morning, Prompt
from warmup.pictures.bundles import Bundles
from warmup.randomness import SeededRandom

DAY = dt.date(2027, 3, 10)


def cardinal(number: int) -> str:
    """As it is said in the United States: words.toml, [style], no "and" after hundred."""
    return num2words(number).replace(" and ", " ")


def school(number: int) -> Morning:
    return morning(DAY, number)


def weekend(number: int) -> Morning:
    return morning(DAY, number, school=False)


def before_the_year() -> Morning:
    return weekend(0)._replace(kind=DayKind.BEFORE, previous=None)


def after_the_year(number: int) -> Morning:
    return weekend(number)._replace(kind=DayKind.AFTER, next=None)


def asked(item: str, at: Morning, count: int = 8) -> list[Prompt]:
    return [
        skills.prompt(f"school-day/{item}", at, SeededRandom("day", item, at.school_day, n))
        for n in range(count)
    ]


def able(item: str, at: Morning) -> bool:
    return skills.askable(f"school-day/{item}", at)


def test_todays_number_follows_the_last_ones_all_year() -> None:
    for number in range(1, 181):
        for prompt in asked("count", school(number), 4):
            assert prompt.answer == cardinal(number)
            assert number == 1 or cardinal(number - 1) in prompt.say.lower()


def test_on_the_first_day_nothing_is_said_of_a_day_before() -> None:
    for prompt in asked("count", school(1), 12):
        assert prompt.answer == "one" and "last" not in prompt.say and "zero" not in prompt.say
    assert not able("last-number", school(1))


def test_on_other_days_today_has_no_number() -> None:
    for number in (1, 46, 99, 100):
        for prompt in asked("count", weekend(number), 12):
            assert prompt.answer == cardinal(number + 1)
            assert "today" not in prompt.say.lower()
    for prompt in asked("count", before_the_year(), 12):
        assert prompt.answer == "one" and "today" not in prompt.say.lower()
    for prompt in asked("count", after_the_year(144), 12):
        assert prompt.answer == cardinal(144) and "today" not in prompt.say.lower()


def test_next_and_last_are_asked_only_where_there_is_one() -> None:
    for number in range(2, 99):
        assert able("next-number", school(number)) and able("last-number", school(number))
        assert asked("next-number", school(number), 1)[0].answer == cardinal(number + 1)
        assert asked("last-number", school(number), 1)[0].answer == cardinal(number - 1)
    for prompt in asked("last-number", weekend(46)):
        assert prompt.answer == cardinal(46) and "today" not in prompt.say.lower()
    for prompt in asked("next-number", weekend(46)):
        assert prompt.answer == cardinal(47) and "today" not in prompt.say.lower()
    last = school(90)._replace(next=None)
    assert not able("next-number", last) and able("last-number", last)
    assert not able("next-number", before_the_year()) and not able("last-number", before_the_year())
    assert not able("next-number", after_the_year(144)) and not able("last-number", after_the_year(144))


def test_next_and_last_stay_inside_the_two_digits_of_the_levels_code() -> None:
    # 1.NBT.B.2: a two-digit number (references/standards.toml).
    most = 10 ** bounds("1.NBT.B.2")["digits"] - 1
    said = set()
    for number in range(1, 181):
        for at in (school(number), weekend(number)):
            for item in ("next-number", "last-number"):
                for prompt in asked(item, at, 2) if able(item, at) else ():
                    said |= {prompt.given["known"], prompt.given["known"] + prompt.given["steps"]}
    assert max(said) == most


def test_the_last_day_and_the_hundredth_are_noticed() -> None:
    last = school(144)._replace(next=None)
    assert any("last school day!" in prompt.say for prompt in asked("count", last, 40))
    assert not any("last school day!" in prompt.say for prompt in asked("count", school(144), 40))
    assert any("big day" in prompt.say for prompt in asked("count", school(100), 40))
    assert not any("big day" in prompt.say for n in (99, 101) for prompt in asked("count", school(n), 40))


def test_the_count_in_tens_and_ones_keeps_to_two_digits() -> None:
    # 1.NBT.B.2: a two-digit number as tens and ones (references/standards.toml).
    digits = bounds("1.NBT.B.2")["digits"]
    for number in range(1, 200):
        assert able("tens-and-ones", school(number)) == (number % 100 >= 10)
        if number % 100 < 10:
            continue
        for prompt in asked("tens-and-ones", school(number), 3):
            counted = prompt.given["number"]
            assert len(str(counted)) == digits and counted == number % 100
            assert ("since day one hundred" in prompt.say) == (number > 100)
            assert cardinal(counted) in prompt.say.lower()
            tens, ones = divmod(counted, 10)
            assert isinstance(prompt.picture, Bundles)
            assert (prompt.picture.tens, prompt.picture.ones) == (tens, ones)


def test_a_new_bundle_is_todays_on_whole_tens_of_school_days_and_laid_out_on_others() -> None:
    for number in range(1, 181):
        for at in (school(number), weekend(number)):
            tenth = at.is_school and number % 10 == 0 and number != 100
            assert able("new-bundle", at) and skills.timely("school-day/new-bundle", at) == tenth
            for prompt in asked("new-bundle", at, 3):
                before = prompt.given["before"]
                assert prompt.answer == cardinal((before + 1) // 10) and before % 10 == 9
                assert before + 1 < 10 ** bounds("1.NBT.B.2")["digits"]
                assert isinstance(prompt.picture, Bundles)
                assert (prompt.picture.tens, prompt.picture.ones) == (before // 10, 9)
                assert bool(prompt.do) == (not tenth) and ("today" in prompt.say.lower()) <= tenth
                assert not tenth or before + 1 == number % 100


def test_straws_laid_out_for_a_bundle_are_hardly_more_than_the_days_so_far() -> None:
    def most(number: int) -> int:
        return max(prompt.given["before"] + 1 for prompt in asked("new-bundle", school(number), 60))

    assert [most(number) for number in (3, 57, 74, 122)] == [30, 60, 80, 80]


def test_the_way_to_the_hundredth_closes_on_the_day() -> None:
    for number in range(1, 181):
        assert able("to-the-hundredth", school(number)) == (60 <= number <= 100)
        assert able("to-the-hundredth", weekend(number)) == (60 <= number < 100)
        if 60 <= number < 100:
            for prompt in asked("to-the-hundredth", school(number), 3):
                assert prompt.answer == cardinal(100 - number)
                assert prompt.given["to"] <= bounds("1.NBT.A.1")["count_to"]
    for prompt in asked("to-the-hundredth", school(100), 12):
        assert prompt.answer == "ten" and "one hundred" in prompt.say.lower()


def test_the_running_count_carries_no_code_because_it_outgrows_the_bound() -> None:
    # 1.NBT.A.1 ends at 120; a year of 36 weeks of four mornings has 144 school days.
    levels = {level.key: level.codes for level in skills.SKILLS["school-day"].levels}
    assert bounds("1.NBT.A.1")["count_to"] < 36 * 4
    assert levels["count"] == ()
    assert levels["tens-and-ones"] == ("1.NBT.B.2",) and levels["to-the-hundredth"] == ("1.NBT.A.1",)


def test_the_next_school_day_is_never_called_the_next_day() -> None:
    """Between two school days lie days off: what comes is "next time"."""
    friday = school(46)._replace(next=DAY + dt.timedelta(5), previous=DAY - dt.timedelta(4))
    items = [name for level in skills.SKILLS["school-day"].levels for name in level.items]
    for item in items:
        for at in (friday, friday._replace(school_day=70), friday._replace(school_day=50)):
            for prompt in asked(item, at, 40) if able(item, at) else ():
                texts = (prompt.say, *(cue.text for cue in prompt.cues))
                assert not re.search(r"next day|day before|tomorrow|yesterday", " ".join(texts).lower()), (
                    texts
                )


def test_bundles_alone_are_right_where_no_straw_is_loose() -> None:
    for number in (40, 140):
        for prompt in asked("tens-and-ones", school(number), 3):
            assert prompt.answer == "four bundles and no loose ones"
            assert {"four bundles", "four tens"} <= set(prompt.accept)
    for prompt in asked("tens-and-ones", school(47), 3):
        assert {"four tens and seven ones", "four and seven", "four bundles and seven"} <= set(prompt.accept)
        assert "four bundles" not in prompt.accept


def test_a_count_of_straws_may_be_said_with_the_straws() -> None:
    for item, straws in (("count", "forty-seven straws"), ("last-number", "forty-six straws")):
        for prompt in asked(item, school(47)):
            assert straws in prompt.accept
    assert all("one straw" in prompt.accept for prompt in asked("count", school(1)))
