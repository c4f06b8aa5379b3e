import { produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import type { Connection, Remedy } from '#model/scheme.ts';
import { demoEstimate, demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { addRemedy } from '../../../ui/edits/add-remedy.ts';
import { joinPoint } from '../../../ui/edits/join-point.ts';
import { removeRemedy } from '../../../ui/edits/remedies.ts';
import { freeName, plainSchemeName, tellsAll, withTrueNames } from '../../../ui/edits/scheme-names.ts';
import { addFirstTry, copyScheme } from '../../../ui/edits/schemes.ts';
import type { JobEdit } from '../../../ui/job-events.ts';

const spur = (to: string): Connection => ({ id: `c-${to}`, kind: 'spur', from: { point: 'p' }, to });
const branch: Connection = {
  id: 'c-branch',
  kind: 'fused-spur',
  from: { point: 'p' },
  unit: { fuseA: 13 },
  feeds: [
    { from: 'unit', to: 'a' },
    { from: 'a', to: 'b' },
  ],
};

const opened: Connection = {
  id: 'c-opened',
  kind: 'ring-extension',
  circuit: 'ring',
  between: [{ point: 'p' }, { point: 'q' }],
  out: { how: 'terminals' },
  back: { how: 'terminals' },
  through: ['b1-kitchen'],
};

const nameOf = (connections: readonly Connection[], remedies: readonly Remedy['kind'][] = []): string =>
  plainSchemeName({ connections, remedies: remedies.map((kind) => ({ kind })) });

describe('the plain name of a scheme', () => {
  it('tells what it is made of, in one order', () => {
    expect(nameOf([])).toBe('Nothing joined yet');
    expect(nameOf([spur('a')])).toBe('A spur');
    expect(nameOf([branch, spur('c'), spur('d')])).toBe('2 spurs and a fused branch');
    expect(nameOf([opened, spur('c'), opened])).toBe('A spur and 2 legs opened');
  });

  it('tells the remedies that it brings along too', () => {
    expect(nameOf([spur('a')], ['rcbo'])).toBe('A spur and an RCBO');
    expect(nameOf([spur('a'), branch], ['re-box', 'rcbo', 're-box'])).toBe(
      'A spur, a fused branch, an RCBO and 2 deeper boxes',
    );
    expect(nameOf([], ['bond-upgrade'])).toBe('A new main bond');
  });

  it('is told where a name of one’s own leaves something out', () => {
    const scheme = { connections: [spur('a')], remedies: [{ kind: 'rcbo' as const }] };
    expect(tellsAll({ ...scheme, name: 'A spur and an RCBO for the lounge' })).toBe(true);
    expect(tellsAll({ ...scheme, name: 'A spur' })).toBe(false);
    expect(tellsAll({ ...scheme, remedies: [], name: 'A spur and an RCBO' })).toBe(false);
  });

  it('is told apart from one that is there', () => {
    expect(freeName('A spur', ['Mine'])).toBe('A spur');
    expect(freeName('A spur', ['A spur', 'A spur 2'])).toBe('A spur 3');
  });
});

describe('names under edits', () => {
  const { worked } = demoEstimate('fernlow-close').asFound;
  const done = (job: Job, { change }: JobEdit): Job => produce(job, withTrueNames(job, change));
  const made = addFirstTry(worked, 'fused-branch');
  const begun = done(demoJob('fernlow-close'), made.edit);
  const schemeIn = (job: Job, id: string) => {
    const scheme = job.schemes.find((one) => one.id === id);
    if (scheme === undefined) throw new Error(`no scheme ${id}`);
    return scheme;
  };
  const nameIn = (job: Job, id: string): string => schemeIn(job, id).name;
  const asSpur = (job: Job, id: string): JobEdit =>
    joinPoint({ worked: { ...worked, job }, scheme: schemeIn(job, id) }, 'b3-kitchen', { by: 'spur' });

  it('follow what a first try has become', () => {
    expect(nameIn(begun, made.schemeId)).toBe('A fused branch');
    const changed = done(begun, asSpur(begun, made.schemeId));
    expect(nameIn(changed, made.schemeId)).toBe('A spur and a fused branch');
  });

  it('follow in a copy too', () => {
    const copy = copyScheme(schemeIn(begun, made.schemeId));
    const copied = done(begun, copy.edit);
    expect(nameIn(copied, copy.schemeId)).toBe('A fused branch (copy)');
    const changed = done(copied, asSpur(copied, copy.schemeId));
    expect(nameIn(changed, copy.schemeId)).toBe('A spur and a fused branch (copy)');
    expect(nameIn(changed, made.schemeId)).toBe('A fused branch');
  });

  it('follow a remedy that is taken, and one that is taken out again', () => {
    const rcbo = { kind: 'rcbo', at: 'ring' } as const;
    const taken = done(begun, addRemedy(made.schemeId, rcbo, 'RCBO'));
    expect(nameIn(taken, made.schemeId)).toBe('A fused branch and an RCBO');
    expect(nameIn(done(taken, removeRemedy(made.schemeId, rcbo)), made.schemeId)).toBe('A fused branch');
  });

  it('follow although they were made when names told no remedy', () => {
    const old = produce(begun, (draft) => {
      for (const scheme of draft.schemes)
        if (scheme.id === made.schemeId) scheme.remedies = [{ kind: 'rcbo', at: 'ring' }];
    });
    expect(nameIn(done(old, asSpur(old, made.schemeId)), made.schemeId)).toBe(
      'A spur, a fused branch and an RCBO',
    );
  });

  it('follow although they were made when a leg that is opened was always one of a ring', () => {
    const old = produce(begun, (draft) => {
      for (const scheme of draft.schemes) {
        if (scheme.id !== made.schemeId) continue;
        scheme.name = 'The ring carried on';
        scheme.connections = [opened];
      }
    });
    expect(nameIn(done(old, asSpur(old, made.schemeId)), made.schemeId)).toBe('A spur and a leg opened');
  });

  it('stay where somebody has chosen them', () => {
    const own = 'A fused branch for the lounge';
    const named = produce(begun, (draft) => {
      for (const scheme of draft.schemes) if (scheme.id === made.schemeId) scheme.name = own;
    });
    const changed = done(named, asSpur(named, made.schemeId));
    expect(schemeIn(changed, made.schemeId).connections.map(({ kind }) => kind)).toContain('spur');
    expect(nameIn(changed, made.schemeId)).toBe(own);
  });
});
