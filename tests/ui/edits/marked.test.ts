import { describe, expect, it } from 'vitest';
import type { Job } from '#model/job.ts';
import type { Certainty } from '#model/primitives.ts';
import { demoJob, estimateOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { addBoard, putRcd, setBoardCertainty, setNoRcds } from '../../../ui/edits/boards.ts';
import {
  markDevice,
  markOrder,
  setCircuitCertainty,
  setDevice,
  setUpstreamRcd,
} from '../../../ui/edits/circuits.ts';
import { markable, markedBy } from '../../../ui/edits/marked.ts';
import { newJob } from '../../../ui/edits/new-job.ts';
import { addFoundPoints, setPointKind } from '../../../ui/edits/points.ts';
import {
  setBond,
  setBondCertainty,
  setOtherSources,
  setSupplyCertainty,
  setSupplyFact,
} from '../../../ui/edits/supply.ts';
import { edited, faultsOf } from './random-edits.ts';

const fresh = newJob({
  reference: 'N-1',
  title: 'New',
  terms: { labour: 'typical', vat: 'standard' },
});
const [circuit] = fresh.circuits;
const [board] = fresh.boards;
if (circuit === undefined || board === undefined) throw new Error('a new job has a circuit and a board');
const earthing = markable(setSupplyFact('earthing', 'TN-S'), (certainty) =>
  setSupplyCertainty('earthing', certainty),
);
const supplyOf = (...all: Parameters<typeof edited> extends [Job, ...infer E] ? E : never) => {
  const after = edited(fresh, ...all);
  expect(faultsOf(after)).toEqual([]);
  return after.supply;
};

describe('a fact that is entered', () => {
  it.each(['assumed', 'measured'] as const)('is marked in the same step: %s', (certainty) => {
    expect(supplyOf(markedBy(earthing, certainty)).certainty?.earthing).toBe(certainty);
  });

  it('is marked seen by leaving its mark unsaid, whatever was said before', () => {
    const told = markedBy(earthing, 'assumed');
    expect(supplyOf(told, markedBy(earthing, 'seen')).certainty).not.toHaveProperty('earthing');
  });

  it('stays as it is where it cannot be marked', () => {
    const kind = setPointKind({ id: 'p', label: 'P' }, 'joint');
    expect(markedBy(kind, 'assumed')).toEqual(kind);
  });

  it('marks points that were listed by what stands there, and by their circuit', () => {
    const point = { id: 'p1', label: 'P1', status: 'existing', kind: 'socket-twin' } as const;
    const points = [point, { ...point, id: 'p2', circuit: circuit.id }];
    const told = edited(fresh, markedBy(addFoundPoints(points), 'assumed'));
    expect(told.points.map(({ certainty }) => certainty)).toEqual([
      { kind: 'assumed' },
      { kind: 'assumed', circuit: 'assumed' },
    ]);
    expect(edited(fresh, markedBy(addFoundPoints(points), 'seen')).points[0]).not.toHaveProperty('certainty');
  });
});

describe('the order of a ring by how its cables were entered', () => {
  const orderAfter = (before: Certainty | null, entered: Certainty) =>
    edited(fresh, setCircuitCertainty(circuit, 'order', before), markOrder(circuit, entered)).circuits[0]
      ?.certainty?.order;

  it('is assumed by assumed cables, and never measured without readings', () => {
    expect(orderAfter(null, 'assumed')).toBe('assumed');
    expect(orderAfter('measured', 'assumed')).toBe('assumed');
    expect(orderAfter(null, 'measured')).toBe('seen');
    expect(orderAfter('assumed', 'seen')).toBe('seen');
  });

  it('stays proved where readings prove it', () => {
    expect(orderAfter('measured', 'seen')).toBe('measured');
  });
});

describe('a device of which the rating alone is told', () => {
  const bare = edited(fresh, setDevice(circuit, { ratingA: 32 }));

  it('has no standard, and no RCD that it was said to have or not to have', () => {
    expect(bare.circuits[0]?.device).toEqual({ ratingA: 32 });
    expect(faultsOf(bare)).toEqual([]);
  });

  it('is not there by another of its facts alone', () => {
    expect(edited(fresh, setDevice(circuit, { curve: 'B' })).circuits[0]).not.toHaveProperty('device');
  });

  it('stays assumed until it is said of the whole, when another part of it is seen', () => {
    const told = edited(bare, markDevice(circuit, 'assumed'));
    expect(edited(told, markDevice(circuit, 'seen')).circuits[0]?.certainty?.device).toBe('assumed');
    expect(
      edited(told, setCircuitCertainty(circuit, 'device', 'seen')).circuits[0]?.certainty,
    ).not.toHaveProperty('device');
  });
});

describe('RCDs', () => {
  it('are not looked at in a new job, none where that is said, and known once one is recorded', () => {
    expect(edited(fresh, addBoard('b2', 'B2')).boards[1]?.certainty).toEqual({ rcds: 'unknown' });
    expect(edited(fresh, setNoRcds(board, 'none')).boards[0]).not.toHaveProperty('certainty');
    expect(edited(fresh, putRcd(board, { id: 'q', type: 'A', mA: 30 })).boards[0]).not.toHaveProperty(
      'certainty',
    );
    expect(edited(fresh, setNoRcds(board, 'none'), setNoRcds(board, 'not-looked-at'))).toEqual(fresh);
  });

  it('before a circuit are three answers: one, none of them, not looked at', () => {
    const none = edited(fresh, setUpstreamRcd(circuit, 'none'));
    expect(none.circuits[0]?.certainty?.upstreamRcd).toBe('seen');
    expect(edited(none, setCircuitCertainty(circuit, 'upstreamRcd', 'seen'))).toEqual(none);
    expect(edited(none, setUpstreamRcd(circuit, null))).toEqual(fresh);
    const behind = edited(
      none,
      putRcd(board, { id: 'q', type: 'A', mA: 30 }),
      setUpstreamRcd(circuit, { id: 'q' }),
    );
    expect(behind.circuits[0]?.upstreamRcd).toBe('q');
    expect(behind.circuits[0]?.certainty).not.toHaveProperty('upstreamRcd');
    expect(faultsOf(edited(behind, setBoardCertainty(board, 'rcds', 'assumed')))).toEqual([]);
  });
});

describe('other sources and bonds', () => {
  it('are not looked at in a new job: sources none or which once said, and open again', () => {
    expect(fresh.supply.certainty?.otherSources).toBe('unknown');
    expect(supplyOf(setOtherSources([]))).not.toHaveProperty('certainty');
    expect(supplyOf(setOtherSources(['pv'])).otherSources).toEqual(['pv']);
    expect(edited(fresh, setOtherSources(['pv']), setOtherSources(null))).toEqual(fresh);
  });

  it('tell a service that is not there from one that nobody looked at', () => {
    const absent = edited(fresh, setBond('gas', 'no-service'));
    expect(absent.supply).toMatchObject({ bonding: [], absentServices: ['gas'] });
    expect(edited(absent, setBond('gas', null))).toEqual(fresh);
    expect(edited(absent, setBond('gas', { seen: false })).supply).toMatchObject({
      bonding: [{ service: 'gas', seen: false }],
    });
    expect(faultsOf(absent)).toEqual([]);
  });

  it('are sure one by one, also where something was said of all bonds together', () => {
    const whole = demoJob('saltglass-row');
    const all = { ...whole, supply: { ...whole.supply, certainty: { bonding: 'assumed' as const } } };
    const after = edited(all, setBondCertainty('gas', 'seen'));
    expect(after.supply.certainty).toEqual({ bonding: 'assumed', 'bond-gas': 'seen' });
    expect(edited(whole, setBondCertainty('gas', 'assumed'), setBondCertainty('gas', 'seen'))).toEqual(whole);
  });

  it('are asked for until they are told, an assumed earthing by what it is assumed to be', () => {
    const open = (job: Job) =>
      estimateOf(job).asFound.survey.flatMap(({ id, subjects }) =>
        subjects.includes('supply') && ['earthing', 'other-sources', 'bond-water', 'bond-gas'].includes(id)
          ? [id]
          : [],
      );
    expect(open(fresh)).toEqual(['earthing', 'bond-water', 'bond-gas', 'other-sources']);
    const told = edited(
      fresh,
      markedBy(earthing, 'assumed'),
      setOtherSources([]),
      setBond('water', { seen: true, mm2: 10 }),
      setBond('gas', 'no-service'),
    );
    expect(open(told)).toEqual(['earthing']);
    expect(open(demoJob('saltglass-row'))).toEqual([]);
  });
});
