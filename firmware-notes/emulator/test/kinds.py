"""The emulated boards, and in what they differ for the tests that run on all of them."""

import dataclasses
import os


@dataclasses.dataclass(frozen=True)
class Kind:
    """
    A board with a line of one kind. `folder` names the build's, with {baud} where there is one; `options` are the program's;
    `vanishes`, the device goes with each reset of the chip and comes back; `latch_us`, the longest from the answer to a frame of
    60 pixels until the strip shows it and the dimmers have risen. `listens`, it listens while it drives the strip; `has_fuse`, the
    board has the command; `tells_reset`, the firmware tells what made it start.
    """
    folder: str
    bauds: tuple
    options: tuple
    vanishes: bool
    id_option: str
    store_bytes: int
    pwm_steps: tuple
    latch_us: int
    listens: bool
    has_fuse: bool
    tells_reset: bool

    def elf(self, build, baud=500000):
        return os.path.join(build, self.folder.format(baud=baud), "lampwright.elf")


KINDS = {
    "avr": Kind("avr-{baud}", (9600, 57600, 115200, 250000, 500000, 1000000), (), False, "--eeprom", 1200,
                (256, 256, 4096, 4096, 256, 256), 1000, False, True, True),
    "rp2040-usb": Kind("rp2040-usb", (), ("--line", "usb"), True, "--id", 12000, (32768,) * 6, 4000, True, False, False),
    "rp2040-uart": Kind("rp2040-uart-{baud}", (115200, 500000, 1000000), ("--line", "uart"), False, "--id", 12000,
                        (32768,) * 6, 4000, True, False, False),
}
