"""Print a skill's prompts, what is wrong with them, and how the answers spread."""

import argparse

from tests.bank.report import main
from warmup.skills import SKILLS

if __name__ == "__main__":
    asked = argparse.ArgumentParser(prog="python -m tests.bank", description=__doc__)
    asked.add_argument("skills", nargs="*", choices=[[], *SKILLS], metavar="SKILL", help="(all)")
    asked.add_argument("--rules", action="store_true", help="only the faults, by the rule they break")
    arguments = asked.parse_args()
    main(arguments.skills, only_rules=arguments.rules)
