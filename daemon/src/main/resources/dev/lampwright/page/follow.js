// What it takes to follow a signal, and what is played of it to begin with.

/** What a layer or a light has to say to follow a signal; a prefix of "opacity_" is for a layer's strength, which then has no number. */
export function follow(prefix, signal) {
  const keys = (by, from, to) => ({ [`${prefix}by`]: by, [`${prefix}from`]: from, [`${prefix}to`]: to });
  const others = prefix === "" ? {} : { opacity: undefined, dark_below: undefined, full_above: undefined };
  if (signal === undefined) {
    return { ...keys(), ...others };
  }
  const [from, to] = signal.share || signal.low !== undefined ? [] : usualBounds(signal.name);
  return { ...keys(signal.name, from, to), ...others };
}

/** From where to where a signal is seen, to begin with, and played. Our own choice. */
export function usualBounds(name) {
  if (name.endsWith("_C")) {
    return name.startsWith("nozzle") ? [20, 220] : [20, 100];
  }
  return name.endsWith("left_s") ? [0, 3600] : name.endsWith("_s") && !name.endsWith("K_per_s") ? [300, 0] : [0, 1];
}

/** What somebody who plays the printer begins with: what a signal usually is in a state; null for unknown. Our own choice. */
export function usualValue(name, state) {
  const part = name.split(".")[0];
  const usual = VALUES[name.split(".").at(-1)];
  if (usual !== undefined) {
    return usual[state] ?? null;
  }
  return name.endsWith("_C") ? { nozzle: 215, bed: 60 }[part] ?? 40 : null;
}

const VALUES = {
  heat: { warming: 0.6, printing: 1, held: 1 },
  cooling: { idle: 0.6, done: 0.8, stopped: 0.8 },
  still_hot: { idle: 0.6, done: 0.8, stopped: 0.8 },
  ready_s: { warming: 120 },
  ready_error_s: { warming: 15 },
  speed_K_per_s: { warming: 0.8, done: -0.3, stopped: -0.3 },
  progress: { printing: 0.42, held: 0.42, done: 1, stopped: 0.42 },
  left_s: { printing: 1800, held: 1800 },
  speed_per_h: { printing: 0.8, held: 0 },
};
