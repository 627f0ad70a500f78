"""One egg, two eggs: as much English as counting food needs."""

from functools import lru_cache

_ONE_OF_MANY = {
    "leaves": "leaf",
    "loaves": "loaf",
    "halves": "half",
    "cookies": "cookie",
    "pies": "pie",
    "smoothies": "smoothie",
    "brownies": "brownie",
    "quiches": "quiche",
    "people": "person",
    "children": "child",
    "mangoes": "mango",
    "toes": "toe",
}
_MANY_OF_ONE = {one: many for many, one in _ONE_OF_MANY.items()}
_HISSES = ("ches", "shes", "sses", "xes", "tzes", "atoes")
_SAME = ("ss", "us", "is")


@lru_cache(maxsize=1024)
def singular(noun: str) -> str:
    """Give the noun for one: eggs -> egg, egg yolks -> egg yolk, slices of bread -> slice of bread."""
    before, head, after = _around_the_head(noun)
    return f"{before}{_one(head)}{after}"


@lru_cache(maxsize=1024)
def plural(noun: str) -> str:
    """Give the noun for more than one, from the noun for one; unchanged where it would not read back as that."""
    before, head, after = _around_the_head(noun)
    many = _many(head)
    return f"{before}{many}{after}" if _one(many) == head else noun


def for_number(noun: str, number: float) -> str:
    """Give the form of the noun that follows this number: ½ egg, 1 egg, 1½ eggs."""
    return noun if 0 < number <= 1 else plural(noun)


def _around_the_head(noun: str) -> tuple[str, str, str]:
    """Part a noun into what stands before the word that takes the s, that word, and what stands after."""
    phrase, of, after = noun.partition(" of ")
    before, space, head = phrase.rpartition(" ")
    return f"{before}{space}", head, f"{of}{after}"


def _one(word: str) -> str:
    if word in _ONE_OF_MANY:
        return _ONE_OF_MANY[word]
    if word.endswith("ies") and len(word) > 3:
        return f"{word[:-3]}y"
    if word.endswith(_HISSES):
        return word[:-2]
    if word.endswith("s") and not word.endswith(_SAME) and len(word) > 1:
        return word[:-1]
    return word


def _many(word: str) -> str:
    if word in _MANY_OF_ONE:
        return _MANY_OF_ONE[word]
    if word.endswith("y") and word[-2:-1] not in ("a", "e", "i", "o", "u", ""):
        return f"{word[:-1]}ies"
    if word.endswith(("ch", "sh", "ss", "x", "tz", "ato")):
        return f"{word}es"
    if word.endswith("s"):
        return word
    return f"{word}s"
