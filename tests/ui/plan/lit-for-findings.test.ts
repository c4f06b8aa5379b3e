import { describe, expect, it } from 'vitest';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { drawnThings } from '../../../ui/elements/plan/drawn-things.ts';

const { worked, findings } = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');

describe('what lights up on the plan', () => {
  it('is, for a circuit, its board, its old cables and its new ones', () => {
    const lit = drawnThings(worked, new Set(['ring-house']));
    expect(lit).toContain('board-hall');
    expect(worked.job.legs.filter(({ id }) => !lit.has(id))).toEqual([]);
    expect(worked.runs.filter(({ id }) => !lit.has(id))).toEqual([]);
  });

  it('is the board for the supply and what is bonded to it', () => {
    expect([...drawnThings(worked, new Set(['supply', 'supply/bond-gas']))]).toEqual(['board-hall']);
  });

  it('is the cables of a connection, and a point itself', () => {
    const lit = drawnThings(worked, new Set(['c1-w2-spur', 'r8-bedroom']));
    expect(lit).toContain('r8-bedroom');
    expect([...lit].some((id) => id.startsWith('c1-w2-spur/cable'))).toBe(true);
  });

  it('is something for every finding but those of the site as a whole', () => {
    const drawn = new Set([
      ...worked.plan.positionOfPoint.keys(),
      ...worked.plan.positionOfBoard.keys(),
      ...worked.plan.roomById.keys(),
      ...worked.foundRuns.keys(),
      ...worked.runs.map(({ id }) => id),
      ...worked.things.joints.map(({ id }) => id),
      ...worked.things.fusedUnits.map(({ id }) => id),
    ]);
    const dark = findings.filter(
      ({ subject }) => ![...drawnThings(worked, new Set([subject]))].some((id) => drawn.has(id)),
    );
    expect([...new Set(dark.map(({ subject }) => subject))]).toEqual(['site']);
  });
});
