import { describe, expect, it } from 'vitest';
import { killTrial } from './kill-trial.ts';
import { lossesOf, newLedger } from './ledger.ts';

// Hundreds of kills: npm run -s kill-trial.
const KILLS = 8;
const MOST_MS = 20_000;

describe('a server killed while jobs, library, photos and quotations are saved', () => {
  it('has every save that it acknowledged, to the byte, and nothing half there', async () => {
    const said: string[] = [];
    const result = await killTrial({
      kills: KILLS,
      workMs: 1200,
      mostMs: MOST_MS,
      say: (line) => said.push(line),
    });
    expect(result.losses, said.join('\n')).toEqual([]);
    expect(result.exitCode).toBe(0);
    expect(result.kills).toBeGreaterThanOrEqual(2);
    // Each kind of save was at work, and some were cut off.
    expect(Object.values(result.acknowledged).filter((saves) => saves === 0)).toEqual([]);
    expect(result.unanswered).toBeGreaterThan(0);
  });
});

describe('the ledger of a trial', () => {
  const told = (...prints: readonly string[]) => {
    const ledger = newLedger('job');
    for (const [i, print] of prints.entries()) ledger.told.set(i + 1, print);
    return ledger;
  };
  const reading = (prints: readonly (string | null)[]) => async (revision: number) =>
    prints[revision - 1] ?? null;

  it('finds a save that is gone, one that is another, a gap, and one that nobody sent', async () => {
    for (const [there, words] of [
      [['a'], '1 is the newest, 2 was acknowledged'],
      [['a', 'x'], 'revision 2 is another text'],
      [[null, 'b'], 'revision 1 is gone'],
      [['a', 'b', 'c'], 'revision 3 was sent by nobody'],
      [['a', 'b', null, 'd'], 'a gap at revision 3'],
    ] as const)
      expect((await lossesOf(told('a', 'b'), there.length, reading(there))).join(), words).toContain(words);
  });

  it('takes one that was in flight, and holds the server to it from then on', async () => {
    const ledger = told('a');
    ledger.sent.add('b');
    expect(await lossesOf(ledger, 2, reading(['a', 'b']))).toEqual([]);
    expect((await lossesOf(ledger, 1, reading(['a']))).join()).toContain('2 was acknowledged');
  });
});
