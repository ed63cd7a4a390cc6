"""
The performance of the RP2040 firmware, in the emulated chip's own time, as a table for ../../README.md.

  rp2040_measure.py BOARD BUILD [PACKETS]

A host in the board's time keeps as many messages unanswered as the credits allow; the bus is the one that the board calculates
from the specification. Possible is what the slower of the two would give if nothing had to be calculated: the strip's bytes at
10 us and its reset time, or the bytes of a frame on the line. Then PACKETS packets, most of them damaged, from a host that shares
no code with the product (damage.py).
"""

import os
import random
import sys
import tempfile

import damage
import kinds
import wire
from boards import Board

FRAMES = 40
BYTE_US = 10  # of strip: 8 bits of 1.25 us, WS2812B datasheet
RESET_US = 280  # the same, later issues
USB_PACKET, USB_OVERHEAD, USB_FRAME_BYTES = 64, 13, 1500  # USB 2.0, 5.8.4: bulk transactions of a frame of 1 ms
UART_BITS = 10

# Pixels of each run; the goal is the last figure, frames a second.
CASES = (
    ("300 on one", "rp2040-usb", 0, (300,), 100),
    ("8 x 300", "rp2040-usb", 0, (300,) * 8, 60),
    ("60 on one", "rp2040-usb", 0, (60,), None),
    ("300 on one", "rp2040-uart", 1000000, (300,), None),
    ("60 on one", "rp2040-uart", 500000, (60,), None),
)
SHARE = 0.95

LONGEST_S = 300


def line_us(kind, baud, count):
    """How long `count` bytes take on the line."""
    if kind == "rp2040-usb":
        whole, rest = divmod(count, USB_PACKET)
        return (whole * (USB_PACKET + USB_OVERHEAD) + (rest + USB_OVERHEAD if rest else 0)) / USB_FRAME_BYTES * 1000
    return count * UART_BITS / baud * 1e6


def packets(runs, credits_left):
    """`credits_left` random frames, each in one packet."""
    noise = random.Random(len(runs))
    return [wire.packet(wire.FRAME, sequence % 255 + 1, wire.frame(noise.randbytes(3 * sum(runs))))
            for sequence in range(1, credits_left + 1)]


def measure(program, build, kind_name, baud, runs):
    """(possible, reached, stats), frames a second."""
    kind = kinds.KINDS[kind_name]
    board = Board(program, kind.elf(build, baud), "--free", *kind.options, vanishes=kind.vanishes)
    talk = wire.Talk(board)
    here = talk.hear()
    cut = tuple(enumerate(runs)) if len(runs) > 1 else ()
    talk.ask(wire.SETUP, wire.Setup(sum(runs), ceilings_mA=(65535,), runs=cut, channel_uA=(1000,) * 3, dark_uA=0).body())
    sent = packets(runs, FRAMES)
    board.seen.clear()
    with tempfile.NamedTemporaryFile() as file:
        file.write(b"".join(sent))
        file.flush()
        board.command(f"feed {file.name} {here[2][17]}")
        board.wait_for_stats(lambda stats: stats["fed"], LONGEST_S)
    board.wait_for_stats(lambda stats, first=board.stats()["t_us"]: stats["t_us"] > first + 20000)
    stats = board.stats()
    starts = [line["start_us"] for line in board.seen if line.get("frame") and line["output"] == 0][-FRAMES:]
    board.end()
    assert len(starts) == FRAMES, len(starts)
    strip_us = 3 * max(runs) * BYTE_US + RESET_US
    possible = 1e6 / max(strip_us, line_us(kind_name, baud, len(sent[0])))
    return possible, 1e6 * (FRAMES - 5) / (starts[-1] - starts[4]), stats


def main():
    program, build = sys.argv[1:3]
    print("| pixels | line | frames a second | of those possible |")
    print("| --- | --- | --- | --- |")
    for name, kind, baud, runs, goal in CASES:
        possible, reached, stats = measure(program, build, kind, baud, runs)
        assert stats["overruns"] == 0 and stats["out_of_tolerance"] == 0
        assert reached / possible >= SHARE and (goal is None or reached >= goal), (name, kind, reached, possible, goal)
        line = "USB" if kind == "rp2040-usb" else f"UART, {baud} baud"
        print(f"| {name} | {line} | {reached:.1f} of {possible:.1f} | {100 * reached / possible:.1f} % |", flush=True)
    with open(os.path.join(build, "rp2040-usb", "lampwright.bin"), "rb") as file:
        print(f"\nImage for USB: {len(file.read())} bytes")
    told = damage.run(program, kinds.KINDS["rp2040-usb"], build, int(sys.argv[3]) if sys.argv[3:] else 100000)
    print(f"\nDamaged packets: {told}")


if __name__ == "__main__":
    main()
