// Whoever makes a look plays the printer: its state, and every signal that the look follows.

import { Choice } from "./choice.js";
import { button, make, setText } from "./dom.js";
import { usualBounds, usualValue } from "./follow.js";
import { signalValue, signalWords } from "./sentence.js";
import { capital } from "./values.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);
/** As it is, and not played. */
const NOW = "now";

export class Player {
  #state = NOW;
  #values = {};
  #choice = new Choice(say("bench.play.state"), (state) => this.#play(state));
  #sliders = new Map();
  #onChange;
  #report = null;
  #replay;

  /** onChange is called whenever the printer does something else, with whether somebody plays it now, or the guards are on or off. */
  constructor(onChange) {
    this.#onChange = onChange;
    this.#choice.tell(NOW);
    byId("play-state").replaceChildren(this.#choice.element);
    byId("guards").addEventListener("change", () => onChange(false));
    byId("play-part").open = matchMedia("(min-width: 64rem)").matches;
  }

  /** What the printer can do. */
  lay({ states, signals }) {
    this.#choice.offer([[NOW, say("bench.play.now")], ...states.map((state) => [state, say(`state.${state}`)])]);
    this.#sliders = new Map(signals.map((signal) => [signal.name, new SignalSlider(signal, (value) => this.#set(signal.name, value))]));
    this.#values = Object.fromEntries(signals.map(({ name, now }) => [name, this.#values[name] ?? now ?? null]));
    this.#tell();
  }

  /** Whether the light is as the guards leave it. */
  get guarded() {
    return byId("guards").checked;
  }

  /** What the printer does, as a preview is asked for; undefined for what it really does. */
  get printer() {
    return this.#state === NOW ? undefined : { state: this.#state, signals: this.#values };
  }

  /** What the printer really does. */
  report(report) {
    this.#report = report;
    if (this.#state === NOW) {
      Object.assign(this.#values, report.signals);
      this.#tell();
    }
  }

  /** A recording is replayed: what the printer does in it, in words, or undefined if none is any more. */
  tellReplay(words) {
    this.#replay = words;
    this.#choice.tell(words === undefined ? this.#state : null);
    this.#tellSum();
  }

  /** Which signals the look follows: these come first, the others are put away. */
  follow(names) {
    const followed = [...this.#sliders].filter(([name]) => names.includes(name));
    const others = [...this.#sliders].filter(([name]) => !names.includes(name));
    place(byId("play-signals"), followed);
    place(byId("play-others"), others);
    byId("play-more").hidden = others.length === 0;
  }

  #play(state) {
    this.#state = state;
    for (const name of this.#sliders.keys()) {
      this.#values[name] = state === NOW ? this.#report?.signals?.[name] ?? null : usualValue(name, state);
    }
    this.#tell();
    this.#onChange(true);
  }

  #set(name, value) {
    if (this.#state === NOW) {
      this.#state = this.#report?.state ?? "printing";
      this.#choice.tell(this.#state);
    }
    this.#values = { ...this.#values, [name]: value };
    this.#tell();
    this.#onChange(true);
  }

  #tell() {
    this.#tellSum();
    this.#sliders.forEach((slider, name) => slider.tell(this.#values[name] ?? null));
  }

  #tellSum() {
    setText(byId("play-sum"), this.#replay ?? (this.#state === NOW ? say("bench.play.now") : say(`state.${this.#state}`)));
  }
}

/** Leaves alone what is in its place. */
function place(box, sliders) {
  const elements = sliders.map(([, { element }]) => element);
  if (elements.some((element, i) => box.children[i] !== element) || box.children.length !== elements.length) {
    box.replaceChildren(...elements);
  }
}

class SignalSlider {
  #name;
  #range;
  #output = make("output", { "aria-live": "off" });
  #forget;

  constructor({ name, share, low, high }, put) {
    this.#name = name;
    const known = share || low !== undefined ? [low ?? 0, high ?? 1] : spanOf(name);
    const id = `play-${name}`;
    this.#range = make("input", { id, type: "range", min: Math.min(...known), max: Math.max(...known), step: (Math.max(...known) - Math.min(...known)) / 100, oninput: () => put(Number(this.#range.value)) });
    this.#forget = button("?", () => put(null), { class: "back", "aria-label": say("bench.play.forget", { signal: signalWords(name) }), title: say("bench.play.forget", { signal: signalWords(name) }) });
    this.element = make("div", { class: "slider" }, make("label", { for: id, text: capital(signalWords(name)) }), this.#range, this.#output, this.#forget);
  }

  tell(value) {
    if (value !== null) {
      this.#range.value = value;
    }
    const words = signalValue(this.#name, value);
    this.#range.classList.toggle("unknown", value === null);
    this.#range.setAttribute("aria-valuetext", words);
    setText(this.#output, words);
  }
}

/** What a slider spans of a signal that has no bounds of its own. */
function spanOf(name) {
  if (name.endsWith("_C")) {
    return [0, name.startsWith("nozzle") ? 300 : 120];
  }
  return name.endsWith("K_per_s") ? [-2, 2] : usualBounds(name);
}
