"""Sheets that are made when somebody asks for them, so that a large book's need not lie in memory all together."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Generic, TypeVar, overload

T_co = TypeVar("T_co", covariant=True)


class Lazily(Sequence[T_co], Generic[T_co]):
    """A row of things, each made by its key at the first asking and kept."""

    def __init__(self, keys: Sequence[str], make: Callable[[str], T_co]) -> None:
        """Keep the keys and what makes a thing of one."""
        self._keys = tuple(keys)
        self._make = make
        self._made: dict[str, T_co] = {}

    @overload
    def __getitem__(self, at: int) -> T_co: ...

    @overload
    def __getitem__(self, at: slice) -> Sequence[T_co]: ...

    def __getitem__(self, at: int | slice) -> T_co | Sequence[T_co]:
        """Give a thing, or several, by place."""
        if isinstance(at, slice):
            return tuple(self._of(key) for key in self._keys[at])
        return self._of(self._keys[at])

    def __len__(self) -> int:
        """Count them; none is made for that."""
        return len(self._keys)

    def _of(self, key: str) -> T_co:
        if key not in self._made:
            self._made[key] = self._make(key)
        return self._made[key]


class Anew(Mapping[str, T_co], Generic[T_co]):
    """Things by key, each made anew at every asking and not kept."""

    def __init__(self, keys: Sequence[str], make: Callable[[str], T_co]) -> None:
        """Keep the keys and what makes a thing of one."""
        self._keys = dict.fromkeys(keys)
        self._make = make

    def __getitem__(self, key: str) -> T_co:
        """Make one; KeyError for a key that there is not."""
        if key not in self._keys:
            raise KeyError(key)
        return self._make(key)

    def __iter__(self) -> Iterator[str]:
        """Give the keys."""
        return iter(self._keys)

    def __len__(self) -> int:
        """Count the keys."""
        return len(self._keys)
