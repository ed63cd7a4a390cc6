// The stream of events: kept open, taken up again by itself, and watched, since a line that has gone quiet is as good as lost.

const TOPICS = ["layout", "report", "current", "troubles", "frame"];
const QUIET_MS = 6000;
const AGAIN_MS = 2000;

export class Stream {
  #listeners;
  #source = null;
  #lastId = "";
  #heardAt = 0;
  #again = 0;

  /** Listeners: one for each topic, and live, lost(words), stranger. */
  constructor(listeners) {
    this.#listeners = listeners;
    setInterval(() => this.#watch(), 1000);
  }

  open() {
    this.close();
    this.#heardAt = performance.now();
    const after = this.#lastId ? `?after=${encodeURIComponent(this.#lastId)}` : "";
    const source = new EventSource(`events${after}`);
    this.#source = source;
    for (const topic of TOPICS) {
      source.addEventListener(topic, (event) => this.#take(topic, event));
    }
    source.addEventListener("error", () => this.#fail(source));
  }

  close() {
    clearTimeout(this.#again);
    this.#source?.close();
    this.#source = null;
  }

  #take(topic, event) {
    this.#heardAt = performance.now();
    this.#lastId = event.lastEventId || this.#lastId;
    this.#listeners.live();
    this.#listeners[topic](JSON.parse(event.data));
  }

  #fail(source) {
    if (source !== this.#source) {
      return;
    }
    this.#listeners.lost("Connection lost");
    if (source.readyState === EventSource.CLOSED) {
      this.#retry();
    }
  }

  #watch() {
    if (this.#source !== null && performance.now() - this.#heardAt > QUIET_MS) {
      this.#listeners.lost("Connection lost");
      this.#retry();
    }
  }

  /** The browser has given up, so it is asked why: the page may be full, or want its token. */
  async #retry() {
    this.close();
    try {
      const response = await fetch("door", { signal: AbortSignal.timeout(5000) });
      if (response.status === 401) {
        this.#listeners.stranger();
        return;
      }
      if (response.ok) {
        this.open();
        return;
      }
      const { why } = await response.json();
      this.#listeners.lost(`No way in: ${why}`);
    } catch {
      // Nobody is there; that has been said.
    }
    this.#again = setTimeout(() => this.#retry(), AGAIN_MS);
  }
}
