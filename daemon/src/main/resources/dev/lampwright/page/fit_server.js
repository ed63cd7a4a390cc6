// What the page asks of the fitting.

const LONGEST_MS = 15_000;

/** Sends something for the fitting: the status (0 if nobody answered) and the answer. */
export async function send(what, body = {}) {
  return ask(`fit/${what}`, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
}

/** What anybody may see of the fitting. */
export async function look() {
  return ask("fit/now", {});
}

/** What this browser may do. */
export async function rights() {
  return ask("rights", {});
}

async function ask(path, options) {
  try {
    const response = await fetch(path, { ...options, signal: AbortSignal.timeout(LONGEST_MS) });
    return { status: response.status, answer: await response.json() };
  } catch {
    return { status: 0, answer: null };
  }
}

/** Sends a token, which lets this browser in if it is right. */
export async function enter(token) {
  return ask("enter", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ token }) });
}
