import { Trouble } from './trouble.js';

/** Maximum number of bytes from the host that wait. */
export const LINE_ROOM = 65536;

/**
 * The bytes in transit from the host to the chip, and what is done to them. The chip's end of the line, uart.js or usb.js, takes them at
 * its own pace.
 */
export class Line {
  constructor(clockNs, seed) {
    this.clockNs = clockNs;
    this.queue = Buffer.alloc(LINE_ROOM);
    this.head = 0;
    this.count = 0;
    this.trouble = new Trouble(seed);
    this.deafUntilNs = 0;
    this.again = [];
    this.delivered = 0;
    this.vanished = 0;
    this.onBytes = () => {};
    this.feeder = null;
  }

  get room() {
    return LINE_ROOM - this.count;
  }

  /** Bytes that wait, including those of a feed that its credits allow to be sent. */
  get waiting() {
    return this.count + this.again.length;
  }

  put(bytes) {
    for (const byte of bytes) {
      this.queue[(this.head + this.count++) % LINE_ROOM] = byte;
    }
    if (bytes.length > 0) {
      this.onBytes();
    }
  }

  deafen(ns) {
    this.deafUntilNs = this.clockNs() + ns;
  }

  /** Forgets what waits. */
  cut() {
    this.count = 0;
    this.again = [];
  }

  /**
   * The next byte that reaches the chip, and whether it was damaged; undefined if none waits. `vanish` reports those that do not reach it.
   */
  take() {
    while (this.waiting > 0) {
      const next = this.again.shift() ?? this.#pass();
      if (next !== undefined && !this.#isDeaf()) {
        this.delivered++;
        return next;
      }
      if (next !== undefined) {
        this.vanished++;
      }
    }
    return undefined;
  }

  #isDeaf() {
    return this.clockNs() < this.deafUntilNs;
  }

  #pass() {
    const byte = this.queue[this.head];
    this.head = (this.head + 1) % LINE_ROOM;
    this.count--;
    const { bytes, hurt } = this.trouble.pass(byte);
    this.again = bytes.map((each) => ({ byte: each, hurt }));
    return this.again.shift();
  }
}

/** A host in emulated time: sends packets, each terminated by a zero, with at most `credits` of them unanswered. */
export class Feeder {
  constructor(line, bytes, credits) {
    this.line = line;
    this.bytes = bytes;
    this.at = 0;
    this.credits = credits;
    this.answered = 0;
    this.wanted = 0;
  }

  #next() {
    const end = this.bytes.indexOf(0, this.at) + 1;
    const packet = this.bytes.subarray(this.at, end === 0 ? this.bytes.length : end);
    this.at += packet.length;
    this.wanted++;
    this.line.put(packet);
  }

  get over() {
    return this.at === this.bytes.length && this.answered >= this.wanted;
  }

  go() {
    while (this.at < this.bytes.length && this.wanted - this.answered < this.credits) {
      this.#next();
    }
  }

  /** The chip sent this. */
  hear(bytes) {
    for (const byte of bytes) {
      this.answered += byte === 0 ? 1 : 0;
    }
    this.go();
  }
}
