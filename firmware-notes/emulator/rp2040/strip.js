/** Maximum bytes kept of a frame. */
export const MOST_BYTES = 16384;

/** A low of this many ns or more is a pause within a frame. */
const PAUSE_NS = 10000;

/*
 * Shortest and longest pulses that both datasheets allow, in ns. WS2812B, data transfer time: 0.4 and 0.85 us, 0.8 and 0.45 us.
 * SK6812RGBW, likewise: 0.3 and 0.9 us, 0.6 and 0.6 us. Both +-150 ns.
 */
const PULSES = ['t0h_ns', 't0l_ns', 't1h_ns', 't1l_ns'];
const LEAST = [250, 750, 650, 450];
const MOST = [450, 1000, 750, 600];
const [T0H, T0L, T1H, T1L] = [0, 1, 2, 3];

/** The shortest and the longest of each kind of pulse, and how many were out of tolerance. */
export class Widths {
  constructor() {
    this.shortest = [Infinity, Infinity, Infinity, Infinity];
    this.longest = [0, 0, 0, 0];
    this.outOfTolerance = 0;
  }

  note(pulse, ns) {
    if (ns < this.shortest[pulse]) {
      this.shortest[pulse] = ns;
    }
    if (ns > this.longest[pulse]) {
      this.longest[pulse] = ns;
    }
    if (ns < LEAST[pulse] || ns > MOST[pulse]) {
      this.outOfTolerance++;
    }
  }

  add(other) {
    for (let i = 0; i < PULSES.length; i++) {
      this.shortest[i] = Math.min(this.shortest[i], other.shortest[i]);
      this.longest[i] = Math.max(this.longest[i], other.longest[i]);
    }
    this.outOfTolerance += other.outOfTolerance;
  }

  toJson() {
    const ranges = PULSES.map((key, i) => [key, this.longest[i] === 0 ? null : [tenth(this.shortest[i]), tenth(this.longest[i])]]);
    return { ...Object.fromEntries(ranges), out_of_tolerance: this.outOfTolerance };
  }
}

function tenth(ns) {
  return Math.round(ns * 10) / 10;
}

/** An endless strip on one data line, read as a strip would read it. `latched` is called with each frame. */
export class Strip {
  constructor(index, pin, { thresholdNs, resetNs, latched }) {
    Object.assign(this, { index, pin, thresholdNs, resetNs, latched });
    this.high = false;
    this.roseNs = 0;
    this.fellNs = -Infinity;
    this.frames = 0;
    this.widths = new Widths();
    this.shortestGapNs = Infinity;
    this.latest = null;
    this.bytes = Buffer.alloc(MOST_BYTES);
    this.#clear();
  }

  #clear() {
    this.count = 0;
    this.bits = 0;
    this.shift = 0;
    this.lastBit = 0;
    this.pauses = 0;
    this.frameWidths = new Widths();
    this.startNs = 0;
    this.gapNs = null;
  }

  get #hasBits() {
    return this.count > 0 || this.bits > 0;
  }

  edge(high, ns) {
    if (high === this.high) {
      return;
    }
    if (high) {
      this.#rise(ns);
    } else {
      this.#fall(ns);
    }
    this.high = high;
  }

  #rise(ns) {
    this.until(ns);
    if (this.#hasBits) {
      const low = ns - this.fellNs;
      this.frameWidths.note(this.lastBit ? T1L : T0L, low);
      this.pauses += low >= PAUSE_NS ? 1 : 0;
    } else {
      this.startNs = ns;
      this.gapNs = this.fellNs === -Infinity ? null : ns - this.fellNs;
      if (this.frames > 0) {
        this.shortestGapNs = Math.min(this.shortestGapNs, this.gapNs);
      }
    }
    this.roseNs = ns;
  }

  #fall(ns) {
    const high = ns - this.roseNs;
    this.lastBit = high > this.thresholdNs ? 1 : 0;
    this.frameWidths.note(this.lastBit ? T1H : T0H, high);
    this.shift = ((this.shift << 1) | this.lastBit) & 0xff;
    this.fellNs = ns;
    if (++this.bits < 8) {
      return;
    }
    this.bits = 0;
    if (this.count < MOST_BYTES) {
      this.bytes[this.count] = this.shift;
    }
    this.count++;
  }

  /** The chip releases the pin. */
  release(ns) {
    if (this.high) {
      this.high = false;
      this.fellNs = ns;
    }
  }

  /** The bytes that arrived and have not latched. */
  get coming() {
    return this.bytes.subarray(0, Math.min(this.count, MOST_BYTES));
  }

  /** When they latch, if nothing more arrives. */
  get dueNs() {
    return !this.high && this.#hasBits ? this.fellNs + this.resetNs : Infinity;
  }

  /** Advances time to `ns`. */
  until(ns) {
    if (ns < this.dueNs) {
      return;
    }
    this.frames++;
    this.widths.add(this.frameWidths);
    const kept = Math.min(this.count, MOST_BYTES);
    this.latest = {
      strip: this,
      atNs: this.fellNs + this.resetNs,
      bytes: Buffer.from(this.bytes.subarray(0, kept)),
      count: this.count,
      looseBits: this.bits,
      pauses: this.pauses,
      startNs: this.startNs,
      gapNs: this.gapNs,
      widths: this.frameWidths,
    };
    this.#clear();
    this.latched(this.latest);
  }
}
