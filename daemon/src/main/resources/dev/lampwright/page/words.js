// How values are said. What is unknown is said to be.

const PARTS_OF_TIME = [[86400, "d"], [3600, "h"], [60, "min"], [1, "s"]];

const NAMES = {
  actual: "now",
  target: "wanted",
  heat: "heated",
  cooling: "cooled",
  progress: "done",
  left: "left",
  ready: "ready in",
  still_hot: "still hot",
};

/** Units as they end a signal's name, and how they are said. What has no unit is a share. */
const UNITS = [
  ["_K_per_s", "K/s"],
  ["_per_h", "% an hour"],
  ["_C", "°C"],
  ["_s", "time"],
];

/** A time in seconds, by its two greatest parts. */
export function duration(seconds) {
  let rest = Math.max(0, Math.round(seconds));
  const parts = [];
  for (const [size, unit] of PARTS_OF_TIME) {
    const count = Math.floor(rest / size);
    if (count > 0 || (unit === "s" && parts.length === 0)) {
      parts.push(`${count} ${unit}`);
    }
    rest -= count * size;
  }
  return parts.slice(0, 2).join(" ");
}

/** A share from 0 to 1. */
export function percent(share) {
  return `${Math.round(share * 100)} %`;
}

/** What a signal's name tells: the part of the printer, what is meant, and the unit, unless that is one of the units given by name. */
export function signalName(key, units = {}) {
  const dot = key.indexOf(".");
  const part = dot < 0 ? "printer" : key.slice(0, dot);
  const rest = key.slice(dot + 1);
  if (key in units) {
    return { part, what: rest.replaceAll("_", " "), unit: units[key] };
  }
  const [ending, said] = UNITS.find(([end]) => rest.endsWith(end)) ?? ["", "share"];
  const what = rest.slice(0, rest.length - ending.length);
  return { part, what: NAMES[what] ?? what.replaceAll("_", " "), unit: said };
}

/** A signal's value with its unit. */
export function signalValue(value, unit) {
  if (value === null || value === undefined) {
    return "unknown";
  }
  switch (unit) {
    case "share": return percent(value);
    case "time": return duration(value);
    case "% an hour": return `${round(100 * value)} ${unit}`;
    case "°C": return `${value.toFixed(1)} ${unit}`;
    default: return `${round(value)} ${unit}`.trim();
  }
}

function round(value) {
  return Math.round(value * 100) / 100;
}

/** A time of day. */
export function clock(millis) {
  return new Date(millis).toLocaleTimeString([], { hour12: false });
}
