// What of the frames is drawn, and when. Drawing leaves frames out and never adds any, so it adds no flash to what the daemon sends, which
// is at most three in a second; frames that come late and close together are left out too, so that none is drawn out of its time. A look
// that flashes is drawn as a long exposure instead, the brightest of each light for as long as the look is on, a slow change a second.

const LEAST_MS = 50;
const LATE_MS = 300;
const STILL_EVERY_MS = 1000;
/** Longer than any rhythm's period, in seconds: a light that shows once in it stays in the picture. */
const EXPOSURE = 30;
/** A look that is left flashes on while it fades. */
const HOLD_MS = 4000;

export class Pace {
  #newest = null;
  #last = null;
  #every = LEAST_MS;
  #drawnAt = -Infinity;
  #least = Infinity;
  #exposures = [];
  #exposing = null;
  #look = null;
  #flashes = false;
  #flashedAt = -Infinity;

  /** A frame of a look has come. */
  take(frame, now, look, flashes) {
    if (look !== this.#look) {
      this.#look = look;
      this.#exposures = [];
      this.#exposing = null;
      this.#last = null;
    }
    if (this.#flashes && !flashes) {
      this.#flashedAt = now;
    }
    this.#flashes = flashes;
    this.#newest = { frame, late: this.#late(frame, now) };
    this.#exposing = brighter(this.#exposing ?? this.#last, frame);
    this.#last = frame;
  }

  /** Frames from before count no more: the lights or the stream are others. */
  forget() {
    this.#newest = null;
    this.#last = null;
    this.#least = Infinity;
    this.#exposures = [];
    this.#exposing = null;
    this.#drawnAt = -Infinity;
  }

  /**
   * What to draw now: a frame and how long the change to it takes, in ms; or nothing.
   *
   * @param moving whether the viewer has chosen to see flashing light as it flashes, and all motion
   * @param calm whether motion is to be reduced
   */
  next(now, moving, calm) {
    const still = !moving && (this.#flashes || now - this.#flashedAt < HOLD_MS);
    const slow = still || (calm && !moving);
    this.#every = slow ? STILL_EVERY_MS : LEAST_MS;
    if (this.#newest === null || now - this.#drawnAt < this.#every) {
      return null;
    }
    return slow ? this.#slow(now, still) : this.#quick(now);
  }

  /** In how many ms there may be something to draw; Infinity for not before another frame comes. */
  due(now) {
    return this.#newest === null ? Infinity : Math.max(0, this.#every - (now - this.#drawnAt));
  }

  #quick(now) {
    const { frame, late } = this.#newest;
    if (late && now - this.#drawnAt < LATE_MS) {
      return null;
    }
    this.#newest = null;
    this.#exposures = [];
    this.#exposing = null;
    this.#drawnAt = now;
    return { frame, fade: 0 };
  }

  #slow(now, still) {
    this.#newest = null;
    this.#exposures = [...this.#exposures, this.#exposing].slice(-EXPOSURE);
    this.#exposing = null;
    this.#drawnAt = now;
    return { frame: still ? this.#exposures.reduce(brighter, null) : this.#last, fade: STILL_EVERY_MS };
  }

  /** By how much longer than the quickest this frame was on its way. */
  #late(frame, now) {
    const way = now - frame.at;
    this.#least = Math.min(this.#least, way);
    return way - this.#least > LATE_MS;
  }
}

function copy(frame) {
  return { ...frame, strip: frame.strip.slice(), duties: frame.duties.slice() };
}

function brighter(held, frame) {
  if (held === null || held.strip.length !== frame.strip.length) {
    return copy(frame);
  }
  return {
    ...frame,
    strip: held.strip.map((value, i) => Math.max(value, frame.strip[i])),
    duties: held.duties.map((value, i) => Math.max(value, frame.duties[i] ?? 0)),
  };
}
