"""A page of the site as Markdown: the same visible text, for timing how long another way of setting it takes."""

from html.parser import HTMLParser

HIDDEN = frozenset({"script", "style", "head", "header", "footer", "button"})
BLOCKS = frozenset({"p", "li", "dt", "dd", "div", "h1", "h2", "h3", "h4", "section", "caption", "pre", "summary"})
LEFT_OUT = "every"
"""The class of the section with the figures for all numbers of servings: the usual ones are wanted here."""
SPECIAL = str.maketrans({character: f"\\{character}" for character in "\\`*_[]<>#|"})


def as_markdown(html: str) -> str:
    """Turn a page of the site into Markdown: headings, paragraphs, lists and tables."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return "\n".join(reader.lines()) + "\n"


class _Reader(HTMLParser):
    """Gathers the visible text of a page, block by block."""

    def __init__(self) -> None:
        super().__init__()
        self._lines: list[str] = []
        self._words: list[str] = []
        self._cells: list[str] | None = None
        self._hidden = 0
        self._dropped = 0
        self._first_row = False

    def lines(self) -> list[str]:
        """Give the lines of the Markdown."""
        self._end_block("")
        return self._lines

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Open an element."""
        if tag == "section" and (self._dropped or ("class", LEFT_OUT) in attrs):
            self._dropped += 1
        elif tag in HIDDEN:
            self._hidden += 1
        elif tag == "table":
            self._end_block("")
            self._lines.append("")
            self._first_row = True
        elif tag == "tr":
            self._end_block("")
            self._cells = []
        elif tag in BLOCKS and self._cells is None:
            self._end_block("")

    def handle_endtag(self, tag: str) -> None:
        """Close an element."""
        if tag == "section" and self._dropped:
            self._dropped -= 1
        elif tag in HIDDEN:
            self._hidden -= 1
        elif tag in ("td", "th") and self._cells is not None:
            self._cells.append(self._taken())
        elif tag == "tr" and self._cells is not None:
            self._row(self._cells)
            self._cells = None
        elif tag in BLOCKS and self._cells is None:
            self._end_block(tag)

    def handle_data(self, data: str) -> None:
        """Take text."""
        if not self._hidden and not self._dropped:
            self._words.append(data)

    def _taken(self) -> str:
        text = " ".join("".join(self._words).split()).translate(SPECIAL)
        self._words.clear()
        return text

    def _end_block(self, tag: str) -> None:
        text = self._taken()
        if text:
            before = {"h1": "# ", "h2": "## ", "h3": "### ", "h4": "#### ", "li": "- "}.get(tag, "")
            self._lines += ["", f"{before}{text}"]

    def _row(self, cells: list[str]) -> None:
        if any(cells):
            self._lines.append(f"| {' | '.join(cells)} |")
            if self._first_row:
                self._lines.append("|" + " --- |" * len(cells))
            self._first_row = False
