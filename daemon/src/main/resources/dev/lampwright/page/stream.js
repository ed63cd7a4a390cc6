// The stream of events: kept open, taken up again by itself, and watched, since a line that has gone quiet is as good as lost.

const TOPICS = ["layout", "report", "current", "troubles", "frame", "shelf", "strips"];
const QUIET_MS = 6000;
const AGAIN_MS = 2000;

export class Stream {
  #tell;
  #source = null;
  #open = false;
  #lastId = "";
  #heardAt = 0;
  #again = 0;
  /** Separates what was asked before the stream was last opened from what was asked since. */
  #turn = 0;

  /**
   * tell is called with a topic and its message. Beside those of the daemon there are live, at the first event of a connection; lost, with
   * the refusal if there is no place (null if the connection broke); and stranger, if a token is needed.
   */
  constructor(tell) {
    this.#tell = tell;
    setInterval(() => this.#watch(), 1000);
  }

  /** Whether it is wanted, be it connected just now or not. */
  isOpen() {
    return this.#open;
  }

  open() {
    this.close();
    this.#open = true;
    this.#connect();
  }

  close() {
    this.#open = false;
    this.#drop();
    this.#lastId = "";
  }

  #connect() {
    this.#heardAt = performance.now();
    const after = this.#lastId ? `?after=${encodeURIComponent(this.#lastId)}` : "";
    const source = new EventSource(`events${after}`);
    let live = false;
    this.#source = source;
    for (const topic of TOPICS) {
      source.addEventListener(topic, (event) => {
        this.#heardAt = performance.now();
        this.#lastId = event.lastEventId || this.#lastId;
        if (!live) {
          live = true;
          this.#tell("live");
        }
        this.#tell(topic, JSON.parse(event.data));
      });
    }
    source.addEventListener("error", () => {
      live = false;
      this.#fail(source);
    });
  }

  #drop() {
    this.#turn++;
    clearTimeout(this.#again);
    this.#source?.close();
    this.#source = null;
  }

  #fail(source) {
    if (source !== this.#source) {
      return;
    }
    if (source.readyState === EventSource.CLOSED) {
      this.#retry();
    } else {
      this.#tell("lost", null);
    }
  }

  #watch() {
    if (this.#source !== null && performance.now() - this.#heardAt > QUIET_MS) {
      this.#tell("lost", null);
      this.#retry();
    }
  }

  /** The browser has given up. This asks the daemon why: the page may be full, or need its token. */
  async #retry() {
    this.#drop();
    const turn = this.#turn;
    const { status, refusal } = await askAtTheDoor();
    if (turn !== this.#turn || !this.#open) {
      return;
    }
    if (status === 401) {
      this.#open = false;
      this.#tell("stranger");
    } else if (status === 200) {
      this.#connect();
    } else {
      this.#tell("lost", refusal);
      this.#again = setTimeout(() => this.#retry(), AGAIN_MS);
    }
  }
}

/** Whether this browser is let in: the status of the answer, and the refusal if there is one; 0 and nothing if nobody answers. */
export async function askAtTheDoor() {
  try {
    const response = await fetch("door", { signal: AbortSignal.timeout(5000) });
    return { status: response.status, refusal: await response.json() };
  } catch {
    return { status: 0, refusal: null };
  }
}
