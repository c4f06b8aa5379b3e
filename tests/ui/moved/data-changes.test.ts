import fc from 'fast-check';
import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { ChangeSender, ChangeTaker, changeOf, withChange } from '../../../ui/moved/data-changes.ts';

/** Data as threads send it: plain, nested, with keys that hold nothing. */
const anyData = fc.letrec((tie) => ({
  data: fc.oneof(
    { depthSize: 'small' },
    fc.constantFrom(null, undefined, true, 0, -1.5, 'a', ''),
    fc.array(tie('data'), { maxLength: 4 }),
    fc.dictionary(fc.constantFrom('a', 'b', 'c', '__proto'), tie('data'), { noNullPrototype: true }),
  ),
})).data;

describe('what is sent of data that changed', () => {
  it('brings the receiver to every later state, through the copying that threads do', () => {
    fc.assert(
      fc.property(fc.array(anyData, { minLength: 1, maxLength: 6 }), (states) => {
        const [sender, taker] = [new ChangeSender(), new ChangeTaker()];
        for (const state of states)
          expect(taker.take(structuredClone(sender.changeTo(state)))).toStrictEqual(state);
      }),
    );
  });

  it('leaves the earlier state as it was', () => {
    fc.assert(
      fc.property(anyData, anyData, (before, now) => {
        const copy = structuredClone(before);
        withChange(before, changeOf(now, before));
        expect(before).toStrictEqual(copy);
      }),
    );
  });

  it('is nothing of data that is the same, whether or not it is the same object', () => {
    fc.assert(
      fc.property(anyData, (data) => {
        expect(changeOf(data, data)).toBeNull();
        expect(changeOf(structuredClone(data), data)).toBeNull();
      }),
    );
  });

  it('is a point of a job where that was moved, and what did not change stays the same object', () => {
    const job = demoJob('quarrel-court');
    const moved = produce(job, ({ points }) => {
      const place = points[1]?.place;
      if (place !== undefined) place.heightMm += 25;
    });
    const change = changeOf(moved, job);
    expect(change).toEqual({
      parts: [
        ['points', { length: job.points.length, parts: [[1, { parts: [['place', expect.anything()]] }]] }],
      ],
    });
    const taken = withChange(job, change) as typeof job;
    expect(taken).toEqual(moved);
    expect(taken.storeys).toBe(job.storeys);
    expect(taken.points[0]).toBe(job.points[0]);
  });

  it('knows a key that holds nothing from one that is gone', () => {
    expect(Object.keys(withChange({ a: 1 }, changeOf({ a: undefined }, { a: 1 })) as object)).toEqual(['a']);
    expect(Object.keys(withChange({ a: 1 }, changeOf({}, { a: 1 })) as object)).toEqual([]);
    expect(Object.keys(withChange({}, changeOf({ a: undefined }, {})) as object)).toEqual(['a']);
  });
});
