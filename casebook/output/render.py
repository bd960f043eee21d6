"""Templates to finished HTML: our own Jinja, escaping on, an undefined name an error."""

from __future__ import annotations

import functools

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from casebook.files import templates_folder


@functools.cache
def _environment() -> Environment:
    return Environment(
        loader=FileSystemLoader(templates_folder()),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        auto_reload=True,
    )


def render(template: str, **context: object) -> Markup:
    """A template, named from the templates' folder, filled with its context."""
    text = _environment().get_template(template).render(context)
    return Markup(text)
