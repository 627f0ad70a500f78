"""The command line: arguments, the order of stages, jobs. Only here do disk and publish meet the core."""

from packlarder.cli.entry import main

__all__ = ["main"]
