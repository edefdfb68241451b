"""Run the program with ``python -m warmup``."""

import sys

from warmup.cli.main import main

if __name__ == "__main__":
    sys.exit(main())
