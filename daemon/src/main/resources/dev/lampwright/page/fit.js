// The guided fitting: the daemon asks one question after the other, and people answer here. The page that holds the fitting renews a lease; when that lapses, everything goes dark.

import { Contact } from "./contact.js";
import { make, setText } from "./dom.js";
import { Entry } from "./entry.js";
import { asked, draw, english, refused, said } from "./fit_question.js";
import { enter, look, rights, send } from "./fit_server.js";
import { FIT_WORDS } from "./fit_words.js";
import { fill, isSaid, learn, reason, say } from "./words.js";

/** Where this tab keeps its lease; rigs of one process share the browser's storage. */
const LEASE = `lampwright.fit ${location.pathname.replace(/[^/]*$/, "")}`;
const AGAIN_MS = 1000;
/** Shorter waits are not worth a word. */
const SOON_MS = 600;
/** How long a daemon takes to start with the new file, at most. */
const START_MS = 30_000;
/** How the daemon marks and indents lines of a file, and of other commands. */
const QUOTED = "quoted";
const INDENT = /^ {2,4}/;
const byId = (id) => document.getElementById(id);

await learn(FIT_WORDS);
fill(document);

const contact = new Contact();
const entry = new Entry(() => begin());

let lease = sessionStorage.getItem(LEASE) ?? "";
let view = null;
/** The question that is drawn, by its number. */
let drawn = 0;
let beating = false;
let waiting = 0;
/** A slider that was settled: once the light is there, that is the answer. */
let settled = null;
/** Why the daemon refused the last request, in words; it stays until the next one. */
let refusal = "";

const acts = {
  answer: (line) => act("answer", { line }),
  try: (line) => act("try", { line }),
  give: (line) => act("give", { line }),
  settle: async (line, newest) => {
    while (newest.busy) {
      await rest(50);
    }
    if (line === view.talk.question.usual) {
      await act("answer", { line: "" });
    } else {
      settled = { code: view.talk.question.code, line };
      await act("answer", { line });
    }
  },
};

byId("begin").addEventListener("click", () => start());
byId("again").addEventListener("click", () => {
  lease = "";
  begin();
});
byId("back").addEventListener("click", () => act("back"));
byId("stop").addEventListener("click", () => act("stop"));
byId("edit-form").addEventListener("submit", async (event) => {
  event.preventDefault();
  const { status, answer } = await enter(byId("edit-token").value);
  if (status === 200) {
    byId("edit-token").value = "";
    begin();
  } else {
    complain(byId("start-why"), status === 0 ? say("entry.silent") : say("entry.refused", { why: reason({ values: {}, ...answer }) }));
  }
});

/** Goes on with the fitting if this tab holds it, or else shows the beginning. */
async function begin() {
  await entry.takeToken();
  const held = lease === "" ? { status: 409 } : await send("beat", { lease, changes: -1 });
  const seen = held.status === 200 ? held : await look();
  if (take(seen)) {
    await showAllowed();
  }
}

async function start() {
  drawn = 0;
  take(await send("begin"));
}

async function act(what, body = {}) {
  refusal = "";
  setBusy(what !== "try");
  take(await send(what, { lease, number: view.talk.number, ...body }));
}

/** Takes in a response; returns whether it was an answer. */
function take({ status, answer }) {
  if (status === 401) {
    showOnly("entry");
    contact.askForToken();
    return false;
  }
  if (status === 0) {
    contact.beLost(false);
    setTimeout(begin, AGAIN_MS);
    return false;
  }
  contact.beLive();
  if (status !== 200) {
    refuse(answer);
    return false;
  }
  show(answer);
  return true;
}

/** Shows a view, unless a newer one has been shown. */
function show(next) {
  showRig(next.rig);
  const old = view !== null && view.lease === next.lease && (next.talk?.changes ?? 0) < (view.talk?.changes ?? 0);
  if (old) {
    return;
  }
  view = next;
  lease = view.mine ? view.lease : "";
  sessionStorage.setItem(LEASE, lease);
  if (view.mine && view.running) {
    showTalk();
    beat();
  } else if (view.mine) {
    showEnd();
  } else {
    showStart();
  }
}

/** Says which rig is fitted, where a process has several. */
function showRig(rig) {
  const title = rig === "" ? say("fit.title") : say("fit.title_of", { rig });
  setText(byId("name"), title);
  document.title = title;
}

/** Renews the lease, and asks for news, as long as this tab holds the fitting. */
async function beat() {
  if (beating) {
    return;
  }
  beating = true;
  while (view.mine && view.running) {
    const seen = await send("beat", { lease, changes: view.talk.changes });
    if (seen.status === 0) {
      contact.beLost(false);
      await rest(AGAIN_MS);
    } else if (!take(seen)) {
      break;
    }
  }
  beating = false;
}

function showOnly(id) {
  for (const one of ["entry", "start", "talk", "end"]) {
    byId(one).hidden = one !== id;
  }
  byId("ways").hidden = id !== "talk";
}

function showStart() {
  showOnly("start");
  const kind = view.changes_file ? "change" : view.under_way ? "resume" : "new";
  setText(byId("start-title"), say(`fit.start.${kind}`));
  setText(byId("start-words"), say(`fit.about.${kind}`));
  setText(byId("begin"), say(`fit.begin.${kind}`));
  setText(byId("start-file"), say("fit.file", { file: view.file }));
  complain(byId("start-why"), view.running ? say("why.fit_held") : "");
}

/** Offers to begin; or says why that is not allowed here, and how it could be. */
async function showAllowed() {
  const { status, answer } = await rights();
  byId("up").hidden = !(status === 200 && answer.bench);
  if (byId("start").hidden) {
    return;
  }
  byId("begin").hidden = view.running || !answer?.may_edit;
  byId("edit-form").hidden = true;
  if (status === 200 && !answer.may_edit) {
    const beat = await send("beat");
    byId("edit-form").hidden = beat.answer?.code !== "fit_needs_edit_token";
    complain(byId("start-why"), reason({ values: {}, ...beat.answer }));
  } else if (view.running) {
    setTimeout(begin, 5 * AGAIN_MS);
  }
}

function showTalk() {
  showOnly("talk");
  const { talk } = view;
  showStep(talk.step);
  showSaid(byId("said"), talk.said);
  complain(byId("missing"), ...(talk.missing === undefined ? [""] : said(talk.missing)));
  complain(byId("refused"), ...(talk.refused === undefined ? [refusal] : refused(talk.refused)));
  byId("value")?.setAttribute("aria-invalid", String(talk.refused !== undefined));
  if (!talk.asking) {
    setBusy(true);
    return;
  }
  setBusy(false);
  if (talk.number !== drawn) {
    drawn = talk.number;
    showQuestion({ ...talk.question, number: talk.number });
  }
}

function showQuestion(question) {
  const done = settled !== null && settled.code === question.code && settled.line === question.usual;
  settled = null;
  if (done) {
    act("answer", { line: "" });
    return;
  }
  byId("question").replaceChildren(...asked(question));
  const helpful = question.code !== "" && isSaid(`fit.help.${question.code}`);
  setText(byId("help"), helpful ? say(`fit.help.${question.code}`, question.values) : question.help);
  byId("help-part").open = false;
  draw(question, acts);
  byId("question").focus();
  scrollTo(0, 0);
}

function showStep(step) {
  const { at = 0, of = 0, name = "" } = step;
  const words = name === "" ? "" : say(`fit.step.${name}`);
  setText(byId("step"), at === 0 ? words : say("fit.step_of", { at, of, name: words }));
  byId("steps").hidden = at === 0;
  byId("steps").firstElementChild.style.width = `${100 * at / Math.max(1, of)}%`;
}

/** Shows messages. Lines of a file or of another command stay as they are. */
function showSaid(element, lines) {
  const key = JSON.stringify(lines);
  if (element.dataset.key === key) {
    return;
  }
  element.dataset.key = key;
  const blocks = [];
  for (const one of lines) {
    if (one.code !== QUOTED) {
      blocks.push(make("p", {}, ...said(one)));
    } else if (blocks.at(-1)?.localName === "pre") {
      blocks.at(-1).append(`\n${one.text.replace(INDENT, "")}`);
    } else {
      blocks.push(make("pre", { lang: "en", tabindex: "0", text: one.text.replace(INDENT, "") }));
    }
  }
  element.replaceChildren(...blocks);
}

/** While the daemon works, the question stays in sight, and cannot be answered again. */
function setBusy(busy) {
  byId("answers").inert = busy;
  byId("back").disabled = busy;
  clearTimeout(waiting);
  waiting = busy ? setTimeout(() => setText(byId("news"), say("fit.busy")), SOON_MS) : 0;
  if (!busy) {
    setText(byId("news"), "");
  }
  document.body.classList.toggle("busy", busy);
}

/** After a change, the daemon has its controller back. Of a change no answers are kept. */
function showEnd() {
  showOnly("end");
  setBusy(false);
  const { end, why } = view;
  const ofChange = `fit.end.change.${end}`;
  setText(byId("end-title"), say(view.changes_file && isSaid(ofChange) ? ofChange : `fit.end.${end}`));
  byId("end-words").replaceChildren(end === "failed" ? english(why) : say(end === "done" || view.under_way ? `fit.after.${end}` : "fit.after.unkept"));
  showSaid(byId("review"), end === "done" ? view.talk.said : []);
  byId("again").hidden = false;
  byId("end-title").focus();
  if (end === "done") {
    awaitLight();
  }
}

/** Waits for the live page: the daemon starts with the new file, and opens it a moment later. */
async function awaitLight() {
  const until = Date.now() + START_MS;
  while (byId("to-light").hidden && Date.now() < until) {
    const { status, answer } = await rights();
    byId("to-light").hidden = !(status === 200 && answer.bench);
    byId("again").hidden = byId("to-light").hidden;
    await rest(AGAIN_MS);
  }
}

/** Only a page that does not hold the fitting any more leaves it. */
function refuse(answer) {
  const why = reason({ values: {}, ...answer });
  const words = answer.code?.startsWith("fit_") ? why : say("refused", { why });
  if (byId("talk").hidden) {
    complain(byId("start-why"), words);
  } else if (answer.code === "fit_not_held") {
    lease = "";
    begin();
  } else {
    refusal = words;
    complain(byId("refused"), words);
    setBusy(false);
  }
}

/** Puts words into an element that is read out; but not again if they are the same. */
function complain(element, ...words) {
  const next = make("p", {}, ...words);
  if (element.textContent !== next.textContent) {
    element.replaceChildren(...next.childNodes);
  }
  element.hidden = element.textContent === "";
}

function rest(ms) {
  return new Promise((done) => setTimeout(done, ms));
}

addEventListener("hashchange", () => begin());
begin();
