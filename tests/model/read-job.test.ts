import { describe, expect, it } from 'vitest';
import { type ReadJob, readJob, readJobText } from '#model/read-job.ts';
import { cut, put } from './change.ts';
import { smallJob } from './small-job.ts';

/** `path code` of every fault; empty for a job that was read. */
function faultsOf(result: ReadJob): string[] {
  return result.ok ? [] : result.faults.map(({ path, code }) => `${path} ${code}`);
}

function firstFault(input: unknown) {
  const result = readJob(input);
  if (result.ok) throw new Error('expected a fault');
  return result.faults[0];
}

describe('a sound job', () => {
  it('is read, and nothing of it is lost or changed', () => {
    expect(readJob(smallJob())).toEqual({ ok: true, job: smallJob() });
  });

  it('is read from text, a byte-order mark before it or not', () => {
    const text = JSON.stringify(smallJob());
    expect(readJobText(text)).toEqual({ ok: true, job: smallJob() });
    expect(readJobText(`\uFEFF${text}`)).toEqual({ ok: true, job: smallJob() });
  });

  it('is not changed by being read', () => {
    const input = smallJob();
    readJob(input);
    expect(input).toEqual(smallJob());
  });

  it.each([
    ['a wall of no length', put(smallJob(), ['storeys', 0, 'walls', 0, 'to'], [0, 0])],
    ['a missing wall of no thickness', put(smallJob(), ['storeys', 0, 'walls', 6, 'thicknessMm'], 0)],
    ['a point beyond the end of its wall', put(smallJob(), ['points', 0, 'place', 'alongMm'], 99_000)],
    ['a spur from a spur', put(smallJob(), ['schemes', 0, 'connections', 0, 'from'], { point: 'p-spur' })],
    ['a leg from a point to itself', put(smallJob(), ['legs', 1, 'to'], { point: 'p-one' })],
    ['a ring extended through nothing', put(smallJob(), ['schemes', 2, 'connections', 0, 'through'], [])],
    ['no legs at all', put(put(put(smallJob(), ['legs'], []), ['schemes'], []), ['readings'], [])],
    ['a 45 A ring', put(smallJob(), ['circuits', 0, 'device', 'ratingA'], 45)],
    ['a cable without protective conductor', put(smallJob(), ['legs', 0, 'cable', 'cpcMm2'], 0)],
  ])('is read however odd: %s', (_, odd) => {
    expect(faultsOf(readJob(odd))).toEqual([]);
  });
});

describe('each kind of fault, at its path', () => {
  const cases: [string, unknown, string][] = [
    ['a key is missing', cut(smallJob(), ['points', 1, 'label']), 'points[1].label missing'],
    ['a whole list is missing', cut(smallJob(), ['answers']), 'answers missing'],
    ['an end is missing', cut(smallJob(), ['legs', 2, 'from']), 'legs[2].from missing'],
    ['a kind is missing', cut(smallJob(), ['readings', 3, 'kind']), 'readings[3].kind missing'],
    ['text for a number', put(smallJob(), ['legs', 0, 'lengthMm'], '6 m'), 'legs[0].lengthMm wrong-type'],
    ['a number for text', put(smallJob(), ['title'], 5), 'title wrong-type'],
    ['a number for a word', put(smallJob(), ['terms', 'vat'], 20), 'terms.vat wrong-type'],
    [
      'an off-cut of no length',
      put(smallJob(), ['stock', 0, 'lengthsM'], [7, 0]),
      'stock[0].lengthsM[1] out-of-range',
    ],
    ['null for a list', put(smallJob(), ['stock'], null), 'stock wrong-type'],
    ['a number for an end', put(smallJob(), ['legs', 2, 'from'], 5), 'legs[2].from wrong-type'],
    [
      'a number for a unit',
      put(smallJob(), ['schemes', 1, 'connections', 0, 'unit'], 5),
      'schemes[1].connections[0].unit wrong-type',
    ],
    ['a list for the file', [], 'file wrong-type'],
    ['nothing for the file', undefined, 'file missing'],
    ['an unknown key', put(smallJob(), ['points', 0, 'colour'], 'red'), 'points[0].colour unknown-key'],
    ['an unknown key at the top', put(smallJob(), ['currency'], 'GBP'), 'currency unknown-key'],
    [
      'an unknown key in a place',
      put(smallJob(), ['points', 3, 'place', 'x'], 1),
      'points[3].place.x unknown-key',
    ],
    ['an unknown key in an end', put(smallJob(), ['legs', 0, 'to', 'x'], 1), 'legs[0].to.x unknown-key'],
    ['a key of another branch', put(smallJob(), ['readings', 4, 'ohm'], 1), 'readings[4].ohm unknown-key'],
    ['an unknown word', put(smallJob(), ['points', 2, 'kind'], 'socket'), 'points[2].kind unknown-value'],
    [
      'an unknown kind of connection',
      put(smallJob(), ['schemes', 3, 'connections', 0, 'kind'], 'loop'),
      'schemes[3].connections[0].kind unknown-value',
    ],
    [
      'an unknown kind of cut',
      put(smallJob(), ['schemes', 2, 'connections', 0, 'out', 'how'], 'glue'),
      'schemes[2].connections[0].out.how unknown-value',
    ],
    [
      'an unknown certainty',
      put(smallJob(), ['points', 1, 'certainty', 'box'], 'sure'),
      'points[1].certainty.box unknown-value',
    ],
    [
      'another nominal voltage',
      put(smallJob(), ['supply', 'nominalV'], 240),
      'supply.nominalV unknown-value',
    ],
    ['a number below its range', put(smallJob(), ['supply', 'zeOhm'], -0.1), 'supply.zeOhm out-of-range'],
    [
      'a number above its range',
      put(smallJob(), ['terms', 'contingencyPercent'], 101),
      'terms.contingencyPercent out-of-range',
    ],
    [
      'a margin of the whole price',
      put(smallJob(), ['terms', 'marginPercent'], 100),
      'terms.marginPercent out-of-range',
    ],
    [
      'a number past every bound at once',
      put(smallJob(), ['boards', 0, 'ways'], 1e300),
      'boards[0].ways out-of-range',
    ],
    ['half a way', put(smallJob(), ['boards', 0, 'ways'], 7.5), 'boards[0].ways not-whole'],
    [
      'a position of three numbers',
      put(smallJob(), ['storeys', 0, 'walls', 0, 'to'], [1, 2, 3]),
      'storeys[0].walls[0].to wrong-count',
    ],
    [
      'an outline of two corners',
      put(
        smallJob(),
        ['storeys', 0, 'stairwells', 0],
        [
          [0, 0],
          [1, 1],
        ],
      ),
      'storeys[0].stairwells[0] wrong-count',
    ],
    [
      'a question without a name',
      put(smallJob(), ['answers', 0, 'question'], ''),
      'answers[0].question wrong-length',
    ],
    ['an id with a space', put(smallJob(), ['assets', 0, 'id'], 'a photo'), 'assets[0].id bad-id'],
    [
      'a date of no calendar',
      put(smallJob(), ['readings', 2, 'takenOn'], '2025-02-30'),
      'readings[2].takenOn bad-date',
    ],
    ['an end of neither form', put(smallJob(), ['legs', 0, 'from'], {}), 'legs[0].from unclear-shape'],
    [
      'a field without a name',
      put(smallJob(), ['points', 1, 'certainty', ''], 'seen'),
      'points[1].certainty[""] not-allowed',
    ],
    ['a foreign format', put(smallJob(), ['format'], 'drawing'), 'format wrong-format'],
    ['a version that is no number', put(smallJob(), ['version'], '1'), 'version wrong-type'],
    ['a version that never was', put(smallJob(), ['version'], 0), 'version no-upgrade'],
  ];

  it.each(cases)('%s', (_, input, expected) => {
    expect(faultsOf(readJob(input))).toContain(expected);
  });

  it('a newer version, in one fault whatever else is in the file', () => {
    const result = readJob({ format: 'ringwright-job', version: 2, shapes: ['unheard of'] });
    expect(result.ok ? [] : result.faults.map(({ path, message }) => [path, message])).toEqual([
      ['version', 'this job needs a newer version'],
    ]);
  });

  it('a foreign format, in one fault', () => {
    expect(faultsOf(readJob({ format: 'drawing', pages: [] }))).toEqual(['format wrong-format']);
  });
});

describe('the words of a fault', () => {
  it('offer the nearest key, and tell a misspelt key once', () => {
    const input = put(cut(smallJob(), ['points', 1, 'label']), ['points', 1, 'lable'], 'Kitchen');
    expect(faultsOf(readJob(input))).toEqual(['points[1].lable unknown-key']);
    expect(firstFault(input)?.remedy).toContain('"label"');
  });

  it('judge a misspelt end by the form it comes nearest to', () => {
    const input = put(smallJob(), ['legs', 1, 'from'], { poin: 'p-one' });
    expect(faultsOf(readJob(input))).toEqual(['legs[1].from.poin unknown-key']);
    expect(firstFault(input)?.remedy).toContain('"point"');
  });

  it('list the allowed words and offer the nearest', () => {
    const remedy = firstFault(put(smallJob(), ['points', 2, 'kind'], 'socket-twim'))?.remedy ?? '';
    expect(remedy).toContain('Perhaps "socket-twin"');
    for (const word of ['socket-single', 'fused-unit', 'cooker-control', 'shaver'])
      expect(remedy).toContain(word);
  });

  it('name the thing, with its label and what it lies in', () => {
    const inPoint = firstFault(put(smallJob(), ['points', 0, 'place', 'heightMm'], 'low'))?.message;
    expect(inPoint).toMatch(/^Socket "Living room, south wall" \(Ground floor\): /);
    const inOpening = firstFault(put(smallJob(), ['storeys', 0, 'walls', 6, 'openings', 0, 'kind'], 'hatch'));
    expect(inOpening?.message).toContain('Opening o-door, wall w-middle, storey "Ground floor": ');
    const inConnection = firstFault(
      put(smallJob(), ['schemes', 1, 'connections', 0, 'kind'], 'weld'),
    )?.message;
    expect(inConnection).toContain('Connection n-fused, scheme "Fused spur": ');
  });

  it('tell a number that breaks two bounds once', () => {
    expect(faultsOf(readJob(put(smallJob(), ['boards', 0, 'ways'], 1e300)))).toHaveLength(1);
  });

  it('say the whole range of a number', () => {
    const remedy = firstFault(put(smallJob(), ['terms', 'contingencyPercent'], 101))?.remedy;
    expect(remedy).toContain('0 or more');
    expect(remedy).toContain('up to 100');
  });

  it('show both forms where neither was meant', () => {
    const remedy = firstFault(put(smallJob(), ['points', 0, 'place'], { heightMm: 450 }))?.remedy;
    expect(remedy).toContain('{ wall, side, alongMm, heightMm }');
    expect(remedy).toContain('{ storey, at, heightMm }');
  });

  it('never hold more than a line, however long the value', () => {
    const fault = firstFault(put(smallJob(), ['points', 0, 'kind'], `socket\n${'x'.repeat(10_000)}`));
    expect(fault?.message.length).toBeLessThan(300);
    expect(fault?.message).not.toContain('\n');
  });
});

describe('all faults at once', () => {
  it('gives faults of shape, ids and references together, in the order of the file', () => {
    const input = smallJob();
    put(input, ['schemes', 0, 'locks', 0], 'n-gone');
    put(input, ['schemes', 0, 'connections', 0, 'kind'], 'spurr');
    put(input, ['schemes', 0, 'connections', 0, 'to'], 'p-gone');
    put(input, ['site', 'nation'], 'narnia');
    cut(input, ['points', 2, 'status']);
    put(input, ['points', 0, 'place', 'wall'], 'w-gone');
    put(input, ['assets', 1, 'id'], 'w-east');
    put(input, ['extra'], true);
    expect(faultsOf(readJob(input))).toEqual([
      'site.nation unknown-value',
      'storeys[0].underlay.asset dangling-reference',
      'points[0].place.wall dangling-reference',
      'points[2].status missing',
      'schemes[0].connections[0].kind unknown-value',
      'schemes[0].connections[0].to dangling-reference',
      'schemes[0].locks[0] dangling-reference',
      'assets[1].id duplicate-id',
      'extra unknown-key',
    ]);
  });

  it('does not call every reference dangling when the list it leads into cannot be read', () => {
    expect(faultsOf(readJob(put(smallJob(), ['points'], null)))).toEqual(['points wrong-type']);
    expect(faultsOf(readJob(cut(smallJob(), ['storeys', 0, 'walls'])))).toEqual(['storeys[0].walls missing']);
  });
});

describe('a text that is no JSON', () => {
  it.each([
    ['{"a": 1,\n  "b": [1, 2,]}', 'line 2, column 14'],
    ['{"a": 1,\n}', 'line 2, column 1'],
    ["{'a': 1}", 'line 1, column 2'],
    ['{"a": 1\n "b": 2}', 'line 2, column 2'],
    ['{"a": "one\n"}', 'line 1, column 11'],
    ['{"a": 01}', 'line 1, column 7'],
    ['{"a": 1} // done', 'line 1, column 10'],
    ['{"a": [1, 2', 'line 1, column 12'],
    ['', 'line 1, column 1'],
  ])('%j is one fault at %s', (text, place) => {
    const result = readJobText(text);
    expect(faultsOf(result)).toEqual([`${place} not-json`]);
  });
});
