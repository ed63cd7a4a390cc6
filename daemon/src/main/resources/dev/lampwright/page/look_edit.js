// What can be done to a look: each function gives another look and leaves the one that it was given alone.

import { parsed, written } from "./oklch.js";

/** Names layers, so that one is known again after it has been changed or moved. */
const ids = new WeakMap();
let newest = 0;

/** The name of a layer. */
export function idOf(layer) {
  if (!ids.has(layer)) {
    ids.set(layer, ++newest);
  }
  return ids.get(layer);
}

/** The same layer, with other keys; those that are undefined are taken out. */
export function withKeys(layer, keys) {
  const next = Object.fromEntries(Object.entries({ ...layer, ...keys }).filter(([, value]) => value !== undefined));
  ids.set(next, idOf(layer));
  return next;
}

/** A look with another layer in place of one. */
export function replaced(look, at, layer) {
  return { ...look, layers: look.layers.with(at, layer) };
}

/** A look whose layers are in another order. */
export function moved(look, from, to) {
  const layers = look.layers.slice();
  layers.splice(to, 0, ...layers.splice(from, 1));
  return { ...look, layers };
}

/** A look with one more layer. */
export function added(look, at, layer) {
  return { ...look, layers: look.layers.toSpliced(at, 0, layer) };
}

/** A look with one layer less. */
export function removed(look, at) {
  return { ...look, layers: look.layers.toSpliced(at, 1) };
}

/** Whether a layer has a use for a key: if any of the conditions holds that the vocabulary has for it. */
export function applies({ when }, layer, usual) {
  return when === undefined || Object.entries(when).some(([key, wanted]) => {
    const value = layer[key] ?? usual(key);
    return wanted === true ? layer[key] !== undefined : wanted.includes(value);
  });
}

/** A layer with another paint, and with the colours that it had as far as that goes. */
export function withPaint(layer, paint, vocabulary) {
  const had = layer.colours ?? (layer.colour === undefined ? ["orange"] : [layer.colour, companion(layer.colour)]);
  const several = had.length > 1 ? had : [had[0], companion(had[0])];
  const keys = {
    solid: { colour: had.find(isSeen) ?? had[0], colours: undefined },
    ramp: { colours: several, colour: undefined },
    scale: { colours: several, colour: undefined, by: layer.by ?? firstSignal(vocabulary) },
    palette: { colours: several, colour: undefined, extent: "grains" },
  }[paint] ?? { colour: undefined, colours: undefined };
  return cleaned(withKeys(layer, { ...keys, paint: paint === "solid" ? undefined : paint }), vocabulary);
}

/** A layer with another extent, and with what that needs. */
export function withExtent(layer, extent, vocabulary) {
  const follows = extent === "bar" || extent === "pointer";
  const moves = ["speed_px_per_s", "speed_zones_per_s", "cycle_s"].some((key) => layer[key] !== undefined);
  return cleaned(withKeys(layer, {
    extent: extent === "all" ? undefined : extent,
    paint: layer.paint === "palette" && extent !== "grains" ? "ramp" : layer.paint,
    by: layer.by ?? (follows ? firstSignal(vocabulary) : undefined),
    cycle_s: extent === "band" && !moves ? 6 : layer.cycle_s,
  }), vocabulary);
}

function firstSignal({ signals }) {
  return (signals.find(({ name }) => name === "job.progress") ?? signals.find(({ share }) => share))?.name;
}

/** Without the keys that do not apply to it, which a file would be refused for. */
export function cleaned(layer, vocabulary) {
  const keys = vocabulary.keys.layer;
  const usual = (name) => keys.find((key) => key.name === name)?.usual;
  const useless = keys.filter((key) => layer[key.name] !== undefined && !applies(key, layer, usual)).map(({ name }) => name);
  return useless.length === 0 ? layer : cleaned(withKeys(layer, Object.fromEntries(useless.map((name) => [name, undefined]))), vocabulary);
}

/** A colour that goes with another: a sixth of the circle on, and darker. */
function companion(text) {
  const colour = parsed(text);
  return colour === null ? "midnightblue" : written({ ...colour, l: colour.l * 0.7, h: (colour.h + 60) % 360 });
}

function isSeen(text) {
  return (parsed(text)?.alpha ?? 1) > 0.05;
}

/** The signals that a look follows, each once. */
export function signalsOf({ layers = [], dimmers = {} }) {
  const named = [...layers.flatMap(({ by, opacity_by: other }) => [by, other]), ...Object.values(dimmers).map((level) => level?.by)];
  return [...new Set(named.filter((name) => typeof name === "string"))];
}

/** Whether anything in a look flashes, rather than swells and moves. */
export function flashes({ layers = [] }) {
  return layers.some(({ hidden, rhythm = "F" }) => hidden !== true && !/^(F$|swell)/.test(rhythm));
}
