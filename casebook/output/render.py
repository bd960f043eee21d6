"""Templates to finished HTML: our own Jinja, escaping on, an undefined name an error."""

from __future__ import annotations

import functools

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from casebook.files import templates_folder
from casebook.output.typography import typeset_html
from casebook.values.language import Language


@functools.cache
def _environment() -> Environment:
    made = Environment(
        loader=FileSystemLoader(templates_folder()),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=True,
    )
    made.globals["own"] = ""
    return made


def page(template: str, language: Language, own: str = "", **context: object) -> Markup:
    """A template filled, its texts with the marks of a language.

    `own` is the tag of the lab's own texts where that is not the page's: templates put it, as an
    attribute, on what the lab wrote.
    """
    return Markup(typeset_html(render(template, own=lang(own), **context), language))


def lang(tag: str) -> Markup:
    """The attribute that says the language of an element; nothing for ""."""
    return Markup(' lang="{}"').format(tag) if tag else Markup()


def render(template: str, **context: object) -> Markup:
    """A template, named from the templates' folder, filled with its context."""
    text = _environment().get_template(template).render(context)
    return Markup(text)
