/** Pixels latch after a low of more than 50 us (WS2812B datasheet, early issues) or more than 280 (later ones): none before. */
const EARLIEST_LATCH_NS = 50e3;

/** Rounding of a sum, in mA. */
const SLACK_MA = 1e-6;

/** What one data line's pixels draw: `shownMA`, and, while some latch sooner than others, what they will draw. */
class Load {
  constructor(strip, rating) {
    Object.assign(this, { strip, rating });
    this.latching = false;
    this.latchedNs = strip.fellNs;
    this.shownMA = strip.latest === null ? 0 : this.#draw(strip.latest.bytes);
    this.comingMA = this.shownMA;
  }

  #draw(bytes) {
    const { channelMA } = this.rating;
    return bytes.reduce((sum, byte, i) => sum + (byte / 255) * channelMA[i % channelMA.length], 0);
  }

  /** When it changes next, if no more bits arrive. */
  get dueNs() {
    const { strip } = this;
    if (strip.high || strip.fellNs === this.latchedNs) {
      return Infinity;
    }
    return strip.fellNs + (this.latching ? strip.resetNs : EARLIEST_LATCH_NS);
  }

  change() {
    if (this.latching) {
      this.shownMA = this.comingMA;
      this.latchedNs = this.strip.fellNs;
    } else {
      this.comingMA = this.#draw(this.strip.coming);
    }
    this.latching = !this.latching;
  }

  /** More bits arrive: what was about to latch did not. */
  rise() {
    this.latching = false;
  }
}

/**
 * A fuse in a supply that feeds the strip, on all data lines together, and dimmers: adds up what they draw, and blows when the sum stays
 * over its rating for longer than it can carry. A dimmer counts with its mean from the moment its register is written. `rating`: mostMA,
 * bearsNs, darkMA of the whole dark strip, channelMA of each at full duty, dimmerMA likewise. `duties` returns the dimmers' current duties.
 */
export class Fuse {
  constructor(rating, strips, duties, nowNs) {
    Object.assign(this, { rating, duties, nowNs });
    this.loads = strips.map((strip) => new Load(strip, rating));
    this.highestMA = 0;
    this.longestNs = 0;
    this.overSinceNs = null;
    this.blown = false;
    this.weigh(nowNs);
  }

  /** The dimmers have changed at `ns`, up to which `advance` has run. */
  weigh(ns) {
    const dimmers = this.duties().reduce((sum, duty, i) => sum + duty * (this.rating.dimmerMA[i] ?? 0), 0);
    const sum = this.rating.darkMA + dimmers + this.#strip();
    this.#note(ns);
    this.overSinceNs = sum > this.rating.mostMA + SLACK_MA ? this.overSinceNs ?? ns : null;
    this.highestMA = Math.max(this.highestMA, sum);
  }

  /* Data lines that latch at the same time are one strip: it counts with the larger of what it showed and what it will show. */
  #strip() {
    const shown = (loads) => loads.reduce((all, load) => all + load.shownMA, 0);
    const latching = this.loads.filter((load) => load.latching);
    const coming = latching.reduce((all, load) => all + load.comingMA, 0);
    return shown(this.loads.filter((load) => !load.latching)) + Math.max(shown(latching), coming);
  }

  #note(ns) {
    if (this.overSinceNs !== null) {
      this.longestNs = Math.max(this.longestNs, ns - this.overSinceNs);
    }
  }

  /** Advances time to `ns`: includes what has latched by then. */
  advance(ns) {
    for (;;) {
      const next = this.loads.reduce((one, other) => (other.dueNs < one.dueNs ? other : one));
      const dueNs = next.dueNs;
      if (dueNs > ns) {
        break;
      }
      next.change();
      this.weigh(dueNs);
    }
    this.#note(ns);
  }

  /** A data line rises. */
  rise(index, ns) {
    this.advance(ns);
    if (this.loads[index].latching) {
      this.loads[index].rise();
      this.weigh(ns);
    }
  }

  /** True once, when it blows. */
  blows() {
    const now = !this.blown && this.longestNs > this.rating.bearsNs;
    this.blown = this.blown || now;
    return now;
  }
}
