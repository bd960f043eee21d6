"""What `mkdocs.yml` may say under `casebook`: whom the site is for; the commands set it too."""

from __future__ import annotations

from mkdocs.config import config_options
from mkdocs.config.base import Config


class Options(Config):  # type: ignore[no-untyped-call]
    """The plugin's options: the audience, and for a client's site its key in `lab.yml`."""

    audience = config_options.Choice(("lab", "client", "public"), default="public")
    client = config_options.Type(str, default="")
