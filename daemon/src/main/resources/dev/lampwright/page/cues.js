// When which look is on: the cues in their order as sentences, and which of them holds now.

import { ask, whyNot } from "./bench_server.js";
import { button, enable, make, setText } from "./dom.js";
import { signalValue, signalWords } from "./sentence.js";
import { isSaid, say } from "./words.js";

const byId = (id) => document.getElementById(id);

export class Cues {
  #acts;
  #states = [];
  #mayEdit = false;
  #known = { version: "", cues: [] };
  #own = null;
  #look = "";

  /** What it does: open with the name of a look, and tell with words for the user and whether all is well. */
  constructor(acts) {
    this.#acts = acts;
    byId("cue-form").addEventListener("submit", (event) => {
      event.preventDefault();
      this.#add(byId("cue-state").value);
    });
    byId("cues-save").addEventListener("click", () => this.#save());
    byId("cues-drop").addEventListener("click", () => this.load());
  }

  lay({ states }, { may_edit: mayEdit }) {
    this.#states = states;
    this.#mayEdit = mayEdit;
    byId("cue-state").replaceChildren(...states.map((state) => new Option(say(`state.${state}`), state)));
    byId("cue-form").hidden = !mayEdit;
  }

  /** Which look is on the bench. */
  opened(look) {
    this.#look = look;
    setText(byId("cue-label"), say("bench.cue.add", { look }));
  }

  async load() {
    const { status, answer } = await ask("GET", "cues");
    if (status === 200) {
      this.#known = answer;
      this.#own = null;
      this.#list();
    }
  }

  /** The cues that can be changed, those changed here included, before those that are built in. */
  #all() {
    const own = this.#own ?? this.#known.cues.filter(({ from }) => from !== "built-in");
    return [...own, ...this.#known.cues.filter(({ from }) => from === "built-in")];
  }

  #list() {
    const all = this.#all();
    const own = all.filter(({ from }) => from !== "built-in").length;
    byId("cues").replaceChildren(...all.map((cue, at) => this.#row(cue, at, own)));
    byId("cues-acts").hidden = this.#own === null;
  }

  #row({ cue, from, holds, on }, at, own) {
    const words = cueWords(cue);
    const row = make("li", { "data-holds": String(holds === true), "data-on": String(on === true) },
      make("span", { class: "words" }, `${words} → `, button(cue.look, () => this.#acts.open(cue.look), { class: "link" }), fadeWords(cue)),
      make("span", { class: "note", text: on ? say("bench.cue.on") : holds ? say("bench.cue.holds") : "" }));
    if (from !== "built-in" && this.#mayEdit) {
      const up = button(say("bench.up"), () => this.#move(at, at - 1), { "aria-label": `${say("bench.up")}: ${words}` });
      const down = button(say("bench.down"), () => this.#move(at, at + 1), { "aria-label": `${say("bench.down")}: ${words}` });
      enable(up, at > 0);
      enable(down, at < own - 1);
      const id = `fade-${at}`;
      const fade = make("input", { id, type: "number", min: 0, max: 600, step: "any", value: cue.fade_s, onchange: () => this.#fade(at, fade.value) });
      row.append(make("span", { class: "row" }, up, down, make("label", { for: id, text: say("bench.cue.fade") }), fade,
        button(say("bench.remove"), () => this.#change(this.#ownCues().toSpliced(at, 1), at), { "aria-label": `${say("bench.remove")}: ${words}` })));
    }
    return row;
  }

  #ownCues() {
    return this.#all().filter(({ from }) => from !== "built-in");
  }

  #move(from, to) {
    const cues = this.#ownCues();
    cues.splice(to, 0, ...cues.splice(from, 1));
    this.#change(cues, to);
  }

  #fade(at, text) {
    const { fade_s: before, ...cue } = this.#ownCues()[at].cue;
    const next = text === "" ? cue : { ...cue, fade_s: Number(text) };
    this.#change(this.#ownCues().with(at, { ...this.#ownCues()[at], cue: next }), at);
  }

  /** A new cue comes first, so that it is not behind another for the same state. */
  #add(state) {
    this.#change([{ cue: { state, look: this.#look }, from: "file" }, ...this.#ownCues()], 0);
  }

  #change(cues, at) {
    this.#own = cues;
    this.#list();
    const row = byId("cues").children[Math.min(at, cues.length - 1)];
    (row?.querySelector("button:not(.link):not([aria-disabled=true])") ?? byId("cues-save")).focus();
    this.#acts.tell(say("bench.cues.changed"), true);
  }

  async #save() {
    const response = await ask("PUT", "cues", { cues: this.#ownCues().map(({ cue }) => cue), base: this.#known.version });
    const { status, answer } = response;
    if (status === 200) {
      this.#acts.tell(say("bench.cues.saved", { file: answer.file ?? "" }), true);
      await this.load();
    } else if (status === 422) {
      const [first] = answer.mistakes ?? [];
      this.#acts.tell(first === undefined ? say("bench.not_saved") : say("bench.not_saved.why", first), false);
    } else {
      this.#acts.tell(whyNot(response), false);
    }
  }
}

/** What has to be so, as a sentence. */
function cueWords(cue) {
  const states = (words) => [words].flat().map(stateWords).join(say("bench.cue.or"));
  const parts = [];
  for (const key of ["state", "any", "all", "alarm"]) {
    if (cue[key] !== undefined) {
      parts.push(say(`bench.cue.${key}`, { what: states(cue[key]) }));
    }
  }
  if (cue.signal !== undefined) {
    const signal = signalWords(cue.signal);
    const [above, below] = [cue.above, cue.below].map((value) => value === undefined ? undefined : signalValue(cue.signal, value));
    const code = above === undefined ? "below" : below === undefined ? "above" : "between";
    parts.push(say(`bench.cue.${code}`, { signal, above: above ?? "", below: below ?? "" }));
  }
  if (cue.event !== undefined) {
    parts.push(say("bench.cue.event", { event: cue.event }));
  }
  if (cue.view !== undefined) {
    parts.push(say("bench.cue.view", { view: cue.view }));
  }
  return parts.length === 0 ? say("bench.cue.always") : say("bench.cue.when", { what: parts.join(say("bench.cue.and")) });
}

/** A state or where an alarm is; of one of several printers, with its name. */
function stateWords(word) {
  const at = word.lastIndexOf(".");
  const bare = word.slice(at + 1);
  if (isSaid(`alarm.${bare}`)) {
    return say(`alarm.${bare}`);
  }
  const words = say("bench.cue.quoted", { what: isSaid(`state.${bare}`) ? say(`state.${bare}`) : bare });
  return at < 0 ? words : `${word.slice(0, at)} ${words}`;
}

function fadeWords({ fade_s: fade }) {
  return fade === undefined ? "" : `, ${say("bench.cue.faded", { seconds: fade })}`;
}
