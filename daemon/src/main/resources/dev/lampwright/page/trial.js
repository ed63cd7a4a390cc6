// The look on the real strip, unsaved and for a minute. It ends by itself, with this tab, or with a fault.

import { Newest } from "./asks.js";
import { ask, lease, whyNot } from "./bench_server.js";
import { setText } from "./dom.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);
const FOR_S = 60;
/** The daemon ends what has not been kept for ten seconds. */
const KEEP_MS = 3000;

export class Trial {
  #name;
  #look;
  #tell;
  #onRun;
  #endsAt = 0;
  #ticks = 0;
  #keeps = 0;
  #wanted = new Newest((look) => this.#put(look));

  /** tell is called with what has to be known, onRun with whether the look is on the strip, and the seconds that are left. */
  constructor(tell, onRun) {
    this.#tell = tell;
    this.#onRun = onRun;
    byId("try").addEventListener("click", () => this.#running ? this.end(say("bench.try.ended")) : this.#begin());
    addEventListener("pagehide", () => this.#stop());
    this.#show();
  }

  get #running() {
    return this.#endsAt !== 0;
  }

  /** Another look is on the bench: it goes on the strip as well, for as long as is left. */
  follow(name, look) {
    this.#name = name;
    this.#look = look;
    if (this.#running) {
      this.#wanted.put(look);
    }
  }

  async #begin() {
    if (await this.#put(this.#look)) {
      this.#endsAt = performance.now() + 1000 * FOR_S;
      this.#ticks = setInterval(() => this.#show(), 250);
      this.#keeps = setInterval(() => this.#keep(), KEEP_MS);
      this.#tell(say("bench.try.begun", { seconds: FOR_S }), true);
      this.#show();
    }
  }

  async #put(look) {
    const left = this.#running ? Math.ceil((this.#endsAt - performance.now()) / 1000) : FOR_S;
    if (left < 1) {
      return false;
    }
    const response = await ask("POST", "try", { name: this.#name, look, for_s: left, lease: lease() }, "t");
    const done = response.status === 200;
    if (!done && !(this.#running && response.status === 422)) {
      this.#stop();
      this.#tell(response.status === 422 ? say("bench.try.mistakes") : whyNot(response), false);
    }
    return done;
  }

  async #keep() {
    const response = await ask("POST", "try/keep", { lease: lease() }, "t");
    if (response.status === 200) {
      this.#endsAt = performance.now() + 1000 * response.answer.left_s;
    } else if (response.status !== 0 && this.#running) {
      this.#stop();
      this.#tell(whyNot(response), false);
    }
  }

  /** Takes it off the strip. */
  async end(words) {
    this.#stop();
    this.#tell(words, true);
    await ask("POST", "try/end", { lease: lease() }, "t");
  }

  #stop() {
    this.#endsAt = 0;
    clearInterval(this.#ticks);
    clearInterval(this.#keeps);
    this.#show();
  }

  #show() {
    const left = this.#running ? Math.ceil((this.#endsAt - performance.now()) / 1000) : 0;
    if (this.#running && left <= 0) {
      this.#stop();
      this.#tell(say("bench.try.over"), true);
      return;
    }
    byId("try").setAttribute("aria-pressed", this.#running);
    setText(byId("try-words"), this.#running ? say("bench.try.stop", { seconds: left }) : say("bench.try"));
    this.#onRun(this.#running, left);
  }
}
