// The temperatures, in one line. What the printer does not report is not there.

import { make, setText } from "./dom.js";
import { degrees, partName } from "./values.js";
import { say } from "./words.js";

/** A part that cools is marked as hot from this share of its cooling on; at 0 it may be touched. */
const HOT = 0.02;
const ORDER = ["bed", "nozzle", "chamber"];
const rank = (part) => (ORDER.indexOf(part) + ORDER.length + 1) % (ORDER.length + 1);

export class Heat {
  #box = document.getElementById("heat");
  #items = new Map();

  tell({ signals }) {
    const told = temperatures(signals);
    for (const [part, item] of this.#items) {
      if (!told.some((one) => one.part === part)) {
        item.remove();
        this.#items.delete(part);
      }
    }
    for (const one of told) {
      const text = heatWords(one);
      const item = this.#items.get(one.part) ?? this.#add(one.part);
      item.classList.toggle("hot", one.hot);
      setText(item, text);
    }
    document.getElementById("no-heat").hidden = told.length > 0;
  }

  #add(part) {
    const item = make("li");
    this.#items.set(part, item);
    this.#box.append(item);
    return item;
  }
}

/** Every part whose temperature is known: now, target (null without one; 0 if it is off), and whether it is still hot to the touch. */
export function temperatures(signals) {
  return Object.entries(signals)
    .filter(([key, value]) => key.endsWith(".actual_C") && value !== null)
    .map(([key, now]) => {
      const part = key.replace(".actual_C", "");
      const target = signals[`${part}.setpoint_C`] ?? null;
      return { part, now, target, hot: (signals[`${part}.cooling`] ?? 0) > HOT };
    })
    .sort((a, b) => rank(a.part) - rank(b.part));
}

/** A temperature in words. */
export function heatWords({ part, now, target, hot }) {
  const heated = target !== null && target > 0;
  const code = heated ? "heat.both" : hot ? "heat.hot" : "heat.off";
  return say(code, { part: partName(part), now: degrees(now), target: degrees(target ?? 0) });
}
