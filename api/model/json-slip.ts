/** The first place at which a text stops being JSON. */
export interface JsonSlip {
  /** From 1. */
  readonly line: number;
  /** From 1, in UTF-16 units, as editors count. */
  readonly column: number;
  readonly expected: string;
  /** The character found there; undefined at the end of the text. */
  readonly found: string | undefined;
}

const SPACE = /[ \t\n\r]*/y;
const PLAIN = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-])/y;
const REST_OF_TEXT = 'the rest of a text in double quotes';
const ESCAPE = /\\(?:["\\/bfnrt]|u[\dA-Fa-f]{4})/y;

/**
 * Finds where a text that `JSON.parse` refused went wrong. JavaScript engines word their complaint each in
 * their own way, most without a place, so the place is found here; reading itself stays with `JSON.parse`.
 *
 * @returns undefined if the text is JSON after all.
 */
export function jsonSlip(source: string): JsonSlip | undefined {
  const open: ('}' | ']')[] = [];
  let wants: 'value' | 'value-or-end' | 'key' | 'key-or-end' | 'more' = 'value';
  let at = 0;
  const take = (pattern: RegExp): boolean => {
    const length = matchLength(source, at, pattern);
    at += length ?? 0;
    return length !== undefined;
  };
  /** Steps over a text in double quotes, or to where it breaks off. */
  const takeText = (): boolean => {
    const { end, whole } = textEnd(source, at);
    at = end;
    return whole;
  };
  const slip = (expected: string): JsonSlip => {
    const before = source.slice(0, at).split(/\r\n|\n|\r/);
    const column = (before.at(-1) ?? '').length + 1;
    return { line: before.length, column, expected, found: at < source.length ? source[at] : undefined };
  };
  for (;;) {
    take(SPACE);
    const character = source[at];
    const closes = character !== undefined && character === open.at(-1);
    if (closes && (wants === 'more' || wants.endsWith('-or-end'))) {
      open.pop();
      at += 1;
      wants = 'more';
    } else if (wants === 'more') {
      if (open.length === 0) return at < source.length ? slip('nothing more') : undefined;
      if (character !== ',') return slip(`"," or ${JSON.stringify(open.at(-1))}`);
      at += 1;
      wants = open.at(-1) === '}' ? 'key' : 'value';
    } else if (wants === 'key' || wants === 'key-or-end') {
      if (character !== '"') return slip('a key in double quotes');
      if (!takeText()) return slip(REST_OF_TEXT);
      take(SPACE);
      if (source[at] !== ':') return slip('":"');
      at += 1;
      wants = 'value';
    } else if (character === '{' || character === '[') {
      open.push(character === '{' ? '}' : ']');
      at += 1;
      wants = character === '{' ? 'key-or-end' : 'value-or-end';
    } else if (character === '"') {
      if (!takeText()) return slip(REST_OF_TEXT);
      wants = 'more';
    } else if (take(PLAIN)) wants = 'more';
    else return slip('a value');
  }
}

function matchLength(source: string, at: number, pattern: RegExp): number | undefined {
  pattern.lastIndex = at;
  return pattern.exec(source)?.[0].length;
}

/** Where a text in double quotes ends, or where it breaks off: at a line's end, or at a stray backslash. */
function textEnd(source: string, from: number): { end: number; whole: boolean } {
  let at = from + 1;
  while (at < source.length) {
    const character = source.charAt(at);
    if (character === '"') return { end: at + 1, whole: true };
    const length = character === '\\' ? matchLength(source, at, ESCAPE) : 1;
    if (length === undefined || character < ' ') break;
    at += length;
  }
  return { end: at, whole: false };
}
