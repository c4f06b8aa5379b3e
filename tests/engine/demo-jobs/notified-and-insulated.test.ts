import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoEstimate, demoJob, estimateOf, findingsOf, schemeOf } from './demo-estimates.ts';

describe('the sum for notifying', () => {
  it('is borne where the rule on notification says so, and only there', () => {
    const sums = (name: 'saltglass-row' | 'fernlow-close', id: string) =>
      schemeOf(demoEstimate(name), id).price.other.map(({ sum }) => sum);
    // Additions to a ring in England outside special locations are not notifiable (Approved Document P 2013).
    expect(sums('saltglass-row', 'spurs-rcbo')).not.toContain('notification');
    // A kitchen in Wales is on the older list; the stricter reading counts.
    expect(sums('fernlow-close', 'ring-to-b3')).toContain('notification');
  });
});

describe("a room's own floor", () => {
  it('counts for the cable under it, whatever the rest of the storey is like', () => {
    const base = demoJob('saltglass-row');
    const job: Job = {
      ...base,
      storeys: base.storeys.map((storey) => ({
        ...storey,
        rooms: storey.rooms.map((room) =>
          room.name === 'Bedroom 1' ? { ...room, floor: { ...storey.floor, insulationMm: 200 } } : room,
        ),
      })),
    };
    const outcomes = findingsOf(schemeOf(estimateOf(job), 'spurs-rcbo'), 'SP5')
      .filter(({ origin }) => origin === 'scheme')
      .map(({ outcome, actual }) => [outcome, actual]);
    // More than 100 mm is method 101: 17 A (BS 7671 Table 4D5), under the 20 A of 433.1.204; W2 alone lies there.
    expect(outcomes.filter(([outcome]) => outcome === 'fails')).toEqual([['fails', 17]]);
  });
});
