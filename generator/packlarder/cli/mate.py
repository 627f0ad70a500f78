"""A process that helps this one: forked from it, spoken to through a pipe, and never outliving it."""

import os
import signal
import traceback
from collections.abc import Callable
from multiprocessing import get_context, parent_process
from multiprocessing.connection import Connection
from threading import Thread
from typing import Any


class Mate:
    """A process that does `work`, which is given its end of the pipe."""

    def __init__(self, work: Callable[[Connection], None]) -> None:
        """Start it."""
        fork = get_context("fork")
        self._pipe, far = fork.Pipe()
        self._process = fork.Process(target=_help, args=(work, far, self._pipe), daemon=True)
        self._process.start()
        far.close()

    def tell(self, word: object) -> None:
        """Tell it something. Raises RuntimeError where it failed."""
        try:
            self._pipe.send(word)
        except OSError:
            self.hear()  # its last words

    def hear(self) -> Any:  # noqa: ANN401 - whatever its work sends
        """Wait for what it tells. Raises RuntimeError where it failed."""
        try:
            word = self._pipe.recv()
        except (EOFError, OSError):
            self._process.join()
            raise RuntimeError(f"a process that helps ended with {self._process.exitcode}") from None
        if isinstance(word, RuntimeError):
            raise word
        return word

    def dismiss(self) -> None:
        """End it, whatever it does; twice does no harm."""
        self._process.terminate()
        self._process.join()
        self._pipe.close()


def _help(work: Callable[[Connection], None], pipe: Connection, far: Connection) -> None:
    """Do a mate's work; Ctrl-C is left to the one who is helped."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    far.close()
    Thread(target=_end_with_the_helped, daemon=True).start()
    try:
        work(pipe)
    except Exception as error:  # noqa: BLE001 - whatever it is, it is told to the one who is helped
        failure = RuntimeError(f"{type(error).__name__}: {error}")
        failure.add_note(traceback.format_exc())
        pipe.send(failure)


def _end_with_the_helped() -> None:
    """End this process at once when the one that it helps is gone, even if that was killed."""
    helped = parent_process()
    if helped is not None:
        helped.join()
        os._exit(1)
