import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { protectionChoices } from '#engine/protection-choices.ts';
import type { RcdChoice } from '#engine/schemes/rcd-choices.ts';
import { demoJob, demoNames, estimateOf, schemeOf } from '../demo-jobs/demo-estimates.ts';

const library = demoLibrary();
const job = demoJob('saltglass-row');
const [ring, ...more] = protectionChoices(job, library, 'spurs-rcbo');
const choiceOf = (kind: string): RcdChoice => {
  const choice = ring?.choices.find(({ remedies }) => remedies[0]?.kind === kind);
  if (choice === undefined) throw new Error(`No way by ${kind}.`);
  return choice;
};

describe('the ways to an RCD', () => {
  it('stand side by side for the circuit that needs one, the scheme’s own among them', () => {
    expect(more).toEqual([]);
    expect(ring?.circuit).toBe('ring-house');
    expect(ring?.choices.map(({ remedies }) => remedies[0]?.kind)).toEqual([
      'rcbo',
      'rcd-enclosure',
      'new-board',
      'rcd-outlet',
    ]);
    expect(ring?.choices.filter(({ isChosen }) => isChosen)).toEqual([choiceOf('rcbo')]);
    expect(choiceOf('rcbo').pence).toBe(0);
  });

  it('cost what the scheme costs with each of them in place of its own', () => {
    const scheme = job.schemes.find(({ id }) => id === 'spurs-rcbo');
    if (scheme === undefined || ring === undefined) throw new Error('The demo has changed.');
    const gross = (remedies: typeof scheme.remedies): number =>
      schemeOf(estimateOf({ ...job, schemes: [{ ...scheme, remedies }] }), scheme.id).totals.grossPence;
    const without = scheme.remedies.filter(({ kind }) => kind !== 'rcbo');
    const asItIs = gross(scheme.remedies);
    for (const { remedies, pence } of ring.choices)
      expect(gross([...without, ...remedies]) - asItIs, remedies[0]?.kind).toBe(pence);
  });

  it('say by the checks what an RCD at the outlets alone leaves: the cables in the walls, and who may rely on it', () => {
    const { caveats, remedies } = choiceOf('rcd-outlet');
    expect(remedies).toHaveLength(3);
    expect(caveats.filter(({ outcome }) => outcome === 'fails').length).toBeGreaterThan(0);
    expect(caveats.map(({ message }) => message).join(' ')).toMatch(
      /lies in a wall less than 50 mm.*only a local RCD/,
    );
    expect(choiceOf('rcbo').caveats).toEqual([]);
  });

  it('say that nobody has looked whether the board takes an RCBO', () => {
    const [quoted] = protectionChoices(demoJob('saltglass-row-quoting'), library, 'spurs-rcbo');
    const rcbo = quoted?.choices.find(({ remedies }) => remedies[0]?.kind === 'rcbo');
    expect(rcbo?.caveats).toEqual([expect.objectContaining({ outcome: 'not-proven' })]);
  });

  it('are none for circuits behind an RCD, for unknown schemes, and put those that fail last everywhere', () => {
    expect(protectionChoices(job, library, 'no-such')).toEqual([]);
    const every = demoNames.flatMap((name) => {
      const each = demoJob(name);
      return each.schemes.flatMap(({ id }) => protectionChoices(each, library, id));
    });
    for (const { choices } of every) {
      const fails = choices.map(({ caveats }) => caveats.some(({ outcome }) => outcome === 'fails'));
      expect(fails).toEqual(fails.toSorted((a, b) => Number(a) - Number(b)));
    }
    const fernlow = demoJob('fernlow-close');
    expect(fernlow.schemes.flatMap(({ id }) => protectionChoices(fernlow, library, id))).toEqual([]);
  });
});
