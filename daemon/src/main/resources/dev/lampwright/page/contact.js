// How the page is connected to the daemon: waiting, live or lost. It is said at the top of the page, and kept for whoever has to know.

import { setText } from "./dom.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);

export class Contact {
  #now = "waiting";

  constructor() {
    this.#tell("waiting", "contact.waiting");
  }

  get isLive() {
    return this.#now === "live";
  }

  get isLost() {
    return this.#now === "lost";
  }

  beLive() {
    this.#tell("live", this.isLost ? "contact.again" : "contact.live");
    byId("entry").hidden = true;
  }

  /** The connection broke, or there is no place. */
  beLost(isFull) {
    this.#tell("lost", isFull ? "contact.full" : "contact.lost");
  }

  askForToken() {
    this.#tell("waiting", "contact.entry");
    byId("entry").hidden = false;
    byId("token").focus();
  }

  #tell(next, code) {
    this.#now = next;
    document.body.dataset.contact = next;
    setText(byId("contact"), say(code));
  }
}
