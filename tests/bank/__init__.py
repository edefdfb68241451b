"""What every prompt of every skill must keep to: one place to draw the bank and to judge it.

Run ``python -m tests.bank make-ten`` to read a skill's prompts and what is wrong with them.
"""

from tests.bank.drawn import asked, prompts, recomputed, reference
from tests.bank.reading import careless, grade, sentences, spelled, unreadable
from tests.bank.report import Report, judge
from tests.bank.rules import RULES, faults_by_rule
from tests.bank.secrets import leaks

__all__ = [
    "RULES",
    "Report",
    "asked",
    "careless",
    "faults_by_rule",
    "grade",
    "judge",
    "leaks",
    "prompts",
    "recomputed",
    "reference",
    "sentences",
    "spelled",
    "unreadable",
]
