import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { knownTasks } from '#engine/labour/known-tasks.ts';
import { floorPlaces } from '#engine/work/floors/floor-places.ts';
import { groupOf, taskGroups } from '#engine/work/task-groups.ts';
import { allSteps, type TaskPart, taskList } from '#engine/work/task-list.ts';
import { testSteps } from '#engine/work/test-steps.ts';
import type { Job } from '#model/job.ts';
import { demoEstimate, demoJob, demoNames, estimateOf, schemeOf } from '../demo-jobs/demo-estimates.ts';
import { firstWorked } from './worked-schemes.ts';

const schemes = demoNames.flatMap((name) =>
  demoEstimate(name).schemes.map((scheme) => ({ name: `${name} ${scheme.id}`, scheme })),
);

const idsOf = (parts: readonly TaskPart[]): readonly string[] =>
  parts.flatMap(({ tasks }) => tasks.map(({ id }) => id));
/** With what is reckoned as a whole. */
const allOf = (parts: readonly TaskPart[]) => parts.flatMap(({ tasks, reckoned }) => [...tasks, ...reckoned]);

/** What has to come before what. The order of tests: BS 7671 643.1 (dead before live); the rest common practice, no source. */
const before: readonly (readonly [RegExp, RegExp])[] = [
  [/^test-supply$/, /^prove-dead$/],
  [/^prove-dead$/, /^(?:insulation|continuity|ring)-(?:before|proved)/],
  [/^insulation-before/, /^ring-proved/],
  [/^(?:ring-proved|continuity-before)/, /^(?:connect-origin|fit-joint|fit-socket|lift-board|chase-)/],
  [/^own-neutral$/, /^fit-rcbo$/],
  [/^box-/, /^fit-socket$/],
  [/^(?:fit-(?:socket|joint|fused|flex|switch|cooker)|connect-origin|extra-cable)/, /^continuity-after/],
  // The ends are parted for these; what has electronics is connected once they are passed.
  [
    /^insulation-after/,
    /^(?:fit-(?:rcbo|new-way|board|rcd-enclosure)|connect-at-board|exchange-device|move-neutral)/,
  ],
  [/^(?:fit-rcbo|connect-at-board)/, /^supply-after$/],
  [/^settle$/, /^test-supply$/],
  [/^trace-services$/, /^(?:chase-|lift-board|drill-)/],
  [/^(?:lift-board|chipboard-trap|open-fixed-floor)$/, /^tell-apart$/],
  [/^tell-apart$/, /^fit-joint$/],
  [/^inspect$/, /^continuity-after/],
  [/^photograph-joints$/, /^relay-floors$/],
  [/^seal-/, /^(?:relay-floors|fill-)/],
  [/^continuity-after/, /^insulation-after/],
  [/^insulation-after/, /^supply-after$/],
  [/^supply-after$/, /^live-after/],
  [/^live-after/, /certificate$/],
  [/^photograph-joints$/, /^fill-/],
];

describe.each(schemes)('the tasks of $name', ({ scheme }) => {
  const parts = taskList(scheme);
  const ids = idsOf(parts);

  it('are all that is priced and may come, each once, and the tests', () => {
    const priced = scheme.labour.filter(({ highQuantity }) => highQuantity > 0).map(({ task }) => task);
    const steps = allSteps(scheme).map(({ id }) => id);
    expect(
      allOf(parts)
        .map(({ id }) => id)
        .toSorted(),
    ).toEqual([...priced, ...steps].toSorted());
    for (const { id, amount } of allOf(parts)) {
      const labour = scheme.labour.find(({ task }) => task === id);
      expect(amount?.typicalMin).toBe(labour?.typicalMin);
    }
  });

  it('come in the order of the work: what has to come first does', () => {
    for (const [first, next] of before) {
      const last = ids.findLastIndex((id) => first.test(id));
      const soonest = ids.findIndex((id) => next.test(id));
      if (last >= 0 && soonest >= 0) expect(last, `${first} before ${next}`).toBeLessThan(soonest);
    }
    const order = parts.map(({ group }) => taskGroups.indexOf(group));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });

  it('hold the work at supply, dead, insulation and the tests after it, and at the ring where there is one', () => {
    const holds = parts.flatMap(({ tasks }) => tasks.filter(({ hold }) => hold !== null).map(({ id }) => id));
    expect(holds).toContain('test-supply');
    expect(holds).toContain('prove-dead');
    for (const id of scheme.worked.circuitIds) {
      expect(holds).toContain(`live-after/${id}`);
      const found = scheme.worked.foundShapes.get(id);
      if (found === undefined) continue;
      expect(holds).toContain(`insulation-before/${id}`);
      const isRing = found.shape === 'ring' || found.claimed === 'ring';
      expect(holds.includes(`ring-proved/${id}`)).toBe(isRing);
    }
  });

  it('name what they are done to as all papers do, never by an id', () => {
    const ids = new Set(
      [...scheme.worked.proposed.edges, ...scheme.worked.proposed.nodes].map(({ id }) => id),
    );
    for (const mark of parts.flatMap(({ tasks }) => tasks.flatMap(({ marks }) => marks))) {
      expect(mark).not.toBe('');
      expect(ids.has(mark)).toBe(false);
    }
  });
});

describe('what is settled and closed on site', () => {
  const stepsOf = (name: (typeof demoNames)[number], id: string) =>
    allSteps(schemeOf(demoEstimate(name), id)).map((each) => each.id);

  it('is told where it is wanted: a ring that is cut, joists that may not be, floors, notice, labels', () => {
    expect(stepsOf('saltglass-row', 'spurs-rcbo')).toEqual(
      expect.arrayContaining(['settle', 'trace-services', 'tell-apart', 'inspect', 'relay-floors', 'label']),
    );
    expect(stepsOf('saltglass-row', 'spurs-rcbo')).not.toContain('joists-barred');
    expect(stepsOf('fernlow-close', 'fused-unit')).toEqual(
      expect.arrayContaining(['joists-barred', 'notify']),
    );
    expect(stepsOf('quarrel-court', 'heater-w2b')).not.toContain('relay-floors');
    expect(stepsOf('quarrel-court', 'heater-w2b')).not.toContain('label');
  });

  it('is not asked where nothing is open', () => {
    const scheme = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
    const passed = scheme.findings.map((finding) => ({ ...finding, outcome: 'passes' as const }));
    expect(allSteps({ ...scheme, findings: passed }).map(({ id }) => id)).not.toContain('settle');
  });
});

describe('what goes through walls, floors and ceilings', () => {
  const taskOf = (name: (typeof demoNames)[number], id: string, task: string) =>
    taskList(schemeOf(demoEstimate(name), id))
      .flatMap(({ tasks }) => tasks)
      .find((each) => each.id === task);

  it('is closed before floors and walls are: at party walls to their rating, inside by what goes through', () => {
    expect(taskOf('saltglass-row', 'spurs-rcbo', 'seal-party-walls')).toMatchObject({
      marks: expect.arrayContaining(['R8', 'W4']),
      hold: expect.stringMatching(/Else it is not covered/),
    });
    expect(taskOf('saltglass-row', 'spurs-rcbo', 'seal-openings')?.marks).toEqual(['K1', 'K2', 'K3']);
    // Only K1 goes through a wall there; K2 and K3 stay in the face of theirs.
    expect(taskOf('fernlow-close', 'new-radial', 'seal-openings')?.marks).toEqual(['K1']);
    expect(taskOf('quarrel-court', 'heater-w2b', 'seal-outside')).toBeUndefined();
  });
});

describe('a board on dabs', () => {
  it('is cut along cable in its gap, and no block is said to be chased there', () => {
    const { worked, labour } = schemeOf(demoEstimate('fernlow-close'), 'new-radial');
    const chases = worked.runs.flatMap(({ segments, cuts }) =>
      segments.flatMap(({ medium, lengthMm }, i) =>
        medium === 'wall-chase' ? [{ lengthMm, isBehind: cuts[i]?.chase?.isBehindBoard }] : [],
      ),
    );
    const metresOf = (isBehind: boolean) =>
      chases.filter((each) => each.isBehind === isBehind).reduce((sum, { lengthMm }) => sum + lengthMm, 0) /
      1000;
    const quantity = (task: string) => labour.find((each) => each.task === task)?.quantity ?? 0;
    expect(metresOf(true)).toBeGreaterThan(0);
    expect(quantity('chase-board')).toBeCloseTo(metresOf(true), 0);
    expect(quantity('chase-block') > 0).toBe(metresOf(false) > 0);
    const steps = worked.runs.flatMap((run) => run.steps);
    expect(
      steps.filter((words) => /chased into/.test(words) && /not cut|the masonry not/.test(words)),
    ).toEqual([]);
  });
});

describe('a joist that may not be cut', () => {
  it.each(schemes)(
    'is never told to be drilled in $name: it is settled, and reckoned as that',
    ({ scheme }) => {
      const parts = taskList(scheme);
      const { joists } = floorPlaces(scheme.worked);
      const of = (judged: readonly string[]): number =>
        joists.filter(({ hole }) => judged.includes(hole.judged)).length;
      const amountOf = (id: string): number =>
        allOf(parts).find((each) => each.id === id)?.amount?.quantity ?? 0;
      expect(amountOf('drill-joist')).toBe(of(['hole', 'unknown']));
      expect(amountOf('barred-joist')).toBe(of(['neither']));
      expect(idsOf(parts)).not.toContain('barred-joist');
      expect(idsOf(parts).includes('joists-barred')).toBe(of(['neither']) > 0);
    },
  );
});

describe('the tasks of the terrace', () => {
  it('say for which cables boards come up and where boxes go, and stop a ring that is not proved', () => {
    const parts = taskList(schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo'));
    const taskOf = (id: string) => parts.flatMap(({ tasks }) => tasks).find((each) => each.id === id);
    expect(taskOf('lift-board')).toMatchObject({ marks: ['K1', 'K2', 'K3'], amount: { quantity: 6 } });
    expect(taskOf('box-block-twin')?.marks).toEqual(['R6', 'R8', 'W1', 'W2']);
    expect(taskOf('ring-proved/ring-house')?.hold).toMatch(/^Ring proved: .* Else stop/);
  });

  it('ask for other sources where nobody has said that there are none, and part them where there are some', () => {
    const job = demoJob('saltglass-row');
    const withSources = (supply: Partial<Job['supply']>) =>
      testSteps(firstWorked({ ...job, supply: { ...job.supply, ...supply } })).find(
        ({ id }) => id === 'other-sources',
      )?.words;
    expect(withSources({ otherSources: ['pv'] })).toMatch(/^Isolate every other source/);
    expect(withSources({ otherSources: [], certainty: {} })).toMatch(/^Look for other sources/);
    expect(withSources({ otherSources: [], certainty: { otherSources: 'seen' } })).toContain(
      'the survey names none',
    );
  });

  it('have work that is not on the drawing where its stage is', () => {
    const job = demoJob('saltglass-row');
    const extra = { id: 'e1', words: 'Fit a doorbell', typicalMin: 20 };
    const [scheme] = estimateOf({ ...job, extras: [extra] }).schemes;
    const parts = scheme === undefined ? [] : taskList(scheme);
    expect(parts.find(({ tasks }) => tasks.some(({ words }) => words === 'Fit a doorbell'))?.group).toBe(
      'run',
    );
  });
});

describe('every kind of work', () => {
  it('has its part of the job, in the order of its stage', () => {
    fc.assert(
      fc.property(fc.constantFrom(...knownTasks), (task) => {
        expect(taskGroups).toContain(groupOf({ task: task.id, stage: task.stage }));
      }),
    );
    const groupsAt = (stage: string) =>
      new Set(
        knownTasks
          .filter((each) => each.stage === stage)
          .map(({ id, stage: at }) => groupOf({ task: id, stage: at })),
      );
    expect([...groupsAt('test')].toSorted()).toEqual(['dead-tests', 'record']);
    expect([...groupsAt('after')]).toEqual(['close']);
  });
});
