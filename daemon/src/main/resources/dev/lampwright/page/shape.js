// Where each pixel is drawn, and where the zones are marked: pure calculation, in px.

const LANE = 22;
const LANES_GAP = 14;

/** How high the picture of a layout is, at a width. */
export function heightOf(layout, width) {
  const lanes = lanesOf(layout.zones).count;
  switch (layout.shape) {
    case "frame": return Math.round(Math.max(260, Math.min(width * 0.5, 420)));
    case "ring": return Math.round(Math.max(240, Math.min(width * 0.7, 420)));
    default: return Math.round(margin(width) + pixelHeight(width) + LANES_GAP + lanes * LANE + 4);
  }
}

/** Room around the strip, for its glow. */
function margin(width) {
  return width < 600 ? 30 : 46;
}

function pixelHeight(width) {
  return width < 600 ? 26 : 40;
}

/**
 * The middle of each pixel, which way the strip runs there (in radians), on which side of it marks stand, and how large pixels are.
 */
export function places(layout, width, height) {
  switch (layout.shape) {
    case "frame": return frame(layout, width, height);
    case "ring": return ring(layout, width, height);
    default: return straight(layout.pixels, width);
  }
}

function straight(count, width) {
  const edge = width < 600 ? 12 : 28;
  const pitch = (width - 2 * edge) / count;
  const y = margin(width) + pixelHeight(width) / 2;
  const points = Array.from({ length: count }, (_, i) => ({ x: edge + (i + 0.5) * pitch, y, turn: 0, inX: 0, inY: 1 }));
  return { points, along: pitch, across: pixelHeight(width) };
}

function ring(layout, width, height) {
  const middleX = width / 2;
  const middleY = height / 2;
  const radius = Math.min(width, height) / 2 - 34;
  const step = (layout.clockwise ? 1 : -1) * 2 * Math.PI / layout.pixels;
  const pitch = Math.abs(step) * radius;
  const points = Array.from({ length: layout.pixels }, (_, i) => {
    const angle = Math.PI / 2 + (i + 0.5) * step;
    const inX = -Math.cos(angle);
    const inY = -Math.sin(angle);
    return { x: middleX - inX * radius, y: middleY - inY * radius, turn: angle + Math.PI / 2, inX, inY };
  });
  return { points, along: pitch, across: Math.max(10, Math.min(26, pitch * 2)) };
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
  const edge = frameEdge(layout);
  const upright = (layout.begins === "bottom left" || layout.begins === "top right") === layout.clockwise;
  const [first, second] = [0, 1].map((side) => Math.max(layout.sides[side] ?? 0, layout.sides[side + 2] ?? 0));
  const [wide, high] = upright ? [second, first] : [first, second];
  const ratio = Math.max(0.4, Math.min(3, (wide || high / 2) / (high || wide / 2)));
  const room = { wide: width - 2 * edge, high: height - 2 * edge };
  const length = Math.min(room.wide, room.high * ratio);
  const left = (width - length) / 2;
  const top = (height - length / ratio) / 2;
  return corners(layout, left, top, left + length, top + length / ratio);
}

/** Room outside the frame for the marks of its zones. */
function frameEdge(layout) {
  return 16 + LANES_GAP + lanesOf(layout.zones).count * LANE;
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
    const [outX, outY] = layout.clockwise ? [runY, -runX] : [-runY, runX];
    for (let i = 0; i < count; i++) {
      const far = inset + (i + 0.5) * pitch;
      points.push({ x: fromX + runX * far, y: fromY + runY * far, turn: Math.atan2(runY, runX), inX: outX, inY: outY });
    }
  });
  return { points, along, across: Math.max(8, Math.min(20, along * 2)) };
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

/** Lines beside the strip for each zone, with a short stroke where it begins, and where its name goes. */
export function marks(layout, at) {
  const all = [];
  for (const { zone, lane } of lanesOf(layout.zones).taken) {
    const away = at.across / 2 + LANES_GAP + lane * LANE;
    const runs = zone.runs.map(([first, last]) => line(at, first, last, away));
    const [first, last] = longest(zone.runs);
    const named = at.points[Math.round((first + last) / 2)];
    all.push({ name: zone.name, path: runs.join(" "), ...inward(named, away) });
  }
  return all;
}

function longest(runs) {
  return runs.reduce((best, run) => (Math.abs(run[1] - run[0]) > Math.abs(best[1] - best[0]) ? run : best));
}

function line(at, first, last, away) {
  const middle = span(first, last).map((pixel) => inward(at.points[pixel], away));
  const begins = inward(at.points[first], away - 7);
  const half = at.along / 2 - 1;
  const pieces = middle.map((point, i) => (i > 0 && turns(at, first, last, i) ? "M" : "L") + said(point));
  const start = shifted(middle[0], at.points[first], first <= last ? -half : half);
  const tick = shifted(begins, at.points[first], first <= last ? -half : half);
  const end = shifted(middle[middle.length - 1], at.points[last], first <= last ? half : -half);
  return `M${said(tick)}L${said(start)}${pieces.join("")}L${said(end)}`;
}

/** Whether the strip has gone round a corner before the pixel of an index within a run. */
function turns(at, first, last, index) {
  const step = first <= last ? 1 : -1;
  const before = at.points[first + step * (index - 1)];
  const now = at.points[first + step * index];
  return before.inX * now.inX + before.inY * now.inY < 0.5;
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
