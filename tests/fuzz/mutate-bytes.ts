import type { Chance } from './chance.ts';

type Change = (chance: Chance, bytes: Uint8Array) => Uint8Array;

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

const noise = (chance: Chance, length: number): Uint8Array =>
  Uint8Array.from({ length }, () => chance.below(256));

const changes: readonly Change[] = [
  (chance, bytes) => {
    const copy = bytes.slice();
    for (let left = 1 + chance.below(8); left > 0 && copy.length > 0; left -= 1)
      copy[chance.below(copy.length)] = chance.one([0, 0xff, 0x7f, chance.below(256)]);
    return copy;
  },
  (chance, bytes) => bytes.slice(0, chance.below(bytes.length + 1)),
  (chance, bytes) => bytes.slice(chance.below(bytes.length + 1)),
  (chance, bytes) => {
    const at = chance.below(bytes.length + 1);
    return joined(bytes.slice(0, at), noise(chance, 1 + chance.below(64)), bytes.slice(at));
  },
  (chance, bytes) => {
    const at = chance.below(bytes.length + 1);
    const chunk = bytes.slice(at, at + 1 + chance.below(200));
    return joined(
      bytes.slice(0, at),
      ...Array.from({ length: 2 + chance.below(50) }, () => chunk),
      bytes.slice(at),
    );
  },
  (chance, bytes) => {
    const copy = bytes.slice();
    const at = chance.below(copy.length + 1);
    return copy.fill(0, at, at + 1 + chance.below(100));
  },
  // A length that a file says of itself, four bytes somewhere.
  (chance, bytes) => {
    const copy = bytes.slice();
    const at = chance.below(Math.max(1, copy.length - 4));
    copy.set([0xff, 0xff, 0xff, chance.one([0x7f, 0xff])].slice(0, Math.max(0, copy.length - at)), at);
    return copy;
  },
  (chance) => noise(chance, chance.below(300)),
];

/** A file's bytes with one to three changes. */
export function mutatedBytes(chance: Chance, bytes: Uint8Array): Uint8Array {
  let made = bytes;
  for (let left = 1 + chance.below(3); left > 0; left -= 1) made = chance.one(changes)(chance, made);
  return made;
}
