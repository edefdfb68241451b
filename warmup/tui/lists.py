"""Lists that are longer than their room: which rows show, and how many do not."""

from warmup.tui.script import Keep, Script, Tone


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


def scroll_end(page: Script, height: int) -> int:
    """How far down the page can be scrolled above its foot, in lines; 0 where all of it has room."""
    lines = sum(len(block.lines) for block in page.blocks)
    return lines - height + 1 if lines > height else 0


def scrolled(page: Script, height: int, first: int) -> Script:
    """The page from its line ``first`` on, with its foot; the page itself where all of it has room."""
    if not (end := scroll_end(page, height)):
        return page
    lines = [line for block in page.blocks if not block.bottom for line in block.lines]
    first, shown = max(0, min(first, end)), max(1, len(lines) - end)
    cut = Script(page.width)
    for line in lines[first : first + shown]:
        cut.line(line, Keep.ALWAYS)
    cut.text(cut_off(len(lines), first, shown), Tone.QUIET, Keep.ALWAYS)
    cut.blocks += [block for block in page.blocks if block.bottom]
    return cut
