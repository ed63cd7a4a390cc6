"""
The performance of a firmware, in emulated time, as tables for ../../README.md.

  measure.py BOARD BUILD      takes BUILD/avr-BAUD/lampwright.elf for each baud

A frame's period is its bytes on the line at ten bits each, and the time from the end of its last byte to the end of its
answer. Both are the board's own, in clock cycles: what the host takes is not in them. Possible is the same without any
calculation: the bytes of frame and answer, and 10 us for each byte of strip.
"""

import os
import random
import sys

import wire
import workout
from boards import Board

FRAMES = 40
BAUDS = (115200, 250000, 500000, 1000000)
PIXELS = (30, 144, 300)
LINE_BITS = 10
CHIP_HZ = 16000000
BYTE_OF_STRIP_S = 10e-6  # 8 bits of 1.25 us: WS2812B datasheet
PULSES = ("t0h_ns", "t0l_ns", "t1h_ns", "t1l_ns")


def show(talk, body):
    """Has one frame shown, and returns how many bytes that was on the line."""
    talk.sequence = talk.sequence % 255 + 1
    sent = wire.packet(wire.FRAME, talk.sequence, body)
    kind, answer = talk.ask_wire(sent, talk.sequence)
    assert (kind, answer[0]) == (wire.SHOWN, 1), (kind, answer)
    return len(sent)


def turns(board):
    """Count and sum, in cycles, of the turns that are over: all but the last."""
    told = board.stats()["turns"]
    return told["count"], told["count"] * told["mean_cycles"]


def show_any(talk, noise, pixels):
    return show(talk, wire.frame(noise.randbytes(3 * pixels), (noise.randrange(65536), noise.randrange(65536))))


def frames_per_second(program, elf, pixels):
    """(possible, reached, stats) with random frames and two dimmers."""
    board = Board(program, elf, "--free", "--quiet")
    talk = wire.Talk(board)
    talk.wait_for_start()
    talk.ask(wire.SETUP, wire.Setup(pixels, dimmers=(wire.Dimmer(), wire.Dimmer())).body())
    noise = random.Random(pixels)
    show_any(talk, noise, pixels)
    count_before, sum_before = turns(board)
    sizes = [show_any(talk, noise, pixels) for _ in range(FRAMES)]
    count, total = turns(board)
    assert count - count_before == FRAMES
    turn_s = (total - sum_before) / FRAMES / CHIP_HZ
    stats = board.stats()
    board.end()
    byte_s = LINE_BITS / stats["baud"]
    frame_s = sum(sizes) / FRAMES * byte_s
    answer_s = len(wire.packet(wire.SHOWN, 1, b"\1" + bytes(6))) * byte_s
    return 1 / (frame_s + answer_s + 3 * pixels * BYTE_OF_STRIP_S), 1 / (frame_s + turn_s), stats


def widest(pulses, stats):
    for key in PULSES:
        shortest, longest = stats[key]
        pulses[key] = min(shortest, pulses[key][0]), max(longest, pulses[key][1])


def print_frames(program, build):
    pulses = {key: (1e9, 0) for key in PULSES}
    print("| baud | " + " | ".join(f"{pixels} pixels" for pixels in PIXELS) + " |")
    print("| --- |" + " --- |" * len(PIXELS))
    for baud in BAUDS:
        cells = []
        for pixels in PIXELS:
            possible, reached, stats = frames_per_second(program, elf_of(build, baud), pixels)
            assert stats["overruns"] == 0 and stats["out_of_tolerance"] == 0
            widest(pulses, stats)
            cells.append(f"{reached:.1f} of {possible:.1f}, {100 * reached / possible:.1f} %")
        print(f"| {baud} | " + " | ".join(cells) + " |", flush=True)
    print()
    for key, (shortest, longest) in pulses.items():
        print(f"{key[:3].upper()} {shortest} to {longest} ns")


def elf_of(build, baud):
    return os.path.join(build, f"avr-{baud}", "lampwright.elf")


def print_stack(program, build):
    board = Board(program, elf_of(build, 500000), "--free", "--quiet")
    talk = wire.Talk(board)
    talk.wait_for_start()
    workout.deepest_stack(talk)
    print(f"\nRAM that the stack never reached: {board.stats()['ram_untouched']} bytes")
    board.end()


def print_margin(program, build):
    print("\nCycles a byte that the decoder needs, of 160 at 1000000 baud:")
    for name, (setup, strip) in workout.contents().items():
        print(f"{name}: {workout.least_byte_cycles(program, elf_of(build, 1000000), setup, strip)}", flush=True)


def main():
    program, build = sys.argv[1:]
    print_frames(program, build)
    print_stack(program, build)
    print_margin(program, build)


if __name__ == "__main__":
    main()
