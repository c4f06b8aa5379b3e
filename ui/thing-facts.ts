import { connectedPoints } from '#drawing/label-of.ts';
import { pointKindWords } from '#drawing/point-kind-words.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { cutsInShort } from '#engine/ways/cut-words.ts';
import type { Leg, Place, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Step } from './job-view.ts';
import { counted, metres } from './written.ts';

/** What is known of a thing, a line each: what it is called, and what was found. */
export interface ThingFacts {
  /** What kind of thing it is, in words. */
  readonly kind: string;
  readonly facts: readonly (readonly [name: string, value: string])[];
  /** Where it can be changed; null where that is not a fact of the survey. */
  readonly step: Step | null;
}

type Fact = readonly [name: string, value: string];

function placeWords({ plan }: Worked, place: Place | undefined): string {
  if (place === undefined) return 'not placed yet';
  const height = `${place.heightMm} mm above the floor`;
  if (!('wall' in place)) return height;
  const room = [...plan.roomById.values()].find(({ room: { walls } }) =>
    walls.some(({ wall, side }) => wall === place.wall && side === place.side),
  );
  return room === undefined ? height : `${room.room.name}, ${height}`;
}

const circuitName = ({ circuits }: Job, id: string | undefined): string =>
  circuits.find((circuit) => circuit.id === id)?.name ?? 'not known';

function pointFacts(worked: Worked, point: Point): ThingFacts {
  const { job } = worked;
  const box = worked.things.boxes.find(({ pointId }) => pointId === point.id);
  const facts: Fact[] = [['Where', placeWords(worked, point.place)]];
  if (point.status !== 'wanted') facts.push(['Circuit', circuitName(job, point.circuit)]);
  if (point.load !== undefined) facts.push(['Load', `${point.load.use}, ${point.load.watts} W`]);
  if (point.asFound?.cablesSeen !== undefined) facts.push(['Cables seen', String(point.asFound.cablesSeen)]);
  if (box?.depthMm != null)
    facts.push([
      'Box',
      `${box.depthMm} mm deep${box.action === 'frame' ? `, a spacer frame of ${box.frameMm} mm with it` : ''}`,
    ]);
  return {
    kind: pointKindWords[point.kind].toLowerCase(),
    facts,
    step: point.status === 'wanted' ? 'wanted' : 'as-found',
  };
}

function legFacts({ job, foundRuns }: Worked, leg: Leg): ThingFacts {
  const { cable } = leg;
  const lengthMm = leg.lengthMm ?? foundRuns.get(leg.id)?.lengthMm ?? null;
  return {
    kind: 'cable as found',
    facts: [
      ['Circuit', circuitName(job, leg.circuit)],
      ['Cable', cable === undefined ? 'not known' : `${cable.lineMm2} / ${cable.cpcMm2} mm²`],
      ['Length', lengthMm === null ? 'not known' : metres(lengthMm)],
      ['How sure', leg.certainty?.route ?? 'seen'],
    ],
    step: 'as-found',
  };
}

function newFacts({ job, scheme, runs }: Worked, id: string): ThingFacts | null {
  const [base = ''] = id.split('/');
  const connection = scheme?.connections.find((one) => one.id === base);
  if (connection === undefined) return null;
  const these = runs.filter((run) => run.id === id || (id === base && run.connectionId === base));
  const lengthMm = these.reduce((sum, run) => sum + (run.lengthMm ?? 0), 0);
  const labels = connectedPoints(connection).map(
    (pointId) => job.points.find((point) => point.id === pointId)?.label ?? pointId,
  );
  const facts: Fact[] = [['Joins on', labels.join(', ')]];
  if (these.length > 0) facts.push(['New cable', `${metres(lengthMm)} in ${counted(these.length, 'run')}`]);
  const cuts = cutsInShort(these.flatMap((run) => run.cuts));
  if (cuts !== '') facts.push(['On its way', cuts]);
  if (these.some(({ pinned }) => pinned)) facts.push(['Way', 'drawn by hand']);
  return { kind: 'new work', facts, step: 'ways' };
}

/** What is known of a chosen thing; null where nothing is, or where it is gone. */
export function thingFacts(worked: Worked, id: string): ThingFacts | null {
  const { job } = worked;
  const point = job.points.find((one) => one.id === id);
  if (point !== undefined) return pointFacts(worked, point);
  const leg = job.legs.find((one) => one.id === id);
  if (leg !== undefined) return legFacts(worked, leg);
  const board = job.boards.find((one) => one.id === id);
  if (board !== undefined)
    return {
      kind: 'board',
      facts: [
        ['Where', placeWords(worked, board.place)],
        ['Spare ways', board.spareWays === undefined ? 'not known' : String(board.spareWays)],
      ],
      step: 'as-found',
    };
  const circuit = job.circuits.find((one) => one.id === id);
  if (circuit !== undefined)
    return {
      kind: 'circuit',
      facts: [
        ['Protective device', circuit.device === undefined ? 'not known' : `${circuit.device.ratingA} A`],
        ['Points', String(job.points.filter((one) => one.circuit === id).length)],
      ],
      step: 'as-found',
    };
  return newFacts(worked, id);
}
