// The layers of a look as a list, the topmost first: each a band of its own light, a sentence, how strong it is, and whether it is shown.

import { Band } from "./band.js";
import { button, enable, icon, make, setText } from "./dom.js";
import { Drag } from "./drag.js";
import { LayerForm } from "./layer_form.js";
import { added, idOf, moved, removed, replaced, withKeys } from "./look_edit.js";
import { mistakeAt } from "./mistakes.js";
import { describe, opacityWords } from "./sentence.js";
import { say } from "./words.js";

const SHOWN = "M2.5 12S6 5.8 12 5.8 21.5 12 21.5 12 18 18.2 12 18.2 2.5 12 2.5 12zM12 9.2a2.8 2.8 0 1 0 0 5.6 2.8 2.8 0 0 0 0-5.6z";
const GRIP = "M8 6.5h8M8 12h8M8 17.5h8";

/** What a new layer may be to begin with. */
const BEGINNINGS = {
  colour: { colour: "oklch(75% 0.14 65)", opacity: 0.5 },
  gradient: { paint: "ramp", colours: ["midnightblue", "turquoise"], ring: true, cycle_s: 12, opacity: 0.5 },
  bar: { colour: "seagreen", extent: "bar", by: "job.progress", softness_px: 1 },
  mark: { colour: "white", extent: "pointer", by: "job.progress", width_px: 1 },
  band: { colour: "aquamarine", extent: "band", width_px: 2, tail_px: 6, cycle_s: 5 },
  glints: { colour: "honeydew", extent: "grains", density: 0.08, glint_s: 2.5 },
  embers: { paint: "ember", opacity: 0.6 },
};

export class Layers {
  #list;
  #vocabulary = null;
  #change;
  #tellWords;
  #look = { layers: [] };
  #rows = new Map();
  #open = null;

  /**
   * change is called with a look as it is to be, a name for what was changed, and the same for all that a hand does in one go; tell with what
   * has happened, to be read out.
   */
  constructor(list, adds, change, tell) {
    this.#list = list;
    this.#change = change;
    this.#tellWords = tell;
    adds.replaceChildren(...Object.entries(BEGINNINGS).map(([name, layer]) => button(say(`bench.add.${name}`), () => this.#add({ ...layer }), { "data-add": name })));
  }

  /** What layers can be made of. */
  lay(vocabulary) {
    this.#vocabulary = vocabulary;
    this.#rows.clear();
    this.#list.replaceChildren();
  }

  /** The look as it is, and what is wrong with it. */
  tell(look, mistakes) {
    this.#look = look;
    const topmostFirst = look.layers.map((layer, at) => ({ layer, at })).reverse();
    const ids = topmostFirst.map(({ layer }) => idOf(layer));
    for (const [id, row] of this.#rows) {
      if (!ids.includes(id)) {
        row.element.remove();
        this.#rows.delete(id);
      }
    }
    topmostFirst.forEach(({ layer, at }, place) => {
      const id = ids[place];
      if (!this.#rows.has(id)) {
        this.#rows.set(id, new Row(this.#vocabulary, this.#acts(id)));
      }
      this.#rows.get(id).tell(layer, place, look.layers.length, mistakes.filter((mistake) => mistake.layer === at), id === this.#open);
    });
    this.#arrange(ids.map((id) => this.#rows.get(id).element));
  }

  /** Moves none that is in its place already; what has the focus keeps it. */
  #arrange(elements) {
    const focused = document.activeElement;
    elements.forEach((element, i) => {
      if (this.#list.children[i] !== element) {
        this.#list.insertBefore(element, this.#list.children[i] ?? null);
      }
    });
    if (focused !== document.activeElement && focused?.isConnected) {
      focused.focus();
    }
  }

  /** Draws the light of one layer, and what becomes of it in time. */
  show(id, colours, inTime) {
    this.#rows.get(id)?.show(colours, inTime);
  }

  /** Leads to a layer, by its place from the lowest on. */
  focus(at) {
    const layer = this.#look.layers[at];
    if (layer !== undefined) {
      this.#openRow(idOf(layer));
      this.#rows.get(idOf(layer)).focus();
    }
  }

  /** Gives the layer that is open another zone. */
  aim(zones) {
    const at = this.#at(this.#open);
    if (at >= 0 && zones.length > 0) {
      const layer = this.#look.layers[at];
      const next = zones[(zones.indexOf(layer.zone ?? "strip") + 1) % zones.length];
      this.#put(at, withKeys(layer, { zone: next === "strip" ? undefined : next }), "zone");
    }
  }

  #at(id) {
    return this.#look.layers.findIndex((layer) => idOf(layer) === id);
  }

  #acts(id) {
    return {
      change: (layer, key) => this.#put(this.#at(id), layer, key),
      move: (from, to) => this.#move(from, to),
      shift: (by) => {
        const place = this.#look.layers.length - 1 - this.#at(id);
        this.#move(place, place + by);
      },
      open: () => this.#openRow(this.#open === id ? null : id),
      copy: () => this.#copy(id),
      remove: () => this.#remove(id),
    };
  }

  #put(at, layer, key) {
    this.#change(replaced(this.#look, at, layer), `${idOf(layer)} ${key}`);
  }

  #openRow(id) {
    this.#open = id;
    this.#rows.forEach((row, one) => row.open(one === id));
  }

  /** Places are counted from the top. */
  #move(from, to) {
    const last = this.#look.layers.length - 1;
    if (to < 0 || to > last) {
      return;
    }
    const layer = this.#look.layers[last - from];
    this.#change(moved(this.#look, last - from, last - to), "");
    this.#tellWords(say("bench.told.moved", { layer: describe(layer), place: to + 1, count: last + 1 }));
  }

  #add(layer) {
    this.#open = idOf(layer);
    this.#change(added(this.#look, this.#look.layers.length, layer), "");
    this.#tellWords(say("bench.told.added", { layer: describe(layer) }));
    this.focus(this.#look.layers.length - 1);
  }

  #copy(id) {
    const at = this.#at(id);
    const copy = { ...this.#look.layers[at] };
    this.#open = idOf(copy);
    this.#change(added(this.#look, at + 1, copy), "");
    this.#tellWords(say("bench.told.added", { layer: describe(copy) }));
    this.focus(at + 1);
  }

  /** The focus goes to the layer below, or to where one can be added. */
  #remove(id) {
    const at = this.#at(id);
    const words = describe(this.#look.layers[at]);
    this.#open = null;
    this.#change(removed(this.#look, at), "");
    this.#tellWords(say("bench.told.removed", { layer: words }));
    const next = this.#look.layers[Math.max(0, at - 1)];
    if (next === undefined) {
      document.querySelector("[data-add]").focus();
    } else {
      this.#rows.get(idOf(next)).focus();
    }
  }
}

/** One layer. */
class Row {
  #acts;
  #form = null;
  #vocabulary;
  #handle = make("button", { type: "button", class: "handle", "aria-describedby": "handle-help" }, icon(GRIP));
  #sentence = make("button", { type: "button", class: "sentence", "aria-expanded": "false" });
  #strength = make("input", { type: "range", min: 0, max: 1, step: 0.01, class: "strength" });
  #share = make("output");
  #eye = make("button", { type: "button", class: "eye" }, icon(SHOWN));
  #wrong = make("p", { class: "wrong", hidden: true });
  #body = make("div", { class: "body", hidden: true });
  #up;
  #down;
  #told = null;
  #band = new Band();
  #time = new Band();

  constructor(vocabulary, acts) {
    this.#vocabulary = vocabulary;
    this.#acts = acts;
    this.element = make("li", { class: "layer" }, this.#band.element,
      make("div", { class: "line" }, this.#handle, this.#sentence, this.#strength, this.#share, this.#eye), this.#wrong, this.#body);
    new Drag(this.element, this.#handle, acts.move);
    this.#sentence.addEventListener("click", acts.open);
    this.#strength.addEventListener("input", () => this.#change({ opacity: opacityKey(Number(this.#strength.value)) }, "opacity"));
    this.#eye.addEventListener("click", () => this.#change({ hidden: this.#told.layer.hidden ? undefined : true }, ""));
    this.#up = button(say("bench.up"), () => acts.shift(-1));
    this.#down = button(say("bench.down"), () => acts.shift(1));
  }

  #change(keys, name) {
    this.#acts.change(withKeys(this.#told.layer, keys), name);
  }

  tell(layer, place, count, mistakes, open) {
    this.#told = { layer, mistakes };
    const words = describe(layer);
    const place1 = { layer: words, place: place + 1, count };
    setText(this.#sentence, words);
    this.#handle.setAttribute("aria-label", say("bench.move", place1));
    const by = layer.opacity_by !== undefined;
    this.#strength.value = layer.opacity ?? 1;
    this.#strength.disabled = by;
    this.#strength.setAttribute("aria-label", say("bench.strength.of", { layer: words }));
    setText(this.#share, opacityWords(layer));
    this.#eye.setAttribute("aria-pressed", layer.hidden === true);
    this.#eye.setAttribute("aria-label", say("bench.hide", { layer: words }));
    this.element.classList.toggle("hidden-layer", layer.hidden === true);
    setText(this.#wrong, mistakes.map((mistake) => say("bench.sentence", { words: mistakeAt(mistake) })).join(" "));
    this.#wrong.hidden = mistakes.length === 0;
    enable(this.#up, place > 0);
    enable(this.#down, place < count - 1);
    this.open(open);
  }

  open(open) {
    this.#sentence.setAttribute("aria-expanded", open);
    this.#body.hidden = !open;
    if (open && this.#form === null) {
      this.#form = new LayerForm(this.#vocabulary, this.#time.element, this.#acts.change);
      this.#body.append(this.#form.element, make("div", { class: "row" }, this.#up, this.#down,
        button(say("bench.copy"), this.#acts.copy), button(say("bench.remove"), this.#acts.remove)));
    }
    if (open) {
      this.#form.tell(this.#told.layer, this.#told.mistakes);
    }
  }

  show(colours, inTime) {
    this.#band.show(colours);
    this.#time.show(inTime);
  }

  focus() {
    this.#sentence.focus();
  }
}

function opacityKey(value) {
  return value === 1 ? undefined : value;
}
