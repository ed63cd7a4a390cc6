/*
 * The USB that the chip sees: the chip's device controller (RP2040 datasheet 4.1), the bus with its time, and a host that enumerates the
 * device and drives its serial port (USB 2.0, chapters 5, 8 and 9; CDC 1.2). rp2040js has no timing on the bus, no second buffer from the
 * host and no check of data toggles, so its packet handling is replaced.
 */

/* Memory shared with the program (4.1.2.5). */
const SETUP_PACKET = 0x00;
const CONTROLS = 0x08;
const BUFFERS = 0x80;
const BUFFERS_END = 0x100;
const CONTROL_DATA = 0x100;

/* Endpoint control, and one half of a buffer control register. */
const ENABLED = 1 << 31;
const TWO_BUFFERS = 1 << 30;
const FULL = 1 << 15;
const DATA1 = 1 << 13;
const STALL = 1 << 11;
const AVAILABLE = 1 << 10;
const LENGTH = 0x3ff;

const SIE_CTRL = 0x4c;
const SIE_SETUP_REC = 1 << 17;
const SIE_BUS_RESET = 1 << 19;
const PULL_UP = 1 << 16;

/* USB 2.0 5.8.4: 13 bytes of overhead around the data of a bulk transaction at 12 Mbit/s; 8.4.3: a frame each millisecond. */
const BYTE_NS = 8e3 / 12;
const OVERHEAD_BYTES = 13;
const FRAME_NS = 1e6;
const START_OF_FRAME_BYTES = 7;
/** How often an idle host asks for data: one transaction, answered by NAK. */
const POLL_NS = OVERHEAD_BYTES * BYTE_NS;

/* USB 2.0 7.1.7.3 and 9.2.6: connect debounce, reset, recovery after it, and after SET_ADDRESS; longest answer. */
const DEBOUNCE_NS = 100e6;
const RESET_NS = 50e6;
const RECOVERY_NS = 10e6;
const ADDRESS_RECOVERY_NS = 2e6;
const LONGEST_ANSWER_NS = 5e9;

const PACKET = 64;
const DATA_CLASS = 10;
const DESCRIPTOR = { device: 1, configuration: 2, string: 3, interface: 4, endpoint: 5 };

/** Bytes of a set-up packet (USB 2.0 table 9-2). */
function setup(type, request, value, index, length) {
  const packet = Buffer.alloc(8);
  packet.writeUInt8(type, 0);
  packet.writeUInt8(request, 1);
  packet.writeUInt16LE(value, 2);
  packet.writeUInt16LE(index, 4);
  packet.writeUInt16LE(length, 6);
  return packet;
}

/** The endpoints of the data interface, and the communications interface's number, read from a configuration. */
function findPort(configuration) {
  const port = { in: 0, out: 0, control: 0 };
  let wanted = false;
  for (let at = 0; at < configuration.length; at += configuration[at] || configuration.length) {
    const type = configuration[at + 1];
    if (type === DESCRIPTOR.interface) {
      wanted = configuration[at + 5] === DATA_CLASS;
    } else if (type === DESCRIPTOR.endpoint && wanted) {
      const address = configuration[at + 2];
      port[address & 0x80 ? 'in' : 'out'] = address & 0x0f;
    }
  }
  return port;
}

/**
 * One connection during one life of the chip. `events`: up(bytes) from the device, ready() once the port exists, gone() when it no longer
 * does, warn(text).
 */
export class UsbBus {
  constructor(rp2040, line, events) {
    Object.assign(this, { rp2040, line, events });
    this.usb = rp2040.usbCtrl;
    this.view = rp2040.usbDPRAMView;
    this.memory = rp2040.usbDPRAM;
    this.clock = rp2040.clock;
    this.freeNs = 0;
    this.flight = null;
    this.task = null;
    this.script = null;
    this.port = null;
    this.opened = false;
    this.served = false;
    this.outBlockedNs = null;
    this.inTurn = true;
    this.address = 0;
    this.upward = [];
    this.told = { descriptors: {} };
    this.#forgetPackets();
    this.landing = this.clock.createAlarm(() => this.#land());
    this.timer = this.clock.createAlarm(() => this.#resume());
    this.patience = this.clock.createAlarm(() => this.#warn('the device does not answer a request'));
    this.usb.DPRAMUpdated = (offset) => this.#written(offset);
    this.usb.onUSBEnabled = () => {};
    this.#watchPullUp();
    line.onBytes = () => this.#go();
  }

  #warn(text) {
    this.events.warn(`USB: ${text}`);
  }

  #watchPullUp() {
    const write = this.usb.writeUint32.bind(this.usb);
    this.usb.writeUint32 = (offset, value) => {
      write(offset, value);
      if (offset === SIE_CTRL && value & PULL_UP && this.script === null) {
        this.connect();
      }
    };
    const read = this.usb.readUint32.bind(this.usb);
    this.usb.readUint32 = (offset) => (offset === SIE_CTRL ? this.usb.sieCtrl : read(offset));
  }

  /** The host finds the device, as if it were plugged in just now. */
  connect() {
    this.disconnect();
    this.script = this.#enumerate();
    this.#resume();
  }

  /** The plug is pulled; the board has power from elsewhere. */
  disconnect() {
    this.task = null;
    this.flight = null;
    this.port = null;
    this.opened = false;
    this.served = false;
    for (const alarm of [this.landing, this.timer, this.patience]) {
      alarm.cancel();
    }
  }

  #forgetPackets() {
    this.half = new Map();
    this.toggle = new Map();
  }

  /* --- the host's script: yields either a time to wait, in ns, or a request {packet, data} whose result it receives --- */

  #resume(outcome) {
    const next = this.script.next(outcome);
    if (next.done) {
      return;
    }
    if (typeof next.value === 'number') {
      this.timer.schedule(next.value);
      return;
    }
    this.task = { ...next.value, stage: 'setup', came: [], sent: 0, toggle: DATA1 };
    this.patience.schedule(LONGEST_ANSWER_NS);
    this.#go();
  }

  *#get(type, index, length, language = 0) {
    const outcome = yield { packet: setup(0x80, 6, (type << 8) | index, language, length) };
    if (outcome === null) {
      this.#warn(`no descriptor ${type}, ${index}`);
    }
    return outcome ?? Buffer.alloc(0);
  }

  *#enumerate() {
    yield DEBOUNCE_NS;
    this.#forgetPackets();
    this.usb.sieStatus |= SIE_BUS_RESET;
    this.usb.sieStatusUpdated();
    yield RESET_NS;
    yield RECOVERY_NS;
    yield* this.#get(DESCRIPTOR.device, 0, PACKET);
    yield { packet: setup(0x00, 5, 1, 0, 0) };
    yield ADDRESS_RECOVERY_NS;
    this.address = 1;
    if ((this.usb.addrEndp & 0x7f) !== this.address) {
      this.#warn('the device did not take its address');
    }
    yield* this.#describe();
    yield { packet: setup(0x00, 9, this.told.descriptors.configuration[5], 0, 0) };
    yield { packet: setup(0x21, 0x20, 0, 0, 7), data: Buffer.from([0x00, 0xc2, 0x01, 0x00, 0x00, 0x00, 0x08]) };
    this.port = findPort(this.told.descriptors.configuration);
    this.events.ready();
    yield* this.#serve();
  }

  *#describe() {
    const { descriptors } = this.told;
    descriptors.device = yield* this.#get(DESCRIPTOR.device, 0, 18);
    const head = yield* this.#get(DESCRIPTOR.configuration, 0, 9);
    descriptors.configuration = yield* this.#get(DESCRIPTOR.configuration, 0, head.readUInt16LE(2));
    const languages = yield* this.#get(DESCRIPTOR.string, 0, 255);
    const language = languages.readUInt16LE(2);
    for (const [name, at] of [['manufacturer', 14], ['product', 15], ['serial', 16]]) {
      const text = yield* this.#get(DESCRIPTOR.string, descriptors.device[at], 255, language);
      descriptors[name] = text.subarray(2).toString('utf16le');
    }
    yield* this.#askForMore();
  }

  /* As hosts do: a full-speed device has no qualifier and refuses (USB 2.0 9.6.2); status, configuration (9.4.2, 9.4.5). */
  *#askForMore() {
    const refused = yield { packet: setup(0x80, 6, 0x0600, 0, 10) };
    const status = yield { packet: setup(0x80, 0, 0, 0, 2) };
    const configuration = yield { packet: setup(0x80, 8, 0, 0, 1) };
    if (refused !== null || status?.readUInt16LE(0) !== 0 || configuration?.[0] !== 0) {
      this.#warn('the device does not refuse what it has not, or does not tell its status');
    }
  }

  /* Opens and closes the port as programs do, before any data passes: DTR and RTS (CDC PSTN 1.2, 6.3.12). Polls every millisecond. */
  *#serve() {
    let told = false;
    for (;;) {
      if (told !== this.opened) {
        told = this.opened;
        yield { packet: setup(0x21, 0x22, told ? 3 : 0, this.port.control, 0) };
        this.served = told;
        continue;
      }
      yield FRAME_NS;
    }
  }

  /** Whether a program has the port open. */
  setOpen(open) {
    this.opened = open;
    if (!open) {
      this.upward = [];
    }
  }

  /* --- the bus: one transaction at a time --- */

  #written(offset) {
    if (offset >= BUFFERS && offset < BUFFERS_END) {
      this.#go();
    }
  }

  /* The half of a buffer control register that the next packet uses. */
  #buffer(endpoint, out) {
    const register = BUFFERS + 8 * endpoint + (out ? 4 : 0);
    const control = endpoint === 0 ? 0 : this.view.getUint32(CONTROLS + 8 * (endpoint - 1) + (out ? 4 : 0), true);
    const key = 2 * endpoint + (out ? 1 : 0);
    const half = control & TWO_BUFFERS ? this.half.get(key) ?? 0 : 0;
    const value = (this.view.getUint32(register, true) >>> (16 * half)) & 0xffff;
    const enabled = endpoint === 0 || (control & ENABLED) !== 0;
    const at = endpoint === 0 ? CONTROL_DATA : (control & 0xffc0) + PACKET * half;
    return { endpoint, out, register, key, half, two: (control & TWO_BUFFERS) !== 0, value, at, ready: enabled && (value & AVAILABLE) !== 0 };
  }

  #setHalf(buffer, value) {
    const shift = 16 * buffer.half;
    const all = this.view.getUint32(buffer.register, true);
    this.view.setUint32(buffer.register, ((all & ~(0xffff << shift)) | (value << shift)) >>> 0, true);
  }

  #finish(buffer, value) {
    this.#setHalf(buffer, value);
    if (buffer.two) {
      this.half.set(buffer.key, buffer.half ^ 1);
    }
    this.usb.indicateBufferReady(buffer.endpoint, buffer.out);
  }

  #expectPid(buffer, pid) {
    if ((buffer.value & DATA1) !== pid) {
      this.#warn(`endpoint ${buffer.endpoint} ${buffer.out ? 'out' : 'in'}: wrong data toggle`);
    }
  }

  #stalled() {
    return (this.usb.epStallArm & 3) !== 0 && ((this.#buffer(0, false).value | this.#buffer(0, true).value) & STALL) !== 0;
  }

  /*
   * What the host would do next, with its bytes of data on the bus, or null. A control transfer comes first, then both directions in turn.
   */
  #choose() {
    const control = this.#chooseControl();
    if (control !== null || this.port === null) {
      return control;
    }
    const from = this.#buffer(this.port.in, false);
    const to = this.#buffer(this.port.out, true);
    const canHear = from.ready && this.served;
    const wantsToSay = this.served && this.line.waiting > 0;
    this.outBlockedNs = wantsToSay && !to.ready ? this.outBlockedNs ?? Math.max(this.freeNs, this.clock.nanos) : this.outBlockedNs;
    const canSay = wantsToSay && to.ready;
    if (canHear && (this.inTurn || !canSay)) {
      return { kind: 'in', buffer: from, bytes: from.value & LENGTH };
    }
    return canSay ? { kind: 'out', buffer: to, bytes: Math.min(this.line.waiting, PACKET) } : null;
  }

  #chooseControl() {
    const { task } = this;
    if (task === null) {
      return null;
    }
    if (task.stage === 'setup') {
      return { kind: 'setup', bytes: 8 };
    }
    if (this.#stalled()) {
      return { kind: 'stall', bytes: 0 };
    }
    const out = task.stage === 'data-out' || task.stage === 'status-out';
    const buffer = this.#buffer(0, out);
    const bytes = task.stage === 'data-out' ? task.data.length : out ? 0 : buffer.value & LENGTH;
    return buffer.ready ? { kind: task.stage, buffer, bytes } : null;
  }

  /* A packet to a device that has no room is sent again and again until it has: what the bus does then is waited for. */
  #earliest(chosen) {
    const now = Math.max(this.freeNs, this.clock.nanos);
    if (chosen.kind === 'out' && this.outBlockedNs !== null) {
      const tryNs = (OVERHEAD_BYTES + chosen.bytes) * BYTE_NS;
      return this.outBlockedNs + Math.ceil((now - this.outBlockedNs) / tryNs) * tryNs;
    }
    return chosen.kind === 'in' ? Math.max(this.freeNs, this.clock.nanos + POLL_NS) : now;
  }

  #go() {
    if (this.flight !== null) {
      return;
    }
    const chosen = this.#choose();
    if (chosen === null) {
      return;
    }
    const lasts = (OVERHEAD_BYTES + chosen.bytes) * BYTE_NS;
    const start = afterFrameStart(this.#earliest(chosen), lasts);
    this.flight = chosen;
    this.freeNs = start + lasts;
    this.landing.schedule(this.freeNs - this.clock.nanos);
  }

  #land() {
    const { flight } = this;
    this.flight = null;
    if (flight.kind === 'out') {
      this.#landOut(flight);
    } else if (flight.kind === 'in') {
      this.#landIn(flight);
    } else {
      this.#landControl(flight);
    }
    this.#go();
  }

  #landOut({ buffer, bytes }) {
    const packet = [];
    for (let next; packet.length < bytes && (next = this.line.take()) !== undefined;) {
      packet.push(next.byte);
    }
    this.outBlockedNs = null;
    this.inTurn = true;
    if (packet.length > 0) {
      this.#receive(buffer, packet);
    }
  }

  #receive(buffer, packet) {
    const pid = this.toggle.get(buffer.key) ?? 0;
    this.#expectPid(buffer, pid);
    this.toggle.set(buffer.key, pid ^ DATA1);
    if (packet.length > (buffer.value & LENGTH)) {
      this.#warn('the device offers less room than its descriptor says');
    }
    this.memory.set(packet, buffer.at);
    this.#finish(buffer, FULL | pid | packet.length);
  }

  /* A read by the host ends with a packet that is not full. */
  #landIn({ buffer, bytes }) {
    const pid = this.toggle.get(buffer.key) ?? 0;
    this.#expectPid(buffer, pid);
    this.toggle.set(buffer.key, pid ^ DATA1);
    this.inTurn = false;
    if (!(buffer.value & FULL)) {
      this.#warn('a packet was made available before it was full');
    }
    this.upward.push(...this.memory.subarray(buffer.at, buffer.at + bytes));
    this.#finish(buffer, pid);
    if (bytes < PACKET) {
      const whole = Uint8Array.from(this.upward);
      this.upward = [];
      this.events.up(whole);
    }
  }

  #landControl(flight) {
    const { task } = this;
    const { packet } = task;
    const asked = packet.readUInt16LE(6);
    if (flight.kind === 'setup') {
      this.memory.set(packet, SETUP_PACKET);
      task.stage = asked === 0 ? 'status-in' : packet[0] & 0x80 ? 'data-in' : 'data-out';
      this.usb.epStallArm = 0;
      this.usb.sieStatus |= SIE_SETUP_REC;
      this.usb.sieStatusUpdated();
    } else if (flight.kind === 'stall') {
      this.#endTask(null);
    } else if (flight.kind === 'data-in') {
      this.#expectPid(flight.buffer, task.toggle);
      task.toggle ^= DATA1;
      task.came.push(...this.memory.subarray(flight.buffer.at, flight.buffer.at + flight.bytes));
      this.#finish(flight.buffer, flight.buffer.value & DATA1);
      task.stage = flight.bytes < PACKET || task.came.length >= asked ? 'status-out' : 'data-in';
    } else if (flight.kind === 'data-out') {
      this.#expectPid(flight.buffer, DATA1);
      this.memory.set(task.data, flight.buffer.at);
      this.#finish(flight.buffer, FULL | DATA1 | task.data.length);
      task.stage = 'status-in';
    } else {
      this.#expectPid(flight.buffer, DATA1);
      this.#finish(flight.buffer, flight.kind === 'status-out' ? FULL | DATA1 : DATA1);
      this.#endTask(Buffer.from(task.came));
    }
  }

  #endTask(outcome) {
    this.task = null;
    this.patience.cancel();
    this.#resume(outcome);
  }
}

/* A transaction does not run into the next frame: it starts after the beginning of that frame instead. */
function afterFrameStart(ns, lasts) {
  const frame = Math.floor(ns / FRAME_NS) * FRAME_NS;
  const first = frame + START_OF_FRAME_BYTES * BYTE_NS;
  if (ns < first) {
    return first;
  }
  return ns + lasts <= frame + FRAME_NS ? ns : first + FRAME_NS;
}
