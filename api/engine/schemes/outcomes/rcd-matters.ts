import type { Job } from '#model/job.ts';
import type { Remedy, Scheme } from '#model/scheme.ts';
import type { Worked } from '../../connections/worked.ts';
import { circuitRcd } from '../../proof/rcd-cover.ts';
import { rcbosIfNone } from '../../rules/rcbos-if-none.ts';
import { boardsWithUnknownRcbo } from '../../rules/unknown-rcbo.ts';
import { type House, workScheme } from '../work-scheme.ts';
import type { OpenMatter, OpenOutcome } from './open-matter.ts';

/** The boards whose maker may not sell the RCBO that the scheme counts on; by id. */
export function rcboMatters(worked: Worked): readonly OpenMatter[] {
  const { job } = worked;
  return boardsWithUnknownRcbo(worked).map((boardId): OpenMatter => {
    const label = job.boards.find(({ id }) => id === boardId)?.label ?? boardId;
    const circuitIds = job.circuits.filter(({ board }) => board === boardId).map(({ id }) => id);
    const isFor = ({ kind, at }: Remedy): boolean =>
      kind === 'rcbo' && (at === undefined || at === boardId || circuitIds.includes(at));
    return {
      id: `rcbo/${boardId}`,
      kind: 'rcbo',
      subjects: [boardId],
      words: `Can an RCBO that fits be had for ${label}?`,
      outcomes: [
        { id: 'rcbo', words: 'Yes: the RCBO goes into the board', change: {} },
        {
          id: 'enclosure',
          words: 'No: an RCD in an enclosure beside the board',
          change: {
            scheme: (scheme) => withRemedies(scheme, (one) => (isFor(one) ? enclosureFor(one) : one)),
          },
        },
      ],
    };
  });
}

const withRemedies = (scheme: Scheme, change: (remedy: Remedy) => Remedy): Scheme => ({
  ...scheme,
  remedies: scheme.remedies.map(change),
});

const enclosureFor = (remedy: Remedy): Remedy => ({ ...remedy, kind: 'rcd-enclosure' });

/** The circuits that nobody knows of whether they have an RCD, where that decides what is fitted; by id. */
export function rcdMatters(house: House, worked: Worked): readonly OpenMatter[] {
  const matters = [...withoutRcd(house, worked), ...withRcbo(worked)];
  return matters.toSorted((a, b) => (a.id < b.id ? -1 : 1));
}

const circuitName = ({ circuits }: Job, circuitId: string): string =>
  circuits.find(({ id }) => id === circuitId)?.name ?? circuitId;

const headOf = (job: Job, circuitId: string): Pick<OpenMatter, 'id' | 'kind' | 'subjects' | 'words'> => ({
  id: `rcd/${circuitId}`,
  kind: 'rcd',
  subjects: [circuitId],
  words: `Is ${circuitName(job, circuitId)} behind an RCD of 30 mA already?`,
});

const added = (scheme: Scheme, remedy: Remedy): Scheme => ({
  ...scheme,
  remedies: [...scheme.remedies, remedy],
});

/** Circuits that the scheme fits no RCD for, and of which nobody knows for sure whether they have one. */
function withoutRcd(house: House, worked: Worked): readonly OpenMatter[] {
  const { scheme, job } = worked;
  if (scheme === null) return [];
  return rcbosIfNone(worked).flatMap((fix): readonly OpenMatter[] => {
    const circuitId = fix.at;
    if (circuitId === undefined) return [];
    const isUnsure = boardsWithUnknownRcbo(workScheme(house, added(scheme, fix), worked.runs)).length > 0;
    const enclosure: OpenOutcome = {
      id: 'enclosure',
      words: 'No, and no RCBO can be had: an RCD in an enclosure beside the board',
      change: { scheme: (one) => added(one, enclosureFor(fix)) },
    };
    return [
      {
        ...headOf(job, circuitId),
        outcomes: [
          { id: 'there', words: 'Yes: nothing is fitted', change: {} },
          { id: 'none', words: 'No: an RCBO in the board', change: { scheme: (one) => added(one, fix) } },
          ...(isUnsure ? [enclosure] : []),
        ],
      },
    ];
  });
}

/** Circuits that the scheme fits an RCD for, and of which nobody knows whether they are behind one. */
function withRcbo(worked: Worked): readonly OpenMatter[] {
  const { scheme, job } = worked;
  const asFound = { ...worked, scheme: null, proposed: worked.found };
  const fitted = (scheme?.remedies ?? []).filter(({ kind }) => kind === 'rcbo' || kind === 'rcd-enclosure');
  return fitted.flatMap(({ kind, at }): readonly OpenMatter[] => {
    if (at === undefined || !job.circuits.some(({ id }) => id === at)) return [];
    const { state } = circuitRcd(asFound, at);
    if (state !== 'unknown' && state !== 'assumed-none') return [];
    const isIt = (remedy: Remedy): boolean =>
      (remedy.kind === 'rcbo' || remedy.kind === 'rcd-enclosure') && (remedy.at ?? at) === at;
    const without = (one: Scheme): Scheme => ({
      ...one,
      remedies: one.remedies.filter((remedy) => !isIt(remedy)),
    });
    const words = kind === 'rcbo' ? 'No: the RCBO is fitted' : 'No: the RCD is fitted';
    return [
      {
        ...headOf(job, at),
        outcomes: [
          { id: 'none', words, change: {} },
          { id: 'there', words: 'Yes, of 30 mA: nothing is fitted', change: { scheme: without } },
        ],
      },
    ];
  });
}
