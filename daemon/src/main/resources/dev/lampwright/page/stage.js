// The picture: the strip in the shape in which it is mounted, the light that it and the lamps throw on the wall, and the zones.

import { make, setText } from "./dom.js";
import { glare, linear, Wall } from "./light.js";
import { marks, places, zonesAt } from "./shape.js";
import { colourName, percent } from "./values.js";
import { say } from "./words.js";

const SVG = "http://www.w3.org/2000/svg";
const BODY = "#20242b";
/** White light, as seen beside the strip's. */
const LAMP_WHITE = [1, 0.86, 0.66];
const LAMP_ON_WALL = 0.3;

export class Stage {
  #box = document.getElementById("stage");
  #canvas = document.getElementById("strip");
  #marks = document.getElementById("marks");
  #layout = null;
  #at = null;
  #wall = null;
  #lamps = [];
  #shown = null;
  #from = null;
  #to = null;
  #chosen = () => {};

  /** onZone is called with the names of the zones that somebody has pressed on, the smallest first. */
  constructor(onZone) {
    this.#chosen = onZone;
    new ResizeObserver(() => this.#fit()).observe(this.#box);
    this.#canvas.addEventListener("pointermove", (event) => this.#point(event));
    this.#canvas.addEventListener("pointerleave", () => this.#markOnly([]));
    this.#canvas.addEventListener("click", (event) => this.#press(event));
  }

  /** Other lights, or the same ones otherwise mounted. */
  lay(layout) {
    this.#layout = layout;
    this.#shown = null;
    this.#to = null;
    this.#fit();
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

  /** Goes on with a slow change; false if there is none. */
  step(now) {
    if (this.#to === null) {
      return false;
    }
    const share = Math.min(1, (now - this.#to.begins) / this.#to.takes);
    this.#draw(between(this.#from, this.#to.frame, share));
    if (share === 1) {
      this.#to = null;
    }
    return this.#to !== null;
  }

  /** Says for those who cannot see it what is lit. */
  describe(frame) {
    const zones = this.#layout.zones.length > 1 ? this.#layout.zones.filter(({ name }) => name !== "strip") : this.#layout.zones;
    this.#canvas.setAttribute("aria-label", say("stage.label", { zones: zones.map((zone) => described(zone, frame)).join(", ") }));
  }

  /** Marks a zone, or all of them for as long as they can be chosen. */
  mark(names) {
    this.#box.dataset.marked = names.length === 0 ? "no" : "yes";
    this.#markOnly(names);
  }

  #markOnly(names) {
    for (const mark of this.#marks.children) {
      mark.classList.toggle("on", names.includes(mark.dataset.zone));
    }
  }

  #zones(event) {
    const { left, top } = this.#canvas.getBoundingClientRect();
    return this.#at === null ? [] : zonesAt(this.#layout, this.#at, event.clientX - left, event.clientY - top).map(({ name }) => name);
  }

  #point(event) {
    this.#markOnly(this.#zones(event).slice(0, 1));
  }

  #press(event) {
    const zones = this.#zones(event);
    if (zones.length > 0) {
      this.#chosen(zones);
    }
  }

  #fit() {
    const width = this.#box.clientWidth;
    const height = this.#box.clientHeight;
    if (this.#layout === null || width === 0 || height === 0) {
      return;
    }
    const density = window.devicePixelRatio || 1;
    this.#canvas.width = Math.round(width * density);
    this.#canvas.height = Math.round(height * density);
    this.#at = places(this.#layout, width, height);
    this.#wall = new Wall(width, height);
    this.#hang(width, height);
    this.#mark(width, height);
    this.#draw(this.#shown ?? dark(this.#layout));
  }

  /** Where the lamps are, as the configuration has it; those on the same side share its length. */
  #hang(width, height) {
    const sides = grouped(this.#layout.lamps);
    this.#lamps = [...sides].flatMap(([hangs, lamps]) => lamps.map((lamp, i) => {
      const share = (i + 1) / (lamps.length + 1);
      const [x, y] = {
        above: [width * share, -0.06 * height],
        below: [width * share, 1.06 * height],
        left: [-0.03 * width, height * share],
        right: [1.03 * width, height * share],
        behind: [width * share, height / 2],
      }[hangs];
      return { lamp, x, y, reach: 0.5 * Math.min(height, width) + 0.12 * Math.max(height, width) };
    }));
  }

  #mark(width, height) {
    this.#marks.setAttribute("viewBox", `0 0 ${width} ${height}`);
    this.#marks.replaceChildren();
    for (const { name, path, names } of marks(this.#layout, this.#at)) {
      const group = svg("g", { "data-zone": name }, "");
      group.append(svg("path", { d: path }, ""));
      this.#marks.append(group);
      for (const { x, y, words } of names) {
        const text = svg("text", { x, y: y + 4 }, words);
        group.append(text);
        const { x: left, y: top, width: wide, height: high } = text.getBBox();
        text.before(svg("rect", { x: left - 5, y: top, width: wide + 10, height: high, rx: 4 }, ""));
      }
    }
  }

  #draw(frame) {
    this.#shown = frame;
    if (this.#at === null) {
      return;
    }
    const pen = this.#canvas.getContext("2d");
    const density = this.#canvas.width / this.#box.clientWidth;
    pen.setTransform(density, 0, 0, density, 0, 0);
    const colours = this.#at.points.map((_, i) => [0, 1, 2].map((c) => linear(frame.strip[3 * i + c])));
    this.#throwLight(colours, frame.duties);
    this.#wall.draw(pen, this.#box.clientWidth, this.#box.clientHeight);
    if (this.#layout.seen_as === "line") {
      this.#drawLine(pen, density, colours);
    } else {
      this.#drawDots(pen, density, colours);
    }
  }

  #throwLight(colours, duties) {
    const { points, along, across } = this.#at;
    const wall = this.#wall;
    wall.darken();
    points.forEach(({ x, y }, i) => wall.put(x, y, colours[i], along));
    const near = Math.max(5, across * 0.9);
    wall.spread([[near, 0.5], [near * 3.2, 0.16], [near * 9, 0.05]]);
    for (const { lamp, x, y, reach } of this.#lamps) {
      const colour = lampColour(lamp, duties).map((share) => share * LAMP_ON_WALL);
      if (Math.max(...colour) > 0) {
        wall.pool(x, y, colour, reach);
      }
    }
  }

  #drawDots(pen, density, colours) {
    const { points, along, across } = this.#at;
    if (along < 5) {
      this.#drawLine(pen, density, colours, 0.3);
      return;
    }
    const radius = Math.min(along, across) * 0.36;
    points.forEach((point, i) => {
      this.#turn(pen, density, point);
      pen.fillStyle = BODY;
      pen.beginPath();
      pen.roundRect(-along * 0.46, -across * 0.46, along * 0.92, across * 0.92, radius / 3);
      pen.fill();
      const [rim, core] = [glare(colours[i], 0), glare(colours[i])].map((rgb) => `rgb(${rgb.join()})`);
      const bulb = pen.createRadialGradient(0, 0, radius * 0.3, 0, 0, radius * 1.15);
      bulb.addColorStop(0, core);
      bulb.addColorStop(0.3, core);
      bulb.addColorStop(0.75, rim);
      bulb.addColorStop(1, `rgb(${glare(colours[i], 0).join()}, 0)`);
      pen.fillStyle = bulb;
      pen.beginPath();
      pen.arc(0, 0, radius * 1.15, 0, 7);
      pen.fill();
    });
  }

  /** As through a diffuser: no pixel has an end, and the middle of each is of its own colour. */
  #drawLine(pen, density, colours, whitening = 0) {
    const { points, along, across } = this.#at;
    const thick = Math.max(3, across * 0.6);
    const parts = along < 8 ? 1 : 5;
    points.forEach((point, i) => {
      this.#turn(pen, density, point);
      for (let part = 0; part < parts; part++) {
        const place = (part + 0.5) / parts - 0.5;
        const other = colours[i + Math.sign(place)] ?? colours[i];
        pen.fillStyle = `rgb(${glare(mixed(colours[i], other, Math.abs(place)), whitening).join()})`;
        const left = along * (part / parts - 0.5);
        pen.fillRect(left, -thick / 2, along / parts + 0.5, thick);
      }
    });
  }

  #turn(pen, density, point) {
    const cos = Math.cos(point.turn) * density;
    const sin = Math.sin(point.turn) * density;
    pen.setTransform(cos, sin, -sin, cos, point.x * density, point.y * density);
  }
}

/** The lights on dimmers, in words and as a spot of their colour. */
export class Lamps {
  #box = document.getElementById("lamps");
  #tell = [];

  lay(layout) {
    this.#tell = [];
    this.#box.replaceChildren(...layout.lamps.map((lamp) => {
      const spot = make("span", { class: "spot" });
      const words = make("span");
      this.#tell.push((duties) => {
        const colour = lampColour(lamp, duties);
        spot.style.background = `rgb(${glare(colour, 0).join()})`;
        const value = { name: lamp.name, share: percent(duties[lamp.dimmers[0]] ?? 0), colour: colourName(colour) };
        const text = say(lamp.white ? "lamp.share" : "lamp.colour", value);
        setText(words, text);
      });
      return make("li", {}, spot, words);
    }));
  }

  /** What they are at, in truth, however they are drawn. */
  tell(duties) {
    this.#tell.forEach((tell) => tell(duties));
  }
}

function lampColour(lamp, duties) {
  const shares = lamp.dimmers.map((dimmer) => duties[dimmer] ?? 0);
  return lamp.white ? LAMP_WHITE.map((part) => part * shares[0]) : shares;
}

function described({ name, runs }, frame) {
  const pixels = runs.flatMap(([first, last]) => {
    const step = first <= last ? 1 : -1;
    return Array.from({ length: Math.abs(last - first) + 1 }, (_, i) => first + step * i);
  });
  const light = pixels.map((pixel) => [0, 1, 2].map((c) => linear(frame.strip[3 * pixel + c])));
  const most = Math.max(...light.flat());
  const bright = light.map((colour) => Math.max(...colour) > most / 3);
  const sum = light.filter((_, i) => bright[i]).reduce((a, b) => a.map((value, c) => value + b[c] / light.length), [0, 0, 0]);
  const colour = most < 0.004 ? colourName([0, 0, 0]) : colourName(sum);
  const end = bright.lastIndexOf(true) + 1;
  const isBar = most >= 0.004 && end < pixels.length && bright.slice(0, end).every(Boolean);
  return say(isBar ? "stage.zone.to" : "stage.zone", { zone: name, colour, share: percent(end / pixels.length) });
}

function grouped(lamps) {
  const groups = new Map();
  lamps.forEach((lamp) => groups.set(lamp.hangs, [...(groups.get(lamp.hangs) ?? []), lamp]));
  return groups;
}

function mixed(from, to, share) {
  return from.map((value, c) => value + (to[c] - value) * share);
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
