// What the electrical plan says of the wiring, a line each.

/** Asks for the lines and lists them; what is there stays if they cannot be had. */
export async function listWiring(list) {
  const answer = await fetch("wiring").catch(() => null);
  if (answer === null || !answer.ok) {
    return;
  }
  const { wiring } = await answer.json();
  list.closest("section").hidden = wiring.length === 0;
  list.replaceChildren(...wiring.map(item));
}

function item({ text }) {
  const element = document.createElement("li");
  element.dataset.level = text.split(" ", 1)[0].toLowerCase();
  element.textContent = text;
  return element;
}
