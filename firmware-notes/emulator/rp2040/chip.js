import { BasePeripheral, RP2040 } from 'rp2040js';
import { ChipSelect, FlashBus } from './flash.js';

const SSI_BLOCK = 0x18000;
const IO_QSPI_BLOCK = 0x40018;
const CHIP_RESET_BLOCK = 0x40064;
const WATCHDOG_BLOCK = 0x40058;
const FLASH = 0x10000000;
const RAM = 0x20000000;
const RAM_END = 0x20042000;

/* Where the ROM puts the second stage of the boot, and its checksum (datasheet, "Flash Second Stage"). */
const STAGE_AT = RAM_END - 0x100;
const STAGE_BYTES = 252;
const POLYNOMIAL = 0x04c11db7;

/* A branch to itself (ARMv6-M), at the end of a 2 MB flash. */
const ENDLESS_LOOP = 0xe7fe;
const LOOP_AT = 2 * 1024 * 1024 - 2;

/** The contents of the chip's RAM at power-on: anything but zeros. */
const PAINT = 0xa5;

/*
 * State machines run this long in one go. Each instruction still has its own time; this is shorter than a machine's 4-byte queue lasts, 40
 * us, so that none runs dry because of it.
 */
export const PIO_STRETCH_NS = 20000;

const FUNCTION_PIO0 = 6;
const PSM_BUT_OSCILLATORS = 0x1fffc;
const HAD_POWER_ON = 1 << 8;
const HAD_RUN_PIN = 1 << 16;
const REASON_TIMER = 1;

/** VREG_AND_CHIP_RESET (datasheet 2.12.7): the cause of the last reset. */
class ChipReset extends BasePeripheral {
  constructor(rp2040, cause) {
    super(rp2040, 'VREG_AND_CHIP_RESET');
    this.cause = cause;
  }

  readUint32(offset) {
    return offset === 0x08 ? this.cause : super.readUint32(offset);
  }
}

function crc32(bytes) {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte << 24;
    for (let bit = 0; bit < 8; bit++) {
      value = value & 0x80000000 ? (value << 1) ^ POLYNOMIAL : value << 1;
    }
  }
  return value >>> 0;
}

/** A PIO state machine with its own time: `atNs` of its next instruction, Infinity while it waits for data. */
class Machine {
  constructor(machine, chip, firstPin) {
    Object.assign(this, { machine, chip, firstPin });
    this.atNs = Infinity;
    this.periodNs = 0;
    const write = machine.writeFIFO.bind(machine);
    machine.writeFIFO = (value) => {
      const waited = machine.waiting;
      const cycles = machine.cycles;
      write(value);
      if (waited && !machine.waiting) {
        this.#wake(1 + machine.cycles - cycles);
      }
    };
  }

  /* Machines step at multiples of their divided clock. */
  #wake(cycles) {
    const now = this.chip.rp2040.clock.nanos;
    this.atNs = Math.ceil(now / this.periodNs) * this.periodNs + cycles * this.periodNs;
    this.chip.wake(this.atNs);
  }

  start() {
    const { machine, chip } = this;
    const divider = (machine.clockDivInt || 65536) + machine.clockDivFrac / 256;
    this.periodNs = (divider * 1e9) / chip.rp2040.clkSys;
    this.#wake(0);
  }

  /* Runs up to and including `ns`. */
  run(ns) {
    const { machine, chip, periodNs } = this;
    const { pio } = machine;
    while (this.atNs <= ns) {
      const cycles = machine.cycles;
      const before = pio.pinValues;
      machine.step();
      if (pio.pinValues !== before) {
        chip.pinsChanged(pio, before ^ pio.pinValues, this.atNs);
      }
      this.atNs = machine.waiting ? Infinity : this.atNs + (machine.cycles - cycles) * periodNs;
    }
    return this.atNs;
  }
}

/**
 * An RP2040 with its flash, its clock and its pins; it runs cycle by cycle and keeps its time through resets. `options`: `image` of
 * image.js, `id` of the flash chip, `startNs`. `hooks`: edge(pin, high, ns), beforeDimmers(ns), afterDimmers(ns), warn(text), watchdog(),
 * attach(rp2040) for what is attached to it.
 */
export class Chip {
  constructor(options, hooks) {
    Object.assign(this, { options, hooks });
    this.sleptNs = 0;
    this.watchdogResets = 0;
    this.ram = new Uint8Array(RAM_END - RAM).fill(PAINT);
    this.dead = null;
    this.#power(options.startNs, HAD_POWER_ON, 0);
  }

  get nowNs() {
    return this.rp2040.clock.nanos;
  }

  /* A new chip at this time, with the old one's RAM, which a reset does not change. */
  #power(ns, cause, reason, scratch = []) {
    const rp2040 = new RP2040();
    this.rp2040 = rp2040;
    rp2040.clock.nanosCounter = ns;
    rp2040.logger = this.#logger();
    rp2040.sram.set(this.ram);
    this.ram = rp2040.sram;
    this.flashBus = new FlashBus(rp2040, this.options.id);
    rp2040.peripherals[SSI_BLOCK] = this.flashBus;
    rp2040.peripherals[IO_QSPI_BLOCK] = new ChipSelect(rp2040, this.flashBus);
    rp2040.peripherals[CHIP_RESET_BLOCK] = new ChipReset(rp2040, cause);
    this.#silencePwm();
    this.#watchWatchdog(reason, scratch);
    this.#watchPwm();
    this.#takePio();
    this.bitten = false;
    for (const { at, bytes } of this.options.image.pieces) {
      rp2040.flash.set(bytes, at);
    }
    this.hooks.attach(rp2040);
    this.#boot();
  }

  #logger() {
    const say = (name, text) => this.hooks.warn(`${name}: ${text}`);
    return { debug() {}, info() {}, warn: say, error: say };
  }

  /* What the ROM does: it checks the second stage, copies it to RAM and runs it there. */
  #boot() {
    const { core, flash, flashView, sram } = this.rp2040;
    if (crc32(flash.subarray(0, STAGE_BYTES)) !== flashView.getUint32(STAGE_BYTES, true)) {
      this.dead = 'the checksum of the second stage of the boot is wrong: the ROM would not run it';
      return;
    }
    sram.set(flash.subarray(0, STAGE_BYTES + 4), STAGE_AT - RAM);
    core.SP = STAGE_AT;
    core.PC = STAGE_AT;
    core.LR = 0;
  }

  /* Dimmers are read from the registers: the emulator need not move their pins. */
  #silencePwm() {
    for (const channel of this.rp2040.pwm.channels) {
      for (const alarm of [channel.alarmA, channel.alarmB, channel.alarmBottom]) {
        alarm.enable = false;
        Object.defineProperty(alarm, 'enable', { value: false, writable: false });
      }
    }
  }

  /* Its scratch registers survive its own reset (datasheet 4.7). */
  #watchWatchdog(reason, scratch) {
    const watchdog = this.rp2040.peripherals[WATCHDOG_BLOCK];
    watchdog.scratchData.set(scratch);
    watchdog.reason = reason;
    watchdog.onWatchdogTrigger = () => {
      watchdog.alarm.enable = false;
      this.bitten = true;
    };
  }

  #watchPwm() {
    const pwm = this.rp2040.pwm;
    const write = pwm.writeUint32.bind(pwm);
    pwm.writeUint32 = (offset, value) => {
      this.hooks.beforeDimmers(this.nowNs);
      write(offset, value);
      this.hooks.afterDimmers(this.nowNs);
    };
  }

  #takePio() {
    this.pioNs = Infinity;
    this.machines = [];
    for (const [block, pio] of this.rp2040.pio.entries()) {
      pio.run = () => {};
      pio.warn = (text) => this.hooks.warn(`PIO${block}: ${text}`);
      const machines = pio.machines.map((machine) => new Machine(machine, this, FUNCTION_PIO0 + block));
      const write = pio.writeUint32.bind(pio);
      pio.writeUint32 = (offset, value) => {
        const running = pio.machines.map((machine) => machine.enabled);
        write(offset, value);
        machines.forEach((each, i) => pio.machines[i].enabled && !running[i] && each.start());
      };
      this.machines.push(...machines);
    }
  }

  /** A state machine has something to do at `ns`. */
  wake(ns) {
    this.pioNs = Math.min(this.pioNs, ns + PIO_STRETCH_NS);
  }

  pinsChanged(pio, changed, ns) {
    for (let bits = changed & pio.pinDirections; bits !== 0; bits &= bits - 1) {
      const pin = 31 - Math.clz32(bits & -bits);
      if (this.rp2040.gpio[pin].functionSelect === FUNCTION_PIO0 + pio.index) {
        this.hooks.edge(pin, (pio.pinValues & (1 << pin)) !== 0, ns);
      }
    }
  }

  #runPio(ns) {
    let next = Infinity;
    this.pioNs = Infinity;
    for (const machine of this.machines) {
      if (machine.atNs <= ns) {
        machine.run(ns);
      }
      next = Math.min(next, machine.atNs);
    }
    this.pioNs = Math.min(this.pioNs, next + PIO_STRETCH_NS);
  }

  /** Runs until `ns`. False when the chip has stopped for good: see `dead`. */
  run(ns) {
    while (this.dead === null && this.nowNs < ns) {
      this.#stretch(ns);
      if (this.bitten) {
        this.#bite();
      }
    }
    return this.dead === null;
  }

  /* Up to `end`, or to a reset by the watchdog. */
  #stretch(end) {
    const { core, clock } = this.rp2040;
    while (clock.nanosCounter < end && !this.bitten) {
      const alarm = clock.nextAlarm;
      if (alarm !== null && alarm.nanos <= clock.nanosCounter) {
        clock.tick(0);
      }
      if (this.pioNs <= clock.nanosCounter) {
        this.#runPio(clock.nanosCounter);
      }
      if (core.waiting) {
        this.#sleep(end);
      } else {
        this.#work(end);
      }
    }
  }

  /* An interrupt that is already pending ends the sleep (ARMv6-M, WFI); rp2040js checks only when one arrives. */
  #sleep(end) {
    const { core, clock } = this.rp2040;
    if (core.interruptsUpdated && core.checkForInterrupts()) {
      core.waiting = false;
      return;
    }
    const alarm = clock.nextAlarm?.nanos ?? Infinity;
    const until = Math.min(end, alarm, this.pioNs);
    if (until > clock.nanosCounter) {
      this.sleptNs += until - clock.nanosCounter;
      clock.nanosCounter = until;
    }
    core.interruptsUpdated = true;
  }

  /* Instructions one after the other, until something else is due. */
  #work(end) {
    const { core, clock } = this.rp2040;
    const cycleNs = 1e9 / this.rp2040.clkSys;
    let now = clock.nanosCounter;
    do {
      now += core.executeInstruction() * cycleNs;
      clock.nanosCounter = now;
    } while (now < end && now < this.pioNs && !core.waiting && !(clock.nextAlarm !== null && clock.nextAlarm.nanos <= now)
      && 1e9 / this.rp2040.clkSys === cycleNs);
  }

  #bite() {
    const { wdsel } = this.rp2040.peripherals[0x40010];
    if ((wdsel & PSM_BUT_OSCILLATORS) !== PSM_BUT_OSCILLATORS) {
      this.hooks.warn('the watchdog does not reset all of the chip');
    }
    this.watchdogResets++;
    this.hooks.watchdog();
    this.#reset(0, REASON_TIMER, this.rp2040.peripherals[WATCHDOG_BLOCK].scratchData);
  }

  #reset(cause, reason, scratch) {
    const ns = this.nowNs;
    this.hooks.beforeDimmers(ns);
    this.hooks.released(ns);
    this.#power(ns, cause, reason, scratch);
    this.hooks.afterDimmers(ns);
  }

  /** Presses the reset button, which pulls RUN low. */
  reset() {
    this.#reset(HAD_RUN_PIN, 0);
  }

  /** The supply drops too low and recovers at once: the chip cannot tell that from power-on (datasheet 2.12.7, HAD_POR). */
  brownOut() {
    this.#reset(HAD_POWER_ON, 0);
  }

  /** The program hangs. Interrupts keep running. */
  hang() {
    const { core, flashView } = this.rp2040;
    flashView.setUint16(LOOP_AT, ENDLESS_LOOP, true);
    core.PC = FLASH + LOOP_AT;
    core.waiting = false;
  }

  /** Bytes of RAM after the variables up to the first one written since power-on. */
  get ramUntouched() {
    const end = this.options.image.variablesEnd;
    if (end === null) {
      return null;
    }
    const from = end - RAM;
    const touched = this.ram.subarray(from).findIndex((byte) => byte !== PAINT);
    return touched < 0 ? this.ram.length - from : touched;
  }
}
