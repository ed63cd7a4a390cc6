#!/usr/bin/env python3
"""Writes parts.txt: frames in parts on a line that loses, doubles and swaps them, and what a controller answers by wire.md alone.

Usage: make_parts.py > parts.txt
"""
import random
import struct

from make import cobs, frame, packet, setup

PIXELS = 8
BYTES = 3 * PIXELS
HELLO, SETUP, FRAME, REST = 1, 2, 3, 4
IN_FORCE, SHOWN, COMPLAINT = 0x82, 0x83, 0x84
SETUP_BODY = setup(PIXELS, "GRB", [12000] * 3, 1000, 0, 60000, 2, [1500], [])


class Controller:
    """What wire.md, section 3, says of parts, for the set-up above. `take` answers type and body, and what is shown, or None."""

    def __init__(self):
        self.sequence = None
        self.store = bytearray(BYTES)
        self.due = 0

    def take(self, kind, sequence, body):
        if self.sequence is not None and sequence != (self.sequence + 1) % 256:
            self.due = 0
        self.sequence = sequence
        if kind == SETUP:
            return IN_FORCE, body, None
        return self.part(*struct.unpack_from(">HB", body), body[3:])

    def part(self, offset, last, data):
        due, self.due = self.due, 0
        if offset not in (0, due):
            return COMPLAINT, struct.pack(">BH", 8, due), None
        end = offset + len(data)
        if end > BYTES or (last and end < BYTES):
            return COMPLAINT, struct.pack(">BH", 6, BYTES - offset), None
        self.store[offset:end] = data
        if last:
            return SHOWN, struct.pack(">B3H", 1, 0, 0, 0), bytes(self.store)
        self.due = end
        return SHOWN, struct.pack(">B3H", 0, 0, 0, 0), None


def picture(number):
    """The bytes of a frame: no two of forty have a byte in common, so a mixture cannot look like either."""
    return bytes([number * 6 + channel for channel in range(3)] * PIXELS)


def frame_parts(number, cuts, sequence):
    """The messages of one frame, cut at `cuts`."""
    edges = [0, *sorted(cuts), BYTES]
    data = picture(number)
    return [(FRAME, (sequence + i) % 256, frame(edge, int(i == len(edges) - 2), data[edge:edges[i + 1]]))
            for i, edge in enumerate(edges[:-1])]


def stretch(chance, frames, first):
    """What the host sends for so many frames in parts, in order, with a set-up among them now and then."""
    sent, sequence = [], first
    for number in range(1, frames + 1):
        for message in frame_parts(number, chance.sample(range(1, BYTES), chance.randrange(4)), sequence):
            sent.append((message[0], sequence % 256, message[2]))
            sequence += 1
            if chance.randrange(12) == 0:
                sent.append((SETUP, sequence % 256, SETUP_BODY))
                sequence += 1
    return sent


def spoil(chance, sent, credits):
    """The same as it arrives: some lost, some doubled, some swapped with one that was unanswered at the same time."""
    came = [message for message in sent if chance.randrange(6) != 0]
    came = [again for message in came for again in [message] * (1 + (chance.randrange(12) == 0))]
    for at in range(len(came) - 1):
        other = at + chance.randrange(min(credits, len(came) - at))
        if chance.randrange(8) == 0:
            came[at], came[other] = came[other], came[at]
    return came


def tell(name, messages):
    """Prints one case: the messages as they come, each with its answer and what is shown then."""
    controller = Controller()
    print("case", name)
    for kind, sequence, body in [(SETUP, (messages[0][1] - 1) % 256, SETUP_BODY), *messages]:
        wire = cobs(packet(kind, sequence, body)) + b"\0"
        answer, answer_body, shown = controller.take(kind, sequence, body)
        print("say", wire.hex(), f"{answer:02x}", f"{sequence:02x}", answer_body.hex(), shown.hex() if shown else "-")


def main():
    print("# Frames in parts, wire version 1; made by make_parts.py from wire.md, section 3. A line is one of")
    print("#   case NAME                              a controller that has just started")
    print("#   say WIRE TYPE SEQUENCE BODY STRIP      it is sent this wire, answers with this message, and drives this strip (-: none)")
    a, b = frame_parts(1, [12], 10), frame_parts(2, [12], 12)
    tell("in_order", a + b)
    tell("last_of_one_and_first_of_the_next_lost", [a[0], b[1]])
    tell("first_lost", [a[1], *b])
    tell("doubled", [a[0], a[0], a[1], a[1], *b])
    tell("swapped", [a[1], a[0], *b])
    tell("swapped_across_frames", [a[0], b[0], a[1], b[1]])
    tell("set_up_between", [a[0], (SETUP, 11, SETUP_BODY), (FRAME, 12, a[1][2])])
    tell("lost_before_a_set_up_between", [a[0], (SETUP, 12, SETUP_BODY), (FRAME, 13, a[1][2])])
    tell("sequence_runs_over", frame_parts(3, [6, 12], 254) + frame_parts(4, [3], 1))
    chance = random.Random(1)
    for credits in range(1, 9):
        for index in range(2):
            sent = stretch(chance, 24, chance.randrange(256))
            tell(f"{credits}_credits_{index}", spoil(chance, sent, credits))


if __name__ == "__main__":
    main()
