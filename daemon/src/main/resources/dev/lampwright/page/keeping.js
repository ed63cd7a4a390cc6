// Where a look is kept: saved into the file or beside it, as a draft until then, and in its older versions.

import { Newest } from "./asks.js";
import { ask, whyNot } from "./bench_server.js";
import { button, make, setText } from "./dom.js";
import { moment } from "./values.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);
const DRAFT_MS = 1000;

export class Keeping {
  #acts;
  #place = null;
  #opened = { name: "" };
  #look = null;
  #clean = null;
  #waits = 0;
  #drafts = new Newest(({ name, look, base }) => this.#keepDraft(name, look, base));

  /**
   * What it does: open with a name; tell with words for the user and whether all is well; blame with the place of the layer that is to blame;
   * and saved with what is known of a look once it is saved.
   */
  constructor(acts) {
    this.#acts = acts;
    byId("save").addEventListener("click", () => this.#save());
    byId("save-as").addEventListener("click", () => this.#askName("bench.save.as", (name) => this.#saveAs(name)));
    byId("rename").addEventListener("click", () => this.#askName("bench.rename", (name) => this.#rename(name)));
    byId("remove").addEventListener("click", () => this.#remove());
    byId("drop-draft").addEventListener("click", () => this.#dropDraft());
    byId("versions-part").addEventListener("toggle", () => this.#listVersions());
    addEventListener("beforeunload", (event) => this.#isChanged && !this.#hasDraft && event.preventDefault());
    byId("edit-form").addEventListener("submit", (event) => {
      event.preventDefault();
      this.#enter(byId("edit-token").value);
    });
  }

  /** Where looks are written to, if they are. */
  lay(place) {
    this.#place = place;
    setText(byId("keep-where"), this.#whereWords());
    for (const id of ["save-as", "rename", "remove", "drop-draft"]) {
      byId(id).hidden = !place.may_edit;
    }
    byId("versions-part").hidden = !place.may_edit;
    byId("edit-form").hidden = place.may_edit;
  }

  #whereWords() {
    const { writes, file, overlay, why_not: why } = this.#place;
    if (!this.#place.may_edit) {
      return say("bench.keep.rights");
    }
    if (writes === "nowhere") {
      return say("bench.keep.not", { why });
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
    this.#acts.tell(response.status !== 200 ? whyNot(response) : this.#whereWords(), response.status === 200);
  }

  /** The draft of a look, if it has one. */
  async draftOf(name) {
    if (!this.#place.may_edit || name === "") {
      return null;
    }
    const { status, answer } = await ask("GET", `drafts/${encodeURIComponent(name)}`);
    return status === 200 ? answer : null;
  }

  /** What is on the bench, and what it was when it was opened or saved. */
  opened(look, clean, draft) {
    this.#opened = look;
    this.#clean = clean;
    this.#tellDraft(draft?.at_ms);
    byId("rename").hidden = byId("remove").hidden = !this.#place.may_edit || !["file", "overlay"].includes(look.from);
    this.#listVersions();
  }

  /** What it has become. */
  tell(look) {
    if (look !== this.#look) {
      this.#look = look;
      clearTimeout(this.#waits);
      if (this.#place.may_edit && this.#opened.name !== "" && (look !== this.#clean || this.#hasDraft)) {
        const { name, version } = this.#opened;
        this.#waits = setTimeout(() => this.#drafts.put({ name, look, base: version }), DRAFT_MS);
      }
    }
    byId("save").classList.toggle("main", this.#isChanged);
  }

  get #isChanged() {
    return this.#look !== null && this.#look !== this.#clean;
  }

  get #hasDraft() {
    return !byId("drop-draft").hidden;
  }

  /** One in which all has been undone is kept no longer. */
  async #keepDraft(name, look, base) {
    const path = `drafts/${encodeURIComponent(name)}`;
    const keeps = look !== this.#clean;
    const { status } = keeps ? await ask("PUT", path, { look, base }, "d") : await ask("DELETE", path, undefined, "d");
    if (status === 200 && name === this.#opened.name) {
      this.#tellDraft(keeps ? Date.now() : undefined);
    }
  }

  #tellDraft(at) {
    setText(byId("keep-draft"), at === undefined ? "" : say("bench.draft", { time: moment(at) }));
    byId("drop-draft").hidden = at === undefined;
  }

  async #dropDraft() {
    clearTimeout(this.#waits);
    await ask("DELETE", `drafts/${encodeURIComponent(this.#opened.name)}`);
    this.#acts.open(this.#opened.name);
    this.#acts.tell(say("bench.draft.dropped"), true);
  }

  #save() {
    if (!this.#place.may_edit || this.#place.writes === "nowhere") {
      this.#acts.tell(this.#whereWords(), false);
    } else if (this.#opened.name === "") {
      this.#askName("bench.save.as", (name) => this.#saveAs(name));
    } else {
      this.#put(this.#opened.name, this.#opened.version);
    }
  }

  #saveAs(name) {
    this.#put(name, name === this.#opened.name ? this.#opened.version : "");
  }

  async #put(name, base, sure) {
    const look = this.#look;
    const response = await ask("PUT", `looks/${encodeURIComponent(name)}`, { look, base, sure });
    const { status, answer } = response;
    if (status === 200) {
      clearTimeout(this.#waits);
      await ask("DELETE", `drafts/${encodeURIComponent(this.#opened.name)}`);
      this.#clean = look;
      this.#acts.tell(say("bench.saved", { look: name, file: answer.file }), true);
      this.#acts.saved({ ...this.#opened, name, version: answer.version, from: answer.written, isNew: false });
    } else if (status === 412) {
      this.#solve(name, answer);
    } else if (status === 422) {
      this.#refuse(answer.mistakes ?? []);
    } else if (answer?.code === "fault_look") {
      this.#ask(say("bench.fault.title"), say("bench.fault.words", { look: name }), [[say("bench.fault.save"), () => this.#put(name, base, true)]]);
    } else {
      this.#acts.tell(whyNot(response), false);
    }
  }

  #refuse(mistakes) {
    const [first] = mistakes;
    this.#acts.tell(first === undefined ? say("bench.not_saved") : say("bench.not_saved.why", { what: first.what, instead: first.instead }), false);
    if (first !== undefined && first.layer !== null) {
      this.#acts.blame(first.layer);
    }
  }

  /** Somebody else has changed it meanwhile: what it was, what it is there, what it is here, and which of them it is to be. */
  #solve(name, { base, theirs, yours }) {
    const lines = new Set((base?.toml ?? "").split("\n"));
    const column = (code, one) => make("section", {}, make("h3", { text: say(code) }), make("pre", { tabindex: 0 },
      ...(one === null ? [say("bench.conflict.gone")] : one.toml.split("\n").map((line) => make("span", { class: lines.has(line) ? "" : "new-line", text: `${line}\n` })))));
    const columns = make("div", { class: "columns" }, column("bench.conflict.yours", yours), column("bench.conflict.theirs", theirs), column("bench.conflict.base", base));
    this.#ask(say("bench.conflict.title", { look: name }), columns, [
      [say("bench.conflict.mine"), () => this.#put(name, theirs?.version ?? "")],
      [say("bench.conflict.their"), () => this.#dropDraft()],
    ]);
  }

  /** Asks with buttons; whatever is answered, the question goes. */
  #ask(title, content, answers) {
    const dialog = byId("question");
    setText(byId("question-title"), title);
    byId("question-body").replaceChildren(content);
    byId("question-answers").replaceChildren(...answers.map(([words, action]) => button(words, () => {
      dialog.close();
      action();
    })), button(say("bench.cancel"), () => dialog.close()));
    dialog.showModal();
  }

  #askName(code, action) {
    const box = make("input", { id: "wanted-name", type: "text", required: true, maxlength: 40, pattern: "[a-z0-9\\-]{1,40}", spellcheck: "false", autocapitalize: "off", "aria-describedby": "wanted-help" });
    box.value = this.#opened.name;
    const form = make("form", { id: "name-form" }, make("label", { for: "wanted-name", text: say("bench.new.name") }), box, make("p", { id: "wanted-help", class: "note", text: say("bench.new.help") }));
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      byId("question").close();
      action(box.value);
    });
    this.#ask(say(code), form, []);
    byId("question-answers").prepend(make("button", { type: "submit", form: "name-form", class: "main", text: say(code) }));
    box.select();
  }

  async #rename(to) {
    const response = await ask("POST", `looks/${encodeURIComponent(this.#opened.name)}/rename`, { to, base: this.#opened.version });
    if (response.status === 200) {
      this.#acts.tell(say("bench.renamed", { look: to }), true);
      this.#acts.saved({ ...this.#opened, name: to, version: response.answer.version });
    } else {
      this.#acts.tell(whyNot(response), false);
    }
  }

  #remove() {
    const { name, version } = this.#opened;
    this.#ask(say("bench.remove.look"), say("bench.remove.words", { look: name }), [[say("bench.remove.look"), async () => {
      const response = await ask("DELETE", `looks/${encodeURIComponent(name)}?base=${encodeURIComponent(version)}`);
      this.#acts.tell(response.status === 200 ? say("bench.removed", { look: name }) : whyNot(response), response.status === 200);
      if (response.status === 200) {
        this.#acts.open(response.answer.from === "" ? "" : name);
      }
    }]]);
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
    this.#ask(say("bench.restore"), make("pre", { tabindex: 0, text: toml === "" ? say("bench.restore.nothing") : toml }), [[say("bench.restore"), async () => {
      const now = look === "" ? await ask("GET", "cues") : await ask("GET", `looks/${encodeURIComponent(look)}`);
      const response = await ask("POST", "restore", { id, base: now.answer?.version ?? "" });
      this.#acts.tell(response.status === 200 ? say("bench.restored") : whyNot(response), response.status === 200);
      if (response.status === 200) {
        this.#acts.open(look === "" ? this.#opened.name : look);
      }
    }]]);
  }
}
