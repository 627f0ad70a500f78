"""Where a parser gave up on a text, with the lines around it."""

from dataclasses import dataclass

from yaml.error import MarkedYAMLError

from packlarder.book.strict.source import lines_of
from packlarder.faults import Fault, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Misread:
    """Where a parser gave up; lines and columns from 1, always inside the text."""

    file: str
    lines: list[str]
    problem: str
    line: int
    column: int
    context: str
    from_line: int
    from_column: int

    @property
    def words(self) -> str:
        """The line at which the parser gave up."""
        return self.lines[self.line - 1]

    @property
    def here(self) -> str:
        """The character at which the parser gave up; empty at the end of a line."""
        return self.words[self.column - 1 : self.column]

    @property
    def before(self) -> str:
        """What stands before that character on its line, without blanks at its end."""
        return self.words[: self.column - 1].rstrip()

    def place(self, line: int, column: int, length: int = 1) -> Place:
        """Give a place in this file."""
        return Place(file=self.file, line=line, column=column, length=max(length, 1))

    def fault(self, code: str, message: str, help: str, *, line: int = 0, column: int = 0, length: int = 1) -> Fault:
        """Make the fault; it points at the place where the parser gave up unless told otherwise."""
        place = self.place(line or self.line, column or self.column, length)
        return Fault(place=place, code=code, message=message, help=help)


def misread(file: str, text: str, error: Exception) -> Misread:
    """Take down where a parser gave up, from what it raised."""
    lines = lines_of(text)
    problem, context, at, since = "", "", None, None
    if isinstance(error, MarkedYAMLError):
        problem, context = error.problem or "", error.context or ""
        at, since = error.problem_mark or error.context_mark, error.context_mark
    line, column = _inside(lines, at.line + 1, at.column + 1) if at else (1, 1)
    from_line, from_column = _inside(lines, since.line + 1, since.column + 1) if since else (line, column)
    return Misread(
        file=file,
        lines=lines,
        problem=problem,
        line=line,
        column=column,
        context=context,
        from_line=from_line,
        from_column=from_column,
    )


def _inside(lines: list[str], line: int, column: int) -> tuple[int, int]:
    """Bring a place at or behind the end of the text back to the end of its last words."""
    if line <= len(lines) and (column <= len(lines[line - 1]) or line < len(lines)):
        return line, column
    for number in range(len(lines), 0, -1):
        if lines[number - 1].strip():
            return number, len(lines[number - 1].rstrip()) + 1
    return 1, 1
