"""
Packets, most of them damaged, from a host that shares no code with the product: its own COBS, checksum and ceiling, written from
../../wire.md alone. What the strip latches must be a frame that was sent, or dark.
"""

import random

from boards import Board

PIXELS = 8
BURST = 500
CHANNEL_UA = (9000, 14000, 20000)
CEILING_MA = 260
LONGEST_S = 300

# The contents of the ring are shown within this time.
SETTLED_US = 500000


def check(data):
    """The checksum, bit by bit, as the catalogue defines CRC-16/IBM-3740."""
    register = 0xFFFF
    for bit in "".join(f"{byte:08b}" for byte in data):
        top = register >> 15
        register = register << 1 & 0xFFFF
        if top != int(bit):
            register ^= 0x1021
    return bytes([register & 255, register >> 8])


def wrapped(kind, number, body):
    """A packet on the line. A COBS block is everything before a zero, or 254 bytes without one."""
    rest = bytes([kind, number]) + body
    rest += check(rest)
    out = bytearray()
    while True:
        block, zero, rest = rest.partition(b"\0")
        while len(block) > 253:
            out += b"\xff" + block[:254]
            block = block[254:]
        out += bytes([len(block) + 1]) + block
        if not zero:
            return bytes(out) + b"\0"


def set_up():
    body = PIXELS.to_bytes(2, "big") + b"\x03GRB\0" + b"".join(uA.to_bytes(2, "big") for uA in CHANNEL_UA) + b"\0\0"
    body += (500).to_bytes(2, "big") + b"\0" + (60000).to_bytes(2, "big") + b"\0\x01" + CEILING_MA.to_bytes(2, "big") + b"\0"
    return wrapped(2, 1, body)


def as_shown(strip):
    """wire.md, section 4, one supply without dimmers."""
    room = (CEILING_MA * 1000 - PIXELS * 500) * 65535
    load = sum(byte * CHANNEL_UA[at % 3] for at, byte in enumerate(strip)) * 257
    return strip if load <= room else bytes(byte * (room * 65536 // load) >> 16 for byte in strip)


def hurt(noise, packet, others):
    """One packet with one kind of damage."""
    kind = noise.randrange(8)
    at = noise.randrange(len(packet) - 1)
    if kind == 0:
        flips = bytearray(packet)
        for _ in range(noise.randrange(1, 9)):
            flips[noise.randrange(len(flips))] ^= 1 << noise.randrange(8)
        return bytes(flips)
    if kind == 1:
        return packet[:at] + packet[at + noise.randrange(1, 5):]
    if kind == 2:
        return packet[:at] + packet[at:at + noise.randrange(1, 9)] + packet[at:]
    if kind == 3:
        return packet[at:]
    if kind == 4:
        return packet[:at] + b"\0" + packet[at:]
    if kind == 5:
        return packet[:at] + noise.randbytes(noise.randrange(1, 30)) + packet[at:]
    if kind == 6:
        return packet[:at] + noise.choice(others)[at:]
    return packet[:at] + packet[at + 1:at + 2] + packet[at:at + 1] + packet[at + 2:]


class Sender:
    """A host that numbers its messages as wire.md, section 2, says, on a line that damages, loses, doubles and swaps them."""

    def __init__(self, noise):
        self.noise = noise
        self.number = 1
        self.recent = [wrapped(3, 0, bytes(3))]

    def next(self, body):
        self.number = (self.number + 1) % 256
        self.recent = self.recent[-50:] + [wrapped(3, self.number, body)]
        return self.recent[-1]

    def messages(self, strip):
        """A frame in one part, or in two."""
        if self.noise.random() < 0.4:
            return [self.next(b"\0\0\1" + strip)]
        cut = self.noise.randrange(1, 3 * PIXELS)
        return [self.next(b"\0\0\0" + strip[:cut]), self.next(cut.to_bytes(2, "big") + b"\1" + strip[cut:])]

    def burst(self, allowed):
        """BURST packets or a few more, with random frames, whole and damaged."""
        sent = []
        while len(sent) < BURST:
            strip = self.noise.randbytes(3 * PIXELS)
            allowed.add(as_shown(strip).hex())
            sent += self.messages(strip)
        for at in range(len(sent)):
            fate = self.noise.random()
            if fate < 0.6:
                sent[at] = hurt(self.noise, sent[at], self.recent)
            elif fate < 0.65 and at > 0:
                sent[at - 1], sent[at] = sent[at], sent[at - 1]
            elif fate < 0.7:
                sent[at] = self.noise.choice((b"", sent[at] * 2, self.noise.choice(self.recent)))
        return b"".join(sent)


def run(program, kind, build, packets):
    """The result for `packets` packets, in words. Fails at the first wrong frame."""
    sender = Sender(random.Random(7))
    board = Board(program, kind.elf(build), "--free", *kind.options, vanishes=kind.vanishes)
    board.read_some()
    board.write(set_up())
    allowed, latched, sent = {bytes(3 * PIXELS).hex()}, 0, 0
    assert board.read_some()[1] == 0x82, "IN_FORCE"
    board.seen.clear()
    while sent < packets:
        board.write(sender.burst(allowed) + b"\0")
        sent += BURST
        quiet_us = board.wait_for_stats(lambda stats: stats["bytes_waiting"] == 0, LONGEST_S)["t_us"]
        board.wait_for_stats(lambda stats, since=quiet_us: stats["t_us"] > since + SETTLED_US, LONGEST_S)
        board.read_some(0, 1 << 16)
        for line in board.seen:
            assert "error" not in line, line
            if line.get("frame"):
                latched += 1
                assert line["frame"] in allowed, line
                assert line["faults"] == [], line
        board.seen.clear()
    assert board.stats()["out_of_tolerance"] == 0
    board.end()
    assert latched > packets / 20, latched
    return f"{sent} sent, {latched} frames latched, 0 of them wrong"
