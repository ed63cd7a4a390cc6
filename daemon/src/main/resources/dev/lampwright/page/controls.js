// The controls, and the bar that opens them where there is no room for all.

import { Newest } from "./asks.js";
import { make, setText } from "./dom.js";
import { duration, lightness, percent, shareOf } from "./values.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);
const TIMES = [10, 60, 600, 3600, "changed"];
const RECENT = "lampwright.recent-colours";
const FIRST_COLOURS = ["oklch(0.85 0.09 75)", "oklch(0.97 0.01 90)", "oklch(0.7 0.16 30)", "oklch(0.75 0.16 145)", "oklch(0.65 0.15 250)"];
const MOST_RECENT = 6;
/** Light follows the hand without a step. */
const SHORT_FADE_S = 0.1;

export class Controls {
  #desk;
  #box = byId("controls");
  #onTargets;
  #levels = [];
  #looks = [];
  #targets = [];
  #target = "strip";
  #hours = "";
  #tint;

  /**
   * onTargets is called with the zones that can be chosen while a colour is, to be marked; the chosen one is all of them. onLook is called
   * with the name of a look that somebody has chosen and not asked for yet, and with none once that is over.
   */
  constructor(desk, onTargets, onLook) {
    this.#desk = desk;
    this.#onTargets = onTargets;
    this.#tint = new Newest((colour) => desk.ask("pixels", { pixels: { [this.#target]: colour }, ...lasting("tint-for") }));
    for (const id of ["tint-for", "try-for"]) {
      byId(id).replaceChildren(...TIMES.map((time) => new Option(forHowLong(time), time, false, time === 600)));
    }
    document.querySelectorAll("#bar [data-panel]").forEach((button) => {
      button.addEventListener("click", () => this.open(this.#box.dataset.open === button.dataset.panel ? "" : button.dataset.panel));
    });
    document.addEventListener("keydown", (event) => event.key === "Escape" && this.open(""));
    document.querySelectorAll("[data-lights]").forEach((button) => {
      button.addEventListener("click", () => desk.ask("lights", { lights: button.dataset.lights }));
    });
    press("acknowledge", () => desk.ask("acknowledge", {}));
    press("reset", () => desk.ask("reset", {}));
    press("try-button", () => {
      onLook("");
      desk.ask("look", { look: byId("try").value, ...lasting("try-for") });
    });
    byId("try").addEventListener("change", () => {
      this.#warn();
      onLook(byId("try").value);
    });
    press("tint-show", () => this.#show());
    for (const id of ["hue", "tint"]) {
      byId(id).addEventListener("input", () => this.#put(colour()));
      byId(id).addEventListener("change", () => this.#remember(colour()));
    }
    document.querySelectorAll("[data-quiet]").forEach((choice) => {
      choice.addEventListener("click", () => desk.ask("quiet", { quiet: choice.dataset.quiet }));
    });
    this.#listRecent();
    byId("sample").style.background = colour();
    this.open("");
  }

  /** What is fitted, and which looks there are. */
  lay(layout) {
    const own = layout.looks.filter(({ warns }) => !warns);
    const finished = layout.swatches.filter(({ name, warns }) => !warns && !layout.looks.some((look) => look.name === name));
    this.#looks = [...own, ...finished];
    const list = byId("try");
    const chosen = list.value;
    list.replaceChildren(group("look.own", own), group("look.finished", finished));
    const calm = this.#looks.find(({ flashes }) => !flashes) ?? this.#looks[0];
    list.value = this.#looks.some(({ name }) => name === chosen) ? chosen : calm?.name;
    this.#warn();
    this.#layLevels(layout);
    this.#layTargets(layout);
    this.#hours = layout.quiet_hours ? say("night.hours", layout.quiet_hours) : say("night.none");
    document.querySelector('[data-quiet="auto"]').hidden = !layout.quiet_hours;
  }

  #layLevels(layout) {
    const white = layout.lamps.filter((lamp) => lamp.white);
    const strip = new Level(say("light.strip"), "brightness", (brightness) => this.#desk.ask("brightness", { brightness, fade_s: SHORT_FADE_S }));
    this.#levels = [{ level: strip, share: (report) => report.brightness }];
    white.forEach((lamp, i) => {
      const level = new Level(lamp.name, `work-${i}`, (work) => this.#desk.ask("work", { dimmer: lamp.name, work, fade_s: SHORT_FADE_S }));
      this.#levels.push({ level, share: (_, duties) => duties[lamp.dimmers[0]] ?? 0 });
    });
    byId("levels").replaceChildren(...this.#levels.map(({ level }) => level.element));
  }

  #layTargets(layout) {
    this.#targets = layout.zones.map(({ name }) => name);
    if (!this.#targets.includes(this.#target)) {
      this.#target = "strip";
    }
    byId("targets").replaceChildren(...this.#targets.map((name) => {
      const chip = document.createElement("button");
      chip.type = "button";
      chip.setAttribute("role", "radio");
      chip.textContent = name;
      chip.dataset.zone = name;
      chip.addEventListener("click", () => this.aim(name));
      chip.addEventListener("keydown", (event) => this.#step(event));
      return chip;
    }));
    this.aim(this.#target);
  }

  /** Arrow keys choose among radio buttons, by the pattern of WAI-ARIA. */
  #step(event) {
    const way = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (way !== undefined) {
      event.preventDefault();
      const at = this.#targets.indexOf(this.#target);
      this.aim(this.#targets.at((at + way) % this.#targets.length));
      byId("targets").querySelector('[aria-checked="true"]').focus();
    }
  }

  /** Chooses the zone that a colour is for. */
  aim(zone) {
    this.#target = zone;
    for (const chip of byId("targets").children) {
      const chosen = chip.dataset.zone === zone;
      chip.setAttribute("aria-checked", chosen);
      chip.tabIndex = chosen ? 0 : -1;
    }
    this.#mark();
  }

  /** Opens a panel where only one has room; "" for none. */
  open(panel) {
    this.#box.dataset.open = panel;
    document.querySelectorAll("#bar [data-panel]").forEach((button) => {
      button.setAttribute("aria-expanded", button.dataset.panel === panel);
    });
    this.#mark();
  }

  /** Chooses the next of the zones that somebody has pressed on in the picture, and offers a colour for it. */
  press(zones) {
    const again = this.#box.dataset.open === "colour" ? zones.indexOf(this.#target) : -1;
    this.open("colour");
    this.aim(zones[(again + 1) % zones.length]);
  }

  #mark() {
    this.#onTargets(this.#box.dataset.open === "colour" ? [this.#target] : []);
  }

  #show() {
    const now = colour();
    this.#remember(now);
    this.#put(now);
  }

  #put(one) {
    byId("sample").style.background = one;
    this.#tint.put(one);
  }

  #remember(now) {
    const colours = [now, ...recent().filter((other) => other !== now)].slice(0, MOST_RECENT);
    localStorage.setItem(RECENT, JSON.stringify(colours));
    this.#listRecent();
  }

  #listRecent() {
    byId("recent").replaceChildren(...recent().map((one, i) => {
      const button = document.createElement("button");
      button.type = "button";
      button.style.background = one;
      button.setAttribute("aria-label", say("tint.recent.one", { number: i + 1 }));
      button.addEventListener("click", () => {
        const [light, , hue] = one.match(/[\d.]+/g).map(Number);
        byId("hue").value = hue;
        byId("tint").value = 100 * light;
        this.#put(one);
      });
      return button;
    }));
  }

  /** How things are now. */
  tell(report, duties) {
    const asked = report.asked ?? [];
    byId("lights-auto").classList.toggle("on", asked.length > 0);
    const dark = asked.some(({ ask, value }) => ask === "brightness" && value === 0);
    if (byId("bar-lights").dataset.lights !== (dark ? "auto" : "off")) {
      byId("bar-lights").dataset.lights = dark ? "auto" : "off";
      byId("bar-lights").lastElementChild.textContent = say(dark ? "bar.auto" : "bar.off");
    }
    const quiet = asked.find(({ ask }) => ask === "quiet")?.value ?? "auto";
    document.querySelectorAll("[data-quiet]").forEach((button) => button.setAttribute("aria-pressed", button.dataset.quiet === quiet));
    this.#levels.forEach(({ level, share }) => level.follow(share(report, duties)));
    const words = `${say(report.quiet ? "night.is" : "night.not")} ${this.#hours}`;
    setText(byId("quiet-words"), words);
  }

  /** Whether anything can be asked for at all. */
  enable(able) {
    document.querySelectorAll("#controls :is(button, input, select), #now button").forEach((control) => {
      control.disabled = !able;
    });
    if (!able) {
      this.#desk.forget();
    }
  }

  #warn() {
    const look = this.#looks.find(({ name }) => name === byId("try").value);
    byId("try-note").textContent = look?.flashes ? say("look.warning") : "";
  }
}

/** A level of light in steps that look even: live while it is dragged, and otherwise what is so. */
class Level {
  #range;
  #output;
  #newest;
  #held = false;

  constructor(name, id, ask) {
    this.#newest = new Newest(ask);
    this.#range = make("input", { id, type: "range", min: 0, max: 100, step: 1 });
    this.#output = make("output", { for: id });
    this.element = make("label", { class: "slider", for: id }, make("span", { text: name }), this.#range, this.#output);
    this.#range.addEventListener("input", () => {
      this.#held = true;
      this.#say(shareOf(Number(this.#range.value)));
      this.#newest.put(round(shareOf(Number(this.#range.value))));
    });
    this.#range.addEventListener("change", () => {
      this.#held = false;
    });
  }

  follow(share) {
    if (!this.#held && !this.#newest.busy) {
      const step = String(Math.round(lightness(share)));
      if (this.#range.value !== step) {
        this.#range.value = step;
      }
      this.#say(share);
    }
  }

  #say(share) {
    const text = percent(share);
    setText(this.#output, text);
    this.#range.setAttribute("aria-valuetext", say("light.value", { share: text }));
  }
}

/** Looks to choose from, under what they have in common. */
function group(code, looks) {
  return make("optgroup", { label: say(code) }, ...looks.map(({ name, flashes }) => new Option(flashes ? say("look.flashes", { look: name }) : name, name)));
}

function round(share) {
  return Math.round(share * 10_000) / 10_000;
}

/** The colour of the two sliders. Its chroma is what most hues have room for at that lightness. */
function colour() {
  const light = Number(byId("tint").value) / 100;
  const chroma = 0.19 * Math.min(1, 2.2 * (1 - light) + 0.12) * Math.min(1, 1.8 * light);
  return `oklch(${light.toFixed(2)} ${chroma.toFixed(3)} ${byId("hue").value})`;
}

function recent() {
  try {
    const kept = JSON.parse(localStorage.getItem(RECENT)) ?? [];
    const right = kept.filter((one) => /^oklch\([\d.]+ [\d.]+ [\d.]+\)$/.test(one));
    return [...right, ...FIRST_COLOURS.filter((one) => !right.includes(one))].slice(0, MOST_RECENT);
  } catch {
    return FIRST_COLOURS;
  }
}

function forHowLong(time) {
  return time === "changed" ? say("for.changed") : say("for.time", { time: duration(time) });
}

/** For how long, as an ask has it. */
function lasting(id) {
  const time = byId(id).value;
  return time === "changed" ? { until: time } : { for_s: Number(time) };
}

function press(id, action) {
  byId(id).addEventListener("click", action);
}
