// Draws what is lit: the strip in the shape in which it is mounted, its zones, and the lights on dimmers.

import { heightOf, marks, places } from "./shape.js";
import { percent } from "./words.js";

const SVG = "http://www.w3.org/2000/svg";
const GLOW_SCALE = 1 / 6;
const BODY = "#262b33";

export class Strip {
  #stage = document.getElementById("stage");
  #canvas = document.getElementById("strip");
  #glow = document.getElementById("glow");
  #marks = document.getElementById("marks");
  #lamps = document.getElementById("lamps");
  #zones = document.getElementById("zones");
  #layout = null;
  #at = null;
  #bulbs = [];
  #shown = null;
  #from = null;
  #to = null;

  constructor() {
    new ResizeObserver(() => this.#fit()).observe(this.#stage);
  }

  /** Other lights, or the same ones otherwise mounted. */
  lay(layout) {
    this.#layout = layout;
    this.#shown = null;
    this.#to = null;
    this.#listZones();
    this.#listLamps();
    this.#fit();
  }

  /** Says for those who cannot see it what is drawn. */
  describe(words) {
    this.#canvas.setAttribute("aria-label", words);
  }

  /** Shows a frame, at once or as a slow change, in ms. */
  show({ frame, fade }, now) {
    if (fade > 0 && this.#shown !== null) {
      this.#from = this.#to?.frame ?? this.#shown;
      this.#to = { frame, begins: now, takes: fade };
    } else {
      this.#to = null;
      this.#draw(frame);
    }
  }

  /** Goes on with a slow change. */
  step(now) {
    if (this.#to === null) {
      return;
    }
    const share = Math.min(1, (now - this.#to.begins) / this.#to.takes);
    this.#draw(between(this.#from, this.#to.frame, share));
    if (share === 1) {
      this.#to = null;
    }
  }

  #fit() {
    const width = this.#stage.clientWidth;
    if (this.#layout === null || width === 0) {
      return;
    }
    const height = heightOf(this.#layout, width);
    const density = window.devicePixelRatio || 1;
    this.#canvas.width = Math.round(width * density);
    this.#canvas.height = Math.round(height * density);
    this.#canvas.style.height = `${height}px`;
    this.#glow.width = Math.max(1, Math.round(width * GLOW_SCALE));
    this.#glow.height = Math.max(1, Math.round(height * GLOW_SCALE));
    this.#at = places(this.#layout, width, height);
    this.#mark(width, height);
    this.#draw(this.#shown ?? dark(this.#layout));
  }

  #mark(width, height) {
    this.#marks.setAttribute("viewBox", `0 0 ${width} ${height}`);
    this.#marks.style.height = `${height}px`;
    this.#marks.replaceChildren();
    for (const { name, path, x, y } of marks(this.#layout, this.#at)) {
      this.#marks.append(svg("path", { d: path }, ""), svg("text", { x, y: y + 4 }, name));
    }
    const first = this.#at.points[0];
    const away = this.#at.across / 2 + 9;
    this.#marks.append(svg("text", {
      x: Math.max(14, first.x - first.inX * away),
      y: first.y - first.inY * away + (first.inY === 0 ? 4 : 0),
      class: "pixel-number",
    }, "0"));
  }

  #draw(frame) {
    this.#shown = frame;
    if (this.#at === null) {
      return;
    }
    const pen = this.#canvas.getContext("2d");
    const density = this.#canvas.width / this.#stage.clientWidth;
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.clearRect(0, 0, this.#canvas.width, this.#canvas.height);
    const { points, along, across } = this.#at;
    const gap = along > 5 ? Math.min(3, along * 0.16) : 0;
    const long = Math.max(1, along - gap);
    points.forEach((point, i) => {
      const cos = Math.cos(point.turn) * density;
      const sin = Math.sin(point.turn) * density;
      pen.setTransform(cos, sin, -sin, cos, point.x * density, point.y * density);
      if (gap > 0) {
        pen.fillStyle = BODY;
        pen.fillRect(-long / 2 - gap / 2, -across / 2 - gap / 2, long + gap, across + gap);
      }
      pen.fillStyle = `rgb(${frame.strip[3 * i]}, ${frame.strip[3 * i + 1]}, ${frame.strip[3 * i + 2]})`;
      pen.fillRect(-long / 2, -across / 2, long + (gap === 0 ? 0.5 : 0), across);
    });
    const glow = this.#glow.getContext("2d");
    glow.clearRect(0, 0, this.#glow.width, this.#glow.height);
    glow.drawImage(this.#canvas, 0, 0, this.#glow.width, this.#glow.height);
    this.#bulbs.forEach((bulb) => bulb(frame.duties));
  }

  #listZones() {
    this.#zones.replaceChildren(...this.#layout.zones.map((zone) => {
      const item = document.createElement("li");
      item.textContent = `${zone.name}: pixels ${zone.place}`;
      return item;
    }));
  }

  #listLamps() {
    this.#bulbs = [];
    this.#lamps.replaceChildren(...this.#layout.lamps.map((lamp) => {
      const item = document.createElement("li");
      const bulb = document.createElement("span");
      bulb.className = "bulb";
      const words = document.createElement("span");
      item.append(bulb, words);
      this.#bulbs.push((duties) => light(lamp, duties, bulb, words));
      return item;
    }));
  }
}

function light(lamp, duties, bulb, words) {
  const shares = lamp.dimmers.map((dimmer) => duties[dimmer] ?? 0);
  const [red, green, blue] = lamp.white ? [shares[0], shares[0], shares[0]] : shares;
  bulb.style.background = `rgb(${[red, green, blue].map(screen).join(", ")})`;
  const text = lamp.white ? `${lamp.name} ${percent(red)}` : `${lamp.name} ${shares.map(percent).join(", ")}`;
  if (words.textContent !== text) {
    words.textContent = text;
  }
}

/** A share of light as a screen shows it. Source: IEC 61966-2-1. */
function screen(share) {
  const encoded = share <= 0.0031308 ? 12.92 * share : 1.055 * share ** (1 / 2.4) - 0.055;
  return Math.round(255 * encoded);
}

function dark(layout) {
  return { strip: new Uint8Array(3 * layout.pixels), duties: [] };
}

function between(from, to, share) {
  const mix = (a, b) => a + (b - a) * share;
  return {
    strip: to.strip.map((value, i) => Math.round(mix(from.strip[i] ?? value, value))),
    duties: to.duties.map((value, i) => mix(from.duties[i] ?? value, value)),
  };
}

function svg(name, attributes, text) {
  const element = document.createElementNS(SVG, name);
  Object.entries(attributes).forEach(([key, value]) => element.setAttribute(key, value));
  element.textContent = text;
  return element;
}
