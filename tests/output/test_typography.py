"""Typographic marks."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casebook.output.typography import typeset, typeset_html
from casebook.values.language import ENGLISH, Language, known_languages, language

NB = "\N{NO-BREAK SPACE}"
ALL = tuple(language(tag) or ENGLISH for tag in known_languages())


@pytest.mark.parametrize(
    ("typed", "shown"),
    [
        ("the keeper's day book", "the keeper’s day book"),
        ("the keepers' book", "the keepers’ book"),
        ("'Do not take from the light'", "‘Do not take from the light’"),
        ('headed "Tides", then "Moon"', "headed “Tides”, then “Moon”"),
        ('("in ink")', "(“in ink”)"),
        ("\"the keeper's 'log'\" it says", "“the keeper’s ‘log’” it says"),
        ("'tis of the '90s, or '45", "’tis of the ’90s, or ’45"),
        ("rock 'n' roll", "rock ’n’ roll"),
        ("the 1850's, don't", "the 1850’s, don’t"),
        ("5' 6\"", "5′ 6″"),
        ("5'6\" high", "5′6″ high"),
        ('16 1/4" wide', f"16{NB}1/4″ wide"),
        ('"of 1850" it says', "“of 1850” it says"),
        ("and so on...", "and so on…"),
        ("....", "...."),
        ("worn - but sound -- so far", f"worn{NB}– but sound{NB}– so far"),
        ("worn – but sound", f"worn{NB}– but sound"),
        ("an--id and a-b, 2-4", "an--id and a-b, 2-4"),
        ("390 mm × 12 g/m², 3 h 20 min, 4 %", f"390{NB}mm × 12{NB}g/m², 3{NB}h 20{NB}min, 4{NB}%"),
        ("3 minutes, 2 messages", "3 minutes, 2 messages"),
        ("c. 1780", f"c.{NB}1780"),
        ('a " alone', 'a " alone'),
        ('"', '"'),
        ("", ""),
    ],
)
def test_english_has_its_marks(typed: str, shown: str) -> None:
    assert typeset(typed) == shown


@pytest.mark.parametrize(
    ("tag", "shown"),
    [
        ("en-US", "“worn, the ‘log’” isn’t"),
        ("de", "„worn, the ‚log‘“ isn’t"),
        ("fr", "«\u202fworn, the “log”\u202f» isn’t"),
        ("nl", "“worn, the ‘log’” isn’t"),
        ("es", "«worn, the “log”» isn’t"),
        ("it", "«worn, the “log”» isn’t"),
    ],
)
def test_each_language_has_its_own_quotes(tag: str, shown: str) -> None:
    assert typeset("\"worn, the 'log'\" isn't", language(tag) or ENGLISH) == shown


TEXTS = st.text(st.sampled_from("ab59 \"'’“”.-–—…()smc1/\n"), max_size=30) | st.text(max_size=20)
CHANGED = re.compile(r"""["'’‘‚“”„«»′″\-–—.…\s\u00a0\u202f]""")


@given(TEXTS, st.sampled_from(ALL))
def test_only_marks_and_spaces_change_and_only_once(text: str, one: Language) -> None:
    shown = typeset(text, one)
    assert CHANGED.sub("", shown) == CHANGED.sub("", text)
    assert typeset(shown, one) == shown


def test_texts_are_set_and_tags_scripts_and_code_are_not() -> None:
    html = (
        '<p title="a keeper\'s">The <em>keeper</em>&#39;s &#34;<a href="x">log</a>&#34;</p>'
        "<code>it's</code><script>a = 'b'</script>"
    )
    assert typeset_html(html, ENGLISH) == (
        '<p title="a keeper\'s">The <em>keeper</em>’s “<a href="x">log</a>”</p>'
        "<code>it's</code><script>a = 'b'</script>"
    )


def test_a_quotation_ends_with_its_paragraph() -> None:
    assert typeset_html('<p>"open</p><p>12"</p>', ENGLISH) == "<p>“open</p><p>12″</p>"


@given(st.lists(st.sampled_from(["<b>", "</b>", "<p>", "</p>", "<br>"]) | TEXTS, max_size=6))
def test_html_is_set_only_once_too(pieces: list[str]) -> None:
    html = "".join(one if one.startswith("<") else one.replace("<", "&lt;") for one in pieces)
    once = typeset_html(html, ENGLISH)
    assert typeset_html(once, ENGLISH) == once
    assert re.findall("<[^>]*>", once) == re.findall("<[^>]*>", html)
