// What can be asked for. Every answer is shown and read out, a refusal with its reason.

import { percent } from "./words.js";

export class Asks {
  #answer = document.getElementById("answer");
  #sliders = [];
  #looks = [];
  #onStranger;

  /** onStranger is called when the page is not let in any more. */
  constructor(onStranger) {
    this.#onStranger = onStranger;
    button("acknowledge", () => this.#ask("acknowledge", {}));
    button("reset", () => this.#ask("reset", {}));
    button("try-button", () => this.#ask("look", { look: value("try"), for_s: Number(value("try-for")) }));
    button("try-end", () => this.#ask("look", { look: "auto" }));
    document.querySelectorAll("[data-quiet]").forEach((choice) => {
      choice.addEventListener("click", () => this.#ask("quiet", { quiet: choice.dataset.quiet }));
    });
    document.getElementById("try").addEventListener("change", () => this.#warn());
    this.#brightness = new Slider(
      document.getElementById("brightness"),
      document.getElementById("brightness-value"),
      (brightness) => this.#ask("brightness", { brightness }));
  }

  #brightness;

  /** What is fitted, and which looks there are. */
  lay(layout) {
    this.#looks = layout.looks;
    const list = document.getElementById("try");
    const chosen = list.value;
    list.replaceChildren(...layout.looks.map(({ name, flashes }) => new Option(flashes ? `${name} (flashes)` : name, name)));
    const calm = layout.looks.find(({ flashes }) => !flashes) ?? layout.looks[0];
    list.value = layout.looks.some(({ name }) => name === chosen) ? chosen : calm.name;
    this.#warn();
    const box = document.getElementById("work");
    this.#sliders = [];
    box.replaceChildren(...layout.lamps.filter((lamp) => lamp.white).map((lamp, i) => this.#workLight(lamp, i)));
    const words = layout.quiet_hours ? "" : "No hours of the night are set.";
    document.getElementById("quiet-words").dataset.hours = words;
  }

  #workLight(lamp, number) {
    const box = document.createElement("div");
    box.className = "ask";
    const label = document.createElement("label");
    label.textContent = `White light ${lamp.name}`;
    label.htmlFor = `work-${number}`;
    const row = document.createElement("div");
    row.className = "row";
    const range = document.createElement("input");
    Object.assign(range, { id: label.htmlFor, type: "range", min: "0", max: "100", step: "5" });
    const output = document.createElement("output");
    output.htmlFor = range.id;
    const back = document.createElement("button");
    back.type = "button";
    back.textContent = "As the look says";
    back.setAttribute("aria-label", `White light ${lamp.name} as the look says`);
    back.addEventListener("click", () => this.#ask("work", { dimmer: lamp.name, work: "auto" }));
    row.append(range, output, back);
    box.append(label, row);
    const slider = new Slider(range, output, (work) => this.#ask("work", { dimmer: lamp.name, work }));
    this.#sliders.push({ slider, dimmer: lamp.dimmers[0] });
    return box;
  }

  /** How things are now. */
  tell(report, duties) {
    this.#brightness.follow(report.brightness);
    this.#sliders.forEach(({ slider, dimmer }) => slider.follow(duties[dimmer] ?? 0));
    const words = document.getElementById("quiet-words");
    const now = report.quiet ? "It is quiet: light is dimmed." : "It is not quiet.";
    const text = [now, words.dataset.hours ?? ""].join(" ").trim();
    if (words.textContent !== text) {
      words.textContent = text;
    }
  }

  #warn() {
    const look = this.#looks.find(({ name }) => name === value("try"));
    document.getElementById("try-note").textContent = look?.flashes
      ? "This look flashes, on the strip too. Flashing light can harm people with photosensitive epilepsy."
      : "";
  }

  async #ask(word, what) {
    this.#say("", true);
    try {
      const response = await fetch(`ask/${word}`, {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: JSON.stringify(what),
        signal: AbortSignal.timeout(8000),
      });
      const answer = await response.json();
      if (response.status === 401) {
        this.#onStranger();
      }
      this.#say(answer.done ? `Done: ${answer.now}.` : `Not done: ${answer.why}.`, answer.done);
    } catch {
      this.#say("Not done: Lampwright does not answer.", false);
    }
  }

  #say(text, done) {
    this.#answer.textContent = text;
    this.#answer.classList.toggle("refused", !done);
  }
}

/** A level that is asked for when it is let go, and otherwise follows what is so. */
class Slider {
  #range;
  #output;
  #waitUntil = 0;
  #held = false;

  constructor(range, output, ask) {
    this.#range = range;
    this.#output = output;
    range.addEventListener("input", () => {
      this.#held = true;
      this.#say();
    });
    range.addEventListener("change", () => {
      this.#held = false;
      this.#waitUntil = performance.now() + 1500;
      ask(Number(range.value) / 100);
    });
  }

  follow(share) {
    const text = String(Math.round(share * 100));
    if (!this.#held && performance.now() > this.#waitUntil && this.#range.value !== text) {
      this.#range.value = text;
      this.#output.textContent = percent(share);
    } else if (this.#output.textContent === "") {
      this.#say();
    }
  }

  #say() {
    this.#output.textContent = percent(Number(this.#range.value) / 100);
  }
}

function button(id, action) {
  document.getElementById(id).addEventListener("click", action);
}

function value(id) {
  return document.getElementById(id).value;
}
