import { describe, expect, it } from 'vitest';
import { surveyOpenness } from '#engine/price/survey-openness.ts';
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

describe('how open the survey is', () => {
  it('is closed when nothing is left to guess', () => {
    expect(surveyOpenness(emptyWorked({ runs: [pinned] }))).toBe('closed');
  });

  it('counts a box of unknown depth', () => {
    expect(surveyOpenness(workedWith({ boxes: [unknownBox] }))).toBe('slightly-open');
  });

  it('counts a way that is assumed for half or more', () => {
    expect(surveyOpenness(emptyWorked({ runs: [assumed] }))).toBe('slightly-open');
  });

  it('counts a run whose length nobody knows', () => {
    const unplaced = runOf('r', [], { lengthMm: null, lowMm: null, highMm: null });
    expect(surveyOpenness(emptyWorked({ runs: [unplaced] }))).toBe('slightly-open');
  });

  it('adds gaps up', () => {
    const two = { ...workedWith({ boxes: [unknownBox] }), runs: [assumed] };
    const unplaced = runOf('s', [], { lengthMm: null, lowMm: null, highMm: null });
    expect(surveyOpenness(two)).toBe('open');
    expect(surveyOpenness({ ...two, runs: [assumed, unplaced] })).toBe('wide-open');
  });

  it('is wide open for the quoting visit of the demo house', () => {
    const quoting = demoJob('saltglass-row-quoting');
    expect(surveyOpenness(workedDemo(quoting, 'spurs-rcbo'))).toBe('wide-open');
  });
});
