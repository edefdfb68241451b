"""Lists that are longer than their room: which rows show, and how many do not."""


def window(total: int, cursor: int, room: int) -> range:
    """Which of ``total`` rows show in ``room`` lines, the cursor among them.

    Where not all do, one line is left for :func:`cut_off`.
    """
    if total <= room:
        return range(total)
    shown = max(1, room - 1)
    first = max(0, min(cursor - shown // 2, total - shown))
    return range(first, first + shown)


def cut_off(total: int, first: int, shown: int) -> str:
    """How many rows are out of sight above and below: "↑ 2 more  ↓ 3 more"; nothing where all show."""
    above, below = first, total - first - shown
    return "  ".join(f"{arrow} {count} more" for arrow, count in (("↑", above), ("↓", below)) if count > 0)
