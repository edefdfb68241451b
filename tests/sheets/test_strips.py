"""Measuring strips have their marks where they belong."""

from warmup.sheets.strips import centimeters, inches


def _numbered(ticks: tuple[tuple[float, float, str], ...]) -> dict[int, float]:
    return {int(number): at for at, _, number in ticks if number}


def test_numbers_stand_a_centimeter_or_an_inch_apart() -> None:
    # 1 cm = 10 mm (SI); 1 in = 25.4 mm exactly (Federal Register, July 1, 1959, on the yard and the pound).
    assert _numbered(centimeters(0, 15)) == {n: 10.0 * n for n in range(16)}
    assert {n: round(at, 9) for n, at in _numbered(inches(0, 6)).items()} == {
        n: round(25.4 * n, 9) for n in range(7)
    }


def test_next_strip_goes_on_from_its_own_left_edge() -> None:
    assert _numbered(centimeters(15, 30))[15] == 0.0
    assert _numbered(inches(6, 12))[12] == 6 * 25.4


def test_shorter_marks_stand_halfway() -> None:
    ticks = inches(0, 2)
    assert [round(tick.at / 25.4, 9) for tick in ticks] == [0, 0.5, 1, 1.5, 2]
    assert [tick.share for tick in ticks] == [0.5, 0.25, 0.5, 0.25, 0.5]
