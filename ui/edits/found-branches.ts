import type { Cable, End } from '#model/cable.ts';
import type { Leg, Place, Point } from '#model/installation.ts';
import type { JobEdit } from '../job-events.ts';
import { putCertainty } from './facts.ts';
import { markable } from './marked.ts';
import { addFoundPoints, addPoints, type NewPoint } from './points.ts';

/** A cable of its own that was found from one point to another. */
export interface FoundSpur {
  readonly legId: string;
  readonly circuitId: string;
  readonly from: Pick<Point, 'id' | 'label' | 'kind'>;
  readonly to: Pick<Point, 'id' | 'label'>;
  /** Where it is known. */
  readonly cable: Cable | null;
}

/** Of a fused unit what hangs on it hangs behind its fuse. */
const fromEnd = ({ id, kind }: FoundSpur['from']): End =>
  kind === 'fused-unit' ? { point: id, side: 'load' } : { point: id };

/** Adds the cable of a spur, to a point that is there; that point is of the circuit from then on. */
export const addFoundSpur = ({ legId, circuitId, from, to, cable }: FoundSpur): JobEdit => ({
  label: `Spur from ${from.label} to ${to.label}`,
  change: (job) => {
    const end = job.points.find(({ id }) => id === to.id);
    if (end === undefined || !job.points.some(({ id }) => id === from.id)) return;
    const leg: Leg = { id: legId, circuit: circuitId, from: fromEnd(from), to: { point: to.id } };
    job.legs.push(cable === null ? leg : { ...leg, cable: structuredClone(cable) });
    end.circuit = circuitId;
  },
});

/** Adds a point with the cable of the spur that it hangs on, to be marked as the person knows the point. */
export function addPointOnSpur(point: NewPoint, spur: FoundSpur): JobEdit {
  const added = addFoundPoints([point]);
  const { label, change } = addFoundSpur(spur);
  return {
    ...added,
    label,
    change: (job) => {
      added.change(job);
      change(job);
    },
  };
}

/** A joint that was found in a cable. */
export interface FoundJoint {
  readonly point: Pick<Point, 'id' | 'label'> & { readonly place: Place };
  /** Of the cable's further part; the nearer one goes on under the name of the whole. */
  readonly legId: string;
}

/**
 * Parts a cable at a joint that was found in it. Its length and its way were those of the whole, so that neither part has them;
 * what is known of the cable itself is true of both.
 */
export const addFoundJoint = (leg: Pick<Leg, 'id' | 'circuit'>, { point, legId }: FoundJoint): JobEdit =>
  markable(
    {
      label: `Joint ${point.label} in a cable`,
      change: (job) => {
        const whole = job.legs.find(({ id }) => id === leg.id);
        if (whole === undefined) return;
        addPoints([{ ...point, status: 'existing', kind: 'joint', circuit: leg.circuit }]).change(job);
        const further: Leg = { ...whole, id: legId, from: { point: point.id } };
        whole.to = { point: point.id };
        for (const part of [whole, further]) {
          delete part.lengthMm;
          delete part.via;
          putCertainty(part, 'length', null);
          putCertainty(part, 'route', null);
        }
        job.legs.splice(job.legs.indexOf(whole) + 1, 0, further);
      },
    },
    (certainty) => ({
      label: 'Change how sure a joint is',
      change: ({ points }) => {
        const made = points.find(({ id }) => id === point.id);
        if (made !== undefined) putCertainty(made, 'kind', certainty);
      },
    }),
  );
