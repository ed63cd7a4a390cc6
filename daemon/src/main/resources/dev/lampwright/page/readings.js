// What the printer tells, part by part. Names and units come from the names of the signals, so new ones need nothing here.

import { duration, signalName, signalValue } from "./words.js";

export class Readings {
  #box = document.getElementById("readings");
  #when = document.getElementById("when");
  #keys = "";
  #units = {};
  #fields = new Map();

  tell({ state, silence, signals, units = {} }) {
    const keys = Object.keys(signals).join(" ") + JSON.stringify(units);
    if (keys !== this.#keys) {
      this.#keys = keys;
      this.#units = units;
      this.#build(Object.keys(signals));
    }
    for (const [key, tell] of this.#fields) {
      tell(signals[key], signals[errorOf(key)]);
    }
    for (const part of this.#box.children) {
      part.classList.toggle("untold", part.querySelector("dd:not(.not-known)") === null);
    }
    this.#when.textContent = silence ?? outlook(state, signals);
  }

  #build(keys) {
    this.#fields.clear();
    this.#box.replaceChildren(...[...grouped(keys)].map(([part, own]) => this.#part(part, own)));
  }

  #part(part, keys) {
    const box = document.createElement("div");
    box.className = "part";
    const title = document.createElement("h3");
    title.textContent = part;
    const list = document.createElement("dl");
    const nothing = document.createElement("p");
    nothing.className = "nothing";
    nothing.textContent = "unknown";
    box.append(title, nothing, list);
    const ordered = [...keys].sort((a, b) => rank(a) - rank(b));
    for (const key of ordered.filter((key) => !keys.some((other) => errorOf(other) === key))) {
      const { what, unit } = signalName(key, this.#units);
      const term = document.createElement("dt");
      term.textContent = what;
      const value = document.createElement("dd");
      list.append(term, value);
      const bar = BARS.has(what) ? this.#bar(box) : () => {};
      this.#fields.set(key, (now, error) => {
        const known = now !== null && typeof error === "number" && error > 0;
        value.textContent = signalValue(now, unit) + (known ? ` ± ${signalValue(error, unit)}` : "");
        value.classList.toggle("not-known", now === null);
        bar(now);
      });
    }
    return box;
  }

  #bar(box) {
    const bar = document.createElement("div");
    bar.className = "bar";
    bar.setAttribute("aria-hidden", "true");
    const fill = document.createElement("span");
    bar.append(fill);
    box.append(bar);
    return (share) => {
      fill.style.width = `${100 * Math.min(1, Math.max(0, share ?? 0))}%`;
    };
  }
}

const ORDER = ["now", "wanted", "ready in", "left", "heated", "cooled", "done"];
/** What comes first is last here; parts that are not here come after all. */
const PARTS = ["chamber", "nozzle", "bed", "job"];
const BARS = new Set(["heated", "done"]);

/** The signal that tells how far off a time may be. */
function errorOf(key) {
  return key.endsWith("_s") && !key.endsWith("_error_s") ? key.replace(/_s$/, "_error_s") : "";
}

function rank(key) {
  const place = ORDER.indexOf(signalName(key).what);
  return place < 0 ? ORDER.length : place;
}

function grouped(keys) {
  const parts = new Map();
  for (const key of keys) {
    const { part } = signalName(key);
    parts.set(part, [...(parts.get(part) ?? []), key]);
  }
  return new Map([...parts].sort(([a], [b]) => PARTS.indexOf(b) - PARTS.indexOf(a)));
}

/** When what goes on now will be over, if that is known. */
function outlook(state, signals) {
  const times = Object.entries(signals).filter(([key, value]) => key.endsWith(".ready_s") && value !== null);
  if (state === "warming" && times.length > 0) {
    return `ready in ${duration(Math.max(...times.map(([, seconds]) => seconds)))}`;
  }
  const left = signals["job.left_s"];
  if ((state === "printing" || state === "held") && typeof left === "number") {
    return `${duration(left)} left`;
  }
  return state === "warming" || state === "printing" ? "time left unknown" : "";
}
