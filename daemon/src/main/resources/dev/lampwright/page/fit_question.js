// A question of the fitting, drawn as what it asks for: buttons, a slider, a field.

import { Newest } from "./asks.js";
import { button, make } from "./dom.js";
import { isSaid, say } from "./words.js";

const answers = document.getElementById("answers");
/** What the page says of a button that settles a question, where it is more than "go on". */
const SETTLED = ["brightness_level", "mark_one", "mark_other", "mark_corner", "file_write"];

/** A question of the daemon in the words of the page, or else in the daemon's own English. */
export function asked({ code, values, text }) {
  return isSaid(`fit.q.${code}`) ? say(`fit.q.${code}`, values) : text;
}

/** What the daemon says, likewise. */
export function said({ code, values, text }) {
  return isSaid(`fit.say.${code}`) ? say(`fit.say.${code}`, values) : text;
}

/** Why an answer was refused, likewise. */
export function refused({ code, values, text }) {
  return isSaid(`fit.no.${code}`) ? say(`fit.no.${code}`, values) : text;
}

/** One of several answers, likewise. */
function offered({ code, values, text }) {
  return isSaid(`fit.o.${code}`) ? say(`fit.o.${code}`, values) : text;
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
  made.append(make("span", { class: `hue ${choice.code}`, "aria-hidden": "true" }), make("span", { text: offered(choice) }));
  return made;
}

/** The outline of a frame, whose corners are where they are. */
function corners(question, acts) {
  const made = question.choices.map((choice) => button(offered(choice), () => acts.answer(choice.key), { class: choice.code, "data-key": choice.key }));
  return make("div", { class: "outline", role: "group", "aria-labelledby": "question" }, ...made);
}

/** The light follows while it moves; of the values that come meanwhile only the newest is sent. */
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
