/** A trade word, how it is known in a text, and what it means. */
interface Entry {
  readonly word: string;
  readonly seen: RegExp;
  readonly meaning: string;
}

const entries: readonly Entry[] = [
  {
    word: 'Box',
    seen: /\bbox(es)? (behind|for)|\bboxes\b|its box\b/,
    meaning: 'the metal or plastic box in or on the wall that a socket is screwed to.',
  },
  {
    word: 'Branch',
    seen: /\bbranch/i,
    meaning: 'a single cable that leaves the loop to feed one socket. Electricians call it a spur.',
  },
  {
    word: 'Breaker',
    seen: /\bbreaker/i,
    meaning: 'the switch in the fuse box that turns a circuit off by itself when too much is drawn.',
  },
  {
    word: 'Circuit',
    seen: /\bcircuit/i,
    meaning: 'the sockets and cables that one breaker in the fuse box feeds.',
  },
  {
    word: 'Fuse box',
    seen: /\bfuse box/i,
    meaning: 'where the circuits of the house begin, also called the consumer unit.',
  },
  {
    word: 'Kilowatt (kW)',
    seen: /\bkW\b/,
    meaning: 'how much an appliance draws: a kettle about 3 kW, a phone charger about 0.02 kW.',
  },
  {
    word: 'Loop',
    seen: /\bloop\b/i,
    meaning:
      'a cable that leaves the fuse box, passes the sockets and comes back. Electricians call it a ring.',
  },
  {
    word: 'Main bonding',
    seen: /main bonding/i,
    meaning: 'an earth wire to the metal pipes that come into the house.',
  },
  {
    word: 'RCBO',
    seen: /\bRCBO\b/,
    meaning: 'a breaker and an RCD in one, for one circuit.',
  },
  {
    word: 'RCD',
    seen: /\bRCD\b/,
    meaning: 'a cut-out that turns the power off when current leaks to earth, as it does through a person.',
  },
];

/** All text of a plain value. */
function textOf(value: unknown): string {
  if (typeof value === 'string') return value;
  if (typeof value !== 'object' || value === null) return '';
  return Object.values(value).map(textOf).join('\n');
}

/** The trade words that a paper uses, each explained, in the order of the alphabet. */
export function glossaryOf(paper: unknown): readonly { readonly word: string; readonly meaning: string }[] {
  const text = textOf(paper);
  return entries.flatMap(({ word, seen, meaning }) => (seen.test(text) ? [{ word, meaning }] : []));
}
