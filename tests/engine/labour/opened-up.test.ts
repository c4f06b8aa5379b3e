import { describe, expect, it } from 'vitest';
import { demoLibrary } from '#data/catalogue/demo-library.ts';
import { openedUp } from '#engine/labour/opened-up.ts';

describe('what of a house is opened', () => {
  it('counts holes and openings in floors, each by the tasks that make them, and nothing else', () => {
    const tasks = ['drill-joist', 'notch-joist', 'drill-stud', 'drill-wall', 'lift-board', 'chipboard-trap'];
    const labour = [...tasks, 'open-fixed-floor', 'cut-chase', 'lay-cable'].map((task, i) => ({
      task,
      quantity: i + 1,
    }));
    expect(openedUp(labour)).toEqual({ holes: 1 + 2 + 3 + 4, boards: 5 + 6 + 7 });
    expect(openedUp([])).toEqual({ holes: 0, boards: 0 });
  });

  it('knows no task that the norms do not', () => {
    const known = JSON.stringify(demoLibrary());
    for (const task of ['drill-joist', 'notch-joist', 'drill-stud', 'drill-wall', 'lift-board'])
      expect(known).toContain(`"${task}"`);
    for (const task of ['chipboard-trap', 'open-fixed-floor']) expect(known).toContain(`"${task}"`);
  });
});
