import { describe, expect, it } from 'vitest';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { drawnThings } from '../../../ui/elements/plan/drawn-things.ts';

const { worked } = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
const lit = (...ids: string[]): readonly string[] => [...drawnThings(worked, ids)].sort();

describe('what is lit on the plan', () => {
  it('is a connection with its cables, its joint and the points at its ends', () => {
    expect(lit('c1-w2-spur')).toEqual(['c1-w2-spur', 'c1-w2-spur/cable-1', 'c1-w2-spur/joint', 'w2-bedroom']);
  });

  it('is a cable with the points at its ends, and no other cable', () => {
    expect(lit('c1-w3-spur/cable-1')).toEqual(['c1-w3-spur/cable-1', 'r8-bedroom', 'w3-bedroom']);
  });

  it('is the board, for a device that goes into it', () => {
    const [board] = worked.job.boards;
    expect(lit('remedy/rcbo/ring-house')).toContain(board?.id);
  });

  it('is where a remedy is set, for one at a point', () => {
    expect(lit('remedy/re-box/r8-bedroom')).toEqual(['r8-bedroom']);
  });

  it('is nothing for nothing', () => {
    expect(lit()).toEqual([]);
  });
});
