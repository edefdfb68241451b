"""What several pictures need to know, or skills as well: told here, so that asking loads nothing that draws.

Coins: United States Mint, coin specifications; worth by 31 U.S.C. 5112(a).
"""

MILLIMETERS = {"penny": 19.05, "nickel": 21.21, "dime": 17.91, "quarter": 24.26}
"""Diameters as the Mint gives them."""

REEDED = frozenset({"dime", "quarter"})
"""The coins whose edge is reeded; the others' is plain."""

CENTS = {"penny": 1, "nickel": 5, "dime": 10, "quarter": 25}
"""Worth in cents (31 U.S.C. 5112)."""

DAYS = ("Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday")
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July",
    "August", "September", "October", "November", "December",
)  # fmt: skip
"""In the order of a wall calendar in the United States; the calendar module has the machine's language."""

THINGS = ("ball", "box", "cup", "bear", "hat", "boat", "fish", "tree")
"""What can be drawn here, each told from the others by its form alone."""

FORMS = ("circle", "square", "triangle")
"""A solid circle, a hollow square, a solid triangle."""
