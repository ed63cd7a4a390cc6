// One of several, as chips: radio buttons by the pattern of WAI-ARIA, so that arrow keys choose and Tab goes past.

import { make, setText } from "./dom.js";

const WAYS = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

export class Choice {
  #chips = new Map();
  #value = null;
  #onChoose;

  /** label is said of the group; onChoose is called with the value that somebody chooses. */
  constructor(label, onChoose) {
    this.#onChoose = onChoose;
    this.element = make("div", { class: "chips", role: "radiogroup", "aria-label": label });
  }

  /** What there is to choose from, as pairs of a value and its words. */
  offer(options) {
    if (options.map(([value]) => value).join("\n") !== [...this.#chips.keys()].join("\n")) {
      this.#chips = new Map(options.map(([value]) => [value, this.#chip(value)]));
      this.element.replaceChildren(...this.#chips.values());
    }
    options.forEach(([value, words]) => setText(this.#chips.get(value), words));
    this.tell(this.#value);
  }

  /** Which one it is; one that is not among them leaves all unchosen. */
  tell(value) {
    this.#value = value;
    const reached = this.#chips.has(value) ? value : this.#chips.keys().next().value;
    this.#chips.forEach((chip, one) => {
      chip.setAttribute("aria-checked", one === value);
      chip.tabIndex = one === reached ? 0 : -1;
    });
  }

  #chip(value) {
    return make("button", { type: "button", role: "radio", "data-value": value, onclick: () => this.#choose(value), onkeydown: (event) => this.#step(event, value) });
  }

  #step(event, value) {
    const way = WAYS[event.key];
    if (way !== undefined && !event.altKey && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      const values = [...this.#chips.keys()];
      const next = values.at((values.indexOf(value) + way) % values.length);
      this.#choose(next);
      this.#chips.get(next)?.focus();
    }
  }

  #choose(value) {
    this.tell(value);
    this.#onChoose(value);
  }
}
