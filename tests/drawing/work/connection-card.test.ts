import { describe, expect, it } from 'vitest';
import { connectionCard } from '#drawing/work/connection-card.ts';
import { oldToNew } from '#drawing/work/old-to-new.ts';
import { strippingSaid } from '#drawing/work/stripping-words.ts';
import { connectionSheet } from '#engine/work/connection-sheet.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { demoSchemes, firstWorked } from '#tests/engine/work/worked-schemes.ts';

const cardsOf = (name: Parameters<typeof demoJob>[0]) =>
  connectionSheet(firstWorked(demoJob(name))).places.filter(({ isWorkedOn }) => isWorkedOn);

describe('the cards of the terrace’s first scheme', () => {
  const places = cardsOf('saltglass-row');
  const cardOf = (mark: string) => {
    const place = places.find((each) => each.mark === mark);
    if (place === undefined) throw new Error(`no card ${mark}`);
    return connectionCard(place);
  };

  it('are of what is touched and no more: three outlets, three origins, the unit, the joint, the board', () => {
    expect(places.map(({ mark }) => mark).toSorted()).toEqual(
      ['R1', 'R6', 'R8', 'W1', 'W2', 'W3', 'W4', 'J1', 'Consumer unit'].toSorted(),
    );
    expect(places.at(-1)?.mark).toBe('Consumer unit');
  });

  it('say that R8 is re-boxed, with three cables in terminals that take three', () => {
    const { todo, holds } = cardOf('R8');
    expect(todo[0]).toMatch(/Exchange the box found for a twin one, 35 mm deep/);
    expect(holds).toContain('Each terminal: 3 of 3 conductors, 7.5 of 8 mm².');
  });

  it('say of the joint which three cables meet in it, and that nobody comes to it afterwards', () => {
    const { title, sides, todo } = cardOf('J1');
    expect(title).toBe('J1, maintenance-free joint');
    expect(sides.flatMap(({ ends }) => ends.map(({ words }) => words))).toEqual([
      'J1–R9, found, cut end, to R9',
      'R8–J1, found, cut end, to R8',
      'K2, new, to W2',
    ]);
    expect(todo.join(' ')).toMatch(/not to be come to afterwards/);
  });

  it('hold the joint’s conductors against what it takes, by count and by size, and the board’s against nothing', () => {
    const j1 = places.find(({ mark }) => mark === 'J1');
    expect(cardOf('J1').holds).toEqual([
      expect.stringMatching(
        /^Joint: 3 of 4 cables, the largest conductor 2\.5 of \d+ mm².*; as is usual for its kind/,
      ),
    ]);
    const takes = { cables: 3, conductorMm2: 4, areaMm2: null, isFromSheet: true };
    if (j1?.joint == null) throw new Error('J1 is a joint');
    expect(connectionCard({ ...j1, joint: { ...j1.joint, takes } }).holds).toEqual([
      'Joint: 3 of 3 cables, the largest conductor 2.5 of 4 mm²; by its maker’s sheet.',
    ]);
    expect(connectionCard({ ...j1, joint: { ...j1.joint, takes: null } }).holds[0]).toMatch(/not known/);
    expect(cardOf('Consumer unit').holds.join(' ')).toMatch(/two conductors in one terminal only where/);
  });

  it('give no length of bare copper, and sleeve what is bare as the firm counts it', () => {
    const said = strippingSaid({ sleeveMm: 150 }).join(' ');
    expect(said).toContain('150 mm an end');
    expect(said.match(/\d+ mm/g)).toEqual(['150 mm']);
    for (const place of places)
      expect(connectionCard(place).todo.at(-1)).toMatch(/as the maker’s sheet says\.$/);
  });

  it('part the boiler’s unit into supply and load, with its fuse and flex', () => {
    const { sides, todo } = cardOf('W4');
    expect(sides.map(({ title }) => title)).toEqual(['Supply side', 'Beside cables']);
    expect(sides[1]?.ends[0]?.conductors.map(({ terminal }) => terminal)).toEqual([
      'L load',
      'N load',
      'E 2',
    ]);
    expect(todo).toContain('Fuse: 3 A, BS 1362.');
  });

  it('say which device comes, and what leads of its own it may have', () => {
    const { todo } = cardOf('Consumer unit');
    expect(todo[0]).toMatch(/Exchange the device of .* RCBO, 32 A, curve B, 30 mA type A/);
    expect(todo.filter((words) => words.includes('where its maker gives it one')).length).toBe(2);
  });
});

describe('any card', () => {
  it.each(demoSchemes())(
    'of $name has a title, says what is done, and leaves nothing undefined',
    ({ worked }) => {
      for (const place of connectionSheet(worked).places) {
        const card = connectionCard(place);
        expect(card.title).not.toBe('');
        expect(card.todo.length > 0).toBe(place.isWorkedOn);
        expect(JSON.stringify(card)).not.toMatch(/undefined|NaN|null/);
      }
    },
  );

  it('of a circuit of mixed colours guesses none of them where nobody looked at the point', () => {
    const told = new Set(
      demoJob('quarrel-court').points.flatMap(({ id, asFound }) =>
        asFound?.colours === undefined ? [] : [id],
      ),
    );
    const unseen = connectionSheet(firstWorked(demoJob('quarrel-court'))).places.filter(
      ({ id }) => !told.has(id),
    );
    const said = unseen.flatMap((place) =>
      connectionCard(place).sides.flatMap(({ ends }) => ends.filter(({ isNew }) => !isNew)),
    );
    expect(said.length).toBeGreaterThan(3);
    for (const { conductors } of said) expect(conductors[0]?.colour).toBe('look: colour not told');
  });
});

describe('the old colours and the new', () => {
  it('are told with their days and the pair that is mistaken', () => {
    const words = oldToNew(connectionSheet(firstWorked(demoJob('saltglass-row')))).join('\n');
    expect(words).toMatch(/until 31 March 2006: line red, neutral black/);
    expect(words).toMatch(/from 31 March 2004: line brown, neutral blue/);
    expect(words).toMatch(/Danger: black was the neutral in old cable/);
    expect(words).toMatch(/Danger: blue was the line of a third phase/);
  });
});
