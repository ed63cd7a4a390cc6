// A layer that is opened: all that can be said of it, with only those keys that it has a use for.

import { Choice } from "./choice.js";
import { make } from "./dom.js";
import { fieldFor, keyWords, MovementField } from "./fields.js";
import { applies, cleaned, withExtent, withKeys, withPaint } from "./look_edit.js";
import { isSaid, say } from "./words.js";

/** In which group the keys of a layer stand. Those that are in none come last, so that a newer daemon's keys are there too. */
const GROUPS = {
  paint: ["paint", "colour", "colours", "interpolation", "steps", "stops", "ring", "spread", "brightest_K", "strike_K", "strikes_per_px_s", "diffusion_px2_per_s", "time_constant_s"],
  extent: ["extent", "width_px", "tail_px", "softness_px", "repeat_px", "density", "glint_s", "seed"],
  where: ["zone"],
  follows: ["by", "from", "to"],
  moves: ["speed_px_per_s", "speed_zones_per_s", "cycle_s", "back_and_forth"],
  rhythm: ["rhythm", "edge_s", "phase"],
  strength: ["opacity_by", "opacity_from", "opacity_to", "dark_below", "full_above", "blend"],
};
/** What has a control of its own beside the sentence, and what one control does for several keys. */
const ELSEWHERE = new Set(["opacity", "hidden", "paint", "extent", "speed_px_per_s", "speed_zones_per_s"]);

export class LayerForm {
  #vocabulary;
  #change;
  #layer = null;
  #paints;
  #extents;
  #groups = new Map();
  #fields = new Map();
  element = make("div", { class: "form" });

  /** inTime shows what becomes of it in time; change is called with the layer as it is to be, and the name of what was changed. */
  constructor(vocabulary, inTime, change) {
    this.#vocabulary = vocabulary;
    this.#change = change;
    this.#paints = this.#kinds("paint", vocabulary.paints, withPaint);
    this.#extents = this.#kinds("extent", vocabulary.extents, withExtent);
    const known = new Set(Object.values(GROUPS).flat());
    const rest = vocabulary.keys.layer.map(({ name }) => name).filter((name) => !known.has(name));
    for (const [group, names] of Object.entries({ ...GROUPS, rest })) {
      this.#addGroup(group, names);
    }
    this.#groups.get("rhythm").box.append(make("div", { class: "in-time" }, inTime, make("p", { class: "axis", "aria-hidden": "true" },
      make("span", { text: say("bench.time", { seconds: 0 }) }), make("span", { text: say("bench.time", { seconds: 10 }) }))));
  }

  #kinds(key, words, changed) {
    const choice = new Choice(keyWords(key), (word) => this.#change(changed(this.#layer, word, this.#vocabulary), key));
    choice.offer(words.map((word) => [word, kindWords(key, word)]));
    return choice;
  }

  #addGroup(group, names) {
    const box = make("fieldset", { "data-group": group }, make("legend", { text: say(`bench.group.${group}`) }));
    const choice = { paint: this.#paints, extent: this.#extents }[group];
    const body = make("div", { class: "fields" }, ...(choice === undefined ? [] : [choice.element]));
    box.append(body);
    this.element.append(box);
    const keys = names.map((name) => this.#vocabulary.keys.layer.find((key) => key.name === name)).filter((key) => key !== undefined && !ELSEWHERE.has(key.name));
    this.#groups.set(group, { box, body, keys, always: choice === undefined ? 0 : 1 });
  }

  #field(key) {
    if (!this.#fields.has(key.name)) {
      const change = (keys) => this.#change(cleaned(withKeys(this.#layer, keys), this.#vocabulary), key.name);
      this.#fields.set(key.name, key.name === "cycle_s" ? new MovementField(change) : fieldFor(key, this.#vocabulary, change));
    }
    return this.#fields.get(key.name);
  }

  /** The layer as it is, and what is wrong with it, by key. */
  tell(layer, mistakes) {
    this.#layer = layer;
    this.#paints.tell(layer.paint ?? "solid");
    this.#extents.tell(layer.extent ?? "all");
    const usual = (name) => this.#vocabulary.keys.layer.find((key) => key.name === name)?.usual;
    for (const { box, body, keys, always } of this.#groups.values()) {
      const fields = keys.filter((key) => applies(key, layer, usual)).map((key) => this.#field(key));
      arrange(body, always, fields.map(({ element }) => element));
      fields.forEach((field) => field.tell(layer));
      box.hidden = always + fields.length === 0;
    }
    const wrong = new Set(mistakes.map(({ key }) => key));
    this.element.querySelectorAll("[data-key]").forEach((field) => {
      field.querySelectorAll("input, select").forEach((control) => control.setAttribute("aria-invalid", wrong.has(field.dataset.key)));
    });
  }
}

function kindWords(key, word) {
  const code = key === "paint" ? `bench.paint.is.${word}` : `bench.extent.is.${word}`;
  return isSaid(code) ? say(code) : word;
}

/** Puts elements in their places behind those that always stand there, and moves none that is in its place already. */
function arrange(body, always, elements) {
  [...body.children].slice(always).filter((child) => !elements.includes(child)).forEach((child) => child.remove());
  elements.forEach((element, i) => {
    if (body.children[always + i] !== element) {
      body.insertBefore(element, body.children[always + i] ?? null);
    }
  });
}
