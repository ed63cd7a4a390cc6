// What a look has beside its layers: the white lights, and whether it keeps still for a camera.

import { make, setText } from "./dom.js";
import { follow } from "./follow.js";
import { signalWords } from "./sentence.js";
import { capital, percent } from "./values.js";
import { say } from "./words.js";

const STEADY = "steady_for_camera";

export class Lights {
  #rows;
  #steady;
  #look = {};

  /** change is called with a look as it is to be, and a name for what was changed. */
  constructor(box, { dimmers, signals }, change) {
    this.#rows = dimmers.map(({ name }) => new LightRow(name, signals, (level) => change(withLevel(this.#look, name, level), `light ${name}`)));
    this.#steady = make("input", { type: "checkbox", onchange: () => change(without({ ...this.#look, [STEADY]: this.#steady.checked || undefined }), "") });
    box.replaceChildren(...this.#rows.map(({ element }) => element), make("label", { class: "tick" }, this.#steady, ` ${say("bench.steady")}`));
  }

  tell(look) {
    this.#look = look;
    this.#rows.forEach((row) => row.tell(look.dimmers?.[row.name]));
    this.#steady.checked = look[STEADY] === true;
  }
}

/** A light that is off is not named. */
function withLevel(look, name, level) {
  const dimmers = without({ ...look.dimmers, [name]: level === 0 ? undefined : level });
  return without({ ...look, dimmers: Object.keys(dimmers).length === 0 ? undefined : dimmers });
}

function without(object) {
  return Object.fromEntries(Object.entries(object).filter(([, value]) => value !== undefined));
}

/** A white light: at a level, or as bright as a signal says. */
class LightRow {
  #range;
  #output = make("output");
  #list;

  constructor(name, signals, put) {
    this.name = name;
    const id = `light-${name}`;
    this.#range = make("input", { id, type: "range", min: 0, max: 1, step: 0.01, oninput: () => put(Number(this.#range.value)) });
    this.#list = make("select", { "aria-label": say("bench.light.by", { light: name }), onchange: () => put(this.#chosen(signals)) });
    this.#list.append(new Option(say("bench.light.fixed"), ""), ...signals.map((signal) => new Option(capital(signalWords(signal.name)), signal.name)));
    this.element = make("div", { class: "slider" }, make("label", { for: id, text: name }), this.#range, this.#output, this.#list);
  }

  #chosen(signals) {
    const signal = signals.find(({ name }) => name === this.#list.value);
    return signal === undefined ? 1 : without(follow("", signal));
  }

  tell(level = 0) {
    const fixed = typeof level === "number";
    this.#range.disabled = !fixed;
    this.#range.value = fixed ? level : 1;
    this.#list.value = fixed ? "" : level.by;
    const words = fixed ? percent(level) : say("bench.opacity.by");
    setText(this.#output, words);
    this.#range.setAttribute("aria-valuetext", words);
  }
}
