#!/usr/bin/env python3
"""Writes packets.txt, the wire's test vectors, from wire.md alone: a third opinion beside the Java and the C code.

Usage: make.py > packets.txt
The checksum is the standard library's binascii.crc_hqx (polynomial 0x1021), started at 0xFFFF.
"""
import binascii
import random
import struct


def cobs(data):
    """COBS, Cheshire and Baker 1999: blocks of a length code and up to 254 bytes without a zero.

    Every block but a full one stands for its bytes and a zero; the last zero is not part of the data. Nothing follows
    a full block at the end.
    """
    out = bytearray()
    runs = data.split(b"\0")
    for index, run in enumerate(runs):
        while len(run) >= 254:
            out += b"\xff" + run[:254]
            run = run[254:]
            if not run and index == len(runs) - 1:
                return bytes(out)
        out += bytes([len(run) + 1]) + run
    return bytes(out)


def packet(kind, sequence, body=b""):
    plain = bytes([kind, sequence]) + body
    return plain + struct.pack("<H", binascii.crc_hqx(plain, 0xFFFF))


def line(*words):
    print(" ".join(words))


def good(name, kind, sequence, body=b""):
    line("good", name, (cobs(packet(kind, sequence, body)) + b"\0").hex(), f"{kind:02x}", f"{sequence:02x}", body.hex() or "-")


def bad(name, wire):
    line("bad", name, wire.hex())


def setup(pixels, order, channel_uA, idle_uA, supply, holdover_ms, lost, ceilings_mA, dimmers, runs=()):
    body = struct.pack(">HB4s4HHBHB", pixels, len(order), order.encode().ljust(4, b"\0"),
                       *(channel_uA + [0] * (4 - len(channel_uA))), idle_uA, supply, holdover_ms, lost)
    body += struct.pack(">B", len(ceilings_mA)) + b"".join(struct.pack(">H", c) for c in ceilings_mA)
    body += struct.pack(">B", len(dimmers)) + b"".join(struct.pack(">BHH", *d) for d in dimmers)
    return body + (struct.pack(">B", len(runs)) + b"".join(struct.pack(">BH", *run) for run in runs) if runs else b"")


def frame(offset, last, data, duties=()):
    return struct.pack(">HB", offset, last) + b"".join(struct.pack(">H", d) for d in duties) + data


def main():
    print("# The wire's test vectors, version 1; made by make.py from wire.md. A line is one of")
    print("#   good NAME WIRE TYPE SEQUENCE BODY   this wire is read as this one message (BODY - is empty)")
    print("#   bad NAME WIRE                       this wire is read as no message")
    print("# Bytes are hexadecimal. WIRE ends with the zero that ends the packet.")
    good("hello", 0x01, 1, b"\x01")
    here = struct.pack(">B3B8sHHBBHB", 1, 1, 0, 0, b"lamp\x00\x00\x00\x01", 300, 1024, 6, 1, 10000, 0)
    good("here", 0x81, 1, here)
    good("here_unasked", 0x81, 0, here)
    small = setup(2, "GRB", [12000] * 3, 1000, 0, 3000, 2, [1500], [])
    good("setup_small", 0x02, 2, small)
    good("in_force_small", 0x82, 2, small)
    rig = setup(300, "GRBW", [12000, 12000, 12000, 18000], 1000, 0, 3000, 2, [4000, 2000], [(1, 800, 0), (1, 400, 6553)])
    good("setup_two_supplies", 0x02, 3, rig)
    good("here_eight_lines", 0x81, 1, here + b"\x08")
    good("here_after_the_watchdog", 0x81, 1, here + b"\x01\x04")
    good("setup_two_runs", 0x02, 3, setup(30, "GRB", [12000] * 3, 1000, 0, 3000, 2, [1500], [(0, 800, 0)], [(1, 20), (0, 10)]))
    good("frame_two_pixels", 0x03, 4, frame(0, 1, bytes([0, 255, 0, 16, 32, 64])))
    good("frame_dimmers_only", 0x03, 5, frame(0, 1, b"", [65535, 0]))
    good("frame_first_part", 0x03, 6, frame(0, 0, bytes(range(1, 10)), [32768, 1]))
    good("frame_last_part", 0x03, 7, frame(9, 1, bytes(range(10, 13))))
    good("frame_300_dark", 0x03, 8, frame(0, 1, bytes(900)))
    good("frame_300_full", 0x03, 9, frame(0, 1, b"\xff" * 900))
    good("rest_dark", 0x04, 10, b"\x00")
    good("rest_beacon", 0x04, 255, b"\x02")
    good("shown", 0x83, 4, struct.pack(">B3H", 1, 0, 0, 0))
    good("shown_dimmed", 0x83, 5, struct.pack(">B3H", 2, 3, 1, 65535))
    good("complaint_broken", 0x84, 7, struct.pack(">BH", 1, 12))
    good("complaint_version", 0x84, 1, struct.pack(">BH", 4, 1))
    good("empty_body", 0x7F, 0)
    for size in (248, 249, 250, 251, 252, 253, 254, 255, 504, 505, 506, 1000):
        good(f"no_zero_{size}", 0x7E, 1, bytes((i % 255) + 1 for i in range(size)))
        good(f"all_zero_{size}", 0x7E, 2, bytes(size))
    chance = random.Random(1)
    for index in range(40):
        size = chance.randrange(0, 700)
        body = bytes(chance.choice((0, 255, chance.randrange(256))) for _ in range(size))
        good(f"chance_{index}", chance.randrange(1, 256), chance.randrange(256), body)

    plain = packet(0x01, 1, b"\x01")
    wire = cobs(plain) + b"\0"
    bad("flipped_bit", cobs(plain[:-1] + bytes([plain[-1] ^ 1])) + b"\0")
    bad("checksum_high_byte_first", cobs(plain[:-2] + plain[-1:] + plain[-2:-1]) + b"\0")
    bad("checksum_started_at_zero", cobs(plain[:-2] + struct.pack("<H", binascii.crc_hqx(plain[:-2], 0))) + b"\0")
    bad("torn_at_front", wire[1:])
    bad("torn_at_end", wire[:-2] + b"\0")
    bad("doubled_byte", wire[:3] + wire[2:])
    bad("block_past_the_end", b"\x09" + wire[1:])
    bad("code_without_bytes", b"\x05\x00")
    bad("zero_after_the_checksum", cobs(plain + b"\0") + b"\0")
    high_zero = next(p for p in (packet(0x7E, n) for n in range(256)) if p[-1] == 0)
    bad("last_zero_lost", cobs(high_zero[:-1]) + b"\0")
    bad("one_byte", b"\x02\x41\x00")
    bad("checksum_alone", cobs(struct.pack("<H", binascii.crc_hqx(b"", 0xFFFF))) + b"\0")
    bad("type_alone", cobs(b"\x01" + struct.pack("<H", binascii.crc_hqx(b"\x01", 0xFFFF))) + b"\0")
    bad("nothing_but_a_code", b"\x01\x00")


if __name__ == "__main__":
    main()
