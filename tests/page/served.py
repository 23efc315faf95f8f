# SPDX-License-Identifier: MIT
"""A server of the page, spoken to through plain sockets, and counting: what its checks stand on."""
import os
import re
import signal
import socket
import subprocess
import tempfile

TOP = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PROGRAM = os.path.join(TOP, "build", "check", "sillet")
INSTALLED = os.path.join(TOP, "build", "sillet")  # without sanitizers: its time and its memory are what a person gets
SHEET = open(os.path.join(TOP, "examples", "high-saddle.yaml"), "rb").read()
counts = {True: 0, False: 0}


def check(good, what):
    counts[bool(good)] += 1
    if not good:
        print(f"failed: {what}")


class Server:
    """A server on a folder of its own, or on one that is given, which is then left alone."""

    def __init__(self, *options, program=PROGRAM, folder=None):
        self.own = folder is None
        self.folder = folder or tempfile.mkdtemp()
        environment = dict(os.environ, SILLET_PROFILES=os.path.join(TOP, "profiles"))
        self.process = subprocess.Popen([program, "serve", "--folder", self.folder, *(options or ("--port", "0"))],
                                        env=environment, stdout=subprocess.PIPE, text=True)
        self.address = re.search(r"http:\S+", self.process.stdout.readline()).group()
        port = re.search(r":(\d+)/", self.address)
        self.port = int(port[1]) if port else 80

    def stop(self, how=signal.SIGINT):
        self.process.send_signal(how)
        code = self.process.wait(10)
        if self.own:
            os.rmdir(self.folder)
        return code

    def connect(self):
        return socket.create_connection(("127.0.0.1", self.port), 5)

    def ask(self, lines, body=b"", host=True):
        """The status and headers and body that come back; 0 where the door is shut without a word."""
        head = list(lines) + ([f"Host: 127.0.0.1:{self.port}"] if host else [])
        if body:
            head.append(f"Content-Length: {len(body)}")
        with self.connect() as there:
            there.sendall("\r\n".join(head + ["Connection: close", "", ""]).encode() + body)
            return read(there)


def read(there):
    there.settimeout(30)
    got = b""
    try:
        while more := there.recv(65536):
            got += more
    except ConnectionResetError:
        pass
    head, _, body = got.partition(b"\r\n\r\n")
    return int(head.split()[1]) if head else 0, head.decode(), body


def report():
    """The sum, and the exit code that goes with it."""
    print(f"{counts[True]} passed, {counts[False]} failed")
    return 1 if counts[False] else 0
