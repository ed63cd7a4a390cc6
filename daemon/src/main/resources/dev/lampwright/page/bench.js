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
import { Replay } from "./replay.js";
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
/** Before any look has been opened. */
const NOTHING = { name: "" };
/** How long a preview is. */
const SECONDS = 10;
const byId = (id) => document.getElementById(id);

await learn(BENCH_WORDS);
fill(document);

const contact = new Contact();
const stage = new Stage((zones) => layers?.aim(zones));
const drawing = new Drawing(stage);
const lamps = new Lamps();
const film = new Film(showFrame, showPart);
const meters = new Meters();
const tab = new Tab((topic, message) => LISTENERS[topic]?.(message));
const entry = new Entry(() => tab.open());
const tools = new Tools({ undo: () => versions.undo(), redo: () => versions.redo(), open: openLook, tell: tellNews });
const trial = new Trial(tellAnswer, showTrial);
const keeping = new Keeping({ open: openLook, tell: tellAnswer, blame, saved, written: layLooks, allowed: layLooks });
const replay = new Replay(takeReplay, tellAnswer);
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
let opened = NOTHING;
let mistakes = [];
let resting = 0;
/** How often it has been begun to ask what there is, and to open a look: of each the newest counts. */
let turns = { prepare: 0, open: 0 };

const LISTENERS = { layout: takeLayout, report: takeReport, live: beLive, lost: beLost, stranger: askForToken };

/** The lights as the file has them: at first, and whenever it has changed. Zones, signals and looks may be others then. */
async function takeLayout(next) {
  if (layout !== null && layout.version !== next.version) {
    location.reload();
  }
  layout = next;
  stage.lay(layout);
  lamps.lay(layout);
  await prepare();
}

function takeReport(next) {
  const before = report;
  report = next;
  player?.report(report);
  if (before !== null && (before.look !== report.look || before.state !== report.state)) {
    cues.load();
  }
}

/** What there is to make looks of, and, to begin with, the look that the address names, or that is on. */
async function prepare() {
  const turn = ++turns.prepare;
  const [words, looks] = await Promise.all([ask("GET", "vocabulary"), ask("GET", "looks")]);
  if (turn !== turns.prepare) {
    return;
  }
  if (words.status !== 200 || looks.status !== 200) {
    tellAnswer(whyNot(words.status === 200 ? looks : words), false);
    return;
  }
  const isNew = textOf(words.answer) !== textOf(vocabulary);
  if (isNew) {
    layMaking(words.answer);
  }
  await layPlace(looks.answer);
  byId("workbench").hidden = false;
  if (opened === NOTHING) {
    await openLook(new URLSearchParams(location.search).get("look") ?? nameOn());
  } else if (isNew) {
    changed(versions.now);
  } else {
    refresh();
  }
}

/** What there is to make looks of, but for what signals are just now. */
function textOf(words) {
  return JSON.stringify(words, (key, value) => key === "now" ? undefined : value);
}

/** Controls for all that the lights and the printer have. */
function layMaking(words) {
  vocabulary = words;
  layers = layers ?? new Layers(byId("layers"), byId("adds"), (look, what) => versions.put(look, what), tellNews);
  layers.lay(vocabulary);
  lights = new Lights(byId("lights"), vocabulary, (look, what) => versions.put(look, what));
  player = player ?? new Player(takePlayed);
  player.lay(vocabulary);
  if (report !== null) {
    player.report(report);
  }
  drawn.clear();
}

/** The look that is on the strip now. */
function nameOn() {
  return known.find(({ on }) => on)?.name ?? "";
}

/** Which looks there are, where they are saved, and who may. */
async function layLooks() {
  const { status, answer } = await ask("GET", "looks");
  if (status === 200) {
    await layPlace(answer);
  }
}

async function layPlace(looks) {
  known = looks.looks;
  const drafts = looks.may_edit ? await ask("GET", "drafts") : { status: 0 };
  tools.lay(looks, drafts.status === 200 ? drafts.answer.drafts.map(({ name }) => name) : [], vocabulary);
  keeping.lay(looks);
  cues.lay(vocabulary, looks);
  cues.load();
  replay.load(looks.may_edit);
}

/** Puts a look on the bench: one that there is, a draft, or a new one that begins as another or as nothing. */
async function openLook(name, from = name) {
  const turn = ++turns.open;
  await keeping.settle();
  const [response, draft] = await Promise.all([lookOf(from), keeping.draftOf(name)]);
  if (turn !== turns.open) {
    return;
  }
  if (response.status !== 200 && !(response.status === 404 && draft !== null)) {
    await openOther(name, response);
    return;
  }
  const isNew = response.status === 404 || name !== from || from === "";
  const look = { layers: [], ...response.answer.look };
  const begun = draft === null ? look : { layers: [], ...draft.look };
  mistakes = [];
  versions = new Versions(look, changed);
  beOpen({ ...(isNew ? { look } : response.answer), name, version: draft?.base ?? (isNew ? "" : response.answer.version), isNew });
  keeping.opened(opened, look, draft === null ? null : begun, draft?.at_ms);
  if (draft === null) {
    changed(versions.now);
  } else {
    versions.put(begun);
  }
}

async function lookOf(name) {
  return name === "" ? { status: 200, answer: { look: { layers: [] }, version: "", from: "" } } : ask("GET", `looks/${encodeURIComponent(name)}`);
}

/** A look that there is not, or not any more: the one that is on is opened in its place. */
async function openOther(name, response) {
  if (response.status !== 404) {
    tellAnswer(whyNot(response), false);
  } else if (name !== nameOn()) {
    await openLook(nameOn());
  } else {
    await openLook("");
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

/** It is in the file as it was here when it was sent. */
function saved(look, clean) {
  beOpen(look);
  keeping.opened(look, clean);
  keeping.tell(versions.now);
  layLooks();
}

/** Shows what is wrong with the look at its layers, and opens the first to blame. */
function blame(at, found) {
  takeMistakes(found, versions.now);
  layers.focus(at);
}

function takeMistakes(found, look) {
  mistakes = found.map((mistake) => ({ ...mistake, id: look.layers[mistake.layer] === undefined ? 0 : idOf(look.layers[mistake.layer]) }));
  showLook();
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
  const wanted = wantedNow();
  previews.put(wanted);
  bands.put(wanted);
  checks.put(wanted);
  clearTimeout(resting);
  meters.tellAlike(null);
  resting = setTimeout(() => comparisons.put(wanted), REST_MS);
}

function wantedNow() {
  return { name: opened.name, look: versions.now, printer: player.printer, recording: replay.wanted, guards: player.guarded };
}

/** Somebody plays the printer, or lifts the guards. */
function takePlayed(plays) {
  if (plays) {
    replay.leave();
    player.tellReplay(undefined);
  }
  refresh();
}

function takeReplay() {
  player.tellReplay(replay.wanted === undefined ? undefined : say("bench.replay"));
  refresh();
}

/** The next part of a recording. */
function showPart(second) {
  replay.goTo(second);
  previews.put(wantedNow());
}

const previews = new Newest(async ({ name, look, printer, recording, guards }) => {
  const length = recording === undefined ? null : replay.length;
  const seconds = length === null ? SECONDS : Math.max(0.1, Math.min(SECONDS, (length.seconds - recording.at_s) / recording.speed));
  const plays = recording === undefined ? { printer } : { recording };
  const { status, answer } = await ask("POST", "preview", { name, look, ...plays, guards, from_s: 0, seconds, rate: 20 });
  if (status === 200) {
    film.load(answer, recording === undefined ? null : { ...recording, ...length });
  } else if (look.layers.length === 0) {
    film.dark(layout.pixels);
  }
});

const checks = new Newest(async ({ name, look }) => {
  const response = await ask("POST", "check", { name, look }, "c");
  if (response.status === 200) {
    meters.tell(response.answer, look);
    takeMistakes(response.answer.mistakes, look);
  } else if (response.answer?.code !== "newer") {
    meters.fail(whyNot(response));
  }
});

const comparisons = new Newest(async ({ name, look }) => {
  const { status, answer } = await ask("POST", "check", { name, look, alike: true }, "a");
  if (look === versions.now) {
    meters.tellAlike(status === 200 ? answer.alike : undefined);
    if (status === 200) {
      meters.tell(answer, look);
    }
  }
});

/** What is drawn of which layer, so that only those are asked for that have changed. */
let drawn = new Map();
const bands = new Newest(async ({ name, look, printer, recording }) => {
  const before = drawn;
  const plays = recording === undefined ? { printer } : { recording };
  const key = JSON.stringify(plays);
  drawn = new Map();
  for (const [at, layer] of look.layers.entries()) {
    const has = before.get(idOf(layer));
    if (has?.layer === layer && has.key === key) {
      drawn.set(idOf(layer), has);
    } else {
      await drawBand(name, look, at, plays, key);
    }
  }
});

async function drawBand(name, look, at, plays, key) {
  const layer = look.layers[at];
  const { status, answer } = await ask("POST", "preview", { name, look, ...plays, layer: at, guards: false, from_s: 0, seconds: SECONDS, rate: 10, pixels: BAND_PIXELS }, "b");
  if (status === 200 && answer.frames > 0) {
    const frames = framesOf(answer);
    drawn.set(idOf(layer), { layer, key });
    layers.show(idOf(layer), brightest(frames).strip, inTime(frames));
  }
}

function showFrame({ strip, duties }, isNew, shown) {
  if (shown !== undefined && replay.wanted !== undefined) {
    player.tellReplay(say("bench.replay.sum", { state: say(`state.${shown.state}`) }));
  }
  const frame = { at: performance.now(), strip, duties };
  if (isNew) {
    drawing.forget();
    stage.describe(frame);
  }
  lamps.tell(duties);
  drawing.take(frame, opened.name, mayFlash(versions.now));
}

/** Where the limit is lifted, anything may flash; and so may the ready-made look that lies below. */
function mayFlash(look) {
  return !layout.flash_limit || flashes(look) || known.some(({ name, flashes: does }) => name === look.swatch && does);
}

/** Whatever could not be had while the daemon was away is asked for again. */
function beLive() {
  const wasLost = contact.isLost;
  contact.beLive();
  setText(byId("alert"), "");
  if (wasLost && layout !== null) {
    prepare();
    keeping.again();
  }
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
