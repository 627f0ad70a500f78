"""What stands in the docstrings under the fields of the models, read from their source when somebody asks.

pydantic can read them as well, but does so at every start, and takes longer over it than over all else of a model.
"""

import ast
import inspect
import sys
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import pairwise
from types import MappingProxyType

from packlarder.book.base import BookModel


@cache
def said_of_fields(model: type[BookModel]) -> Mapping[str, str]:
    """Give the docstring of each field of a model, by the field's name; fields without one are missing."""
    body = _classes(model.__module__).get(model.__name__, [])
    return MappingProxyType(dict(_said(body)))


@cache
def _classes(module: str) -> Mapping[str, list[ast.stmt]]:
    """Give what stands in each class of a module."""
    tree = ast.parse(inspect.getsource(sys.modules[module]))
    return MappingProxyType({one.name: one.body for one in tree.body if isinstance(one, ast.ClassDef)})


def _said(body: list[ast.stmt]) -> Iterator[tuple[str, str]]:
    for field, below in pairwise(body):
        if isinstance(field, ast.AnnAssign) and isinstance(field.target, ast.Name) and isinstance(below, ast.Expr):
            text = below.value.value if isinstance(below.value, ast.Constant) else None
            if isinstance(text, str):
                yield field.target.id, inspect.cleandoc(text)
