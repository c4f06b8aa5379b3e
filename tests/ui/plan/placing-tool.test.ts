import { describe, expect, it } from 'vitest';
import { planPoint } from '#engine/plan/plane.ts';
import type { Place, Point } from '#model/installation.ts';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { PlacingTool } from '../../../ui/elements/plan/placing-tool.ts';

const { worked } = demoEstimate('saltglass-row').asFound;
const [storey] = worked.job.storeys;
const [first] = worked.job.points;
if (storey === undefined || first === undefined) throw new Error('the demo house has a storey and points');

/** The tool at a place of the ground floor; what it takes becomes a point of the job, as the step makes it. */
function placing() {
  const [took, told]: [Place[], string[]] = [[], []];
  const job = { ...worked.job, points: [...worked.job.points] };
  const of = () => ({
    worked: { ...worked, job },
    storeyId: storey?.id ?? '',
    hasWalls: true,
    mmPerPx: 10,
    figuresMm: 3,
  });
  const tool = new PlacingTool(of, planPoint(2000, 1000), {
    asked: () => ({ symbol: 'socket-twin', heightMm: 450 }),
    hint: () => '',
    took: (place) => {
      took.push(place);
      job.points.push({
        ...(first as Point),
        id: `new-${took.length}`,
        label: `R${20 + took.length}`,
        place,
      });
    },
    picked: null,
    moved: (words) => told.push(words),
    gaveUp: () => {},
  });
  return { tool, took, told };
}

describe('a place that is chosen by keys', () => {
  it('is taken once: pressed again it says what is there, and further on it takes another', () => {
    const { tool, took, told } = placing();
    expect(tool.keyed('Enter', false)).toBe(true);
    expect(tool.keyed('Enter', false)).toBe(true);
    expect(took).toHaveLength(1);
    expect(told.at(-1)).toBe('R21 is there already: go on from it first');
    tool.keyed('ArrowRight', false);
    tool.keyed('Enter', false);
    expect(took).toHaveLength(2);
    expect(took[1]).not.toEqual(took[0]);
  });
});
