#!/usr/bin/env node
import fs from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { Chip, PIO_STRETCH_NS } from './chip.js';
import { readCommand } from './command.js';
import { readDimmers } from './dimmers.js';
import { Fuse } from './fuse.js';
import { readImage } from './image.js';
import { Feeder, Line } from './line.js';
import { HELP, readOptions } from './options.js';
import { Pace } from './pace.js';
import { Report } from './report.js';
import { Strip } from './strip.js';
import { Terminal } from './terminal.js';
import { Trouble } from './trouble.js';
import { Uart } from './uart.js';
import { UsbBus } from './usb.js';

const STATUS = { good: 0, failed: 1, wrong: 2, overrun: 3, stopped: 4, blown: 5, warned: 6 };

/** Data lines of the strip, and the first one's pin: pins.h. */
const OUTPUTS = 8;
const FIRST_PIN = 2;

const STEP_NS = 250e3;
const TURN_MS = 8;
const ORPHAN_LOOK_MS = 200;

const HELPER = path.join(path.dirname(fileURLToPath(import.meta.url)), '..', '..', 'build', 'terminal');

function nowNs() {
  return Number(process.hrtime.bigint());
}

/** One running board: the chip, everything connected to it, its device, and the commands. */
class Session {
  constructor(options) {
    this.options = options;
    this.status = STATUS.good;
    this.ended = false;
    this.stalledUntilNs = null;
    this.wasOpen = false;
    this.text = '';
    this.parent = process.ppid;
    this.orphanLookMs = 0;
    this.upward = [];
    this.up = new Trouble(options.seed);
    this.line = new Line(() => this.chip?.nowNs ?? 0, options.seed);
    this.terminal = new Terminal(HELPER, options.link);
    this.report = new Report(options, this);
    this.strips = Array.from({ length: OUTPUTS }, (_, index) => new Strip(index, FIRST_PIN + index, {
      thresholdNs: options.thresholdNs,
      resetNs: options.resetNs,
      latched: (frame) => this.report.frame(frame),
    }));
    this.fuse = null;
    this.chip = new Chip({ image: readImage(options.elf), id: options.id, startNs: options.startNs }, {
      edge: (pin, high, ns) => this.#edge(pin - FIRST_PIN, high, ns),
      beforeDimmers: (ns) => this.fuse?.advance(ns),
      afterDimmers: (ns) => this.fuse?.weigh(ns),
      released: (ns) => this.strips.forEach((strip) => strip.release(ns)),
      warn: (text) => this.#warned(text),
      watchdog: () => this.report.event('watchdog'),
      attach: (rp2040) => this.#attach(rp2040),
    });
    if (options.line === 'uart') {
      this.#plug();
    }
    this.pace = new Pace(options.free, nowNs(), this.chip.nowNs);
  }

  get dimmers() {
    return readDimmers(this.chip.rp2040);
  }

  #edge(index, high, ns) {
    if (high) {
      this.fuse?.rise(index, ns);
    }
    this.strips[index]?.edge(high, ns);
  }

  #fit(rating) {
    const duties = () => this.dimmers.map((dimmer) => dimmer.duty ?? 0);
    this.fuse = rating === null ? null : new Fuse(rating, this.strips, duties, this.chip.nowNs);
  }

  /* State machines may lag by one stretch. */
  #watchFuse() {
    this.fuse?.advance(this.chip.nowNs - PIO_STRETCH_NS);
    if (this.fuse?.blows()) {
      this.report.failure('fuse', 'strip and dimmers took more than the fuse bears, for too long');
      this.status = Math.max(this.status, STATUS.blown);
    }
  }

  /* With a UART the device is the bridge's, which outlives the chip's resets; with USB it is the chip's own. */
  #attach(rp2040) {
    if (this.options.line === 'usb') {
      this.#dropDevice();
      this.port = new UsbBus(rp2040, this.line, {
        up: (bytes) => this.#sent(bytes),
        ready: () => this.#plug(),
        warn: (text) => this.#warned(text),
      });
      return;
    }
    this.port = new Uart(rp2040, this.line, {
      sent: (byte) => this.#sent([byte]),
      lost: (byte, hurt) => this.#lost(byte, hurt),
      unheard: () => {
        this.report.unheard++;
      },
    });
    rp2040.peripherals[0x40034] = this.port;
  }

  #warned(text) {
    this.report.failure('emulator', text);
    this.status = Math.max(this.status, STATUS.warned);
  }

  #lost(byte, hurt) {
    if (hurt) {
      this.report.overrunsHurt++;
      return;
    }
    this.report.overrun(byte);
    this.status = Math.max(this.status, STATUS.overrun);
    if (this.options.strict) {
      this.#end(STATUS.overrun);
    }
  }

  #sent(bytes) {
    this.line.feeder?.hear(bytes);
    for (const byte of bytes) {
      this.upward.push(...this.up.pass(byte).bytes);
    }
  }

  #flush() {
    if (this.upward.length === 0) {
      return;
    }
    const written = this.terminal.write(Buffer.from(this.upward));
    this.report.bytesUp += written;
    this.report.bytesUpLost += this.upward.length - written;
    this.upward = [];
  }

  #plug() {
    if (this.terminal.plugged) {
      return;
    }
    try {
      this.terminal.plug();
    } catch (failure) {
      if (!this.report.isReady) {
        throw failure;
      }
      this.report.failure('plug', failure.message);
      this.#end(STATUS.failed);
      return;
    }
    this.wasOpen = false;
    if (this.report.isReady) {
      this.report.event('plugged');
    } else {
      this.report.ready();
    }
  }

  /* A bridge exists at once; a chip's own device once the host has found it. */
  #plugAgain() {
    if (this.terminal.plugged) {
      return;
    }
    if (this.options.line === 'usb') {
      this.port.connect();
    } else {
      this.#plug();
    }
  }

  #dropDevice() {
    if (!this.terminal.plugged) {
      return;
    }
    this.#flush();
    this.terminal.unplug();
    this.line.cut();
    this.wasOpen = false;
    this.port.setOpen?.(false);
    this.report.event('unplugged');
  }

  #end(status) {
    this.ended = true;
    this.status = Math.max(this.status, status);
  }

  #obey(command) {
    switch (command.kind) {
      case 'deaf':
        this.line.deafen(command.ms * 1e6);
        break;
      case 'trouble':
        (command.up ? this.up : this.line.trouble).set(command.what, command.count, command.every);
        break;
      case 'stall':
        this.stalledUntilNs = nowNs() + command.ms * 1e6;
        break;
      case 'fuse':
        this.#fit(command.rating);
        break;
      case 'reset':
        this.chip.reset();
        break;
      case 'brown_out':
        this.chip.brownOut();
        break;
      case 'hang':
        this.chip.hang();
        break;
      case 'unplug':
        this.#dropDevice();
        this.port.disconnect?.();
        break;
      case 'plug':
        this.#plugAgain();
        break;
      case 'feed':
        this.line.feeder = new Feeder(this.line, fs.readFileSync(command.file), command.credits);
        this.line.feeder.go();
        break;
      case 'quit':
        this.#end(STATUS.good);
        break;
    }
  }

  #takeCommand(line) {
    const command = readCommand(line);
    if (command.complaint !== undefined) {
      this.report.refused(line, command.complaint);
      return;
    }
    try {
      this.#obey(command);
    } catch (failure) {
      this.report.refused(line, failure.message);
      return;
    }
    if (command.kind === 'stats') {
      this.report.stats();
    } else {
      this.report.done(line);
    }
  }

  /** Text of the standard input. */
  takeText(text) {
    this.text += text;
    for (let end; !this.ended && (end = this.text.indexOf('\n')) >= 0;) {
      const line = this.text.slice(0, end);
      this.text = this.text.slice(end + 1);
      this.#takeCommand(line);
    }
  }

  takeEnd() {
    this.#end(STATUS.good);
  }

  #readHost() {
    if (this.line.room < 4096) {
      return;
    }
    this.line.put(this.terminal.read());
    if (this.terminal.open !== this.wasOpen) {
      this.#openedOrClosed();
    }
  }

  #openedOrClosed() {
    const { open } = this.terminal;
    this.wasOpen = open;
    if (!open) {
      this.terminal.forget();
    } else if (this.options.resetOnOpen) {
      this.chip.reset();
    }
    this.port.setOpen?.(open);
    this.report.event(open ? 'opened' : 'closed');
  }

  #runChip() {
    const target = this.pace.target(nowNs(), this.chip.nowNs);
    const until = Date.now() + TURN_MS;
    while (this.chip.nowNs < target && !this.ended && Date.now() <= until) {
      this.#readHost();
      const alive = this.chip.run(Math.min(target, this.chip.nowNs + STEP_NS));
      this.#watchFuse();
      this.strips.forEach((strip) => strip.until(this.chip.nowNs));
      this.#flush();
      this.report.dimmersIfChanged();
      if (!alive) {
        this.report.failure('stopped', this.chip.dead);
        this.#end(STATUS.stopped);
      }
    }
    this.#readHost();
  }

  /** Runs for a moment. Returns for how many ms there is nothing to do. */
  turn() {
    if (Date.now() > this.orphanLookMs) {
      this.orphanLookMs = Date.now() + ORPHAN_LOOK_MS;
      this.ended = this.ended || process.ppid !== this.parent;
    }
    if (this.stalledUntilNs !== null) {
      if (nowNs() < this.stalledUntilNs) {
        return 1;
      }
      this.stalledUntilNs = null;
      this.pace.forgive(nowNs(), this.chip.nowNs);
    }
    this.#runChip();
    return this.options.free || this.pace.target(nowNs(), this.chip.nowNs) > this.chip.nowNs + STEP_NS ? 0 : 1;
  }

  finish() {
    this.report.end(this.status);
    this.terminal.unplug();
    process.exit(this.status);
  }
}

function turn(session) {
  if (session.ended) {
    session.finish();
  }
  const rest = session.turn();
  if (rest > 0) {
    setTimeout(turn, rest, session);
  } else {
    setImmediate(turn, session);
  }
}

function complain(status, text) {
  fs.writeSync(2, `board: ${text.split('\n')[0]}\n`);
  process.exit(status);
}

function main() {
  let options;
  let session;
  Error.stackTraceLimit = 0;
  try {
    options = readOptions(process.argv.slice(2));
  } catch (failure) {
    complain(STATUS.wrong, failure.message);
  }
  if (options.help) {
    fs.writeSync(1, HELP);
    process.exit(STATUS.good);
  }
  try {
    session = new Session(options);
  } catch (failure) {
    complain(STATUS.failed, `${options.elf}, ${options.link}: ${failure.message}`);
  }
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP']) {
    process.on(signal, () => session.takeEnd());
  }
  process.stdin.setEncoding('utf8');
  process.stdin.on('data', (text) => session.takeText(text));
  process.stdin.on('end', () => session.takeEnd());
  turn(session);
}

main();
