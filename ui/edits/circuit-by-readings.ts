import type { InferredCircuit } from '#engine/proof/readings/inferred-circuit.ts';
import type { Cable } from '#model/cable.ts';
import type { Circuit } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';
import { newId } from '../new-id.ts';
import { removeAll } from './remove-things.ts';
import { setPointsInOrder } from './ring-in-order.ts';

/** Lengths by readings are told no finer, mm. */
const STEP_MM = 100;

/** What the readings are taken over with. */
export interface TakeOver {
  readonly circuit: Pick<Circuit, 'id' | 'name'>;
  readonly said: InferredCircuit;
  /** The ring's points as recorded until now. */
  readonly was: readonly string[];
  /** The cable of new legs, where it is known. */
  readonly cable: Cable | null;
}

/**
 * Records a circuit as its readings tell it: the ring's order, spurs with a known parent, and the lengths of legs that had
 * none. Legs between the same neighbours stay with all that is known of them; the order counts as measured.
 */
export function circuitByReadings({ circuit, said, was, cable }: TakeOver): JobEdit {
  const { points: now } = said.order;
  const legIds = [...now, 'back'].map(() => newId());
  const ordered = setPointsInOrder(circuit, { was, now, isRing: true, cable, legIds });
  const spurs = said.points.flatMap(({ point, role, parents, spurMm }) => {
    const parent = parents[0]?.point ?? null;
    return role === 'spur' && parent !== null && now.includes(parent)
      ? [{ point, parent, spurMm, id: newId() }]
      : [];
  });
  return {
    label: `${circuit.name} as its readings tell it`,
    change: (job) => {
      ordered.change(job);
      for (const spur of spurs) putSpur(job, circuit.id, spur, cable);
      for (const { from, to, lengthMm } of said.legs) putLength(job, circuit.id, [from, to], lengthMm);
      const recorded = job.circuits.find(({ id }) => id === circuit.id);
      if (recorded === undefined) return;
      recorded.shape = 'ring';
      recorded.certainty = { ...recorded.certainty, order: 'measured' };
    },
  };
}

interface Spur {
  readonly point: string;
  readonly parent: string;
  readonly spurMm: number | null;
  readonly id: string;
}

const pointsOf = ({ from, to }: Job['legs'][number]): readonly (string | null)[] =>
  [from, to].map((end) => ('point' in end ? end.point : null));

/** A spur's own cable stays where it leads to the parent that was read; one that leads elsewhere goes. */
function putSpur(
  job: Job,
  circuitId: string,
  { point, parent, spurMm, id }: Spur,
  cable: Cable | null,
): void {
  const own = job.legs.filter((leg) => leg.circuit === circuitId && pointsOf(leg).includes(point));
  const kept = own.find((leg) => pointsOf(leg).includes(parent));
  const gone = own.filter((leg) => leg !== kept && leadsToRing(job, circuitId, leg, point));
  removeAll(job, { legs: new Set(gone.map((leg) => leg.id)) });
  if (kept === undefined)
    job.legs.push({
      id,
      circuit: circuitId,
      from: { point: parent },
      to: { point },
      ...(cable === null ? {} : { cable: structuredClone(cable) }),
    });
  putLength(job, circuitId, [parent, point], spurMm);
}

/** Whether a leg joins the spur's point to the board or to a point with more than one other cable: towards the ring. */
function leadsToRing(job: Job, circuitId: string, leg: Job['legs'][number], point: string): boolean {
  const other = pointsOf(leg).find((id) => id !== point) ?? null;
  if (other === null) return true;
  const legs = job.legs.filter((each) => each.circuit === circuitId && each !== leg);
  return legs.filter((each) => pointsOf(each).includes(other)).length >= 2;
}

/** Gives a leg without a length the one that was read. */
function putLength(
  job: Job,
  circuitId: string,
  [from, to]: readonly [string | null, string | null],
  lengthMm: number | null,
): void {
  const leg = job.legs.find((each) => {
    const [one, other] = pointsOf(each);
    return each.circuit === circuitId && ((one === from && other === to) || (one === to && other === from));
  });
  if (leg === undefined || leg.lengthMm !== undefined || lengthMm === null) return;
  leg.lengthMm = Math.max(STEP_MM, Math.round(lengthMm / STEP_MM) * STEP_MM);
  leg.certainty = { ...leg.certainty, length: 'measured' };
}
