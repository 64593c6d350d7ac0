"""The screens in a browser: only this computer, only our own page, and one writer."""

from __future__ import annotations

import asyncio
import builtins
import re
import shutil
import signal
import socket
import subprocess
import sys
from collections.abc import AsyncIterator, Iterator
from contextlib import asynccontextmanager, contextmanager
from pathlib import Path
from typing import Any

import pytest
from aiohttp import ClientConnectorError, ClientSession, WSMsgType, WSServerHandshakeError
from aiohttp.test_utils import TestClient, TestServer

from benchround.cli import main
from benchround.core.errors import InputError
from benchround.serving.own_address import address, is_loopback
from benchround.serving.server import command_line, make_server
from benchround.whereabouts import sample_folder

ROOT = Path(__file__).parents[2]
PATIENCE_S = 30.0
STEERING = re.compile(r"\x1b\[[0-?]*[ -/]*[@-~]")


def free_port() -> int:
    """A port nobody listens on just now."""
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        port: int = found.getsockname()[1]
        return port


@contextmanager
def served(*words: str, home: Path) -> Iterator[str]:
    """A running server; the address of its page."""
    port = free_port()
    command = [sys.executable, "-m", "benchround", "serve", *words, "--port", str(port)]
    env = {"PATH": "/usr/bin:/bin", "XDG_DATA_HOME": str(home), "HOME": str(home)}
    server = subprocess.Popen(command, cwd=ROOT, env=env, stderr=subprocess.PIPE)
    try:
        yield f"http://127.0.0.1:{port}"
        server.send_signal(signal.SIGINT)
        assert server.wait(PATIENCE_S) == 0
    finally:
        server.kill()
        server.wait()
        assert server.stderr is not None
        server.stderr.close()


async def page_of(browser: ClientSession, url: str) -> tuple[str, str]:
    """The page and what it is allowed to load, once the server is up."""
    for _ in range(int(PATIENCE_S / 0.1)):
        try:
            async with browser.get(url) as answer:
                assert answer.status == 200
                return await answer.text(), answer.headers["Content-Security-Policy"]
        except ClientConnectorError:
            await asyncio.sleep(0.1)
    raise TimeoutError(url)


@asynccontextmanager
async def viewer(browser: ClientSession, url: str, words: str) -> AsyncIterator[str]:
    """A browser looking at the screens, once the words are drawn; all that was drawn."""
    seen = ""
    async with browser.ws_connect(f"{url}/ws?width=120&height=40") as screens:
        async with asyncio.timeout(PATIENCE_S):
            while words not in seen:
                message = await screens.receive()
                assert message.type in (WSMsgType.TEXT, WSMsgType.BINARY), message
                data = message.data
                drawn = data if isinstance(data, str) else data.decode(errors="replace")
                seen += STEERING.sub("", drawn)
        yield seen


async def test_the_screens_are_seen_on_loopback_by_one_writer_and_other_readers(
    tmp_path: Path,
) -> None:
    season = tmp_path / "season"
    shutil.copytree(sample_folder(), season, ignore=shutil.ignore_patterns("*.lock"))
    async with ClientSession() as browser:
        with served(str(season), home=tmp_path) as url:
            page, policy = await page_of(browser, url)
            assert "Opening the season" in page and "default-src 'self'" in policy
            assert set(re.findall(r"(?:https?|wss?)://[^/\"']+", page)) == {
                url,
                url.replace("http", "ws"),
            }
            async with viewer(browser, url, "all keys") as first:
                assert "Read only" not in first
                async with viewer(browser, url, "Read only: ") as second:
                    assert "already open" in second


async def test_what_another_page_or_name_asks_for_is_refused(tmp_path: Path) -> None:
    async with ClientSession() as browser:
        with served("--sample", home=tmp_path) as url:
            await page_of(browser, url)
            for headers in ({"Origin": "http://elsewhere.example"}, {"Host": "elsewhere.example"}):
                async with browser.get(url, headers=headers) as answer:
                    assert answer.status == 403
                with pytest.raises(WSServerHandshakeError):
                    await browser.ws_connect(f"{url}/ws", headers=headers)


@pytest.mark.parametrize(
    ("host", "only_here"),
    [
        ("127.0.0.1", True),
        ("127.8.8.8", True),
        ("localhost", True),
        ("::1", True),
        ("0.0.0.0", False),
        ("::", False),
        ("192.168.1.20", False),
        ("localhost.example", False),
        ("127.0.0.1.example", False),
        ("", False),
    ],
)
def test_what_counts_as_this_computer(host: str, only_here: bool) -> None:
    assert is_loopback(host) is only_here


def test_without_being_told_otherwise_it_listens_on_this_computer_only(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    asked: list[tuple[Any, ...]] = []
    monkeypatch.setattr("benchround.commands.serve.serve", lambda *words: asked.append(words))
    assert main(["serve", "--sample"]) == 0
    assert asked == [(("--sample",), "127.0.0.1", 8000, "http://127.0.0.1:8000")]
    assert capsys.readouterr().err == ""
    assert main(["serve", "--sample", "--host", "192.168.1.20", "--port", "8080"]) == 0
    assert asked[1:] == [(("--sample",), "192.168.1.20", 8080, "http://192.168.1.20:8080")]
    warned = capsys.readouterr().err
    assert "everybody who can reach 192.168.1.20" in warned and "no password" in warned


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--host", "0.0.0.0"), "say with --url"),
        (("--url", "javascript:alert(1)"), "is no address"),
        (("--port", "0"), "is no port"),
        (("--port", "99999999999"), "is no port"),
        (("--port", "eighty"), "is no port"),
    ],
)
def test_what_cannot_be_is_refused(
    words: tuple[str, ...], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["serve", "--sample", *words]) == 1
    assert said in capsys.readouterr().err


def test_without_the_package_it_says_what_to_install(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    real = builtins.__import__

    def without(name: str, *more: Any) -> Any:
        if name.startswith("textual_serve"):
            raise ImportError(name)
        return real(name, *more)

    monkeypatch.setattr(builtins, "__import__", without)
    assert main(["serve", "--sample"]) == 1
    assert "extra 'serve'" in capsys.readouterr().err


def test_a_folder_is_one_word_for_the_shell_whatever_its_name(tmp_path: Path) -> None:
    odd = tmp_path / "a b; touch $(echo c) `d` 'e' \"f\""
    shown = subprocess.run(
        command_line((str(odd),)).replace("-m benchround", "-c 'import sys; print(sys.argv[1])'"),
        shell=True,
        capture_output=True,
        text=True,
        check=True,
    )
    assert shown.stdout == f"{odd}\n"
    assert list(tmp_path.iterdir()) == []


def test_an_address_is_told_without_a_path() -> None:
    assert address("0.0.0.0", 8000, "https://bench.example/x?y") == "https://bench.example"
    with pytest.raises(InputError):
        address("::", 8000)


ADDRESSES = [
    ("::1", 8124, "", "http://[::1]:8124", "[::1]:8124"),
    ("::1", 80, "", "http://[::1]", "[::1]"),
    ("localhost", 8126, "", "http://localhost:8126", "localhost:8126"),
    ("127.0.0.1", 80, "", "http://127.0.0.1", "127.0.0.1"),
    ("127.0.0.1", 8123, "http://bench.local:80", "http://bench.local", "bench.local"),
    ("127.0.0.1", 8123, "https://bench.local:443", "https://bench.local", "bench.local"),
    ("127.0.0.1", 8123, "http://bench.local:443", "http://bench.local:443", "bench.local:443"),
    ("127.0.0.1", 8125, "HTTP://Bench.Local:8125/x", "http://bench.local:8125", "bench.local:8125"),
    ("127.0.0.1", 8125, "http://[0:0::1]:80", "http://[::1]", "[::1]"),
]
"""Listening and told; address and Host as browsers send them, by RFC 6454 and RFC 9110 (memory)."""


@pytest.mark.parametrize(("host", "port", "told", "url", "sent"), ADDRESSES)
async def test_a_browser_is_let_in_however_the_address_was_written(
    host: str, port: int, told: str, url: str, sent: str
) -> None:
    assert address(host, port, told) == url
    app = await make_server(("--sample",), host, port, url)._make_app()
    app.on_startup.clear()
    async with TestClient(TestServer(app)) as browser:
        for name, status in ((sent, 200), (sent.upper(), 200), ("elsewhere.example", 403)):
            async with browser.get("/", headers={"Host": name, "Origin": url}) as answer:
                assert answer.status == status
        other = {"Host": sent, "Origin": "http://elsewhere.example"}
        async with browser.get("/", headers=other) as answer:
            assert answer.status == 403


@pytest.mark.parametrize("told", ["http://", "http://a:port", "http://[::1", "ftp://a", "a:80"])
def test_what_is_no_address_is_refused(told: str) -> None:
    with pytest.raises(InputError, match="is no address"):
        address("127.0.0.1", 8000, told)
