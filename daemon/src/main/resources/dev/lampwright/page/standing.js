// What has been asked for and counts: each with its end, and one press to give it back.

import { button, make, setText } from "./dom.js";
import { clock, duration, percent } from "./values.js";
import { isSaid, say } from "./words.js";

/** Below this, the time left is shown in running seconds. */
const SOON_S = 120;

export class Standing {
  #box = document.getElementById("standing");
  #desk;
  #items = new Map();

  constructor(desk) {
    this.#desk = desk;
  }

  tell({ asked = [], asked_more: more = 0 }) {
    const keys = asked.map(keyOf);
    for (const [key, { element }] of this.#items) {
      if (!keys.includes(key)) {
        this.#drop(key, element);
      }
    }
    asked.forEach((one, i) => {
      const item = this.#items.get(keys[i]) ?? this.#add(keys[i], one);
      const text = words(one);
      setText(item.words, text);
    });
    document.getElementById("standing-more").textContent = more > 0 ? say("asked.more", { count: more }) : "";
  }

  #add(key, one) {
    const text = make("span");
    const element = make("li", {}, text, button(say("asked.release"), () => this.#desk.ask(...release(one)), { "aria-label": say("asked.release.of", { what: nameOf(one) }) }));
    this.#box.append(element);
    this.#items.set(key, { element, words: text });
    return this.#items.get(key);
  }

  /** Whoever has just released something by keyboard is led on. */
  #drop(key, element) {
    if (element.contains(document.activeElement)) {
      (element.nextElementSibling?.querySelector("button") ?? document.getElementById("state")).focus();
    }
    element.remove();
    this.#items.delete(key);
  }
}

function keyOf({ ask, name = "" }) {
  return `${ask} ${name}`;
}

function words(one) {
  const { ask, value, left_s: left } = one;
  const until = left === undefined ? say("asked.until.changed") : left < SOON_S
    ? say("asked.for", { time: duration(left) }) : say("asked.until", { clock: clock(Date.now() + 1000 * left) });
  const shown = typeof value === "number" ? percent(value) : isSaid(`asked.${ask}.${value}`) ? say(`asked.${ask}.${value}`) : value;
  return say("asked.words", { what: nameOf(one), value: shown, until });
}

function nameOf({ ask, name }) {
  return isSaid(`asked.${ask}`) ? say(`asked.${ask}`, { name }) : [ask, name].filter(Boolean).join(" ");
}

/** What gives it back. */
function release({ ask, name }) {
  switch (ask) {
    case "work": return ["work", { work: "auto", dimmer: name }];
    case "pixels": return ["pixels", { pixels: { [name]: "auto" } }];
    default: return [ask, { [ask]: "auto" }];
  }
}
