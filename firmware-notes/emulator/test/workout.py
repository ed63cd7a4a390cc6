"""The hardest work for a firmware: the longest path for its stack, the worst frame content for its decoder."""

import random

import wire
from boards import Board

STORE_BYTES = 1200

# Longer than any frame and its answer take at the slowest baud measured here.
LOST_US = 500000

FOUR_CHANNELS = {"order": "GRBW", "channel_uA": (12000, 12000, 12000, 20000)}


def largest_setup():
    """Everything at its maximum, on four supplies, each soon over its ceiling."""
    dimmers = tuple(wire.Dimmer(i % 4, 3000 + i, 6553 * i) for i in range(6))
    return wire.Setup(300, **FOUR_CHANNELS, supply=3, holdover_ms=60000, after=wire.BEACON, ceilings_mA=(500, 500, 500, 1500),
                      dimmers=dimmers)


def show_in_parts(talk, strip, duties):
    at = 0
    for size in (1, 2, 250, 253, 254, 255, len(strip)):
        part = strip[at:at + size]
        last = at + len(part) == len(strip)
        kind, body = talk.ask(wire.FRAME, wire.frame(part, duties if at == 0 else (), at, last))
        assert kind == wire.SHOWN, (kind, body)
        at += len(part)


def wait_for_beacon(talk):
    frames = talk.board.stats()["frames"]
    talk.board.wait_for_stats(lambda stats: stats["frames"] >= frames + 2)


def deepest_stack(talk):
    """Takes the firmware through every message, every complaint, clamping, parts, the beacon and garbage."""
    noise = random.Random(1)
    setup = largest_setup()
    for kind in (wire.HELLO, wire.SETUP, wire.FRAME, wire.REST, 0x7F):
        talk.ask(kind, b"")
    talk.ask(wire.HELLO, b"\x02")
    talk.ask(wire.HELLO, b"\x01")
    talk.ask(wire.SETUP, setup.body())
    talk.ask(wire.SETUP, setup.body())
    duties = (65535,) * 6
    talk.ask(wire.FRAME, wire.frame(b"\xff" * STORE_BYTES, duties))
    show_in_parts(talk, noise.randbytes(STORE_BYTES), duties)
    for after in (wire.DARK, wire.KEEP, wire.BEACON, 3):
        talk.ask(wire.REST, bytes([after]))
    wait_for_beacon(talk)
    for _ in range(20):
        talk.board.write(noise.randbytes(1500) + b"\0")
        talk.ask(wire.HELLO, b"\x01", LOST_US)
    while talk.ask(wire.SETUP, wire.Setup(300, ceilings_mA=(299,)).body(), LOST_US) is None:
        talk.board.write(b"\0")  # the beacon was driven just now
    talk.ask(wire.FRAME, wire.frame(noise.randbytes(900)))


def contents():
    """Frames that fill the store: name to (set-up, strip)."""
    noise = random.Random(2).randbytes(STORE_BYTES)
    three, four = wire.Setup(STORE_BYTES // 3), wire.Setup(STORE_BYTES // 4, **FOUR_CHANNELS)
    return {
        "zeros": (three, bytes(STORE_BYTES)),
        "no zeros": (three, b"\xff" * STORE_BYTES),
        "every other byte zero": (three, b"\0\x01" * (STORE_BYTES // 2)),
        "chance": (three, noise),
        "zeros, four channels": (four, bytes(STORE_BYTES)),
        "chance, four channels": (four, noise),
    }


def keeps_up(program, elf, byte_cycles, setup, strip):
    """Whether frames that fill the store get through if a byte arrives every byte_cycles."""
    board = Board(program, elf, "--free", "--quiet", "--byte-cycles", str(byte_cycles))
    talk = wire.Talk(board)
    talk.wait_for_start()
    talk.ask(wire.SETUP, setup.body(), LOST_US)
    answers = [talk.ask(wire.FRAME, wire.frame(strip), LOST_US) for _ in range(2)]
    lost = board.stats()["overruns"]
    board.end()
    return lost == 0 and all(answer is not None and answer[0] == wire.SHOWN for answer in answers)


def least_byte_cycles(program, elf, setup, strip):
    """The shortest time per byte, in cycles, at which keeps_up holds."""
    fails, holds = 60, 320
    while holds - fails > 1:
        middle = (fails + holds) // 2
        if keeps_up(program, elf, middle, setup, strip):
            holds = middle
        else:
            fails = middle
    return holds
