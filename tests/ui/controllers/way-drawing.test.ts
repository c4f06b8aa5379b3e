import { describe, expect, it } from 'vitest';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { WayDrawing } from '../../../ui/controllers/way-drawing.ts';

const estimate = demoEstimate('saltglass-row');
const house = {
  asFound: estimate.asFound.worked,
  scheme: schemeOf(estimate, 'spurs-rcbo').worked,
};
const target = { what: 'leg', legId: 'leg-r03r04' } as const;

function drawing(): WayDrawing {
  const one = new WayDrawing();
  one.take(house, true);
  one.do({ do: 'begin', target });
  return one;
}

describe('the drawing of a way', () => {
  it('shows nothing before it is begun, nor in another step; what was drawn is there on return', () => {
    expect(new WayDrawing().view).toBeNull();
    const one = drawing();
    one.do({ do: 'move', by: 'down' });
    one.take(house, false);
    expect(one.view).toBeNull();
    one.take(house, true);
    expect(one.view?.steps).toHaveLength(1);
  });

  it('offers again what was put away when the same cable is drawn, and not for another', () => {
    const one = drawing();
    one.do({ do: 'move', by: 'down' });
    one.do({ do: 'end' });
    expect(one.view).toBeNull();
    one.do({ do: 'begin', target: { what: 'leg', legId: 'leg-r04r05' } });
    expect(one.view?.dropped).toEqual([]);
    one.do({ do: 'begin', target });
    expect(one.view).toMatchObject({ steps: [], isDrawing: true });
    one.do({ do: 'bring-back' });
    expect(one.view?.steps).toHaveLength(1);
  });

  it('is not shown for a new cable of a scheme that is not', () => {
    const one = drawing();
    const runId = house.scheme.runs[0]?.id ?? '';
    one.do({ do: 'begin', target: { what: 'run', schemeId: 'spurs-rcbo', runId } });
    expect(one.view?.run.id).toBe(runId);
    one.take({ ...house, scheme: schemeOf(estimate, 'ring-to-w2').worked }, true);
    expect(one.view).toBeNull();
    one.take(house, true);
    expect(one.view?.run.id).toBe(runId);
  });
});
