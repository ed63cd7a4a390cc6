const MOST_MS = 3600000;
const MOST_COUNT = 1000000000;
const MOST_CREDITS = 255;
const MOST_CHANNELS = 4;
const MOST_DIMMERS = 6;
const UA_PER_MA = 1000;
const NS_PER_US = 1000;

const SAY = 'say deaf MS, stall MS, drop|flip|double [up|down] N [every K], fuse, reset, brown_out, hang, unplug, plug, feed FILE CREDITS, stats or quit';
const SAY_TIME = 'say deaf MS or stall MS, MS 0 to 3600000';
const SAY_TROUBLE = 'say drop, flip or double, then up or down if wanted, then N, then every K if wanted';
const SAY_FUSE = 'say fuse MA US DARK_UA CHANNEL_UA,CHANNEL_UA,... DIMMER_MA,..., or fuse 0';
const SAY_FEED = 'say feed FILE CREDITS, CREDITS 1 to 255';
const LONGEST_LINE = 200;

function number(word, least, most) {
  const value = /^\d{1,10}$/.test(word ?? '') ? Number(word) : NaN;
  return value >= least && value <= most ? value : undefined;
}

function trouble(kind, words) {
  const up = words[0] === 'up';
  const rest = words[0] === 'up' || words[0] === 'down' ? words.slice(1) : words;
  const count = number(rest[0], 0, MOST_COUNT);
  const every = rest.length === 1 ? 1 : rest.length === 3 && rest[1] === 'every' ? number(rest[2], 1, MOST_COUNT) : undefined;
  return count === undefined || every === undefined ? { complaint: SAY_TROUBLE } : { kind: 'trouble', what: kind, up, count, every };
}

/* Up to `most` numbers with commas between; undefined if there are too many, or one is not a number. */
function numbers(word, most) {
  const all = (word ?? '').split(',').map((each) => number(each, 0, MOST_COUNT));
  return all.length > most || all.includes(undefined) ? undefined : all;
}

function fuse(words) {
  if (words.length === 1 && words[0] === '0') {
    return { kind: 'fuse', rating: null };
  }
  const [mostMA, us, darkUA] = [number(words[0], 1, MOST_COUNT), number(words[1], 0, MOST_MS), number(words[2], 0, MOST_COUNT)];
  const [channels, dimmerMA] = [numbers(words[3], MOST_CHANNELS), numbers(words[4], MOST_DIMMERS)];
  if (words.length !== 5 || [mostMA, us, darkUA, channels, dimmerMA].includes(undefined) || channels.length < 3) {
    return { complaint: SAY_FUSE };
  }
  const channelMA = channels.map((uA) => uA / UA_PER_MA);
  return { kind: 'fuse', rating: { mostMA, bearsNs: us * NS_PER_US, darkMA: darkUA / UA_PER_MA, channelMA, dimmerMA } };
}

/** The command on a line: {kind, ...}, or {complaint} if it is not one. */
export function readCommand(line) {
  const words = line.trim().split(/\s+/);
  if (line.length > LONGEST_LINE) {
    return { complaint: SAY };
  }
  const [first, ...rest] = words;
  if (first === 'deaf' || first === 'stall') {
    const ms = rest.length === 1 ? number(rest[0], 0, MOST_MS) : undefined;
    return ms === undefined ? { complaint: SAY_TIME } : { kind: first, ms };
  }
  if (['drop', 'flip', 'double'].includes(first)) {
    return trouble(first, rest);
  }
  if (first === 'feed') {
    const credits = rest.length === 2 ? number(rest[1], 1, MOST_CREDITS) : undefined;
    return credits === undefined ? { complaint: SAY_FEED } : { kind: 'feed', file: rest[0], credits };
  }
  if (first === 'fuse') {
    return fuse(rest);
  }
  const plain = ['reset', 'brown_out', 'hang', 'unplug', 'plug', 'stats', 'quit'].includes(first) && rest.length === 0;
  return plain ? { kind: first } : { complaint: SAY };
}
