"""
The reference firmware's machine code on an emulated board, tested against ../../wire.md.

  firmware_test.py BOARD BUILD VECTORS KIND [TEST...]      KIND of kinds.py; BUILD has the firmware built for its bauds
"""

import os
import random
import subprocess
import sys
import tempfile
import unittest

import ceiling
import kinds
import measure
import wire
import workout
from boards import Board

PROGRAM, BUILD, VECTORS = sys.argv[1:4]
KIND = kinds.KINDS[sys.argv[4]]

USUAL_BAUD = 500000
# Within the range that the datasheet's table "Recommended Maximum Receiver Baud Rate Error" tolerates.
BAUD_TOLERANCE = 0.025

# When an answer counts as lost: more than a frame of 30 pixels takes.
LOST_US = 50000

STORE_BYTES = KIND.store_bytes
OUTPUTS = 6

# The least that must be left; ../../README.md has the current figures.
STACK_LEFT = 200
CYCLES_LEFT = 20
SHARE_REACHED = 0.95

# The firmware's timers check the time every 256 us, and driving the strip takes a moment too.
SLACK_US = 2000


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


def read_parts():
    """Name to [(wire, type, sequence, body, strip or None)] of every case of parts.txt."""
    cases = {}
    with open(os.path.join(os.path.dirname(VECTORS), "parts.txt"), encoding="ascii") as file:
        for line in file:
            fields = line.split()
            if fields[0] == "case":
                messages = cases[fields[1]] = []
            if fields[0] == "say":
                strip = None if fields[5] == "-" else bytes.fromhex(fields[5])
                messages.append((bytes.fromhex(fields[1]), int(fields[2], 16), int(fields[3], 16), bytes.fromhex(fields[4]), strip))
    return cases


class FirmwareTest(unittest.TestCase):

    def start(self, *options, baud=USUAL_BAUD):
        self.board = Board(PROGRAM, KIND.elf(BUILD, baud), *KIND.options, *options, vanishes=KIND.vanishes)
        self.addCleanup(self.board.process.kill)
        self.talk = wire.Talk(self.board)
        self.talk.wait_for_start()
        self.board.stats()
        self.board.seen.clear()  # including what the reset cut short

    def end(self, watchdog_resets=0, faults=()):
        stats = self.board.stats()
        self.assertEqual(stats["overruns"], 0)
        self.assertEqual(stats["out_of_tolerance"], 0)
        self.assertEqual(stats["watchdog_resets"], watchdog_resets)
        if stats["shortest_gap_us"] is not None:
            self.assertGreater(stats["shortest_gap_us"], 280)  # WS2812B datasheet, later issues: RES
        self.assertEqual(self.board.end(), 0)
        self.assertLessEqual({fault for line in self.board.seen for fault in line.get("faults", ())}, set(faults))

    def set_up(self, *arguments, **named):
        setup = wire.Setup(*arguments, **named)
        self.assertEqual(self.talk.ask(wire.SETUP, setup.body()), (wire.IN_FORCE, setup.body()))
        return setup

    def show(self, strip, duties=(), outcome=1):
        kind, body = self.talk.ask(wire.FRAME, wire.frame(strip, duties))
        self.assertEqual((kind, body[0]), (wire.SHOWN, outcome))
        return body

    def rest(self, what):
        kind, body = self.talk.ask(wire.REST, bytes([what]))
        self.assertEqual((kind, body[0]), (wire.SHOWN, 3))

    def expect_strip(self, strip):
        return self.board.expect(lambda line: line.get("frame") == strip.hex())

    def told_since(self, earlier, strip):
        """The line of this strip, if it was printed already and later than another line."""
        frames = [line for line in self.board.seen if line.get("frame") == strip.hex()]
        return next((line for line in frames if line["t_us"] > earlier["t_us"]), None)

    def wait_us(self, us):
        """Lets this much emulated time pass."""
        start_us = self.board.stats()["t_us"]
        return self.board.wait_for_stats(lambda stats: stats["t_us"] >= start_us + us)

    def expect_duties(self, wanted):
        """Some line, seen or to come, reports these duties of the first dimmers: one that rises does so after the strip latched."""
        def is_wanted(line):
            return "dimmers" in line and all(abs(duty - each) < 1 / 255 for duty, each in zip(wanted, self.duties(line)))
        if not any(is_wanted(line) for line in self.board.seen):
            self.board.expect(is_wanted)

    def settled(self):
        """The stats when strip and dimmers have both changed."""
        return self.wait_us(KIND.latch_us)

    def duties(self, line):
        return [dimmer["duty"] for dimmer in line["dimmers"]]


def beacon(pixels):
    """wire.md, section 5, in GRB order."""
    return b"".join(b"\x06\x10\0" if pixel % 8 == 0 else bytes(3) for pixel in range(pixels))


class Talking(FirmwareTest):

    def test_vectors(self):
        self.start()
        self.vectors_hold()

    def test_every_baud(self):
        for baud in KIND.bauds:
            with self.subTest(baud=baud):
                self.start("--free", baud=baud)
                self.assertAlmostEqual(self.board.stats()["baud"], baud, delta=baud * BAUD_TOLERANCE)
                self.vectors_hold()

    def vectors_hold(self):
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

    def test_parts_lost_doubled_and_swapped(self):
        """wire.md, section 3: parts of two frames are never shown as one."""
        self.start("--free")
        self.set_up(8)
        for name, messages in read_parts().items():
            with self.subTest(case=name):
                self.rest(wire.DARK)
                for line, kind, sequence, body, strip in messages:
                    self.assertEqual(self.talk.ask_wire(line, sequence), (kind, body))
                    if strip is not None:
                        self.expect_strip(strip)
        shown = {line["frame"] for line in self.board.seen if "frame" in line}
        self.assertLessEqual(shown, {strip.hex() for messages in read_parts().values() for *_, strip in messages if strip}
                             | {bytes(24).hex()})
        self.end()

    def test_id_is_the_one_in_the_board(self):
        for number, told in (("6c616d7000000001", "6c616d7000000001"), ("ff" * 7 + "00", "ff" * 7 + "00"),
                             ("ff" * 8, "00" * 8)):
            with self.subTest(number=number):
                self.start(KIND.id_option, number)
                kind, here = self.talk.ask(wire.HELLO, b"\x01")
                self.assertEqual((kind, here[4:12].hex()), (wire.HERE, told))
                self.end()

    def test_frames_of_300_pixels(self):
        self.start()
        self.set_up(300)
        noise = random.Random(300)
        strips = [noise.randbytes(900) for _ in range(20)] + [b"\xff" * 900, b"\0" * 900]
        for strip in strips:
            self.show(strip)
        for strip in strips:
            self.assertEqual(self.expect_strip(strip)["pixels"], 300)
        self.end()

    def test_pixels_left_out_are_driven_dark_once(self):
        self.start()
        self.set_up(30)
        self.show(b"\x55" * 90)
        self.set_up(10)
        self.show(b"\x11" * 30)
        self.expect_strip(b"\x11" * 30 + bytes(60))
        self.show(b"\x22" * 30)
        self.expect_strip(b"\x22" * 30)
        self.end()


class Ceiling(FirmwareTest):

    def test_worked_example(self):
        """wire.md, section 6: two white pixels at a ceiling of 50 mA come to 169 per channel."""
        self.start()
        self.set_up(2, ceilings_mA=(50,))
        self.show(b"\xff" * 6, outcome=2)
        self.expect_strip(bytes([169] * 6))
        self.end()

    def test_dimmers(self):
        self.start()
        self.set_up(1, dimmers=(wire.Dimmer(),) * 6)
        duties = (0, 0x2000, 0x4000, 0x8000, 0xC000, 0xFFFF)
        self.show(b"\1\2\3", duties)
        self.expect_strip(b"\1\2\3")
        self.expect_duties([duty / 65535 for duty in duties])
        shown = self.board.stats()["dimmers"]
        self.assertTrue(all(dimmer["driven"] for dimmer in shown), shown)
        self.assertEqual((shown[0]["duty"], shown[5]["duty"]), (0, 1))
        self.end()

    def test_greedy_host_never_gets_more_than_the_ceilings(self):
        """
        The firmware alone, with a host that requests anything: what the strip latched and what the pins do, by plain
        arithmetic, never takes more than either supply may give, and both are the formula's.
        """
        self.start()
        noise = random.Random(2)
        dimmed = 0
        for round_ in range(40):
            setup = self.any_setup(noise)
            for asked in (b"\xff" * len(setup.order) * setup.pixels, noise.randbytes(len(setup.order) * setup.pixels)):
                duties = tuple(noise.choice((0, 65535, noise.randrange(65536))) for _ in setup.dimmers)
                with self.subTest(round=round_):
                    dimmed += self.ask_for(setup, asked, duties)
                    self.assertEqual(self.counted_dimmed, dimmed)
        self.assertGreater(dimmed, 20)
        self.assertLess(dimmed, 70)
        self.end(faults=["part_pixel"])  # the board reads three channels per pixel; some set-ups have four

    def any_setup(self, noise):
        four = noise.random() < 0.5
        return self.set_up(
            noise.randrange(1, 60), order="BRGW" if four else "GRB",
            channel_uA=tuple(noise.choice((300, 12000, 20000, 65535)) for _ in range(4 if four else 3)),
            dark_uA=noise.choice((0, 700, 1000)), supply=noise.randrange(2),
            ceilings_mA=(noise.randrange(100, 4000), noise.randrange(100, 4000)),
            dimmers=tuple(wire.Dimmer(noise.randrange(2), noise.randrange(1, 3000)) for _ in range(noise.randrange(7))))

    def ask_for(self, setup, asked, duties):
        """One frame. True if it was dimmed."""
        strip, dimmed_duties, over = ceiling.dim(setup, asked, duties)
        answer = self.show(asked, duties, outcome=2 if over else 1)
        self.counted_dimmed = int.from_bytes(answer[5:7], "big")
        self.wait_us(KIND.latch_us)
        shown = self.board.stats()
        latched = bytes.fromhex(shown["latest"]["frame"])
        own, left_out = latched[:len(strip)], latched[len(strip):]
        self.assertEqual(own, strip)
        self.assertEqual(left_out, bytes(len(left_out)))
        shares = self.duties(shown)
        for share, duty, steps in zip(shares, dimmed_duties, KIND.pwm_steps):
            self.assertAlmostEqual(share, 1 if duty == 65535 else duty * steps // 65536 / steps, places=5)
        for supply, most_mA in enumerate(setup.ceilings_mA):
            dark_mA = setup.pixels * setup.dark_uA / 1000 if setup.supply == supply else 0
            # the board reports shares to a millionth
            self.assertLessEqual(ceiling.current_mA(setup, own, shares, supply), max(most_mA, dark_mA) + 0.02)
        self.assertEqual(shares[len(duties):], [0] * (OUTPUTS - len(duties)))
        return over


class Changing(FirmwareTest):
    """
    From one frame to the next on one supply: a fuse that adds up strip and dimmers to the cycle never sees more than the ceiling. The
    strip counts with the more of old and new from 50 us after its last bit, when the first pixels may latch, to 280.
    """

    PIXELS = 30
    CEILING_MA = 1150
    DIMMER_MA = 1080

    def start_with_fuse(self, baud, pixels=PIXELS, bears_us=0):
        self.start("--free", baud=baud)
        setup = self.set_up(pixels, ceilings_mA=(self.CEILING_MA,), dimmers=(wire.Dimmer(full_mA=self.DIMMER_MA),) * 2)
        self.show(bytes(3 * pixels), (0, 0))
        self.settled()
        channels = ",".join(str(uA) for uA in setup.channel_uA)
        answer = self.board.command(
            f"fuse {self.CEILING_MA} {bears_us} {pixels * setup.dark_uA} {channels} {self.DIMMER_MA},{self.DIMMER_MA}")
        self.assertNotEqual(answer["answer"], "refused", answer)

    def change(self, strip, duties):
        kind, body = self.talk.ask(wire.FRAME, wire.frame(strip, duties))
        self.assertEqual((kind, body[0] in (1, 2)), (wire.SHOWN, True))

    def fuse(self):
        return self.settled()["fuse"]

    def test_from_dimmer_to_strip_and_back(self):
        for baud in KIND.change_bauds:
            with self.subTest(baud=baud):
                self.start_with_fuse(baud)
                for _ in range(3):
                    self.change(bytes(3 * self.PIXELS), (0xFFFF, 0))
                    self.assertGreater(self.fuse()["highest_mA"], 0.95 * self.CEILING_MA)
                    self.change(b"\xff" * 3 * self.PIXELS, (0, 0))
                    self.settled()
                self.assertEqual((self.fuse()["longest_over_us"], self.fuse()["blown"]), (0, False))
                self.end()

    def test_frames_of_chance_without_a_pause(self):
        self.start_with_fuse(1000000)
        noise = random.Random(4)
        for _ in range(60):
            strip = noise.choice((bytes(90), b"\xff" * 90, noise.randbytes(90)))
            self.change(strip, tuple(noise.choice((0, 0xFFFF, noise.randrange(65536))) for _ in range(2)))
        self.assertEqual((self.fuse()["longest_over_us"], self.fuse()["blown"]), (0, False))
        self.end()

    def test_fuse_blows(self):
        """The tests above can fail: a fuse for less than one frame draws."""
        self.start_with_fuse(500000)
        self.board.command("fuse 400 280 30000 12000,12000,12000 1080")
        self.change(bytes(3 * self.PIXELS), (0xFFFF, 0))
        self.settled()
        self.assertTrue(self.fuse()["blown"])
        self.assertEqual(self.board.end(), 5)

    def test_outputs_of_one_timer_are_high_together_as_little_as_can_be(self):
        """Two pulses of one period overlap by no more than the amount by which their duties exceed 1."""
        self.start("--free")
        self.set_up(0, dimmers=(wire.Dimmer(full_mA=1),) * OUTPUTS)
        noise = random.Random(5)
        for _ in range(20):
            self.show(b"", tuple(noise.randrange(0x1000, 0xF000) for _ in range(OUTPUTS)))
            shown = self.settled()["dimmers"]
            for first, second in zip(shown[::2], shown[1::2]):
                ends = first["from"] + first["duty"], second["from"] + second["duty"]
                self.assertLessEqual(max(ends), 1 + 1e-5)
                together = min(ends) - max(first["from"], second["from"])
                self.assertLessEqual(together, max(0, first["duty"] + second["duty"] - 1) + 1e-5, (first, second))
        self.end()


class WithoutHost(FirmwareTest):

    HOLDOVER_MS = 400
    AFTER_DUTY = 0x4000

    def lit(self, after):
        """A strip and a dimmer that are lit, and nobody sends any more: the line of the frame."""
        self.start("--free")
        self.set_up(20, holdover_ms=self.HOLDOVER_MS, after=after, dimmers=(wire.Dimmer(after_duty=self.AFTER_DUTY),))
        self.show(b"\x44" * 60, (0x8000,))
        line = self.expect_strip(b"\x44" * 60)
        self.expect_duties([0.5])
        return line

    def expect_own(self, strip):
        line = self.expect_strip(strip)
        self.assertEqual(self.duties(line)[0], self.AFTER_DUTY / 65536)
        return line

    def passed(self, earlier, later, ms):
        self.assertAlmostEqual(later["start_us"] - earlier["start_us"], ms * 1000, delta=SLACK_US)

    def test_beacon_after_the_holdover_and_the_next_frame_ends_it(self):
        frame = self.lit(wire.BEACON)
        first = self.expect_own(beacon(20))
        self.passed(frame, first, self.HOLDOVER_MS)
        dark = self.expect_own(bytes(60))
        self.passed(first, dark, 1000)
        second = self.expect_own(beacon(20))
        self.passed(dark, second, 3000)
        self.show(b"\x33" * 60, (0xFFFF,))
        self.expect_strip(b"\x33" * 60)
        self.expect_duties([1])
        self.end()

    def test_dark_after_the_holdover(self):
        frame = self.lit(wire.DARK)
        self.passed(frame, self.expect_own(bytes(60)), self.HOLDOVER_MS)
        self.nothing_new()

    def test_last_frame_is_kept_after_the_holdover(self):
        self.lit(wire.KEEP)
        self.nothing_new(duty=0.5)

    def nothing_new(self, duty=AFTER_DUTY / 65536):
        frames = self.board.stats()["frames"]
        stats = self.wait_us(5 * self.HOLDOVER_MS * 1000)
        self.assertEqual(stats["frames"], frames)
        self.assertEqual(self.duties(stats)[0], duty)
        self.end()

    def test_rest_dark(self):
        self.lit(wire.BEACON)
        self.rest(wire.DARK)
        self.expect_own(bytes(60))
        self.nothing_new()

    def test_rest_keeps(self):
        self.lit(wire.KEEP)
        self.rest(wire.KEEP)
        self.nothing_new(duty=0.5)

    def test_rest_with_the_beacon(self):
        self.lit(wire.DARK)
        self.rest(wire.BEACON)
        self.expect_own(beacon(20))
        self.expect_own(bytes(60))
        self.end()

    def test_unknown_rest_is_refused(self):
        self.start()
        self.set_up(2)
        kind, body = self.talk.ask(wire.REST, b"\x03")
        self.assertEqual((kind, body), (wire.COMPLAINT, b"\x07\0\0"))
        self.end()


@unittest.skipUnless(KIND.folder.startswith("rp2040"), "its timer of 16 bits runs over in every test")
class Wrapping(FirmwareTest):
    """The chip's timer counts microseconds in 32 bits: it overflows after 71 minutes. It is started a little before that."""

    WRAP_US = 1 << 32

    def start_before(self, us):
        """In real time, so that what is done now is done before it. On a machine that stands still it is done after it, and good too."""
        self.start("--start-us", str(self.WRAP_US - us))

    def test_holdover_and_beacon(self):
        self.start_before(2500000)
        self.set_up(20, holdover_ms=2000, after=wire.BEACON)
        self.show(b"\x44" * 60)
        frame = self.expect_strip(b"\x44" * 60)
        first = self.expect_strip(beacon(20))
        self.assertAlmostEqual(first["start_us"] - frame["start_us"], 2000000, delta=SLACK_US)
        dark = self.expect_strip(bytes(60))
        self.assertAlmostEqual(dark["start_us"] - first["start_us"], 1000000, delta=SLACK_US)
        self.end()

    def test_frames_and_dimmers(self):
        """Each in turn, with the reset time between them, and dimmers that rise after it."""
        self.start_before(2000000)
        self.set_up(30, dimmers=(wire.Dimmer(),))
        noise = random.Random(6)
        while self.board.stats()["t_us"] < self.WRAP_US + 100000:
            strip = noise.randbytes(90)
            self.show(strip, (0xFFFF if strip[0] > 127 else 0,))
            line = self.expect_strip(strip)
            self.assertGreater(line["gap_us"], 280)
        self.show(b"\1" * 90, (0xFFFF,))
        self.assertEqual(self.duties(self.settled())[0], 1)
        self.end()

    def test_set_up_before_and_nothing_since(self):
        """"Keep" for hours: what follows is shown as if nothing had happened."""
        self.start_before(2000000)
        self.set_up(10, holdover_ms=100, after=wire.KEEP)
        self.show(b"\5" * 30)
        self.board.wait_for_stats(lambda stats: stats["t_us"] > self.WRAP_US + 200000)
        self.show(b"\6" * 30)
        self.expect_strip(b"\6" * 30)
        self.end()


class Starting(FirmwareTest):

    def test_watchdog_ends_a_hang_and_here_is_said_unasked(self):
        """The datasheet's watchdog of 0.25 s, whose oscillator is off by up to 10 % (typical characteristics)."""
        self.start()
        self.set_up(30, dimmers=(wire.Dimmer(),))
        self.show(b"\x7f" * 90, (0xFFFF,))
        self.expect_strip(b"\x7f" * 90)
        hung = self.board.command("hang")
        reset = self.board.expect(lambda line: line.get("event") == "watchdog")
        self.assertLess(reset["t_us"] - hung["t_us"], 275000)
        self.board.come_back()
        kind, sequence, here = self.talk.hear()
        self.assertEqual((kind, sequence), (wire.HERE, 0))
        self.assertEqual(here[22], 4)
        dark = self.told_since(reset, bytes(STORE_BYTES)) or self.expect_strip(bytes(STORE_BYTES))
        self.assertEqual(self.duties(dark), [0] * OUTPUTS)
        kind, body = self.talk.ask(wire.FRAME, wire.frame(b"\x7f" * 90, (0xFFFF,)))
        self.assertEqual((kind, body), (wire.COMPLAINT, b"\x05\0\0"))
        self.wait_us(1000000)  # it does not strike again
        self.end(watchdog_resets=1)

    def test_cause_of_the_start_is_told(self):
        """
        wire.md, HERE; ATmega328P datasheet, MCUSR: the emulated board sets PORF when it is switched on and EXTRF at the button; RP2040
        datasheet 2.12.7, CHIP_RESET, likewise.
        """
        board = Board(PROGRAM, KIND.elf(BUILD), *KIND.options, "--free")
        self.addCleanup(board.process.kill)
        talk = wire.Talk(board)
        while (here := talk.ask(wire.HELLO, b"\x01", LOST_US)) is None:
            pass  # it drives the strip dark before it listens
        self.assertEqual(here[1][22], 1)
        board.end()
        self.start()
        self.assertEqual(self.talk.ask(wire.HELLO, b"\x01")[1][22], 2)
        self.board.command("brown_out")
        self.board.come_back()
        self.talk.heard.clear()
        while (message := self.talk.hear())[:2] != (wire.HERE, 0) or message[2][22] == 2:
            pass
        self.assertEqual(message[2][22], KIND.brown_out)
        self.end()

    @unittest.skipIf(KIND.vanishes, "there is no device before the receiver is on")
    def test_what_is_said_before_the_receiver_is_on_is_not_half_heard(self):
        """The dark frame takes 12 ms; 100 bytes pass in 2 ms meanwhile, and none arrives in part."""
        self.start()
        self.board.command("stall 3600000")
        self.board.write(b"\x55" * 100)
        self.board.command("reset")
        self.board.command("stall 0")
        self.assertEqual(self.talk.hear()[:2], (wire.HERE, 0))
        self.set_up(2)
        self.assertEqual(self.show(b"\1" * 6)[1:], bytes(6))
        self.assertEqual(self.board.stats()["bytes_unheard"], 100)
        self.end()


@unittest.skipUnless(KIND.overrun_baud, "its line holds the host back, so nothing is lost")
class Overruns(FirmwareTest):
    """
    A host that sends without credit, while the strip is driven: bytes are lost in one stretch, and what came before and what comes
    after together make a packet whose checksum is right. README.md: an overrun spoils the packet it hit.

    A board that listens while it drives is kept busy by a second change of the strip, which has to wait for the first, and has a queue
    that has to fill up first. What goes before the loss is said in one broken packet.
    """

    PIXELS = STORE_BYTES // 3 if KIND.listens else 300
    FLOOD = 46000 if KIND.listens else 900
    # Six bytes before the loss have come through its queue; a firmware that takes what the receiver holds as well has eight.
    KEPT = (6,) if KIND.listens else (6, 8)
    # What the receiver still takes is not passed on any more: its queue of 32, and the byte for which there was no room.
    DROPPED = 33 if KIND.listens else 0
    # Where the board is in its work when the first byte comes is by chance, and so is by how much the loss meant is missed.
    TRIES = range(-4, 6) if KIND.listens else range(-1, 9)
    # Within this time, everything that arrived has been processed: the strip twice, and a full queue.
    WORK_US = 400000 if KIND.listens else 20000

    def start_full(self):
        self.start("--free", baud=KIND.overrun_baud)
        self.set_up(self.PIXELS)

    def show_and_say(self, more):
        """A frame, and at once something that must not be sent now. What was answered but for that frame's SHOWN: types and bodies."""
        self.talk.sequence = (self.talk.sequence + 2) % 256
        own = (self.talk.sequence - 1) % 256, self.talk.sequence
        before = wire.packet(wire.FRAME, own[0], wire.frame(bytes(3 * self.PIXELS)))
        if KIND.listens:
            before += wire.packet(wire.REST, own[1], bytes([wire.DARK]))
        self.board.seen.clear()
        self.say_at_once(before + more)
        answers = []
        self.board.wait_for_stats(lambda stats: stats["bytes_waiting"] == 0)
        self.wait_us(self.WORK_US)
        while (message := self.talk.hear(wire.PROBE_S)) is not None or not self.is_idle():
            if message is not None and not (message[0] == wire.SHOWN and message[1] in own):
                answers.append((message[0], message[2]))
        return answers

    def say_at_once(self, data):
        with tempfile.NamedTemporaryFile() as file:
            if KIND.listens:  # more than a device's queue holds: the board itself is the host
                file.write(data)
                file.flush()
                self.board.command(f"feed {file.name} 255")
                return
        self.board.command("stall 3600000")
        self.board.write(data)
        self.board.command("stall 0")

    def is_idle(self):
        return self.board.stats()["bytes_up"] == self.board.bytes_read

    def lost(self):
        """The bytes that were lost of what was sent last."""
        return bytes(line["byte"] for line in self.board.seen if line.get("error") == "overrun")

    def come_before(self):
        """How many bytes arrive before the first that is lost."""
        noise = random.Random(7)
        flood = bytes(noise.randrange(1, 256) for _ in range(self.FLOOD))
        self.show_and_say(flood + b"\0")
        self.board.write(b"\0")
        return flood.index(self.lost()[:16])

    def lost_behind(self, before):
        """How many are lost after these, if more arrive than fit."""
        self.show_and_say(before + b"\x55" * (self.FLOOD - len(before)) + b"\0")
        self.board.write(b"\0")
        return len(self.lost())

    def test_loss_never_makes_one_packet_of_two_ends(self):
        self.start_full()
        filler = self.come_before() - self.DROPPED if KIND.listens else 0
        false = wire.packet(wire.SETUP, 77, wire.Setup(2).body())
        for kept in self.KEPT:
            broken = b"\x55" * (filler - kept - 1) + b"\0" if KIND.listens else b""
            for name, before, after in (("in the middle", broken + false[:kept], false[kept:]),
                                        ("before the first byte", broken + bytes(kept), false)):
                lost = self.lost_behind(before) + self.DROPPED
                self.assertGreater(lost, 400)
                for more in self.TRIES:
                    with self.subTest(name, kept=kept, lost=lost + more):
                        self.nothing_is_in_force(before + b"\x55" * (lost + more) + after)
        self.board.end()

    def nothing_is_in_force(self, more):
        answers = self.show_and_say(more)
        self.assertNotIn(wire.IN_FORCE, [kind for kind, _ in answers])
        self.board.write(b"\0")
        self.set_up(self.PIXELS)

    def test_loss_is_counted_as_an_overrun_and_a_broken_packet(self):
        self.start_full()
        self.show_and_say(b"\x55" * self.FLOOD)
        self.board.write(b"\0")
        counters = self.show(bytes(3 * self.PIXELS))
        self.assertEqual(counters[1:5], b"\0\1\0\1")
        self.board.end()


class Trouble(FirmwareTest):

    def hurt(self, sent):
        """One frame over a bad line. True if its answer came."""
        noise = random.Random(len(sent))
        sent.append(noise.randbytes(90))
        return self.talk.ask(wire.FRAME, wire.frame(sent[-1]), LOST_US) is not None

    def test_troubles_never_show_a_wrong_frame(self):
        self.start()
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
        self.start()
        self.set_up(2)
        self.board.command("deaf 3600000")
        self.assertIsNone(self.talk.ask(wire.FRAME, wire.frame(b"\1" * 6), LOST_US))
        self.board.command("deaf 0")
        self.show(b"\2" * 6)
        self.expect_strip(b"\2" * 6)
        self.board.plug_again()
        self.board.write(b"\0")
        self.show(b"\3" * 6)
        self.expect_strip(b"\3" * 6)
        self.end()


@unittest.skipUnless(sys.argv[4] == "avr", "the other board's build knows no such limit")
class Building(unittest.TestCase):
    def test_baud_too_low_for_the_watchdog_is_refused(self):
        """The longest answer, 67 bytes, takes less than the watchdog's 250 ms at 4800 baud, but not at 2400."""
        avr = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "reference", "avr")
        for baud in (2400, 4799):
            built = subprocess.run(["make", "-C", avr, f"BAUD={baud}", f"BUILD={BUILD}", "elf"], capture_output=True, text=True,
                                   check=False)
            self.assertNotEqual(built.returncode, 0)
            self.assertIn("BAUD is less than 4800", built.stderr)


@unittest.skipUnless(sys.argv[4] == "avr", "time by the byte is that board's alone")
class Reserves(FirmwareTest):
    """Spare memory and time, in emulated time, which is the same on every machine."""

    def test_stack(self):
        self.start("--free")
        workout.deepest_stack(self.talk)
        self.assertGreaterEqual(self.board.stats()["ram_untouched"], STACK_LEFT)
        self.board.end()

    def test_cycles_a_byte(self):
        """At 1 000 000 baud a byte arrives every 160 cycles; here they arrive faster."""
        elf = measure.elf_of(BUILD, 1000000)
        for name, (setup, strip) in workout.contents().items():
            with self.subTest(content=name):
                self.assertTrue(workout.keeps_up(PROGRAM, elf, 160 - CYCLES_LEFT, setup, strip))

    def test_too_many_bytes_are_noticed(self):
        """The test above can fail: no decoder here keeps up with twice the baud."""
        setup, strip = workout.contents()["zeros"]
        self.assertFalse(workout.keeps_up(PROGRAM, measure.elf_of(BUILD, 1000000), 80, setup, strip))

    def test_share_of_what_the_line_allows(self):
        for baud in measure.BAUDS:
            for pixels in measure.PIXELS:
                with self.subTest(baud=baud, pixels=pixels):
                    possible, reached, _ = measure.frames_per_second(PROGRAM, measure.elf_of(BUILD, baud), pixels)
                    self.assertGreaterEqual(reached / possible, SHARE_REACHED)


def main():
    loader = unittest.defaultTestLoader
    module = sys.modules[__name__]
    suite = loader.loadTestsFromNames(sys.argv[5:], module) if sys.argv[5:] else loader.loadTestsFromModule(module)
    result = unittest.TextTestRunner(stream=sys.stdout).run(suite)
    bad = len({test.id().split(" ")[0] for test, _ in result.failures + result.errors})
    print(f"{sys.argv[4]}: {result.testsRun - bad} passed, {bad} failed")
    sys.exit(bad > 0)


if __name__ == "__main__":
    main()
