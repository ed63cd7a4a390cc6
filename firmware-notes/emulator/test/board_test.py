"""The emulated board as a whole, with its own small firmware (fixture.c). board_test.py BOARD FIXTURE"""

import os
import signal
import subprocess
import sys
import tempfile
import time
import unittest

from boards import PATIENCE_S, Board

PROGRAM, FIXTURE = sys.argv[1:3]

POWER_ON, BUTTON, WATCHDOG = 1, 2, 8  # MCUSR: ATmega328P datasheet, "MCU Status Register"
BYTE_US = 20  # 10 bits at 500 000 baud


class BoardTest(unittest.TestCase):

    def start(self, *options, opens=True):
        self.board = Board(PROGRAM, FIXTURE, *options, opens=opens)
        self.addCleanup(self.board.process.kill)
        return self.board

    def start_anew(self, *options):
        """A board whose firmware has just said that it started, while somebody is listening."""
        board = self.start(*options)
        board.restart()
        self.assertEqual(board.read(2), bytes([ord("R"), BUTTON]))
        return board

    def end(self, status=0):
        self.assertEqual(self.board.end(), status)
        self.assertEqual(self.board.seen[-1]["event"], "end")
        self.assertEqual(self.board.seen[-1]["status"], status)


class Line(BoardTest):

    def test_every_byte_passes_both_ways(self):
        board = self.start_anew()
        for byte in range(256):
            self.assertEqual(board.ask(bytes([ord("e"), byte])), bytes([byte]))
        stats = board.stats()
        self.assertEqual(stats["baud"], 500000)  # ATmega328P datasheet: 16 MHz / (8 (3 + 1)) with U2X
        self.assertEqual(stats["character_cycles"], 320)
        self.assertEqual(stats["bytes_down"], 512)
        self.assertEqual(stats["overruns"], 0)
        self.end()

    def test_nobody_listening_hears_nothing(self):
        board = self.start(opens=False)
        board.wait_for_stats(lambda stats: stats["bytes_up_lost"] == 2)
        board.open()
        self.assertEqual(board.ask(b"eA"), b"A")
        self.end()

    def test_deaf_firmware_overruns(self):
        """
        The firmware is deaf for 1 ms, in which 50 bytes end at 20 us each. The datasheet's receiver keeps three: two in
        the buffer, one in the shift register, which the next start bit pushes out. What happens to the 50th byte
        depends on a few cycles.
        """
        board = self.start_anew()
        self.assertEqual(board.ask(b"d" + b"x" * 60), b"d")
        error = board.expect(lambda line: "error" in line)
        self.assertEqual((error["error"], error["byte"]), ("overrun", ord("x")))
        stats = board.wait_for_stats(lambda stats: stats["bytes_down"] == 61)
        self.assertIn(stats["overruns"], (47, 48))
        self.assertEqual(board.ask(b"o"), b"\x01")  # the firmware read DOR once
        self.assertGreater(stats["longest_wait_cycles"], 15000)
        self.end(status=3)

    def test_three_bytes_are_kept_for_a_deaf_firmware(self):
        board = self.start_anew()
        self.assertEqual(board.ask(b"dooo", 4), b"d\x00\x00\x00")
        self.end()

    def test_bytes_take_their_time_on_the_line(self):
        """Two strip frames with 99 bytes between them, of which the last 97 pass after the first strip has been driven."""
        board = self.start_anew()
        board.write(b"s\x01")
        first = board.frame()
        self.assertEqual(board.read(1), b"s")
        board.write(b"x" * 97 + b"s\x01")
        second = board.frame()
        self.assertGreaterEqual(second["start_us"] - first["start_us"], 99 * BYTE_US)
        self.end()

    def test_bytes_can_be_hurried(self):
        """With half the time per byte, twice as many arrive while the firmware is deaf for 1 ms."""
        board = self.start_anew("--byte-cycles", "160")
        self.assertEqual(board.ask(b"d" + b"x" * 120), b"d")
        stats = board.wait_for_stats(lambda stats: stats["bytes_down"] == 121)
        self.assertIn(stats["overruns"], (97, 98))
        self.end(status=3)

    def test_strict_ends_at_the_first_overrun(self):
        board = self.start_anew("--strict")
        board.write(b"d" + b"x" * 60)
        self.assertEqual(board.close(), 3)
        self.assertEqual(board.seen[-2]["error"], "overrun")

    def test_a_sleeping_chip_is_woken(self):
        board = self.start_anew()
        board.write(b"z")
        board.wait_for_stats(lambda stats: stats["slept_us"] > 1000)
        self.assertEqual(board.ask(b"q"), b"q")
        interrupt = board.stats()["receive_interrupt"]
        self.assertEqual(interrupt["count"], 1)
        # response and waking (datasheet, "Interrupt Response Time"), JMP, and the routine, counted in fixture.c
        self.assertEqual(interrupt["longest_cycles"], 4 + 4 + 3 + 15)
        self.end()

    def test_emulated_time_is_not_ahead_of_real_time(self):
        board = self.start()
        for _ in range(20):
            emulated_s = board.stats()["t_us"] / 1e6
            self.assertLessEqual(emulated_s, time.monotonic() - board.started_s)
        self.end()

    def test_free_board_runs(self):
        board = self.start_anew("--free")
        self.assertEqual(board.ask(b"eA"), b"A")
        self.end()


class Memory(BoardTest):

    def test_stack_leaves_ram_untouched(self):
        """The fixture has few variables and a shallow stack: most of 2048 bytes stay as they were."""
        board = self.start_anew()
        board.ask(b"eA")
        untouched = board.stats()["ram_untouched"]
        self.assertGreater(untouched, 1500)
        self.assertLess(untouched, 2048)
        self.end()

    def test_turns_are_told(self):
        board = self.start_anew()
        for _ in range(3):
            board.ask(b"eA")
        turns = board.stats()["turns"]
        self.assertEqual(turns["count"], 2)  # the third ends when the host sends again
        self.assertGreaterEqual(turns["mean_cycles"], 320)  # at least its own byte
        self.assertLess(turns["longest_cycles"], 3 * 320)
        self.end()


class Lights(BoardTest):

    def test_strip_is_read_to_the_cycle(self):
        """Widths counted by hand in fixture.c: 5, 14, 11 and 8 cycles of 62.5 ns."""
        board = self.start_anew()
        self.assertEqual(board.ask(b"s\x06"), b"s")
        frame = board.frame()
        self.assertEqual(frame["frame"], bytes(83 * i % 256 for i in range(6)).hex())
        self.assertEqual((frame["bytes"], frame["pixels"], frame["faults"]), (6, 2, []))
        self.assertEqual(frame["t0h_ns"], [312.5, 312.5])
        self.assertEqual(frame["t0l_ns"], [875.0, 875.0])
        self.assertEqual(frame["t1h_ns"], [687.5, 687.5])
        self.assertEqual(frame["t1l_ns"], [500.0, 500.0])
        length_us = 6 * 8 * 19 / 16
        # the last bit's low of 14 cycles (0x9f ends in a 1: 8 cycles) belongs to the reset time
        self.assertAlmostEqual(frame["t_us"], frame["start_us"] + length_us - 8 / 16 + 280, places=4)

    def test_edges_of_different_instructions(self):
        """AVR instruction set manual: SBI takes two cycles and OUT one; counted by hand in fixture.c."""
        board = self.start_anew()
        self.assertEqual(board.ask(b"m\x01"), b"m")
        frame = board.frame()
        self.assertEqual((frame["frame"], frame["t0h_ns"], frame["t0l_ns"]), ("00", [312.5, 312.5], [937.5, 937.5]))
        self.end()

    def test_gap_before_a_frame_is_told(self):
        board = self.start_anew()
        board.ask(b"s\x03")
        self.assertIsNone(board.frame()["gap_us"])
        board.ask(b"s\x03")
        frame = board.frame()
        self.assertGreater(frame["gap_us"], 300)
        self.assertEqual(board.stats()["shortest_gap_us"], frame["gap_us"])
        self.end()

    def test_part_pixel_is_told(self):
        board = self.start_anew()
        board.ask(b"s\x04")
        self.assertEqual(board.frame()["faults"], ["part_pixel"])
        self.end()

    def test_four_channels(self):
        board = self.start_anew("--channels", "4")
        board.ask(b"s\x04")
        frame = board.frame()
        self.assertEqual((frame["pixels"], frame["faults"]), (1, []))
        self.end()

    def test_short_reset_makes_one_frame_of_two(self):
        board = self.start_anew("--reset-us", "1000")
        self.assertEqual(board.ask(b"s\x03s\x03", 2), b"ss")
        frame = board.frame()
        self.assertEqual((frame["bytes"], frame["faults"]), (6, ["out_of_tolerance", "pause"]))
        self.assertEqual(frame["out_of_tolerance"], 1)
        self.end()

    def test_another_pin_shows_nothing(self):
        board = self.start_anew("--strip", "PB0")
        board.ask(b"s\x03")
        self.assertEqual(board.stats()["frames"], 0)
        self.end()

    def test_dimmer_is_told_when_it_changes(self):
        board = self.start_anew()
        board.ask(b"p\x3f")
        line = board.expect(lambda line: "dimmers" in line and line["dimmers"][0]["driven"])
        self.assertEqual(line["dimmers"][0],
                         {"output": "OC0A", "pin": "PD6", "driven": True, "duty": 0.25, "hz": 976.562, "from": 0.0})
        board.ask(b"s\x03")
        self.assertEqual(board.frame()["dimmers"], line["dimmers"])
        self.end()

    def test_quiet_board_keeps_the_latest_frame(self):
        board = self.start_anew("--quiet")
        board.ask(b"s\x03")
        stats = board.stats()
        self.assertEqual(stats["frames"], 1)
        self.assertEqual(stats["latest"]["frame"], "0053a6")
        self.assertFalse(any("frame" in line or set(line) == {"t_us", "dimmers"} for line in board.seen))
        self.end()


class Trouble(BoardTest):

    def test_deaf(self):
        board = self.start_anew()
        board.command("deaf 3600000")
        board.write(b"eA" * 5)
        stats = board.wait_for_stats(lambda stats: stats["bytes_vanished"] == 10)
        self.assertEqual(stats["bytes_down"], 0)
        board.command("deaf 0")
        self.assertEqual(board.ask(b"eB"), b"B")
        self.end()

    def test_drop(self):
        board = self.start_anew()
        board.command("drop 1")
        self.assertEqual(board.ask(b"eAeB"), b"B")
        board.command("drop up 1")
        self.assertEqual(board.ask(b"eCeD"), b"D")
        stats = board.stats()
        self.assertEqual(stats["hurt_down"], {"dropped": 1, "flipped": 0, "doubled": 0})
        self.assertEqual(stats["hurt_up"], {"dropped": 1, "flipped": 0, "doubled": 0})
        self.end()

    def test_flip(self):
        board = self.start_anew()
        board.command("flip up 1")
        flipped = board.ask(b"e\x00")[0]
        self.assertIn(flipped, [1 << bit for bit in range(8)])
        self.assertEqual(board.ask(b"e\x00"), b"\x00")
        board.write(b"e")
        board.wait_for_stats(lambda stats: stats["bytes_down"] == 5)
        board.command("flip 1")
        self.assertIn(board.ask(b"\x00")[0], [1 << bit for bit in range(8)])
        self.end()

    def test_double(self):
        board = self.start_anew()
        board.command("double up 1")
        self.assertEqual(board.ask(b"eA", 2), b"AA")
        board.command("double 1")
        self.assertEqual(board.ask(b"eB"), b"e")
        self.end()

    def test_overruns_of_its_own_making_are_no_errors(self):
        board = self.start_anew()
        board.command("double 1000")
        self.assertEqual(board.ask(b"d" + b"x" * 60), b"d")
        stats = board.wait_for_stats(lambda stats: stats["bytes_down"] == 122)
        self.assertEqual(stats["overruns"], 0)
        self.assertGreater(stats["overruns_hurt"], 0)
        self.end()

    def test_stall(self):
        board = self.start_anew()
        board.command("stall 3600000")
        board.write(b"eA")
        first, second = board.stats(), board.stats()
        self.assertEqual((first["t_us"], first["bytes_down"]), (second["t_us"], 0))
        board.command("stall 0")
        self.assertEqual(board.read(1), b"A")
        self.end()

    def test_reset_and_watchdog(self):
        board = self.start_anew()
        self.assertEqual(board.ask(b"w", 2), bytes([ord("R"), WATCHDOG]))
        board.command("reset")
        self.assertEqual(board.read(2), bytes([ord("R"), BUTTON]))
        self.assertEqual(board.stats()["watchdog_resets"], 1)
        self.end()

    def test_hung_firmware_is_deaf_until_it_is_reset(self):
        board = self.start_anew()
        board.command("hang")
        board.write(b"eA")
        stats = board.wait_for_stats(lambda stats: stats["bytes_down"] == 2)
        board.wait_for_stats(lambda later: later["t_us"] > stats["t_us"] + 1000)
        self.assertEqual(board.stats()["bytes_up"], board.bytes_read)
        board.command("reset")
        self.assertEqual(board.read(2), bytes([ord("R"), BUTTON]))
        self.assertEqual(board.ask(b"eB"), b"B")
        self.end()

    def test_bytes_during_a_reset_are_no_overruns(self):
        """The firmware's receiver is not on yet when the first start bit comes."""
        board = self.start_anew()
        board.command("stall 3600000")
        board.write(b"xeA")
        board.command("reset")
        board.command("stall 0")
        self.assertEqual(board.read(3), bytes([ord("R"), BUTTON, ord("A")]))
        stats = board.stats()
        self.assertEqual((stats["bytes_unheard"], stats["overruns"], stats["receiver_off"]), (1, 0, 0))
        self.end()

    def test_reset_on_open(self):
        board = self.start("--reset-on-open", opens=False)
        board.wait_for_stats(lambda stats: stats["bytes_up_lost"] == 2)
        board.open()
        self.assertEqual(board.read(2), bytes([ord("R"), BUTTON]))
        self.end()

    def test_what_nobody_read_is_gone_when_the_device_is_closed(self):
        board = self.start_anew()
        board.write(b"eA")
        board.wait_for_stats(lambda stats: stats["bytes_up"] == board.bytes_read + 1)
        board.close_device()
        board.open()
        self.assertEqual(board.ask(b"eB"), b"B")
        self.end()

    def test_unplug_and_plug(self):
        board = self.start_anew()
        board.command("unplug")
        self.assertFalse(os.path.lexists(board.link))
        with self.assertRaises(OSError):
            while os.read(board.device, 1):
                pass
            raise OSError("end of file")
        os.close(board.device)
        board.command("plug")
        board.open()
        self.assertEqual(board.ask(b"eA"), b"A")
        self.end()

    def test_wrong_commands_are_refused(self):
        board = self.start()
        for line in ("sing", "deaf", "drop x", "y" * 1000):
            answer = board.command(line)
            self.assertEqual(answer["answer"], "refused")
            self.assertTrue(answer["reason"])
        self.end()


class Endings(BoardTest):

    def test_link_is_removed_at_every_end(self):
        for how in ("quit", "end of input", signal.SIGTERM, signal.SIGINT):
            with self.subTest(how=how):
                board = self.start()
                self.assertTrue(os.path.islink(board.link))
                if how == "quit":
                    board.command("quit")
                elif how == "end of input":
                    board.process.stdin.close()
                else:
                    board.process.send_signal(how)
                board.process.wait(PATIENCE_S)
                self.assertFalse(os.path.lexists(board.link))
                self.assertEqual(board.close(), 0)

    def test_orphan_ends(self):
        """The board's parent dies, and its input stays open."""
        with tempfile.TemporaryDirectory() as folder:
            link = os.path.join(folder, "tty")
            reader, writer = os.pipe()
            parent = subprocess.Popen(
                [sys.executable, "-c",
                 "import subprocess, sys; b = subprocess.Popen(sys.argv[1:], stdout=subprocess.PIPE);"
                 "b.stdout.readline(); print(b.pid, flush=True); input()",
                 PROGRAM, "--elf", FIXTURE, "--link", link],
                stdin=reader, stdout=subprocess.PIPE)
            orphan = int(parent.stdout.readline())
            self.assertTrue(os.path.islink(link))
            parent.kill()
            parent.wait(PATIENCE_S)
            deadline = time.monotonic() + PATIENCE_S
            while os.path.lexists(link) and time.monotonic() < deadline:
                time.sleep(0.01)
            self.assertFalse(os.path.lexists(link), f"process {orphan} lives on")
            parent.stdout.close()
            os.close(reader)
            os.close(writer)

    def test_link_is_replaced_and_a_file_is_not(self):
        with tempfile.TemporaryDirectory() as folder:
            path = os.path.join(folder, "tty")
            os.symlink("nowhere", path)
            process = subprocess.Popen([PROGRAM, "--elf", FIXTURE, "--link", path],
                                       stdin=subprocess.PIPE, stdout=subprocess.PIPE)
            process.stdout.readline()
            self.assertTrue(os.readlink(path).startswith("/dev/"))
            process.communicate(timeout=PATIENCE_S)
            with open(path, "w", encoding="ascii") as file:
                file.write("precious")
            self.refuses(1, "--elf", FIXTURE, "--link", path)
            with open(path, encoding="ascii") as file:
                self.assertEqual(file.read(), "precious")

    def refuses(self, status, *arguments):
        result = subprocess.run([PROGRAM, *arguments], stdin=subprocess.DEVNULL, capture_output=True, text=True,
                                timeout=PATIENCE_S, check=False)
        self.assertEqual(result.returncode, status)
        self.assertEqual(result.stderr.count("\n"), 1, result.stderr)

    def test_wrong_calls_are_refused_with_one_line(self):
        good = ("--elf", FIXTURE, "--link", "unused")
        self.refuses(2)
        self.refuses(2, "--elf", FIXTURE)
        self.refuses(2, *good, "--strip", "PA0")
        self.refuses(2, *good, "--channels", "5")
        self.refuses(2, *good, "--reset-us", "0")
        self.refuses(2, *good, "--eeprom", "12x4")
        self.refuses(2, *good, "--sing")
        self.refuses(2, *good, "more")
        self.refuses(1, "--elf", "no/such/file", "--link", "unused")
        self.refuses(1, "--elf", __file__, "--link", "unused")
        self.refuses(1, "--elf", FIXTURE, "--link", "no/such/folder/tty")


def main():
    suite = unittest.defaultTestLoader.loadTestsFromModule(sys.modules[__name__])
    result = unittest.TextTestRunner(stream=sys.stdout).run(suite)
    bad = len({test.id().split(" ")[0] for test, _ in result.failures + result.errors})
    print(f"board: {result.testsRun - bad} passed, {bad} failed")
    sys.exit(bad > 0)


if __name__ == "__main__":
    main()
