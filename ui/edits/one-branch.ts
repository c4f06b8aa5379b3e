import type { End } from '#model/cable.ts';
import type { Connection } from '#model/scheme.ts';

type Spur = Extract<Connection, { kind: 'spur' }>;

/** What several spurs hand on to the one branch that they become. */
interface HandedOn {
  /** The cable and the ways chosen by hand that the branch keeps. */
  readonly kept: Pick<Connection, 'cable' | 'runs'>;
  /** What it cannot keep, to be added to the edit's label: ", all in the cable to the first"; empty where it keeps all. */
  readonly lostWords: string;
}

/** True for two connections in the same cable; the usual one is the same as the usual one. */
export const isOfOneCable = ({ cable: one }: Connection, { cable: other }: Connection): boolean =>
  one?.type === other?.type &&
  one?.lineMm2 === other?.lineMm2 &&
  one?.cpcMm2 === other?.cpcMm2 &&
  one?.era === other?.era;

/**
 * What spurs that become one branch hand on to it: the first one's cable, since a branch has one, and the ways drawn by
 * hand between points that stay one behind the other.
 *
 * @param starts points whose cables begin where they did; the way of a spur from anywhere else is not kept.
 */
export function handedOn(spurs: readonly Spur[], starts: ReadonlySet<string>): HandedOn {
  const [first] = spurs;
  if (first === undefined) return { kept: {}, lostWords: '' };
  const stays = (end: End): boolean => 'point' in end && starts.has(end.point);
  const pinned = spurs.flatMap(({ runs }) => runs ?? []);
  const runs = pinned.filter(({ from, to }) => stays(from) && stays(to));
  const lost = [
    spurs.every((spur) => isOfOneCable(spur, first)) ? '' : ', all in the cable to the first',
    runs.length === pinned.length ? '' : ', the way to the first found anew',
  ];
  return {
    kept: {
      ...(first.cable === undefined ? {} : { cable: first.cable }),
      ...(runs.length === 0 ? {} : { runs }),
    },
    lostWords: lost.join(''),
  };
}
