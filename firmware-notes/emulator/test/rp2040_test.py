"""
What only the RP2040's board has: its boot, its image, USB, eight data lines. And how the emulator reports wrong firmware.

  rp2040_test.py BOARD BUILD      takes BUILD/rp2040-usb and BUILD/emulator/rp2040_fixture.elf
"""

import os
import random
import struct
import subprocess
import sys
import tempfile
import unittest
import zlib

import ceiling
import kinds
import wire
from boards import PATIENCE_S, Board

PROGRAM, BUILD = sys.argv[1:3]
KIND = kinds.KINDS["rp2040-usb"]
ELF = KIND.elf(BUILD)
UF2 = os.path.join(BUILD, KIND.folder, "lampwright.uf2")
FIXTURE = os.path.join(BUILD, "emulator", "rp2040_fixture.elf")

MOST_IMAGE_BYTES = 32768
OUTPUTS = 8


def mirrored(value, bits):
    return int(f"{value:0{bits}b}"[::-1], 2)


def crc32_mpeg(data):
    """The datasheet's checksum by way of another: the usual CRC-32 is the same one mirrored, with all bits turned at the end."""
    return mirrored(zlib.crc32(bytes(mirrored(byte, 8) for byte in data)) ^ 0xFFFFFFFF, 32)


def read_uf2(data):
    """The image in a UF2 file, by the published format; flash of the RP2040 begins at 0x10000000."""
    image = b""
    count = len(data) // 512
    for number in range(count):
        block = data[512 * number:512 * (number + 1)]
        magic, other, flags, address, size, own, all_, family = struct.unpack("<8I", block[:32])
        assert (magic, other, block[508:]) == (0x0A324655, 0x9E5D5157, struct.pack("<I", 0x0AB16F30))
        assert (flags, family) == (0x2000, 0xE48BFF56), "family of the RP2040"
        assert (address, size, own, all_) == (0x10000000 + 256 * number, 256, number, count)
        image += block[32:32 + size]
    return image


class Image(unittest.TestCase):

    def setUp(self):
        with open(UF2, "rb") as file:
            self.file = file.read()
        self.image = read_uf2(self.file)

    def test_second_stage_has_its_checksum(self):
        """RP2040 datasheet, "Flash Second Stage": CRC-32 of 252 bytes, little-endian in the four behind them."""
        self.assertEqual(len(self.file) % 512, 0)
        self.assertEqual(crc32_mpeg(b"123456789"), 0x0376E6E7)  # check value of CRC-32/MPEG-2, the catalogue's name for it
        self.assertEqual(struct.pack("<I", crc32_mpeg(self.image[:252])), self.image[252:256])

    def test_image_is_small(self):
        self.assertLess(len(self.image), MOST_IMAGE_BYTES)

    def test_vectors_lie_behind_the_second_stage(self):
        """Datasheet, the same: the program begins at 0x10000100; ARMv6-M: stack, then the start, which is Thumb code."""
        stack, start = struct.unpack("<2I", self.image[256:264])
        self.assertEqual(stack, 0x20042000)
        self.assertEqual((start & 1, start >> 24), (1, 0x10))


class Chip(unittest.TestCase):

    @classmethod
    def setUpClass(cls):
        cls.board = Board(PROGRAM, UF2, "--free", "--id", "00112233445566ff", *KIND.options, vanishes=True)
        cls.talk = wire.Talk(cls.board)
        cls.here = cls.talk.hear()
        cls.stats = cls.board.stats()

    @classmethod
    def tearDownClass(cls):
        assert cls.board.end() == 0

    def test_flash_is_read_by_the_plain_command(self):
        """Datasheet 4.10.13: 32-bit frames, "EEPROM read"; command 03h of 8 bits, 24 bits of address, no wait, on one wire."""
        self.assertEqual(self.stats["flash_by_address"], {
            "ctrlr0": 31 << 16 | 3 << 8, "ctrlr1": 0, "spi_ctrlr0": 0x03 << 24 | 2 << 8 | 6 << 2})

    def test_clock(self):
        """Datasheet, "up to 133 MHz"."""
        self.assertEqual(self.stats["clock_hz"], 128000000)

    def test_id_is_the_flash_chips_and_the_serial_number(self):
        self.assertEqual(self.here[0:2], (wire.HERE, 0))
        self.assertEqual(self.here[2][4:12].hex(), "00112233445566ff")
        self.assertEqual(self.stats["usb"]["serial"], "00112233445566ff")

    def test_here_gives_two_credits_and_listens(self):
        self.assertEqual((self.here[2][17], self.here[2][20]), (2, 1))

    def test_device_descriptor(self):
        """USB 2.0 table 9-8; class 2 in the device: CDC 1.2, 4.1."""
        told = bytes.fromhex(self.stats["usb"]["device"])
        length, type_, usb, class_, _, _, packet, _, _, _, manufacturer, product, serial, configurations = struct.unpack(
            "<BBHBBBBHHHBBBB", told)
        self.assertEqual((len(told), length, type_, usb, class_, packet, configurations), (18, 18, 1, 0x0200, 2, 64, 1))
        self.assertEqual(len({0, manufacturer, product, serial}), 4)
        self.assertEqual(self.stats["usb"]["manufacturer"], "Lampwright")

    def test_configuration_descriptor(self):
        """USB 2.0 tables 9-10, 9-12 and 9-13; CDC 1.2 table 15 and its PSTN subclass 1.2, 5.3: a serial port."""
        told = bytes.fromhex(self.stats["usb"]["configuration"])
        parts = []
        at = 0
        while at < len(told):
            parts.append(told[at:at + told[at]])
            at += told[at]
        self.assertEqual(at, len(told))
        self.assertEqual((parts[0][:6], parts[0][7] & 0x80), (struct.pack("<BBHBB", 9, 2, len(told), 2, 1), 0x80))
        interfaces = [part for part in parts if part[1] == 4]
        self.assertEqual([tuple(part[2:8]) for part in interfaces], [(0, 0, 1, 2, 2, 0), (1, 0, 2, 10, 0, 0)])
        functional = [part for part in parts if part[1] == 0x24]
        self.assertEqual([part[2] for part in functional], [0, 1, 2, 6])
        self.assertEqual(functional[3], bytes([5, 0x24, 6, 0, 1]))
        endpoints = {part[2]: (part[3], int.from_bytes(part[4:6], "little")) for part in parts if part[1] == 5}
        self.assertEqual(endpoints, {0x83: (3, 8), 0x01: (2, 64), 0x82: (2, 64)})

    def test_every_line_was_driven_dark_at_the_start(self):
        self.assertEqual(len(self.stats["outputs"]), OUTPUTS)
        for output in self.stats["outputs"]:
            with self.subTest(output=output["output"]):
                self.assertEqual(output["pin"], f"GP{2 + output['output']}")
                self.assertEqual(output["latest"]["frame"], bytes(KIND.store_bytes).hex())
                self.assertEqual(output["latest"]["faults"], [])


class Outputs(unittest.TestCase):
    """The strip split into runs (wire.md, section 3, SETUP)."""

    def setUp(self):
        self.board = Board(PROGRAM, UF2, "--free", *KIND.options, vanishes=True)
        self.addCleanup(self.board.process.kill)
        self.talk = wire.Talk(self.board)
        self.talk.hear()

    def set_up(self, runs, **named):
        setup = wire.Setup(sum(pixels for _, pixels in runs), runs=runs, **named)
        return self.talk.ask(wire.SETUP, setup.body()), setup

    def show(self, strip, outcome=1):
        kind, body = self.talk.ask(wire.FRAME, wire.frame(strip))
        self.assertEqual((kind, body[0]), (wire.SHOWN, outcome))

    def latched(self, frames):
        """Output to bytes and start time, for the next `frames` frames."""
        seen = {}
        while len(seen) < frames:
            line = self.board.expect(lambda line: "frame" in line and line["t_us"] > self.since_us)
            self.assertEqual(line["faults"], [])
            self.assertEqual(line["out_of_tolerance"], 0)
            self.assertNotIn(line["output"], seen)
            seen[line["output"]] = bytes.fromhex(line["frame"]), line["start_us"]
        return seen

    def settle(self):
        self.since_us = self.board.stats()["t_us"]

    def test_here_tells_how_many_there_are(self):
        self.assertEqual(self.talk.ask(wire.HELLO, b"\x01")[1][21], OUTPUTS)

    def test_runs_go_out_together_each_on_its_own_line(self):
        """Two boards' worth of waveforms at once: all within both pixels' datasheets, all begun within a bit of each other."""
        runs = [(3, 5), (0, 40), (7, 1), (1, 17), (2, 30), (6, 9), (4, 33), (5, 2)]
        answer, setup = self.set_up(runs)
        self.assertEqual(answer, (wire.IN_FORCE, setup.body()))
        for seed in range(3):
            strip = random.Random(seed).randbytes(3 * setup.pixels)
            self.settle()
            self.show(strip)
            seen = self.latched(len(runs))
            at = 0
            for output, pixels in runs:
                self.assertEqual(seen[output][0], strip[at:at + 3 * pixels].ljust(3 * 40, b"\0"))  # the longest run has 40
                at += 3 * pixels
            starts = [start_us for _, start_us in seen.values()]
            self.assertLess(max(starts) - min(starts), 1.25)
        self.assertEqual(self.board.end(), 0)

    def test_lines_left_out_are_driven_dark_once(self):
        self.set_up([(0, 10), (1, 10), (2, 10)])
        self.settle()
        self.show(b"\x55" * 90)
        self.latched(3)
        self.set_up([(2, 4), (0, 12)])
        self.settle()
        self.show(b"\x11" * 48)
        seen = self.latched(3)
        self.assertEqual(seen[2][0], b"\x11" * 12 + bytes(24))
        self.assertEqual(seen[0][0], b"\x11" * 36)
        self.assertEqual(seen[1][0], bytes(36))
        self.settle()
        self.show(b"\x22" * 48)
        self.assertEqual({output: len(strip.rstrip(b"\0")) for output, (strip, _) in self.latched(2).items()}, {2: 12, 0: 36})
        self.assertEqual(self.board.end(), 0)

    def test_without_runs_all_is_on_the_first(self):
        self.set_up([(4, 10)])
        self.settle()
        self.show(b"\x55" * 30)
        self.latched(1)
        setup = wire.Setup(6)
        self.assertEqual(self.talk.ask(wire.SETUP, setup.body()), (wire.IN_FORCE, setup.body()))
        self.settle()
        self.show(b"\x66" * 18)
        seen = self.latched(2)
        self.assertEqual((seen[0][0].rstrip(b"\0"), seen[4][0]), (b"\x66" * 18, bytes(30)))
        self.assertEqual(self.board.end(), 0)

    def test_the_ceiling_is_that_of_all_outputs_together(self):
        """wire.md, section 4, by the test's own arithmetic: 4 x 20 white pixels at 36 mA, idle 80 mA, of 500 mA."""
        _, setup = self.set_up([(output, 20) for output in range(4)], ceilings_mA=(500,))
        asked = b"\xff" * 240
        strip, _, over = ceiling.dim(setup, asked, ())
        self.assertTrue(over)
        self.settle()
        self.show(asked, outcome=2)
        seen = self.latched(4)
        whole = b"".join(seen[output][0] for output in range(4))
        self.assertEqual(whole, strip)
        self.assertLessEqual(ceiling.current_mA(setup, whole, (), 0), 500)
        self.assertEqual(self.board.end(), 0)

    def test_runs_of_unequal_length_latch_together(self):
        """wire.md, section 4: a fuse for the ceiling survives every change between two runs, the short one lit and dark."""
        runs = [(0, 5), (1, 60)]
        _, setup = self.set_up(runs, ceilings_mA=(2300,))
        lit, dark = b"\xff" * 15 + bytes(180), bytes(15) + b"\xff" * 180
        self.settle()
        self.show(dark)
        self.latched(2)
        answer = self.board.command(f"fuse 2300 2 {setup.pixels * setup.dark_uA} 12000,12000,12000 0")
        self.assertNotEqual(answer["answer"], "refused", answer)
        for strip in (lit, dark, lit, dark):
            self.show(strip)
        fuse = self.board.stats()["fuse"]
        self.assertFalse(fuse["blown"], fuse)  # it survives 2 us: lines begin within a bit of each other
        self.assertGreater(fuse["highest_mA"], 2000)
        self.assertEqual(self.board.end(), 0)

    def test_wrong_runs_are_refused_where_they_are_wrong(self):
        at = len(wire.Setup(20).body())
        for runs, offset in (([(8, 20)], at + 1), ([(0, 10), (0, 10)], at + 4), ([(0, 10), (1, 9)], at + 2),
                             ([(i, 2) for i in range(9)] + [(0, 2)], at)):
            with self.subTest(runs=runs):
                body = wire.Setup(20, runs=runs).body()
                self.assertEqual(self.talk.ask(wire.SETUP, body), (wire.COMPLAINT, b"\x07" + wire.number(offset)))
        body = wire.Setup(20, runs=[(0, 10), (1, 10)]).body()
        self.assertEqual(self.talk.ask(wire.SETUP, body[:-1]), (wire.COMPLAINT, b"\x06" + wire.number(len(body))))
        self.assertEqual(self.board.end(), 0)


class WrongFirmware(unittest.TestCase):
    """The board can say no: each of these would be a chip that does not run."""

    def run_board(self, file):
        with tempfile.TemporaryDirectory() as folder:
            return subprocess.run([PROGRAM, "--elf", file, "--link", os.path.join(folder, "tty"), "--free"],
                                  stdin=subprocess.PIPE, capture_output=True, text=True, timeout=PATIENCE_S, check=False)

    def test_unaligned_access_is_told(self):
        """ARMv6-M: a word at an odd address is a HardFault. rp2040js only logs it."""
        with tempfile.TemporaryDirectory() as folder:
            process = subprocess.Popen([PROGRAM, "--elf", FIXTURE, "--link", os.path.join(folder, "tty"), "--free"],
                                       stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
            line = process.stdout.readline()
            self.assertIn('"error":"emulator"', line)
            self.assertIn("not 32 bit aligned", line)
            process.communicate(timeout=PATIENCE_S)
            self.assertEqual(process.returncode, 6)

    def test_wrong_checksum_does_not_boot(self):
        with tempfile.NamedTemporaryFile(suffix=".uf2") as file, open(UF2, "rb") as whole:
            data = bytearray(whole.read())
            data[32 + 100] ^= 1
            file.write(data)
            file.flush()
            result = self.run_board(file.name)
            self.assertEqual(result.returncode, 4)
            self.assertIn("checksum", result.stdout)

    def test_file_that_is_no_image_is_refused(self):
        for file in (__file__, "no/such/file"):
            with self.subTest(file=file):
                result = self.run_board(file)
                self.assertEqual(result.returncode, 1)
                self.assertEqual(result.stderr.count("\n"), 1, result.stderr)


def main():
    suite = unittest.defaultTestLoader.loadTestsFromModule(sys.modules[__name__])
    result = unittest.TextTestRunner(stream=sys.stdout).run(suite)
    bad = len({test.id().split(" ")[0] for test, _ in result.failures + result.errors})
    print(f"rp2040: {result.testsRun - bad} passed, {bad} failed")
    sys.exit(bad > 0)


if __name__ == "__main__":
    main()
