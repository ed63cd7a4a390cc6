// What is asked for. Every answer is shown and read out, a refusal with its reason.

import { reason, say } from "./words.js";

const LONGEST_MS = 8000;
/** What is not seen while there is a fault. */
const BEHIND_A_FAULT = ["look", "pixels"];

export class Desk {
  #answer = document.getElementById("answer");
  #calm = true;
  #onStranger;

  /** onStranger is called when the page is not let in any more. */
  constructor(onStranger) {
    this.#onStranger = onStranger;
  }

  /** Whether what is asked for can be seen at once: a fault comes first. */
  tell({ alarm }) {
    this.#calm = alarm === "normal";
  }

  /** Asks for something; whether it was done. */
  async ask(word, what) {
    try {
      const response = await fetch(`ask/${word}`, {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify(what),
        signal: AbortSignal.timeout(LONGEST_MS),
      });
      const answer = await response.json();
      if (response.status === 401) {
        this.#onStranger();
      }
      this.#say(answer.done ? this.#done(word, what[word]) : say("refused", { why: reason(answer) }), answer.done);
      return answer.done;
    } catch {
      this.#say(say("refused.silent"), false);
      return false;
    }
  }

  #done(word, value) {
    const given = typeof value === "object" ? Object.values(value)[0] : value;
    if (given === "auto") {
      return say("done.auto");
    }
    return say(!this.#calm && BEHIND_A_FAULT.includes(word) ? "done.later" : `done.${word}`);
  }

  /** Takes the last answer away: it is of another time. */
  forget() {
    this.#say("", true);
  }

  #say(text, done) {
    this.#answer.textContent = text;
    this.#answer.classList.toggle("refused", !done);
  }
}

/** Asks again and again while something is dragged: one at a time, and of those that come in the meantime only the newest. */
export class Newest {
  #ask;
  #busy = false;
  #next = null;

  /** ask is called with each value that is sent, and answers when it is done. */
  constructor(ask) {
    this.#ask = ask;
  }

  /** Whether something has not been answered yet. */
  get busy() {
    return this.#busy;
  }

  async put(value) {
    this.#next = { value };
    if (this.#busy) {
      return;
    }
    this.#busy = true;
    try {
      while (this.#next !== null) {
        const { value: now } = this.#next;
        this.#next = null;
        await this.#ask(now);
      }
    } finally {
      this.#busy = false;
    }
  }
}
