"""Words for numbers and signs, as a working is read out."""

import pytest

from warmup.english import in_words

# American usage, from memory: "o'clock" on the hour, "half past" at thirty minutes, no "and" after hundred.
SAID = {
    "7 + 3 = 10": "seven and three is ten",
    "10 − 1 = 9: 9": "ten take away one is nine: nine",
    "29, 30 … 120": "twenty-nine, thirty … one hundred twenty",
    "1 × 6 or 2 × 3": "one times six or two times three",
    "9 > 7": "nine is more than seven",
    "3 < 8": "three is less than eight",
    "10, 20; 25¢": "ten, twenty; twenty-five cents",
    "penny = 1¢": "penny is one cent",
    "long hand on 12: 11:00": "long hand on twelve: eleven o’clock",
    "long hand on 6: 3:30": "long hand on six: half past three",
    "2/4 = 1/4 + 1/4": "two quarters is one quarter and one quarter",
    "1/2 + 1/2 = 2/2": "one half and one half is two halves",
    "17.91 mm": "seventeen point nine one mm",
    "2nd of 5": "second of five",
    "21st": "twenty-first",
    "2026-10-05: month 10 of 12": "October fifth: month ten of twelve",
    "August 31: after 30": "August thirty-first: after thirty",
    "February 2026": "February two thousand twenty-six",
    "1. cup above chair  2. hat": "one: cup above chair two: hat",
    "50% + 50%": "fifty hundredths and fifty hundredths",
    "12:00: 0° around": "twelve o’clock: zero degrees around",
    "nickel: smooth": "nickel: smooth",
}


@pytest.mark.parametrize(("written", "said"), SAID.items())
def test_a_working_is_read_out_in_words(written: str, said: str) -> None:
    assert in_words(written) == said
