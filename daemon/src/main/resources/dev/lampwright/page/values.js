// How values are written, and scales that look even to the eye. An unknown value is shown as unknown.

import { isSaid, LOCALE, say } from "./words.js";

const PARTS_OF_TIME = [[86400, "day"], [3600, "hour"], [60, "minute"], [1, "second"]].map(([size, unit]) =>
  ({ size, format: new Intl.NumberFormat(LOCALE, { style: "unit", unit, unitDisplay: "short" }) }));

const AGO = new Intl.RelativeTimeFormat(LOCALE, { style: "short" });

/** A time in seconds, by its two greatest parts. */
export function duration(seconds) {
  let rest = Math.max(0, Math.round(seconds));
  const parts = [];
  for (const { size, format } of PARTS_OF_TIME) {
    const n = Math.floor(rest / size);
    if (n > 0 || (size === 1 && parts.length === 0)) {
      parts.push(format.format(n));
    }
    rest -= n * size;
  }
  return parts.slice(0, 2).join(" ");
}

const STEPS = [5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600];

/**
 * What a time that is only estimated is rounded to: 5 s below a minute, minutes below three hours, and 5 minutes beyond; but no less than its
 * standard error, if that is known. All in seconds.
 */
export function stepOf(seconds, error = 0) {
  const finest = Math.max(seconds < 57 ? 5 : seconds < 10_800 ? 60 : 300, error);
  return STEPS.find((step) => step >= finest) ?? STEPS[STEPS.length - 1];
}

/** A time that is only estimated, and its standard error, in seconds. */
export function roughly(seconds, error) {
  const step = stepOf(seconds, error);
  return duration(Math.max(step, step * Math.round(seconds / step)));
}

/** How long ago something was, in minutes, or in hours from one on. */
export function ago(seconds) {
  const [size, unit] = seconds < 3600 ? [60, "minute"] : [3600, "hour"];
  return AGO.format(-seconds / size, unit);
}

/** A share from 0 to 1. */
export function percent(share) {
  return say("unit.percent", { n: Math.round(share * 100) });
}

const SHARES = { percent: 1, permille: 0.1, share: 100 };

/** A number that a file has given a unit to: its own words, or one of those that are shares. */
export function quantity(number, unit) {
  if (typeof number !== "number") {
    return say("reading.unknown");
  }
  if (unit in SHARES) {
    return say("unit.percent", { n: rounded(number * SHARES[unit]) });
  }
  return say("reading", { number: rounded(number), unit }).trim();
}

/** To three digits that count. */
function rounded(number) {
  return Math.abs(number) >= 1000 ? Math.round(number) : Number(number.toPrecision(3));
}

/** A temperature without its unit. */
export function degrees(celsius) {
  return celsius.toFixed(0).replace("-0", "0");
}

/** A time of day, to the minute. */
export function clock(millis) {
  return new Date(millis).toLocaleTimeString(LOCALE, { timeStyle: "short" });
}

/** A time of day, with its date unless it is of today. */
export function moment(millis) {
  const date = new Date(millis);
  const today = date.toDateString() === new Date().toDateString();
  return today ? clock(millis) : `${date.toLocaleDateString(LOCALE, { day: "numeric", month: "short" })} ${clock(millis)}`;
}

/** The name of a part of the printer. */
export function partName(part) {
  return isSaid(`part.${part}`) ? say(`part.${part}`) : capital(part.replaceAll("_", " "));
}

/** Words as they begin a line. */
export function capital(words) {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The step of lightness, 0 to 100, that a share of full light is seen as. Source: CIE 15:2018, 8.2.1, L*. */
export function lightness(share) {
  return share <= 216 / 24389 ? share * 24389 / 27 : 116 * Math.cbrt(share) - 16;
}

/** The share of full light that is seen as a step of lightness. */
export function shareOf(step) {
  return step <= 8 ? step * 27 / 24389 : ((step + 16) / 116) ** 3;
}

const HUES = [[20, "red"], [45, "orange"], [70, "yellow"], [165, "green"], [200, "cyan"], [255, "blue"], [310, "purple"], [345, "pink"], [361, "red"]];

/** The name of a colour, of shares of red, green and blue in linear light. */
export function colourName([red, green, blue]) {
  const most = Math.max(red, green, blue);
  const least = Math.min(red, green, blue);
  if (most < 0.004) {
    return say("colour.dark");
  }
  const [r, g, b] = [red, green, blue].map((value) => Math.cbrt(value / most));
  const span = 1 - Math.cbrt(least / most);
  if (span < 0.2) {
    return say("colour.white");
  }
  const sixth = r === 1 ? (g - b) / span : g === 1 ? 2 + (b - r) / span : 4 + (r - g) / span;
  const hue = (60 * sixth + 360) % 360;
  return say(`colour.${HUES.find(([end]) => hue < end)[1]}`);
}
