"""The wire of ../../wire.md, host side, for tests: packets to bytes and back."""

import dataclasses

from boards import PATIENCE_S

# How long to listen before checking whether an answer can still come.
PROBE_S = 0.005


def crc(data):
    """CRC-16/IBM-3740: catalogue of parametrised CRC algorithms; "123456789" gives 0x29B1."""
    value = 0xFFFF
    for byte in data:
        value ^= byte << 8
        for _ in range(8):
            value = (value << 1 ^ 0x1021 if value & 0x8000 else value << 1) & 0xFFFF
    return value


def stuff(data):
    """COBS: Cheshire and Baker, 1999. Without the zero that ends it."""
    out = bytearray()
    block = bytearray()
    for byte in data + b"\0":
        if byte == 0:
            out += bytes([len(block) + 1]) + block
            block.clear()
            continue
        block.append(byte)
        if len(block) == 254:
            out += b"\xff" + block
            block.clear()
    return bytes(out)


def unstuff(data):
    out = bytearray()
    at = 0
    while at < len(data):
        code = data[at]
        out += data[at + 1:at + code]
        at += code
        if code < 255 and at < len(data):
            out.append(0)
    return bytes(out)


def packet(kind, sequence, body=b""):
    data = bytes([kind, sequence]) + body
    return stuff(data + crc(data).to_bytes(2, "little")) + b"\0"


def unpack(line):
    """(type, sequence, body) of what came before a zero; None if it is broken."""
    data = unstuff(line)
    if len(data) < 4 or crc(data[:-2]) != int.from_bytes(data[-2:], "little"):
        return None
    return data[0], data[1], data[2:-2]


HELLO, SETUP, FRAME, REST = 1, 2, 3, 4
HERE, IN_FORCE, SHOWN, COMPLAINT = 0x81, 0x82, 0x83, 0x84


DARK, KEEP, BEACON = 0, 1, 2


def number(value):
    return value.to_bytes(2, "big")


@dataclasses.dataclass
class Dimmer:
    """full_mA at full duty, on a supply; after_duty, 0 to 65535, without a host."""
    supply: int = 0
    full_mA: int = 100
    after_duty: int = 0

    def body(self):
        return bytes([self.supply]) + number(self.full_mA) + number(self.after_duty)


@dataclasses.dataclass
class Setup:
    """A set-up; channel_uA, one for each letter of order."""
    pixels: int
    order: str = "GRB"
    channel_uA: tuple = (12000, 12000, 12000)
    dark_uA: int = 1000
    supply: int = 0
    holdover_ms: int = 60000
    after: int = DARK
    ceilings_mA: tuple = (20000,)
    dimmers: tuple = ()
    runs: tuple = ()  # each (data line, pixels); an empty list is not sent

    def body(self):
        return (number(self.pixels) + bytes([len(self.order)]) + self.order.encode().ljust(4, b"\0")
                + b"".join(number(uA) for uA in self.channel_uA).ljust(8, b"\0") + number(self.dark_uA)
                + bytes([self.supply]) + number(self.holdover_ms) + bytes([self.after, len(self.ceilings_mA)])
                + b"".join(number(mA) for mA in self.ceilings_mA)
                + bytes([len(self.dimmers)]) + b"".join(dimmer.body() for dimmer in self.dimmers) + self.runs_body())

    def runs_body(self):
        if not self.runs:
            return b""
        return bytes([len(self.runs)]) + b"".join(bytes([output]) + number(pixels) for output, pixels in self.runs)


def frame(strip, duties=(), offset=0, last=True):
    """Body of a FRAME: the whole, or a part. Duties go with offset 0 only."""
    return number(offset) + bytes([last]) + b"".join(number(duty) for duty in duties) + strip


class Talk:
    """A host's end of the wire, over a board's device."""

    def __init__(self, board):
        self.board = board
        self.sequence = 0
        self.heard = bytearray()

    def hear(self, patience_s=PATIENCE_S):
        """The next good packet from the controller, or None if it is silent for this long."""
        while True:
            while 0 not in self.heard:
                more = self.board.read_some(patience_s)
                if not more:
                    return None
                self.heard += more
            end = self.heard.index(0)
            line = bytes(self.heard[:end])
            del self.heard[:end + 1]
            message = unpack(line) if line else None
            if message is not None:
                return message

    def wait_for_start(self):
        """Presses the reset button, and waits until the controller sends HERE unasked."""
        self.board.restart()
        while True:
            message = self.hear()
            if message is None:
                raise AssertionError("the controller does not start")
            if message[:2] == (HERE, 0):
                return

    def ask_wire(self, wire, sequence, lost_us=None):
        """
        Sends a packet and waits for the answer with its sequence number: (type, body). With lost_us, None if none has
        come so much emulated time after the packet.
        """
        self.board.write(wire)
        passed_us = None
        while True:
            message = self.hear(PATIENCE_S if lost_us is None else PROBE_S)
            if message is not None and message[1] == sequence:
                return message[0], message[2]
            if message is not None:
                continue
            if lost_us is None:
                raise AssertionError("no answer came")
            stats = self.board.stats()
            if passed_us is None and stats["bytes_waiting"] == 0:
                passed_us = stats["t_us"]
            if passed_us is not None and stats["t_us"] > passed_us + lost_us and stats["bytes_up"] == self.board.bytes_read:
                return None

    def ask(self, kind, body=b"", lost_us=None):
        self.sequence = (self.sequence + 1) % 256
        return self.ask_wire(packet(kind, self.sequence, body), self.sequence, lost_us)
