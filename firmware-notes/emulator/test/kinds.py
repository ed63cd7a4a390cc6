"""The emulated boards, and how they differ for the tests that run on all of them."""

import dataclasses
import os


@dataclasses.dataclass(frozen=True)
class Kind:
    """
    A board with a line of one kind. `folder` names the build's, with {baud} where there is one; `options` are the program's;
    `vanishes`, the device goes with each reset of the chip and comes back; `latch_us`, the longest from the answer to a frame of
    60 pixels until the strip shows it and the dimmers have risen. `listens`, it listens while it drives the strip. `change_bauds` are
    those at which changes from frame to frame are tried, `overrun_baud` the one at which a host can send more than the board bears:
    0 where the line holds the host back.
    `brown_out` is what the firmware then tells made it start: an RP2040 cannot tell that from power-on.
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
    change_bauds: tuple
    overrun_baud: int
    brown_out: int

    def elf(self, build, baud=500000):
        return os.path.join(build, self.folder.format(baud=baud), "lampwright.elf")


KINDS = {
    "avr": Kind("avr-{baud}", (9600, 57600, 115200, 250000, 500000, 1000000), (), False, "--eeprom", 1200,
                (256, 256, 4096, 4096, 256, 256), 1000, False, (9600, 500000, 1000000), 500000, 3),
    "rp2040-usb": Kind("rp2040-usb", (), ("--line", "usb"), True, "--id", 12000, (32768,) * 6, 4000, True,
                       (500000,), 0, 1),
    "rp2040-uart": Kind("rp2040-uart-{baud}", (115200, 500000, 1000000), ("--line", "uart"), False, "--id", 12000,
                        (32768,) * 6, 4000, True, (115200, 1000000), 3000000, 1),
}
