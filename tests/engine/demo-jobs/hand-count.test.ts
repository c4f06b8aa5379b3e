import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { packForOutcomes } from '#engine/pack-for-outcomes.ts';
import type { PackChoice } from '#engine/schemes/outcomes/outcome-plan.ts';
import { boughtOf, describeAgainstCount } from './against-count.ts';
import { demoEstimate, demoJob, schemeOf } from './demo-estimates.ts';
import { carriedCount, spursCount } from './hand-count-saltglass.ts';

const scheme = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');

describeAgainstCount('the first scheme of 3 Saltglass Row', scheme, spursCount, {
  argued: {},
  wrong: {},
  uncounted: {
    'fire-sealant':
      'the gaps of two boxes and of one hole in party walls are sealed, as the check of the boxes asks beside the pads that the hand did count',
    'sleeving-brown-3':
      'none as priced, at the high end one for each end of a new cable among old colours: the hand marks none where the terminal tells the core',
    'plasterboard-patch':
      'none as priced, one at the high end: W3’s drop may have to be opened where a noggin crosses the stud wall, which the hand did not ask',
  },
});

describe('what the hand carries for 3 Saltglass Row in case', () => {
  const lineOf = (id: string) => scheme.takeoff.find(({ item }) => item === id);

  it.each(carriedCount)('is at the high end of the bill: $item', ({ id, more }) => {
    const line = lineOf(id);
    expect((line?.highQuantity ?? 0) - (line?.quantity ?? 0)).toBe(more);
  });

  it('is all that may turn out to be needed of boxes', () => {
    const open = scheme.takeoff
      .filter(({ group, quantity, highQuantity }) => group === 'boxes' && highQuantity > quantity)
      .map(({ item }) => item)
      .filter((item) => item.startsWith('box-'));
    expect(open).toEqual(carriedCount.map(({ id }) => id).toSorted());
  });

  it('is bought once the boxes of R1 and R6 are packed for either way, and not before', () => {
    const packer = packForOutcomes(demoJob('saltglass-row'), demoLibrary(), {
      schemeId: 'spurs-rcbo',
      otherIds: [],
    });
    if (packer === null) throw new Error('no scheme');
    const asCounted = packer.plan([]);
    const both: PackChoice = asCounted.questions.map(({ id, outcomes }) => ({
      question: id,
      outcomes: outcomes.map((outcome) => outcome.id),
    }));
    expect(asCounted.questions.map(({ id }) => id)).toEqual(carriedCount.map(({ question }) => question));
    const packed = packer.plan(both);
    const bought = (plan: typeof packed, id: string): number =>
      plan.purchase.lines.find(({ item }) => item === id)?.boughtQuantity ?? 0;
    for (const { id, more } of carriedCount)
      expect(bought(packed, id) - bought(asCounted, id), id).toBe(more);
  });
});

it('drills the two joist holes of W2 and no others', () => {
  const holes = scheme.runs.map((run) => [
    run.to.pointId,
    run.segments.reduce((sum, segment) => sum + segment.joistsCrossed, 0),
  ]);
  // W1 passes beneath the ground floor's joists, as the space under them allows; W3 runs along a bay, and its 200 mm
  // across meet none.
  expect(holes).toEqual([
    ['w1-living1', 0],
    ['w2-bedroom', 2],
    ['w3-bedroom', 0],
    ['w4-boiler1', 0],
  ]);
});

it('buys 12 m of cable, one length of tube, one hank of sleeving, one bag of plaster and one box of clips', () => {
  const bought = (item: string) => scheme.price.bill.find((line) => line.item === item);
  expect(boughtOf(scheme, 'cable-flat-2.5-1.5')).toBe(12);
  expect(boughtOf(scheme, 'oval-20')).toBe(3);
  expect(bought('sleeving-earth-3')?.packQuantity).toBe(10);
  expect(bought('plaster-one-coat')?.packQuantity).toBe(5);
  expect(bought('clip-flat-2.5')?.packQuantity).toBe(100);
});
