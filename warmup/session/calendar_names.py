"""Whether the name of an event says that there is no school: by the words calendars use, in any capitals.

Common practice, no source. The federal holidays are those of 5 U.S.C. 6103(a), by the names they go by.
"""

import re

_NO_SCHOOL = (
    r"no (school|class(es)?|lessons)",
    r"non-?school",
    r"clos(ed|ure)",
    r"holidays?",
    r"(break|recess|vacation)",
    r"days? off",
)
_HOLIDAYS = (
    r"new year(’|')?s?",
    r"mlk",
    r"martin luther king",
    r"juneteenth",
    r"thanksgiving",
    r"christmas",
    r"(presidents?|washington|memorial|independence|labor|columbus|indigenous peoples?|veterans?)"
    r"(’|')?s?(’|')? (birth)?day",
)
_OTHERWISE = (
    r"half|early|late|partial|minimum|shortened|optional|make-?up",
    r"resumes?|returns?|reopens?|back to|before|after|until",
    r"summer",
    r"concert|part(y|ies)|program|play|show|sing-?along|assembly|parade|practice|game|fair|bazaar",
    r"sale|shop(ping)?|tickets?|cards?|photos?|project|homework",
    r"camps?|child ?care|sign-?ups?|registration|deadline|due",
    r"breakfast|lunch|dinner|meal|potluck",
    r"in session",
)
"""What is not meant by such a word; and the summer, which comes behind the school year."""
_ALL_THE_SAME = (r"no (school|class(es)?)", r"(day|friday) after (thanksgiving|christmas)")


def _any(phrases: tuple[str, ...]) -> re.Pattern[str]:
    return re.compile(rf"\b({'|'.join(phrases)})(?!\w)", re.IGNORECASE)


_SAYS, _DENIES, _INSISTS = _any(_NO_SCHOOL + _HOLIDAYS), _any(_OTHERWISE), _any(_ALL_THE_SAME)


def says_no_school(name: str) -> bool:
    """Whether it says so: "Fall break" and "No school: half of us are away", and not "Holiday concert"."""
    return bool(_INSISTS.search(name) or (_SAYS.search(name) and not _DENIES.search(name)))
