// Makes vectors.txt once: npm i colorjs.io@0.7.1 culori@4.0.2 && node make-vectors.mjs > vectors.txt
// colorjs.io (a general colour library) converts, maps and interpolates; culori's matrices of Machado et al. simulate colour vision.
import Color from "colorjs.io";
import { filterDeficiencyProt, filterDeficiencyDeuter, filterDeficiencyTrit } from "culori";
import { readFileSync } from "node:fs";

let seed = 20090713;
function random() {
  seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
  return seed / 2 ** 32;
}
const between = (low, high, digits = 3) => (low + (high - low) * random()).toFixed(digits);
const pick = (list) => list[Math.floor(random() * list.length)];
const sometimes = (text) => (random() < 0.25 ? text : "");
const number = (value) => Number(value.toPrecision(9)).toString();
const numbers = (values) => values.map(number).join(" ");

const alpha = () => sometimes(pick([` / ${between(0, 1, 2)}`, ` / ${between(0, 100, 0)}%`]));
const olderAlpha = () => sometimes(`, ${between(0, 1, 2)}`);
const byte = () => pick([between(0, 255, 0), between(0, 255, 2)]);
const share = (low = 0, high = 100) => `${between(low, high, 1)}%`;
const either = (low, high, percent) => pick([between(low, high, 4), share(percent[0], percent[1])]);
const hue = () =>
  pick([
    between(-720, 720, 1),
    `${between(0, 360, 2)}deg`,
    `${between(0, 400, 1)}grad`,
    `${between(-3.1, 6.2)}rad`,
    `${between(-1, 1)}turn`,
  ]);
const hex = (length) => "#" + Array.from({ length }, () => pick([..."0123456789abcdefABCDEF"])).join("");

const writings = {
  hex: () => hex(pick([3, 4, 6, 8])),
  rgb: () => `rgb(${byte()} ${byte()} ${byte()}${alpha()})`,
  "rgb percent": () => `rgb(${share()} ${share()} ${share()}${alpha()})`,
  "rgb commas": () => `rgba(${byte()}, ${byte()},${byte()}${olderAlpha()})`,
  hsl: () => `hsl(${hue()} ${share()} ${share()}${alpha()})`,
  "hsl commas": () => `hsla(${hue()}, ${share()}, ${share()}${olderAlpha()})`,
  hwb: () => `hwb(${hue()} ${share()} ${share()}${alpha()})`,
  lab: () => `lab(${either(0, 100, [0, 100])} ${either(-125, 125, [-100, 100])} ${either(-125, 125, [-100, 100])}${alpha()})`,
  lch: () => `lch(${either(0, 100, [0, 100])} ${either(0, 150, [0, 100])} ${hue()}${alpha()})`,
  oklab: () => `oklab(${either(0, 1, [0, 100])} ${either(-0.4, 0.4, [-100, 100])} ${either(-0.4, 0.4, [-100, 100])}${alpha()})`,
  oklch: () => `oklch(${either(0, 1, [0, 100])} ${either(0, 0.4, [0, 100])} ${hue()}${alpha()})`,
  srgb: () => `color(srgb ${either(-0.2, 1.2, [0, 100])} ${either(-0.2, 1.2, [0, 100])} ${either(-0.2, 1.2, [0, 100])}${alpha()})`,
  linear: () => `color(srgb-linear ${either(-0.2, 1.2, [0, 100])} ${either(0, 1, [0, 100])} ${either(0, 1, [0, 100])}${alpha()})`,
  p3: () => `color(display-p3 ${either(0, 1, [0, 100])} ${either(0, 1, [0, 100])} ${either(0, 1, [0, 100])}${alpha()})`,
  xyz: () => `color(${pick(["xyz", "xyz-d65", "xyz-d50"])} ${between(0, 1)} ${between(0, 1)} ${between(0, 1)}${alpha()})`,
};

const unbounded = (color) => color.to("srgb-linear").coords.map((value) => value ?? 0);
const shown = (color) => unbounded(color.to("srgb").toGamut({ space: "srgb", method: "css" }));

console.log("# Made once with colorjs.io 0.7.1 and (vision only) culori 4.0.2 by make-vectors.mjs; linear sRGB unless said otherwise.");
console.log("# colour|CSS|unbounded r g b|r g b mapped into sRGB as CSS has it|alpha");
function colour(text) {
  const color = new Color(text);
  console.log(["colour", text, numbers(unbounded(color)), numbers(shown(color)), number(color.alpha)].join("|"));
}
const names = readFileSync(new URL("../../../../../main/resources/dev/lampwright/colour/named.txt", import.meta.url), "utf8");
names.split("\n").filter((line) => line && !line.startsWith("#")).forEach((line) => colour(line.split(" ")[0]));
for (const write of Object.values(writings)) {
  for (let i = 0; i < 80; i++) {
    colour(write());
  }
}

console.log("# mix|way|from|to|share|unbounded r g b|alpha");
const rules = ["oklab", "oklch shorter", "oklch longer", "oklch increasing", "oklch decreasing"];
const ends = [writings.hex, writings.hsl, writings.lab, writings.oklab, writings.oklch, writings.p3];
const missing = () => `oklch(${share()} ${pick(["none", between(0, 0.3)])} ${pick(["none", between(0, 360, 1)])})`;
for (const rule of rules) {
  const [space, arc] = rule.split(" ");
  for (let i = 0; i < 160; i++) {
    const polar = arc !== undefined && i % 4 === 0;
    const [from, to] = [polar ? missing() : pick(ends)(), polar ? missing() : pick(ends)()];
    const at = Number(between(0, 1));
    const color = new Color(from).range(to, { space, hue: arc, premultiplied: true })(at);
    console.log(["mix", rule, from, to, at, numbers(unbounded(color)), number(color.alpha)].join("|"));
  }
}

console.log("# difference|CSS|CSS|deltaEOK");
for (let i = 0; i < 200; i++) {
  const [one, other] = [hex(6), hex(6)];
  console.log(["difference", one, other, number(new Color(one).deltaE(other, "OK"))].join("|"));
}

console.log("# vision|which|linear r g b|unbounded linear r g b as seen");
const visions = { PROTAN: filterDeficiencyProt(1), DEUTAN: filterDeficiencyDeuter(1), TRITAN: filterDeficiencyTrit(1) };
for (const [which, see] of Object.entries(visions)) {
  for (let i = 0; i < 60; i++) {
    const light = [random(), random(), random()].map((value) => Number(value.toFixed(6)));
    // The library applies the matrices to whatever numbers it is given as rgb; here these are linear.
    const seen = see({ mode: "rgb", r: light[0], g: light[1], b: light[2] });
    console.log(["vision", which, numbers(light), numbers([seen.r, seen.g, seen.b])].join("|"));
  }
}
