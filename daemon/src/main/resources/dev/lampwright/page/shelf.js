// All rigs: those that need a person first, each with its strip as it is lit, and a link to its page.

import { Contact } from "./contact.js";
import { Entry } from "./entry.js";
import { glare, linear } from "./light.js";
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

/** One rig as it is drawn. */
class Card {
  #item = document.createElement("li");
  #box = null;
  #parts = {};
  #pens;
  #image;
  #pace = new Pace();
  #colours = null;
  #from = null;
  #to = null;
  #fadeFrom = 0;
  #fade = 0;
  rig = null;

  constructor() {
    const canvases = ["glow", "core"].map((kind) => {
      const canvas = document.createElement("canvas");
      canvas.className = kind;
      return canvas;
    });
    this.#pens = canvases.map((canvas) => canvas.getContext("2d"));
    const light = part("span", "light");
    light.ariaHidden = "true";
    light.append(...canvases);
    const words = part("span", "words");
    for (const name of ["name", "state", "progress", "note"]) {
      this.#parts[name] = part("span", name);
      words.append(this.#parts[name]);
    }
    this.#parts.progress.ariaHidden = "true";
    this.#parts.progress.append(part("span", ""));
    this.#parts.inside = [light, words];
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
    const { name, state, progress, note } = this.#parts;
    set(name, rig.name);
    if (rig.host !== undefined) {
      const host = part("span", "host");
      host.textContent = ` ${say("shelf.elsewhere", { host: rig.host })}`;
      name.append(host);
    }
    set(state, stateOf(rig));
    set(note, noteOf(rig));
    const share = rig.share;
    progress.classList.toggle("none", share === undefined);
    progress.firstElementChild.style.width = `${100 * (share ?? 0)}%`;
    if (lookBefore !== undefined && lookBefore !== rig.look && this.#colours !== null) {
      this.show(this.#colours);
    }
  }

  /** A link if there is somewhere to go. */
  #boxFor(rig) {
    const tag = rig.page === undefined ? "DIV" : "A";
    let box = this.#box;
    if (box === null || box.tagName !== tag) {
      box = part(tag, "rig");
      box.append(...this.#parts.inside);
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
    this.#paint(share);
    if (share === 1) {
      this.#fade = 0;
    }
  }

  #paint(share) {
    const count = this.#to.length / 3;
    if (this.#image === undefined || this.#image.width !== count) {
      this.#image = new ImageData(count, 1);
      this.#pens.forEach((pen) => {
        pen.canvas.width = count;
        pen.canvas.height = 1;
      });
    }
    const from = this.#from.length === this.#to.length ? this.#from : this.#to;
    for (let i = 0; i < count; i++) {
      const light = [0, 1, 2].map((c) => linear(from[3 * i + c]) * (1 - share) + linear(this.#to[3 * i + c]) * share);
      this.#image.data.set([...glare(light, 0), 255], 4 * i);
    }
    this.#pens.forEach((pen) => pen.putImageData(this.#image, 0, 0));
  }
}

function part(tag, name) {
  const element = document.createElement(tag);
  element.className = name;
  return element;
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

function noteOf(rig) {
  const notes = [whyOf(rig)];
  if (rig.unlit) {
    notes.push(say("shelf.unlit"));
  }
  if (rig.twice) {
    notes.push(say("shelf.twice"));
  }
  return notes.filter((note) => note !== "").join(" · ");
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
  set(byId("version"), say("page.version", { version }));
  set(byId("broker"), broker === undefined ? "" : say("shelf.broker", { broker }));
  const faulty = new Set([...cards].filter(([, { rig }]) => rig.standing === "fault").map(([id]) => id));
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
  const news = rigs.filter(({ id, standing }) => began && standing === "fault" && !faulty.has(id));
  if (news.length > 0) {
    set(byId("news"), news.map((rig) => say("shelf.news", { rig: rig.name, state: stateOf(rig) })).join(" "));
  }
  wake();
}

/** Puts each card where it belongs, and moves none that is there already; what has the focus keeps it. */
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
  const needing = rigs.filter(({ standing }) => GROUPS.needs.includes(standing)).length;
  const working = rigs.filter(({ standing }) => standing === "working");
  const words = [say("shelf.rigs", { count: rigs.length }), needing === 0 ? say("shelf.none") : say("shelf.need", { count: needing })];
  if (working.length > 0) {
    words.push(say("shelf.working", { count: working.length }));
  }
  set(byId("sum"), rigs.length === 0 ? say("shelf.empty") : words.join(" · "));
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
  set(byId("alert"), "");
  byId("shelf").hidden = false;
}

/** The connection is gone, or there was none: what is drawn is what was last reported. */
function beLost(refusal) {
  if (!contact.isLost) {
    set(byId("alert"), say("lost.since", { time: clock(Date.now()) }));
  }
  contact.beLost(refusal !== null);
}

function askForToken() {
  byId("shelf").hidden = true;
  contact.askForToken();
}

function set(element, text) {
  if (element.textContent !== text) {
    element.textContent = text;
  }
}

async function begin() {
  await entry.takeToken();
  tab.open();
}

document.addEventListener("visibilitychange", wake);
addEventListener("hashchange", async () => await entry.takeToken() && tab.open());
begin();
