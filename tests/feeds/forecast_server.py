"""A forecast service on this machine that behaves well or badly, as told."""

from __future__ import annotations

import json
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import date, datetime, timedelta
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer

TODAY = date(2026, 5, 27)
NOON = datetime(2026, 5, 27, 12, 0)
Answering = Callable[["Handler"], None]


def forecast(days: int = 3, first: date = TODAY) -> dict[str, object]:
    """A well-formed answer: 5 to 23 C on the first day, a degree warmer each day after."""
    return {
        "latitude": 52.5,
        "daily_units": {
            "time": "iso8601",
            "temperature_2m_min": "°C",
            "temperature_2m_max": "°C",
            "precipitation_sum": "mm",
            "wind_gusts_10m_max": "km/h",
            "sunshine_duration": "s",
        },
        "daily": {
            "time": [(first + timedelta(days=n)).isoformat() for n in range(days)],
            "temperature_2m_min": [5.0 + n for n in range(days)],
            "temperature_2m_max": [23.0 + n for n in range(days)],
            "precipitation_sum": [0.0] * days,
            "wind_gusts_10m_max": [22.4] * days,
            "sunshine_duration": [43_200.0] * days,
        },
    }


class Handler(BaseHTTPRequestHandler):
    """Answers as the server was told, and takes down what it was asked."""

    def do_GET(self) -> None:
        server = self.server
        assert isinstance(server, Server)
        server.asked.append((self.path, dict(self.headers)))
        try:
            server.answering(self)
        except (BrokenPipeError, ConnectionResetError):
            server.left += 1

    def send(self, body: bytes, *, status: int = 200, length: int | None = None) -> None:
        """Send an answer, with a length of its own choosing."""
        self.send_response(status)
        self.send_header("Content-Type", "application/json")
        self.send_header("Content-Length", str(len(body) if length is None else length))
        self.end_headers()
        self.wfile.write(body)

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing on the test's terminal."""


class Server(ThreadingHTTPServer):
    """The service; `asked` holds (path, headers) of every question."""

    daemon_threads = True

    def __init__(self, answering: Answering) -> None:
        super().__init__(("127.0.0.1", 0), Handler)
        self.answering = answering
        self.asked: list[tuple[str, dict[str, str]]] = []
        self.left = 0

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.server_port}/v1/daily?latitude={{lat}}&longitude={{lon}}"


@contextmanager
def serving(answering: Answering) -> Iterator[Server]:
    """The service, running until the block ends."""
    server = Server(answering)
    thread = threading.Thread(target=server.serve_forever, args=(0.02,), daemon=True)
    thread.start()
    try:
        yield server
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def well(handler: Handler) -> None:
    handler.send(json.dumps(forecast()).encode())


def no_json(handler: Handler) -> None:
    handler.send(b"<html>We have moved</html>")


def other_shape(handler: Handler) -> None:
    handler.send(b'{"hourly": {}}')


def not_utf8(handler: Handler) -> None:
    handler.send(b'{"daily": "\xff\xfe"}')


def refusing(handler: Handler) -> None:
    handler.send(b"busy", status=503)


def nothing_new(handler: Handler) -> None:
    handler.send(b"", status=204)


def cut_short(handler: Handler) -> None:
    body = json.dumps(forecast()).encode()
    handler.send(body[: len(body) // 2], length=len(body))


def oversized(handler: Handler) -> None:
    handler.send(b" " * 1_200_000 + json.dumps(forecast()).encode())


def endless(handler: Handler) -> None:
    handler.send_response(200)
    handler.end_headers()
    while True:
        handler.wfile.write(b" " * 65_536)


def elsewhere(handler: Handler) -> None:
    handler.send_response(302)
    handler.send_header("Location", "http://elsewhere.invalid/forecast")
    handler.send_header("Content-Length", "0")
    handler.end_headers()


def slow(handler: Handler) -> None:
    time.sleep(1.5)
    well(handler)


def dawdling(handler: Handler) -> None:
    """A byte at a time, each well within any time limit of its own."""
    body = json.dumps(forecast()).encode()
    handler.send_response(200)
    handler.send_header("Content-Length", str(len(body)))
    handler.end_headers()
    for byte in body:
        handler.wfile.write(bytes([byte]))
        handler.wfile.flush()
        time.sleep(0.05)


def slow_head(handler: Handler) -> None:
    """Headings that never end, a letter at a time."""
    handler.wfile.write(b"HTTP/1.0 200 OK\r\nX-Slow: ")
    for _ in range(100):
        handler.wfile.write(b"x")
        handler.wfile.flush()
        time.sleep(0.05)
