import { type Draft, produce } from 'immer';
import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { clashRows } from '../../../ui/differences/clash-rows.ts';
import { removeCircuit, removePoint } from '../../../ui/edits/remove-things.ts';
import { setSupplyCertainty, setSupplyFact } from '../../../ui/edits/supply.ts';
import { decide, mergeJobs } from '../../../ui/merging/merge-jobs.ts';
import type { Side } from '../../../ui/merging/three-states.ts';
import { edited, faultsOf } from '../edits/random-edits.ts';

const base = demoJob('saltglass-row');
type Change = (job: Draft<Job>) => void;
const changed = (change: Change): Job =>
  produce(base, (draft) => {
    change(draft);
  });
const merged = (here: Change, there: Change) => mergeJobs(base, changed(here), changed(there));
const allAs = (merge: ReturnType<typeof mergeJobs>, side: Side): Job =>
  decide(merge, new Map(merge.clashes.map(({ key }) => [key, side])));
const first = <T>(list: readonly T[]): T => {
  const [one] = list;
  if (one === undefined) throw new Error('an empty list');
  return one;
};
const ring = first(base.circuits);
const r2 = first(base.points.filter(({ label }) => label === 'R2'));

describe('what is taken without a question', () => {
  it('is another field of the same thing, on either side', () => {
    const { merged: job, clashes } = merged(
      (draft) => {
        draft.terms.travelMin = 75;
        first(draft.points).label = 'Mine';
      },
      (draft) => {
        draft.terms.minimumPence = 100;
        first(draft.points).mount = 'surface';
      },
    );
    expect(clashes).toEqual([]);
    expect(job.terms).toMatchObject({ travelMin: 75, minimumPence: 100 });
    expect(job.points[0]).toMatchObject({ label: 'Mine', mount: 'surface' });
  });

  it('is work that is not on the drawing which either added, by its id', () => {
    const surprise =
      (id: string): Change =>
      (draft) => {
        draft.extras = [...(draft.extras ?? []), { id, words: id, typicalMin: 30 }];
      };
    const { merged: job, clashes } = merged(surprise('mine'), surprise('theirs'));
    expect(clashes).toEqual([]);
    expect(job.extras?.map(({ id }) => id).toSorted()).toEqual(['mine', 'theirs']);
    expect(faultsOf(job)).toEqual([]);
  });

  it('has two labels where both gave a new point the same one: mine goes on from theirs', () => {
    const added =
      (...points: readonly (readonly [id: string, label: string])[]): Change =>
      (draft) => {
        for (const [id, label] of points)
          draft.points.push({ ...first(base.points), id, label, photos: [], status: 'wanted' });
      };
    const { merged: job, clashes } = merged(
      added(['here-5', 'W5'], ['here-6', 'W6'], ['here-x', 'Own']),
      added(['there-5', 'W5']),
    );
    expect(clashes).toEqual([]);
    const labelOf = new Map(job.points.map(({ id, label }) => [id, label]));
    expect(labelOf.get('there-5')).toBe('W5');
    expect(labelOf.get('here-5')).toBe('W7');
    expect([labelOf.get('here-6'), labelOf.get('here-x')]).toEqual(['W6', 'Own']);
    expect(new Set(labelOf.values()).size).toBe(job.points.length);
  });

  it('is what either added to a list, each behind what it followed, and a photo of either', () => {
    const photo = (id: string) => ({
      id,
      name: `${id}.jpg`,
      mediaType: 'image/jpeg',
      bytes: 1,
      caption: `what ${id} shows`,
    });
    const added =
      (id: string, at: number): Change =>
      (draft) => {
        draft.assets.push(photo(`photo-${id}`));
        first(draft.points).photos.push(`photo-${id}`);
        draft.points.splice(at, 0, { ...first(base.points), id, label: id, photos: [] });
      };
    const { merged: job, clashes } = merged(added('here', 2), added('there', base.points.length));
    expect(clashes).toEqual([]);
    expect(job.points.map(({ id }) => id)).toEqual([
      ...base.points.slice(0, 2).map(({ id }) => id),
      'here',
      ...base.points.slice(2).map(({ id }) => id),
      'there',
    ]);
    expect(job.points[0]?.photos).toEqual(['photo-there', 'photo-here']);
    expect(job.assets.map(({ caption }) => caption).toSorted()).toEqual([
      'what photo-here shows',
      'what photo-there shows',
    ]);
  });

  it('is a bond that one found and a bond that the other took away', () => {
    const { merged: job, clashes } = merged(
      ({ supply }) => {
        supply.bonding.push({ service: 'oil', seen: true });
      },
      ({ supply }) => {
        supply.bonding = supply.bonding.filter(({ service }) => service !== 'gas');
      },
    );
    expect(clashes).toEqual([]);
    expect(job.supply.bonding.map(({ service }) => service)).toEqual(['water', 'oil']);
  });
});

describe('what has to be decided', () => {
  const rows = (merge: ReturnType<typeof mergeJobs>) =>
    clashRows(merge).map(({ thing, field, mine, theirs }) => [thing, field, mine, theirs].join(' | '));

  it('is a field that both changed unlike: theirs until it is decided, then exactly mine or theirs', () => {
    const merge = merged(
      ({ terms }) => {
        terms.minimumPence = 22_200;
      },
      ({ terms }) => {
        terms.minimumPence = 11_100;
        terms.travelMin = 75;
      },
    );
    expect(rows(merge)).toEqual(['Terms | minimum charge | £222.00 | £111.00']);
    expect(merge.merged.terms).toMatchObject({ minimumPence: 11_100, travelMin: 75 });
    expect(allAs(merge, 'mine').terms).toMatchObject({ minimumPence: 22_200, travelMin: 75 });
    expect(allAs(merge, 'theirs')).toEqual(merge.merged);
  });

  it('is a fact with how sure it is, as one row', () => {
    const here = edited(base, setSupplyFact('zeOhm', 0.3), setSupplyCertainty('zeOhm', 'assumed'));
    const there = edited(base, setSupplyFact('zeOhm', 0.4));
    const merge = mergeJobs(base, here, there);
    expect(rows(merge)).toEqual(['Supply | Ze | 0.3 Ω (assumed) | 0.4 Ω (measured)']);
    expect(allAs(merge, 'mine').supply).toEqual(here.supply);
  });

  it('is a value that one changed, and how sure the other was of the value before', () => {
    const here = edited(base, setSupplyFact('zeOhm', 0.3));
    const merge = mergeJobs(base, here, edited(base, setSupplyCertainty('zeOhm', 'assumed')));
    expect(merge.clashes).toHaveLength(1);
    expect(merge.merged.supply).toMatchObject({ zeOhm: base.supply.zeOhm, certainty: { zeOhm: 'assumed' } });
    expect(allAs(merge, 'mine').supply).toEqual(here.supply);
  });

  it('is a thing that one removed and the other changed, with all that went with it', () => {
    const here = edited(base, removeCircuit(ring));
    const there = changed(({ circuits }) => {
      first(circuits).name = 'Ring, renamed';
    });
    const merge = mergeJobs(base, here, there);
    const [row] = clashRows(merge);
    expect(row).toMatchObject({ mine: expect.any(String), theirs: expect.any(String) });
    expect(merge.clashes).toHaveLength(1);
    expect(merge.merged).toEqual(there);
    expect(allAs(merge, 'mine')).toEqual(here);
  });

  it('is a point that one removed and the other led a new cable to', () => {
    const here = edited(base, removePoint(r2));
    const there = changed(({ legs }) => {
      legs.push({
        id: 'new-leg',
        circuit: ring.id,
        from: { point: r2.id },
        to: { point: first(base.points).id },
      });
    });
    const merge = mergeJobs(base, here, there);
    expect(merge.clashes).toHaveLength(1);
    for (const side of ['mine', 'theirs'] as const) expect(faultsOf(allAs(merge, side))).toEqual([]);
    expect(allAs(merge, 'theirs').legs.map(({ id }) => id)).toContain('new-leg');
    expect(allAs(merge, 'mine').points.map(({ id }) => id)).not.toContain(r2.id);
  });

  it('is how a storey is drawn where both drew at it, as one row', () => {
    const moved =
      (at: number, toMm: number): Change =>
      ({ storeys }) => {
        const wall = first(storeys).walls[at];
        if (wall !== undefined) wall.to = [toMm, toMm];
      };
    const merge = merged(moved(0, 10), moved(3, 20));
    expect(rows(merge)).toEqual([
      'Ground floor | how it is drawn | as drawn here: 14 walls, 4 rooms | as drawn there: 14 walls, 4 rooms',
    ]);
    expect(allAs(merge, 'mine')).toEqual(changed(moved(0, 10)));
    expect(merge.merged).toEqual(changed(moved(3, 20)));
  });

  it('is where the cables of a circuit go where both recorded them', () => {
    const leg =
      (id: string): Change =>
      ({ legs }) => {
        legs.push({ id, circuit: ring.id, from: { point: r2.id }, to: { point: first(base.points).id } });
      };
    const merge = merged(leg('here'), leg('there'));
    expect(rows(merge)[0]).toMatch(/^Socket ring, whole house \| where its cables go \| as recorded here: /);
    expect(allAs(merge, 'mine').legs.map(({ id }) => id)).not.toContain('there');
  });

  it('is a point that each joined in a way of their own, in one scheme', () => {
    const wanted = first(base.points.filter(({ label }) => label === 'W1'));
    const spur =
      (id: string, from: string): Change =>
      ({ schemes }) => {
        const scheme = first(schemes);
        scheme.connections = [{ id, kind: 'spur', from: { point: from }, to: wanted.id }];
        scheme.locks = [];
      };
    const merge = merged(spur('here', r2.id), spur('there', first(base.points).id));
    expect(merge.clashes).toHaveLength(1);
    const joining = (job: Job) => first(job.schemes).connections.map(({ id }) => id);
    expect([joining(allAs(merge, 'mine')), joining(merge.merged)]).toEqual([['here'], ['there']]);
  });

  it('is the order of a list that both put otherwise', () => {
    const [a, b] = [2, 1];
    const merge = merged(
      ({ schemes }) => {
        schemes.reverse();
      },
      ({ schemes }) => {
        schemes.splice(0, 2, ...schemes.slice(0, a).reverse());
      },
    );
    expect(base.schemes.length).toBeGreaterThan(a);
    expect(merge.clashes).toHaveLength(b);
    expect(rows(merge)[0]).toMatch(/^Job \| order of schemes \| /);
    expect(allAs(merge, 'mine').schemes).toEqual([...base.schemes].reverse());
  });

  it('is never the name of a scheme that nobody chose: it follows what the scheme does', () => {
    const plain = changed(({ schemes }) => {
      schemes.splice(0, schemes.length, {
        id: 's',
        name: 'Nothing joined yet',
        connections: [],
        remedies: [],
        locks: [],
      });
    });
    const [w1, w2] = base.points.filter(({ status }) => status === 'wanted');
    const joined = (id: string, to = '') =>
      produce(plain, ({ schemes }) => {
        first(schemes).connections.push({ id, kind: 'spur', from: { point: r2.id }, to });
        first(schemes).name = 'A spur';
      });
    const merge = mergeJobs(plain, joined('here', w1?.id), joined('there', w2?.id));
    expect(merge.clashes).toEqual([]);
    expect(first(merge.merged.schemes)).toMatchObject({ name: '2 spurs' });
  });
});
