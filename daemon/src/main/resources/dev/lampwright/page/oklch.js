// Colours as a hand adjusts them: lightness, chroma and hue of OKLCH. Source: CSS Color Module Level 4, section 18 (sample code for Oklab).

const TO_CONES = [
  [0.4122214708, 0.5363325363, 0.0514459929],
  [0.2119034982, 0.6806995451, 0.1073969566],
  [0.0883024619, 0.2817188376, 0.6299787005],
];
const TO_OKLAB = [
  [0.2104542553, 0.793617785, -0.0040720468],
  [1.9779984951, -2.428592205, 0.4505937099],
  [0.0259040371, 0.7827717662, -0.808675766],
];
const FROM_OKLAB = [
  [1, 0.3963377774, 0.2158037573],
  [1, -0.1055613458, -0.0638541728],
  [1, -0.0894841775, -1.291485548],
];
const FROM_CONES = [
  [4.0767416621, -3.3077115913, 0.2309699292],
  [-1.2684380046, 2.6097574011, -0.3413193965],
  [-0.0041960863, -0.7034186147, 1.707614701],
];
/** What rounding may make of a colour that just fits. */
const ROUNDING = 2e-4;
/** Chroma below this has no hue that anybody could see. */
const GREY = 0.002;
/** The most chroma that a colour of sRGB has, rounded up. */
export const MOST_CHROMA = 0.33;

/** Shares of red, green and blue in linear light; outside 0 to 1 where sRGB has no such colour. */
export function lightOf({ l, c, h }) {
  const angle = h * Math.PI / 180;
  const cones = times(FROM_OKLAB, [l, c * Math.cos(angle), c * Math.sin(angle)]).map((value) => value ** 3);
  return times(FROM_CONES, cones);
}

/** Lightness and chroma from 0 on and a hue in degrees, of linear light. */
function oklchOf(light) {
  const [l, a, b] = times(TO_OKLAB, times(TO_CONES, light).map(Math.cbrt));
  const c = Math.hypot(a, b);
  return { l, c, h: c < GREY ? 0 : (Math.atan2(b, a) * 180 / Math.PI + 360) % 360 };
}

/** Whether sRGB has a colour, which is what light is calculated in. */
export function fits(colour) {
  return lightOf(colour).every((value) => value >= -ROUNDING && value <= 1 + ROUNDING);
}

/** How CSS writes it; a colour that covers all has no alpha. */
export function written({ l, c, h, alpha = 1 }) {
  const words = `${number(100 * l, 1)}% ${number(c, 3)} ${number(h, 0)}`;
  return `oklch(${words}${alpha < 1 ? ` / ${number(alpha, 2)}` : ""})`;
}

/** What has been read already: the browser takes its time. */
const known = new Map();

/** A text of CSS as a colour, with its alpha; null if it is none. */
export function parsed(text) {
  if (!known.has(text)) {
    known.set(text, read(text));
  }
  return known.get(text);
}

function read(text) {
  const exact = /^oklch\(\s*([\d.]+)(%?)\s+([\d.]+)\s+(-?[\d.]+)(?:deg)?\s*(?:\/\s*([\d.]+)(%?)\s*)?\)$/i.exec(text.trim());
  if (exact !== null) {
    const [, l, percent, c, h, alpha, share] = exact;
    return { l: l / (percent ? 100 : 1), c: Number(c), h: (h % 360 + 360) % 360, alpha: alpha === undefined ? 1 : alpha / (share ? 100 : 1) };
  }
  const srgb = hexOf(text) ?? srgbOf(text);
  return srgb === null ? null : { ...oklchOf(srgb.slice(0, 3).map(decoded)), alpha: srgb[3] };
}

/** Red, green, blue and alpha of a colour in hexadecimal digits; null if it is not one. A colour that cannot be seen keeps its hue. */
function hexOf(text) {
  const digits = /^#([0-9a-f]{3,4}|[0-9a-f]{6}|[0-9a-f]{8})$/i.exec(text.trim())?.[1];
  if (digits === undefined) {
    return null;
  }
  const pairs = digits.length < 6 ? [...digits].map((digit) => digit + digit) : digits.match(/../g);
  return [...pairs, "ff"].slice(0, 4).map((pair) => parseInt(pair, 16) / 255);
}

/** Red, green, blue and alpha, by the browser's own reading of CSS. */
function srgbOf(text) {
  if (!CSS.supports("color", text)) {
    return null;
  }
  const probe = document.createElement("span");
  probe.hidden = true;
  probe.style.color = `color-mix(in srgb, ${text}, ${text})`;
  document.body.append(probe);
  const numbers = getComputedStyle(probe).color.match(/-?[\d.]+(?:e-?\d+)?/g)?.map(Number) ?? [];
  const isFraction = getComputedStyle(probe).color.startsWith("color(");
  probe.remove();
  if (numbers.length < 3) {
    return null;
  }
  const [red, green, blue] = numbers.slice(0, 3).map((value) => isFraction ? value : value / 255);
  return [red, green, blue, numbers[3] ?? 1];
}

/** Source: IEC 61966-2-1:1999, 5.2. */
function decoded(value) {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

function times(matrix, vector) {
  return matrix.map((row) => row.reduce((sum, value, i) => sum + value * vector[i], 0));
}

function number(value, digits) {
  return String(Number(value.toFixed(digits)));
}
