"""A board under test: starts it, talks to it over its device, reads its output. Python 3, standard library only."""

import collections
import json
import os
import queue
import select
import subprocess
import tempfile
import threading
import time

PATIENCE_S = 20


class Board:
    """
    One running board, in a folder of its own. If its device `vanishes` with each reset of the chip, it is reopened when it is
    back.
    """

    def __init__(self, program, elf, *options, opens=True, vanishes=False):
        self.vanishes = vanishes
        self.folder = tempfile.TemporaryDirectory()
        self.link = os.path.join(self.folder.name, "tty")
        self.started_s = time.monotonic()
        self.process = subprocess.Popen(
            [program, "--elf", elf, "--link", self.link, *options], stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        self.lines = queue.Queue()
        self.seen = collections.deque()
        threading.Thread(target=self._listen, daemon=True).start()
        self.device = -1
        self.bytes_read = 0
        self.expect(lambda line: line.get("event") == "ready")
        if opens:
            self.open()

    def _listen(self):
        for line in self.process.stdout:
            self.lines.put(json.loads(line))
        self.lines.put(None)

    def open(self):
        self.device = os.open(self.link, os.O_RDWR | os.O_NOCTTY)
        self.expect(lambda line: line.get("event") == "opened")

    def close_device(self):
        os.close(self.device)
        self.device = -1
        self.expect(lambda line: line.get("event") == "closed")

    def next_line(self):
        line = self.lines.get(timeout=PATIENCE_S)
        if line is not None:
            self.seen.append(line)
        return line

    def expect(self, wanted):
        """The next matching line; those before it are skipped, but kept in `seen`."""
        while True:
            line = self.next_line()
            if line is None:
                raise AssertionError("the board ended")
            if wanted(line):
                return line

    def command(self, text):
        """Gives a command and waits for its answer."""
        self.process.stdin.write(text.encode() + b"\n")
        self.process.stdin.flush()
        return self.expect(lambda line: "answer" in line)

    def stats(self):
        return self.command("stats")

    def frame(self):
        return self.expect(lambda line: "frame" in line)

    def write(self, data):
        while data:
            data = data[os.write(self.device, data):]

    def read(self, count):
        """`count` bytes from the board."""
        data = b""
        deadline = time.monotonic() + PATIENCE_S
        while len(data) < count:
            rest = deadline - time.monotonic()
            if rest <= 0 or not select.select([self.device], [], [], rest)[0]:
                raise AssertionError(f"only {data!r} came of {count} bytes")
            data += self.read_some(0, count - len(data))
        return data

    def read_some(self, patience_s=PATIENCE_S, most=4096):
        """What the board has sent; nothing if it is silent for this long."""
        if not select.select([self.device], [], [], patience_s)[0]:
            return b""
        data = os.read(self.device, most)
        self.bytes_read += len(data)
        return data

    def restart(self):
        """Presses the reset button. What the firmware sent before is read and discarded, so anything that arrives is new."""
        self.command("stall 3600000")
        sent = self.stats()["bytes_up"]
        while self.bytes_read < sent:
            if not self.read_some():
                raise AssertionError("bytes that the board sent did not come")
        self.command("reset")
        self.command("stall 0")
        self.come_back()

    def come_back(self):
        """The chip was reset."""
        if not self.vanishes:
            return
        os.close(self.device)
        self.expect(lambda line: line.get("event") == "plugged")
        self.open()

    def plug_again(self):
        """Unplugs the board and plugs it in again."""
        self.command("unplug")
        os.close(self.device)
        self.command("plug")
        if self.vanishes:
            self.expect(lambda line: line.get("event") == "plugged")
        self.open()

    def ask(self, data, count=1):
        self.write(data)
        return self.read(count)

    def wait_for_stats(self, wanted, patience_s=PATIENCE_S):
        deadline = time.monotonic() + patience_s
        while time.monotonic() < deadline:
            stats = self.stats()
            if wanted(stats):
                return stats
        raise AssertionError(f"never came about: {stats}")

    def end(self):
        """Ends the board and returns its exit status."""
        self.process.stdin.close()
        return self.close()

    def close(self):
        status = self.process.wait(PATIENCE_S)
        while self.next_line() is not None:
            pass
        if self.device >= 0:
            os.close(self.device)
        self.folder.cleanup()
        return status
