"""
How many frames a second a firmware shows, in emulated time, beside what baud and strip leave.

  measure.py BOARD FIRMWARE PIXELS...

The bound of a frame: its bytes and its answer's on the line at 10 bits each, and 10 us for each byte of strip; a controller
of one credit does one after the other. What is over it is the firmware's reckoning, the host's own time, and the board's
looking at its inputs only every 250 us.
"""

import random
import sys

import wire
from boards import Board

FRAMES = 100
BYTE_OF_STRIP_US = 10  # 8 bits of 1.25 us: WS2812B datasheet


def measure(program, elf, pixels):
    board = Board(program, elf)
    talk = wire.Talk(board)
    board.command("reset")
    kind, body = talk.ask(wire.HELLO, b"\x01")
    assert kind == wire.HERE, kind
    kind, _ = talk.ask(wire.SETUP, wire.setup(pixels))
    assert kind == wire.IN_FORCE, kind
    noise = random.Random(pixels)
    sizes = []
    for number in range(FRAMES):
        strip = noise.randbytes(3 * pixels)
        talk.sequence = talk.sequence % 255 + 1
        sent = wire.packet(wire.FRAME, talk.sequence, wire.frame(strip))
        sizes.append(len(sent))
        kind, body = talk.ask_wire(sent, talk.sequence)
        assert (kind, body[0]) == (wire.SHOWN, 1), (kind, body)
        shown = board.frame()
        assert shown["frame"] == strip.hex() and not shown["faults"], (number, shown)
    stats = board.stats()
    starts = [line["start_us"] for line in board.seen if "frame" in line]
    status = board.end()
    each_us = (starts[-1] - starts[0]) / (len(starts) - 1)
    size = sum(sizes) / len(sizes)
    answer = len(wire.packet(wire.SHOWN, 1, bytes(7)))
    bound_us = (size + answer) * 1e7 / stats["baud"] + 3 * pixels * BYTE_OF_STRIP_US
    interrupt = stats["receive_interrupt"]
    print(f"{stats['baud']:9.0f} baud {pixels:4} pixels: {1e6 / each_us:6.1f} frames/s of {1e6 / bound_us:6.1f} possible "
          f"({100 * bound_us / each_us:.1f} %), {each_us - bound_us:.0f} us over; "
          f"receive interrupt mean {interrupt['mean_cycles']:.1f}, longest {interrupt['longest_cycles']} of "
          f"{stats['character_cycles']} cycles a byte, longest wait {stats['longest_wait_cycles']}; "
          f"overruns {stats['overruns']}, out of tolerance {stats['out_of_tolerance']}, "
          f"T0H {stats['t0h_ns']} T0L {stats['t0l_ns']} T1H {stats['t1h_ns']} T1L {stats['t1l_ns']} ns, "
          f"shortest gap {stats['shortest_gap_us']} us, board {status}", flush=True)


def main():
    program, elf, *counts = sys.argv[1:]
    for pixels in counts:
        measure(program, elf, int(pixels))


if __name__ == "__main__":
    main()
