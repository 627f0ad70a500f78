"""The site's templates: what is set is escaped, once; words stand in their places; nothing is missing silently."""

import pytest
from jinja2 import DictLoader, UndefinedError
from markupsafe import Markup

from packlarder.publish.site_templates import SiteTemplates

LOUD = "<b>1 & 2</b>"
HTML = Markup("<b>1 & 2</b>")
SAFE = "&lt;b&gt;1 &amp; 2&lt;/b&gt;"


def set_in(template: str, **names: object) -> str:
    """Set a template that is read through a loader, as those of the theme are."""
    templates = SiteTemplates(DictLoader({"page.html": template}), {"and": "salt & oil"})
    return templates.get_template("page.html").render(**names)


def test_text_is_escaped_and_html_is_not() -> None:
    """A text is escaped, the same characters marked as HTML are not, whichever is set first."""
    both = "{{ one }} {{ other }} {{ one }}"
    assert set_in(both, one=LOUD, other=HTML) == f"{SAFE} {LOUD} {SAFE}"
    assert set_in(both, one=HTML, other=LOUD) == f"{LOUD} {SAFE} {LOUD}"


def test_what_is_no_text_is_set_as_text() -> None:
    """Numbers are set as they are printed; what prints itself with signs of HTML is escaped."""
    assert set_in("{{ count }} {{ odd }}", count=12, odd=[LOUD]) == f"12 [&#39;{SAFE}&#39;]"


def test_macro_escapes_once() -> None:
    """What a macro sets is HTML already where it is called."""
    assert set_in("{% macro row(text) %}<i>{{ text }}</i>{% endmacro %}{{ row(text) }}", text=LOUD) == f"<i>{SAFE}</i>"


def test_words_stand_in_their_places_escaped() -> None:
    """A word of the catalogue is put in and escaped; one that is not there stops the template."""
    assert set_in("{{ w.and }}") == "salt &amp; oil"
    with pytest.raises(KeyError):
        set_in("{{ w.nor }}")


def test_missing_name_is_told() -> None:
    """A name that nobody gave stops the page; nothing is left out silently."""
    with pytest.raises(UndefinedError):
        set_in("{{ nobody }}")
