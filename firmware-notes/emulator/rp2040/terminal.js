import { spawnSync } from 'node:child_process';
import fs from 'node:fs';

/** Maximum bytes read at once. */
const CHUNK = 4096;

/**
 * A pseudo-terminal whose slave the host opens like a serial port, through a symbolic link. `helper` is the program built from terminal.c.
 */
export class Terminal {
  constructor(helper, link) {
    this.helper = helper;
    this.link = link;
    this.master = -1;
    this.slave = '';
    this.chunk = Buffer.alloc(CHUNK);
    this.open = false;
  }

  get plugged() {
    return this.master >= 0;
  }

  #run(...words) {
    const done = spawnSync(this.helper, words, { stdio: [this.master, 'pipe', 'pipe'], encoding: 'utf8' });
    if (done.status !== 0) {
      throw new Error(done.error?.message ?? done.stderr.trim());
    }
    return done.stdout.trim();
  }

  /** Creates the terminal and the link. Throws if it cannot. */
  plug() {
    this.open = false;
    this.master = fs.openSync('/dev/ptmx', fs.constants.O_RDWR | fs.constants.O_NOCTTY | fs.constants.O_NONBLOCK);
    try {
      this.slave = this.#run('plug', this.link);
    } catch (failure) {
      fs.closeSync(this.master);
      this.master = -1;
      throw failure;
    }
  }

  #ownsLink() {
    try {
      return fs.readlinkSync(this.link) === this.slave;
    } catch {
      return false;
    }
  }

  /** Removes the link and closes the terminal. Does nothing if unplugged. */
  unplug() {
    if (!this.plugged) {
      return;
    }
    if (this.#ownsLink()) {
      fs.unlinkSync(this.link);
    }
    fs.closeSync(this.master);
    this.master = -1;
    this.open = false;
  }

  /** Discards what was sent and not read. */
  forget() {
    this.#run('forget');
  }

  /** What the host sent, without waiting; also detects whether somebody has the slave open (Linux, pty(7)). */
  read() {
    if (!this.plugged) {
      return this.chunk.subarray(0, 0);
    }
    try {
      const count = fs.readSync(this.master, this.chunk, 0, CHUNK, null);
      this.open = true;
      return this.chunk.subarray(0, count);
    } catch (failure) {
      this.open = failure.code === 'EAGAIN';
      return this.chunk.subarray(0, 0);
    }
  }

  /** Sends to the host, without waiting. Returns how many bytes were accepted. */
  write(bytes) {
    if (!this.open) {
      return 0;
    }
    try {
      return fs.writeSync(this.master, bytes);
    } catch {
      return 0;
    }
  }
}
