import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { idRole } from '#model/id-roles.ts';
import { job } from '#model/job.ts';
import { id } from '#model/primitives.ts';
import { readJob } from '#model/read-job.ts';
import { put } from './change.ts';
import { smallJob } from './small-job.ts';

function faultsOf(input: unknown): string[] {
  const result = readJob(input);
  return result.ok ? [] : result.faults.map(({ path, code }) => `${path} ${code}`);
}

/** Every id of the schema that is marked neither as a thing's own nor as a reference. */
function unmarkedIds(schema: z.ZodType, path: string, seen: string[] = []): string[] {
  if (schema instanceof z.ZodOptional) return unmarkedIds(schema.unwrap() as z.ZodType, path, seen);
  if (schema instanceof z.ZodArray) return unmarkedIds(schema.element as z.ZodType, `${path}[]`, seen);
  if (schema instanceof z.ZodUnion)
    for (const option of schema.options) unmarkedIds(option as z.ZodType, path, seen);
  if (schema instanceof z.ZodTuple)
    for (const item of schema.def.items) unmarkedIds(item as z.ZodType, `${path}[]`, seen);
  if (schema instanceof z.ZodObject)
    for (const [key, inner] of Object.entries(schema.shape))
      unmarkedIds(inner as z.ZodType, `${path}.${key}`, seen);
  if (schema instanceof z.ZodString && schema.def.checks?.[0] === id.def.checks?.[0] && !idRole(schema))
    seen.push(path);
  return seen;
}

it('every id of the schema is a thing’s own or a checked reference, but for the job’s', () => {
  expect(unmarkedIds(job, 'job')).toEqual(['job.id']);
});

describe('a reference that leads nowhere', () => {
  const connection = (scheme: number, ...rest: (string | number)[]) => [
    'schemes',
    scheme,
    'connections',
    0,
    ...rest,
  ];
  const places: (string | number)[][] = [
    ['storeys', 0, 'rooms', 0, 'walls', 1, 'wall'],
    ['storeys', 0, 'underlay', 'asset'],
    ['boards', 0, 'place', 'storey'],
    ['circuits', 0, 'board'],
    ['circuits', 0, 'upstreamRcd'],
    ['points', 0, 'circuit'],
    ['points', 0, 'place', 'wall'],
    ['points', 3, 'place', 'storey'],
    ['points', 0, 'photos', 0],
    ['legs', 0, 'circuit'],
    ['legs', 0, 'from', 'origin'],
    ['legs', 0, 'to', 'point'],
    ['legs', 2, 'via', 0, 'storey'],
    ['legs', 2, 'via', 0, 'wall'],
    ['readings', 0, 'circuit'],
    ['readings', 0, 'at'],
    ['readings', 0, 'linkedAt'],
    ['readings', 2, 'at'],
    ['readings', 3, 'at'],
    ['readings', 6, 'at'],
    connection(0, 'from', 'point'),
    connection(0, 'to'),
    connection(0, 'runs', 0, 'from', 'point'),
    connection(0, 'runs', 0, 'via', 0, 'storey'),
    connection(1, 'from', 'leg'),
    connection(1, 'unit', 'place', 'wall'),
    connection(1, 'feeds', 0, 'from'),
    connection(1, 'feeds', 0, 'to'),
    connection(2, 'circuit'),
    connection(2, 'between', 1, 'point'),
    connection(2, 'leg'),
    connection(2, 'through', 0),
    connection(3, 'board'),
    connection(3, 'feeds', 0, 'from'),
    connection(4, 'leg'),
    connection(4, 'feeds', 0, 'from'),
    connection(5, 'point'),
    connection(5, 'leg'),
    ['schemes', 0, 'remedies', 0, 'at'],
    ['schemes', 0, 'remedies', 1, 'at'],
    ['schemes', 0, 'locks', 0],
  ];

  it.each(places.map((place) => [place.join('.'), place] as const))('is found at %s', (_, place) => {
    const path = place
      .map((key) => (typeof key === 'number' ? `[${key}]` : `.${key}`))
      .join('')
      .slice(1);
    expect(faultsOf(put(smallJob(), place, 'nowhere'))).toEqual([`${path} dangling-reference`]);
  });

  it.each([
    ['points', 1, 'replaces'],
    ['points', 1, 'modules'],
    ['points', 1, 'joint'],
    ['schemes', 4],
  ] as const)('is found in what the small job leaves out: %s %s %s', (...at) => {
    const added: Record<string, unknown> = {
      replaces: 'nowhere',
      modules: [{ kind: 'switch', feeds: 'nowhere' }],
      joint: {
        kind: 'crimp',
        ratingA: 32,
        accessible: false,
        place: { storey: 'nowhere', at: [0, 0], heightMm: 0 },
      },
    };
    const place = at.length === 3 ? at : [...at, 'connections', 0, 'unit'];
    const input = put(smallJob(), place, added[String(place[2])] ?? 'nowhere');
    expect(faultsOf(input).map((fault) => fault.split(' ')[1])).toEqual(['dangling-reference']);
  });

  it('is one that leads to a thing of another kind, and says what that is', () => {
    const result = readJob(put(smallJob(), ['circuits', 0, 'board'], 'p-one'));
    expect(result.ok ? '' : result.faults[0]?.message).toContain('"p-one" is a point (at points[0])');
    expect(result.ok ? '' : result.faults[0]?.remedy).toContain('b-main');
  });

  it('may be a word only where that word has a meaning', () => {
    expect(faultsOf(put(smallJob(), connection(3, 'feeds', 0, 'from'), 'unit'))).toHaveLength(1);
    expect(faultsOf(put(smallJob(), connection(1, 'feeds', 0, 'from'), 'origin'))).toHaveLength(1);
    expect(faultsOf(put(smallJob(), ['schemes', 0, 'remedies', 1, 'at'], 'gas'))).toHaveLength(1);
    expect(faultsOf(put(smallJob(), ['schemes', 0, 'remedies', 0, 'at'], 'gas'))).toEqual([]);
    expect(faultsOf(put(smallJob(), ['schemes', 0, 'remedies', 0, 'at'], 'b-main'))).toEqual([]);
  });

  it('is a lock on a connection of another scheme', () => {
    expect(faultsOf(put(smallJob(), ['schemes', 1, 'locks'], ['n-spur']))).toEqual([
      'schemes[1].locks[0] dangling-reference',
    ]);
  });
});

describe('an id that is taken', () => {
  const own = (...place: (string | number)[]) => [...place, 'id'];
  it.each([
    ['storey', own('storeys', 0)],
    ['wall', own('storeys', 0, 'walls', 1)],
    ['opening', own('storeys', 0, 'walls', 6, 'openings', 0)],
    ['room', own('storeys', 0, 'rooms', 0)],
    ['fixture', own('storeys', 0, 'fixtures', 0)],
    ['board', own('boards', 0)],
    ['RCD', own('boards', 0, 'rcds', 0)],
    ['circuit', own('circuits', 0)],
    ['point', own('points', 1)],
    ['leg', own('legs', 0)],
    ['reading', own('readings', 0)],
    ['scheme', own('schemes', 0)],
    ['connection', own('schemes', 1, 'connections', 0)],
  ] as const)('is found when a %s shares it with an asset', (kind, place) => {
    const result = readJob(put(smallJob(), place, 'a-photo'));
    const faults = result.ok ? [] : result.faults.filter(({ code }) => code === 'duplicate-id');
    expect(faults).toHaveLength(1);
    expect(faults[0]?.message).toContain(kind);
    expect(faults[0]?.message).toContain('asset');
  });

  it('names the later of two of a kind, and where the first one is', () => {
    const result = readJob(put(smallJob(), ['points', 4, 'id'], 'p-three'));
    const fault = result.ok ? undefined : result.faults.find(({ code }) => code === 'duplicate-id');
    expect(fault?.path).toBe('points[4].id');
    expect(fault?.message).toContain('points[2].id');
  });

  it('may serve connections of different schemes, but not two of one', () => {
    expect(faultsOf(smallJob())).toEqual([]); // n-spur stands in two schemes
    expect(faultsOf(put(smallJob(), ['schemes', 5, 'connections', 1, 'id'], 'n-close'))).toEqual([
      'schemes[5].connections[1].id duplicate-id',
    ]);
  });
});
