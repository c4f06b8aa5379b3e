import { describe, expect, it } from 'vitest';
import { connectionCard } from '#drawing/work/connection-card.ts';
import { oldToNew } from '#drawing/work/old-to-new.ts';
import { strippingSaid } from '#drawing/work/stripping-words.ts';
import { connectionSheet } from '#engine/work/connection-sheet.ts';
import { demoEstimate, demoJob, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
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

  it('are of what is touched and no more: three outlets, three origins, the unit and its boiler, the joint, the board', () => {
    expect(places.map(({ mark }) => mark).toSorted()).toEqual(
      ['R1', 'R6', 'R8', 'W1', 'W2', 'W3', 'W4', 'W4 boiler', 'J1', 'Consumer unit'].toSorted(),
    );
    expect(places.at(-1)?.mark).toBe('Consumer unit');
  });

  it('say that R8 is re-boxed, with three cables in terminals that take three', () => {
    const { todo, holds } = cardOf('R8');
    expect(todo.join(' ')).toMatch(/Exchange the box found for a twin flush steel box, 35 mm deep\./);
    expect(holds).toContain(
      'Each terminal: 3 conductors, 7.5 mm² together (usual: up to 3, 8 mm²; its own sheet decides).',
    );
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
    for (const place of places.filter(({ kind }) => kind !== 'appliance'))
      expect(connectionCard(place).todo.join(' ')).toMatch(/as the maker’s sheet says/);
  });

  it('part the boiler’s unit into supply and load, with its fuse and flex', () => {
    const { title, sides, todo, holds } = cardOf('W4');
    expect(title).toBe('W4, switched fused connection unit, with flex outlet');
    expect(sides.map(({ title }) => title)).toEqual(['Supply side', 'Beside cables']);
    expect(sides[1]?.ends[0]?.conductors.map(({ terminal }) => terminal)).toEqual([
      'L load',
      'N load',
      'E 2',
    ]);
    expect(todo).toContain('Fuse: 3 A, BS 1362.');
    // 0.75 mm² behind 3 A: BS 7671 Table 4F3A, from memory.
    expect(sides[1]?.ends[0]?.words).toBe('Flex of the appliance, three-core, heat-resistant, 0.75 mm²');
    expect(holds).toContain(
      'Each load terminal: the flex, 0.75 mm² (usual: up to 3, 8 mm²; its own sheet decides).',
    );
  });

  it('say which device comes, and what leads of its own it may have', () => {
    const { todo } = cardOf('Consumer unit');
    expect(todo[1]).toMatch(/Exchange the device of .* RCBO, 32 A, curve B, 30 mA type A/);
    expect(todo.filter((words) => words.includes('where its maker gives it one')).length).toBe(2);
  });
});

describe('the other end of a flex', () => {
  const places = cardsOf('saltglass-row');
  const boiler = places.find(({ kind }) => kind === 'appliance');
  if (boiler === undefined) throw new Error('no boiler');

  it('has a card of its own: parted at the unit, the same flex, three terminals', () => {
    const { title, todo, sides } = connectionCard(boiler);
    expect(title).toBe('W4 boiler, its end of the flex');
    expect(todo.join(' ')).toMatch(/Isolated at W4: its switch off, its fuse out.*0\.75 mm²/);
    expect(sides[0]?.ends[0]?.conductors.map(({ terminal }) => terminal)).toEqual(['L', 'N', 'E']);
  });

  it('says how it is parted where the unit has no switch, and where an outlet plate has no fuse', () => {
    const fed = (partedBy: 'fuse' | 'before') =>
      connectionCard({ ...boiler, fedFrom: { mark: 'W4', partedBy } }).todo.join(' ');
    expect(fed('fuse')).toMatch(/it has no switch/);
    expect(fed('before')).toMatch(/the switch or fuse before it off and locked/);
  });
});

/** Words by which steps are known, as hands do them: common practice, no source. */
const handsOrder = [
  /rove dead/,
  /^(?:Fit a|Exchange the box)/,
  /^Bring K/,
  /^Cut the sheath back/,
  /^(?:Connect each core|Make the joint|Line and neutral)/,
  /^Tighten/,
  /^Dress/,
] as const;

describe('the steps of any card', () => {
  it.each(demoSchemes())('of $name go from dead to dressed, and what covers it comes last', ({ worked }) => {
    for (const place of connectionSheet(worked).places.filter(
      ({ isWorkedOn, kind }) => isWorkedOn && kind !== 'appliance',
    )) {
      const { todo, title } = connectionCard(place);
      const at = handsOrder
        .map((words) => todo.findIndex((step) => words.test(step)))
        .filter((index) => index >= 0);
      expect(at, title).toEqual(at.toSorted((a, b) => a - b));
      expect(todo[0], title).toMatch(handsOrder[0]);
      expect(todo.at(-1), title).toMatch(/^Dress/);
    }
  });

  it.each(demoSchemes())('of $name tell the kind of every box that is fitted', ({ worked }) => {
    for (const place of connectionSheet(worked).places)
      if (place.box !== null && ['fit', 're-box'].includes(place.box.action))
        expect(connectionCard(place).todo.join(' ')).toMatch(
          /(?:flush steel|dry-lining|surface) box, \d+ mm deep/,
        );
  });
});

describe('the make of a board', () => {
  const board = cardsOf('saltglass-row').find(({ kind }) => kind === 'board');
  if (board === undefined) throw new Error('no board');

  it('is asked for, with a line to write it on, until somebody has told it', () => {
    const unknown = connectionCard({ ...board, buyFor: { make: null } });
    expect(unknown.look.join(' ')).toMatch(/^Note the board’s make and model before a device is bought: _+$/);
    expect(unknown.todo.join(' ')).toMatch(/one that the board’s maker lists for it/);
    const told = connectionCard({ ...board, buyFor: { make: 'Plain Ware' } });
    expect(told.look).toEqual([]);
    expect(told.todo.join(' ')).toMatch(/one that Plain Ware lists for this board/);
  });

  it('is of no account where the board itself is exchanged', () => {
    const job = demoJob('saltglass-row');
    const [scheme] = job.schemes;
    if (scheme === undefined) throw new Error('no scheme');
    const schemes = [{ ...scheme, remedies: [{ kind: 'new-board' as const }] }];
    const { places } = connectionSheet(firstWorked({ ...job, schemes }));
    expect(places.filter(({ buyFor }) => buyFor !== null)).toEqual([]);
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

  it('are not told where every core that is met is new, and are where one is not seen', () => {
    const worked = schemeOf(demoEstimate('fernlow-close'), 'new-radial').worked;
    const sheet = connectionSheet(worked);
    expect(sheet.meetsOldColours).toBe(false);
    expect(oldToNew(sheet)).toEqual([]);
    const job = demoJob('fernlow-close');
    const unseen = {
      ...job,
      points: job.points.map(({ asFound, ...point }) => point),
      circuits: job.circuits.map(({ colours, ...circuit }) => circuit),
    };
    // A ring with its old ends at terminals of the work.
    expect(connectionSheet(firstWorked(unseen)).meetsOldColours).toBe(true);
  });
});
