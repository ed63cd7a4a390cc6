// Several printers on one strip: what each does, next to its part of the strip, with its own fault to acknowledge.

import { make, setText } from "./dom.js";
import { heatWords, temperatures } from "./heat.js";
import { doing, faultWords, news } from "./now.js";
import { say } from "./words.js";

export class Printers {
  #list = document.getElementById("printers");
  #now = document.getElementById("now");
  #items = new Map();
  #places = new Map();
  #desk;

  constructor(desk) {
    this.#desk = desk;
  }

  lay({ views = [] }) {
    this.#places = new Map();
    for (const { printer, place } of views) {
      this.#places.set(printer, [...this.#places.get(printer) ?? [], place]);
    }
    this.#items.clear();
    this.#list.replaceChildren();
  }

  tell(report) {
    const names = several(report);
    this.#now.classList.toggle("several", names.length > 0);
    this.#list.hidden = names.length === 0;
    for (const name of names) {
      const item = this.#items.get(name) ?? this.#add(name);
      item.tell(of(report, name));
    }
  }

  #add(name) {
    const item = new Item(name, (this.#places.get(name) ?? []).join(", "), this.#desk);
    this.#items.set(name, item);
    this.#list.append(item.element);
    return item;
  }
}

/** One printer of the list. */
class Item {
  element = make("li");
  #state = make("p", { class: "does" });
  #bar = make("div", { class: "progress none" });
  #words = make("p", { class: "says" });
  #next = make("p", { class: "next" });
  #heat = make("p", { class: "warmth" });
  #acknowledge;
  #reset;

  constructor(name, place, desk) {
    const head = make("h3");
    const pixels = make("span", { class: "place" });
    head.textContent = name;
    pixels.textContent = place === "" ? "" : say("printers.place", { pixels: place });
    head.append(" ", pixels);
    this.#bar.append(make("span"));
    this.#bar.setAttribute("aria-hidden", "true");
    this.#acknowledge = button("fault.acknowledge", name, () => desk.ask("acknowledge", { acknowledge: name }));
    this.#reset = button("fault.reset", name, () => desk.ask("reset", { reset: name }));
    head.tabIndex = -1;
    this.element.append(head, this.#state, this.#bar, this.#words, this.#next, this.#acknowledge, this.#reset, this.#heat);
  }

  tell(printer) {
    const { state, share } = doing(printer);
    const fault = faultWords(printer);
    this.element.dataset.alarm = printer.alarm;
    setText(this.#state, fault === null ? state : fault.title);
    this.#bar.firstElementChild.style.width = `${100 * (share ?? 0)}%`;
    this.#bar.classList.toggle("none", share === null || fault !== null);
    setText(this.#words, fault?.words ?? "");
    setText(this.#next, fault?.next ?? "");
    this.#offer(this.#acknowledge, printer.alarm === "alert");
    this.#offer(this.#reset, printer.alarm !== "alert" && printer.alarm !== "normal" && !printer.fault_lasts);
    setText(this.#heat, temperatures(printer.signals).map(heatWords).join(" · "));
  }

  /** What can't be done now is not offered; if it has just been pressed, the focus moves on. */
  #offer(control, offered) {
    if (!offered && document.activeElement === control) {
      this.element.firstElementChild.focus();
    }
    control.hidden = !offered;
  }
}

/** The names of the printers, if there are several. */
export function several({ printers = {} }) {
  const names = Object.keys(printers);
  return names.length > 1 ? names : [];
}

/** What a report says about one printer, as if it were the only one. */
function of(report, name) {
  const beginning = `${name}.`;
  const signals = Object.entries(report.signals)
    .filter(([key]) => key.startsWith(beginning))
    .map(([key, value]) => [key.slice(beginning.length), value]);
  return {
    ...report.printers[name],
    fault_lasts: (report.faults_last ?? []).includes(name),
    signals: Object.fromEntries(signals),
  };
}

/** A report as the page uses it: the only printer needs no name. */
export function plain(report) {
  const names = Object.keys(report.printers ?? {});
  return names.length === 1 ? { ...report, ...of(report, names[0]) } : report;
}

/** What is new about each of several printers: in words, for those who cannot see the page, and as reported before and now. */
export function newsOfAll(before, now) {
  return several(now)
    .filter((name) => before.printers?.[name] !== undefined)
    .map((name) => ({ name, words: news(of(before, name), of(now, name)), was: before.printers[name], is: now.printers[name] }))
    .filter(({ words }) => words !== "");
}

function button(code, name, act) {
  return make("button", { type: "button", class: "main", hidden: true, text: say(code), "aria-label": say("printers.act", { act: say(code), name }), onclick: act });
}
