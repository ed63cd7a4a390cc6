// Puts the page together.

import { Desk } from "./asks.js";
import { Chart } from "./chart.js";
import { Contact } from "./contact.js";
import { Controls } from "./controls.js";
import { Device } from "./device.js";
import { setText } from "./dom.js";
import { Drawing } from "./drawing.js";
import { Entry } from "./entry.js";
import { Heat } from "./heat.js";
import { History } from "./history.js";
import { listLog, listReadings, listWiring } from "./lists.js";
import { news, Now, shareOf } from "./now.js";
import { Preview } from "./preview.js";
import { newsOfAll, plain, Printers, several } from "./printers.js";
import { Lamps, Stage } from "./stage.js";
import { Standing } from "./standing.js";
import { Tab } from "./tab.js";
import { clock, percent } from "./values.js";
import { fill, isSaid, reason, say } from "./words.js";

const byId = (id) => document.getElementById(id);
fill(document);

const desk = new Desk(askForToken);
const stage = new Stage((zones) => controls.press(zones));
const controls = new Controls(desk, (zones) => stage.mark(zones), (look) => look === "" ? preview.stop() : preview.play(look));
const preview = new Preview(showPreview, endPreview);
const lamps = new Lamps();
const now = new Now();
const printers = new Printers(desk);
const heat = new Heat();
const standing = new Standing(desk);
const chart = new Chart();
const past = new History();
const drawing = new Drawing(stage);
const device = new Device(() => tab.keep(device.wanted));

let layout = null;
let report = null;
let frame = null;
/** The look of the newest frame. */
let shown = "";
let version = null;
const contact = new Contact();
let entered = false;
/** Whether this browser may see all rigs, and not only this one. */
let opensAll = false;

const LISTENERS = {
  layout: takeLayout,
  report: takeReport,
  current: (seconds) => chart.add(seconds),
  troubles: listLog,
  frame: takeFrame,
  live: beLive,
  lost: beLost,
  stranger: askForToken,
};
const tab = new Tab((topic, message) => LISTENERS[topic](message));
const entry = new Entry(() => {
  entered = true;
  tab.open();
});

function takeLayout(next) {
  if (version !== null && version !== next.version) {
    location.reload();
  }
  version = next.version;
  layout = next;
  preview.stop();
  frame = null;
  drawing.forget();
  stage.lay(layout);
  lamps.lay(layout);
  printers.lay(layout);
  controls.lay(layout);
  set("version", say("page.version", { version }));
  showWayUp();
  set("name", printerName() || say("page.none"));
  byId("zones").replaceChildren(...layout.zones.map(({ name, place }) => {
    const item = document.createElement("li");
    item.textContent = say("stage.zone.pixels", { zone: name, pixels: place });
    return item;
  }));
  listWiring();
  past.load();
}

/** What tells one printer's page from another's: the daemon's prefix, but for the part that all have. */
function printerName() {
  return (layout?.prefix ?? "").replace(/^lampwright\/?/, "");
}

function takeReport(next) {
  const before = report;
  report = plain(next);
  now.tell(report);
  printers.tell(report);
  heat.tell(report);
  listReadings(report);
  standing.tell(report);
  desk.tell(report);
  chart.tell(report.strip_mA, report.ceiling_mA);
  controls.tell(report, frame?.duties ?? []);
  tellLinks();
  const share = shareOf(report.state, report.signals);
  document.title = say(share === null ? "state.title" : "state.title.share", {
    state: say(`state.${report.state}`), name: printerName() || say("page.none"), share: share === null ? "" : percent(share),
  });
  if (frame !== null) {
    stage.describe(frame);
  }
  if (before !== null) {
    if (before.alarm !== report.alarm && report.alarm !== "normal") {
      preview.stop();
    }
    tellNews(before);
  }
}

function tellNews(before) {
  if (several(report).length > 0) {
    const all = newsOfAll(before, report);
    tellWords(all.map(({ name, words }) => say("fault.said", { title: name, words })).join(" "));
    all.forEach(({ name, was, is }) => notify(name, was, is));
  } else {
    tellWords(news(before, report));
    notify(printerName(), before, report);
  }
}

function tellWords(words) {
  if (words !== "") {
    set("news", words);
  }
}

function notify(name, was, is) {
  if (was.alarm !== is.alarm && is.alarm === "alert") {
    device.notify(say("state.title", { state: say("state.fault"), name }), is.fault_text ?? "");
  } else if (was.state !== is.state && is.state === "done") {
    device.notify(say("state.title", { state: say("state.done"), name }), say("when.done"));
  }
}

function tellLinks() {
  const lit = report.link === "lit";
  const well = lit && report.broker === "connected";
  line("link", lit, linkWords(report));
  line("broker", report.broker === "connected", withTrouble(say(`broker.${report.broker}`), report.broker_trouble));
  const rate = report.frames_per_s === undefined ? say("links.rate.unknown") : say("links.rate", { rate: Math.round(10 * report.frames_per_s) / 10 });
  set("frames", say("links.shown", { rate, shown: report.frames_shown }));
  set("links-sum", well ? say("rows.links.well") : byId(lit ? "broker" : "link").textContent);
  byId("veil").hidden = lit;
  set("veil", lit ? "" : say("stage.unlit", { why: linkWords(report) }));
}

function linkWords({ link, link_trouble: trouble, controller_last_reset: reset }) {
  const words = withTrouble(say(`link.${link.replaceAll(" ", "_")}`, { port: layout?.controller }), trouble);
  return isSaid(`links.reset.${reset}`) ? say("links.reset", { words, why: say(`links.reset.${reset}`) }) : words;
}

/** What is wrong, in the daemon's own English, as its log has it. */
function withTrouble(what, trouble) {
  return trouble ? say("links.words", { what, trouble }) : what;
}

function takeFrame(message) {
  if (layout === null || message.layout !== layout.layout) {
    return;
  }
  const first = frame === null;
  frame = { at: message.at_ms, strip: bytes(message.strip), duties: message.duties };
  shown = message.look;
  lamps.tell(frame.duties);
  if (preview.name !== "") {
    return;
  }
  drawing.take(frame, shown, flashes(shown));
  if (first) {
    stage.describe(frame);
  }
}

/** A frame of a look that is on the page alone. */
function showPreview({ at_ms: at, strip, duties, look }) {
  if (byId("preview").hidden) {
    drawing.forget();
  }
  byId("preview").hidden = false;
  set("preview", say("stage.preview", { look }));
  drawing.take({ at, strip: bytes(strip), duties }, look, flashes(look));
}

function endPreview() {
  byId("preview").hidden = true;
  drawing.forget();
  if (frame !== null) {
    drawing.take(frame, shown, flashes(shown));
  }
}

function bytes(base64) {
  return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
}

/** Where the limit is lifted, anything may flash. */
function flashes(look) {
  return !layout.flash_limit || [...layout.looks, ...layout.swatches].some(({ name, flashes }) => name === look && flashes);
}

function beLive() {
  if (contact.isLive) {
    return;
  }
  if (contact.isLost) {
    drawing.forget();
    desk.forget();
  }
  contact.beLive();
  controls.enable(true);
  set("alert", "");
  askWhatIsAllowed();
  byId("bench").hidden = false;
  byId("bar").hidden = false;
  if (entered) {
    entered = false;
    byId("state").focus();
  }
}

function showWayUp() {
  byId("up").hidden = !(layout?.shelf && opensAll);
}

/** Somebody who may only watch is shown no controls that would be refused. */
async function askWhatIsAllowed() {
  const answer = await fetch("rights").then((response) => response.json()).catch(() => null);
  if (answer !== null) {
    device.lay(answer);
    opensAll = answer.all;
    showWayUp();
    byId("to-bench").hidden = !answer.bench;
    byId("to-fit").hidden = !answer.fit;
    document.body.classList.toggle("watching", !answer.may_ask);
    set("watching", answer.may_ask ? "" : say("device.watch"));
  }
}

/** The connection is gone, or there was none: what is drawn is what was last reported, and nothing can be asked for. */
function beLost(refusal) {
  const why = refusal === null ? "" : reason(refusal);
  const words = why === "" ? say("lost.since", { time: clock(Date.now()) }) : say("lost.full", { why });
  if (!contact.isLost) {
    preview.stop();
    controls.enable(false);
    set("alert", words);
  }
  contact.beLost(why !== "");
  byId("veil").hidden = false;
  if (byId("veil").dataset.why !== why || byId("veil").textContent === "") {
    set("veil", words);
  }
  byId("veil").dataset.why = why;
}

function askForToken() {
  byId("bench").hidden = true;
  byId("bar").hidden = true;
  contact.askForToken();
}

function line(id, well, words) {
  set(id, words);
  byId(id).classList.toggle("troubled", !well);
}

function set(id, text) {
  setText(byId(id), text);
}

async function begin() {
  await entry.takeToken();
  tab.keep(device.wanted);
  tab.open();
}

addEventListener("hashchange", async () => await entry.takeToken() && tab.open());
begin();
