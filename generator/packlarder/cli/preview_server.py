"""The web server of a preview, for this machine alone."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from functools import partial
from http import HTTPStatus
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from urllib.parse import urlsplit

from packlarder.cli import texts
from packlarder.cli.options import Misuse
from packlarder.cli.preview import FORMER, Preview

HOST = "127.0.0.1"
FIRST_PORT, PORTS_TRIED = 8300, 50
NEWS = "/-/news"
HEARTBEAT_S = 15.0
"""After so long without news a word is sent all the same, so that a browser that went away is noticed."""


@contextmanager
def serving(preview: Preview, port: int) -> Iterator[str]:
    """Serve a preview, and give its address; on `port`, or with 0 on the first that is free."""
    server = _server(preview, port)
    thread = Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://{HOST}:{server.server_port}/"
    finally:
        server.shutdown()
        server.server_close()


class _Server(ThreadingHTTPServer):
    """Serves each request in a thread of its own, and does not mind a browser that went away."""

    daemon_threads = True

    def handle_error(self, request: object, client_address: object) -> None:
        """Say nothing of a closed connection; anything else is a slip of ours and is told."""
        if not isinstance(sys.exception(), ConnectionError):
            super().handle_error(request, client_address)  # type: ignore[arg-type]  # as they came


class _Handler(SimpleHTTPRequestHandler):
    """Serves the pages of a preview, the page about faults in their place, and news of changes."""

    def __init__(self, preview: Preview, *args: object, directory: str) -> None:
        """Keep the preview; the library's own constructor answers the request at once."""
        self.preview = preview
        super().__init__(*args, directory=directory)  # type: ignore[arg-type]  # as the server hands them over

    def do_GET(self) -> None:
        """Answer a request. Only browsers that came to this machine by its own name are answered."""
        asked = urlsplit(self.path)
        if self.headers.get("Host", "").rpartition(":")[0] not in (HOST, "localhost"):
            self.send_error(HTTPStatus.FORBIDDEN)
        elif asked.path == NEWS:
            self._tell_news()
        elif self.preview.faults and asked.query != FORMER and asked.path.endswith(("/", ".html")):
            self._send_page(self.preview.faults, HTTPStatus.OK)
        else:
            super().do_GET()

    def end_headers(self) -> None:
        """Let nothing be kept: the next request may find another page."""
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def list_directory(self, path: object) -> None:  # noqa: ARG002 - as the library calls it
        """List nothing."""
        self.send_error(HTTPStatus.NOT_FOUND)

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        """Answer with a page of ours for what is not there; it leads back, and a mended book brings it up to date."""
        if code == HTTPStatus.NOT_FOUND:
            self._send_page(self.preview.no_page(urlsplit(self.path).path), HTTPStatus.NOT_FOUND)
        else:
            super().send_error(code, message, explain)

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - the library's name
        """Keep quiet."""

    def _send_page(self, page: str, status: HTTPStatus) -> None:
        content = page.encode()
        self.send_response(status)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(content)

    def _tell_news(self) -> None:
        """Send when something last changed, at once and whenever it does, until the browser goes away."""
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", "text/event-stream")
        self.end_headers()
        with suppress(OSError):
            while True:
                told = self.preview.changed_ms
                self.wfile.write(f"data: {told}\n\n".encode())
                self.preview.wait(told, HEARTBEAT_S)


def _server(preview: Preview, port: int) -> _Server:
    for tried in (port,) if port else range(FIRST_PORT, FIRST_PORT + PORTS_TRIED):
        with suppress(OSError):
            return _Server((HOST, tried), partial(_Handler, preview, directory=str(preview.out)))
    raise Misuse(texts.PORT_TAKEN.format(port=port) if port else texts.NO_PORT.format(first=FIRST_PORT))
