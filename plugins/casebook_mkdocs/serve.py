"""Shows a site on this machine while its files are written: MkDocs' server with our builds."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import click
from mkdocs.livereload import _SCRIPT_TEMPLATE, LiveReloadServer, _timestamp


def serve(notes: Path, watched: Iterable[Path], port: int, make: Callable[[Path], None]) -> None:
    """Serve what `make` puts into a folder in `notes`, anew after each change, until Ctrl-C."""
    with tempfile.TemporaryDirectory(prefix="serving-", dir=notes) as folder:
        server = _Server(lambda: None, "127.0.0.1", port, folder, polling_interval=1)
        server.builder = lambda: _rebuild(server, Path(folder), make)
        server.builder()
        for path in filter(Path.exists, watched):
            server.watch(str(path))
        click.echo(f"serving on {server.url} (Ctrl-C ends it)", err=True)
        try:
            server.serve()  # type: ignore[no-untyped-call]
        finally:
            server.shutdown()


def _rebuild(server: _Server, folder: Path, make: Callable[[Path], None]) -> None:
    new = tempfile.mkdtemp(dir=folder)
    try:
        make(Path(new))
        server.root = new
    except (click.ClickException, OSError) as fault:
        click.echo(f"error: {fault}; the last good site stays", err=True)
    for old in folder.iterdir():
        if str(old) != server.root:
            shutil.rmtree(old)


class _Server(LiveReloadServer):
    """Its script comes as a file of its own: our pages allow no script inside them."""

    def _serve_request(self, environ: Any, start_response: Any) -> Iterable[bytes] | None:
        if environ["PATH_INFO"] != "/livereload.js":
            return super()._serve_request(environ, start_response)
        start_response("200 OK", [("Content-Type", "text/javascript")])
        epoch = int(environ["QUERY_STRING"])
        return [_SCRIPT_TEMPLATE.substitute(epoch=epoch, request_id=_timestamp()).encode()]

    def _inject_js_into_html(self, content: bytes, epoch: int) -> bytes:
        return content + f'<script src="/livereload.js?{epoch}"></script>'.encode()
