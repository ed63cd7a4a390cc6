// Every text of the page, by its code. Another language is another table with the same codes.

const ENGLISH = {
  "page.none": "Lampwright",
  "page.skip": "Skip to the controls",
  "page.version": "Lampwright {version}",
  "page.light": "The light",

  "contact.waiting": "connecting",
  "contact.live": "live",
  "contact.again": "live again",
  "contact.lost": "connection lost",
  "contact.entry": "token needed",
  "contact.full": "waiting for a place",

  "lost.since": "Connection lost at {time}. This is what was last reported. Trying again.",
  "lost.full": "{why}. Trying again every two seconds.",

  "entry.title": "This page needs its token",
  "entry.where": "It is the first line of the file that page.token_file names on the machine that runs Lampwright. “lampwright page” prints it as a code for your phone.",
  "entry.token": "Token",
  "entry.show": "Show the token",
  "entry.open": "Open",
  "entry.refused": "Not accepted: {why}.",
  "entry.silent": "Lampwright does not answer. Try again.",

  "state.silent": "No report",
  "state.idle": "Idle",
  "state.warming": "Heating",
  "state.printing": "Printing",
  "state.held": "Paused",
  "state.done": "Done",
  "state.stopped": "Stopped",
  "state.fault": "Fault",
  "state.title": "{state} · {name}",
  "state.title.share": "{share} {state} · {name}",

  "when.left": "about {time}, at {clock}",
  "when.left.heat": "ready in about {time}, at {clock}",
  "when.unknown": "time left not known yet",
  "when.silent": "The printer reports nothing",
  "when.done": "The job has ended well",
  "when.stopped": "The job was given up",

  "fault.alert": "Fault",
  "fault.alert.over": "Fault, over now",
  "fault.acknowledged": "Fault, acknowledged",
  "fault.over": "The fault is over",
  "fault.silent": "The printer does not say what it is.",
  "fault.stays": "The light stays until the fault is over.",
  "fault.waits": "The light stays until you reset it.",
  "fault.acknowledge": "Acknowledge",
  "fault.reset": "Reset",
  "fault.said": "{title}: {words}",

  "heat.both": "{part} {now} of {target} °C",
  "heat.off": "{part} {now} °C",
  "heat.hot": "{part} {now} °C, hot",
  "heat.cooling": "{part} {now} °C, cooling",
  "heat.none": "No temperatures reported",

  "part.bed": "Bed",
  "part.nozzle": "Nozzle",
  "part.chamber": "Chamber",
  "part.job": "Job",

  "stage.label": "The strip: {zones}",
  "stage.zone": "{zone} {colour}",
  "stage.zone.to": "{zone} {colour} to {share}",
  "stage.unlit": "Nothing is lit: {why}",
  "stage.lamps": "Other lights",
  "stage.zones": "Zones of the strip",
  "stage.zone.pixels": "{zone}: pixels {pixels}",
  "stage.preview": "Preview of {look}: not on the strip",
  "lamp.share": "{name} {share}",
  "lamp.colour": "{name} {colour}",
  "link.trouble": "Controller {link}",

  "motion.label": "Flashing light:",
  "motion.still": "Still",
  "motion.moving": "Moving",
  "motion.warning": "Flashing light can harm people with photosensitive epilepsy.",
  "motion.show": "Show it moving",
  "motion.keep": "Keep it still",

  "colour.dark": "dark",
  "colour.white": "white",
  "colour.red": "red",
  "colour.orange": "orange",
  "colour.yellow": "yellow",
  "colour.green": "green",
  "colour.cyan": "cyan",
  "colour.blue": "blue",
  "colour.purple": "purple",
  "colour.pink": "pink",

  "controls.title": "Controls",
  "controls.close": "Close",
  "bar.off": "All off",
  "bar.auto": "Automatic",
  "bar.light": "Light",
  "bar.colour": "Colour",
  "bar.look": "Look",
  "bar.night": "Night",

  "light.title": "Brightness",
  "light.strip": "Strip",
  "light.value": "{share} of full light",

  "tint.title": "Colour",
  "tint.where": "Where",
  "tint.hue": "Hue",
  "tint.lightness": "Lightness",
  "tint.recent": "Recent colours",
  "tint.recent.one": "Colour {number}",
  "tint.show": "Show",

  "look.title": "Look",
  "look.which": "Which look",
  "look.own": "Your looks",
  "look.finished": "Finished looks",
  "look.flashes": "{look} (flashes)",
  "look.warning": "This look flashes, on the strip too. Flashing light can harm people with photosensitive epilepsy.",
  "look.show": "Show",

  "night.title": "Night dimming",
  "night.on": "On",
  "night.off": "Off",
  "night.auto": "By schedule",
  "night.is": "Light is dimmed now.",
  "night.not": "Light is not dimmed now.",
  "night.hours": "Schedule: {from} to {to}.",
  "night.none": "No schedule is set.",

  "for.label": "For how long",
  "for.10": "for 10 s",
  "for.60": "for 1 min",
  "for.600": "for 10 min",
  "for.3600": "for 1 h",
  "for.changed": "until changed",

  "asked.title": "What is asked for",
  "asked.words": "{what}: {value}, {until}",
  "asked.for": "{time} left",
  "asked.until": "until {clock}",
  "asked.until.changed": "until changed",
  "asked.release": "Release",
  "asked.release.of": "Release {what}",
  "asked.more": "and {count} more",
  "asked.brightness": "Strip",
  "asked.work": "{name}",
  "asked.look": "Look",
  "asked.pixels": "{name}",
  "asked.quiet": "Night dimming",
  "asked.quiet.on": "on",
  "asked.quiet.off": "off",

  "answer.done": "Done: {now}.",
  "answer.refused": "Not done: {why}.",
  "answer.silent": "Not done: Lampwright does not answer.",

  "rows.readings": "Other readings",
  "rows.current": "Current",
  "rows.current.sum": "{now} of {ceiling} mA",
  "rows.links": "Connections",
  "rows.links.well": "all well",
  "rows.wiring": "Wiring",
  "rows.wiring.well": "nothing to change",
  "rows.wiring.care": "{count} to look at",
  "rows.wiring.over": "{count} over a limit",
  "rows.wiring.from": "From “lampwright plan”, the worst first.",
  "rows.warnings": "Recent warnings",
  "rows.warnings.none": "No warnings since the daemon started",
  "rows.warnings.count": "{count}",
  "rows.warnings.repeat": "{count} times",
  "rows.warnings.over": "over since {clock}",
  "rows.warnings.error": "Error: {text}",

  "rows.device": "This device",
  "device.notify": "Notify me",
  "device.notify.words": "Get a notice of faults and finished jobs while the page is out of sight.",
  "device.notify.unable": "Browsers show notices only for pages with HTTPS, or of this machine itself.",
  "device.notify.done": "The job is done",
  "device.leave": "Forget this device",
  "device.code": "Point a phone’s camera at this to open the page there. The code carries the token: show it to nobody else.",
  "device.code.none": "Only this machine can reach the page. For a phone, set page.address and page.token_file.",
  "device.code.alt": "QR code of the page’s address",
  "device.watch": "Your token lets you watch. To change the light, forget this device and enter the other token.",

  "links.controller": "Controller",
  "links.broker": "Broker",
  "links.frames": "Frames",
  "links.rate": "{rate} a second",
  "links.rate.unknown": "rate not known yet",
  "links.shown": "{rate}, {shown} shown by the controller",
  "links.reset": "{words}; it last started because {why}",
  "links.reset.brown_out": "its supply voltage fell too low",
  "links.reset.watchdog": "its program hung",

  "current.most": "of {ceiling} mA at most",
  "current.high": "highest in ten minutes: {most} mA",
  "current.title": "Current of the strip over the last ten minutes, {now} mA now of {ceiling} mA at most, highest {most} mA",
  "axis.ago": "10 min ago",
  "axis.half": "5 min",
  "axis.now": "now",

  "reading": "{number} {unit}",
  "reading.unknown": "not reported yet",
  "reading.one": "{name} {value}",
  "unit.d": "{n} d",
  "unit.h": "{n} h",
  "unit.min": "{n} min",
  "unit.s": "{n} s",
  "unit.percent": "{n} %",
};

const TABLE = ENGLISH;

/** The text of a code, with its values put in. A code without a text is said as it is, so that nothing is lost. */
export function say(code, values = {}) {
  return (TABLE[code] ?? code).replace(/\{(\w+)\}/g, (_, name) => values[name] ?? "");
}

/** Whether there is a text for a code. */
export function isSaid(code) {
  return code in TABLE;
}

/** Puts texts where the page has their codes: as content by data-say, as a name for those who listen by data-label. */
export function fill(root) {
  root.querySelectorAll("[data-say]").forEach((element) => {
    element.textContent = say(element.dataset.say);
  });
  root.querySelectorAll("[data-label]").forEach((element) => {
    element.setAttribute("aria-label", say(element.dataset.label));
  });
}
