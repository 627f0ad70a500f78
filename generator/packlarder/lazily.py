"""Things that are made when somebody asks for them, so that a large book's need not all be made, or held, at once."""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Generic, TypeVar, overload

T_co = TypeVar("T_co", covariant=True)


class _ByKey(Mapping[str, T_co], Generic[T_co]):
    """Things by key, and what makes a thing of its key."""

    def __init__(self, keys: Iterable[str], make: Callable[[str], T_co]) -> None:
        """Keep the keys and what makes a thing of one."""
        self._keys = dict.fromkeys(keys)
        self._make = make

    def __contains__(self, key: object) -> bool:
        """Tell whether there is such a thing; none is made for that."""
        return key in self._keys

    def __iter__(self) -> Iterator[str]:
        """Give the keys."""
        return iter(self._keys)

    def __len__(self) -> int:
        """Count the keys."""
        return len(self._keys)


class Anew(_ByKey[T_co]):
    """Things by key, each made anew at every asking and not kept."""

    def __getitem__(self, key: str) -> T_co:
        """Make one; KeyError for a key that there is not."""
        if key not in self._keys:
            raise KeyError(key)
        return self._make(key)


class Kept(_ByKey[T_co]):
    """Things by key, each made at the first asking and kept."""

    def __init__(
        self, keys: Iterable[str], make: Callable[[str], T_co], made: "Mapping[str, T_co] | None" = None
    ) -> None:
        """Keep the keys, what makes a thing of one, and those that are made already."""
        super().__init__(keys, make)
        self._made = dict(made or {})

    def __getitem__(self, key: str) -> T_co:
        """Give one; KeyError for a key that there is not."""
        if key not in self._made:
            if key not in self._keys:
                raise KeyError(key)
            self._made[key] = self._make(key)
        return self._made[key]


class Lazily(Sequence[T_co], Generic[T_co]):
    """A row of things, each made by its key at the first asking and kept."""

    def __init__(self, keys: Sequence[str], make: Callable[[str], T_co]) -> None:
        """Keep the keys and what makes a thing of one."""
        self._keys = tuple(keys)
        self._kept = Kept(keys, make)

    @overload
    def __getitem__(self, at: int) -> T_co: ...

    @overload
    def __getitem__(self, at: slice) -> Sequence[T_co]: ...

    def __getitem__(self, at: int | slice) -> T_co | Sequence[T_co]:
        """Give a thing, or several, by place."""
        if isinstance(at, slice):
            return tuple(self._kept[key] for key in self._keys[at])
        return self._kept[self._keys[at]]

    def __len__(self) -> int:
        """Count them; none is made for that."""
        return len(self._keys)
