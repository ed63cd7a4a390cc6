// When which look is on: the cues in their order as sentences that can be changed, and which of them holds now.

import { Newest } from "./asks.js";
import { ask, whyNot } from "./bench_server.js";
import { CueForm } from "./cue_form.js";
import { button, enable, make, setText } from "./dom.js";
import { mistakeWords } from "./mistakes.js";
import { askWhetherSure, columns, question } from "./question.js";
import { cueWords, fadeWords } from "./sentence.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);
const isOwn = ({ from }) => from !== "built-in";

export class Cues {
  #acts;
  #vocabulary = null;
  #looks = [];
  #mayEdit = false;
  #known = { version: "", cues: [] };
  /** The user's own as they are to be, and the version that they were made from; null while nothing has been changed. */
  #own = null;
  #base = "";
  #open = null;
  #look = "";
  #loads = new Newest(() => this.#load());

  /** What it does: open with the name of a look, and tell with words for the user and whether all is well. */
  constructor(acts) {
    this.#acts = acts;
    byId("cue-form").addEventListener("submit", (event) => {
      event.preventDefault();
      this.#add(byId("cue-state").value);
    });
    byId("cues-save").addEventListener("click", () => byId("cues-save").ariaDisabled !== "true" && this.#save());
    byId("cues-drop").addEventListener("click", () => this.#drop());
  }

  lay(vocabulary, { may_edit: mayEdit, looks }) {
    this.#vocabulary = vocabulary;
    this.#looks = looks.map(({ name }) => name);
    this.#mayEdit = mayEdit;
    const chosen = byId("cue-state").value;
    byId("cue-state").replaceChildren(...vocabulary.states.map((state) => new Option(say(`state.${state}`), state, false, state === chosen)));
    byId("cue-form").hidden = !mayEdit;
  }

  /** Which look is on the bench. */
  opened(look) {
    this.#look = look;
    setText(byId("cue-label"), say("bench.cue.add", { look }));
  }

  /** What is in the file, and what holds. What has been changed here is left as it is. */
  load() {
    this.#loads.put(null);
  }

  async #load() {
    const { status, answer } = await ask("GET", "cues");
    if (status === 200) {
      this.#known = answer;
      this.#list();
    }
  }

  #drop() {
    this.#own = null;
    this.#open = null;
    this.#list();
    this.load();
    this.#acts.tell(say("bench.cues.dropped"), true);
  }

  /** The cues that can be changed, those changed here included, before those that are built in. */
  #all() {
    return [...this.#ownCues(), ...this.#known.cues.filter((cue) => !isOwn(cue))];
  }

  #ownCues() {
    return this.#own?.map((one) => ({ ...one, ...this.#standing(one.cue) })) ?? this.#known.cues.filter(isOwn);
  }

  /** Whether one that is the same in the file holds. */
  #standing(cue) {
    const text = JSON.stringify(cue);
    const { holds, on } = this.#known.cues.find((one) => isOwn(one) && JSON.stringify(one.cue) === text) ?? {};
    return { holds, on };
  }

  /** What has the focus keeps it, as far as it is there still. */
  #list() {
    const focused = document.activeElement?.dataset?.cue;
    const all = this.#all();
    const own = this.#ownCues().length;
    byId("cues").replaceChildren(...all.map((cue, at) => this.#row(cue, at, own)));
    byId("cues-acts").hidden = this.#own === null;
    if (focused !== undefined && document.activeElement === document.body) {
      byId("cues").querySelector(`[data-cue="${focused}"]`)?.focus();
    }
  }

  #row({ cue, from, holds, on }, at, own) {
    const words = cueWords(cue);
    const row = make("li", { "data-holds": String(holds === true), "data-on": String(on === true) },
      make("span", { class: "words" }, `${words} → `, button(cue.look, () => this.#acts.open(cue.look), { class: "link", "data-cue": `${at} look` }), fadeWords(cue)),
      make("span", { class: "note", text: on ? say("bench.cue.on") : holds ? say("bench.cue.holds") : "" }));
    if (isOwn({ from }) && this.#mayEdit) {
      row.append(this.#controls(words, at, own));
    }
    if (isOwn({ from }) && at === this.#open) {
      row.append(new CueForm(cue, this.#vocabulary, this.#looks, (next) => this.#change(this.#ownCues().with(at, { cue: next, from }), at)).element);
    }
    return row;
  }

  #controls(words, at, own) {
    const control = (code, what, action, more = {}) =>
      button(say(code), action, { "aria-label": say("bench.cue.act", { act: say(code), cue: words }), "data-cue": `${at} ${what}`, ...more });
    const up = control("bench.up", "up", () => this.#move(at, at - 1));
    const down = control("bench.down", "down", () => this.#move(at, at + 1));
    enable(up, at > 0);
    enable(down, at < own - 1);
    return make("span", { class: "row" },
      control("bench.cue.edit", "edit", () => this.#edit(at), { "aria-expanded": String(at === this.#open) }), up, down,
      control("bench.remove", "remove", () => this.#remove(at)));
  }

  #edit(at) {
    this.#open = this.#open === at ? null : at;
    this.#list();
  }

  #move(from, to) {
    const cues = this.#ownCues();
    cues.splice(to, 0, ...cues.splice(from, 1));
    this.#open = null;
    this.#change(cues, to);
    byId("cues").querySelector(`[data-cue="${to} ${to < from ? "up" : "down"}"]`)?.focus();
  }

  #remove(at) {
    this.#open = null;
    this.#change(this.#ownCues().toSpliced(at, 1), at);
    (byId("cues").querySelector(`[data-cue="${at} remove"]`) ?? byId("cues-save")).focus();
  }

  /** A new cue comes first, so that it is not behind another for the same state. */
  #add(state) {
    this.#open = 0;
    this.#change([{ cue: { state, look: this.#look }, from: "file" }, ...this.#ownCues()], 0);
    byId("cues").querySelector('[data-cue="0 edit"]').focus();
  }

  #change(cues) {
    if (this.#own === null) {
      this.#base = this.#known.version;
    }
    this.#own = cues.map(({ cue, from }) => ({ cue, from }));
    this.#list();
    this.#acts.tell(say("bench.cues.changed"), true);
  }

  async #save(base = this.#base, sure = undefined) {
    const sent = this.#own;
    enable(byId("cues-save"), false);
    const response = await ask("PUT", "cues", { cues: sent.map(({ cue }) => cue), base, sure });
    enable(byId("cues-save"), true);
    const { status, answer } = response;
    if (status === 200) {
      this.#saved(sent, answer);
    } else if (status === 412 && answer.theirs !== undefined) {
      this.#solve(answer.theirs);
    } else if (status === 422) {
      this.#refuse(answer.mistakes ?? []);
    } else {
      this.#acts.tell(whyNot(response), false);
      if (answer?.code === "fault_look") {
        askWhetherSure(answer.values?.look ?? "", () => this.#save(base, true));
      }
    }
  }

  /** What has been changed since it was sent is not saved yet. */
  #saved(sent, { file, version }) {
    this.#base = version;
    if (this.#own === sent) {
      this.#own = null;
      this.#open = null;
      this.#known = { version, cues: [...sent, ...this.#known.cues.filter((cue) => !isOwn(cue))] };
      this.#list();
    }
    this.#acts.tell(say("bench.cues.saved", { file: file ?? "" }), true);
    this.load();
  }

  /** The cue to blame is opened. */
  #refuse([first]) {
    this.#acts.tell(first === undefined ? say("bench.not_saved") : say("bench.not_saved.why", { what: mistakeWords(first) }), false);
    if (first !== undefined && (first.cue ?? null) !== null) {
      this.#open = first.cue;
      this.#list();
      byId("cues").querySelector(`[data-cue="${first.cue} edit"]`)?.focus();
    }
  }

  #solve({ cues, version }) {
    const lines = (all) => all.map((cue) => `${cueWords(cue)} → ${cue.look}${fadeWords(cue)}`);
    const before = this.#known.version === this.#base ? [[say("bench.conflict.base"), lines(this.#known.cues.filter(isOwn).map(({ cue }) => cue))]] : [];
    const texts = columns([[say("bench.conflict.yours"), lines(this.#own.map(({ cue }) => cue))], [say("bench.conflict.theirs"), lines(cues)], ...before]);
    question(say("bench.cues.conflict"), texts, [
      [say("bench.conflict.mine"), () => this.#save(version)],
      [say("bench.conflict.their"), () => this.#drop()],
    ]);
  }
}
