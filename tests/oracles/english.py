"""English number words and plurals by inflect, a general library: one engine for all who ask."""

from typing import Any
from unittest import mock

# inflect has every function of its own checked for types at each call, and takes three seconds at import to
# set that up; nothing here needs it. Its hints, besides, ask for numbers.Number, for which no checker takes
# an int.
with mock.patch("typeguard.typechecked", lambda target: target):
    import inflect

ENGLISH: Any = inflect.engine()
