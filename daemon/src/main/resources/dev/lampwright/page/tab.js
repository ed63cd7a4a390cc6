// What this tab hears: by the stream that all tabs of the browser share, or by one of its own where browsers have no shared workers. A
// tab that nobody sees hears nothing.

import { askAtTheDoor, Stream } from "./stream.js";

const STILL_HERE_MS = 5000;

export class Tab {
  #tell;
  #port = null;
  #own = null;
  #begun = false;
  #kept = false;

  /** tell is called with a topic and its message, as by Stream. */
  constructor(tell) {
    this.#tell = tell;
    document.addEventListener("visibilitychange", () => this.#say());
    addEventListener("pageshow", () => this.#say());
    addEventListener("pagehide", () => this.#port?.postMessage({ gone: true }));
    setInterval(() => this.#say(), STILL_HERE_MS);
  }

  /** Starts to listen, unless a token is needed; called again after one was entered. A stream that other tabs have open is not opened again. */
  async open() {
    const again = this.#begun;
    this.#begun = true;
    if (!again && (await askAtTheDoor()).status === 401) {
      this.#tell("stranger");
      return;
    }
    if (this.#port === null && this.#own === null) {
      this.#share();
    }
    this.#say(again);
  }

  /** Whether it is to hear all even while nobody sees it. */
  keep(kept) {
    this.#kept = kept;
    this.#say();
  }

  #share() {
    if (!("SharedWorker" in window)) {
      this.#listenAlone();
      return;
    }
    const worker = new SharedWorker("worker.js", { type: "module", name: "lampwright" });
    worker.addEventListener("error", () => this.#listenAlone());
    this.#port = worker.port;
    this.#port.addEventListener("message", ({ data: { topic, message } }) => this.#tell(topic, message));
    this.#port.start();
  }

  #listenAlone() {
    this.#port = null;
    this.#own = new Stream((topic, message) => this.#tell(topic, message));
    this.#say();
  }

  #say(again = false) {
    const seen = !document.hidden || this.#kept;
    if (!this.#begun) {
      return;
    }
    this.#port?.postMessage({ seen, again, kept: this.#kept });
    if (this.#own !== null && (again || this.#own.isOpen() !== seen)) {
      if (seen) {
        this.#own.open();
      } else {
        this.#own.close();
      }
    }
  }
}
