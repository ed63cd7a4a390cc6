import fs from 'node:fs';
import { MOST_BYTES, Widths } from './strip.js';

function us(ns) {
  return Math.round(ns / 0.1) / 1e4;
}

function put(fd, text) {
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length;) {
    try {
      at += fs.writeSync(fd, bytes, at);
    } catch (failure) {
      if (failure.code !== 'EAGAIN') {
        throw failure;
      }
    }
  }
}

/** What the board prints: one JSON object per line on standard output, with the keys of ../README.md. */
export class Report {
  constructor(options, session) {
    Object.assign(this, { options, session });
    this.isReady = false;
    this.bytesUp = 0;
    this.bytesUpLost = 0;
    this.unheard = 0;
    this.overruns = 0;
    this.overrunsHurt = 0;
    this.latest = null;
    this.dimmersTold = '';
  }

  #say(line, atNs = this.session.chip?.nowNs ?? 0) {
    try {
      put(1, `${JSON.stringify({ t_us: us(atNs), ...line })}\n`);
    } catch {
      this.session.ended = true;
    }
  }

  ready() {
    this.isReady = true;
    this.#say({ event: 'ready', link: this.options.link, elf: this.options.elf });
  }

  event(event) {
    this.#say({ event });
  }

  failure(error, reason) {
    this.#say({ error, reason });
  }

  overrun(byte) {
    this.overruns++;
    this.#say({ error: 'overrun', byte, overruns: this.overruns });
  }

  done(command) {
    this.#say({ answer: command });
  }

  refused(line, reason) {
    this.#say({ answer: 'refused', line, reason });
  }

  end(status) {
    this.#say({ event: 'end', status });
  }

  #faults(frame) {
    return [
      frame.widths.outOfTolerance > 0 && 'out_of_tolerance',
      frame.pauses > 0 && 'pause',
      frame.looseBits > 0 && 'loose_bits',
      frame.count % this.options.channels !== 0 && 'part_pixel',
      frame.count > MOST_BYTES && 'too_long',
    ].filter(Boolean);
  }

  #frame(frame) {
    return {
      frame: frame.bytes.toString('hex'),
      bytes: frame.count,
      pixels: Math.floor(frame.count / this.options.channels),
      output: frame.strip.index,
      start_us: us(frame.startNs),
      gap_us: frame.gapNs === null ? null : us(frame.gapNs),
      ...frame.widths.toJson(),
      faults: this.#faults(frame),
    };
  }

  frame(frame) {
    this.latest = frame;
    if (!this.options.quiet) {
      this.dimmersIfChanged();
      this.#say({ ...this.#frame(frame), dimmers: this.session.dimmers }, frame.atNs);
    }
  }

  dimmersIfChanged() {
    if (this.options.quiet) {
      return;
    }
    const { dimmers } = this.session;
    const told = JSON.stringify(dimmers);
    if (told !== this.dimmersTold) {
      this.dimmersTold = told;
      this.#say({ dimmers });
    }
  }

  #strips() {
    const { strips } = this.session;
    const widths = new Widths();
    strips.forEach((strip) => widths.add(strip.widths));
    const gap = Math.min(...strips.map((strip) => strip.shortestGapNs));
    return {
      frames: strips.reduce((sum, strip) => sum + strip.frames, 0),
      ...widths.toJson(),
      shortest_gap_us: gap === Infinity ? null : us(gap),
      latest: this.latest === null ? null : { t_us: us(this.latest.atNs), ...this.#frame(this.latest) },
      outputs: strips.map((strip) => ({
        output: strip.index,
        pin: `GP${strip.pin}`,
        frames: strip.frames,
        latest: strip.latest === null ? null : { t_us: us(strip.latest.atNs), ...this.#frame(strip.latest) },
      })),
    };
  }

  stats() {
    const { line, up, chip, pace, terminal, port } = this.session;
    this.#say({
      answer: 'stats',
      plugged: terminal.plugged,
      open: terminal.open,
      bytes_down: line.delivered,
      bytes_waiting: line.waiting,
      bytes_vanished: line.vanished,
      bytes_unheard: this.unheard,
      bytes_up: this.bytesUp,
      bytes_up_lost: this.bytesUpLost,
      overruns: this.overruns,
      receiver_off: 0,
      overruns_hurt: this.overrunsHurt,
      hurt_down: line.trouble.counts(),
      hurt_up: up.counts(),
      baud: port.baud ?? null,
      fed: line.feeder?.over ?? null,
      ram_untouched: chip.ramUntouched,
      watchdog_resets: chip.watchdogResets,
      fuse: this.#fuse(),
      slept_us: us(chip.sleptNs),
      lag_us: us(pace.lostNs),
      clock_hz: chip.rp2040.clkSys,
      flash_by_address: chip.flashBus.byAddress,
      usb: port.told === undefined ? null : this.#usb(port.told.descriptors),
      ...this.#strips(),
      dimmers: this.session.dimmers,
    });
  }

  #fuse() {
    const { fuse } = this.session;
    return fuse === null ? null : { highest_mA: Math.round(fuse.highestMA * 1e3) / 1e3, longest_over_us: us(fuse.longestNs), blown: fuse.blown };
  }

  #usb(told) {
    return Object.fromEntries(Object.entries(told).map(([name, value]) => [name, typeof value === 'string' ? value : value.toString('hex')]));
  }
}
