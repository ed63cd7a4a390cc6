// Where each pixel is drawn in a picture, and where the zones are marked: pure calculation, in px.

const LANE = 22;
const LANES_GAP = 14;
/** What lies on the foot of the picture: the names of the lamps, and a button. */
const FOOT = 40;

/**
 * The middle of each pixel, which way the strip runs there (in radians), on which side of it the marks are, and how large pixels are: as
 * large as the picture has room for, with some left for the light around.
 */
export function places(layout, width, height) {
  switch (layout.shape) {
    case "frame": return frame(layout, width, height);
    case "ring": return ring(layout, width, height);
    default: return straight(layout.pixels, width, height);
  }
}

function straight(count, width, height) {
  const edge = width < 600 ? 20 : 48;
  const pitch = (width - 2 * edge) / count;
  const y = Math.round(height * 0.46);
  const points = Array.from({ length: count }, (_, i) => ({ x: edge + (i + 0.5) * pitch, y, turn: 0, inX: 0, inY: 1 }));
  return { points, along: pitch, across: Math.max(6, Math.min(height / 8, 26, pitch)) };
}

function ring(layout, width, height) {
  const middleX = width / 2;
  const middleY = (height - FOOT) / 2;
  const radius = Math.min(width, height - FOOT) / 2 - (height < 300 ? 18 : 36);
  const step = (layout.clockwise ? 1 : -1) * 2 * Math.PI / layout.pixels;
  const pitch = Math.abs(step) * radius;
  const points = Array.from({ length: layout.pixels }, (_, i) => {
    const angle = Math.PI / 2 + (i + 0.5) * step;
    const inX = -Math.cos(angle);
    const inY = -Math.sin(angle);
    return { x: middleX - inX * radius, y: middleY - inY * radius, turn: angle + Math.PI / 2, inX, inY };
  });
  return { points, along: pitch, across: Math.max(6, Math.min(22, pitch)) };
}

const CORNERS = ["bottom left", "top left", "top right", "bottom right"];

/** The corners in the order in which the strip comes by, the first again at the end. */
function corners(layout, left, top, right, bottom) {
  const at = { "bottom left": [left, bottom], "top left": [left, top], "top right": [right, top], "bottom right": [right, bottom] };
  const first = CORNERS.indexOf(layout.begins);
  return Array.from({ length: 5 }, (_, i) => at[CORNERS[(first + (layout.clockwise ? i : 4 - i)) % 4]]);
}

/** The sides of the rectangle: as long as their pixels say, and as large as there is room for. */
function rectangle(layout, width, height) {
  const edge = height < 300 ? 22 : 48;
  const upright = (layout.begins === "bottom left" || layout.begins === "top right") === layout.clockwise;
  const [first, second] = [0, 1].map((side) => Math.max(layout.sides[side] ?? 0, layout.sides[side + 2] ?? 0));
  const [wide, high] = upright ? [second, first] : [first, second];
  const ratio = Math.max(0.4, Math.min(3, (wide || high / 2) / (high || wide / 2)));
  const room = { wide: width - 2 * edge, high: height - FOOT - 2 * edge };
  const length = Math.min(room.wide, room.high * ratio);
  const left = (width - length) / 2;
  const top = (height - FOOT - length / ratio) / 2;
  return corners(layout, left, top, left + length, top + length / ratio);
}

function frame(layout, width, height) {
  const way = rectangle(layout, width, height);
  const points = [];
  let along = Infinity;
  layout.sides.forEach((count, side) => {
    const [fromX, fromY] = way[side];
    const [toX, toY] = way[side + 1];
    const length = Math.hypot(toX - fromX, toY - fromY);
    const inset = Math.min(12, length / 8);
    const pitch = (length - 2 * inset) / count;
    along = Math.min(along, pitch);
    const runX = (toX - fromX) / length;
    const runY = (toY - fromY) / length;
    const [inX, inY] = layout.clockwise ? [-runY, runX] : [runY, -runX];
    for (let i = 0; i < count; i++) {
      const far = inset + (i + 0.5) * pitch;
      points.push({ x: fromX + runX * far, y: fromY + runY * far, turn: Math.atan2(runY, runX), inX, inY });
    }
  });
  return { points, along, across: Math.max(6, Math.min(20, along)) };
}

/** Which zone is marked in which lane, so that none lies over another. The whole strip is marked only if nothing else is. */
function lanesOf(zones) {
  const shown = zones.length > 1 ? zones.filter((zone) => zone.name !== "strip") : zones;
  const lanes = [];
  const taken = shown.map((zone) => {
    const pixels = new Set(zone.runs.flatMap(([first, last]) => span(first, last)));
    const lane = lanes.findIndex((others) => ![...pixels].some((pixel) => others.has(pixel)));
    const at = lane < 0 ? lanes.push(new Set()) - 1 : lane;
    pixels.forEach((pixel) => lanes[at].add(pixel));
    return { zone, lane: at };
  });
  return { taken, count: lanes.length };
}

function span(first, last) {
  const step = first <= last ? 1 : -1;
  return Array.from({ length: Math.abs(last - first) + 1 }, (_, i) => first + step * i);
}

/** Lines beside the strip for each zone, with a short stroke where it begins; at every side that it is on, its name and its pixels there. */
export function marks(layout, at) {
  return lanesOf(layout.zones).taken.map(({ zone, lane }) => {
    const away = at.across / 2 + LANES_GAP + lane * LANE;
    const sides = zone.runs.flatMap(([first, last]) => legs(at, span(first, last)));
    const named = sides.filter((side) => side.length === longest(sides) || side.length * at.along > 80);
    return {
      name: zone.name,
      path: sides.map((side, i) => line(at, side, away, i === 0)).join(" "),
      names: named.map((side) => ({ ...inward(at.points[side[side.length >> 1]], away), words: `${zone.name} ${numbers(side)}` })),
    };
  });
}

/** The zones of the pixel nearest to a place, the smallest first; none if it is far from all. */
export function zonesAt(layout, at, x, y) {
  const far = at.points.map((point) => Math.hypot(point.x - x, point.y - y));
  const nearest = far.indexOf(Math.min(...far));
  if (!(far[nearest] < 60)) {
    return [];
  }
  return layout.zones
    .filter(({ runs }) => runs.some(([first, last]) => Math.min(first, last) <= nearest && nearest <= Math.max(first, last)))
    .sort((a, b) => sizeOf(a) - sizeOf(b));
}

function sizeOf({ runs }) {
  return runs.reduce((sum, [first, last]) => sum + Math.abs(last - first) + 1, 0);
}

/** Pixels of a run, parted where the strip goes round a corner. */
function legs(at, pixels) {
  const all = [[pixels[0]]];
  for (const [i, pixel] of pixels.slice(1).entries()) {
    const before = at.points[pixels[i]];
    const now = at.points[pixel];
    if (before.inX * now.inX + before.inY * now.inY < 0.5) {
      all.push([]);
    }
    all.at(-1).push(pixel);
  }
  return all;
}

/** The numbers of its first and last pixel, in the order in which it runs. */
function numbers(pixels) {
  return pixels.length === 1 ? pixels[0] : `${pixels[0]}–${pixels.at(-1)}`;
}

function longest(sides) {
  return Math.max(...sides.map((side) => side.length));
}

function line(at, side, away, begins) {
  const first = at.points[side[0]];
  const last = at.points[side.at(-1)];
  const forward = side.length > 1 ? Math.sign(side[1] - side[0]) : 1;
  const half = forward * (at.along / 2 - 1);
  const start = shifted(inward(first, away), first, -half);
  const tick = begins ? `M${said(shifted(inward(first, away - 7), first, -half))}L` : "M";
  const middle = side.map((pixel) => said(inward(at.points[pixel], away))).join("L");
  return `${tick}${said(start)}L${middle}L${said(shifted(inward(last, away), last, half))}`;
}

function said(point) {
  return `${point.x.toFixed(1)} ${point.y.toFixed(1)}`;
}

function inward(point, away) {
  return { x: point.x + point.inX * away, y: point.y + point.inY * away };
}

function shifted(point, place, by) {
  return { x: point.x + Math.cos(place.turn) * by, y: point.y + Math.sin(place.turn) * by };
}
