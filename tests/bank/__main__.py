"""Print a skill's prompts, what is wrong with them, and how the answers spread."""

import sys

from tests.bank.report import main

main(sys.argv[1:])
