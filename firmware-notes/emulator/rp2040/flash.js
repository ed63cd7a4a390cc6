import { BasePeripheral } from 'rp2040js';

/* SSI: RP2040 datasheet 4.10.13. */
const CTRLR0 = 0x00;
const CTRLR1 = 0x04;
const SSIENR = 0x08;
const SER = 0x10;
const BAUDR = 0x14;
const TXFLR = 0x20;
const RXFLR = 0x24;
const SR = 0x28;
const DR0 = 0x60;
const SPI_CTRLR0 = 0xf4;
const SR_TX_NOT_FULL = 1 << 1;
const SR_TX_EMPTY = 1 << 2;
const SR_RX_NOT_EMPTY = 1 << 3;
const QUEUE = 16;

/* IO_QSPI: the chip select's control (datasheet 2.19.6.2). */
const SS_CTRL = 0x0c;
const OVERRIDE_LOW = 2;

/* Read Unique ID: W25Q16JV datasheet, "Read Unique ID Number (4Bh)": four bytes of nothing, then eight. */
const READ_UNIQUE_ID = 0x4b;
const ID_AT = 5;

/** The chip select of the flash. */
export class ChipSelect extends BasePeripheral {
  constructor(rp2040, flash) {
    super(rp2040, 'IO_QSPI');
    this.flash = flash;
    this.control = 0;
  }

  readUint32(offset) {
    return offset === SS_CTRL ? this.control : super.readUint32(offset);
  }

  writeUint32(offset, value) {
    if (offset !== SS_CTRL) {
      super.writeUint32(offset, value);
      return;
    }
    this.control = value;
    this.flash.select(((value >> 8) & 3) === OVERRIDE_LOW);
  }
}

/** The flash's bus, and a flash chip on it that can report its number. The emulator itself handles reading by address. */
export class FlashBus extends BasePeripheral {
  constructor(rp2040, id) {
    super(rp2040, 'SSI');
    this.id = id;
    this.registers = new Map([[CTRLR0, 0], [CTRLR1, 0], [SSIENR, 0], [SER, 0], [BAUDR, 0], [SPI_CTRLR0, 0x03000000]]);
    this.answers = [];
    this.said = null;
    this.byAddress = null;
  }

  select(low) {
    this.said = low ? [] : null;
  }

  #exchange(byte) {
    if (this.said === null || !this.registers.get(SSIENR) || this.answers.length === QUEUE) {
      this.warn('a byte was sent with the bus off, the chip not selected, or the queue full');
      return;
    }
    const at = this.said.length;
    this.said.push(byte & 0xff);
    const tells = this.said[0] === READ_UNIQUE_ID && at >= ID_AT;
    this.answers.push(tells ? this.id[at - ID_AT] ?? 0xff : 0xff);
  }

  readUint32(offset) {
    switch (offset) {
      case DR0:
        return this.answers.shift() ?? 0;
      case TXFLR:
        return 0;
      case RXFLR:
        return this.answers.length;
      case SR:
        return SR_TX_NOT_FULL | SR_TX_EMPTY | (this.answers.length > 0 ? SR_RX_NOT_EMPTY : 0);
      default:
        return this.registers.get(offset) ?? super.readUint32(offset);
    }
  }

  /** The settings while the bus is on; the last one counts as how the flash is read by address. */
  writeUint32(offset, value) {
    if (offset === DR0) {
      this.#exchange(value);
      return;
    }
    if (!this.registers.has(offset)) {
      super.writeUint32(offset, value);
      return;
    }
    if (offset !== SSIENR && offset !== SER && this.registers.get(SSIENR)) {
      this.warn('the bus was set while it was on');
    }
    this.registers.set(offset, value);
    this.byAddress ??= offset === SSIENR && value === 1
      ? { ctrlr0: this.registers.get(CTRLR0), ctrlr1: this.registers.get(CTRLR1), spi_ctrlr0: this.registers.get(SPI_CTRLR0) } : null;
  }
}
