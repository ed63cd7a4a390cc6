import { BasePeripheral } from 'rp2040js';

/* RP2040 datasheet 4.2.8, and the PL011's technical reference manual. */
const DR = 0x00;
const FR = 0x18;
const IBRD = 0x24;
const FBRD = 0x28;
const LCR_H = 0x2c;
const CR = 0x30;
const IFLS = 0x34;
const IMSC = 0x38;
const RIS = 0x3c;
const MIS = 0x40;
const ICR = 0x44;

const FLAG_BUSY = 1 << 3;
const FLAG_RX_EMPTY = 1 << 4;
const FLAG_TX_FULL = 1 << 5;
const FLAG_RX_FULL = 1 << 6;
const FLAG_TX_EMPTY = 1 << 7;
const DATA_OVERRUN = 1 << 11;
const ENABLED = (1 << 0) | (1 << 9);
const INTERRUPT_RX = 1 << 4;
const INTERRUPT_SILENCE = 1 << 6;

const DEPTH = 32;
const TRIGGERS = [4, 8, 16, 24, 28];
const CHARACTER_BITS = 10;
const SILENCE_BITS = 32;
const IRQ_UART0 = 20;

/**
 * UART0 with time: characters take ten bits of the chip's own divisor, in both directions; queues of 32, overrun, and the interrupts for a
 * filling queue and for silence. `events`: sent(byte), lost(byte, hurt), unheard().
 */
export class Uart extends BasePeripheral {
  constructor(rp2040, line, events) {
    super(rp2040, 'UART0');
    Object.assign(this, { line, events });
    this.registers = new Map([[IBRD, 0], [FBRD, 0], [LCR_H, 0], [CR, 0x300], [IFLS, 0x12], [IMSC, 0]]);
    this.received = [];
    this.sending = [];
    this.overrun = false;
    this.silence = false;
    this.coming = null;
    this.arrival = rp2040.clock.createAlarm(() => this.#arrived());
    this.departure = rp2040.clock.createAlarm(() => this.#departed());
    this.silent = rp2040.clock.createAlarm(() => this.#fellSilent());
    line.onBytes = () => this.#startNext();
    this.#startNext();
  }

  get baud() {
    const divisor = this.registers.get(IBRD) + this.registers.get(FBRD) / 64;
    return divisor > 0 ? this.rp2040.clkPeri / 16 / divisor : 0;
  }

  #bitsNs(bits) {
    return (bits * 1e9) / (this.baud || 500000);
  }

  get #listens() {
    return (this.registers.get(CR) & ENABLED) === ENABLED;
  }

  #startNext() {
    if (this.coming !== null) {
      return;
    }
    const next = this.line.take();
    if (next === undefined) {
      return;
    }
    this.coming = next;
    this.arrival.schedule(this.#bitsNs(CHARACTER_BITS));
  }

  #arrived() {
    const { byte, hurt } = this.coming;
    this.coming = null;
    if (!this.#listens) {
      this.events.unheard();
    } else if (this.received.length === DEPTH) {
      this.overrun = true;
      this.events.lost(byte, hurt);
    } else {
      this.received.push(byte | (this.overrun ? DATA_OVERRUN : 0));
      this.overrun = false;
    }
    this.silent.schedule(this.#bitsNs(SILENCE_BITS));
    this.#interrupt();
    this.#startNext();
  }

  #fellSilent() {
    this.silence = this.received.length > 0;
    this.#interrupt();
  }

  #departed() {
    this.events.sent(this.sending.shift());
    if (this.sending.length > 0) {
      this.departure.schedule(this.#bitsNs(CHARACTER_BITS));
    }
  }

  get #raw() {
    const trigger = TRIGGERS[(this.registers.get(IFLS) >> 3) & 7];
    return (this.received.length >= trigger ? INTERRUPT_RX : 0) | (this.silence ? INTERRUPT_SILENCE : 0);
  }

  #interrupt() {
    this.rp2040.setInterrupt(IRQ_UART0, (this.#raw & this.registers.get(IMSC)) !== 0);
  }

  get #flags() {
    return (this.received.length === 0 ? FLAG_RX_EMPTY : 0) | (this.received.length === DEPTH ? FLAG_RX_FULL : 0)
      | (this.sending.length === 0 ? FLAG_TX_EMPTY : FLAG_BUSY) | (this.sending.length >= DEPTH + 1 ? FLAG_TX_FULL : 0);
  }

  #read() {
    const value = this.received.shift() ?? 0;
    this.silence = this.silence && this.received.length > 0;
    this.#interrupt();
    return value;
  }

  #write(byte) {
    if (this.sending.length > DEPTH) {
      this.warn('a byte was written to a full queue');
      return;
    }
    this.sending.push(byte);
    if (this.sending.length === 1) {
      this.departure.schedule(this.#bitsNs(CHARACTER_BITS));
    }
  }

  readUint32(offset) {
    switch (offset) {
      case DR:
        return this.#read();
      case FR:
        return this.#flags;
      case RIS:
        return this.#raw;
      case MIS:
        return this.#raw & this.registers.get(IMSC);
      default:
        return this.registers.get(offset) ?? super.readUint32(offset);
    }
  }

  writeUint32(offset, value) {
    if (offset === DR) {
      this.#write(value & 0xff);
    } else if (offset === ICR) {
      this.silence = this.silence && (value & INTERRUPT_SILENCE) === 0;
      this.#interrupt();
    } else if (this.registers.has(offset)) {
      this.registers.set(offset, value);
      this.#interrupt();
    } else {
      super.writeUint32(offset, value);
    }
  }
}
