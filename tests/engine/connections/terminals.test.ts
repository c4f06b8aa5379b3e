import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { NetworkEdge } from '#engine/circuit/network.ts';
import { buildThings } from '#engine/connections/build-things.ts';
import type { TerminalFill } from '#engine/connections/things.ts';
import type { Point } from '#model/installation.ts';
import {
  fuseOf,
  inputOf,
  legEdge,
  newEdge,
  nodeOf,
  placeOf,
  pointOf,
  twinAndEarth,
  type Wiring,
  wanted,
} from './wiring-builder.ts';

function fillAt(nodeId: string, wiring: Wiring): TerminalFill {
  const { terminals } = buildThings(inputOf(wiring));
  return terminals.find((fill) => fill.nodeId === nodeId) ?? expect.fail(`no terminals ${nodeId}`);
}

const ring = [legEdge('l1', 'ring', 'a'), legEdge('l2', 'a', 'ring')];

describe('conductors in terminals', () => {
  it('counts old and new cables and adds their areas up', () => {
    const wiring = {
      points: [pointOf('a'), wanted('w')],
      foundEdges: ring,
      newEdges: [newEdge('n', 'a', 'w')],
      places: [placeOf('a')],
    };
    expect(fillAt('a', wiring)).toMatchObject({
      cables: 3,
      newCables: 1,
      areaMm2: 7.5,
      counted: true,
      affected: true,
      circuitId: 'ring',
    });
    expect(fillAt('w', wiring)).toMatchObject({ cables: 1, newCables: 1, areaMm2: 2.5, affected: true });
  });

  it('leaves a point alone that no new cable reaches', () => {
    expect(fillAt('a', { points: [pointOf('a')], foundEdges: ring })).toMatchObject({
      cables: 2,
      newCables: 0,
      affected: false,
    });
  });

  it('takes three cables and 8 mm² of a plug accessory, whatever the make', () => {
    expect(fillAt('a', { points: [pointOf('a')] })).toMatchObject({ capacityCables: 3, capacityMm2: 8 });
  });

  it('adds two old imperial 7/.029 cables and a new 2.5 mm² up to more than 8 mm²', () => {
    const imperial = { type: 'imperial', lineMm2: 2.98, cpcMm2: 1.28 } as const;
    const wiring = {
      points: [pointOf('a'), wanted('w')],
      foundEdges: ring.map((edge) => ({ ...edge, cable: imperial })),
      newEdges: [newEdge('n', 'a', 'w')],
    };
    expect(fillAt('a', wiring).areaMm2).toBeCloseTo(8.46, 6);
  });

  it('counts the cables seen at the plate where no leg tells', () => {
    const seen = pointOf('a', { asFound: { cablesSeen: 2 } });
    const wiring = { points: [seen, wanted('w')], newEdges: [newEdge('n', 'a', 'w')] };
    expect(fillAt('a', wiring)).toMatchObject({ cables: 3, counted: true, areaMm2: null });
  });

  it.each([
    ['ring', 2],
    ['spur', 1],
    [undefined, 2],
  ] as const)('assumes, and says so, the cables of a point whose role is %s: %i', (role, cables) => {
    const point = pointOf('a', { asFound: role === undefined ? {} : { role } });
    expect(fillAt('a', { points: [point] })).toMatchObject({ cables, counted: false, areaMm2: null });
  });

  it('does not count cables that were only assumed to be there', () => {
    const point = pointOf('a', { asFound: { cablesSeen: 2 }, certainty: { cablesSeen: 'assumed' } });
    expect(fillAt('a', { points: [point] }).counted).toBe(false);
  });

  it('believes a plate with more cables than the legs tell of', () => {
    const point = pointOf('a', { asFound: { cablesSeen: 3 } });
    expect(fillAt('a', { points: [point], foundEdges: ring })).toMatchObject({ cables: 3, areaMm2: null });
  });

  it('has no area when the size of one cable is not known', () => {
    const edges = [legEdge('l1', 'ring', 'a', { cable: null }), legEdge('l2', 'a', 'ring')];
    expect(fillAt('a', { points: [pointOf('a')], foundEdges: edges }).areaMm2).toBeNull();
  });

  it('keeps the two sides of a fused unit apart', () => {
    const unit = wanted('u', { kind: 'fused-unit' });
    const wiring = {
      points: [pointOf('a'), unit, wanted('w')],
      nodes: [
        nodeOf('a'),
        nodeOf('u', { state: 'new' }),
        nodeOf('u/load', { kind: 'load-terminals', pointId: 'u', state: 'new' }),
        nodeOf('w', { state: 'new' }),
      ],
      newEdges: [newEdge('n', 'a', 'u'), fuseOf('u'), newEdge('m', 'u/load', 'w')],
    };
    expect(fillAt('u', wiring).cables).toBe(1);
    expect(fillAt('u/load', wiring).cables).toBe(1);
  });

  it('hands the cables of a replaced point to the one in its place', () => {
    const input = inputOf({
      points: [pointOf('old', { status: 'replaced' }), wanted('w', { replaces: 'old' })],
      nodes: [nodeOf('old')],
      foundEdges: [legEdge('l1', 'ring', 'old'), legEdge('l2', 'old', 'ring')],
    });
    const proposed = {
      ...input.proposed,
      nodes: [nodeOf('w', { state: 'new' })],
      edges: [legEdge('l1', 'ring', 'w'), legEdge('l2', 'w', 'ring')],
    };
    const { terminals } = buildThings({ ...input, proposed });
    expect(terminals).toMatchObject([
      { nodeId: 'w', cables: 2, newCables: 0, affected: false, counted: true },
    ]);
  });

  it('shows a point as affected when one of its cables is lifted', () => {
    const input = inputOf({ points: [pointOf('a')], foundEdges: ring });
    const proposed = { ...input.proposed, edges: ring.slice(0, 1) };
    expect(buildThings({ ...input, proposed }).terminals).toMatchObject([{ cables: 1, affected: true }]);
  });

  describe('where no leg tells of the cables', () => {
    const end = { connectionId: 'c', nodeId: 'a' };
    const seen = (cablesSeen: number) => pointOf('a', { asFound: { cablesSeen } });
    const lifted = (point: Point, legs: NetworkEdge[] = []) => {
      const input = inputOf({
        points: [point, wanted('w')],
        foundEdges: legs,
        newEdges: [newEdge('n', 'a', 'w')],
      });
      const { terminals } = buildThings({ ...input, proposed: { ...input.proposed, lifted: [end] } });
      return terminals.find(({ nodeId }) => nodeId === 'a');
    };

    it('leaves as many as there were when one is lifted and a new one takes its place', () => {
      for (const cables of [1, 2, 3])
        expect(lifted(seen(cables))).toMatchObject({ cables, newCables: 1, affected: true });
    });

    it('lifts the untold one where legs tell of the others', () => {
      expect(lifted(seen(3), ring)).toMatchObject({ cables: 3, newCables: 1 });
    });

    it('lifts none that legs tell of', () => {
      expect(lifted(seen(2), ring)).toMatchObject({ cables: 3, newCables: 1 });
    });

    it('changes nothing at the neighbour when an old cable is cut further along', () => {
      const old = legEdge('c/old-out', 'a', 'w', { legId: null, cable: null });
      const wiring = { points: [seen(3), wanted('w')] };
      const input = inputOf(wiring);
      const { terminals } = buildThings({ ...input, proposed: { ...input.proposed, edges: [old] } });
      expect(terminals).toMatchObject([
        { nodeId: 'a', cables: 3, newCables: 0, affected: false },
        { nodeId: 'w', cables: 1, newCables: 0, affected: true },
      ]);
    });
  });

  it('sums areas that are counts times sizes, for any cables at a point', () => {
    const sizes = fc.array(fc.constantFrom(1, 1.5, 2.5, 4, 6), { maxLength: 6 });
    fc.assert(
      fc.property(sizes, sizes, (old, added) => {
        const edgeOf = (kind: typeof legEdge) => (lineMm2: number, index: number) =>
          kind(`${kind.name}${index}`, 'ring', 'a', { cable: { ...twinAndEarth, lineMm2 } });
        const fill = fillAt('a', {
          points: [pointOf('a', { asFound: { cablesSeen: 0 } })],
          foundEdges: old.map(edgeOf(legEdge)),
          newEdges: added.map(edgeOf(newEdge)),
        });
        expect(fill.cables).toBe(old.length + added.length);
        expect(fill.newCables).toBe(added.length);
        expect(fill.areaMm2).toBeCloseTo(
          [...old, ...added].reduce((sum, mm2) => sum + mm2, 0),
          6,
        );
      }),
      { seed: 7 },
    );
  });
});
