// Where a look is kept: saved into the file or beside it, as a draft until then, and in its older versions.

import { ask, why, whyNot } from "./bench_server.js";
import { button, enable, make, setText } from "./dom.js";
import { mistakeWords } from "./mistakes.js";
import { askWhetherSure, columns, question, questionName } from "./question.js";
import { moment } from "./values.js";
import { reason, say } from "./words.js";

const byId = (id) => document.getElementById(id);
const DRAFT_MS = 1000;
const draftPath = (name) => `drafts/${encodeURIComponent(name)}`;
const lookPath = (name) => `looks/${encodeURIComponent(name)}`;

export class Keeping {
  #acts;
  #place = null;
  #opened = { name: "" };
  /** What is on the bench; what is in the file, or was when it was opened; and what is kept as a draft. */
  #look = null;
  #clean = null;
  #kept = null;
  /** What has been asked for is done one after the other, so that no draft comes after the look has been saved. */
  #queue = Promise.resolve();
  #waits = 0;
  #waiting = false;
  #busy = 0;

  /**
   * What it does: open with a name; tell with words for the user and whether all is well; blame with the place of the layer that is to blame;
   * saved with what is known of a look once it is saved; written once anything else has been written; and allowed once somebody may write.
   */
  constructor(acts) {
    this.#acts = acts;
    byId("save").addEventListener("click", () => byId("save").ariaDisabled !== "true" && this.#save());
    byId("save-as").addEventListener("click", () => questionName(say("bench.save.as"), this.#opened.name, (name) => this.#saveAs(name)));
    byId("rename").addEventListener("click", () => questionName(say("bench.rename"), this.#opened.name, (name) => this.#rename(name)));
    byId("remove").addEventListener("click", () => this.#remove());
    byId("drop-draft").addEventListener("click", () => this.#dropDraft());
    byId("versions-part").addEventListener("toggle", () => this.#listVersions());
    addEventListener("beforeunload", (event) => this.#isChanged && this.#kept !== this.#look && event.preventDefault());
    byId("edit-form").addEventListener("submit", (event) => {
      event.preventDefault();
      this.#enter(byId("edit-token").value);
    });
  }

  /** Where looks are written to, if they are. */
  lay(place) {
    this.#place = place;
    setText(byId("keep-where"), this.#whereWords());
    for (const id of ["save-as", "versions-part"]) {
      byId(id).hidden = !place.may_edit;
    }
    byId("edit-form").hidden = place.may_edit;
    this.#offer();
    this.#listVersions();
  }

  #offer() {
    const own = this.#place.may_edit && ["file", "overlay"].includes(this.#opened.from);
    byId("rename").hidden = byId("remove").hidden = !own;
    byId("drop-draft").hidden = !this.#place.may_edit || this.#kept === null;
  }

  #whereWords() {
    const { writes, file, overlay, why_not: english, why_not_code: code, why_not_values: values } = this.#place;
    if (!this.#place.may_edit) {
      return say("bench.keep.rights");
    }
    if (writes === "nowhere") {
      return say("bench.keep.not", { why: reason({ code, values, why: english }) });
    }
    return writes === "file" ? say("bench.keep.file", { file }) : say("bench.keep.overlay", { overlay, file });
  }

  /** Whoever has the token for saving needs it once for each browser. */
  async #enter(token) {
    const response = await fetch("enter", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ token }) })
      .then(async (answer) => ({ status: answer.status, answer: await answer.json() })).catch(() => ({ status: 0, answer: null }));
    if (response.status === 200) {
      byId("edit-token").value = "";
      await this.#acts.allowed();
    }
    this.#acts.tell(response.status !== 200 ? whyNot(response) : this.#whereWords(), response.status === 200 && this.#place.may_edit);
    this.tell(this.#look);
  }

  /** The draft of a look, if it has one. */
  async draftOf(name) {
    if (!this.#place.may_edit || name === "") {
      return null;
    }
    const { status, answer } = await ask("GET", draftPath(name));
    return status === 200 && answer.look !== null ? answer : null;
  }

  /** What is on the bench: what is known of it, what it was when it was opened or saved, and what is kept as its draft since when. */
  opened(opened, clean, kept = null, at = 0) {
    this.#opened = opened;
    this.#clean = clean;
    this.#keep(kept, at);
  }

  /** What it has become. */
  tell(look) {
    this.#look = look;
    byId("save").classList.toggle("main", this.#isChanged);
    clearTimeout(this.#waits);
    this.#waiting = this.#place.may_edit && this.#opened.name !== "" && look !== (this.#kept ?? this.#clean);
    if (this.#waiting) {
      this.#waits = setTimeout(() => this.#next(() => this.#keepDraft()), DRAFT_MS);
    }
  }

  /** Does what waits, and is done when all is. */
  async settle() {
    do {
      clearTimeout(this.#waits);
      await this.#next(() => this.#keepDraft());
    } while (this.#waiting || this.#busy > 0);
  }

  /** The daemon is there again: what could not be kept is kept now. */
  again() {
    if (this.#place !== null) {
      this.tell(this.#look);
    }
  }

  get #isChanged() {
    return this.#look !== null && this.#look !== this.#clean;
  }

  /** Does something after all that was asked for before. */
  #next(action) {
    this.#busy++;
    const done = this.#queue.then(action).finally(() => this.#busy--);
    this.#queue = done.catch(() => {});
    return done;
  }

  /** A draft in which all has been undone is kept no longer. */
  async #keepDraft() {
    const { name, version } = this.#opened;
    const look = this.#look;
    if (!this.#waiting) {
      return;
    }
    this.#waiting = false;
    const keeps = this.#isChanged;
    const response = keeps ? await ask("PUT", draftPath(name), { look, base: version }, "d") : await ask("DELETE", draftPath(name), undefined, "d");
    if (response.status === 200) {
      this.#keep(keeps ? look : null, Date.now());
    } else {
      const words = say("bench.draft.refused", { why: why(response) });
      setText(byId("keep-draft"), words);
      this.#acts.tell(words, false);
    }
  }

  #keep(look, at) {
    this.#kept = look;
    setText(byId("keep-draft"), look === null ? "" : say("bench.draft", { time: moment(at) }));
    this.#offer();
  }

  async #dropDraft() {
    await this.#next(async () => {
      clearTimeout(this.#waits);
      this.#waiting = false;
      const response = await ask("DELETE", draftPath(this.#opened.name));
      if (response.status === 200) {
        this.#look = this.#clean;
        this.#acts.tell(say("bench.draft.dropped"), true);
      } else {
        this.#acts.tell(whyNot(response), false);
      }
    });
    if (!this.#isChanged) {
      this.#acts.open(this.#opened.name);
    }
  }

  #save() {
    if (!this.#place.may_edit || this.#place.writes === "nowhere") {
      this.#acts.tell(this.#whereWords(), false);
    } else if (this.#opened.name === "") {
      questionName(say("bench.save.as"), "", (name) => this.#saveAs(name));
    } else {
      this.#put(this.#opened.name);
    }
  }

  #saveAs(name) {
    this.#put(name, name === this.#opened.name ? undefined : "");
  }

  /** Saves what is on the bench now. What is changed while that takes its time is a draft of the look that has been saved. */
  async #put(name, base, sure) {
    const look = this.#look;
    const opened = this.#opened;
    enable(byId("save"), false);
    this.#acts.tell(say("bench.saving"), true);
    await this.#next(async () => {
      const response = await ask("PUT", lookPath(name), { look, base: base ?? this.#opened.version, sure });
      if (response.status === 200) {
        await this.#saved(name, look, response.answer);
      } else if (opened === this.#opened) {
        this.#notSaved(name, base, response);
      }
    });
    enable(byId("save"), true);
  }

  async #saved(name, look, answer) {
    const before = this.#opened.name;
    this.#acts.tell(say("bench.saved", { look: name, file: answer.file }), true);
    this.#acts.saved({ ...this.#opened, name, look, version: answer.version, from: answer.written, isNew: false }, look);
    if (before !== name && before !== "") {
      await ask("DELETE", draftPath(before), undefined, "d");
    }
    const gone = await ask("DELETE", draftPath(name), undefined, "d");
    if (gone.status === 200) {
      this.#keep(null);
    }
    this.tell(this.#look);
  }

  #notSaved(name, base, response) {
    const { status, answer } = response;
    if (status === 412) {
      this.#acts.tell(say("bench.conflict.title", { look: name }), false);
      this.#solve(name, answer);
    } else if (status === 422) {
      this.#refuse(answer.mistakes ?? []);
    } else if (answer?.code === "fault_look") {
      this.#acts.tell(say("bench.not_saved"), false);
      askWhetherSure(name, () => this.#put(name, base, true));
    } else {
      this.#acts.tell(whyNot(response), false);
    }
  }

  #refuse(mistakes) {
    const [first] = mistakes;
    this.#acts.tell(first === undefined ? say("bench.not_saved") : say("bench.not_saved.why", { what: mistakeWords(first) }), false);
    if (first !== undefined && first.layer !== null) {
      this.#acts.blame(first.layer, mistakes);
    }
  }

  /** Somebody else has changed it meanwhile: what it is here, what it is there, what it was, and which of them it is to be. */
  #solve(name, { base, theirs, yours }) {
    const lines = (one) => one === null || one === undefined ? [say("bench.conflict.gone")] : one.toml.trimEnd().split("\n");
    const texts = columns([[say("bench.conflict.yours"), lines(yours)], [say("bench.conflict.theirs"), lines(theirs)],
      [say("bench.conflict.base"), base === null ? [say("bench.conflict.unknown")] : lines(base)]]);
    question(say("bench.conflict.title", { look: name }), texts, [
      [say("bench.conflict.mine"), () => this.#put(name, theirs?.version ?? "")],
      [say("bench.conflict.their"), () => this.#dropDraft()],
    ]);
  }

  async #rename(to, sure) {
    await this.#next(async () => {
      const { name, version } = this.#opened;
      const response = await ask("POST", `${lookPath(name)}/rename`, { to, base: version, sure });
      if (response.status !== 200) {
        this.#notDone(response, name, () => this.#rename(to, true));
        return;
      }
      this.#acts.tell(say("bench.renamed", { look: to }), true);
      this.#acts.saved({ ...this.#opened, name: to, version: response.answer.version }, this.#clean);
      await ask("DELETE", draftPath(name), undefined, "d");
      this.#keep(null);
      this.tell(this.#look);
    });
  }

  #remove() {
    const { name, version } = this.#opened;
    const remove = (sure) => ask("DELETE", `${lookPath(name)}?base=${encodeURIComponent(version)}${sure ? "&sure=true" : ""}`);
    question(say("bench.remove.look"), say("bench.remove.words", { look: name }), [[say("bench.remove.look"), () => this.#do(remove, say("bench.removed", { look: name }), name)]]);
  }

  /** A look that shows a fault is changed only if somebody is sure. */
  #notDone(response, look, again) {
    this.#acts.tell(whyNot(response), false);
    if (response.answer?.code === "fault_look") {
      askWhetherSure(look, again);
    }
  }

  /** Writes something, and opens the look that this was about as it is then, by the name that it has then; of the cues, no look. */
  async #do(write, words, look, sure) {
    let name = look;
    const done = await this.#next(async () => {
      const response = await write(sure);
      const well = response.status === 200;
      if (well) {
        this.#acts.tell(words, true);
      } else {
        this.#notDone(response, look, () => this.#do(write, words, look, true));
      }
      if (well && look === this.#opened.name) {
        await ask("DELETE", draftPath(look), undefined, "d");
        this.#look = this.#clean;
        this.#waiting = false;
      }
      name = response.answer?.look ?? look;
      return well;
    });
    if (done && name !== "") {
      await this.#acts.open(name);
    }
    if (done) {
      await this.#acts.written();
    }
  }

  async #listVersions() {
    if (!byId("versions-part").open) {
      return;
    }
    const { status, answer } = await ask("GET", "versions");
    const all = status === 200 ? answer.versions : [];
    byId("no-versions").hidden = all.length > 0;
    byId("versions").replaceChildren(...all.map(({ id, at_ms: at, look, did, toml }) => {
      const what = say("bench.version", { time: moment(at), look: look === "" ? say("bench.cues") : look, did: say(`bench.did.${did}`) });
      return make("li", {}, make("span", { text: what }), button(say("bench.restore"), () => this.#restore(id, look, toml), { "aria-label": say("bench.restore.of", { what }) }));
    }));
  }

  #restore(id, look, toml) {
    const restore = async (sure) => {
      const now = await ask("GET", look === "" ? "cues" : lookPath(look));
      return now.status === 0 ? now : ask("POST", "restore", { id, base: now.answer.version ?? "", sure });
    };
    const before = make("pre", { tabindex: 0, text: toml === "" ? say("bench.restore.nothing") : toml });
    question(say("bench.restore"), before, [[say("bench.restore"), () => this.#do(restore, say("bench.restored"), look)]]);
  }
}
