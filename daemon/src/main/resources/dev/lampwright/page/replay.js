// Recordings of a printer, of which the preview can replay one.

import { ask, whyNot } from "./bench_server.js";
import { make, setText } from "./dom.js";
import { duration, moment } from "./values.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);
const SOURCES = ["history", "run", "upload", "example"];
/** How many seconds of a recording a second shows. */
const SPEEDS = [1, 4, 15, 60, 240];
const USUAL_SPEED = 15;
const pathOf = (name) => `recordings/${encodeURIComponent(name)}`;

export class Replay {
  #onChange;
  #tell;
  #all = [];
  #limits = { bytes: 0 };
  #chosen = null;
  #at = 0;

  /** onChange is called once another recording is replayed, or none, or in another way; tell with words and whether all is well. */
  constructor(onChange, tell) {
    this.#onChange = onChange;
    this.#tell = tell;
    byId("recording").addEventListener("change", () => this.#choose(byId("recording").value));
    byId("replay-speed").append(...SPEEDS.map((speed) => new Option(say("bench.replay.times", { speed }), speed, false, speed === USUAL_SPEED)));
    byId("replay-speed").addEventListener("change", () => this.#onChange());
    byId("replay-loop").addEventListener("change", () => this.#onChange());
    byId("replay-file").addEventListener("change", () => this.#upload());
    byId("replay-remove").addEventListener("click", () => this.#remove());
  }

  /** Which recordings there are. A daemon that has none to offer offers nothing. */
  async load(mayEdit) {
    const { status, answer } = await ask("GET", "recordings");
    byId("replay").hidden = status !== 200;
    if (status !== 200) {
      return;
    }
    this.#all = answer.recordings;
    this.#limits = answer.limits;
    byId("replay-add").hidden = !mayEdit;
    setText(byId("replay-help"), say("bench.replay.upload.help", { bytes: Math.floor(this.#limits.bytes / 1024) }));
    const groups = SOURCES.map((source) => [source, this.#all.filter(({ from }) => from === source)]).filter(([, some]) => some.length > 0);
    byId("recording").replaceChildren(new Option(say("bench.replay.none"), ""), ...groups.map(([source, some]) =>
      make("optgroup", { label: say(`bench.replay.from.${source}`) }, ...some.map((one) => new Option(wordsOf(one), one.id)))));
    this.#show(mayEdit);
  }

  /** Which part of which recording is wanted, as a preview is asked for; undefined for none. */
  get wanted() {
    return this.#chosen === null ? undefined : { id: this.#chosen.id, at_s: this.#at, speed: Number(byId("replay-speed").value) };
  }

  /** How long the recording is, and whether it starts over. */
  get length() {
    return { seconds: this.#chosen.seconds, loop: byId("replay-loop").checked };
  }

  /** The next part is wanted from a second of the recording on. */
  goTo(second) {
    this.#at = second;
  }

  /** The printer does something else. */
  leave() {
    this.#chosen = null;
    this.#show(!byId("replay-add").hidden);
  }

  #choose(id) {
    this.#chosen = this.#all.find((one) => one.id === id) ?? null;
    this.#at = 0;
    this.#show(!byId("replay-add").hidden);
    this.#onChange();
  }

  #show(mayEdit) {
    this.#chosen = this.#all.find(({ id }) => id === this.#chosen?.id) ?? null;
    byId("recording").value = this.#chosen?.id ?? "";
    byId("replay-acts").hidden = this.#chosen === null;
    byId("replay-remove").hidden = !mayEdit || this.#chosen?.from !== "upload";
  }

  async #upload() {
    const [file] = byId("replay-file").files;
    if (file === undefined) {
      return;
    }
    const name = nameOf(file.name);
    byId("replay-file").value = "";
    if (file.size > this.#limits.bytes) {
      this.#tell(say("refused", { why: say("why.recording_too_long", { bytes: this.#limits.bytes }) }), false);
      return;
    }
    const response = await ask("PUT", pathOf(name), { text: await file.text() });
    this.#tell(response.status === 200 ? say("bench.replay.added", { name }) : whyNot(response), response.status === 200);
    if (response.status === 200) {
      await this.load(true);
      this.#choose(response.answer.id);
    }
  }

  async #remove() {
    const { name } = this.#chosen;
    const response = await ask("DELETE", pathOf(name));
    this.#tell(response.status === 200 ? say("bench.replay.removed", { name }) : whyNot(response), response.status === 200);
    if (response.status === 200) {
      await this.load(true);
      byId("recording").focus();
      this.#onChange();
    }
  }
}

/** A job is known by when it was, anything else by its name. */
function wordsOf({ from, name, at_ms: at, seconds }) {
  const what = from === "example" ? say("bench.replay.job") : at === null || from === "upload" ? name : moment(at);
  return say("bench.replay.of", { what, length: duration(seconds) });
}

/** What a recording is called once it is uploaded: the name of its file, as far as it can be one. */
function nameOf(file) {
  return file.toLowerCase().replace(/\.[^.]*$/, "").replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "").slice(0, 40) || "recording";
}
