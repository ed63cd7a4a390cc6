// Asks in a dialog before something is done that cannot be taken back with "undo".

import { button, make, setText } from "./dom.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);

/** Asks with buttons: pairs of words and what to do. Any answer closes the question. */
export function question(title, content, answers) {
  const dialog = byId("question");
  setText(byId("question-title"), title);
  byId("question-body").replaceChildren(content);
  byId("question-answers").replaceChildren(...answers.map(([words, action]) => button(words, () => {
    dialog.close();
    action();
  })), button(say("bench.cancel"), () => dialog.close()));
  dialog.showModal();
}

/** Everybody must understand a look that shows a fault. */
export function askWhetherSure(look, action) {
  question(say("bench.fault.title"), say("bench.fault.words", { look: look === "" ? say("bench.cues") : look }), [[say("bench.fault.save"), action]]);
}

/** Asks for the name of a look. */
export function questionName(title, name, action) {
  const box = make("input", { id: "wanted-name", type: "text", required: true, maxlength: 40, pattern: "[a-z0-9\\-]{1,40}", spellcheck: "false", autocapitalize: "off", "aria-describedby": "wanted-help" });
  box.value = name;
  const form = make("form", { id: "name-form" }, make("label", { for: "wanted-name", text: say("bench.new.name") }), box, make("p", { id: "wanted-help", class: "note", text: say("bench.new.help") }));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    byId("question").close();
    action(box.value);
  });
  question(title, form, []);
  byId("question-answers").prepend(make("button", { type: "submit", form: "name-form", class: "main", text: title }));
  box.select();
}

/** Texts side by side, each a pair of a title and its lines; lines that are not in the last of them stand out. */
export function columns(texts) {
  const known = new Set(texts.at(-1)[1]);
  const line = (text) => make("span", { class: known.has(text) ? "" : "new-line", text: `${text}\n` });
  return make("div", { class: "columns" }, ...texts.map(([title, lines]) => make("section", {}, make("h3", { text: title }), make("pre", { tabindex: 0 }, ...lines.map(line)))));
}
