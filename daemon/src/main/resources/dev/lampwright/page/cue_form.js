// A cue that is opened: when its look is on, and how it comes. Keys that have no control here stay as they are.

import { make } from "./dom.js";
import { usualBounds } from "./follow.js";
import { signalWords } from "./sentence.js";
import { capital } from "./values.js";
import { say } from "./words.js";

/** Keys that a cue can have instead of a state. */
const OTHERS = ["any", "all", "alarm", "event"];
let count = 0;

export class CueForm {
  #cue;
  #change;
  #signals;
  element;

  /** change is called with the cue as it is to be. */
  constructor(cue, { states, signals }, looks, change) {
    this.#cue = cue;
    this.#change = change;
    this.#signals = signals;
    this.element = make("div", { class: "cue-fields" },
      ...(OTHERS.some((key) => cue[key] !== undefined) || Array.isArray(cue.state) ? [] : [this.#stateField(states)]),
      this.#signalField(), ...(cue.signal === undefined ? [] : [this.#numberField("above", "bench.cue.from"), this.#numberField("below", "bench.cue.to")]),
      this.#choice("look", "bench.cue.look", looks.map((look) => [look, look]), (look) => this.#put({ look })),
      this.#numberField("fade_s", "bench.cue.fade", { min: 0, max: 600 }));
  }

  /** Keys that are undefined are taken out. */
  #put(keys) {
    this.#change(Object.fromEntries(Object.entries({ ...this.#cue, ...keys }).filter(([, value]) => value !== undefined)));
  }

  #stateField(states) {
    const offered = [...new Set([...states, ...(this.#cue.state === undefined ? [] : [this.#cue.state])])];
    const options = [["", say("bench.cue.whatever")], ...offered.map((state) => [state, say(`state.${state}`)])];
    return this.#choice("state", "bench.play.state", options, (state) => this.#put({ state: state || undefined }));
  }

  /** A signal needs a bound to be of any use. */
  #signalField() {
    const options = [["", say("bench.cue.no_signal")], ...this.#signals.map(({ name }) => [name, capital(signalWords(name))])];
    return this.#choice("signal", "bench.cue.signal", options, (name) => {
      const signal = this.#signals.find((one) => one.name === name);
      const [low, high] = signal === undefined ? [] : signal.share ? [0, 1] : usualBounds(name);
      this.#put({ signal: signal?.name, above: signal === undefined ? undefined : (low + high) / 2, below: undefined, margin: undefined });
    });
  }

  #choice(key, code, options, take) {
    const id = `cue-field-${++count}`;
    const list = make("select", { id, "data-cue": `field ${key}`, onchange: () => take(list.value) });
    list.append(...options.map(([value, words]) => new Option(words, value)));
    list.value = this.#cue[key] ?? "";
    return make("div", { class: "field" }, make("label", { for: id, text: say(code) }), list);
  }

  #numberField(key, code, limits = {}) {
    const id = `cue-field-${++count}`;
    const box = make("input", { id, type: "number", step: "any", ...limits, value: this.#cue[key], "data-cue": `field ${key}` });
    box.addEventListener("change", () => this.#put({ [key]: box.value === "" ? undefined : Number(box.value) }));
    return make("div", { class: "field" }, make("label", { for: id, text: say(code) }), box);
  }
}
