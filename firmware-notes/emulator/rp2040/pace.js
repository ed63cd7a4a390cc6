/** If it is later than this, the rest is given up. */
const MOST_LAG_NS = 20e6;

/** How far a free board runs before it looks at its inputs again. */
const FREE_STEP_NS = 250e3;

/** Ties emulated time to real time. */
export class Pace {
  constructor(free, realNs, chipNs) {
    this.free = free;
    this.lostNs = 0;
    this.forgive(realNs, chipNs);
  }

  /** Real time counts from here. */
  forgive(realNs, chipNs) {
    this.offsetNs = chipNs - realNs;
  }

  /** How far the chip must run. */
  target(realNs, chipNs) {
    if (this.free) {
      return chipNs + FREE_STEP_NS;
    }
    const over = realNs + this.offsetNs - chipNs - MOST_LAG_NS;
    if (over > 0) {
      this.lostNs += over;
      this.offsetNs -= over;
    }
    return realNs + this.offsetNs;
  }
}
