#!/usr/bin/env python3
"""Writes clamp.txt, what the ceiling makes of frames, from wire.md section 4 alone: a third opinion beside the Java and the C code.

Usage: make_clamp.py > clamp.txt
Reckons with exact fractions of an ampere, so nothing is shared with the whole numbers that the other two use.
"""
import random
from fractions import Fraction
from struct import pack


def setup_body(rig):
    body = pack(">HB4s", rig["pixels"], len(rig["order"]), rig["order"].encode())
    body += b"".join(pack(">H", uA) for uA in rig["channels"] + [0] * (4 - len(rig["channels"])))
    body += pack(">HBHBB", rig["dark"], rig["supply"], 3000, 0, len(rig["ceilings"]))
    body += b"".join(pack(">H", mA) for mA in rig["ceilings"])
    return body + bytes([len(rig["dimmers"])]) + b"".join(pack(">BHH", *dimmer, 0) for dimmer in rig["dimmers"])


def clamp(rig, strip, duties):
    """The frame as it is shown, and whether a supply was over its ceiling."""
    strip, duties, over = list(strip), list(duties), False
    for supply, ceiling in enumerate(rig["ceilings"]):
        fed = [i for i, (feeder, _) in enumerate(rig["dimmers"]) if feeder == supply]
        lit = [i for i in range(len(strip)) if rig["supply"] == supply]
        idle = Fraction(rig["pixels"] * rig["dark"], 10**6) if rig["supply"] == supply else Fraction(0)
        load = sum(Fraction(strip[i], 255) * Fraction(rig["channels"][i % len(rig["order"])], 10**6) for i in lit)
        load += sum(Fraction(duties[i], 65535) * Fraction(rig["dimmers"][i][1], 1000) for i in fed)
        limit = Fraction(ceiling, 1000)
        if idle + load <= limit:
            continue
        over = True
        factor = max(limit - idle, 0) * 65536 // load if load else 0
        for i in lit:
            strip[i] = int(strip[i] * factor // 65536)
        for i in fed:
            duties[i] = int(duties[i] * factor // 65536)
    return strip, duties, over


def edgy(chance, most):
    return chance.choice([0, most, chance.randint(0, most // 100), chance.randint(0, most), chance.randint(0, most)])


def any_rig(chance):
    letters = list(chance.choice(["RGB", "RGBW"]))
    chance.shuffle(letters)
    supplies = chance.randint(1, 4)
    return {
        "pixels": chance.randint(0, 9),
        "order": "".join(letters),
        "channels": [edgy(chance, chance.choice([20000, 65535])) for _ in letters],
        "dark": edgy(chance, 2000),
        "supply": chance.randrange(supplies),
        "ceilings": [edgy(chance, chance.choice([200, 2000, 65535])) for _ in range(supplies)],
        "dimmers": [(chance.randrange(supplies), edgy(chance, 3000)) for _ in range(chance.randint(0, 6))],
    }


def any_frame(chance, rig):
    level = chance.choice([lambda most: most, lambda most: chance.randint(0, most), lambda most: edgy(chance, most)])
    strip = [level(255) for _ in range(rig["pixels"] * len(rig["order"]))]
    return strip, [level(65535) for _ in rig["dimmers"]]


def line(rig, strip, duties):
    shown, dimmed, over = clamp(rig, strip, duties)
    words = [bytes(strip), b"".join(pack(">H", duty) for duty in duties)]
    words += [bytes(shown), b"".join(pack(">H", duty) for duty in dimmed)]
    print("clamp", setup_body(rig).hex(), *(word.hex() or "-" for word in words), "over" if over else "within")


def main():
    print("# What the ceiling makes of frames (wire.md section 4); made by make_clamp.py. A line is")
    print("#   clamp SETUP-BODY STRIP DUTIES STRIP-SHOWN DUTIES-SHOWN over|within")
    print("# in hexadecimal, duties with two bytes each and the high byte first, - if there is nothing.")
    worked = {"pixels": 2, "order": "GRB", "channels": [12000] * 3, "dark": 1000, "supply": 0, "dimmers": []}
    for ceiling in (50, 73, 74, 2, 1):
        line({**worked, "ceilings": [ceiling]}, [255] * 6, [])
    chance = random.Random(1)
    for _ in range(295):
        rig = any_rig(chance)
        line(rig, *any_frame(chance, rig))


main()
