const TABLE = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** The CRC-32 that a zip directory keeps of each part (ISO 3309, as in APPNOTE 4.4.7). */
export function checksum(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (TABLE[(sum ^ byte) & 0xff] ?? 0) ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}
