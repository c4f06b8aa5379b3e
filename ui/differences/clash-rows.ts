import { endWords } from '#drawing/end-words.ts';
import { isSameData } from '#engine/plan/same-data.ts';
import type { Job } from '#model/job.ts';
import type { Clash, JobMerge } from '../merging/merge-jobs.ts';
import { type Atom, ORDER, type Side } from '../merging/three-states.ts';
import { counted } from '../written.ts';
import { type Difference, differenceWords, type Wording } from './difference-words.ts';
import { fieldWords } from './field-words.ts';
import { jobWording } from './job-wording.ts';
import { namesOf, type ThingNames } from './thing-names.ts';

/** One row of what two people changed unlike, in plain words; it is decided as a whole. */
export interface ClashRow extends Pick<Difference, 'thing' | 'field' | 'mine' | 'theirs'> {
  /** What a decision names it by. */
  readonly key: string;
  /** What else goes with the decision: things, and fields of the same thing. */
  readonly also: readonly string[];
}

/** More cables than these are counted, not named. */
const MOST_CABLES = 8;

type Told = Pick<ClashRow, 'thing' | 'field' | 'mine' | 'theirs'>;

/** How a storey is drawn, by what a glance at either plan tells. */
function drawingTold(storeyId: string, { of }: JobMerge, names: ThingNames): Told {
  const words = (job: Job): string => {
    const storey = job.storeys.find(({ id }) => id === storeyId);
    if (storey === undefined) return 'not there';
    return `${counted(storey.walls.length, 'wall')}, ${counted(storey.rooms.length, 'room')}`;
  };
  const [mine, theirs] = [words(of.mine), words(of.theirs)];
  return {
    thing: names.get(storeyId) ?? '',
    field: 'how it is drawn',
    mine: `as drawn here: ${mine}`,
    theirs: `as drawn there: ${theirs}`,
  };
}

function cablesTold(circuitId: string, { of }: JobMerge, names: ThingNames): Told {
  const labelOf = (id: string): string => names.get(id) ?? id;
  const words = (job: Job): string => {
    const legs = job.legs.filter(({ circuit }) => circuit === circuitId);
    if (legs.length === 0) return 'none';
    if (legs.length > MOST_CABLES) return counted(legs.length, 'cable');
    return legs.map(({ from, to }) => `${endWords(from, labelOf)}–${endWords(to, labelOf)}`).join(', ');
  };
  const [mine, theirs] = [words(of.mine), words(of.theirs)];
  return {
    thing: names.get(circuitId) ?? '',
    field: 'where its cables go',
    mine: `as recorded here: ${mine}`,
    theirs: `as recorded there: ${theirs}`,
  };
}

function orderTold({ path, mine, theirs }: Atom, names: ThingNames, wording: Wording): Told {
  const words = (keys: unknown): string =>
    Array.isArray(keys) ? keys.map((key) => names.get(key) ?? key).join(', ') : '';
  const list = path.slice(0, -1);
  const thing = list.length < 2 ? 'Job' : wording.thing(list).name;
  return {
    thing,
    field: `order of ${fieldWords(list.at(-1) ?? '')}`,
    mine: words(mine),
    theirs: words(theirs),
  };
}

/** How sure each side is of the fact that a clash is about; null where that is no part of it. */
function suretyOf({ path, parts }: Clash): Readonly<Record<Side, string>> | null {
  const owner = path.slice(0, -1);
  const names = [path.at(-1) ?? '', (path.at(-1) ?? '').replace(/Mm$/, '')];
  const part = parts.find(
    ({ path: at }) =>
      at.at(-2) === 'certainty' && isSameData(at.slice(0, -2), owner) && names.includes(at.at(-1) ?? ''),
  );
  if (part === undefined) return null;
  return { mine: String(part.mine ?? 'seen'), theirs: String(part.theirs ?? 'seen') };
}

function fieldsTold(clash: Clash, wording: Wording): Told {
  const told = differenceWords(clash, 'both', wording);
  const sure = suretyOf(clash);
  if (sure === null) return told;
  return { ...told, mine: `${told.mine} (${sure.mine})`, theirs: `${told.theirs} (${sure.theirs})` };
}

function toldOf(clash: Clash, merge: JobMerge, names: ThingNames, wording: Wording): Told {
  const { about, path } = clash;
  if (about.kind === 'drawing') return drawingTold(about.storeyId, merge, names);
  if (about.kind === 'cables') return cablesTold(about.circuitId, merge, names);
  return path.at(-1) === ORDER ? orderTold(clash, names, wording) : fieldsTold(clash, wording);
}

/** Whether a part needs no word beside its row. */
function isTold({ about, key }: Clash, { path, key: own }: Atom): boolean {
  if (own === key || path.includes('certainty') || path.at(-1)?.startsWith('(')) return true;
  if (about.kind === 'drawing') return path[0] === 'storeys' && path[1] === about.storeyId;
  return about.kind === 'cables' && path[0] === 'legs';
}

function alsoOf(clash: Clash, told: Told, wording: Wording): readonly string[] {
  const words = clash.parts
    .filter((part) => !isTold(clash, part))
    .map(({ path }) => {
      const { name, steps } = wording.thing(path);
      return name === told.thing ? path.slice(steps).map(fieldWords).join(': ') : name;
    });
  return [...new Set(words)].filter((word) => word !== '' && word !== told.field);
}

/** What two people changed unlike, row by row in plain words, in the order of the job file. */
export function clashRows(merge: JobMerge): readonly ClashRow[] {
  if (merge.clashes.length === 0) return [];
  const { mine, theirs } = merge.of;
  const [names, wording] = [namesOf(mine, theirs), jobWording(mine, theirs)];
  return merge.clashes.map((clash) => {
    const told = toldOf(clash, merge, names, wording);
    const { thing, field, mine: here, theirs: there } = told;
    return { key: clash.key, thing, field, mine: here, theirs: there, also: alsoOf(clash, told, wording) };
  });
}
