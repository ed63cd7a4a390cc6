"""The reference firmware on the emulated board, held to ../../wire.md. firmware_test.py BOARD FIRMWARE VECTORS"""

import os
import random
import sys
import unittest

import wire
from boards import Board

PROGRAM, FIRMWARE, VECTORS = sys.argv[1:4]

# When an answer counts as lost: more than a frame of 30 pixels takes.
LOST_US = 50000


def read_vectors():
    """Name to (wire, type, sequence, body) of every good packet."""
    vectors = {}
    with open(VECTORS, encoding="ascii") as file:
        for line in file:
            fields = line.split()
            if fields[:1] == ["good"]:
                body = b"" if fields[5] == "-" else bytes.fromhex(fields[5])
                vectors[fields[1]] = bytes.fromhex(fields[2]), int(fields[3], 16), int(fields[4], 16), body
    return vectors


class FirmwareTest(unittest.TestCase):

    def setUp(self):
        self.board = Board(PROGRAM, FIRMWARE)
        self.addCleanup(self.board.process.kill)
        self.talk = wire.Talk(self.board)
        self.talk.wait_for_start()
        self.board.stats()
        self.board.seen.clear()  # among them what the reset cut short

    def end(self):
        stats = self.board.stats()
        self.assertEqual(stats["overruns"], 0)
        self.assertEqual(stats["out_of_tolerance"], 0)
        self.assertEqual(stats["watchdog_resets"], 0)
        if stats["shortest_gap_us"] is not None:
            self.assertGreater(stats["shortest_gap_us"], 280)  # WS2812B datasheet, later issues: RES
        self.assertEqual(self.board.end(), 0)
        self.assertFalse([line for line in self.board.seen if line.get("faults")])

    def set_up(self, *arguments, **named):
        body = wire.setup(*arguments, **named)
        self.assertEqual(self.talk.ask(wire.SETUP, body), (wire.IN_FORCE, body))

    def show(self, strip, duties=(), outcome=1):
        kind, body = self.talk.ask(wire.FRAME, wire.frame(strip, duties))
        self.assertEqual((kind, body[0]), (wire.SHOWN, outcome))

    def expect_strip(self, strip):
        return self.board.expect(lambda line: line.get("frame") == strip.hex())

    def test_vectors(self):
        vectors = read_vectors()

        def answer(name):
            line, _, sequence, _ = vectors[name]
            return self.talk.ask_wire(line, sequence)

        kind, here = answer("hello")
        self.assertEqual((kind, here[0]), (wire.HERE, 1))
        self.assertEqual(answer("setup_small"), (vectors["in_force_small"][1], vectors["in_force_small"][3]))
        self.assertEqual(answer("frame_two_pixels"), (vectors["shown"][1], vectors["shown"][3]))
        self.expect_strip(bytes.fromhex("00ff00102040"))
        self.end()

    def test_frames_of_300_pixels(self):
        self.set_up(300)
        noise = random.Random(300)
        strips = [noise.randbytes(900) for _ in range(20)] + [b"\xff" * 900, b"\0" * 900]
        for strip in strips:
            self.show(strip)
        for strip in strips:
            self.assertEqual(self.expect_strip(strip)["pixels"], 300)
        self.end()

    def test_ceiling(self):
        """wire.md, section 6: two white pixels at a ceiling of 50 mA come to 169 a channel."""
        self.set_up(2, ceiling_mA=50)
        self.show(b"\xff" * 6, outcome=2)
        self.expect_strip(bytes([169] * 6))
        self.end()

    def test_dimmers(self):
        self.set_up(1, dimmers=6)
        duties = (0, 0x2000, 0x4000, 0x8000, 0xC000, 0xFFFF)
        self.show(b"\1\2\3", duties)
        shown = self.expect_strip(b"\1\2\3")["dimmers"]
        for duty, dimmer in zip(duties, shown):
            self.assertTrue(dimmer["driven"], dimmer)
            self.assertAlmostEqual(dimmer["duty"], duty / 65535, delta=1 / 255, msg=dimmer)
        self.assertEqual((shown[0]["duty"], shown[5]["duty"]), (0, 1))
        self.end()

    def hurt(self, sent):
        """One frame over a bad line. True if its answer came."""
        noise = random.Random(len(sent))
        sent.append(noise.randbytes(90))
        return self.talk.ask(wire.FRAME, wire.frame(sent[-1]), LOST_US) is not None

    def test_troubles_never_show_a_wrong_frame(self):
        self.set_up(30)
        sent = []
        for kind in ("drop", "flip", "double"):
            self.board.command(f"{kind} down 20 every 300")
            self.board.command(f"{kind} up 5 every 60")
        answered = sum(self.hurt(sent) for _ in range(80))
        for kind in ("drop", "flip", "double"):
            self.board.command(f"{kind} down 0")
            self.board.command(f"{kind} up 0")
        self.board.write(b"\0")
        self.show(b"\x5a" * 90)
        self.expect_strip(b"\x5a" * 90)
        shown = {line["frame"] for line in self.board.seen if "frame" in line}
        shown -= {frame for frame in shown if set(frame) == {"0"}}
        self.assertLessEqual(shown, {strip.hex() for strip in sent + [b"\x5a" * 90]})
        self.assertGreater(answered, 0)
        hurt = self.board.stats()["hurt_down"]
        self.assertEqual(hurt, {"dropped": 20, "flipped": 20, "doubled": 20})
        self.end()

    def test_deaf_line_and_new_device(self):
        self.set_up(2)
        self.board.command("deaf 3600000")
        self.assertIsNone(self.talk.ask(wire.FRAME, wire.frame(b"\1" * 6), LOST_US))
        self.board.command("deaf 0")
        self.show(b"\2" * 6)
        self.expect_strip(b"\2" * 6)
        self.board.command("unplug")
        os.close(self.board.device)
        self.board.command("plug")
        self.board.open()
        self.board.write(b"\0")
        self.show(b"\3" * 6)
        self.expect_strip(b"\3" * 6)
        self.end()


def main():
    suite = unittest.defaultTestLoader.loadTestsFromModule(sys.modules[__name__])
    result = unittest.TextTestRunner(stream=sys.stdout).run(suite)
    bad = len({test.id().split(" ")[0] for test, _ in result.failures + result.errors})
    print(f"{result.testsRun - bad} passed, {bad} failed")
    sys.exit(bad > 0)


if __name__ == "__main__":
    main()
