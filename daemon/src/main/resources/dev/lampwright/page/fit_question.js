// A question of the fitting, drawn as what it asks for: buttons, a slider, a field.

import { Newest } from "./asks.js";
import { button, make } from "./dom.js";
import { isSaid, say } from "./words.js";

const answers = document.getElementById("answers");
/** Questions whose button has a text of its own. */
const SETTLED = ["brightness_level", "mark_one", "mark_other", "mark_corner", "file_write"];

/** What stands for a phrase within another while that is put together. */
const INNER = "\u0001";

/** Words a question of the daemon. */
export function asked(question) {
  return inWords(`fit.q.${question.code}`, question);
}

/** Words a message of the daemon. */
export function said(message) {
  return inWords(`fit.say.${message.code}`, message);
}

/** Words why the daemon refused an answer. */
export function refused(reason) {
  return inWords(`fit.no.${reason.code}`, reason);
}

/** Words one of several answers. */
function offered(choice) {
  return inWords(`fit.o.${choice.code}`, choice);
}

/**
 * What the daemon sent, in the language of the page, as parts to put into an element. What the page has no text for is in the daemon's own
 * English, and marked so for those who listen. A value may be a phrase of its own.
 */
function inWords(code, { values, text }) {
  if (!isSaid(code)) {
    return [english(text)];
  }
  const outer = Object.fromEntries(Object.entries(values).map(([name, value]) => [name, typeof value === "object" ? INNER + name + INNER : value]));
  return say(code, outer).split(INNER).flatMap((part, i) => i % 2 === 0 ? [part] : within(values[part]));
}

/** Several phrases are a list. */
function within(phrase) {
  if (Array.isArray(phrase)) {
    return phrase.flatMap((one, i) => i === 0 ? within(one) : [say("fit.comma"), ...within(one)]);
  }
  const code = `fit.say.${phrase.code}`;
  return isSaid(code) ? inWords(code, phrase) : [english(phrase.text.charAt(0).toUpperCase() + phrase.text.slice(1).replace(/(?<![.!?])$/, "."))];
}

/** Words in the daemon's own English. */
export function english(text) {
  return make("span", { lang: "en", text });
}

/** Draws what can be answered. acts: answer with a line, try with a line, and give with what belongs into a file. */
export function draw(question, acts) {
  answers.replaceChildren(...parts(question, acts));
  answers.dataset.number = question.number;
}

function parts(question, acts) {
  switch (question.kind) {
    case "choice":
      return [choices(question, acts)];
    case "corner":
      return [corners(question, acts)];
    case "slider":
      return [slider(question, acts)];
    case "enter":
      return [button(settles(question), () => acts.answer(""), { class: "main big" })];
    default:
      return [suggestions(question, acts), field(question, acts), skip(question, acts)].filter((part) => part !== null);
  }
}

function settles({ code }) {
  return say(SETTLED.includes(code) ? `fit.settle.${code}` : "fit.go_on");
}

function choices(question, acts) {
  const made = question.choices.map((choice) => chosen(choice, acts));
  return make("div", { class: "choices", role: "group", "aria-labelledby": "question" }, ...made);
}

/** A colour is shown beside its name. */
function chosen(choice, acts) {
  const made = button("", () => acts.answer(choice.key), { class: "big", "data-key": choice.key });
  made.append(make("span", { class: `hue ${choice.code}`, "aria-hidden": "true" }), make("span", {}, ...offered(choice)));
  return made;
}

/** The outline of a frame, with each answer at its corner. */
function corners(question, acts) {
  const made = question.choices.map((choice) => {
    const one = button("", () => acts.answer(choice.key), { class: choice.code, "data-key": choice.key });
    one.append(...offered(choice));
    return one;
  });
  return make("div", { class: "outline", role: "group", "aria-labelledby": "question" }, ...made);
}

/** The light follows while the slider moves. While an answer is awaited, only the newest value is kept to send next. */
function slider(question, acts) {
  const words = make("output", { for: "value" });
  const newest = new Newest(async (value) => {
    range.dataset.busy = "true";
    await acts.try(String(value));
    range.dataset.busy = "false";
  });
  const range = make("input", { id: "value", type: "range", min: question.least, max: question.most, step: 1, value: question.usual, "aria-labelledby": "question" });
  const move = (value) => {
    range.value = value;
    moved();
  };
  const moved = () => {
    words.textContent = say("fit.value", { value: Number(range.value) });
    newest.put(Number(range.value));
  };
  words.textContent = say("fit.value", { value: Number(question.usual) });
  range.addEventListener("input", moved);
  const less = button("−", () => move(Number(range.value) - 1), { "aria-label": say("fit.less") });
  const more = button("+", () => move(Number(range.value) + 1), { "aria-label": say("fit.more") });
  const settle = button(settles(question), () => acts.settle(range.value, newest), { class: "main big" });
  return make("div", { class: "slide" }, words, make("div", { class: "row" }, less, range, more), settle);
}

function suggestions(question, acts) {
  if (question.suggestions.length === 0) {
    return null;
  }
  return make("div", { class: "choices" }, ...question.suggestions.map((one) => button(one, () => acts.answer(one), { class: "big", "data-key": one })));
}

function field(question, acts) {
  const input = FIELDS[question.kind]?.(question) ?? make("input", { type: "text", value: question.usual, spellcheck: "false", autocapitalize: "off", autocomplete: "off" });
  input.id = "value";
  input.required = true;
  input.setAttribute("aria-labelledby", "question");
  const inFile = question.kind === "secret" || question.kind === "certificates";
  const form = make("form", { class: "field" }, input, make("button", { type: "submit", class: "main big", text: say("fit.go_on") }));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const line = input.value;
    if (inFile) {
      input.value = "";
      acts.give(line);
    } else {
      acts.answer(line);
    }
  });
  return form;
}

const FIELDS = {
  number: ({ least, most, usual }) => make("input", { type: "number", min: least, max: most, step: "any", value: usual, inputmode: "decimal" }),
  whole: ({ least, most, usual }) => make("input", { type: "number", min: least, max: most, step: 1, value: usual, inputmode: "numeric" }),
  secret: () => make("input", { type: "password", autocomplete: "off" }),
  certificates: () => make("textarea", { rows: 8, spellcheck: "false" }),
};

/** What an empty line means. */
function skip(question, acts) {
  return question.skip === "" ? null : button(say(`fit.skip.${question.skip}`), () => acts.answer(""), { id: "skip", class: "big" });
}
