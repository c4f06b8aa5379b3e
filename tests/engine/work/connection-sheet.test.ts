import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { NetworkEdge } from '#engine/circuit/network.ts';
import { sleevedEnds } from '#engine/connections/sleeved-ends.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { CableEnd, ConnectionPlace } from '#engine/work/connection-place.ts';
import { connectionSheet } from '#engine/work/connection-sheet.ts';
import type { Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { edited } from '../circuit/any-edited-job.ts';
import { wantedOf } from '../circuit/circuit-job.ts';
import { schemeOf } from '../rules/facts-builder.ts';
import { randomHouse } from '../schemes/search/random-house.ts';
import { demoSchemes, firstWorked } from './worked-schemes.ts';

const endsOf = (places: readonly ConnectionPlace[]): readonly CableEnd[] =>
  places.flatMap(({ sides }) => sides.flatMap(({ ends }) => ends));
const recorded = (ends: readonly CableEnd[]): readonly CableEnd[] =>
  ends.filter(({ edgeId }) => edgeId !== null);

/** Ends as `cable at node`, sorted: the same cable twice at one node is there twice. */
const adjacency = (edges: readonly NetworkEdge[], nodes: ReadonlySet<string>): readonly string[] =>
  edges
    .filter(({ kind }) => kind === 'cable')
    .flatMap(({ id, from, to }) => [from, to].map((node) => ({ id, node })))
    .filter(({ node }) => nodes.has(node))
    .map(({ id, node }) => `${id} at ${node}`)
    .toSorted();

/** The whole of what a sheet promises, held against the network that it tells. */
function holds(worked: Worked): void {
  const { places } = connectionSheet(worked);
  const nodes = new Set(places.flatMap(({ sides }) => sides.map(({ nodeId }) => nodeId)));
  const ends = endsOf(places);
  // Every node of a touched circuit is at one place, and has there the cables that it has in the network.
  for (const id of worked.circuitIds)
    for (const { nodeId } of worked.shapes.get(id)?.places ?? []) expect(nodes).toContain(nodeId);
  expect(places.flatMap(({ sides }) => sides).length).toBe(nodes.size);
  expect(
    recorded(ends)
      .map(({ edgeId, nodeId }) => `${edgeId} at ${nodeId}`)
      .toSorted(),
  ).toEqual(adjacency(worked.proposed.edges, nodes));
  for (const { conductors } of ends)
    expect(conductors.map(({ core }) => core)).toEqual(['line', 'neutral', 'earth']);
  everyCableHasTwoEnds(worked, ends);
  nothingIsLostOfWhatWasFound(worked, places);
  fillsAreKept(places);
  fusesPartSides(worked, places);
  sleevesAreTheKits(worked, ends, nodes);
}

function everyCableHasTwoEnds({ proposed }: Worked, ends: readonly CableEnd[]): void {
  for (const id of new Set(recorded(ends).map(({ edgeId }) => edgeId))) {
    const both = ends.filter(({ edgeId }) => edgeId === id);
    const edge = proposed.edges.find((each) => each.id === id);
    expect(both.length).toBe(2);
    expect(both.map(({ nodeId }) => nodeId).toSorted()).toEqual([edge?.from, edge?.to].toSorted());
    expect(both.map(({ towards }) => towards?.nodeId).toSorted()).toEqual([edge?.from, edge?.to].toSorted());
  }
}

/** What was found at a place is what stays there and what goes: as many ends of each leg. */
function nothingIsLostOfWhatWasFound(
  { found, foundShapes, circuitIds }: Worked,
  places: readonly ConnectionPlace[],
): void {
  const nodes = new Set(
    circuitIds.flatMap((id) => [id, ...(foundShapes.get(id)?.places.map(({ nodeId }) => nodeId) ?? [])]),
  );
  const before = found.edges
    .filter(({ kind }) => kind === 'cable')
    .flatMap(({ legId, from, to }) => [from, to].filter((node) => nodes.has(node)).map(() => legId));
  const legOf = ({ edgeId }: CableEnd): string => (edgeId ?? '').replace(/\/part-\d+$/, '');
  const stays = endsOf(places).filter(
    ({ state, edgeId }) => state === 'found' && !/\/old-/.test(edgeId ?? ''),
  );
  const goes = places.flatMap(({ gone }) => recorded(gone));
  expect([...stays, ...goes].map(legOf).toSorted()).toEqual(before.toSorted());
}

function fillsAreKept(places: readonly ConnectionPlace[]): void {
  for (const { fill, ends } of places.flatMap(({ sides }) => sides))
    if (fill !== null) expect(ends.length).toBe(fill.cables);
}

function fusesPartSides({ proposed }: Worked, places: readonly ConnectionPlace[]): void {
  for (const { sides } of places)
    for (const side of sides.filter(({ fuse }) => fuse !== undefined)) {
      const fuse = proposed.edges.find(({ kind, to }) => kind === 'fuse' && to === side.nodeId);
      expect(side.side).toBe('load');
      expect(sides.filter((other) => other.side === 'supply').map(({ nodeId }) => nodeId)).toEqual([
        fuse?.from,
      ]);
      for (const { conductors } of side.ends)
        expect(conductors.slice(0, 2).map(({ terminal }) => terminal)).toEqual(['L-out', 'N-out']);
    }
}

/** The sleeves on the sheet are those of the kit, end for end; and nothing green-yellow or bare is live. */
function sleevesAreTheKits(worked: Worked, ends: readonly CableEnd[], nodes: ReadonlySet<string>): void {
  const put = ends.filter(({ conductors }) => conductors.some(({ sleeve }) => sleeve === 'put-on'));
  const kit = sleevedEnds(worked).filter(({ nodeId, edgeId }) => edgeId !== null && nodes.has(nodeId));
  expect(put.map(({ nodeId, edgeId }) => `${nodeId} ${edgeId}`).toSorted()).toEqual(
    kit.map(({ nodeId, edgeId }) => `${nodeId} ${edgeId}`).toSorted(),
  );
  for (const { core, afterColour, terminal } of ends.flatMap(({ conductors }) => conductors)) {
    expect(terminal.startsWith('E')).toBe(core === 'earth');
    expect(afterColour === 'green-yellow').toBe(core === 'earth');
    expect(afterColour).not.toBe('bare');
  }
}

describe('the connection sheets', () => {
  it.each(demoSchemes())(
    'of $name tell the network that is proposed, and all that was found',
    ({ worked }) => {
      expect(connectionSheet(worked).places.filter(({ isWorkedOn }) => isWorkedOn).length).toBeGreaterThan(2);
      holds(worked);
    },
  );

  it('of any scheme, whatever it does and however wrong, do the same', () => {
    const seen = fc.constantFrom(undefined, 0, 1, 2, 3, 4);
    const colours = fc.constantFrom(undefined, 'old', 'new', 'mixed');
    const surveyed = fc.array(fc.record({ cablesSeen: seen, colours }), { minLength: 30, maxLength: 30 });
    fc.assert(
      fc.property(edited, surveyed, colours, (job, of, circuitColours) => {
        const points = job.points.map((point, i) => ({ ...point, asFound: defined(of[i] ?? {}) }) as Point);
        const circuits = job.circuits.map((circuit) => ({
          ...circuit,
          ...defined({ colours: circuitColours }),
        }));
        holds(firstWorked({ ...job, points, circuits } as Job));
      }),
      { numRuns: 150 },
    );
  });

  it('of houses at random, with ways, boxes and fuses of their own, do the same', () => {
    fc.assert(
      fc.property(fc.nat(10_000), fc.integer({ min: 1, max: 4 }), fc.nat(3), (seed, found, kind) => {
        const job = randomHouse(seed, { found, wanted: 2 });
        const from = { point: `p${(seed % found) + 1}` };
        const device = { standard: 'BS-EN-60898', ratingA: 20 } as const;
        const feeds = (root: string) => [
          { from: root, to: 'w1' },
          { from: 'w1', to: 'w2' },
        ];
        const between: [{ origin: string }, { point: string }] = [{ origin: 'c' }, { point: 'p1' }];
        const joint = { how: 'joint', alongMm: 400 } as const;
        const connection = [
          { id: 'x', kind: 'spur', from, to: 'w1' } as const,
          { id: 'x', kind: 'fused-spur', from, unit: {}, feeds: feeds('unit') } as const,
          { id: 'x', kind: 'radial', board: 'b1', device, feeds: feeds('origin') } as const,
          {
            id: 'x',
            kind: 'ring-extension',
            circuit: 'c',
            between,
            out: joint,
            back: joint,
            through: ['w1', 'w2'],
          } as const,
        ][kind];
        holds(
          firstWorked({ ...job, schemes: connection === undefined ? [] : [schemeOf([connection as never])] }),
        );
      }),
      { numRuns: 40 },
    );
  });
});

/** An object without its keys that are not told. */
const defined = <T extends object>(of: T): T =>
  Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined)) as T;

describe('what nobody looked at', () => {
  it('stays unseen: no colour is guessed, and cables that no leg tells of have rows of their own', () => {
    const job = randomHouse(1, { found: 2, wanted: 1 });
    const bare: Job = {
      ...job,
      legs: [],
      circuits: job.circuits.map(({ certainty: _certainty, ...circuit }) => circuit),
      points: [...job.points.filter(({ id }) => id !== 's1')],
      schemes: [schemeOf([{ id: 'x', kind: 'spur', from: { point: 'p1' }, to: 'w1' }])],
    };
    const { places } = connectionSheet(firstWorked(bare));
    const ends = places.find(({ id }) => id === 'p1')?.sides[0]?.ends ?? [];
    expect(ends.map(({ state }) => state)).toEqual(['new', 'not-recorded', 'not-recorded']);
    const [, unseen] = ends;
    expect(unseen).toMatchObject({ mark: null, towards: null, lineMm2: null });
    expect(unseen?.conductors.map(({ foundColour }) => foundColour)).toEqual([null, null, null]);
    expect(places.find(({ kind }) => kind === 'board')?.unrecordedCircuits).toEqual(['c']);
  });

  it('has a job of nothing but a wanted point', () => {
    const job = randomHouse(1, { found: 1, wanted: 0 });
    const nothing: Job = {
      ...job,
      points: [wantedOf('w')],
      legs: [],
      circuits: [],
      boards: [],
      schemes: [schemeOf([])],
    };
    expect(connectionSheet(firstWorked(nothing)).places).toEqual([]);
  });
});
