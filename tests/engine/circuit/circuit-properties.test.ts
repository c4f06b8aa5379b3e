import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circuitShapes } from '#engine/circuit/circuit-shapes.ts';
import { foundNetwork } from '#engine/circuit/found-network.ts';
import type { Network } from '#engine/circuit/network.ts';
import type { Job } from '#model/job.ts';
import { edited, grow, seedling } from './any-edited-job.ts';
import { carriedOut, schemeOf, shapeOf } from './circuit-job.ts';

describe('a ring with trees on it', () => {
  it('is told as it was made: order, roots, depths, fuses; every node once', () => {
    fc.assert(
      fc.property(seedling, (seed) => {
        const { job, ring, fuseBehind, rootOf, depthOf } = grow(seed);
        const network = foundNetwork(job);
        const shape = shapeOf(job, network);
        expect(shape.shape).toBe('ring');
        expect(shape.ringNodes).toEqual(ring);
        expect(shape.ringEdges.length).toBe(ring.length + 1);
        expect(shape.places.map(({ nodeId }) => nodeId)).toEqual(network.nodes.map(({ id }) => id));
        for (const place of shape.places) {
          const expected = fuseBehind.get(place.nodeId);
          if (expected === undefined) continue;
          const role = ring.includes(place.nodeId) ? 'ring' : expected ? 'behind-fuse' : 'unfused-spur';
          expect(place).toMatchObject({
            role,
            rootNode: rootOf.get(place.nodeId) ?? null,
            depth: depthOf.get(place.nodeId),
            behindUnit: expected ? `${expected}/load` : null,
          });
        }
      }),
    );
  });

  it('has every unfused cable either in the ring or on exactly one spur', () => {
    fc.assert(
      fc.property(seedling, (seed) => {
        const { job, fuseBehind } = grow(seed);
        const shape = shapeOf(job, foundNetwork(job));
        const unfused = job.points.filter(({ id }) => fuseBehind.get(id) === null).length;
        const cables = [
          ...shape.ringEdges.map(({ id }) => id),
          ...shape.spurs.flatMap(({ edgeIds }) => edgeIds),
        ];
        expect(new Set(cables).size).toBe(cables.length);
        // As many cables as points that no fuse protects, and one more to close the ring.
        expect(cables.length).toBe(unfused + 1);
        const onSpurs = shape.spurs.flatMap(({ accessoryNodes }) => accessoryNodes);
        expect(onSpurs.length).toBe(unfused - shape.ringNodes.length);
      }),
    );
  });

  it('is the same ring when legs are written down the other way round, and turned when A and B are', () => {
    fc.assert(
      fc.property(seedling, fc.boolean(), (seed, isLegsOnly) => {
        const { job, ring } = grow(seed);
        const other = isLegsOnly
          ? { ...seed, reversed: seed.reversed.map((each) => !each) }
          : { ...seed, isSwapped: !seed.isSwapped };
        const turned = grow(other).job;
        const [a, b] = [job, turned].map((each) => shapeOf(each, foundNetwork(each)));
        expect(b?.ringNodes).toEqual(isLegsOnly ? ring : ring.toReversed());
        const edges = a?.ringEdges.map(({ id }) => id) ?? [];
        expect(b?.ringEdges.map(({ id }) => id)).toEqual(isLegsOnly ? edges : edges.toReversed());
        expect(b?.ringLengthMm).toBe(a?.ringLengthMm);
      }),
    );
  });

  it('is broken without any one of its cables, and still a ring without any other', () => {
    fc.assert(
      fc.property(seedling, fc.nat(), (seed, pick) => {
        const { job } = grow(seed);
        const network = foundNetwork(job);
        const inRing = new Set(shapeOf(job, network).ringEdges.map(({ id }) => id));
        const cables = network.edges.filter(({ kind }) => kind === 'cable');
        const gone = cables[pick % cables.length];
        const rest: Network = { ...network, edges: network.edges.filter((edge) => edge !== gone) };
        const expected = inRing.has(gone?.id ?? '') ? 'broken-ring' : 'ring';
        expect(shapeOf(job, rest).shape).toBe(expected);
      }),
    );
  });
});

function proposedOfFirst(job: Job, found: Network): Network {
  return carriedOut(job, found, job.schemes[0] ?? schemeOf([]));
}

describe('a scheme of any connections', () => {
  it('never changes the network as found, and gives the same again', () => {
    fc.assert(
      fc.property(edited, (job) => {
        const found = foundNetwork(job);
        const before = structuredClone(found);
        const once = proposedOfFirst(job, found);
        expect(found).toEqual(before);
        expect(proposedOfFirst(job, found)).toEqual(once);
      }),
      { numRuns: 300 },
    );
  });

  it('keeps every millimetre of every leg, in use or removed', () => {
    fc.assert(
      fc.property(edited, (job) => {
        const network = proposedOfFirst(job, foundNetwork(job));
        for (const { id, lengthMm } of job.legs) {
          const stretches = [
            ...network.edges.filter(({ legId }) => legId === id).map(({ partMm }) => partMm),
            ...network.removed.filter(({ legId }) => legId === id),
          ].map((each) => [each?.fromMm ?? Number.NaN, each?.toMm ?? Number.NaN] as const);
          const sorted = stretches.toSorted((a, b) => a[0] - b[0] || a[1] - b[1]);
          let atMm = 0;
          for (const [fromMm, toMm] of sorted) {
            expect(fromMm).toBe(atMm);
            atMm = toMm;
          }
          expect(atMm).toBe(lengthMm);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('leaves no edge without its nodes, no id twice, and every list in order', () => {
    fc.assert(
      fc.property(edited, (job) => {
        const network = proposedOfFirst(job, foundNetwork(job));
        const ids = network.nodes.map(({ id }) => id);
        const edgeIds = network.edges.map(({ id }) => id);
        for (const list of [ids, edgeIds]) {
          expect(new Set(list).size).toBe(list.length);
          expect(list).toEqual(list.toSorted());
        }
        for (const { from, to, legId, lengthMm, partMm } of network.edges) {
          expect(ids).toEqual(expect.arrayContaining([from, to]));
          if (legId !== null) expect(lengthMm).toBe((partMm?.toMm ?? 0) - (partMm?.fromMm ?? 0));
        }
      }),
      { numRuns: 300 },
    );
  });

  it('gives every node a place in one circuit at most, and in one if cable joins it to an origin', () => {
    fc.assert(
      fc.property(edited, (job) => {
        const network = proposedOfFirst(job, foundNetwork(job));
        const shapes = [...circuitShapes(job, network).values()];
        const placed = shapes.flatMap(({ places }) => places.map(({ nodeId }) => nodeId));
        expect(new Set(placed).size).toBe(placed.length);
        const live = new Set(network.circuits.map(({ id }) => id));
        for (let size = 0; size !== live.size; ) {
          size = live.size;
          for (const { from, to } of network.edges)
            if (live.has(from) || live.has(to)) {
              live.add(from);
              live.add(to);
            }
        }
        expect(new Set(placed)).toEqual(new Set([...placed, ...live]));
        for (const { places } of shapes)
          for (const { upstreamNode, upstreamEdgeId, nodeId } of places) {
            const edge = network.edges.find(({ id }) => id === upstreamEdgeId);
            const ends = edge ? [edge.from, edge.to].toSorted() : [];
            expect(ends).toEqual(upstreamNode === null ? [] : [nodeId, upstreamNode].toSorted());
          }
      }),
      { numRuns: 300 },
    );
  });
});
