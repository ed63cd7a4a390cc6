import { parseArgs } from 'node:util';

export const HELP = `usage: board.js --elf FILE --link PATH [options]

Runs the firmware of an RP2040 board on an emulated chip. README.md, beside the folder, tells all.

  --elf FILE        the firmware, as an ELF file or a UF2 file
  --link PATH       the device is linked to here
  --line usb|uart   what the firmware speaks on; usb unless said otherwise
  --id HEX          number of the flash chip, 16 digits; e0c9a52b3c4d5e6f unless said otherwise
  --channels N      bytes a pixel, 3 or 4; 3 unless said otherwise
  --reset-us N      a low this long latches; 280 unless said otherwise
  --threshold-ns N  a high longer than this is a 1; 600 unless said otherwise
  --start-us N      the chip's timer starts at this when the board is switched on; 0 unless said otherwise
  --seed N          of the damage that is done on purpose; 1 unless said otherwise
  --reset-on-open   the chip is reset when the host opens the device
  --free            as fast as the machine allows
  --strict          end at the first overrun
  --quiet           no frame and no dimmers lines
`;

const SHAPE = {
  elf: { type: 'string' },
  link: { type: 'string' },
  line: { type: 'string', default: 'usb' },
  id: { type: 'string', default: 'e0c9a52b3c4d5e6f' },
  channels: { type: 'string', default: '3' },
  'reset-us': { type: 'string', default: '280' },
  'threshold-ns': { type: 'string', default: '600' },
  'start-us': { type: 'string', default: '0' },
  seed: { type: 'string', default: '1' },
  'reset-on-open': { type: 'boolean', default: false },
  free: { type: 'boolean', default: false },
  strict: { type: 'boolean', default: false },
  quiet: { type: 'boolean', default: false },
  help: { type: 'boolean', default: false },
};

function whole(values, name, least, most) {
  const value = /^\d{1,10}$/.test(values[name]) ? Number(values[name]) : NaN;
  if (!(value >= least && value <= most)) {
    throw new Error(`--${name}: say a whole number from ${least} to ${most}`);
  }
  return value;
}

/** The options; throws, with one line of explanation, if they are wrong. */
export function readOptions(words) {
  const { values } = parseArgs({ args: words, options: SHAPE, allowPositionals: false });
  if (values.help) {
    return { help: true };
  }
  if (values.elf === undefined || values.link === undefined) {
    throw new Error('name the firmware with --elf and the link to make with --link');
  }
  if (!['usb', 'uart'].includes(values.line)) {
    throw new Error('--line: say usb or uart');
  }
  if (!/^[0-9a-fA-F]{16}$/.test(values.id)) {
    throw new Error('--id: say 16 hexadecimal digits');
  }
  return {
    elf: values.elf,
    link: values.link,
    line: values.line,
    id: Buffer.from(values.id, 'hex'),
    channels: whole(values, 'channels', 3, 4),
    resetNs: whole(values, 'reset-us', 1, 100000) * 1000,
    thresholdNs: whole(values, 'threshold-ns', 1, 100000),
    startNs: whole(values, 'start-us', 0, 9999999999) * 1000,
    seed: whole(values, 'seed', 0, 999999999),
    resetOnOpen: values['reset-on-open'],
    free: values.free,
    strict: values.strict,
    quiet: values.quiet,
  };
}
