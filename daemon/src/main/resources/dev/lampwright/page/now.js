// The answer before its reasons: what the printer does, how far it is and when it is ready; or, in the same place, its fault.

import { setText } from "./dom.js";
import { clock, percent, roughly, stepOf } from "./values.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);

/** States of a job that has a share. */
const AT_WORK = ["printing", "held"];

export class Now {
  #box = byId("now");
  #readyAt = null;

  tell(report) {
    this.#tellState(report);
    this.#tellFault(report);
  }

  #tellState({ state, silence, signals }) {
    const share = shareOf(state, signals);
    set("state", say(`state.${state}`));
    set("share", share === null ? "" : percent(share));
    byId("share").hidden = share === null;
    byId("progress").firstElementChild.style.width = `${100 * (share ?? 0)}%`;
    byId("progress").classList.toggle("none", share === null);
    set("when", this.#when(state, silence, signals));
  }

  #when(state, silence, signals) {
    if (state === "silent") {
      return say(silence === undefined ? "silence" : `silence.${silence.replaceAll(" ", "_")}`);
    }
    const left = leftOf(state, signals);
    if (left === null) {
      this.#readyAt = null;
      return state === "warming" || state === "printing" ? say("when.unknown") : state === "done" || state === "stopped" ? say(`when.${state}`) : "";
    }
    const { seconds, error } = left;
    return say(state === "warming" ? "when.left.heat" : "when.left", { time: roughly(seconds, error), clock: clock(this.#ready(seconds, error)) });
  }

  /** The time of day at which it is ready, to minutes at best; what is shown stays unless it is off by more than that and half a minute. */
  #ready(seconds, error) {
    const at = Date.now() + 1000 * seconds;
    const step = 1000 * Math.max(60, stepOf(seconds, error));
    if (this.#readyAt === null || Math.abs(at - this.#readyAt) > Math.max(step - 20_000, 50 * seconds)) {
      this.#readyAt = step * Math.round(at / step);
    }
    return this.#readyAt;
  }

  #tellFault(report) {
    const { alarm, fault_lasts: lasts } = report;
    const fault = faultWords(report);
    this.#box.dataset.alarm = alarm;
    this.#box.classList.toggle("faulty", fault !== null);
    if (fault === null) {
      this.#offer("acknowledge", false);
      this.#offer("reset", false);
      return;
    }
    set("fault-title", fault.title);
    set("fault-words", fault.words);
    set("fault-next", fault.next);
    this.#offer("acknowledge", alarm === "alert");
    this.#offer("reset", alarm !== "alert" && !lasts);
  }

  /** What can't be done now is not offered; if it has just been pressed, the focus moves on. */
  #offer(id, offered) {
    const button = byId(id);
    if (!offered && document.activeElement === button) {
      byId(this.#box.classList.contains("faulty") ? "fault-title" : "state").focus();
    }
    button.hidden = !offered;
  }
}

/** What a printer does in words, with its share and when it is ready where these are known. */
export function doing({ state, silence, signals }) {
  const share = shareOf(state, signals);
  const left = leftOf(state, signals);
  const head = share === null ? say(`state.${state}`) : `${percent(share)} ${say(`state.${state}`)}`;
  const rest = state === "silent"
    ? say(silence === undefined ? "silence" : `silence.${silence.replaceAll(" ", "_")}`)
    : left === null ? "" : say(state === "warming" ? "when.left.heat" : "when.left", { time: roughly(left.seconds, left.error), clock: clock(Date.now() + 1000 * left.seconds) });
  return { state: rest === "" ? head : say("fault.said", { title: head, words: rest }), share };
}

/** What is to be said of a printer's fault; null if there is none. */
export function faultWords({ alarm, fault_text: words, fault_lasts: lasts }) {
  if (alarm === "normal") {
    return null;
  }
  return {
    title: title(alarm, !lasts),
    words: words ?? (lasts ? say("fault.silent") : ""),
    next: alarm === "alert" ? "" : say(lasts ? "fault.stays" : "fault.waits"),
  };
}

/** What somebody who cannot see the page has to hear when it changes; empty for nothing. */
export function news(before, now) {
  if (before.alarm !== now.alarm && now.alarm !== "normal") {
    const words = now.fault_text ?? "";
    const head = title(now.alarm, !now.fault_lasts);
    return words === "" ? head : say("fault.said", { title: head, words });
  }
  return before.state === now.state ? "" : say(`state.${now.state}`);
}

function title(alarm, over) {
  if (alarm === "alert") {
    return say(over ? "fault.alert.over" : "fault.alert");
  }
  return say(over ? "fault.over" : "fault.acknowledged");
}

/** How far the job is, or the heat-up before it; null if that is not known, or means nothing. */
export function shareOf(state, signals) {
  if (AT_WORK.includes(state)) {
    return signals["job.progress"] ?? null;
  }
  if (state === "warming") {
    const heats = ["bed.heat", "nozzle.heat", "chamber.heat"].map((key) => signals[key]).filter((heat) => typeof heat === "number");
    return heats.length === 0 ? null : heats.reduce((sum, heat) => sum + heat, 0) / heats.length;
  }
  return null;
}

/** How long it will still take, and the standard error of that, in s; null if it is not known. */
function leftOf(state, signals) {
  if (state === "warming") {
    const times = Object.keys(signals).filter((key) => key.endsWith(".ready_s") && signals[key] > 0);
    const last = times.reduce((one, other) => (one === null || signals[other] > signals[one] ? other : one), null);
    return last === null ? null : { seconds: signals[last], error: signals[last.replace(/_s$/, "_error_s")] ?? 0 };
  }
  const left = signals["job.left_s"] ?? null;
  return state === "printing" && left !== null ? { seconds: left, error: 0 } : null;
}

function set(id, text) {
  setText(byId(id), text);
}
