import { describe, expect, it } from 'vitest';
import { contingencyPercentOf, surveyGapsOf } from '#engine/price/survey-gaps-of.ts';
import {
  box,
  demoJob,
  emptyWorked,
  runOf,
  stretch,
  workedDemo,
  workedWith,
} from '#tests/engine/labour/labour-material.ts';

const unknownBox = box('r1', { action: 'unknown' });
const assumed = runOf('r', [stretch({ certainty: 'assumed' })]);
const pinned = runOf('r', [
  stretch({ certainty: 'pinned', lengthMm: 1000 }),
  stretch({ certainty: 'assumed', lengthMm: 999 }),
]);

describe('what is set aside by the gaps of a survey', () => {
  it('grows by 5 % a gap, to 15 %', () => {
    const all = ['circuits', 'lengths', 'ways', 'boxes', 'floors'] as const;
    expect([0, 1, 2, 3, 4, 5].map((count) => contingencyPercentOf(all.slice(0, count), {}))).toEqual([
      0, 5, 10, 15, 15, 15,
    ]);
  });
});

describe('what is set aside by a firm of its own mind', () => {
  it('grows by its own share a gap, to its own most', () => {
    const all = ['circuits', 'walls', 'bonds', 'asbestos'] as const;
    const counts = { gapPercent: 2, mostGapsPercent: 7 };
    expect([0, 1, 2, 3, 4].map((count) => contingencyPercentOf(all.slice(0, count), { counts }))).toEqual([
      0, 2, 4, 6, 7,
    ]);
    expect(contingencyPercentOf(all, { counts: { gapPercent: 0 } })).toBe(0);
  });
});

describe('how open the survey is', () => {
  it('is closed when nothing is left to guess', () => {
    expect(surveyGapsOf(emptyWorked({ runs: [pinned] }))).toEqual([]);
  });

  it('counts a box of unknown depth', () => {
    expect(surveyGapsOf(workedWith({ boxes: [unknownBox] }))).toEqual(['boxes']);
  });

  it('counts a way that is assumed for half or more', () => {
    expect(surveyGapsOf(emptyWorked({ runs: [assumed] }))).toEqual(['ways']);
  });

  it('counts a run whose length nobody knows', () => {
    const unplaced = runOf('r', [], { lengthMm: null, lowMm: null, highMm: null });
    expect(surveyGapsOf(emptyWorked({ runs: [unplaced] }))).toEqual(['lengths']);
  });

  it('adds gaps up', () => {
    const two = { ...workedWith({ boxes: [unknownBox] }), runs: [assumed] };
    const unplaced = runOf('s', [], { lengthMm: null, lowMm: null, highMm: null });
    expect(surveyGapsOf(two)).toEqual(['ways', 'boxes']);
    expect(surveyGapsOf({ ...two, runs: [assumed, unplaced] })).toEqual(['lengths', 'ways', 'boxes']);
  });

  it('is wide open for the quoting visit of the demo house', () => {
    const quoting = demoJob('saltglass-row-quoting');
    const gaps = surveyGapsOf(workedDemo(quoting, 'spurs-rcbo'));
    expect(gaps).toEqual(['circuits', 'ways', 'boxes', 'floors']);
    expect(contingencyPercentOf(gaps, {})).toBe(15);
  });
});
