import { bondFact, bondsAskedAfter } from '#engine/rules/bonds.ts';
import type { SurveyAsk } from '#engine/schemes/estimate-result.ts';
import type { Wall } from '#model/building.ts';
import type { Circuit } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Certainty } from '#model/primitives.ts';
import type { JobEdit } from '../job-events.ts';
import { setAnswerCertainty } from './answers.ts';
import { setBoardCertainty } from './boards.ts';
import { setCircuitCertainty } from './circuits.ts';
import { putCertainty, putFact } from './facts.ts';
import { setBondCertainty } from './supply.ts';

/** Says that an ask cannot be told for now: it waits, whatever is known of it stays. */
export const putOffAsk = ({ id, short }: Pick<SurveyAsk, 'id' | 'short'>): JobEdit => ({
  label: `Put off: ${short}`,
  change: (job) => {
    job.answers = job.answers.filter(({ question }) => question !== id);
    job.answers.push({ question: id, value: null, certainty: 'unknown' });
  },
});

/** Takes that back: it is asked again. */
export const takeUpAsk = ({ id, short }: Pick<SurveyAsk, 'id' | 'short'>): JobEdit => ({
  label: `Ask again: ${short}`,
  change: (job) => {
    job.answers = job.answers.filter(({ question, value }) => question !== id || value !== null);
  },
});

/** The edits that say whether a circuit is behind an RCD of 30 mA, in one step: at its board, and that it is this one's. */
export function setRcdBefore(
  circuit: Pick<Circuit, 'id' | 'name' | 'board'>,
  newId: () => string,
): {
  readonly found: (word: 'there' | 'none' | null) => JobEdit;
  readonly sure: (certainty: Certainty) => JobEdit;
} {
  const board = { id: circuit.board, label: circuit.name };
  return {
    found: (word) => {
      // Made before the change runs: a change may run twice, and must do the same.
      const rcdId = newId();
      return {
        label: `RCD of ${circuit.name}`,
        change: (job) => putRcdBefore(job, circuit, { word, rcdId }),
      };
    },
    sure: (certainty) => ({
      label: `Change how sure the RCD of ${circuit.name} is`,
      change: (job) => {
        setCircuitCertainty(circuit, 'upstreamRcd', certainty).change(job);
        setBoardCertainty(board, 'rcds', certainty).change(job);
      },
    }),
  };
}

function putRcdBefore(
  { boards, circuits }: Parameters<JobEdit['change']>[0],
  { id, board: boardId }: Pick<Circuit, 'id' | 'board'>,
  { word, rcdId }: { readonly word: 'there' | 'none' | null; readonly rcdId: string },
): void {
  const circuit = circuits.find((each) => each.id === id);
  const board = boards.find((each) => each.id === boardId);
  if (circuit === undefined || board === undefined) return;
  const before = circuit.upstreamRcd;
  putFact<Circuit, 'upstreamRcd'>(circuit, 'upstreamRcd', null);
  if (word === null) {
    if (board.rcds.length === 0) putCertainty(board, 'rcds', 'unknown');
    return;
  }
  putCertainty(board, 'rcds', null);
  if (word === 'none') {
    circuit.certainty = { ...circuit.certainty, upstreamRcd: 'seen' };
    return;
  }
  const known = board.rcds.find((rcd) => rcd.id === before) ?? board.rcds.find(({ mA }) => mA <= 30);
  if (known === undefined) board.rcds.push({ id: rcdId, type: 'A', mA: 30 });
  circuit.upstreamRcd = known?.id ?? rcdId;
}

const wallsIn = ({ storeys }: Parameters<JobEdit['change']>[0], ids: readonly string[]) =>
  storeys.flatMap(({ walls }) => walls.filter(({ id }) => ids.includes(id)));

/** Sets what walls are built of; what is said so counts as seen. */
export const setWallCores = (wallIds: readonly string[], core: Wall['core']): JobEdit => ({
  label: wallIds.length === 1 ? 'What a wall is built of' : `What ${wallIds.length} walls are built of`,
  change: (job) => {
    for (const wall of wallsIn(job, wallIds)) {
      wall.core = core;
      putCertainty(wall, 'core', null);
    }
  },
});

/** Says how sure it is what walls are built of. */
export const setWallCoresCertainty = (wallIds: readonly string[], certainty: Certainty): JobEdit => ({
  label: 'Change how sure the build of walls is',
  change: (job) => {
    for (const wall of wallsIn(job, wallIds)) putCertainty(wall, 'core', certainty);
  },
});

/** What was assumed of an ask, seen to be so; null where its fields are marked at the things themselves. */
export function confirmAsk(
  job: Job,
  { id, short, fields }: Pick<SurveyAsk, 'id' | 'short' | 'fields'>,
): JobEdit | null {
  const edits = fields
    .filter(({ state }) => state === 'assumed')
    .map(({ subjectId, fact }) => seenEdit(job, { id, subjectId, fact }));
  const known = edits.flatMap((edit) => edit ?? []);
  if (known.length === 0 || known.length < edits.length) return null;
  return {
    label: `Seen: ${short}`,
    change: (draft) => {
      for (const edit of known) edit.change(draft);
    },
  };
}

interface AskedFact {
  /** Of the ask. */
  readonly id: string;
  readonly subjectId: string;
  readonly fact: string | null;
}

/** The edit that marks one assumed fact as seen; null where more than its mark is missing. */
function seenEdit(job: Job, { id, subjectId, fact }: AskedFact): JobEdit | null {
  if (fact === null) return null;
  if (fact === 'answer') return setAnswerCertainty({ id, words: id }, 'seen');
  if (fact === 'core') return setWallCoresCertainty([subjectId], 'seen');
  if (fact.startsWith('bond-')) return seenBond(job, fact);
  const circuit = job.circuits.find((one) => one.id === subjectId);
  if (fact === 'upstreamRcd')
    return circuit === undefined ? null : setRcdBefore(circuit, () => subjectId).sure('seen');
  return { label: 'Seen', change: (draft) => putSeen(draft, subjectId, fact) };
}

/** A bond whose size nobody saw is not known by a mark. */
function seenBond({ supply }: Job, fact: string): JobEdit | null {
  const service = bondsAskedAfter(supply).find((one) => bondFact(one) === fact);
  const bond = supply.bonding.find((one) => one.service === service);
  if (service === undefined || (bond?.seen === true && bond.mm2 === undefined)) return null;
  return setBondCertainty(service, 'seen');
}

/** Marks a fact of a thing as seen, by the thing's id; a plate's facts lie with its point. */
function putSeen(draft: Parameters<JobEdit['change']>[0], subjectId: string, fact: string): void {
  if (subjectId === 'supply') putCertainty(draft.supply, fact, 'seen');
  else if (subjectId === 'site') putCertainty(draft.site, fact, 'seen');
  for (const thing of [...draft.boards, ...draft.circuits])
    if (thing.id === subjectId) putCertainty(thing, fact, 'seen');
  for (const { id, floor } of draft.storeys) if (id === subjectId) putCertainty(floor, fact, 'seen');
  for (const point of draft.points) {
    if (point.id !== subjectId) continue;
    putCertainty(point, fact, 'seen');
    // What was said of the whole plate would go on counting for it.
    if (point.certainty?.asFound !== undefined) point.certainty = { ...point.certainty, [fact]: 'seen' };
  }
}
