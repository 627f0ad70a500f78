"""Writing so that what stands there is always whole: single files, and folders that are swapped in when complete."""

import errno
import os
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import BinaryIO

from packlarder.disk.marker import MARKER, is_ours, marker_of, names_in, objection

if sys.platform == "win32":
    import msvcrt

    def _claim(file: BinaryIO) -> None:
        """Claim an open file for this process; raises OSError where another one holds it."""
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)

else:
    import fcntl

    def _claim(file: BinaryIO) -> None:
        """Claim an open file for this process; raises OSError where another one holds it."""
        fcntl.flock(file.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)


BEYOND_US = frozenset(
    {errno.EACCES, errno.EPERM, errno.EROFS, errno.ENOSPC, errno.EDQUOT, errno.EBUSY, errno.EXDEV, errno.EIO}
    | {errno.ENAMETOOLONG, errno.ENOTDIR, errno.EEXIST, errno.ENOTEMPTY, errno.ELOOP}
)
"""What the system may say against writing that is no slip of ours."""


class NotWritten(Exception):
    """An output could not be written; the message is a sentence for the one who asked for it."""


def refusal(out: Path, book: Path) -> str:
    """Say why nothing may be written to a folder; an empty text where it may."""
    out, book, here, home = out.resolve(), book.resolve(), Path.cwd(), Path.home().resolve()
    if out.exists() and not out.is_dir():
        return f"{out} is no folder"
    if out == Path(out.anchor) or home.is_relative_to(out):
        return f"{out} is not a folder to fill with a book's pages; name one of its own"
    if out == book or out.is_relative_to(book):
        return f"{out} lies in the book; name a folder outside of it"
    if book.is_relative_to(out):
        return f"the book lies in {out}, which a build would empty; name another folder"
    if here.is_relative_to(out):
        return f"you stand in {out}, which a build replaces; step out of it first"
    if out.is_dir() and not is_ours(out) and any(out.iterdir()):
        return f"{out} holds files that Packlarder did not write; name an empty folder or a new one"
    return objection(out)


@contextmanager
def whole_or_nothing(out: Path) -> Iterator[Path]:
    """Give an empty folder to write to, which becomes `out` when all went well, and is gone when it did not.

    Whatever happens, `out` holds either the former output or the new one. What a build that was cut off left behind is
    cleared away by the next. Ask `refusal` first. Raises NotWritten for what the system or another build forbids.
    """
    out = out.resolve()
    fresh, former = _beside(out, "new"), _beside(out, "former")
    try:
        with _opened(fresh) as marker:
            _claim_for(marker, out)
            try:
                _mend(out, former)
                _clear(fresh)
                yield fresh
                if reason := objection(out):  # somebody may have put a file there meanwhile
                    raise NotWritten(reason)
                _say_in(marker, marker_of(names_in(fresh)))
                if sys.platform == "win32":
                    marker.close()  # no folder is moved there while a file in it is open
                _swap(fresh, out, former)
            finally:
                shutil.rmtree(fresh, ignore_errors=True)
    except OSError as error:
        if error.errno not in BEYOND_US:
            raise
        raise _not_written(out, error) from error


def _opened(fresh: Path) -> BinaryIO:
    """Make the folder that is written to, and open its marker. Raises NotWritten for whatever the system says."""
    try:
        fresh.parent.mkdir(parents=True, exist_ok=True)
        fresh.mkdir(exist_ok=True)
        return (fresh / MARKER).open("ab")
    except OSError as error:
        raise _not_written(fresh.parent, error) from error


def _not_written(path: Path, error: OSError) -> NotWritten:
    return NotWritten(f"{path} can not be written: {(error.strerror or str(error)).lower()}")


def write_file(path: Path, content: bytes) -> None:
    """Write a file so that it holds either what it held or all of the new content."""
    path.parent.mkdir(parents=True, exist_ok=True)
    draft = path.with_name(f".{path.name}.{os.getpid()}.new")
    try:
        draft.write_bytes(content)
        draft.replace(path)
    finally:
        draft.unlink(missing_ok=True)


def write_changed(path: Path, content: bytes) -> bool:
    """Write a file unless it holds just that already; tell whether it was written."""
    with suppress(OSError):
        if path.read_bytes() == content:
            return False
    write_file(path, content)
    return True


def create_file(path: Path, content: bytes) -> None:
    """Write a file that is not there yet; raises FileExistsError where it is."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("xb") as file:
        file.write(content)


def _beside(out: Path, what: str) -> Path:
    return out.with_name(f".{out.name}.packlarder-{what}")


def _claim_for(marker: BinaryIO, out: Path) -> None:
    """Hold the marker, so that no other build takes the folder for a leftover."""
    try:
        _claim(marker)
    except OSError:
        raise NotWritten(f"another build is writing {out}; wait until it is done") from None
    _say_in(marker, marker_of(()))


def _say_in(marker: BinaryIO, content: bytes) -> None:
    marker.truncate(0)
    marker.write(content)
    marker.flush()


def _clear(fresh: Path) -> None:
    """Empty the folder of what a build that was cut off left in it, but for the marker, which is held."""
    for entry in fresh.iterdir():
        if entry.is_dir() and not entry.is_symlink():
            shutil.rmtree(entry)
        elif entry.name != MARKER:
            entry.unlink()


def _mend(out: Path, former: Path) -> None:
    """Undo a swap that was cut off: bring the former output back, or clear it away if the new one is in its place."""
    if not is_ours(former):
        return
    if out.exists():
        shutil.rmtree(former)
    else:
        former.rename(out)


def _swap(fresh: Path, out: Path, former: Path) -> None:
    if not out.exists():
        fresh.rename(out)
        return
    if not is_ours(out):
        (out / MARKER).write_bytes(marker_of(()))  # it is empty: marked, so that a swap that is cut off can be mended
    out.rename(former)
    try:
        fresh.rename(out)
    except OSError:
        former.rename(out)
        raise
    shutil.rmtree(former)
