// What the bench asks of the daemon.

import { reason, say } from "./words.js";

const LONGEST_MS = 15_000;
/** Tells this tab from others: of its requests the newest counts. */
const ID = Array.from(crypto.getRandomValues(new Uint8Array(8)), (byte) => byte.toString(16).padStart(2, "0")).join("");

/** How often one who has too much to do is asked, a second apart. */
const TIMES = 5;

/** The answer to a request: its status (0 if nobody answered) and what was sent. A lane names what belongs together: of it the newest counts. */
export async function ask(method, path, body, lane = "") {
  for (let time = 1; ; time++) {
    const answer = await askOnce(method, path, body, lane);
    if (answer.status !== 503 || time === TIMES) {
      return answer;
    }
    await new Promise((done) => setTimeout(done, 1000));
  }
}

async function askOnce(method, path, body, lane) {
  try {
    const response = await fetch(`bench/${path}`, {
      method,
      headers: { ...(body === undefined ? {} : { "Content-Type": "application/json" }), "X-Bench": ID + lane },
      body: body === undefined ? undefined : JSON.stringify(body),
      signal: AbortSignal.timeout(LONGEST_MS),
    });
    return { status: response.status, answer: await response.json() };
  } catch {
    return { status: 0, answer: null };
  }
}

/** Why something was refused, as a sentence. */
export function whyNot(response) {
  return response.status === 0 ? say("refused.silent") : say("refused", { why: why(response) });
}

/** The reason alone. */
export function why({ status, answer }) {
  if (status === 0) {
    return say("bench.silent");
  }
  return answer.why === undefined ? String(status) : reason({ values: {}, ...answer });
}

/** What names this tab to the daemon while it has something on the strip. */
export function lease() {
  return ID;
}
