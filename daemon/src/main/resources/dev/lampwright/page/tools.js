// What is done to a look as a whole: undone and done again, copied, and another one put on the bench.

import { ask, whyNot } from "./bench_server.js";
import { enable, make, setText } from "./dom.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);

export class Tools {
  #acts;
  #looks = [];
  #nameForm = null;
  #opened = { name: "" };
  #look = null;

  /** What it does: undo, redo, open with a name and the look to begin with, and tell what has happened. */
  constructor(acts) {
    this.#acts = acts;
    for (const id of ["undo", "redo"]) {
      byId(id).addEventListener("click", () => this.#go(id));
    }
    document.addEventListener("keydown", (event) => this.#key(event));
    byId("copy").addEventListener("click", () => this.#copy());
    byId("other").addEventListener("click", () => this.#choose());
    byId("open-form").addEventListener("submit", () => acts.open(byId("open-look").value));
    byId("new-form").addEventListener("submit", (event) => this.#begin(event));
    document.querySelectorAll("dialog [data-close]").forEach((close) => close.addEventListener("click", () => close.closest("dialog").close()));
  }

  /** Which looks there are, which names have drafts, and what names may be. */
  lay({ looks }, drafts, { limits }) {
    this.#looks = looks;
    byId("new-name").pattern = limits.name.replace("-]", "\\-]");
    const begun = drafts.filter((name) => !looks.some((look) => look.name === name));
    byId("open-look").replaceChildren(...(begun.length === 0 ? [] : [make("optgroup", { label: say("bench.from.draft") }, ...begun.map((name) => new Option(name, name)))]), ...this.#options());
    byId("open-look").value = this.#opened.name;
    byId("new-from").replaceChildren(new Option(say("bench.new.nothing"), ""), ...this.#options());
  }

  /** Looks under what they have in common, each with the states that put it on. */
  #options() {
    const groups = { "bench.from.own": ["file", "overlay", "shop"], "bench.from.built_in": ["built-in"], "bench.from.swatch": ["swatch"] };
    return Object.entries(groups).map(([code, sources]) =>
      make("optgroup", { label: say(code) }, ...this.#looks.filter(({ from }) => sources.includes(from)).map((look) => new Option(optionWords(look), look.name))));
  }

  /** Another look is on the bench. */
  opened(look) {
    this.#opened = look;
    byId("open-look").value = look.name;
    const codes = { "built-in": "bench.is_from.built_in", file: "bench.is_from.file", shop: "bench.is_from.file", overlay: "bench.is_from.overlay", swatch: "bench.is_from.swatch" };
    const below = look.swatch_layers > 0 ? `. ${say("bench.swatch_layers", { count: look.swatch_layers, swatch: look.look.swatch })}` : "";
    setText(byId("look-from"), say(look.isNew ? "bench.is_from.new" : codes[look.from] ?? "bench.is_from.new") + below);
  }

  /** What can be undone and done again. */
  tell(versions) {
    this.#look = versions.now;
    enable(byId("undo"), versions.canUndo);
    enable(byId("redo"), versions.canRedo);
  }

  #go(id) {
    if (byId(id).ariaDisabled !== "true") {
      this.#acts[id]();
      this.#acts.tell(say(`bench.told.${id}`));
    }
  }

  /** Ctrl or Command with Z and Y, but for where somebody writes. */
  #key(event) {
    const writes = event.target.matches("input:not([type=range], [type=checkbox]), textarea");
    if (!(event.ctrlKey || event.metaKey) || writes) {
      return;
    }
    const key = event.key.toLowerCase();
    if (key === "s") {
      event.preventDefault();
      byId("save").click();
    }
    const id = key === "y" || (key === "z" && event.shiftKey) ? "redo" : key === "z" ? "undo" : "";
    if (id !== "") {
      event.preventDefault();
      this.#go(id);
    }
  }

  #choose() {
    byId("choose").showModal();
  }

  #begin(event) {
    const name = byId("new-name").value;
    const taken = this.#looks.some((look) => look.name === name && look.from !== "swatch");
    byId("new-wrong").hidden = !taken;
    byId("new-name").setAttribute("aria-invalid", taken);
    if (taken) {
      event.preventDefault();
      byId("new-name").focus();
    } else {
      this.#acts.open(name, byId("new-from").value);
    }
  }

  /** The text of the look, to be put into a file by hand. */
  async #copy() {
    const response = await ask("POST", "toml", { name: this.#opened.name, look: this.#look });
    if (response.status !== 200) {
      setText(byId("toml-words"), whyNot(response));
      return;
    }
    byId("toml").value = response.answer.toml;
    byId("toml-dialog").showModal();
    byId("toml").select();
    byId("toml").scrollTop = 0;
    setText(byId("toml-words"), await copied(response.answer.toml) ? say("bench.copied") : say("bench.copy.by_hand"));
  }
}

function optionWords({ name, states }) {
  return states.length === 0 ? name : say("bench.look.when", { look: name, states: states.map((state) => say(`state.${state}`)).join(", ") });
}

/** Browsers let a page copy only where nobody can have changed it on its way. */
async function copied(text) {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
