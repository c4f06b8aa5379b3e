import type { CircuitFit } from './circuit-fit.ts';
import { beforeConfidence } from './confidence.ts';
import type { InferredPoint, LoopName, NextReading } from './inferred-circuit.ts';
import { conductors } from './loop-readings.ts';
import { loopsDisagree } from './misfit-causes.ts';

/** Surer than this, ring or spur needs no plate opened. */
const SURE = 0.95;

/** What to measure or look at next, the most settling first; nothing where nothing is open. */
export function nextReadings(
  fit: CircuitFit,
  points: readonly InferredPoint[],
  labelOf: (id: string) => string,
): readonly NextReading[] {
  return [
    ...endToEnd(fit),
    ...linked(fit, labelOf),
    ...again(fit, labelOf),
    ...closeTogether(fit, labelOf),
    ...plates(points, labelOf),
  ];
}

const listed = (ids: readonly string[], labelOf: (id: string) => string): string =>
  ids.map(labelOf).join(', ');

function endToEnd({ readings }: CircuitFit): readonly NextReading[] {
  const missing = conductors.filter((conductor) => readings.endToEnd[conductor] === null);
  return missing.map((loop) => ({
    kind: 'end-to-end',
    points: [],
    loop,
    end: null,
    words: `Read ${loop} from end to end with the ring out of the board: lengths follow from it.`,
  }));
}

/** Points without a reading from one of the ends, on the loop that is free of parallel earth paths. */
function linked({ fitted }: CircuitFit, labelOf: (id: string) => string): readonly NextReading[] {
  const open = fitted.points.filter(({ placed, point }) => placed === null && point.kind !== 'joint');
  if (open.length === 0) return [];
  const ids = open.map(({ point }) => point.id);
  return (['A', 'B'] as const).map((end) => ({
    kind: 'linked',
    points: ids,
    loop: 'L-N',
    end,
    words: `Link line and neutral at ${listed(ids, labelOf)} in turn, and read L–N from end ${end}: both ends together give the place.`,
  }));
}

function again({ fitted }: CircuitFit, labelOf: (id: string) => string): readonly NextReading[] {
  const ids = fitted.points.filter((point) => loopsDisagree(point, fitted)).map(({ point }) => point.id);
  if (ids.length === 0) return [];
  const words = `Remake the contact at ${listed(ids, labelOf)} and read both loops again.`;
  return [{ kind: 'remake-and-read-again', points: ids, loop: null, end: null, words }];
}

/** Neighbours whose order is in doubt: the second loop tells them further apart, else the same again. */
function closeTogether(
  { ring, fitted }: CircuitFit,
  labelOf: (id: string) => string,
): readonly NextReading[] {
  const doubtful = ring.filter((one, i) =>
    [ring[i - 1], ring[i + 1]].some(
      (other) =>
        other !== undefined &&
        Math.max(beforeConfidence(one.placed, other.placed), beforeConfidence(other.placed, one.placed)) <
          SURE,
    ),
  );
  if (doubtful.length === 0) return [];
  const ids = doubtful.map(({ point }) => point.id);
  const has = (loop: LoopName): boolean =>
    fitted.channels.some((each) => each.how === 'linked' && each.loop === loop);
  const loop = has('L-N') ? 'L-cpc' : 'L-N';
  const words = has(loop)
    ? `Trace the cable between ${listed(ids, labelOf)}: by their readings they lie too close for their order to be sure.`
    : `Read ${loop} from both ends at ${listed(ids, labelOf)} too: they lie too close for their order to be sure.`;
  return [
    {
      kind: has(loop) ? 'trace-cable' : 'linked',
      points: ids,
      loop: has(loop) ? null : loop,
      end: null,
      words,
    },
  ];
}

function plates(points: readonly InferredPoint[], labelOf: (id: string) => string): readonly NextReading[] {
  const open = points.filter(
    ({ spurConfidence, by }) =>
      by !== 'cables' &&
      by !== 'both' &&
      spurConfidence !== null &&
      Math.max(spurConfidence, 1 - spurConfidence) < SURE,
  );
  const spurs = points.filter(({ role, parents }) => role === 'spur' && parents[0]?.point === null);
  return [
    ...(open.length === 0
      ? []
      : [
          {
            kind: 'count-cables',
            points: open.map(({ point }) => point),
            loop: null,
            end: null,
            words: `Open ${listed(
              open.map(({ point }) => point),
              labelOf,
            )} and count the cables: readings alone do not settle ring or spur there.`,
          } as const,
        ]),
    ...spurs.map(
      ({ point }) =>
        ({
          kind: 'trace-cable',
          points: [point],
          loop: null,
          end: null,
          words: `Trace the cable from ${labelOf(point)}: it seems to leave the ring by a joint.`,
        }) as const,
    ),
  ];
}
