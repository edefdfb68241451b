"""Which hand reaches a key of a United States keyboard, when each stays on its own side of it."""

BOTH = frozenset({"space"})
LEFT = frozenset({*"qwertasdfgzxcvb12345", "6", "tab", "escape", "f1"})
"""The 6 stands between the hands; its twins are letters of the right."""
RIGHT = frozenset(
    {*"yuiophjklnm7890", "up", "down", "left", "right", "enter", "backspace"}
    | {"comma", "full_stop", "slash", "question_mark", "minus"}
)
