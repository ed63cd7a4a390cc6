// A colour by its lightness, chroma and hue, or as CSS writes it. Each slider shows what it leads to, and where sRGB has no such colour.

import { button, enable, make, setText } from "./dom.js";
import { encoded } from "./light.js";
import { fits, lightOf, MOST_CHROMA, parsed, written } from "./oklch.js";
import { percent } from "./values.js";
import { LOCALE, say } from "./words.js";

/** Samples along a slider. */
const SAMPLES = 96;
const THOUSANDTHS = new Intl.NumberFormat(LOCALE, { minimumFractionDigits: 3, maximumFractionDigits: 3 });
const PARTS = [
  { part: "l", most: 1, step: 0.005, words: (value) => percent(value) },
  { part: "c", most: MOST_CHROMA, step: 0.005, words: (value) => THOUSANDTHS.format(value) },
  { part: "h", most: 360, step: 1, words: (value) => `${Math.round(value)}°` },
  { part: "alpha", most: 1, step: 0.01, words: (value) => percent(value) },
];

class Picker {
  #colour = { l: 0.7, c: 0.15, h: 60, alpha: 1 };
  #text = "";
  #parts;
  #spot = make("span", { class: "spot" });
  #css;
  #note = make("p", { class: "note" });
  #onChange;

  /** onChange is called with the text of each colour that is chosen. */
  constructor(onChange) {
    this.#onChange = onChange;
    this.#css = make("input", { type: "text", spellcheck: "false", autocapitalize: "off", autocomplete: "off", "aria-label": say("bench.colour.css"), onchange: () => this.#enter() });
    this.#parts = PARTS.map((part) => this.#slider(part));
    this.element = make("div", { class: "picker" }, make("div", { class: "row" }, this.#spot, this.#css), ...this.#parts.map(({ row }) => row), this.#note);
  }

  /** The colour as it is. */
  tell(text) {
    if (text === this.#text) {
      return;
    }
    this.#text = text;
    const colour = parsed(text);
    if (colour !== null) {
      this.#colour = { ...colour, h: colour.c < 0.002 ? this.#colour.h : colour.h };
    }
    this.#show(colour !== null);
  }

  #slider({ part, most, step, words }) {
    const canvas = make("canvas", { width: SAMPLES, height: 1, "aria-hidden": "true" });
    const range = make("input", { type: "range", min: 0, max: most, step, "aria-label": say(`bench.colour.${part}`), oninput: () => this.#slide(part, Number(range.value)) });
    const output = make("output");
    const row = make("div", { class: "slider" }, make("span", { text: say(`bench.colour.${part}`) }), make("div", { class: "track" }, canvas, range), output);
    return { part, most, row, range, output, words, pen: canvas.getContext("2d") };
  }

  #slide(part, value) {
    this.#colour = { ...this.#colour, [part]: value };
    this.#text = written(this.#colour);
    this.#show(true);
    this.#onChange(this.#text);
  }

  #enter() {
    const text = this.#css.value.trim();
    if (text !== "" && text !== this.#text) {
      this.tell(text);
      this.#onChange(text);
    }
  }

  #show(valid) {
    this.#css.value = this.#text;
    this.#css.setAttribute("aria-invalid", !valid);
    this.#spot.style.background = valid ? this.#text : "none";
    setText(this.#note, valid ? (fits(this.#colour) ? "" : say("bench.colour.outside")) : say("bench.colour.invalid"));
    for (const { part, range, output, words } of this.#parts) {
      const value = this.#colour[part];
      range.value = value;
      range.setAttribute("aria-valuetext", words(value));
      setText(output, words(value));
    }
    this.#parts.forEach((part) => this.#paint(part));
  }

  /** What the slider leads to; nothing where sRGB ends. */
  #paint({ part, most, pen }) {
    const image = pen.createImageData(SAMPLES, 1);
    for (let i = 0; i < SAMPLES; i++) {
      const colour = { ...this.#colour, [part]: most * i / (SAMPLES - 1) };
      const shown = part === "alpha" ? 255 * i / (SAMPLES - 1) : fits(colour) ? 255 : 0;
      image.data.set([...lightOf(colour).map(encoded), shown], 4 * i);
    }
    pen.putImageData(image, 0, 0);
  }
}

/** One colour or several in their order, of which one at a time is opened. */
export class Colours {
  #list = make("div", { class: "swatches", role: "group" });
  #picker = new Picker((text) => this.#put(this.#colours.with(this.#at, text)));
  #acts = make("div", { class: "row" });
  #colours = [];
  #at = 0;
  #onChange;

  /** onChange is called with all colours whenever one is changed, added, moved or taken away; with single there is one for good. */
  constructor(label, single, onChange) {
    this.#onChange = onChange;
    this.#list.setAttribute("aria-label", label);
    this.element = single ? this.#picker.element : make("div", { class: "colours" }, this.#list, this.#acts, this.#picker.element);
    this.#acts.append(
      button(say("bench.colour.earlier"), () => this.#move(-1)),
      button(say("bench.colour.later"), () => this.#move(1)),
      button(say("bench.colour.add"), () => this.#add()),
      button(say("bench.colour.remove"), () => this.#remove()),
    );
  }

  tell(colours) {
    this.#colours = colours;
    this.#at = Math.min(this.#at, colours.length - 1);
    this.#show();
  }

  #show() {
    while (this.#list.children.length > this.#colours.length) {
      this.#list.lastElementChild.remove();
    }
    while (this.#list.children.length < this.#colours.length) {
      const at = this.#list.children.length;
      this.#list.append(make("button", { type: "button", onclick: () => this.#open(at) }));
    }
    this.#colours.forEach((colour, i) => {
      const button = this.#list.children[i];
      button.style.background = colour;
      button.setAttribute("aria-pressed", i === this.#at);
      button.setAttribute("aria-label", say("bench.colour.nth", { number: i + 1, colour }));
    });
    const [earlier, later, , remove] = this.#acts.children;
    enable(earlier, this.#at > 0);
    enable(later, this.#at < this.#colours.length - 1);
    enable(remove, this.#colours.length > 2);
    this.#picker.tell(this.#colours[this.#at] ?? "");
  }

  #open(at) {
    this.#at = at;
    this.#show();
  }

  #put(colours) {
    this.#colours = colours;
    this.#show();
    this.#onChange(colours);
  }

  #add() {
    const colours = this.#colours.toSpliced(this.#at + 1, 0, this.#colours[this.#at]);
    this.#at++;
    this.#put(colours);
  }

  #remove() {
    const colours = this.#colours.toSpliced(this.#at, 1);
    this.#at = Math.max(0, this.#at - 1);
    this.#put(colours);
  }

  #move(by) {
    const colours = this.#colours.slice();
    colours.splice(this.#at + by, 0, ...colours.splice(this.#at, 1));
    this.#at += by;
    this.#put(colours);
  }
}
