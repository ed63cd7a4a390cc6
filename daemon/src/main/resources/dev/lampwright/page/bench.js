// The bench, on which a look is made: puts its parts together.

import { Newest } from "./asks.js";
import { ask, whyNot } from "./bench_server.js";
import { BENCH_WORDS } from "./bench_words.js";
import { Contact } from "./contact.js";
import { Cues } from "./cues.js";
import { setText } from "./dom.js";
import { Drawing } from "./drawing.js";
import { Entry } from "./entry.js";
import { brightest, Film, framesOf, inTime } from "./film.js";
import { Keeping } from "./keeping.js";
import { Layers } from "./layers.js";
import { Lights } from "./lights.js";
import { flashes, idOf, signalsOf } from "./look_edit.js";
import { Meters } from "./meters.js";
import { Player } from "./player.js";
import { Lamps, Stage } from "./stage.js";
import { Tab } from "./tab.js";
import { Tools } from "./tools.js";
import { Trial } from "./trial.js";
import { clock } from "./values.js";
import { Versions } from "./versions.js";
import { fill, learn, say } from "./words.js";

/** Frames of a layer alone: as many pixels as its band has room for. */
const BAND_PIXELS = 60;
/** What takes the daemon seconds to find out is asked for once nothing has been changed for this long. */
const REST_MS = 1500;
const byId = (id) => document.getElementById(id);

await learn(BENCH_WORDS);
fill(document);

const contact = new Contact();
const stage = new Stage((zones) => layers?.aim(zones));
const drawing = new Drawing(stage);
const lamps = new Lamps();
const film = new Film(showFrame);
const meters = new Meters();
const tab = new Tab((topic, message) => LISTENERS[topic]?.(message));
const entry = new Entry(() => tab.open());
const tools = new Tools({ undo: () => versions.undo(), redo: () => versions.redo(), open: openLook, tell: tellNews });
const trial = new Trial(tellAnswer, showTrial);
const keeping = new Keeping({ open: openLook, tell: tellAnswer, blame: (at) => layers.focus(at), saved, allowed: layLooks });
const cues = new Cues({ open: openLook, tell: tellAnswer });

let layout = null;
let report = null;
let layers = null;
let lights = null;
let player = null;
/** Which looks there are. */
let known = [];
let vocabulary = null;
let versions = new Versions({ layers: [] }, changed);
/** The look as it was opened: its name and what the daemon said of it. */
let opened = { name: "" };
let mistakes = [];
let resting = 0;

const LISTENERS = { layout: takeLayout, report: takeReport, live: beLive, lost: beLost, stranger: askForToken };

async function takeLayout(next) {
  if (layout !== null && layout.version !== next.version) {
    location.reload();
  }
  const again = layout !== null;
  layout = next;
  stage.lay(layout);
  lamps.lay(layout);
  if (again) {
    refresh();
  } else {
    await begin();
  }
}

function takeReport(next) {
  report = next;
  player?.report(report);
}

/** What there is to make looks of, and the look that the address names, or that is on. */
async function begin() {
  const [words, looks] = await Promise.all([ask("GET", "vocabulary"), ask("GET", "looks")]);
  if (words.status !== 200 || looks.status !== 200) {
    setText(byId("alert"), whyNot(words.status === 200 ? looks : words));
    return;
  }
  vocabulary = words.answer;
  layers = new Layers(byId("layers"), byId("adds"), vocabulary, (look, what) => versions.put(look, what), tellNews);
  lights = new Lights(byId("lights"), vocabulary, (look, what) => versions.put(look, what));
  player = new Player(vocabulary, refresh);
  if (report !== null) {
    player.report(report);
  }
  layPlace(looks.answer);
  const asked = new URLSearchParams(location.search).get("look");
  await openLook(asked ?? looks.answer.looks.find(({ on }) => on)?.name ?? "");
  byId("workbench").hidden = false;
}

/** Which looks there are, where they are saved, and who may. */
async function layLooks() {
  const { status, answer } = await ask("GET", "looks");
  if (status === 200) {
    layPlace(answer);
  }
}

function layPlace(looks) {
  known = looks.looks;
  tools.lay(looks, vocabulary);
  keeping.lay(looks);
  cues.lay(vocabulary, looks);
  cues.load();
}

/** Puts a look on the bench: one that there is, or a new one that begins as another or as nothing. */
async function openLook(name, from = name) {
  const response = from === "" ? { status: 200, answer: { look: { layers: [] }, version: "", from: "" } } : await ask("GET", `looks/${encodeURIComponent(from)}`);
  if (response.status !== 200) {
    setText(byId("alert"), whyNot(response));
    return;
  }
  const isNew = name !== from || from === "";
  const draft = await keeping.draftOf(name);
  const look = { layers: [], ...response.answer.look };
  mistakes = [];
  versions = new Versions(look, changed);
  beOpen({ ...response.answer, name, version: draft?.base ?? (isNew ? "" : response.answer.version), isNew });
  keeping.opened(opened, look, draft);
  if (draft !== null) {
    versions.put({ layers: [], ...draft.look });
  } else {
    changed(versions.now);
  }
}

/** What is on the bench has a name, and perhaps another than before. */
function beOpen(look) {
  opened = look;
  history.replaceState(null, "", `?look=${encodeURIComponent(look.name)}`);
  setText(byId("name"), look.name === "" ? say("bench.new.unnamed") : look.name);
  document.title = say("bench.title.of", { look: look.name });
  tools.opened(look);
  cues.opened(look.name);
}

/** It is in the file as it is here. */
function saved(look) {
  beOpen(look);
  keeping.opened(look, versions.now, null);
  keeping.tell(versions.now);
  layLooks();
}

/** Another version counts now: after a change, or after undoing one. */
function changed(look) {
  showLook();
  lights.tell(look);
  player.follow(signalsOf(look));
  tools.tell(versions);
  keeping.tell(look);
  trial.follow(opened.name, look);
  refresh();
}

function showLook() {
  const look = versions.now;
  const byPlace = mistakes.map((mistake) => ({ ...mistake, layer: look.layers.findIndex((layer) => idOf(layer) === mistake.id) }));
  layers.tell(look, byPlace);
  byId("no-layers").hidden = look.layers.length > 0;
}

/** Draws and measures it again; once there is something to draw, as the daemon may report a new layout before. */
function refresh() {
  if (player === null) {
    return;
  }
  const wanted = { name: opened.name, look: versions.now, printer: player.printer, guards: player.guarded };
  previews.put(wanted);
  bands.put(wanted);
  checks.put(wanted);
  clearTimeout(resting);
  meters.tellAlike(null);
  resting = setTimeout(() => comparisons.put(wanted), REST_MS);
}

const previews = new Newest(async ({ name, look, printer, guards }) => {
  const { status, answer } = await ask("POST", "preview", { name, look, printer, guards, from_s: 0, seconds: 10, rate: 20 });
  if (status === 200) {
    film.load(answer);
  } else if (look.layers.length === 0) {
    film.dark(layout.pixels);
  }
});

const checks = new Newest(async ({ name, look }) => {
  const { status, answer } = await ask("POST", "check", { name, look }, "c");
  if (status === 200) {
    mistakes = answer.mistakes.map((mistake) => ({ ...mistake, id: look.layers[mistake.layer] === undefined ? 0 : idOf(look.layers[mistake.layer]) }));
    meters.tell(answer, look);
    showLook();
  }
});

const comparisons = new Newest(async ({ name, look }) => {
  const { status, answer } = await ask("POST", "check", { name, look, alike: true }, "a");
  if (status === 200 && look === versions.now) {
    meters.tellAlike(answer.alike ?? []);
    meters.tell(answer, look);
  }
});

/** What is drawn of which layer, so that only those are asked for that have changed. */
let drawn = new Map();
const bands = new Newest(async ({ name, look, printer }) => {
  const before = drawn;
  const key = JSON.stringify(printer);
  drawn = new Map();
  for (const [at, layer] of look.layers.entries()) {
    const has = before.get(idOf(layer));
    if (has?.layer === layer && has.key === key) {
      drawn.set(idOf(layer), has);
    } else {
      await drawBand(name, look, at, printer, key);
    }
  }
});

async function drawBand(name, look, at, printer, key) {
  const layer = look.layers[at];
  const { status, answer } = await ask("POST", "preview", { name, look, printer, layer: at, guards: false, from_s: 0, seconds: 10, rate: 10, pixels: BAND_PIXELS }, "b");
  if (status === 200 && answer.frames > 0) {
    const frames = framesOf(answer);
    drawn.set(idOf(layer), { layer, key });
    layers.show(idOf(layer), brightest(frames).strip, inTime(frames));
  }
}

function showFrame({ strip, duties }, isNew) {
  const frame = { at: performance.now(), strip, duties };
  if (isNew) {
    drawing.forget();
    stage.describe(frame);
  }
  lamps.tell(duties);
  drawing.take(frame, opened.name, mayFlash(versions.now));
}

/** Where the limit is lifted, anything may flash; and so may the finished look that lies below. */
function mayFlash(look) {
  return !layout.flash_limit || flashes(look) || known.some(({ name, flashes: does }) => name === look.swatch && does);
}

function beLive() {
  contact.beLive();
  setText(byId("alert"), "");
}

function beLost() {
  if (!contact.isLost) {
    setText(byId("alert"), say("lost.since", { time: clock(Date.now()) }));
  }
  contact.beLost(false);
}

function askForToken() {
  byId("workbench").hidden = true;
  contact.askForToken();
}

function tellNews(words) {
  setText(byId("news"), words);
}

/** What has become of something that was asked for. */
function tellAnswer(words, done) {
  setText(byId("answer"), words);
  byId("answer").classList.toggle("refused", !done);
}

/** What is drawn is marked as what it is. */
function showTrial(running, left) {
  byId("preview").classList.toggle("on-strip", running);
  setText(byId("preview"), running ? say("bench.try.on", { seconds: left }) : say("bench.preview.mark"));
}

entry.takeToken().then(() => tab.open());
addEventListener("hashchange", async () => await entry.takeToken() && tab.open());
