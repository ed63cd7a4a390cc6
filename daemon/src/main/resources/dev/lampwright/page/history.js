// What has happened: states as a ribbon in the colours of their looks, jobs and faults in words, and curves of the temperatures.

import { ago, duration, moment, percent } from "./values.js";
import { isSaid, say } from "./words.js";

const byId = (id) => document.getElementById(id);
const SVG = "http://www.w3.org/2000/svg";
/** How far back a picture may go, in seconds: the shortest that shows all there is. */
const SPANS = [600, 1800, 3600, 7200, 14_400, 21_600, 43_200];
const LONGEST_MS = 1000 * SPANS.at(-1);
const AGAIN_MS = 30_000;
const ROWS = ["row-history", "row-curves", "row-current"];
const MOST_LINES = 30;
const WIDTH = 720;
const HEIGHT = 150;
const RIBBON = 28;
/** What is drawn together, and up to a multiple of what. */
const TEMPERATURES = { title: "curves.title", top: "curves.title.top", keys: ["nozzle_C", "bed_C"], grain: 50 };
const CURRENT = { title: "current.long", top: "current.long.top", keys: ["strip_mA"], grain: 100 };

export class History {
  #timer = 0;
  #kept = false;

  constructor() {
    for (const id of ROWS) {
      byId(id).addEventListener("toggle", () => this.#follow());
    }
  }

  /** Fetches it, and keeps fetching it while the page is visible. Without a history the row is hidden. */
  async load() {
    const since = new Date(Date.now() - LONGEST_MS).toISOString();
    const answer = document.hidden ? null : await fetch(`history?since=${since}`).catch(() => null);
    if (answer?.ok) {
      this.#kept = true;
      this.#tell(await answer.json());
    }
    this.#follow();
  }

  #follow() {
    clearTimeout(this.#timer);
    if (this.#kept && ROWS.some((id) => byId(id).open)) {
      this.#timer = setTimeout(() => this.load(), AGAIN_MS);
    }
  }

  #tell({ as_of: asOf, jobs, faults, states, curves, colours }) {
    const now = Date.parse(asOf);
    byId("row-history").hidden = false;
    const began = [...states.map(({ from }) => from), ...faults.map((fault) => fault.began)].map(Date.parse);
    this.#ribbon(states, faults, colours, new Axis("ribbon", now, began));
    const lines = [...jobs.map(jobLine), ...faults.map(faultLine)].sort((a, b) => b.at - a.at).slice(0, MOST_LINES);
    byId("events").replaceChildren(...lines.map(({ at, words, level }) => {
      const item = document.createElement("li");
      item.dataset.level = level;
      const time = document.createElement("time");
      time.dateTime = new Date(at).toISOString();
      time.textContent = moment(at);
      item.append(time, " ", words);
      return item;
    }));
    byId("history-sum").textContent = lines.length === 0 ? say("history.none") : lines[0].words;
    const known = curves.pieces.map(({ from }) => Date.parse(from));
    byId("row-curves").hidden = !draw("curves", TEMPERATURES, curves, new Axis("curves", now, known));
    byId("long").hidden = !draw("current-long", CURRENT, curves, new Axis("current-long", now, known));
  }

  /** Several printers have a stripe each, one below the other. */
  #ribbon(states, faults, colours, axis) {
    const printers = [...new Set(states.map(({ printer = "" }) => printer))].sort();
    const height = (RIBBON - 8) / Math.max(1, printers.length);
    const parts = states.map(({ printer = "", state, from, to }) => {
      const left = Math.max(0, axis.x(Date.parse(from)));
      const width = Math.max(0.8, axis.x(Date.parse(to)) - left);
      const top = 4 + height * printers.indexOf(printer);
      return rect(left, top, width, height, colours[state] ?? "#808080", named(printer, say(`state.${state}`)));
    });
    const ticks = faults.map(({ printer = "", began, words }) => {
      const tick = rect(axis.x(Date.parse(began)) - 1, 0, 2, RIBBON, "", named(printer, words ?? say("state.fault")));
      tick.setAttribute("class", "fault-tick");
      return tick;
    });
    byId("ribbon").replaceChildren(title(say("history.ribbon", { span: axis.words })), ...parts, ...ticks);
  }
}

/** Time from left to right, to now at the right edge. */
class Axis {
  #now;
  #seconds;

  /** Writes itself below a picture; began has the times at which something began, in ms. */
  constructor(id, now, began) {
    this.#now = now;
    const needed = (now - Math.min(now, ...began)) / 1000;
    this.#seconds = SPANS.find((span) => needed <= span) ?? SPANS.at(-1);
    byId(`${id}-axis`).replaceChildren(...[ago(this.#seconds), ago(this.#seconds / 2), say("axis.now")].map((words) => {
      const place = document.createElement("span");
      place.textContent = words;
      return place;
    }));
  }

  /** How long it is, in words. */
  get words() {
    return duration(this.#seconds);
  }

  /** Where a time in ms is; left of 0 if it is before the beginning. */
  x(millis) {
    return WIDTH * (1 - (this.#now - millis) / (1000 * this.#seconds));
  }
}

/** Draws curves under a round number, which is written beside them; false if nothing is known. */
function draw(id, { title: code, top: topCode, keys, grain }, { step_s: step, pieces }, axis) {
  const all = pieces.flatMap((piece) => keys.flatMap((key) => piece[key])).filter((value) => value !== null);
  const top = grain * Math.ceil(Math.max(grain, ...all) / grain);
  const paths = keys.map((key) => {
    const path = document.createElementNS(SVG, "path");
    path.setAttribute("class", `curve ${key}`);
    path.setAttribute("d", pieces.map((piece) => line(piece[key], Date.parse(piece.from), 1000 * step, axis, top)).join(""));
    return path;
  });
  byId(id).replaceChildren(title(say(code, { span: axis.words, top })), ...paths);
  byId(`${id}-top`).textContent = say(topCode, { top });
  return all.length > 0;
}

/** A line through what is known, broken where nothing is. */
function line(values, from, step, axis, top) {
  let path = "";
  let on = false;
  values.forEach((value, i) => {
    const x = axis.x(from + step * i);
    if (value === null || x < 0) {
      on = false;
    } else {
      path += `${on ? "L" : "M"}${x.toFixed(1)} ${(HEIGHT * (1 - value / top)).toFixed(1)}`;
      on = true;
    }
  });
  return path;
}

function jobLine({ printer = "", began, end, took_s: took, progress }) {
  const at = Date.parse(began);
  const far = progress === undefined ? "" : percent(progress);
  const words = say("history.job", { end: say(`end.${end}`), time: duration(took) });
  return { at, words: named(printer, end === "done" || far === "" ? words : say("history.job.far", { words, share: far })), level: "job" };
}

function faultLine({ printer = "", began, words = say("fault.silent"), over, acknowledged }) {
  const at = Date.parse(began);
  const notes = [
    over === undefined ? "" : say("history.over", { time: duration((Date.parse(over) - at) / 1000) }),
    acknowledged === undefined ? say("history.not_acknowledged") : who(acknowledged),
  ].filter(Boolean);
  return { at, words: named(printer, say("history.fault", { words, notes: notes.join(", ") })), level: "fault" };
}

function named(printer, words) {
  return printer === "" ? words : say("fault.said", { title: printer, words });
}

function who({ at, way, from, by }) {
  const name = by ?? from ?? (isSaid(`way.${way}`) ? say(`way.${way}`) : "");
  return name === "" ? say("history.acknowledged", { clock: moment(Date.parse(at)) })
    : say("history.acknowledged.by", { clock: moment(Date.parse(at)), name });
}

function rect(x, y, width, height, fill, words) {
  const element = document.createElementNS(SVG, "rect");
  Object.entries({ x, y, width, height, ...(fill === "" ? {} : { fill }) }).forEach(([key, value]) => element.setAttribute(key, value));
  element.append(title(words));
  return element;
}

function title(words) {
  const element = document.createElementNS(SVG, "title");
  element.textContent = words;
  return element;
}
