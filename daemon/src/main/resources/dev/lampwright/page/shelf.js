// All rigs: those that need a person first, each with its strip as it is lit, and a link to its page.

import { Band } from "./band.js";
import { Contact } from "./contact.js";
import { make, setText } from "./dom.js";
import { Entry } from "./entry.js";
import { Pace } from "./still.js";
import { Tab } from "./tab.js";
import { clock, percent, roughly } from "./values.js";
import { fill, say } from "./words.js";

const GROUPS = {
  needs: ["fault", "acknowledged", "rejected", "held", "done"],
  work: ["working"],
  idle: ["idle"],
  unheard: ["lost", "silent", "ended"],
};
/** Longer waits need no frame of the browser's own. */
const SOON_MS = 60;

const byId = (id) => document.getElementById(id);
fill(document);

const calm = matchMedia("(prefers-reduced-motion: reduce)");
const cards = new Map();
let version = null;
const contact = new Contact();
let waiting = 0;

const LISTENERS = {
  shelf: takeShelf,
  strips: takeStrips,
  live: beLive,
  lost: beLost,
  stranger: askForToken,
};
const tab = new Tab((topic, message) => LISTENERS[topic]?.(message));
const entry = new Entry(() => tab.open());

/** What a rig or one of its printers is doing, in words. */
class Lines {
  #parts = {};
  #element;

  constructor(kind) {
    this.#element = make("span", { class: kind });
    for (const name of ["name", "state", "progress", "note"]) {
      this.#parts[name] = make("span", { class: name });
      this.#element.append(this.#parts[name]);
    }
    this.#parts.progress.ariaHidden = "true";
    this.#parts.progress.append(make("span"));
  }

  get element() {
    return this.#element;
  }

  tell(what, state, share, notes) {
    const { name, progress } = this.#parts;
    this.#element.dataset.stands = what.standing;
    setText(name, what.name);
    if (what.host !== undefined) {
      name.append(make("span", { class: "host", text: ` ${say("shelf.elsewhere", { host: what.host })}` }));
    }
    setText(this.#parts.state, state);
    setText(this.#parts.note, notes.filter((note) => note !== "").join(" · "));
    progress.classList.toggle("none", share === undefined);
    progress.firstElementChild.style.width = `${100 * (share ?? 0)}%`;
  }
}

/** One rig as it is drawn. */
class Card {
  #item = make("li");
  #box = null;
  #inside;
  #words = new Lines("words");
  #list = make("span", { class: "printers" });
  #printers = new Map();
  #band = new Band();
  #pace = new Pace();
  #colours = null;
  #from = null;
  #to = null;
  #fadeFrom = 0;
  #fade = 0;
  rig = null;

  constructor() {
    this.#inside = [this.#band.element, this.#words.element, this.#list];
  }

  get item() {
    return this.#item;
  }

  tell(rig) {
    const lookBefore = this.rig?.look;
    this.rig = rig;
    this.#box = this.#boxFor(rig);
    this.#item.dataset.standing = rig.standing;
    this.#item.dataset.unlit = rig.unlit === true;
    const printers = rig.printers ?? [];
    if (printers.length === 0) {
      this.#words.tell(rig, stateOf(rig), rig.share, [whyOf(rig), ...notesOf(rig)]);
    } else {
      this.#words.tell(rig, "", undefined, notesOf(rig));
    }
    this.#words.element.classList.toggle("several", printers.length > 0);
    this.#tellPrinters(printers);
    if (lookBefore !== undefined && lookBefore !== rig.look && this.#colours !== null) {
      this.show(this.#colours);
    }
  }

  /** Who needs a person most comes first. */
  #tellPrinters(printers) {
    const names = printers.map(({ name }) => name);
    for (const name of [...this.#printers.keys()].filter((known) => !names.includes(known))) {
      this.#printers.get(name).element.remove();
      this.#printers.delete(name);
    }
    printers.forEach((printer, i) => {
      if (!this.#printers.has(printer.name)) {
        this.#printers.set(printer.name, new Lines("printer"));
      }
      const lines = this.#printers.get(printer.name);
      lines.tell(printer, stateOf(printer), printer.share, [whyOf(printer)]);
      if (this.#list.children[i] !== lines.element) {
        this.#list.insertBefore(lines.element, this.#list.children[i] ?? null);
      }
    });
    this.#list.hidden = printers.length === 0;
  }

  /** A link if there is somewhere to go. */
  #boxFor(rig) {
    const tag = rig.page === undefined ? "DIV" : "A";
    let box = this.#box;
    if (box === null || box.tagName !== tag) {
      box = make(tag, { class: "rig" });
      box.append(...this.#inside);
      this.#item.replaceChildren(box);
    }
    if (rig.page !== undefined) {
      box.href = rig.page;
    }
    return box;
  }

  /** Its strip is lit in other colours. */
  show(colours) {
    this.#colours = colours;
    this.#pace.take({ at: performance.now(), strip: colours, duties: [] }, performance.now(), this.rig.look, this.rig.flashes);
  }

  /** In how many ms there is something to draw. */
  due(now) {
    return this.#fade > 0 ? 0 : this.#pace.due(now);
  }

  draw(now) {
    const next = this.#pace.next(now, false, calm.matches);
    if (next !== null) {
      this.#from = this.#to ?? next.frame.strip;
      this.#to = next.frame.strip;
      this.#fadeFrom = now;
      this.#fade = next.fade;
    }
    if (this.#to === null || (next === null && this.#fade === 0)) {
      return;
    }
    const share = this.#fade === 0 ? 1 : Math.min(1, (now - this.#fadeFrom) / this.#fade);
    this.#band.show(this.#to, this.#from, share);
    if (share === 1) {
      this.#fade = 0;
    }
  }
}

function stateOf(rig) {
  switch (rig.standing) {
    case "fault": return say(rig.state === "fault" ? "fault.alert" : "fault.alert.over");
    case "acknowledged": return say(rig.alarm === "ringback" ? "fault.over" : "fault.acknowledged");
    case "rejected": return say("shelf.rejected");
    case "lost": return say("shelf.lost");
    case "ended": return say("shelf.ended");
    default: return rig.share === undefined ? say(`state.${rig.state}`) : say("shelf.state.share", { state: say(`state.${rig.state}`), share: percent(rig.share) });
  }
}

/** What concerns the whole rig. */
function notesOf({ unlit, twice }) {
  return [unlit ? say("shelf.unlit") : "", twice ? say("shelf.twice") : ""];
}

/** What there is to count: the printers of a rig with several, else the rig; each with a name that nothing else on the shelf has. */
function eachOf(rigs) {
  return rigs.flatMap((rig) => (rig.printers ?? []).length === 0
    ? [{ ...rig, key: `${rig.id}` }]
    : rig.printers.map((printer) => ({ ...printer, key: `${rig.id} ${printer.name}`, name: say("shelf.printer", { printer: printer.name, rig: rig.name }) })));
}

function whyOf({ standing, state, fault, silence, left_s: left, heard_s: heard, why }) {
  switch (standing) {
    case "rejected": return why;
    case "fault":
    case "acknowledged": return fault ?? say("fault.silent");
    case "lost": return heard === undefined ? say("shelf.lost.gone") : say("shelf.lost.since", { time: roughly(heard) });
    case "silent": return say(silence === undefined ? "silence" : `silence.${silence.replaceAll(" ", "_")}`);
    case "done": return say(`when.${state}`);
    case "working": return left === undefined ? say("when.unknown") : say(state === "warming" ? "when.left.heat" : "when.left", { time: roughly(left), clock: clock(Date.now() + 1000 * left) });
    default: return "";
  }
}

function takeShelf({ version: next, rigs, broker }) {
  if (version !== null && version !== next) {
    location.reload();
  }
  version = next;
  setText(byId("version"), say("page.version", { version }));
  setText(byId("broker"), broker === undefined ? "" : say("shelf.broker", { broker }));
  const faulty = new Set(faultsOf([...cards.values()].map(({ rig }) => rig)).map(({ key }) => key));
  const began = cards.size > 0;
  const here = new Set(rigs.map(({ id }) => id));
  for (const [id, card] of cards) {
    if (!here.has(id)) {
      card.item.remove();
      cards.delete(id);
    }
  }
  for (const rig of rigs) {
    if (!cards.has(rig.id)) {
      cards.set(rig.id, new Card());
    }
    cards.get(rig.id).tell(rig);
  }
  arrange(rigs);
  sum(rigs);
  const news = faultsOf(rigs).filter(({ key }) => began && !faulty.has(key));
  if (news.length > 0) {
    setText(byId("news"), news.map((each) => say("shelf.news", { rig: each.name, state: stateOf(each) })).join(" "));
  }
  wake();
}

function faultsOf(rigs) {
  return eachOf(rigs).filter(({ standing }) => standing === "fault");
}

/** Puts each card where it belongs, and moves none that is already there; the focus stays where it is. */
function arrange(rigs) {
  const focused = document.activeElement;
  for (const [group, standings] of Object.entries(GROUPS)) {
    const section = document.querySelector(`[data-group="${group}"]`);
    const list = section.querySelector("ul");
    const items = rigs.filter(({ standing }) => standings.includes(standing)).map(({ id }) => cards.get(id).item);
    items.forEach((item, i) => {
      if (list.children[i] !== item) {
        list.insertBefore(item, list.children[i] ?? null);
      }
    });
    section.hidden = items.length === 0;
  }
  if (focused !== document.activeElement && focused.isConnected) {
    focused.focus();
  }
}

function sum(rigs) {
  const each = eachOf(rigs);
  const needing = each.filter(({ standing }) => GROUPS.needs.includes(standing)).length;
  const working = each.filter(({ standing }) => standing === "working");
  const words = [say("shelf.rigs", { count: rigs.length }), needing === 0 ? say("shelf.none") : say("shelf.need", { count: needing })];
  if (working.length > 0) {
    words.push(say("shelf.working", { count: working.length }));
  }
  setText(byId("sum"), rigs.length === 0 ? say("shelf.empty") : words.join(" · "));
  document.title = needing === 0 ? say("shelf.title") : `${say("shelf.need", { count: needing })} · ${say("shelf.title")}`;
}

function takeStrips(strips) {
  for (const [id, base64] of Object.entries(strips)) {
    cards.get(Number(id))?.show(Uint8Array.from(atob(base64), (character) => character.charCodeAt(0)));
  }
  wake();
}

/** Arranges for whatever is due to be drawn; while nothing is due, nothing runs. */
function wake() {
  if (waiting !== 0 || document.hidden) {
    return;
  }
  const now = performance.now();
  const wait = Math.min(...[...cards.values()].map((card) => card.due(now)), Infinity);
  if (wait < Infinity) {
    waiting = wait > SOON_MS ? -setTimeout(() => draw(performance.now()), wait) : requestAnimationFrame(draw);
  }
}

function draw(time) {
  waiting = 0;
  cards.forEach((card) => card.draw(time));
  wake();
}

function beLive() {
  if (contact.isLive) {
    return;
  }
  contact.beLive();
  setText(byId("alert"), "");
  byId("shelf").hidden = false;
}

/** The connection is gone, or there was none: what is drawn is what was last reported. */
function beLost(refusal) {
  if (!contact.isLost) {
    setText(byId("alert"), say("lost.since", { time: clock(Date.now()) }));
  }
  contact.beLost(refusal !== null);
}

function askForToken() {
  byId("shelf").hidden = true;
  contact.askForToken();
}

async function begin() {
  await entry.takeToken();
  tab.open();
}

document.addEventListener("visibilitychange", wake);
addEventListener("hashchange", async () => await entry.takeToken() && tab.open());
begin();
