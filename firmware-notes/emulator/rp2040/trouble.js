const KINDS = ['drop', 'flip', 'double'];

/** One damage command: `left` bytes to damage, one in each run of `every`, at a random place. */
class Order {
  constructor() {
    this.left = 0;
    this.every = 1;
    this.place = 0;
    this.chosen = 0;
    this.hurt = 0;
  }
}

/** Damage to the bytes passing in one direction. `hurt` counts it. */
export class Trouble {
  constructor(seed) {
    this.random = BigInt(seed) * 2n + 1n;
    this.orders = Object.fromEntries(KINDS.map((kind) => [kind, new Order()]));
    this.idle = true;
  }

  /* xorshift64 (Marsaglia, Xorshift RNGs, Journal of Statistical Software 8(14), 2003). */
  #below(limit) {
    let x = this.random;
    x ^= (x << 13n) & 0xffffffffffffffffn;
    x ^= x >> 7n;
    x ^= (x << 17n) & 0xffffffffffffffffn;
    this.random = x;
    return Number(x % BigInt(limit));
  }

  #beginRun(order) {
    order.place = 0;
    order.chosen = this.#below(order.every);
  }

  set(kind, count, every) {
    const order = this.orders[kind];
    order.left = count;
    order.every = every;
    this.#beginRun(order);
    this.idle = KINDS.every((each) => this.orders[each].left === 0);
  }

  #isDue(kind) {
    const order = this.orders[kind];
    if (order.left === 0) {
      return false;
    }
    const due = order.place === order.chosen;
    order.place++;
    if (due) {
      order.left--;
      order.hurt++;
    }
    if (order.place === order.every) {
      this.#beginRun(order);
    }
    return due;
  }

  /** What becomes of a byte: none, itself or another, or two; and whether that is damage. */
  pass(byte) {
    if (this.idle) {
      return { bytes: [byte], hurt: false };
    }
    const drop = this.#isDue('drop');
    const flip = this.#isDue('flip');
    const double = this.#isDue('double');
    const passed = flip ? byte ^ (1 << this.#below(8)) : byte;
    const bytes = drop ? [] : double ? [passed, passed] : [passed];
    return { bytes, hurt: drop || flip || double };
  }

  counts() {
    return { dropped: this.orders.drop.hurt, flipped: this.orders.flip.hurt, doubled: this.orders.double.hurt };
  }
}
