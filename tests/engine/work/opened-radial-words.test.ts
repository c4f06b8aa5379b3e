import { describe, expect, it } from 'vitest';
import { connectionWords } from '#drawing/connection-words.ts';
import { labelsOf } from '#drawing/label-of.ts';
import { estimate } from '#engine/estimate.ts';
import { howSaid, nicknameOf } from '#engine/quotation/how-said.ts';
import { describedWork } from '#engine/work/record/described-work.ts';
import { referencesOf } from '#engine/work/references.ts';
import type { Scheme } from '#model/scheme.ts';
import { library } from '#tests/engine/schemes/search/brute-trial.ts';
import { variedHouse } from '#tests/engine/schemes/search/varied-house.ts';
import { joinedIn } from '../../../ui/elements/wanted/joined-words.ts';

/** A radial, its leg from the board to P1 opened for W1. */
const { job } = variedHouse(85_978_797, 2);
const opened: Scheme = {
  id: 'opened',
  name: 'W1 in the leg to P1',
  connections: [
    {
      id: 'k1',
      kind: 'ring-extension',
      circuit: 'c',
      between: [{ origin: 'c' }, { point: 'p1' }],
      leg: 'l1',
      out: { how: 'terminals' },
      back: { how: 'terminals' },
      through: ['w1'],
    },
  ],
  remedies: [],
  locks: [],
};

describe('a leg of a radial that is opened for a new point', () => {
  const [scheme] = estimate({ ...job, schemes: [opened] }, library, {
    date: '2026-11-27',
    revision: 1,
  }).schemes;
  if (scheme === undefined) throw new Error('no scheme');
  const { worked } = scheme;
  const labelOf = labelsOf(worked);
  const told = [
    ...howSaid(scheme),
    nicknameOf(scheme),
    labelOf('k1'),
    ...opened.connections.map((connection) => connectionWords(connection, labelOf)),
    joinedIn(scheme, 'w1')?.words ?? '',
    ...describedWork(worked, referencesOf(worked), 'c'),
    ...scheme.findings.flatMap(({ rule, message }) => (rule === 'RG5' ? [message] : [])),
  ];

  it('is called no ring and no loop anywhere, and nobody is told that it is fed from both ends', () => {
    expect(told).toHaveLength(7);
    for (const words of told) expect(words).not.toMatch(/\bring\b|\bloop\b|both ends/i);
  });

  it('is told to the customer as what it is', () => {
    expect(howSaid(scheme)).toEqual([
      'The cable between the fuse box and P1 is opened and carried on through W1.',
    ]);
  });
});
