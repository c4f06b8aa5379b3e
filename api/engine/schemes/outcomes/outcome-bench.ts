import type { Job } from '#model/job.ts';
import type { Library } from '#model/library.ts';
import type { Scheme } from '#model/scheme.ts';
import type { Worked } from '../../connections/worked.ts';
import { once } from '../../plan/once.ts';
import { kitCountsOf } from '../../takeoff/kit-counts.ts';
import type { TakeoffLine } from '../../takeoff/line.ts';
import { takeOff } from '../../takeoff/take-off.ts';
import type { Run } from '../../ways/run.ts';
import { type House, sameHouse, workHouse, workScheme } from '../work-scheme.ts';
import type { MatterKind, OpenOutcome } from './open-matter.ts';

/** An outcome that has come true, with what it is of. */
export interface Turned {
  readonly matterId: string;
  readonly kind: MatterKind;
  readonly outcome: OpenOutcome;
}

/** Works schemes out as they would be, had matters turned out so: each combination once. */
export interface OutcomeBench {
  /** The scheme by the very stages that price every scheme. */
  readonly workedAs: (scheme: Scheme, turned: readonly Turned[]) => Worked;
  /** What it takes then. */
  readonly takeoffAs: (scheme: Scheme, turned: readonly Turned[]) => readonly TakeoffLine[];
}

const kindsThatMoveCable: readonly MatterKind[] = ['floor', 'spur'];

const keyOf = (turned: readonly Turned[]): string =>
  turned
    .map(({ matterId, outcome }) => `${matterId}=${outcome.id}`)
    .toSorted()
    .join(' ');

/** What is worked out in a house, kept as long as the bench. */
export function outcomeBench(house: House, library: Library): OutcomeBench {
  const houses = new Map<string, House>();
  const schemes = new Map<string, Scheme>();
  const laid = new Map<string, readonly Run[]>();
  const works = new Map<string, Worked>();
  const takeoffs = new Map<string, readonly TakeoffLine[]>();

  const houseAs = (turned: readonly Turned[]): House => {
    const floors = turned.filter(({ kind }) => kind === 'floor');
    const rest = turned.filter(({ kind, outcome }) => kind !== 'floor' && outcome.change.job !== undefined);
    const withFloors = once(houses, keyOf(floors), () =>
      floors.length === 0
        ? house
        : workHouse(jobAs(house.job, floors), house.tariff, house.allowances, house.firmTerms),
    );
    if (rest.length === 0) return withFloors;
    return once(houses, keyOf([...floors, ...rest]), () =>
      sameHouse(withFloors, jobAs(withFloors.job, rest)),
    );
  };

  // One object for one change, so that its wiring is remembered.
  const schemeAs = (scheme: Scheme, turned: readonly Turned[]): Scheme => {
    const changing = turned.filter(({ outcome }) => outcome.change.scheme !== undefined);
    if (changing.length === 0) return scheme;
    return once(schemes, `${scheme.id} ${keyOf(changing)}`, () =>
      changing.reduce((one, { outcome }) => outcome.change.scheme?.(one) ?? one, scheme),
    );
  };

  const runsAs = (scheme: Scheme, turned: readonly Turned[]): readonly Run[] => {
    const moving = turned.filter(({ kind }) => kindsThatMoveCable.includes(kind));
    return once(laid, `${scheme.id} ${keyOf(moving)}`, () => {
      const { runs } = workScheme(houseAs(moving), schemeAs(scheme, moving));
      return runs;
    });
  };

  const workedAs = (scheme: Scheme, turned: readonly Turned[]): Worked =>
    once(works, `${scheme.id} ${keyOf(turned)}`, () =>
      workScheme(houseAs(turned), schemeAs(scheme, turned), runsAs(scheme, turned)),
    );

  const takeoffAs = (scheme: Scheme, turned: readonly Turned[]): readonly TakeoffLine[] =>
    once(takeoffs, `${scheme.id} ${keyOf(turned)}`, () =>
      takeOff(workedAs(scheme, turned), library.norms.waste, kitCountsOf(library)),
    );

  return { workedAs, takeoffAs };
}

const jobAs = (job: Job, turned: readonly Turned[]): Job =>
  turned.reduce((one, { outcome }) => outcome.change.job?.(one) ?? one, job);
