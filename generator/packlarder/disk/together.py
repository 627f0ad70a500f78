"""Writing several files so that either all of them are changed or none."""

import os
import shutil
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from packlarder.disk.writing import NotWritten, create_file, write_file


@dataclass(frozen=True, slots=True, kw_only=True)
class FileChange:
    """A file, what it held when it was read (None for one that was not there), and what it is to hold."""

    path: Path
    before: bytes | None
    after: bytes


def write_together(changes: Sequence[FileChange]) -> None:
    """Write all changes, or leave everything as it was.

    Raises NotWritten where a file is no longer what was read, or for whatever the system says.
    """
    drafts = {change.path: _draft(change.path) for change in changes if change.before is not None}
    done: list[FileChange] = []
    try:
        for change in changes:
            _refuse_if_changed(change)
            if change.path in drafts:
                drafts[change.path].write_bytes(change.after)
                shutil.copymode(change.path, drafts[change.path])
        for change in changes:
            _refuse_if_changed(change)
            if change.path in drafts:
                drafts[change.path].replace(change.path.resolve())
            else:
                create_file(change.path, change.after)
            done.append(change)
    except (OSError, NotWritten) as error:
        _undo(done)
        if isinstance(error, NotWritten):
            raise
        raise NotWritten(f"nothing was written: {(error.strerror or str(error)).lower()}") from error
    finally:
        for draft in drafts.values():
            draft.unlink(missing_ok=True)


def _draft(path: Path) -> Path:
    path = path.resolve()
    return path.with_name(f".{path.name}.{os.getpid()}.new")


def _refuse_if_changed(change: FileChange) -> None:
    held = change.path.read_bytes() if change.path.exists() else None
    if held != change.before:
        raise NotWritten(f"nothing was written: {change.path} was changed meanwhile; look at it and try again")


def _undo(done: Sequence[FileChange]) -> None:
    for change in reversed(done):
        if change.before is None:
            change.path.unlink(missing_ok=True)
        else:
            write_file(change.path.resolve(), change.before)
