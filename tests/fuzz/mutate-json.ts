import type { Chance } from './chance.ts';

const deep = (levels: number): unknown => {
  let value: unknown = 1;
  for (let i = 0; i < levels; i += 1) value = i % 2 === 0 ? [value] : { a: value };
  return value;
};

/** Texts that trip programs up: signs of formulas, marks that turn the line, halves of letters, markup, control characters. */
export const oddTexts: readonly string[] = [
  '',
  ' ',
  '=1+1',
  '+1',
  '-1',
  '@SUM(A1)',
  '\t=1',
  '\r\n',
  '\u0000',
  '\u001b[2J',
  '\u202egnp.exe',
  '\u2066x\u2069',
  '\ud800',
  'a\udc00b',
  '\ufeff',
  '<script>alert(1)</script>',
  '<image href="/etc/passwd"/>',
  ']]>',
  '&lt;&amp;',
  '%0aSet-Cookie: x',
  '../../etc/passwd',
  '__proto__',
  'constructor',
  'NaN',
  'Infinity',
  '1e999',
  '2026-02-30',
  '９',
  'e\u0301'.repeat(50),
  '👩‍🔧',
  'ﷺ'.repeat(100),
];

const oddNumbers: readonly number[] = [
  0,
  -0,
  -1,
  0.1,
  1e-320,
  1e21,
  1e308,
  -1e308,
  2 ** 31,
  2 ** 53,
  -(2 ** 53),
  4_294_967_296,
  999_999_999_999,
];

/** Anything that JSON can hold, most of it where it does not belong. */
export function oddValue(chance: Chance): unknown {
  return chance.one<() => unknown>([
    () => null,
    () => chance.isSo(0.5),
    () => chance.one(oddNumbers),
    () => chance.next() * 10 ** chance.below(12),
    () => chance.one(oddTexts),
    () => 'x'.repeat(chance.one([100, 3000, 100_000])),
    () => [],
    () => ({}),
    () => deep(chance.one([5, 31, 33, 500, 4000])),
    () => Array.from({ length: chance.one([3, 200, 2500]) }, () => 1),
    () => Object.fromEntries(Array.from({ length: chance.one([3, 600]) }, (_, i) => [`k${i}`, i])),
  ])();
}

type Holder = Record<string, unknown> | unknown[];

const isHolder = (value: unknown): value is Holder => typeof value === 'object' && value !== null;

/** Some group or list anywhere in a value, the deeper the likelier as there are more of them. */
function holderIn(chance: Chance, root: Holder): Holder {
  let at = root;
  for (;;) {
    const inner = Object.values(at).filter((value) => isHolder(value) && Object.keys(value).length > 0);
    if (inner.length === 0 || chance.isSo(0.2)) return at;
    at = chance.one(inner) as Holder;
  }
}

/** Sets a key even where the language gives it a meaning of its own. */
function put(holder: Holder, key: string, value: unknown): void {
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
}

const clumsyKeys = [
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  '',
  'id',
  '\ud800',
  'x'.repeat(300),
];

type Change = (chance: Chance, holder: Holder, key: string) => void;

const changes: readonly Change[] = [
  (chance, holder, key) => put(holder, key, oddValue(chance)),
  (chance, holder, key) => put(holder, key, oddValue(chance)),
  (_, holder, key) => {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
  },
  // The same id twice.
  (_, holder, key) => {
    if (Array.isArray(holder)) holder.push(holder[Number(key)]);
  },
  (chance, holder, key) => {
    const other = chance.one(Object.keys(holder));
    const [one, two] = [Reflect.get(holder, key), Reflect.get(holder, other)];
    put(holder, key, two);
    put(holder, other, one);
  },
  // Of a list, JSON has no keys but its places.
  (chance, holder, key) => {
    if (!Array.isArray(holder)) put(holder, chance.one(clumsyKeys), Reflect.get(holder, key));
  },
  (_, holder, key) => put(holder, key, JSON.stringify(Reflect.get(holder, key)) ?? ''),
  (_, holder, key) => put(holder, key, [Reflect.get(holder, key)]),
  (chance, holder, key) => {
    const value: unknown = Reflect.get(holder, key);
    if (typeof value === 'number') put(holder, key, value * chance.one([-1, 0, 1e-6, 1000, 1e9]));
    else if (typeof value === 'string') put(holder, key, `${value}${chance.one(oddTexts)}`);
  },
];

/** A file's JSON with one to four things in it changed; the text given is left as it is. */
export function mutatedJson(chance: Chance, text: string): unknown {
  const root: unknown = JSON.parse(text);
  if (!isHolder(root)) return oddValue(chance);
  for (let left = 1 + chance.below(4); left > 0; left -= 1) {
    const holder = holderIn(chance, root);
    const keys = Object.keys(holder);
    if (keys.length > 0) chance.one(changes)(chance, holder, chance.one(keys));
  }
  return root;
}

const spoilt: readonly ((chance: Chance, text: string) => string)[] = [
  (chance, text) => text.slice(0, chance.below(text.length)),
  (chance, text) => `${text.slice(chance.below(text.length))}`,
  (_, text) => `\ufeff${text}`,
  (_, text) => text.replace(/\d+/, '1e999'),
  (_, text) => text.replace(/\d+/, 'NaN'),
  (_, text) => text.replace(/\d+/, '9'.repeat(400)),
  (_, text) => text.replace(/"/, "'"),
  (_, text) => text.replace(/[}\]]/, ',$&'),
  (_, text) => `${'['.repeat(20_000)}${text}`,
  (_, text) => text.replace(/\{/, '{"id":1,"id":2,'),
  (chance, text) => {
    const at = chance.below(text.length);
    return `${text.slice(0, at)}${chance.one(oddTexts)}${text.slice(at)}`;
  },
];

/** A file's text: mostly JSON of another meaning, at times no JSON any more. */
export function mutatedText(chance: Chance, text: string): string {
  const made = JSON.stringify(mutatedJson(chance, text)) ?? 'undefined';
  return chance.isSo(0.12) ? chance.one(spoilt)(chance, made) : made;
}
