import { buildPlan } from '#engine/plan/build-plan.ts';
import { distanceMm } from '#engine/plan/plane.ts';
import { outlineEdges } from '#engine/plan/room-outline.ts';
import type { Storey } from '#model/building.ts';
import type { Job } from '#model/job.ts';
import { newJob } from '../../../ui/edits/new-job.ts';
import type { Drawing } from '../../../ui/house/drawing.ts';
import type { Vector } from '../../../ui/house/vector.ts';

/** An empty storey to draw on, with ids that are counted. */
export function emptyDrawing(): Drawing {
  const job = newJob({ reference: 'T', title: 'T', terms: { labour: 'typical', vat: 'standard' } });
  return drawingOf(job);
}

/** The first storey of a job, to be drawn on. */
export function drawingOf(job: Job, at = 0): Drawing {
  let made = 0;
  const storey = job.storeys[at];
  if (storey === undefined) throw new Error('The job has no such storey.');
  return {
    job,
    storey,
    newId: () => {
      made += 1;
      return `new${String(made).padStart(7, '0')}`;
    },
  };
}

/** A level rectangle with its lower left corner there. */
export const rectangle = ([x, y]: Vector, widthMm: number, depthMm: number): readonly Vector[] => [
  [x, y],
  [x + widthMm, y],
  [x + widthMm, y + depthMm],
  [x, y + depthMm],
];

const mapOf = (storey: Storey) => buildPlan({ storeys: [storey], points: [], boards: [] }).wallById;

/** The inner sides of a room, mm, in the order of its walls; stretches of one line are one side. None where it does not close. */
export function sidesMm(storey: Storey, roomName: string): readonly number[] {
  const room = storey.rooms.find(({ name }) => name === roomName);
  if (room === undefined) throw new Error(`There is no room ${roomName}.`);
  const edges = outlineEdges(room, mapOf(storey));
  const sides: { mm: number; turn: readonly [number, number] }[] = [];
  for (const { from, to } of edges) {
    const mm = distanceMm(from, to);
    const turn: readonly [number, number] = [(to[0] - from[0]) / mm, (to[1] - from[1]) / mm];
    const last = sides.at(-1);
    if (last !== undefined && last.turn[0] * turn[0] + last.turn[1] * turn[1] > 0.999) last.mm += mm;
    else sides.push({ mm, turn });
  }
  const [first, last] = [sides[0], sides.at(-1)];
  if (
    first !== undefined &&
    last !== undefined &&
    first !== last &&
    first.turn[0] * last.turn[0] + first.turn[1] * last.turn[1] > 0.999
  ) {
    first.mm += last.mm;
    sides.pop();
  }
  return sides.map(({ mm }) => Math.round(mm * 10) / 10);
}

/** The area inside a room's walls, m². */
export const areaM2 = (storey: Storey, roomName: string): number => {
  const plan = buildPlan({ storeys: [storey], points: [], boards: [] });
  const room = [...plan.roomById.values()].find((one) => one.room.name === roomName);
  return (room?.areaMm2 ?? 0) / 1e6;
};
