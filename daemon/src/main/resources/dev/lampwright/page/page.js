// Puts the page together.

import { Asks } from "./asks.js";
import { Chart } from "./chart.js";
import { Fault } from "./fault.js";
import { Readings } from "./readings.js";
import { Pace } from "./still.js";
import { Stream } from "./stream.js";
import { Strip } from "./strip.js";
import { listWiring } from "./wiring.js";
import { clock, duration } from "./words.js";

const SHOW_FLASHING = "lampwright.show-flashing";

const byId = (id) => document.getElementById(id);
const strip = new Strip();
const chart = new Chart();
const readings = new Readings();
const fault = new Fault();
const asks = new Asks(askForToken);
const pace = new Pace();
const calm = matchMedia("(prefers-reduced-motion: reduce)");

let layout = null;
let report = null;
let duties = [];
let version = null;
let contact = "waiting";
let showFlashing = sessionStorage.getItem(SHOW_FLASHING) === "yes";

const stream = new Stream({
  layout: takeLayout,
  report: takeReport,
  current: (seconds) => chart.add(seconds),
  troubles: listTroubles,
  frame: takeFrame,
  live: beLive,
  lost: beLost,
  stranger: askForToken,
});

function takeLayout(next) {
  if (version !== null && version !== next.version) {
    location.reload();
  }
  version = next.version;
  layout = next;
  pace.forget();
  strip.lay(layout);
  asks.lay(layout);
  set("version", `Lampwright ${version}`);
  set("name", printerName());
  listWiring(byId("wiring"));
}

function takeReport(next) {
  const before = report;
  report = next;
  set("state", report.state);
  document.title = `${report.state} · ${printerName() || "Lampwright"}`;
  set("look", lookWords());
  readings.tell(report);
  chart.tell(report.strip_mA, report.ceiling_mA);
  fault.tell(report);
  asks.tell(report, duties);
  line("link", report.link === "lit", linkWords(report));
  line("broker", report.broker === "connected", [report.broker, report.broker_trouble].filter(Boolean).join(": "));
  set("frames", framesWords(report));
  strip.describe(`The strip, ${layout?.pixels ?? "unknown"} pixels, shows the look ${report.look}`);
  if (before !== null) {
    announce(before, report);
  }
}

/** What tells one printer's page from another's: the daemon's prefix, but for the part that all have. */
function printerName() {
  return (layout?.prefix ?? "").replace(/^lampwright\/?/, "");
}

function lookWords() {
  const left = report.look_left_s;
  return `look ${report.look}` + (left === undefined ? "" : `, asked for, ${duration(left)} left`);
}

/** Why a controller starts that should not have, by `controller_last_reset`. */
const BAD_RESETS = {
  brown_out: "its supply voltage fell too low",
  watchdog: "its program hung",
};

function linkWords({ link, link_trouble: trouble, controller_last_reset: reset }) {
  const words = [link, trouble].filter(Boolean).join(": ");
  const started = reset in BAD_RESETS ? `; it last started because ${BAD_RESETS[reset]}` : "";
  return `${layout?.controller ?? ""} ${words}${started}`.trim();
}

function framesWords({ frames_per_s: rate, frames_shown: shown }) {
  const made = rate === undefined ? "rate unknown" : `${rate.toFixed(1)} a second made`;
  return `${made}, ${shown} shown by the controller`;
}

/** Reads out what somebody who cannot see the page has to know, and no more. */
function announce(before, now) {
  if (before.state !== now.state) {
    set("news", `The printer is ${now.state}`);
  } else if (before.alarm !== now.alarm) {
    set("news", byId("fault-title").textContent);
  }
}

function takeFrame(message) {
  if (layout === null || message.layout !== layout.layout) {
    return;
  }
  const frame = { at: message.at_ms, strip: bytes(message.strip), duties: message.duties };
  duties = frame.duties;
  pace.take(frame, performance.now(), flashes(message.look));
}

function bytes(base64) {
  return Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
}

/** Where the limit is lifted, anything may flash. */
function flashes(look) {
  return !layout.flash_limit || layout.looks.some(({ name, flashes }) => name === look && flashes);
}

function draw(now) {
  const next = pace.next(now, showFlashing, calm.matches);
  if (next !== null) {
    strip.show(next, now);
  }
  strip.step(now);
  warnOfFlashing(now);
  requestAnimationFrame(draw);
}

function warnOfFlashing(now) {
  const note = byId("flash-note");
  const hidden = !pace.flashes(now);
  if (note.hidden !== hidden) {
    note.hidden = hidden;
  }
  if (!hidden) {
    const what = layout.flash_limit ? "This light flashes." : "The flash limit is off: light may flash as it likes.";
    const how = showFlashing
      ? "It is shown as it is."
      : "Here it is drawn still, as bright as it gets. Flashing light can harm people with photosensitive epilepsy.";
    set("flash-words", `${what} ${how}`);
    set("flash-button", showFlashing ? "Draw it still" : "Show the flashing");
  }
}

byId("flash-button").addEventListener("click", () => {
  showFlashing = !showFlashing;
  sessionStorage.setItem(SHOW_FLASHING, showFlashing ? "yes" : "no");
});

function listTroubles(troubles) {
  const items = troubles.map(({ at_ms: at, level, text }) => {
    const item = document.createElement("li");
    const time = document.createElement("time");
    time.dateTime = new Date(at).toISOString();
    time.textContent = clock(at);
    item.append(time, level === "error" ? `Error: ${text}` : text);
    return item;
  });
  if (items.length === 0) {
    const item = document.createElement("li");
    item.textContent = "None since the page came up.";
    items.push(item);
  }
  byId("troubles").replaceChildren(...items);
}

function beLive() {
  if (contact === "live") {
    return;
  }
  if (contact === "lost") {
    pace.forget();
  }
  set("contact", contact === "lost" ? "live again" : "live");
  contact = "live";
  byId("contact").dataset.contact = "live";
  document.body.classList.remove("lost");
  byId("alert").hidden = true;
  byId("entry").hidden = true;
  byId("bench").hidden = false;
}

function beLost(words) {
  const text = `${words} at ${clock(Date.now())}. What is drawn is what was last heard; the page goes on trying.`;
  if (contact !== "lost" || !byId("alert").textContent.startsWith(words)) {
    byId("alert").textContent = text;
  }
  contact = "lost";
  byId("alert").hidden = false;
  byId("contact").dataset.contact = "lost";
  set("contact", "connection lost");
  document.body.classList.add("lost");
}

function askForToken() {
  stream.close();
  contact = "waiting";
  byId("bench").hidden = true;
  byId("alert").hidden = true;
  document.body.classList.remove("lost");
  set("contact", "not let in yet");
  byId("contact").dataset.contact = "waiting";
  byId("entry").hidden = false;
  byId("token").focus();
}

async function enter(token) {
  try {
    const response = await fetch("enter", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ token }),
      signal: AbortSignal.timeout(8000),
    });
    const answer = await response.json();
    set("entry-answer", answer.done ? "" : `Not let in: ${answer.why}.`);
    return answer.done;
  } catch {
    set("entry-answer", "Not let in: Lampwright does not answer.");
    return false;
  }
}

byId("entry-form").addEventListener("submit", async (event) => {
  event.preventDefault();
  if (await enter(byId("token").value)) {
    byId("token").value = "";
    stream.open();
  }
});

function line(id, well, words) {
  set(id, words);
  byId(id).classList.toggle("troubled", !well);
}

function set(id, text) {
  const element = byId(id);
  if (element.textContent !== text) {
    element.textContent = text;
  }
}

/** A token behind the address's # never leaves the browser but in the request to come in; it is taken out of the address at once. */
async function begin() {
  const token = decodeURIComponent(location.hash.slice(1));
  if (token !== "" && document.getElementById(token) === null) {
    history.replaceState(null, "", location.pathname);
    await enter(token);
  }
  stream.open();
  requestAnimationFrame(draw);
}

begin();
