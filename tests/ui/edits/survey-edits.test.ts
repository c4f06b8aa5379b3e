import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoJob } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { setAnswer, setAnswerCertainty } from '../../../ui/edits/answers.ts';
import { putRcd, removeRcd, setBoardCertainty, setBoardFact, setNoRcds } from '../../../ui/edits/boards.ts';
import {
  setCircuitCertainty,
  setCircuitFact,
  setCircuitLoads,
  setDevice,
} from '../../../ui/edits/circuits.ts';
import { setLegCertainty, setLegFact } from '../../../ui/edits/legs.ts';
import {
  addPoints,
  copyPoint,
  setFoundFact,
  setPointCertainty,
  setPointFact,
  setPointKind,
} from '../../../ui/edits/points.ts';
import { putReading, removeReading, setConductorC, setEndToEnd } from '../../../ui/edits/readings.ts';
import { setReplaces, setTakenAway } from '../../../ui/edits/replacements.ts';
import { setJobName, setSiteAddress, setSiteFact } from '../../../ui/edits/site.ts';
import {
  setCeilingFact,
  setFloorFact,
  setStoreyCertainty,
  setStoreyFact,
} from '../../../ui/edits/storeys.ts';
import { setBond, setSupplyCertainty, setSupplyFact } from '../../../ui/edits/supply.ts';
import { edited, faultsOf, partsChanged } from './random-edits.ts';

const job = demoJob('saltglass-row');
const r4 = { id: 'r4-dining1', label: 'R4' };
const w1 = { id: 'w1-living1', label: 'W1' };
const w4 = { id: 'w4-boiler1', label: 'W4' };
const ring = { id: 'ring-house', name: 'Ring' };
const board = { id: 'board-hall', label: 'Consumer unit' };
const ground = { id: 'ground-flr', name: 'Ground floor' };
const question = { id: 'consent', words: 'Consent?' };
const pointOf = (of: typeof job, id: string) => of.points.find((point) => point.id === id);

describe('how sure a fact is', () => {
  it('is left unsaid where it was seen, and goes with the fact', () => {
    const assumed = edited(job, setSupplyCertainty('earthing', 'assumed'));
    expect(assumed.supply.certainty).toMatchObject({ earthing: 'assumed', zeOhm: 'measured' });
    expect(edited(assumed, setSupplyCertainty('earthing', 'seen')).supply.certainty).not.toHaveProperty(
      'earthing',
    );
    const gone = edited(assumed, setSupplyFact('earthing', null));
    expect(gone.supply).not.toHaveProperty('earthing');
    expect(gone.supply.certainty).not.toHaveProperty('earthing');
  });

  it('leaves no empty list of certainties behind', () => {
    const after = edited(job, setPointCertainty({ id: 'r1-hallway', label: 'R1' }, 'boxDepthMm', 'seen'));
    expect(pointOf(after, 'r1-hallway')).not.toHaveProperty('certainty');
  });

  it('is said of one fact of a plate where the whole plate was assumed', () => {
    const depth = edited(job, setFoundFact(r4, 'boxDepthMm', 35));
    const points = depth.points.map((point) =>
      point.id === r4.id ? { ...point, certainty: { asFound: 'assumed' as const } } : point,
    );
    const whole = { ...depth, points };
    const after = edited(whole, setPointCertainty(r4, 'boxDepthMm', 'seen'));
    expect(pointOf(after, r4.id)?.certainty).toEqual({ asFound: 'assumed', boxDepthMm: 'seen' });
  });

  it('tells a leg’s length and its route apart', () => {
    const after = edited(job, setLegCertainty('leg-r01r02', 'R1–R2', 'route', 'measured'));
    expect(after.legs.find(({ id }) => id === 'leg-r01r02')?.certainty).toEqual({
      length: 'measured',
      route: 'measured',
    });
    const emptied = edited(after, setLegFact('leg-r01r02', 'R1–R2', 'lengthMm', null));
    expect(emptied.legs.find(({ id }) => id === 'leg-r01r02')?.certainty).toEqual({ route: 'measured' });
  });

  it('says of a ring’s order that it was seen, since no field stands for it', () => {
    const seen = edited(job, setCircuitCertainty(ring, 'order', 'seen'));
    expect(seen.circuits[0]?.certainty).toMatchObject({ order: 'seen' });
    expect(edited(seen, setCircuitCertainty(ring, 'order', null)).circuits[0]?.certainty).toEqual({
      shape: 'measured',
    });
  });
});

describe('each family of edits', () => {
  it.each([
    ['site', ['site'], setSiteFact('tenure', 'tenant')],
    ['temperature', ['site'], setConductorC(12)],
    ['address', ['site'], setSiteAddress('1 The Row\n\n  Town ')],
    ['name', ['title'], setJobName('title', 'Another')],
    ['supply', ['supply'], setSupplyFact('mainFuseA', 100)],
    ['bonds', ['supply'], setBond('oil', { seen: false })],
    ['boards', ['boards'], setBoardFact(board, 'spareWays', 0)],
    ['circuits', ['circuits'], setCircuitFact(ring, 'areaServedM2', 80)],
    ['devices', ['circuits'], setDevice(ring, { ratingA: 20 })],
    ['loads', ['circuits'], setCircuitLoads(ring, [{ watts: 2000, use: 'heater' }])],
    ['points', ['points'], setPointFact(r4, 'accessible', false)],
    ['plates', ['points'], setFoundFact(r4, 'cablesSeen', 2)],
    ['kinds', ['points'], setPointKind(w4, 'socket-single')],
    ['replacements', ['points'], setReplaces(w1, r4)],
    ['legs', ['legs'], setLegFact('leg-r01r02', 'R1–R2', 'lengthMm', 5000)],
    ['readings', ['readings'], setEndToEnd(ring, { conductor: 'L', ohm: 0.5, newId: 'n' })],
    ['answers', ['answers'], setAnswer(question, 'given')],
    ['storeys', ['storeys'], setStoreyFact(ground, 'heightMm', 2600)],
    ['floors', ['storeys'], setFloorFact(ground, 'liftable', null)],
    ['ceilings', ['storeys'], setCeilingFact(ground, 'lining', 'lath-and-plaster')],
    ['floor certainty', ['storeys'], setStoreyCertainty(ground, { part: 'floor', fact: 'build' }, 'assumed')],
  ] as const)('changes its own part of the job and no other: %s', (_, parts, edit) => {
    const after = edited(job, edit);
    expect(partsChanged(job, after)).toEqual(parts);
    expect(faultsOf(after)).toEqual([]);
  });

  it('lets a thing that is not there be', () => {
    const nobody = { id: 'nobody', label: 'N1', name: 'N1' };
    const none = [
      setPointFact(nobody, 'label', 'X'),
      setPointKind(nobody, 'other'),
      setFoundFact(nobody, 'slackMm', 1),
      setBoardFact(nobody, 'ways', 1),
      setCircuitFact(nobody, 'name', 'X'),
      setLegFact('nobody', 'X', 'lengthMm', 1),
      setFloorFact(nobody, 'heated', true),
      setTakenAway(nobody, true),
      setReplaces(nobody, r4),
      removeReading('nobody', 'X'),
      removeRcd(nobody, 'x'),
      setAnswerCertainty({ id: 'nobody', words: '' }, 'seen'),
    ];
    expect(edited(job, ...none)).toEqual(job);
  });
});

describe('points', () => {
  it('lose what belongs to their old kind alone', () => {
    expect(pointOf(edited(job, setPointKind(w4, 'fused-unit')), w4.id)).toHaveProperty('unit');
    expect(pointOf(edited(job, setPointKind(w4, 'flex-outlet')), w4.id)).not.toHaveProperty('unit');
  });

  it('are copied beside themselves, without their place', () => {
    const original = pointOf(job, w4.id);
    if (original === undefined) throw new Error('no W4');
    const after = edited(job, copyPoint(original, 'w5', 'W5'));
    const { place: _place, ...same } = original;
    expect(after.points.at(after.points.findIndex(({ id }) => id === w4.id) + 1)).toEqual({
      ...same,
      id: 'w5',
      label: 'W5',
    });
  });

  it('are added by what is known of them', () => {
    const made = [1, 2].map(
      (n) => ({ id: `k${n}`, label: `Kitchen ${n}`, status: 'existing', kind: 'socket-twin' }) as const,
    );
    const after = edited(job, addPoints(made));
    expect(after.points.slice(-2)).toMatchObject(made);
    expect(faultsOf(after)).toEqual([]);
  });

  it('replace one other at a time, and give it back', () => {
    const once = edited(job, setReplaces(w1, r4));
    expect(pointOf(once, r4.id)?.status).toBe('replaced');
    const other = edited(once, setReplaces(w1, { id: 'r5-kitchen', label: 'R5' }));
    expect(pointOf(other, r4.id)?.status).toBe('existing');
    expect(edited(once, setReplaces(w1, null))).toEqual(job);
    expect(edited(once, setTakenAway(r4, false))).toEqual(job);
  });
});

describe('readings end to end', () => {
  it('are one a conductor, changed in place', () => {
    const after = edited(job, setEndToEnd(ring, { conductor: 'N', ohm: 0.47, newId: 'n' }));
    expect(after.readings.find(({ id }) => id === 'ends-neut1')).toMatchObject({
      ohm: 0.47,
      resolutionOhm: 0.01,
    });
    expect(after.readings).toHaveLength(job.readings.length);
    const gone = edited(after, setEndToEnd(ring, { conductor: 'N', ohm: null, newId: 'n' }));
    expect(gone.readings.some(({ id }) => id === 'ends-neut1')).toBe(false);
    const anew = edited(gone, setEndToEnd(ring, { conductor: 'N', ohm: 0.5, newId: 'n' }));
    expect(anew.readings.at(-1)).toMatchObject({
      id: 'n',
      loop: 'N',
      from: 'end-to-end',
      phase: 'before',
      ohm: 0.5,
    });
  });

  it('come back as they were when any reading is put in its own place', () => {
    fc.assert(
      fc.property(fc.nat({ max: job.readings.length - 1 }), (index) => {
        const reading = job.readings[index];
        expect(reading === undefined ? null : edited(job, putReading(reading, 'it'))).toEqual(job);
      }),
    );
  });
});

describe('boards and answers', () => {
  it('forget an RCD wherever circuits were recorded behind it', () => {
    const behind = edited(
      job,
      putRcd(board, { id: 'rcd-1', type: 'A', mA: 30 }),
      setCircuitFact(ring, 'upstreamRcd', 'rcd-1'),
    );
    expect(faultsOf(behind)).toEqual([]);
    const typed = edited(behind, putRcd(board, { id: 'rcd-1', type: 'F', mA: 100 }));
    expect(typed.boards[0]?.rcds).toEqual([{ id: 'rcd-1', type: 'F', mA: 100 }]);
    // With the last one gone nobody has said that there is none.
    const open = edited(job, setBoardCertainty(board, 'rcds', 'unknown'));
    expect(edited(typed, removeRcd(board, 'rcd-1'))).toEqual(open);
    expect(edited(open, setNoRcds(board, 'none'))).toEqual(job);
  });

  it('hold one answer a question', () => {
    const after = edited(
      job,
      setAnswer(question, 'not-given'),
      setAnswer(question, 'given'),
      setAnswerCertainty(question, 'assumed'),
    );
    expect(after.answers.filter((answer) => answer.question === 'consent')).toEqual([
      { question: 'consent', value: 'given', certainty: 'assumed' },
    ]);
    expect(edited(after, setAnswer(question, null))).toEqual(job);
  });
});
