import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';

const norms = new Map(demoLibrary().norms.tasks.map((norm) => [norm.task, norm]));

/** Minutes of some work by the demo norms at their three levels; tasks may be named twice. */
function minutesOf(...tasks: readonly string[]) {
  const of = (key: 'lowMin' | 'typicalMin' | 'highMin') =>
    tasks.reduce((sum, task) => sum + (norms.get(task)?.[key] ?? Number.NaN), 0);
  return { lowMin: of('lowMin'), typicalMin: of('typicalMin'), highMin: of('highMin') };
}

/**
 * Norms are a default that the firm edits, from memory; no open page gives them. What can be checked is that
 * whole jobs made of them come to what pages print for whole jobs.
 */
describe('the demo norms against printed times for whole jobs', () => {
  // Source: buildingsheriff.com, "Flush sockets": a socket in a stud wall, cable at hand, one man one hour
  // (work with the tools alone: no survey, tests or papers).
  it('a socket in a stud wall with cable at hand is about an hour', () => {
    const work = minutesOf('isolate', 'box-dry-lining', 'thread-cable', 'connect-origin', 'fit-socket');
    expect(work.lowMin).toBeLessThanOrEqual(60);
    expect(work.highMin).toBeGreaterThanOrEqual(60);
    expect(work.typicalMin).toBeLessThanOrEqual(60);
  });

  // Source: the same page: a surface socket 1 m above another, in trunking, 1.5 hours; a sister page has up
  // to two hours from parking to hoovering.
  it('a surface socket one metre above another is one and a half to two hours', () => {
    const work = minutesOf(
      'set-up',
      'isolate',
      'box-surface',
      'fit-channel',
      'connect-origin',
      'fit-socket',
      'clean-up',
    );
    expect(work.typicalMin).toBeGreaterThanOrEqual(90);
    expect(work.typicalMin).toBeLessThanOrEqual(120);
  });

  // Source: consumerunitanswers.pages.dev, "Consumer unit replacement cost breakdown": four to eight hours.
  it('a new board of eight circuits is four to eight hours', () => {
    const eight = Array.from({ length: 8 }, () => 'move-circuit');
    expect(minutesOf('fit-board', ...eight)).toMatchObject({ lowMin: 240, highMin: 480 });
  });

  // Source: electrical-london.pages.dev, "How long does an EICR take": six to eight circuits in 90 to 120
  // minutes, so 12 to 20 minutes each for checking alone; an altered circuit takes more.
  it('testing an altered circuit takes no less than checking one for a report', () => {
    expect(minutesOf('test-circuit').lowMin).toBeGreaterThanOrEqual(20);
  });
});
