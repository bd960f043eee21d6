"""The MkDocs plugin: each event of a build, and what it does to the site."""

from __future__ import annotations

import logging
import re
from concurrent.futures import ProcessPoolExecutor
from datetime import datetime
from multiprocessing import get_context
from pathlib import Path
from typing import Any

from markupsafe import Markup
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page

from casebook import flow
from casebook.cli.job import Job, in_a_line
from casebook.diagnostics import Severity
from casebook.files import link_or_copy, templates_folder
from casebook.model.base import Audience
from casebook.photos.derive import Unusable
from casebook.swaps import remember
from casebook.terminal import counted
from casebook_mkdocs.config import Options

LOG = get_plugin_logger("casebook")
NOT_IN_NAV = InclusionLevel.NOT_IN_NAV  # in it, size and time grow with the square
SHEETS = re.compile(r"assets/(stylesheets/main\.[^/]*|own-page)\.css")  # Material's, ours over it


class CasebookPlugin(BasePlugin[Options]):  # type: ignore[no-untyped-call]
    """Adds an archive's pages to a MkDocs site. The commands hand in a job; else it makes one."""

    job: Job | None = None

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Our frame before the theme's, and nothing that a site builder adds by itself."""
        self.root = Path(config.config_file_path).absolute().parent
        config.docs_dir = str(self.root / "pages")
        config.use_directory_urls = False
        config.theme.dirs.insert(0, str(templates_folder() / "theme"))
        config.theme.static_templates.clear()  # its 404.html, and a sitemap that stamps today
        return config

    def on_pre_build(self, **_: Any) -> None:
        """Read, check and make the pictures, before MkDocs empties the old site."""
        self.alone = self.job is None
        job = self.job or self._job()
        self.notes = job.notes()
        self.shown = flow.show(job.loaded, job.audience, job.client, job.leave_out)
        try:
            with ProcessPoolExecutor(mp_context=get_context("spawn")) as executor:
                self.pictures = flow.derive(self.shown, job.loaded, executor, job.report)
        except Unusable as fault:
            raise PluginError(f"the photo `{fault.name}` cannot be used: {fault.reason}") from fault

    def _job(self) -> Job:
        """What `mkdocs build` alone is to build, once it is checked; an error stops it."""
        loaded = flow.load(self.root)
        found = flow.check(loaded, datetime.now().astimezone().date())
        for one in found:
            LOG.log(logging.INFO + 10 * (one.severity - Severity.SUGGESTION), in_a_line(one))
        if any(one.severity is Severity.ERROR for one in found):
            raise PluginError(f"{counted(found)}; nothing was built")
        return Job(loaded, found, Audience(self.config.audience), self.config.client)

    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Our pages beside the hand-written ones, without what only the theme's frame needs."""
        own = [file for file in files.documentation_pages() if file.dest_uri != "index.html"]
        self.site = flow.publish(
            self.shown,
            self.pictures,
            site_url=config.site_url or "",
            own_pages=[(_title(file, config), file.dest_uri) for file in own],
            diagnostics=self.notes,
            store=self.pictures.cache,
        )
        self.pages = {page.address: page for page in self.site.pages}
        theme = [file for file in files if file.src_dir in config.theme.dirs]
        kept = [file for file in theme if own and SHEETS.fullmatch(file.src_uri)]
        self.sheets = sorted((file.dest_uri for file in kept), reverse=True)
        clash = [file for file in files if file.dest_uri in self.pages]
        for file in clash:
            LOG.warning(f"pages/{file.src_uri} is left out: casebook makes {file.dest_uri} itself")
        for file in {*theme, *clash} - {*kept}:
            files.remove(file)
        for address in self.pages:
            name = address.removesuffix(".html") + ".md"
            files.append(File.generated(config, name, content="", inclusion=NOT_IN_NAV))
        return files

    def on_page_context(self, context: Any, *, page: Page, **_: Any) -> Any:
        """The finished strings that the frame joins: of our page, or around a hand-written one."""
        address = page.file.dest_uri
        if ours := self.pages.get(address):
            context.update(frame=ours.frame(), sheets="", body=ours.body())
        else:
            link, up = Markup('<link rel="stylesheet" href="{}">\n'), "../" * address.count("/")
            sheets = Markup().join(link.format(up + one) for one in self.sheets)
            frame = self.site.frame_for(address, str(page.title))
            text = self.site.own_page(page.content or "", str(page.title))
            body = f'<article class="own-page md-typeset"{frame.own}>\n{text}\n</article>'
            context.update(frame=frame, sheets=sheets, body=body)
        return context

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """The files beside the pages, linked: MkDocs would copy each of them at each build."""
        place = Path(config.site_dir)
        for asset in self.site.assets:
            target = place / asset.address
            target.parent.mkdir(parents=True, exist_ok=True)
            if isinstance(content := asset.made(), bytes):
                target.write_bytes(content)
            else:
                link_or_copy(content, target)
        if self.alone and not any(one.name.startswith(".") for one in place.iterdir()):
            remember(place, self.root / ".casebook")  # MkDocs emptied it: all in it is ours


def _title(file: File, config: MkDocsConfig) -> str:
    """A hand-written page's title, as MkDocs finds it in the page."""
    page = Page(None, file, config)
    page.read_source(config)
    file.page = None
    return str(page.title)
