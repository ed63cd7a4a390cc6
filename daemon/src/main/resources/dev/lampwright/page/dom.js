// Elements made in one go.

/**
 * Makes an element. Of the attributes, those that begin with "on" are listeners, "text" is its text, and those that are true, false or
 * undefined are there or not.
 */
export function make(tag, attributes = {}, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (name.startsWith("on")) {
      element.addEventListener(name.slice(2), value);
    } else if (name === "text") {
      element.textContent = value;
    } else if (value === true) {
      element.setAttribute(name, "");
    } else if (value !== false && value !== undefined) {
      element.setAttribute(name, value);
    }
  }
  element.append(...children);
  return element;
}

/** Changes a text only if it is another, so that nothing is read out twice. */
export function setText(element, text) {
  if (element.textContent !== text) {
    element.textContent = text;
  }
}

/** A button. One that has nothing to do keeps the focus, so it is not disabled but says that it is. */
export function button(words, action, attributes = {}) {
  const made = make("button", { type: "button", text: words, ...attributes });
  made.addEventListener("click", () => made.ariaDisabled !== "true" && action());
  return made;
}

/** Whether a button has something to do. */
export function enable(made, able) {
  made.ariaDisabled = String(!able);
}

/** A drawing of lines, 24 by 24, which says nothing to those who listen. */
export function icon(path) {
  const drawing = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  const line = document.createElementNS("http://www.w3.org/2000/svg", "path");
  drawing.setAttribute("viewBox", "0 0 24 24");
  drawing.setAttribute("aria-hidden", "true");
  line.setAttribute("d", path);
  drawing.append(line);
  return drawing;
}
