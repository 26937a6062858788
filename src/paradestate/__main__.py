"""Run the command line as ``python -m paradestate``."""

from paradestate.cli import main

if __name__ == "__main__":
    main()
