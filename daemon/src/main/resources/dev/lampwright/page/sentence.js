// A layer and a cue in words: what somebody would say who sees it.

import { lightOf, parsed } from "./oklch.js";
import { capital, colourName, partName, percent } from "./values.js";
import { isSaid, LOCALE, say } from "./words.js";

/** What a layer shows, where, and how it behaves, as one sentence. */
export function describe(layer) {
  const words = say(`bench.is.${extentOf(layer)}`, { what: paintWords(layer), zone: zoneWords(layer.zone), signal: signalWords(layer.by) });
  const more = [ways(layer), rhythmWords(layer.rhythm), layer.opacity_by && say("bench.is.strong", { signal: signalWords(layer.opacity_by) })];
  return capital([words, ...more.filter(Boolean)].join(say("bench.is.and")));
}

function extentOf({ extent = "all" }) {
  return isSaid(`bench.is.${extent}`) ? extent : "all";
}

/** The colours of a layer in words. */
function paintWords({ paint = "solid", colour, colours = [], by }) {
  switch (paint) {
    case "solid": return colourWords(colour);
    case "palette": return say("bench.paint.some", { count: colours.length });
    case "ember": return say("bench.paint.fire");
    default: return gradientWords(colours, paint === "scale" ? by : undefined);
  }
}

/** From the first colour that is seen to the last. */
function gradientWords(colours, by) {
  const seen = colours.filter((colour) => (parsed(colour)?.alpha ?? 1) > 0.05);
  const [from, to] = [seen[0] ?? colours[0], seen.at(-1) ?? colours.at(-1)].map(colourWords);
  if (by !== undefined) {
    return say("bench.paint.along", { from, to, signal: signalWords(by) });
  }
  return from === to ? from : say("bench.paint.between", { from, to });
}

/** The name that a file has for a colour, or that people have for one of its hue. */
function colourWords(text) {
  if (/^[a-z]+$/i.test(text ?? "")) {
    return text;
  }
  const colour = parsed(text ?? "");
  return colour === null ? say("bench.colour.none") : colourName(lightOf(colour).map((value) => Math.min(1, Math.max(0, value))));
}

/** The name of a zone; the whole strip has none of its own. */
function zoneWords(zone = "strip") {
  return zone === "strip" ? say("bench.zone.strip") : zone;
}

/** What a signal measures, and of which part of the printer; its own name where there are no words for it. */
export function signalWords(name = "") {
  const parts = name.split(".");
  const measure = parts.pop();
  if (isSaid(`signal.${measure}`)) {
    return say(`signal.${measure}`, { part: parts.map(partWords).join(" ") }).trim();
  }
  return name === "" ? say("bench.signal.none") : name;
}

/** A part of the printer within a sentence: German writes nouns large there too. */
function partWords(part) {
  return LOCALE.startsWith("de") ? partName(part) : partName(part).toLocaleLowerCase(LOCALE);
}

function ways(layer) {
  const moves = ["speed_px_per_s", "speed_zones_per_s", "cycle_s"].some((key) => layer[key]);
  const drifts = moves && layer.paint === "ramp" && layer.extent !== "band";
  if (drifts) {
    return say(layer.back_and_forth ? "bench.is.sways" : "bench.is.drifts");
  }
  return moves && layer.back_and_forth ? say("bench.is.turns") : "";
}

/** How a rhythm goes; those of sea charts by their own notation. */
export function rhythmWords(rhythm = "F") {
  const swell = /^swell ([\d.]+) ?s$/.exec(rhythm);
  if (swell !== null) {
    return say("bench.is.swells", { seconds: Number(swell[1]) });
  }
  const own = /^on ([\d.]+) ?s off ([\d.]+) ?s$/.exec(rhythm);
  if (own !== null) {
    return say("bench.is.blinks", { on: Number(own[1]), off: Number(own[2]) });
  }
  return rhythm === "F" ? "" : say("bench.is.rhythm", { rhythm });
}

/** How much of a layer is seen. */
export function opacityWords({ opacity = 1, opacity_by: by }) {
  return by === undefined ? percent(opacity) : say("bench.opacity.by");
}

/** A value of a signal, with its unit. */
export function signalValue(name, value) {
  if (value === null) {
    return say("bench.signal.unknown");
  }
  const unit = name.endsWith("_C") ? "°C" : name.endsWith("K_per_s") ? "K/s" : name.endsWith("_per_h") ? "/h" : name.endsWith("_s") ? "s" : "";
  return unit === "" ? percent(value) : say("reading", { number: Math.round(100 * value) / 100, unit });
}

/** What has to be so, as a sentence. */
export function cueWords(cue) {
  const states = (words) => [words].flat().map(stateWords).join(say("bench.cue.or"));
  const parts = [];
  for (const key of ["state", "any", "all", "alarm"]) {
    if (cue[key] !== undefined) {
      parts.push(say(`bench.cue.${key}`, { what: states(cue[key]) }));
    }
  }
  if (cue.signal !== undefined) {
    const signal = signalWords(cue.signal);
    const [above, below] = [cue.above, cue.below].map((value) => value === undefined ? undefined : signalValue(cue.signal, value));
    const code = above === undefined ? "below" : below === undefined ? "above" : "between";
    parts.push(say(`bench.cue.${code}`, { signal, above: above ?? "", below: below ?? "" }));
  }
  if (cue.event !== undefined) {
    parts.push(say("bench.cue.event", { event: cue.event }));
  }
  if (cue.view !== undefined) {
    parts.push(say("bench.cue.view", { view: cue.view }));
  }
  return parts.length === 0 ? say("bench.cue.always") : say("bench.cue.when", { what: parts.join(say("bench.cue.and")) });
}

/** A state or where an alarm is; of one of several printers, with its name. */
function stateWords(word) {
  const at = word.lastIndexOf(".");
  const bare = word.slice(at + 1);
  if (isSaid(`alarm.${bare}`)) {
    return say(`alarm.${bare}`);
  }
  const words = say("bench.cue.quoted", { what: isSaid(`state.${bare}`) ? say(`state.${bare}`) : bare });
  return at < 0 ? words : `${word.slice(0, at)} ${words}`;
}

/** How long it takes to come, if that is said. */
export function fadeWords({ fade_s: fade }) {
  return fade === undefined ? "" : `, ${say("bench.cue.faded", { seconds: fade })}`;
}
