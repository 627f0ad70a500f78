"""The kinds of value that models ask for."""

from contextlib import suppress
from datetime import date, datetime, time
from typing import Annotated, Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from packlarder.book.base import BookModel, in_words
from packlarder.book.days import KeepFor, Moment, Span
from packlarder.book.draw import CountedField, Mark, MarkField, Share, ShareField
from packlarder.book.fields import Amount, Day, Degrees, Id, Prose, Text, Weight, Whole, YesNo, whole_between
from packlarder.book.person import Age, AvoidedWord
from packlarder.book.stop import DayNumber, TimeOfDay
from packlarder.book.treatment import Treated, TreatedField, Treatment
from packlarder.figures.allergens import Allergen
from packlarder.measure import Dimension, Quantity

KINDS: dict[str, TypeAdapter[Any]] = {  # Any: they give values of many types
    "Text": TypeAdapter(Text),
    "Prose": TypeAdapter(Prose),
    "Id": TypeAdapter(Id),
    "Day": TypeAdapter(Day),
    "YesNo": TypeAdapter(YesNo),
    "Whole": TypeAdapter(Whole),
    "to twelve": TypeAdapter(Annotated[int, whole_between(1, 12)]),
    "Weight": TypeAdapter(Weight),
    "Degrees": TypeAdapter(Degrees),
    "Amount": TypeAdapter(Amount),
    "Moment": TypeAdapter(Moment),
    "KeepFor": TypeAdapter(KeepFor),
    "Treated": TypeAdapter(TreatedField),
    "Mark": TypeAdapter(MarkField),
    "Share": TypeAdapter(ShareField),
    "Counted": TypeAdapter(CountedField),
    "TimeOfDay": TypeAdapter(TimeOfDay),
    "DayNumber": TypeAdapter(DayNumber),
    "Age": TypeAdapter(Age),
    "AvoidedWord": TypeAdapter(AvoidedWord),
}


@pytest.mark.parametrize(
    ("kind", "text", "value"),
    [
        ("Text", "  Leek rings ", "Leek rings"),
        ("Prose", "One\nparagraph.\n\n Another. ", ("One paragraph.", "Another.")),
        ("Id", "leek-rings-2", "leek-rings-2"),
        ("Day", "2028-02-29", date(2028, 2, 29)),  # a leap year
        ("YesNo", "Yes", True),
        ("YesNo", "off", False),
        ("Whole", "4", 4),
        ("to twelve", "12", 12),
        ("Moment", "2027-03-12", datetime.fromisoformat("2027-03-12T00:00")),
        ("Moment", "2027-03-12 8:30", datetime.fromisoformat("2027-03-12T08:30")),
        ("Moment", "2027-03-12 08.30", datetime.fromisoformat("2027-03-12T08:30")),
        ("Moment", "2027-03-12T23:59", datetime.fromisoformat("2027-03-12T23:59")),
        ("KeepFor", "18 months", Span(months=18)),
        ("KeepFor", "2 years", Span(months=24)),
        ("KeepFor", "1 year", Span(months=12)),
        ("KeepFor", "3 weeks", Span(days=21)),
        ("KeepFor", "10 days", Span(days=10)),
        ("Treated", "acid dip", Treated(Treatment.ACID_DIP)),
        ("Mark", "2027-03-12-egg/a12", Mark("2027-03-12-egg", "a", 12)),
        ("Mark", "2027-03-12-EGG/B2", Mark("2027-03-12-egg", "b", 2)),
        ("Mark", " 2027-03-12 egg / b 2 ", Mark("2027-03-12-egg", "b", 2)),
        ("Share", "all", Share(None)),
        ("Share", "All", Share(None)),
        ("TimeOfDay", "18:30", time(18, 30)),
        ("TimeOfDay", "7.05", time(7, 5)),
        ("TimeOfDay", "0:00", time(0, 0)),
        ("TimeOfDay", "23:59", time(23, 59)),
        ("DayNumber", "1", 1),
        ("DayNumber", "60", 60),
        ("Age", "0", 0),
        ("Age", "120", 120),
        ("AvoidedWord", "almond", (Allergen.ALMOND,)),
        ("AvoidedWord", " Tree  Nuts ", (Allergen.TREE_NUTS,)),
        ("AvoidedWord", "nuts", (Allergen.TREE_NUTS, Allergen.PEANUT)),  # whoever says so may mean either
    ],
)
def test_a_value_is_read(kind: str, text: str, value: object) -> None:
    """A text that is written as it should be becomes its value."""
    assert KINDS[kind].validate_python(text) == value


@pytest.mark.parametrize(
    ("kind", "text", "code"),
    [
        ("Text", " ", "empty-text"),
        ("Text", "x" * 201, "too-long"),
        ("Text", "two\n\nparagraphs", "more-than-one-line"),
        ("Prose", "", "empty-text"),
        ("Prose", "x" * 4_001, "too-long"),
        ("Id", "Leek", "not-an-id"),
        ("Id", "leek\n", None),  # blanks around a value do not count
        ("Id", "lauch-größe", "not-an-id"),
        ("Day", "2027-02-29", "no-such-day"),  # not a leap year
        ("Day", "2027-3-1", "not-a-day"),
        ("Day", "20270301", "not-a-day"),
        ("Day", "2027-03-01T10:00", "not-a-day"),
        ("Day", "1899-12-31", "not-a-day"),
        ("Day", "٢٠٢٧-٠٣-٠١", "not-a-day"),  # figures of another script
        ("YesNo", "y", "not-yes-or-no"),
        ("Whole", "0", "out-of-range"),
        ("Whole", "-1", "not-a-whole-number"),
        ("Whole", "1.0", "not-a-whole-number"),
        ("Whole", "²", "not-a-whole-number"),
        ("Whole", "9" * 5_000, "not-a-whole-number"),
        ("to twelve", "13", "out-of-range"),
        ("Weight", "5 mL", "unreadable-quantity"),
        ("Weight", "-5 g", "unreadable-quantity"),
        ("Amount", "5 min", "unreadable-quantity"),
        ("Moment", "12.3.2027", "not-a-day"),
        ("Moment", "2027-02-29 08:30", "no-such-day"),
        ("Moment", "2027-03-12 24:00", "not-a-moment"),
        ("Moment", "2027-03-12 08:60", "not-a-moment"),
        ("Moment", "2027-03-12 8 pm", "not-a-moment"),
        ("Moment", "2027-03-12 08:30:15", "not-a-moment"),
        ("KeepFor", "1.5 years", "not-a-span"),
        ("KeepFor", "a year", "not-a-span"),
        ("KeepFor", "18", "not-a-span"),
        ("KeepFor", "0 months", "not-a-span"),
        ("KeepFor", "31 years", "out-of-range"),
        ("KeepFor", "9999 weeks", "out-of-range"),
        ("Treated", "salted", "unknown-treatment"),
        ("Treated", "heated", "heated-to-what"),
        ("Treated", "heated to hot", "unreadable-quantity"),
        ("Treated", "heated to 7 °C", "out-of-range"),  # 74, and a figure lost
        ("Treated", "heated to 740 °C", "out-of-range"),
        ("Mark", "2027-03-12-egg", "not-a-mark"),
        ("Mark", "2027-03-12-egg/a0", "not-a-mark"),
        ("Mark", "2027-03-12-egg/2", "not-a-mark"),
        ("Mark", "2027-03-12-egg/aa2", "not-a-mark"),
        ("Mark", "/a2", "not-a-mark"),
        ("Mark", "2027-03-12-egg/a2/3", "not-a-mark"),
        ("Share", "half", "unreadable-quantity"),
        ("Share", "0 g", "unreadable-quantity"),
        ("Counted", "all", "unreadable-quantity"),
        ("Counted", "-1 g", "unreadable-quantity"),
        ("TimeOfDay", "24:00", "not-a-time"),
        ("TimeOfDay", "18:60", "not-a-time"),
        ("TimeOfDay", "1830", "not-a-time"),
        ("TimeOfDay", "6 pm", "not-a-time"),
        ("TimeOfDay", "18:30:00", "not-a-time"),
        ("TimeOfDay", "18:3", "not-a-time"),
        ("TimeOfDay", "-1:30", "not-a-time"),
        ("DayNumber", "0", "out-of-range"),
        ("DayNumber", "61", "out-of-range"),
        ("DayNumber", "1.5", "not-a-whole-number"),
        ("DayNumber", "Monday", "not-a-whole-number"),
        ("DayNumber", "2027-06-26", "not-a-whole-number"),
        ("Age", "121", "out-of-range"),
        ("Age", "6 months", "not-a-whole-number"),
        ("AvoidedWord", "almnd", "unknown-allergen"),
        ("AvoidedWord", "nothing", "unknown-allergen"),
        ("AvoidedWord", "almond, milk", "unknown-allergen"),
    ],
)
def test_a_value_is_refused(kind: str, text: str, code: str | None) -> None:
    """A text that is written otherwise is refused with a code and a way out."""
    if code is None:
        assert KINDS[kind].validate_python(text) == text.strip()
        return
    with pytest.raises(ValidationError) as caught:
        KINDS[kind].validate_python(text)
    (details,) = caught.value.errors()
    assert details["type"] == code
    assert details["ctx"]["message"]


def test_a_quantity_keeps_its_dimension() -> None:
    """A weight is read as a weight, a temperature below zero as it stands."""
    weight = KINDS["Weight"].validate_python("1.5 kg")
    assert isinstance(weight, Quantity)
    assert (weight.dimension, weight.base) == (Dimension.WEIGHT, 1500)  # 1.5 x 1000 g
    nought = KINDS["Counted"].validate_python("0 g")
    assert isinstance(nought, Quantity)
    assert nought.base == 0
    heated = KINDS["Treated"].validate_python("heated to 165 °F")
    assert isinstance(heated, Treated)
    assert heated.to is not None
    assert heated.to.base == pytest.approx((165 - 32) / 1.8)  # 73.9 °C
    frost = KINDS["Degrees"].validate_python("-18 °C")
    assert isinstance(frost, Quantity)
    assert frost.base == -18


@pytest.mark.parametrize(
    ("kind", "text", "says", "help"),
    [
        ("TimeOfDay", "6 pm", '"6 pm" is not a time of day', "write it like 18:30"),
        ("TimeOfDay", "24:00", "there is no 24:00 in a day", "write it like 18:30"),
        ("AvoidedWord", "almnd", 'no allergen is called "almnd"', 'did you mean "almond"? the words are: milk, egg'),
    ],
)
def test_what_a_trip_asks_for_says_how_it_is_written(kind: str, text: str, says: str, help: str) -> None:
    """The author's own words, and what to write instead."""
    with pytest.raises(ValidationError) as caught:
        KINDS[kind].validate_python(text)
    (details,) = caught.value.errors()
    assert details["ctx"]["message"] == says
    assert details["ctx"]["help"].startswith(help)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("value", [None, [], {}, ["x"], 1.5])
def test_what_is_no_text_asks_for_one_value(kind: str, value: object) -> None:
    """A list, a mapping or nothing where a value belongs gives the one error that the wording knows."""
    with pytest.raises(ValidationError) as caught:
        KINDS[kind].validate_python(value)
    assert [details["type"] for details in caught.value.errors()] == ["string_type"]


@given(st.text(max_size=40))
def test_no_text_breaks_a_kind(text: str) -> None:
    """Whatever stands in a value, each kind reads it or refuses it."""
    for kind in KINDS.values():
        with suppress(ValidationError):
            kind.validate_python(text)


def test_keys_are_field_names_in_words() -> None:
    """An underscore is a space, and one at the end only keeps a name off Python's own words."""
    assert [in_words(name) for name in ("went_in", "for_", "name")] == ["went in", "for", "name"]


class Small(BookModel):
    """A model to look at."""

    went_in: Text
    days: tuple[Day, ...] = ()


def test_a_model_is_frozen_and_made_by_field_names() -> None:
    """Code makes a model by the names of its fields, and can not change it afterwards."""
    small = Small(went_in="raw")
    with pytest.raises(ValidationError):
        setattr(small, "went_in", "cooked")  # noqa: B010 - the point of the test


def test_the_schema_speaks_of_keys_in_words_and_lets_own_keys_pass() -> None:
    """Editors are told the keys as they stand in files, that others are faults, and that x- keys are not."""
    schema = Small.model_json_schema()
    assert set(schema["properties"]) == {"went in", "days"}
    assert schema["additionalProperties"] is False
    assert schema["patternProperties"] == {"^x-": {}}
    assert schema["properties"]["days"]["items"]["format"] == "date"
