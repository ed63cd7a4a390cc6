// Controls for the keys of a layer: one for each kind of key that the vocabulary has.

import { Choice } from "./choice.js";
import { button, enable, make } from "./dom.js";
import { follow } from "./follow.js";
import { Colours } from "./picker.js";
import { rhythmWords, signalWords } from "./sentence.js";
import { capital } from "./values.js";
import { isSaid, say } from "./words.js";

/** What a slider spans where the key allows more than anybody needs; more can be typed. Our own choice. */
const COMFORT = {
  width_px: [0.5, 20], softness_px: [0, 20], tail_px: [0, 30], repeat_px: [1, 60], glint_s: [0.1, 10], spread: [0, 5],
  brightest_K: [1000, 3000], strike_K: [100, 1500], strikes_per_px_s: [0, 12], diffusion_px2_per_s: [0, 10], time_constant_s: [0.1, 4],
  edge_s: [0, 2], phase: [0, 1], density: [0, 1], seed: [1, 50],
  speed_px_per_s: [0.5, 20], speed_zones_per_s: [0.02, 1], cycle_s: [0.5, 60],
};
/** The ways from one colour to the next. */
const MIXTURES = ["oklab", "oklch shorter"];
const MOVES = ["cycle_s", "speed_px_per_s", "speed_zones_per_s"];
/** Rhythms that are offered before those of sea charts. */
const FIRST_RHYTHMS = ["F", "swell 4s", "on 0.5s off 1.5s"];

/** Those that are not of sea charts are said in words. */
const OWN_RHYTHM = /^(swell|on) /;

let count = 0;

/** The name of a key, in words. */
export function keyWords(name) {
  return isSaid(`bench.key.${name}`) ? say(`bench.key.${name}`) : name;
}

/**
 * A control for a key: an element, and tell, which is called with the layer. change is called with what somebody gives the key, undefined
 * for its default.
 */
export function fieldFor(key, vocabulary, change) {
  const put = (value) => change({ [key.name]: value });
  switch (key.kind) {
    case "number":
    case "whole": return new NumberField(key, put);
    case "flag": return new FlagField(key, put);
    case "colour": return new ColourField(key, true, (colours) => put(colours[0]));
    case "colours": return new ColourField(key, false, put);
    case "signal": return new SignalField(key, vocabulary, change);
    case "zone": return new ZoneField(key, vocabulary, put);
    case "rhythm": return new RhythmField(key, vocabulary, put);
    case "word":
    case "interpolation": return new WordField(key, put);
    case "numbers": return new TextField(key, (text) => put(numbers(text)), (value) => (value ?? []).join(", "));
    default: return new TextField(key, put, (value) => value ?? "");
  }
}

/** The name of a word that a key can be, in words. */
function choiceWords(key, choice) {
  const word = choice.replace(/[^a-z]/g, "_");
  const code = key === "blend" ? `bench.blend.${word}` : `bench.interpolation.${word}`;
  return isSaid(code) ? say(code) : choice;
}

/** A line with a name, a control, and a way back to the default. */
function line(name, id, ...controls) {
  const row = make("div", { class: "field" }, make("label", { for: id, text: keyWords(name) }), ...controls);
  row.dataset.key = name;
  return row;
}

function newId() {
  return `field-${++count}`;
}

function backTo(name, action) {
  return button("↺", action, { class: "back", "aria-label": say("bench.default", { key: keyWords(name) }), title: say("bench.default", { key: keyWords(name) }) });
}

/** A number: typed, or slid within what is usual. */
class NumberField {
  #key;
  #range;
  #box;
  #back;

  constructor(key, put) {
    this.#key = key;
    const id = newId();
    const [low, high] = COMFORT[key.name] ?? [key.low ?? 0, key.high ?? 1];
    const step = key.kind === "whole" ? 1 : stepOf(high - low);
    const take = (text) => text !== "" && Number.isFinite(Number(text)) && put(Number(text));
    this.#range = make("input", { type: "range", min: low, max: high, step, tabindex: -1, "aria-label": keyWords(key.name), oninput: () => take(this.#range.value) });
    this.#box = make("input", { id, type: "number", min: key.low, max: key.high, step: "any", onchange: () => this.#box.value === "" ? put(undefined) : take(this.#box.value) });
    this.#box.addEventListener("keydown", (event) => nudge(event, this.#box, step, take));
    this.#back = backTo(key.name, () => put(undefined));
    const slides = key.low !== undefined && Math.abs(key.high) < 1e8;
    this.element = line(key.name, id, slides ? this.#range : "", this.#box, this.#back);
  }

  tell(layer) {
    const value = layer[this.#key.name];
    const shown = value ?? this.#key.usual;
    this.#range.value = shown ?? this.#range.min;
    tellBox(this.#box, value ?? "", shown ?? "");
    enable(this.#back, value !== undefined);
  }
}

/** Arrow keys go by the slider's step; the browser's own step would be one. */
function nudge(event, box, step, take) {
  const way = { ArrowUp: 1, ArrowDown: -1 }[event.key];
  if (way !== undefined) {
    event.preventDefault();
    const from = Number(box.value === "" ? box.placeholder : box.value);
    const next = Number((from + way * step).toFixed(6));
    const bounded = Math.min(box.max === "" ? Infinity : Number(box.max), Math.max(box.min === "" ? -Infinity : Number(box.min), next));
    box.value = bounded;
    take(String(bounded));
  }
}

/** Leaves alone what somebody is typing. */
function tellBox(box, value, usual) {
  box.placeholder = usual;
  if (document.activeElement !== box || Number(box.value) !== Number(value)) {
    box.value = value;
  }
}

/** About a hundred steps, each a round number. */
function stepOf(span) {
  const size = 10 ** Math.floor(Math.log10(span / 100));
  return [1, 2, 5, 10].map((factor) => factor * size).find((step) => span / step <= 120);
}

class FlagField {
  #key;
  #box;

  constructor(key, put) {
    this.#key = key;
    const id = newId();
    this.#box = make("input", { id, type: "checkbox", onchange: () => put(this.#box.checked === (key.usual ?? false) ? undefined : this.#box.checked) });
    this.element = line(key.name, id, this.#box);
  }

  tell(layer) {
    this.#box.checked = layer[this.#key.name] ?? this.#key.usual ?? false;
  }
}

class WordField {
  #key;
  #list;

  constructor(key, put) {
    this.#key = key;
    const id = newId();
    this.#list = make("select", { id, onchange: () => put(this.#list.value === key.usual ? undefined : this.#list.value) });
    this.#list.append(...(key.choices ?? MIXTURES).map((choice) => new Option(choiceWords(key.name, choice), choice)));
    this.element = line(key.name, id, this.#list);
  }

  tell(layer) {
    this.#list.value = layer[this.#key.name] ?? this.#key.usual;
  }
}

class TextField {
  #key;
  #box;
  #shown;

  constructor(key, put, shown) {
    this.#key = key;
    this.#shown = shown;
    const id = newId();
    this.#box = make("input", { id, type: "text", spellcheck: "false", onchange: () => put(this.#box.value.trim() === "" ? undefined : this.#box.value.trim()) });
    this.element = line(key.name, id, this.#box);
  }

  tell(layer) {
    this.#box.value = this.#shown(layer[this.#key.name]);
  }
}

class ColourField {
  #key;
  #colours;
  #single;

  constructor(key, single, put) {
    this.#key = key;
    this.#single = single;
    this.#colours = new Colours(keyWords(key.name), single, put);
    this.element = make("div", { class: "field wide", "data-key": key.name }, this.#colours.element);
  }

  tell(layer) {
    const value = layer[this.#key.name];
    this.#colours.tell(this.#single ? [value ?? ""] : value ?? []);
  }
}

/** A signal. One that does not run from 0 to 1 by itself is given bounds to begin with. */
class SignalField {
  #key;
  #list;

  constructor(key, { signals }, change) {
    this.#key = key;
    const id = newId();
    const prefix = key.name.slice(0, -"by".length);
    const none = prefix === "" ? [] : [new Option(say("bench.signal.none"), "")];
    this.#list = make("select", { id, onchange: () => change(follow(prefix, signals.find(({ name }) => name === this.#list.value))) });
    this.#list.append(...none, ...signals.map(({ name }) => new Option(capital(signalWords(name)), name)));
    this.element = line(key.name, id, this.#list);
  }

  tell(layer) {
    this.#list.value = layer[this.#key.name] ?? "";
  }
}

class ZoneField {
  #choice;

  constructor(key, { zones }, put) {
    this.#choice = new Choice(keyWords(key.name), (zone) => put(zone === "strip" ? undefined : zone));
    this.#choice.offer(zones.map(({ name }) => [name, name === "strip" ? say("bench.zone.all") : name]));
    this.element = make("div", { class: "field wide", "data-key": key.name }, this.#choice.element);
  }

  tell(layer) {
    this.#choice.tell(layer.zone ?? "strip");
  }
}

class RhythmField {
  #choice;
  #box;

  constructor(key, { rhythms }, put) {
    const give = (rhythm) => put(rhythm === "F" || rhythm === "" ? undefined : rhythm);
    const offered = [...new Set([...FIRST_RHYTHMS, ...rhythms])];
    this.#choice = new Choice(keyWords(key.name), give);
    this.#choice.offer(offered.map((rhythm) => [rhythm, rhythm === "F" ? say("bench.rhythm.steady") : OWN_RHYTHM.test(rhythm) ? capital(rhythmWords(rhythm)) : rhythm]));
    const id = newId();
    this.#box = make("input", { id, type: "text", spellcheck: "false", onchange: () => give(this.#box.value.trim()) });
    this.element = make("div", { class: "field wide", "data-key": key.name }, this.#choice.element,
      make("div", { class: "field" }, make("label", { for: id, text: say("bench.rhythm.own") }), this.#box));
  }

  tell(layer) {
    this.#choice.tell(layer.rhythm ?? "F");
    this.#box.value = layer.rhythm ?? "F";
  }
}

/** How something moves: by one of three measures, and which way. */
export class MovementField {
  #list;
  #range;
  #box;
  #towards;

  constructor(change) {
    const [listId, boxId, towardsId] = [newId(), newId(), newId()];
    const give = (unit, amount, back) => change(Object.fromEntries(MOVES.map((key) => [key, key === unit ? (back ? -amount : amount) : undefined])
      .concat(unit === "" ? [["back_and_forth", undefined]] : [])));
    const again = (amount) => amount > 0 && give(this.#list.value, amount, this.#towards.checked);
    this.#list = make("select", { id: listId, onchange: () => give(this.#list.value, { cycle_s: 8, speed_px_per_s: 4, speed_zones_per_s: 0.2 }[this.#list.value], this.#towards.checked) });
    this.#list.append(new Option(say("bench.moves.not"), ""), ...MOVES.map((key) => new Option(keyWords(key), key)));
    this.#range = make("input", { type: "range", tabindex: -1, "aria-label": say("bench.moves.how"), oninput: () => again(Number(this.#range.value)) });
    this.#box = make("input", { id: boxId, type: "number", min: 0, step: "any", onchange: () => again(Number(this.#box.value)) });
    this.#box.addEventListener("keydown", (event) => nudge(event, this.#box, Number(this.#range.step), (text) => again(Number(text))));
    this.#towards = make("input", { id: towardsId, type: "checkbox", onchange: () => again(Number(this.#box.value)) });
    this.element = make("div", { class: "field wide", "data-key": "cycle_s" },
      make("div", { class: "field" }, make("label", { for: listId, text: say("bench.moves") }), this.#list),
      make("div", { class: "field" }, make("label", { for: boxId, text: say("bench.moves.how") }), this.#range, this.#box),
      make("div", { class: "field" }, make("label", { for: towardsId, text: say("bench.moves.back") }), this.#towards));
  }

  tell(layer) {
    const unit = MOVES.find((key) => layer[key] !== undefined) ?? "";
    const amount = Math.abs(layer[unit] ?? 0);
    this.#list.value = unit;
    const [low, high] = COMFORT[unit] ?? [0, 1];
    Object.assign(this.#range, { min: low, max: high, step: stepOf(high - low), value: amount });
    tellBox(this.#box, unit === "" ? "" : amount, "");
    this.#towards.checked = (layer[unit] ?? 0) < 0;
    this.element.querySelectorAll(".field").forEach((row, i) => {
      row.hidden = i > 0 && unit === "";
    });
  }
}

function numbers(text) {
  const values = text.split(/[\s,;]+/).filter((part) => part !== "").map(Number);
  return values.length === 0 || values.some(Number.isNaN) ? undefined : values;
}
