import fs from 'node:fs';

const FLASH = 0x10000000;
const FLASH_END = 0x11000000;
const RAM = 0x20000000;
const RAM_END = 0x20042000;

const UF2_MAGIC = [0x0a324655, 0x9e5d5157, 0x0ab16f30];
const UF2_BLOCK = 512;
const UF2_HAS_FAMILY = 0x2000;
const RP2040_FAMILY = 0xe48bff56;

const ELF_MAGIC = 0x464c457f;
const ELF_ARM = 40;
const PT_LOAD = 1;

/**
 * What the flash holds: `pieces` of {at, bytes}, `at` from the start of the flash; and where the variables end in RAM, null if the file
 * does not say. Throws if the file is neither an ELF file for ARM nor a UF2 file for the RP2040.
 */
export function readImage(path) {
  const data = fs.readFileSync(path);
  if (data.length >= UF2_BLOCK && data.readUInt32LE(0) === UF2_MAGIC[0]) {
    return { pieces: readUf2(data), variablesEnd: null };
  }
  if (data.length >= 52 && data.readUInt32LE(0) === ELF_MAGIC && data.readUInt16LE(18) === ELF_ARM) {
    return readElf(data);
  }
  throw new Error('neither an ELF file for ARM nor a UF2 file');
}

function piece(address, bytes) {
  if (address < FLASH || address + bytes.length > FLASH_END) {
    throw new Error(`does not lie in the flash: 0x${address.toString(16)}`);
  }
  return { at: address - FLASH, bytes };
}

/* The published UF2 format: what the chip's own bootloader would write. */
function readUf2(data) {
  if (data.length % UF2_BLOCK !== 0) {
    throw new Error('is cut short');
  }
  const blocks = data.length / UF2_BLOCK;
  return Array.from({ length: blocks }, (_, number) => {
    const block = data.subarray(number * UF2_BLOCK, (number + 1) * UF2_BLOCK);
    const [first, second, flags, address, size, own, all, family] = Array.from({ length: 8 }, (_, i) => block.readUInt32LE(4 * i));
    const sound = first === UF2_MAGIC[0] && second === UF2_MAGIC[1] && block.readUInt32LE(UF2_BLOCK - 4) === UF2_MAGIC[2]
      && (flags & UF2_HAS_FAMILY) !== 0 && family === RP2040_FAMILY && size === 256 && address % 256 === 0
      && own === number && all === blocks;
    if (!sound) {
      throw new Error(`block ${number} is not one that an RP2040 would take`);
    }
    return piece(address, block.subarray(32, 32 + size));
  });
}

function readElf(data) {
  const at = data.readUInt32LE(28);
  const size = data.readUInt16LE(42);
  const pieces = [];
  let variablesEnd = null;
  for (let i = 0; i < data.readUInt16LE(44); i++) {
    const [type, offset, virtual, physical, inFile, inMemory] = Array.from({ length: 6 }, (_, field) =>
      data.readUInt32LE(at + i * size + 4 * field));
    if (type !== PT_LOAD) {
      continue;
    }
    if (inFile > 0) {
      pieces.push(piece(physical, data.subarray(offset, offset + inFile)));
    }
    if (virtual >= RAM && virtual < RAM_END) {
      variablesEnd = Math.max(variablesEnd ?? 0, virtual + inMemory);
    }
  }
  return { pieces, variablesEnd };
}
