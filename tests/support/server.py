"""A server as teachers run it, in a separate process, and a client for it."""

from __future__ import annotations

import contextlib
import http.client
import re
import signal
import subprocess
import sys
import threading
import time
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import urlencode, urlsplit

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

SERVE = [sys.executable, "-m", "manipulatives", "serve"]
START = 60
KERNEL = re.compile(r"kernel-([0-9a-f-]{36})\.json")


def until(fact: Callable[[], object], seconds: float, what: str) -> object:
    """Wait until a condition holds and return its value; fail after a timeout."""
    end = time.monotonic() + seconds
    while True:
        found = fact()
        if found:
            return found
        assert time.monotonic() < end, f"{what} within {seconds} s"
        time.sleep(0.05)


@dataclass
class Server:
    """A shelf that is open."""

    process: subprocess.Popen
    address: str
    said: list[str] = field(default_factory=list)

    @property
    def host(self) -> str:
        """Machine and port."""
        return urlsplit(self.address).netloc

    @property
    def base(self) -> str:
        """The address without the key."""
        return self.address.partition("?")[0]

    def visitor(self, *, with_key: bool = True) -> Visitor:
        """Return a client with the key of the shelf, or without it."""
        visitor = Visitor(self.host)
        if with_key:
            visitor.get(self.address.removeprefix(f"http://{self.host}"))
        return visitor

    def family(self) -> dict[int, str]:
        """Every process that the server began, with its command line."""
        return descendants(self.process.pid)

    def kernels(self) -> dict[str, int]:
        """The kernels that run, by id, with their processes."""
        found = {}
        for pid, line in self.family().items():
            if "ipykernel" in line and (name := KERNEL.search(line)):
                found[name[1]] = pid
        return found

    def stop(self, how: int = signal.SIGINT) -> int:
        """End it and return its exit status."""
        if self.process.poll() is None:
            self.process.send_signal(how)
        return self.process.wait(20)


@dataclass
class Answer:
    """The answer to a request."""

    status: int
    headers: http.client.HTTPMessage
    body: bytes

    @property
    def text(self) -> str:
        """The body as text."""
        return self.body.decode("utf-8", "replace")


class Visitor:
    """A client that sends requests like a browser, with cookies, but exactly as given."""

    def __init__(self, host: str) -> None:
        self.host = host
        self.cookies: dict[str, str] = {}

    def ask(
        self, method: str, path: str, body: bytes | str | None = None, **headers: str
    ) -> Answer:
        """Send one request; a path goes over the wire as it is."""
        connection = http.client.HTTPConnection(self.host, timeout=60)
        with contextlib.closing(connection):
            connection.putrequest(method, path, skip_host=True, skip_accept_encoding=True)
            given = {"Host": self.host, **{key.replace("_", "-"): headers[key] for key in headers}}
            if self.cookies:
                given["Cookie"] = "; ".join(f"{key}={word}" for key, word in self.cookies.items())
            content = body.encode() if isinstance(body, str) else body or b""
            if body is not None:
                given.setdefault("Content-Type", "application/x-www-form-urlencoded")
                given["Content-Length"] = str(len(content))
            for key, word in given.items():
                connection.putheader(key, word)
            connection.endheaders(content)
            answer = connection.getresponse()
            for cookie in answer.headers.get_all("Set-Cookie") or []:
                name, _, rest = cookie.partition("=")
                self.cookies[name] = rest.split(";")[0]
            return Answer(answer.status, answer.headers, answer.read())

    def get(self, path: str, **headers: str) -> Answer:
        """Send a GET request."""
        return self.ask("GET", path, **headers)

    def post(self, path: str, **fields: str) -> Answer:
        """Press a button of the shelf."""
        found = re.search(r'name="_xsrf" value="([^"]+)"', self.get("/").text)
        return self.ask("POST", path, urlencode({"_xsrf": found[1] if found else "", **fields}))


def begin(folder: Path, *options: str, **how: object) -> subprocess.Popen:
    """Start a shelf without a browser; it may fail."""
    return subprocess.Popen(
        [*SERVE, str(folder), "--no-browser", *options],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        **how,
    )


@contextlib.contextmanager
def serving(folder: Path, *options: str, **how: object) -> Iterator[Server]:
    """Run a shelf on any free port inside a block; it must print no errors."""
    process = begin(folder, *(options or ("--port", "0")), **how)
    complaints: list[str] = []
    threading.Thread(target=lambda: complaints.extend(process.stderr), daemon=True).start()
    try:
        line = process.stdout.readline()
        found = re.search(r"http://\S+", line)
        assert found, line + "".join(complaints)
        server = Server(process, found[0], complaints)
        yield server
    finally:
        if process.poll() is None:
            process.send_signal(signal.SIGINT)
        try:
            process.wait(20)
        finally:
            process.kill()
    assert not complaints, "".join(complaints)


def descendants(pid: int) -> dict[int, str]:
    """Every living process that comes from one, with its command line."""
    parents: dict[int, int] = {}
    for entry in Path("/proc").iterdir():
        if entry.name.isdecimal():
            with contextlib.suppress(OSError):
                state, parent = (entry / "stat").read_text().rpartition(")")[2].split()[:2]
                if state != "Z":
                    parents[int(entry.name)] = int(parent)
    found: dict[int, str] = {}
    waiting = [pid]
    while waiting:
        one = waiting.pop()
        for child, parent in parents.items():
            if parent == one and child not in found:
                with contextlib.suppress(OSError):
                    line = Path(f"/proc/{child}/cmdline").read_bytes()
                    found[child] = line.replace(b"\0", b" ").decode("utf-8", "replace")
                    waiting.append(child)
    return found


def listening(pids: set[int]) -> set[tuple[str, int]]:
    """Where processes listen for connections, as address and port."""
    inodes = set()
    for pid in pids:
        with contextlib.suppress(OSError):
            for link in Path(f"/proc/{pid}/fd").iterdir():
                with contextlib.suppress(OSError):
                    if found := re.fullmatch(r"socket:\[(\d+)\]", str(link.readlink())):
                        inodes.add(found[1])
    found = set()
    for table in ("tcp", "tcp6", "udp", "udp6"):
        for line in Path(f"/proc/net/{table}").read_text().splitlines()[1:]:
            words = line.split()
            waits = words[3] == "0A" or table.startswith("udp")
            if waits and words[9] in inodes:
                address, port = words[1].split(":")
                found.add((_readable(address), int(port, 16)))
    return found


def _readable(address: str) -> str:
    """An address as people write it; the system writes IPv4 backwards in hexadecimal."""
    raw = bytes.fromhex(address)
    return ".".join(str(part) for part in reversed(raw)) if len(raw) == 4 else raw.hex()
