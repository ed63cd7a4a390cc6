// One stream for all tabs of a browser, which may keep six connections to a page and no more. It is let go while no tab is seen.

import { Stream } from "./stream.js";

/** A visible tab says so every few seconds; one that has been silent for this long has gone without a word. */
const GONE_MS = 20_000;
/** One that is out of sight and kept for its notices: browsers let its timers run once a minute. */
const KEPT_GONE_MS = 180_000;
const SECONDS = 600;

const tabs = new Map();
const newest = new Map();
let state = null;

const stream = new Stream((topic, message) => {
  if (topic === "live" || topic === "lost" || topic === "stranger") {
    state = { topic, message };
  } else {
    newest.set(topic, together(topic, newest.get(topic), message));
  }
  tabs.forEach((_, port) => port.postMessage({ topic, message }));
});

self.addEventListener("connect", ({ ports: [port] }) => {
  port.addEventListener("message", ({ data }) => take(port, data));
  port.start();
});

setInterval(() => {
  tabs.forEach((tab, port) => tab.seen && performance.now() - tab.heardAt > (tab.kept ? KEPT_GONE_MS : GONE_MS) && tabs.delete(port));
  follow(false);
}, 2000);

function take(port, { seen, kept, gone, again }) {
  const known = tabs.get(port);
  if (gone) {
    tabs.delete(port);
  } else {
    tabs.set(port, { seen, kept, heardAt: performance.now() });
    if (seen && !known?.seen && stream.isOpen()) {
      welcome(port);
    }
  }
  follow(again === true);
}

/** Tells a tab what the others know. */
function welcome(port) {
  for (const topic of ["layout", "report", "current", "troubles", "frame", "shelf", "strips"]) {
    if (newest.has(topic)) {
      port.postMessage({ topic, message: newest.get(topic) });
    }
  }
  if (state !== null) {
    port.postMessage(state);
  }
}

function follow(anew) {
  const seen = [...tabs.values()].some((tab) => tab.seen);
  if (!seen && stream.isOpen()) {
    stream.close();
    state = null;
    newest.clear();
  } else if (seen && (anew || !stream.isOpen())) {
    stream.open();
  }
}

/** What a tab that opens later has to know: for strips, the newest colours of each. */
function together(topic, before, message) {
  switch (topic) {
    case "current": return joined(before, message);
    case "strips": return { ...before, ...message };
    default: return message;
  }
}

/** Seconds of current that go on from others of the same run. */
function joined(before, { run, from_s: from, strip_mA: values }) {
  if (before === undefined || before.run !== run || from > before.from_s + before.strip_mA.length) {
    return { run, from_s: from, strip_mA: values };
  }
  const all = [...before.strip_mA.slice(0, Math.max(0, from - before.from_s)), ...values];
  const cut = Math.max(0, all.length - SECONDS);
  return { run, from_s: Math.min(from, before.from_s) + cut, strip_mA: all.slice(cut) };
}
