"""The child runs a shop that sells nothing but napkins."""

from warmup.english import listed, number_word
from warmup.games.base import Game, Play, laying, levels, numbered
from warmup.model import LevelId, Morning
from warmup.randomness import SeededRandom

# The fewest and the most napkins in an order, and how many orders there are.
_ORDERS = {
    "how-many:count-out-to-10": (4, 10, 3),
    "how-many:rows-to-20": (11, 16, 2),
    "how-many:ring-and-scatter": (6, 10, 3),
    "how-many:count-out-to-20": (11, 20, 2),
}


def made(level: LevelId, _morning: Morning, rng: SeededRandom) -> Play:
    """Two or three orders, none twice."""
    low, high, count = _ORDERS[level]
    orders = rng.sample(range(low, high + 1), count)
    said = listed([number_word(order) for order in orders], "and then")
    return Play(
        f"Put a pile of paper napkins on the table, and order {said}.",
        ("Your shop sells napkins.", "Count out what I order.", "Tell me how many I have."),
        "when all orders are filled and the napkins are back",
        "One word for each napkin, and a stop at the number that was ordered.",
        numbered("order", orders),
        laying(sum(orders)),
    )


GAME = Game(
    id="order-please",
    name="Order, please",
    needs=("napkins",),
    levels=levels(*_ORDERS),
    made=made,
    two="One orders, the other fills the order; then they change.",
)
