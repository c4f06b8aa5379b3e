import { describe, expect, it } from 'vitest';
import { demoEstimate, demoJob, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setLock, setUnitPlace } from '../../../ui/edits/connections.ts';
import { joinPoint } from '../../../ui/edits/join-point.ts';
import { connectionOf } from '../../../ui/edits/joined-by.ts';
import { pointsBehind } from '../../../ui/edits/points-behind.ts';
import { remediesOffered } from '../../../ui/edits/remedies-offered.ts';
import { firstTries, moveScheme, whyNotTry } from '../../../ui/edits/schemes.ts';
import { edited, faultsOf } from './random-edits.ts';

const job = demoJob('fernlow-close');
const result = demoEstimate('fernlow-close');
const found = result.asFound.worked;
const chain = job.schemes.find(({ id }) => id === 'no-fuse-b3');
const fused = job.schemes.find(({ id }) => id === 'fused-unit');
if (chain === undefined || fused === undefined) throw new Error('the schemes are not there');

describe('the order of schemes', () => {
  const order = (of: typeof job): readonly string[] => of.schemes.map(({ id }) => id);
  const [first, second, ...others] = job.schemes;
  if (first === undefined || second === undefined) throw new Error('two schemes are needed');

  it('is changed by one place, and not beyond the ends', () => {
    const later = edited(job, moveScheme(first, 1));
    expect(order(later)).toEqual([second.id, first.id, ...others.map(({ id }) => id)]);
    expect(order(edited(later, moveScheme(first, -1)))).toEqual(order(job));
    expect(order(edited(job, moveScheme(first, -1)))).toEqual(order(job));
    expect(faultsOf(later)).toEqual([]);
  });
});

describe('a point that others hang on', () => {
  it('takes them along when it is joined in another way', () => {
    const now = edited(
      job,
      joinPoint({ worked: found, scheme: chain, makeId: () => 'made' }, 'b1-kitchen', { by: 'ring' }),
    );
    const scheme = now.schemes.find(({ id }) => id === chain.id) ?? chain;
    expect(connectionOf(scheme, 'b1-kitchen')).toMatchObject({ id: 'made', kind: 'ring-extension' });
    expect(connectionOf(scheme, 'b2-kitchen')).toMatchObject({ from: { point: 'b1-kitchen' } });
  });

  it('leaves them where it was when it is not joined any more', () => {
    const now = edited(job, joinPoint({ worked: found, scheme: chain }, 'b1-kitchen', { by: 'none' }));
    const scheme = now.schemes.find(({ id }) => id === chain.id) ?? chain;
    const before = connectionOf(chain, 'b1-kitchen');
    expect(connectionOf(scheme, 'b2-kitchen')).toMatchObject({
      from: before !== null && 'from' in before ? before.from : null,
    });
  });

  it('feeds all that hang on it, at any remove', () => {
    expect([...pointsBehind(chain, ['b1-kitchen'])].sort()).toEqual(['b2-kitchen', 'b3-kitchen']);
    expect([...pointsBehind(chain, ['b3-kitchen'])]).toEqual([]);
  });
});

describe('the unit of a fused spur', () => {
  it('is placed, and left to itself again', () => {
    const [connection] = fused.connections;
    const at = { schemeId: fused.id, connectionId: connection?.id ?? '' };
    const wall = job.storeys[0]?.walls[0]?.id ?? '';
    const place = { wall, side: 'left', alongMm: 600, heightMm: 1100 } as const;
    const placed = edited(job, setUnitPlace(at, 'fused-spur', place));
    const unitIn = (of: typeof job): unknown =>
      of.schemes.find(({ id }) => id === fused.id)?.connections.find(({ id }) => id === at.connectionId);
    expect(unitIn(placed)).toMatchObject({ unit: { place } });
    expect(faultsOf(placed)).toEqual([]);
    expect(unitIn(edited(placed, setUnitPlace(at, 'fused-spur', null)))).not.toHaveProperty('unit.place');
  });
});

describe('a lock', () => {
  it('is not set on what is not there', () => {
    const at = { schemeId: fused.id, connectionId: 'gone' };
    expect(faultsOf(edited(job, setLock(at, true)))).toEqual([]);
  });
});

describe('remedies that checks ask for', () => {
  const terrace = demoEstimate('saltglass-row');
  const plain = demoJob('saltglass-row').schemes.find(({ remedies }) => remedies.length === 0);
  if (plain === undefined) throw new Error('every scheme has a remedy');
  const { findings } = schemeOf(terrace, plain.id);
  const offered = remediesOffered(plain, findings);

  it('are told once each, with their price and with every check that asks', () => {
    const keys = offered.map(({ remedy }) => `${remedy.kind} ${remedy.at}`);
    expect(new Set(keys).size).toBe(keys.length);
    const rcbo = offered.find(({ remedy }) => remedy.kind === 'rcbo');
    expect(rcbo?.pence).toBeGreaterThan(0);
    expect(rcbo?.titles.length).toBeGreaterThan(1);
    const asking = findings.filter(({ fix, outcome }) => fix !== null && outcome !== 'passes');
    for (const { fix, title } of asking)
      expect(
        offered.find(({ remedy }) => remedy.kind === fix?.kind && remedy.at === fix?.at)?.titles,
      ).toContain(title);
  });

  it('are left out once the scheme has them', () => {
    const [first] = offered;
    if (first === undefined) throw new Error('nothing is offered');
    const after = remediesOffered({ ...plain, remedies: [first.remedy] }, findings);
    expect(after).toEqual(offered.slice(1));
  });
});

describe('a first try', () => {
  it('is possible in a traced house, and not without a ring, a way or a point to join on at', () => {
    expect(firstTries.map((which) => whyNotTry(found, which))).toEqual(firstTries.map(() => null));
    const bare = {
      ...found,
      foundShapes: new Map(),
      job: { ...job, points: [], boards: job.boards.map((board) => ({ ...board, spareWays: 0 })) },
    };
    expect(firstTries.map((which) => whyNotTry(bare, which))).not.toContain(null);
  });
});
