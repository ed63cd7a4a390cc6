// Lists of reasons: the wiring, and what went wrong of late.

import { make, setText } from "./dom.js";
import { capital, moment, quantity } from "./values.js";
import { say } from "./words.js";

const byId = (id) => document.getElementById(id);

/** Asks what the electrical plan says of the wiring and lists it, a line each; the old list stays if the request fails. */
export async function listWiring() {
  const wiring = await lines("wiring");
  if (wiring === null) {
    return;
  }
  byId("row-wiring").hidden = wiring.length === 0;
  byId("wiring").replaceChildren(...wiring.map((text) => item(text, levelOf(text))));
  const over = wiring.filter((text) => levelOf(text) === "over").length;
  const care = wiring.filter((text) => levelOf(text) === "care").length;
  const code = over > 0 ? "over" : care > 0 ? "care" : "well";
  byId("wiring-sum").textContent = say(`rows.wiring.${code}`, { count: over || care });
}

/** The lines of a document; null if it is not available. */
async function lines(path) {
  const answer = await fetch(path).catch(() => null);
  return answer?.ok ? (await answer.json()).lines : null;
}

/** Shows the plan's drawing while its row is open: nobody has to wait for it before. */
byId("row-wiring").addEventListener("toggle", ({ target }) => {
  const picture = document.createElement("img");
  picture.src = "plan.svg";
  picture.alt = say("rows.wiring.drawing");
  byId("plan").replaceChildren(...(target.open ? [picture] : []));
});

/** What “check” warns of takes a while to find out, so it is asked for when its row is opened. */
byId("row-file").addEventListener("toggle", async ({ target }) => {
  if (target.open) {
    const warnings = await lines("check");
    const words = warnings === null ? say("refused.silent") : say("rows.file.well");
    byId("file").replaceChildren(...(warnings?.length ? warnings.map((text) => item(text, "care")) : [item(words, "")]));
  }
});

function levelOf(text) {
  return text.split(" ", 1)[0].toLowerCase();
}

/** Lists the readings that the file has names of its own for; the names and their units come with the report. */
export function listReadings({ signals, units = {} }) {
  const told = Object.entries(units).map(([key, unit]) => ({ key, name: capital(key.replace(/[._]/g, " ")), value: quantity(signals[key], unit) }));
  const list = byId("readings");
  byId("row-readings").hidden = told.length === 0;
  const sum = told.slice(0, 2).map((one) => say("reading.one", one)).join(" · ");
  setText(byId("readings-sum"), sum);
  if (list.children.length !== told.length || told.some(({ key }, i) => list.children[i].dataset.key !== key)) {
    list.replaceChildren(...told.map(({ key, name }) => make("div", { "data-key": key }, make("dt", { text: name }), make("dd"))));
  }
  told.forEach(({ value }, i) => setText(list.children[i].lastChild, value));
}

let logged = [];
byId("log-all").addEventListener("change", () => listLog(logged));

/** Lists what the log has of late, the newest first: warnings alone, or everything. */
export function listLog(lines) {
  logged = lines;
  const warnings = lines.filter(({ level }) => level !== "info");
  const items = (byId("log-all").checked ? lines : warnings).map(({ at_ms: at, level, text, times, over_ms: over }) => {
    const element = item("", level);
    element.append(make("time", { datetime: new Date(at).toISOString(), text: moment(at) }), " ", level === "error" ? say("rows.warnings.error", { text }) : text);
    const notes = [
      times > 1 ? say("rows.warnings.repeat", { count: times }) : "",
      over === undefined ? "" : say("rows.warnings.over", { clock: moment(over) }),
    ].filter(Boolean);
    if (notes.length > 0) {
      element.append(make("span", { class: "after", text: ` · ${notes.join(", ")}` }));
    }
    return element;
  });
  byId("troubles").replaceChildren(...(items.length === 0 ? [item(say("rows.warnings.none"), "")] : items));
  byId("warnings-sum").textContent = warnings.length === 0
    ? say("rows.warnings.none.short") : say("rows.warnings.count", { count: warnings.length });
}

function item(text, level) {
  return make("li", { "data-level": level, text });
}
