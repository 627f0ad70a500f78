"""How the site's templates are compiled: words are put in their places, and all that is set is escaped, at little cost.

A page sets some 300 texts; most are marked as HTML already or stand on other pages too.
"""

from collections.abc import Iterator, Mapping
from functools import lru_cache
from types import CodeType
from typing import ClassVar, cast

from jinja2 import BaseLoader, BytecodeCache, Environment, StrictUndefined
from jinja2.bccache import Bucket
from jinja2.compiler import CodeGenerator
from jinja2.ext import Extension
from jinja2.lexer import TOKEN_DOT, TOKEN_STRING, Token, TokenStream
from markupsafe import Markup, escape

_escape_text = lru_cache(maxsize=8192)(escape)
"""Remembers texts; none but plain ones may be given to it, as one that is marked as HTML counts as the same text."""


class _WordsInPlace(Extension):
    """Puts the words of the global `words` in the place of `w.parts` and its like while a template is read.

    They are escaped then, once for all pages. A template that names a word we lack raises KeyError.
    """

    def filter_stream(self, stream: TokenStream) -> Iterator[Token]:
        """Go through what a template is made of; each `w.parts` becomes the text `Parts`."""
        words = cast("Mapping[str, str]", self.environment.globals["words"])
        for token in stream:
            if token.test("name:w") and stream.skip_if(TOKEN_DOT):
                name = stream.expect("name").value
                yield Token(token.lineno, TOKEN_STRING, words[name])
            else:
                yield token


class _Escaping(CodeGenerator):
    """Has compiled templates call `SiteTemplates.escaped` where they would call the slower `escape`."""

    def _output_child_pre(self, *_: object) -> None:
        self.write("environment.escaped(")


class _Compiled(BytecodeCache):
    """Keeps compiled templates as long as the process lives: a preview sets the same ones at every edit.

    The words are compiled into them, so they are kept by words as well.
    """

    kept: ClassVar[dict[tuple[object, ...], CodeType]] = {}

    def __init__(self, words: Mapping[str, str]) -> None:
        self._words = tuple(words.items())

    def load_bytecode(self, bucket: Bucket) -> None:
        """Give what was kept of a template, if its text is still the same."""
        bucket.code = self.kept.get((bucket.key, bucket.checksum, self._words))

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a template."""
        if bucket.code is not None:
            self.kept[bucket.key, bucket.checksum, self._words] = bucket.code


class SiteTemplates(Environment):
    """The templates of the site: everything that is set is escaped, and no name or word may be missing silently."""

    code_generator_class = _Escaping

    def __init__(self, loader: BaseLoader | None, words: Mapping[str, str]) -> None:
        """Take what finds the templates, and the words to put in their places."""
        super().__init__(
            loader=loader,
            extensions=[_WordsInPlace],
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            auto_reload=False,
            bytecode_cache=_Compiled(words),
        )
        self.globals["words"] = words

    @staticmethod
    def escaped(value: object) -> Markup:
        """Give a value as HTML, as `escape` does."""
        kind = type(value)
        if kind is Markup:
            return cast("Markup", value)
        return _escape_text(value) if kind is str else escape(value)
