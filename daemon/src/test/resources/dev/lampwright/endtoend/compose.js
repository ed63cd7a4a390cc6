// Makes a look on the open page of the look editor from nothing, by the page's own controls, as a hand would: each is given its value and says so.

const done = arguments[arguments.length - 1];
const [name, look] = [arguments[0], JSON.parse(arguments[1])];
const MOVES = ["cycle_s", "speed_px_per_s", "speed_zones_per_s"];
const byId = (id) => document.getElementById(id);

function one(root, selector) {
  const found = root.querySelector(selector);
  if (found === null) {
    throw new Error(`${name}: the page has no ${selector}`);
  }
  return found;
}

function give(control, value, event) {
  control.value = value;
  control.dispatchEvent(new Event(event, { bubbles: true }));
}

async function until(what, so) {
  const end = performance.now() + 25_000;
  while (!so()) {
    if (performance.now() > end) {
      throw new Error(`${name}: ${what}; the page says ${byId("answer").textContent}`);
    }
    await new Promise((next) => setTimeout(next, 20));
  }
}

/** The layer that was added last is the topmost, and open. */
const form = () => one(document, ".layer:first-child .form");
const field = (key) => one(form(), `[data-key="${key}"]`);

function choose(box, value) {
  one(box, `[role=radio][data-value="${value}"]`).click();
}

function giveColours(values) {
  const box = field("colours");
  const swatches = () => box.querySelectorAll(".swatches button");
  const [, , add, remove] = box.querySelectorAll(".row button");
  while (swatches().length < values.length) {
    add.click();
  }
  while (swatches().length > values.length) {
    remove.click();
  }
  values.forEach((value, i) => {
    swatches()[i].click();
    give(one(box, ".picker input[type=text]"), value, "change");
  });
}

function giveMovement(layer) {
  const unit = MOVES.find((key) => layer[key] !== undefined);
  if (unit !== undefined) {
    const box = field("cycle_s");
    give(one(box, "select"), unit, "change");
    give(one(box, "input[type=number]"), Math.abs(layer[unit]), "change");
    const towards = one(box, "input[type=checkbox]");
    if (towards.checked !== layer[unit] < 0) {
      towards.click();
    }
  }
}

function giveKey(key, value) {
  const box = field(key);
  if (key === "colour") {
    give(one(box, ".picker input[type=text]"), value, "change");
  } else if (key === "colours") {
    giveColours(value);
  } else if (key === "zone") {
    choose(box, value);
  } else if (typeof value === "boolean") {
    one(box, "input").checked !== value && one(box, "input").click();
  } else if (Array.isArray(value)) {
    give(one(box, "input"), value.join(", "), "change");
  } else if (key === "rhythm") {
    give(one(box, "input[type=text]"), value, "change");
  } else {
    give(one(box, "input[type=number], select"), value, "change");
  }
}

/** What the page begins with when a signal is followed, and the look does not say. */
function takeBack(layer) {
  for (const key of ["from", "to", "opacity_from", "opacity_to"]) {
    const box = form().querySelector(`[data-key="${key}"] input[type=number]`);
    if (box !== null && box.value !== "" && layer[key] === undefined) {
      give(box, "", "change");
    }
  }
}

function addLayer(layer) {
  one(document, "[data-add=colour]").click();
  const { paint = "solid", extent = "all", opacity = 1, hidden, ...keys } = layer;
  paint !== "solid" && choose(one(form(), "[data-group=paint]"), paint);
  extent !== "all" && choose(one(form(), "[data-group=extent]"), extent);
  keys.opacity_by === undefined && give(one(document, ".layer:first-child .strength"), opacity, "input");
  giveMovement(layer);
  const first = ["by", "opacity_by", "rhythm"].filter((key) => keys[key] !== undefined);
  const rest = Object.keys(keys).filter((key) => !first.includes(key) && !MOVES.includes(key));
  [...first, ...rest].forEach((key) => giveKey(key, keys[key]));
  takeBack(layer);
  hidden && one(document, ".layer:first-child .eye").click();
}

async function make() {
  byId("other").click();
  byId("new-name").value = name;
  byId("new-from").value = "";
  one(document, "#new-form button").click();
  await until("it is not on the bench", () => byId("name").textContent === name);
  look.layers.forEach(addLayer);
  byId("save").click();
  await until("it is not saved", () => byId("answer").textContent.startsWith(`${name} is saved in `));
}

make().then(() => done(""), (error) => done(String(error)));
