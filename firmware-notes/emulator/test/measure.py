"""
How many frames a second a firmware shows, in emulated time, beside what baud and strip leave.

  measure.py BOARD FIRMWARE PIXELS...

The bound of a frame: its bytes and its answer's on the line at 10 bits each, and 10 us for each byte of strip; a controller
of one credit does one after the other. What the mean takes longer is the firmware's reckoning, and the time of this host,
in real time, on a machine that may do other things. The quickest frame has next to nothing of the latter.
"""

import random
import sys

import wire
from boards import Board

FRAMES = 100
BYTE_OF_STRIP_US = 10  # 8 bits of 1.25 us: WS2812B datasheet


def show(talk, strip):
    """Has one frame shown, and tells how many bytes that was on the line."""
    talk.sequence = talk.sequence % 255 + 1
    sent = wire.packet(wire.FRAME, talk.sequence, wire.frame(strip))
    kind, body = talk.ask_wire(sent, talk.sequence)
    assert (kind, body[0]) == (wire.SHOWN, 1), (kind, body)
    return len(sent)


def measure(program, elf, pixels):
    board = Board(program, elf)
    talk = wire.Talk(board)
    talk.wait_for_start()
    kind, _ = talk.ask(wire.HELLO, b"\x01")
    assert kind == wire.HERE, kind
    kind, _ = talk.ask(wire.SETUP, wire.setup(pixels))
    assert kind == wire.IN_FORCE, kind
    noise = random.Random(pixels)
    strips = [noise.randbytes(3 * pixels) for _ in range(FRAMES)]
    size = sum(show(talk, strip) for strip in strips) / FRAMES
    lines = [board.expect(lambda line: line.get("frame") == strip.hex()) for strip in strips]
    assert not any(line["faults"] for line in lines)
    stats = board.stats()
    starts = [line["start_us"] for line in lines]
    status = board.end()
    periods = sorted(later - earlier for earlier, later in zip(starts, starts[1:]))
    mean_us = sum(periods) / len(periods)
    quickest_us = periods[0]
    answer = len(wire.packet(wire.SHOWN, 1, bytes(7)))
    bound_us = (size + answer) * 1e7 / stats["baud"] + 3 * pixels * BYTE_OF_STRIP_US
    interrupt = stats["receive_interrupt"]
    print(f"{stats['baud']:.0f} baud, {pixels} pixels: frames/s {1e6 / bound_us:.1f} possible, "
          f"{1e6 / quickest_us:.1f} quickest ({100 * bound_us / quickest_us:.1f} %, {quickest_us - bound_us:.0f} us over), "
          f"{1e6 / mean_us:.1f} mean; "
          f"receive interrupt {interrupt['mean_cycles']:.1f} of {stats['character_cycles']} cycles a byte, "
          f"longest {interrupt['longest_cycles']}, longest wait {stats['longest_wait_cycles']}; "
          f"overruns {stats['overruns']}, out of tolerance {stats['out_of_tolerance']}, "
          f"T0H {stats['t0h_ns']} T0L {stats['t0l_ns']} T1H {stats['t1h_ns']} T1L {stats['t1l_ns']} ns, "
          f"shortest gap {stats['shortest_gap_us']} us, lag {stats['lag_us']} us, status {status}", flush=True)


def main():
    program, elf, *counts = sys.argv[1:]
    for pixels in counts:
        measure(program, elf, int(pixels))


if __name__ == "__main__":
    main()
