import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { type Decisions, decide, type JobMerge, mergeJobs } from '../../../ui/merging/merge-jobs.ts';
import { afterEdits, editSequence, editsOf } from '../edits/any-edits.ts';
import { afterWayEdits, houses, wayEditSequence } from '../edits/any-way-edits.ts';
import { edited, faultsOf } from '../edits/random-edits.ts';
import { afterDrawing, drawingSequence } from './drawing-edits.ts';
import { flatJob, linesBetween } from './flat-job.ts';

const someEdits = fc.record({
  survey: editSequence,
  ways: fc.option(wayEditSequence, { nil: [], freq: 2 }),
  drawing: fc.option(drawingSequence, { nil: [], freq: 2 }),
});
type House = (typeof houses)[number];
type Edits = typeof someEdits extends fc.Arbitrary<infer T> ? T : never;

/** What one person makes of a house. */
function changedBy(house: House, edits: Edits, who: 'm' | 't'): Job {
  const drawn = afterDrawing(house.job, edits.drawing, `${who}-drawn-`);
  const joined = afterWayEdits({ ...house, job: drawn }, edits.ways);
  return afterEdits(joined, edits.survey, who === 'm' ? 1000 : 2000);
}

/** By number, so that what a failure prints is short. */
function houseAt(which: number): House {
  const house = houses[which];
  if (house === undefined) throw new Error(`no house ${which}`);
  return house;
}

const pair = fc.record({
  which: fc.nat({ max: houses.length - 1 }),
  mine: someEdits,
  theirs: someEdits,
  decided: fc.array(fc.boolean(), { minLength: 60, maxLength: 60 }),
});

const decisionsOf = ({ clashes }: JobMerge, decided: readonly boolean[]): Decisions =>
  new Map(clashes.map(({ key }, index) => [key, decided[index % decided.length] ? 'mine' : 'theirs']));

const lists = ['points', 'legs', 'circuits', 'boards', 'readings', 'schemes', 'storeys', 'assets'] as const;
const idsOf = (job: Job, list: (typeof lists)[number]): readonly string[] => job[list].map(({ id }) => id);
const isWithin = (few: readonly string[], many: readonly string[]): boolean => {
  const common = many.filter((id) => few.includes(id));
  return JSON.stringify(common) === JSON.stringify(few.filter((id) => many.includes(id)));
};

describe('two people’s edits of one job', () => {
  it('are a job that can be read, whatever is decided', () => {
    fc.assert(
      fc.property(pair, ({ which, mine, theirs, decided }) => {
        const house = houseAt(which);
        const merge = mergeJobs(house.job, changedBy(house, mine, 'm'), changedBy(house, theirs, 't'));
        expect(faultsOf(merge.merged)).toEqual([]);
        expect(faultsOf(decide(merge, decisionsOf(merge, [true])))).toEqual([]);
        expect(faultsOf(decide(merge, decisionsOf(merge, decided)))).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  it('are exactly one’s where the other did nothing, and either’s where both did the same', () => {
    fc.assert(
      fc.property(pair, ({ which, mine }) => {
        const house = houseAt(which);
        const [base, x] = [house.job, changedBy(house, mine, 'm')];
        for (const merge of [mergeJobs(base, x, base), mergeJobs(base, base, x), mergeJobs(base, x, x)]) {
          expect(merge.clashes).toEqual([]);
          expect(merge.merged).toEqual(JSON.parse(JSON.stringify(x)));
        }
      }),
      { numRuns: 60 },
    );
  });

  it('come each from one side, and nothing is in the merged job that neither has', () => {
    fc.assert(
      fc.property(pair, ({ which, mine, theirs, decided }) => {
        const house = houseAt(which);
        const [here, there] = [changedBy(house, mine, 'm'), changedBy(house, theirs, 't')];
        const merge = mergeJobs(house.job, here, there);
        const [base, a, b] = [flatJob(house.job), flatJob(here), flatJob(there)];
        const merged = flatJob(decide(merge, decisionsOf(merge, decided)));
        const undecided = new Set(
          merge.clashes.flatMap(({ parts }) => parts.map(({ path }) => path.join('/'))),
        );
        const isUndecided = (line: string): boolean => {
          const steps = line.split('/').slice(1);
          return steps.some((_, index) => undecided.has(steps.slice(0, index + 1).join('/')));
        };
        for (const line of new Set([...base.keys(), ...a.keys(), ...b.keys(), ...merged.keys()])) {
          // Names of schemes follow what they do.
          if (/\/name$|bonding|remedies|answers/.test(line)) continue;
          const [was, x, y, z] = [base, a, b, merged].map((lines) => lines.get(line));
          if (isUndecided(line)) expect([x, y], line).toContain(z);
          else expect(z, line).toBe(x === was ? y : x);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('are exactly mine or theirs in what was decided', () => {
    fc.assert(
      fc.property(pair, ({ which, mine, theirs, decided }) => {
        const house = houseAt(which);
        const [here, there] = [changedBy(house, mine, 'm'), changedBy(house, theirs, 't')];
        const merge = mergeJobs(house.job, here, there);
        const decisions = decisionsOf(merge, decided);
        const again = mergeJobs(house.job, here, decide(merge, decisions));
        // With what was decided in the place of theirs, nothing is unlike that was decided as mine.
        const unlike = new Set(again.clashes.flatMap(({ parts }) => parts.map(({ path }) => path.join('/'))));
        for (const { key, parts } of merge.clashes)
          for (const { path } of parts)
            if (decisions.get(key) === 'mine') expect(unlike.has(path.join('/')), path.join('/')).toBe(false);
      }),
      { numRuns: 60 },
    );
  });

  it('keep the order that either list had', () => {
    fc.assert(
      fc.property(pair, ({ which, mine, theirs }) => {
        const house = houseAt(which);
        const [here, there] = [changedBy(house, mine, 'm'), changedBy(house, theirs, 't')];
        const { merged, clashes } = mergeJobs(house.job, here, there);
        for (const list of lists) {
          if (clashes.some(({ parts }) => parts.some(({ path }) => path[0] === list))) continue;
          const now = idsOf(merged, list);
          const isReordered = !isWithin(idsOf(house.job, list), idsOf(here, list));
          expect(isWithin(now, idsOf(isReordered ? here : there, list)), list).toBe(true);
          const added = idsOf(here, list).filter((id) => !idsOf(house.job, list).includes(id));
          expect(isWithin(added, now), list).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** How each storey is drawn: its walls, where they run, and what bounds its rooms. */
const drawings = ({ storeys }: Job): ReadonlyMap<string, string> =>
  new Map(
    storeys.map(({ id, walls, rooms }) => [
      id,
      JSON.stringify([
        walls.map((wall) => JSON.stringify([wall.id, wall.from, wall.to])).sort(),
        rooms.map((room) => JSON.stringify([room.id, room.walls])).sort(),
      ]),
    ]),
  );

/** What is said of the supply, each fact with how sure it is. */
const surveyed = ({ supply }: Job): ReadonlyMap<string, string> =>
  new Map(
    (['zeOhm', 'pfcKA', 'earthing'] as const).map((fact) => [
      fact,
      JSON.stringify([supply[fact] ?? null, supply.certainty?.[fact] ?? null]),
    ]),
  );

const wordsOfCables = (legs: Job['legs'], circuitId: string): string =>
  JSON.stringify(
    legs
      .filter(({ circuit }) => circuit === circuitId)
      .map((leg) => [leg.id, leg.from, leg.to])
      .sort(),
  );

/** The cables of each circuit, by where they go. */
const cabling = ({ legs, circuits }: Job): ReadonlyMap<string, string> =>
  new Map(circuits.map(({ id }) => [id, wordsOfCables(legs, id)]));

/** The cables that one person gave a circuit that the other does not have, but for those to what the other took away. */
function cablesLeft(side: Job, merged: Job, circuitId: string): string {
  const ids = new Set([...merged.points, ...merged.boards].map(({ id }) => id));
  const stands = (end: Job['legs'][number]['from']): boolean =>
    Object.entries(end).every(([what, id]) => !['point', 'board'].includes(what) || ids.has(String(id)));
  return wordsOfCables(
    side.legs.filter(({ from, to }) => stands(from) && stands(to)),
    circuitId,
  );
}

function recabled(before: Job, after: Job): readonly string[] {
  const was = cabling(before);
  return [...cabling(after)].filter(([id, cables]) => was.get(id) !== cables).map(([id]) => id);
}

/** The thing that a line is of, or the field where it is of none: coarser than what the merge tells apart. */
const thingOf = (line: string): string => line.replace('/certainty/', '/').split('/').slice(0, 3).join('/');

describe('a merged job', () => {
  it('has no storey that is drawn half one way and half the other, no such circuit, and no such fact', () => {
    const seen = { both: 0 };
    fc.assert(
      fc.property(pair, ({ which, mine, theirs, decided }) => {
        const house = houseAt(which);
        const [here, there] = [changedBy(house, mine, 'm'), changedBy(house, theirs, 't')];
        const merge = mergeJobs(house.job, here, there);
        const merged = decide(merge, decisionsOf(merge, decided));
        for (const wholes of [drawings, cabling, surveyed]) {
          const [base, a, b] = [wholes(house.job), wholes(here), wholes(there)];
          for (const [id, whole] of wholes(merged)) {
            const sides = [a.get(id), b.get(id)];
            if (sides.every((side) => side !== base.get(id))) seen.both++;
            const alone = [here, there].filter((_, i) => sides[1 - i] === undefined);
            const left = wholes === cabling ? alone.map((side) => cablesLeft(side, merged, id)) : [];
            expect([...sides, ...left], id).toContain(whole);
          }
        }
      }),
      { numRuns: 400 },
    );
    expect(seen.both).toBeGreaterThan(40);
  });
});

describe('edits of different things', () => {
  it('come to what both lists of edits make of the job, in either order, and nobody is asked', () => {
    let compared = 0;
    const few = fc.array(
      fc.tuple(fc.nat(200), fc.nat({ max: 10_000 }), fc.nat({ max: 10_000 }), fc.nat({ max: 10_000 })),
      { minLength: 1, maxLength: 4 },
    );
    fc.assert(
      fc.property(fc.nat({ max: houses.length - 1 }), few, few, (which, listA, listB) => {
        const base = houseAt(which).job;
        const [a, b] = [editsOf(base, listA, 1000), editsOf(base, listB, 2000)];
        const things = [a, b].map(({ job }) => new Set([...linesBetween(base, job)].map(thingOf)));
        const [ofA = new Set<string>(), ofB = new Set<string>()] = things;
        if ([...ofA].some((thing) => ofB.has(thing)) || ofA.size === 0 || ofB.size === 0) return;
        const circuits = recabled(base, b.job);
        if (recabled(base, a.job).some((id) => circuits.includes(id))) return;
        const [both, turned] = [edited(a.job, ...b.edits), edited(b.job, ...a.edits)];
        if (linesBetween(both, turned).size > 0 || faultsOf(both).length > 0) return;
        compared++;
        const [merge, swapped] = [mergeJobs(base, a.job, b.job), mergeJobs(base, b.job, a.job)];
        expect(merge.clashes.map(({ path }) => path.join('/'))).toEqual([]);
        expect([...linesBetween(both, merge.merged)]).toEqual([]);
        expect([...linesBetween(swapped.merged, merge.merged)]).toEqual([]);
      }),
      { numRuns: 150 },
    );
    // The property is of something.
    expect(compared).toBeGreaterThan(30);
  });
});
