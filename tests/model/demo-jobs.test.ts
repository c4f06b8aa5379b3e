import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Wall } from '#model/building.ts';
import type { Leg, Place, Reading } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { readJob } from '#model/read-job.ts';

const files = ['saltglass-row', 'saltglass-row-quoting', 'fernlow-close', 'quarrel-court'] as const;

function parsedFile(name: string): unknown {
  return JSON.parse(readFileSync(new URL(`../../data/jobs/${name}.json`, import.meta.url), 'utf8'));
}

function jobOf(name: (typeof files)[number]): Job {
  const read = readJob(parsedFile(name));
  if (!read.ok) throw new Error(`${name}: ${JSON.stringify(read.faults)}`);
  return read.job;
}

const saltglass = jobOf('saltglass-row');
const quoting = jobOf('saltglass-row-quoting');
const fernlow = jobOf('fernlow-close');
const everyJob = [
  ['saltglass-row', saltglass],
  ['saltglass-row-quoting', quoting],
  ['fernlow-close', fernlow],
  ['quarrel-court', jobOf('quarrel-court')],
] as const;
const readJobs = [
  ['saltglass-row', saltglass],
  ['fernlow-close', fernlow],
] as const;

/** What is asked for must be there; a missing thing is a fault of the demo file. */
function need<T>(value: T | undefined, what: string): T {
  if (value === undefined) throw new Error(`the demo file has no ${what}`);
  return value;
}

function wallOf(job: Job, id: string): { wall: Wall; storey: Job['storeys'][number] } {
  for (const storey of job.storeys) {
    const wall = storey.walls.find((candidate) => candidate.id === id);
    if (wall) return { wall, storey };
  }
  throw new Error(`the demo file has no wall ${id}`);
}

/** The spot on a wall's face: along the centre line, then half a thickness out; left is anticlockwise of from → to. */
function spotOf(job: Job, place: Place) {
  if ('storey' in place) {
    const storey = need(
      job.storeys.find(({ id }) => id === place.storey),
      `storey ${place.storey}`,
    );
    return {
      storey: storey.name,
      x: place.at[0],
      y: place.at[1],
      h: place.heightMm,
      z: storey.floorLevelMm + place.heightMm,
    };
  }
  const { wall, storey } = wallOf(job, place.wall);
  const [x0, y0] = wall.from;
  const [x1, y1] = wall.to;
  const lengthMm = Math.hypot(x1 - x0, y1 - y0);
  const [dx, dy] = [(x1 - x0) / lengthMm, (y1 - y0) / lengthMm];
  const outMm = (place.side === 'left' ? 1 : -1) * (wall.thicknessMm / 2);
  return {
    storey: storey.name,
    x: x0 + dx * place.alongMm - dy * outMm,
    y: y0 + dy * place.alongMm + dx * outMm,
    h: place.heightMm,
    z: storey.floorLevelMm + place.heightMm,
  };
}

type Row = readonly [label: string, storey: string, x: number, y: number, h: number];
const GF = 'Ground floor';
const FF = 'First floor';

const saltglassFound: readonly Row[] = [
  ['R1', GF, 950, 2500, 300],
  ['R2', GF, 4200, 900, 300],
  ['R3', GF, 4200, 3200, 300],
  ['R4', GF, 4200, 4300, 300],
  ['R5', GF, 2600, 7900, 1100],
  ['R6', GF, 0, 9400, 1100],
  ['R7', GF, 0, 6200, 300],
  ['R8', FF, 4200, 5000, 300],
  ['R9', FF, 4200, 900, 300],
  ['S1', FF, 0, 2600, 300],
];
const saltglassWanted: readonly Row[] = [
  ['W1', GF, 1080, 2200, 450],
  ['W2', FF, 2800, 0, 450],
  ['W3', FF, 1050, 5200, 450],
  ['W4', GF, 0, 8500, 1100],
];
const fernlowPoints: readonly Row[] = [
  ['A1', GF, 3800, 2600, 450],
  ['A2', GF, 0, 800, 450],
  ['A3', GF, 0, 3800, 450],
  ['A4', GF, 0, 5200, 450],
  ['A5', GF, 0, 7000, 1100],
  ['A6', GF, 1400, 8400, 1100],
  ['A7', GF, 3000, 8400, 450],
  ['A8', GF, 5600, 7600, 1100],
  ['A9', GF, 5600, 5200, 450],
  ['B1', GF, 1800, 4400, 1100],
  ['B2', GF, 2700, 4400, 1100],
  ['B3', GF, 3600, 4400, 1100],
];

function rowOf(job: Job, label: string): Row {
  const point = need(
    job.points.find((candidate) => candidate.label === label),
    `point ${label}`,
  );
  const { storey, x, y, h } = spotOf(job, need(point.place, `place of ${label}`));
  return [label, storey, x, y, h];
}

describe('every demo job', () => {
  it.each(files)('%s is accepted by the reader without a fault', (name) => {
    expect(readJob(parsedFile(name))).toMatchObject({ ok: true });
  });

  it.each(everyJob)('%s has ids of ten characters, each once', (_, job) => {
    const ids: string[] = [];
    JSON.stringify(job, (key, value: unknown) => {
      if (key === 'id') ids.push(String(value));
      return value;
    });
    expect(ids.length).toBeGreaterThan(90);
    expect(ids.filter((id) => id.length !== 10)).toEqual([]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it.each(everyJob)('%s connects every wanted point in each of its schemes', (_, job) => {
    const wanted = job.points.filter(({ status }) => status === 'wanted').map(({ id }) => id);
    expect(wanted.length).toBeGreaterThan(2);
    expect(job.schemes.length).toBeGreaterThan(2);
    for (const scheme of job.schemes) {
      const reached = JSON.stringify(scheme.connections);
      expect(wanted.filter((id) => !reached.includes(`"${id}"`))).toEqual([]);
    }
  });
});

describe('positions on the inner faces', () => {
  it.each([...saltglassFound, ...saltglassWanted])('puts %s of 3 Saltglass Row in its place', (...row) => {
    expect(rowOf(saltglass, row[0])).toEqual(row);
  });

  it.each(fernlowPoints)('puts %s of 18 Fernlow Close in its place', (...row) => {
    expect(rowOf(fernlow, row[0])).toEqual(row);
  });

  it.each([
    ['saltglass-row', saltglass, [GF, 0, 600, 1900]],
    ['saltglass-row-quoting', quoting, [GF, 0, 600, 1900]],
    ['fernlow-close', fernlow, [GF, 5600, 600, 1450]],
  ] as const)('puts the board of %s in its place', (_, job, expected) => {
    const { storey, x, y, h } = spotOf(job, need(job.boards[0]?.place, 'place of the board'));
    expect([storey, x, y, h]).toEqual(expected);
  });

  it('shows the quoting visit the same outlets under other labels', () => {
    const spots = quoting.points
      .filter(({ status }) => status === 'existing')
      .map(({ label }) => rowOf(quoting, label));
    const bare = (rows: readonly Row[]) => rows.map(([, ...spot]) => spot.join()).toSorted();
    expect(bare(spots)).toEqual(bare(saltglassFound));
    expect(saltglassWanted.map(([label]) => rowOf(quoting, label))).toEqual(saltglassWanted);
  });
});

function labelOfEnd(job: Job, end: Leg['from']): string {
  if ('origin' in end) return end.end ?? 'board';
  return need(
    job.points.find(({ id }) => id === end.point),
    `point ${end.point}`,
  ).label;
}

/** Legs in the file's order as `A–R1 6.3`. */
function legWords(job: Job): readonly string[] {
  return job.legs.map(
    (leg) => `${labelOfEnd(job, leg.from)}–${labelOfEnd(job, leg.to)} ${(leg.lengthMm ?? 0) / 1000}`,
  );
}

const ringLegs = (job: Job) => job.legs.slice(0, 10);
const ringMm = (job: Job) => ringLegs(job).reduce((sum, leg) => sum + (leg.lengthMm ?? 0), 0);
const spurMm = (job: Job) => need(job.legs[10]?.lengthMm, 'spur');

describe('legs as measured', () => {
  it('runs round 3 Saltglass Row from end A to end B in 61.1 m', () => {
    const expected =
      'A–R1 6.3, R1–R2 6.2, R2–R3 3.6, R3–R4 2.4, R4–R5 7.3, R5–R6 7, R6–R7 5.3, R7–R8 8.5, R8–R9 7.9, R9–B 6.6, R9–S1 7.1';
    expect(legWords(saltglass)).toEqual(expected.split(', '));
    expect(ringMm(saltglass)).toBe(61_100);
  });

  it('runs round 18 Fernlow Close from end A to end B in 70.7 m', () => {
    const expected =
      'A–A1 7.9, A1–A2 10.1, A2–A3 7.5, A3–A4 5.9, A4–A5 5.7, A5–A6 6, A6–A7 5.5, A7–A8 7.2, A8–A9 6.2, A9–B 8.7, A1–A10 4.1';
    expect(legWords(fernlow)).toEqual(expected.split(', '));
    expect(ringMm(fernlow)).toBe(70_700);
  });

  it.each(readJobs)('%s has every length measured, every route assumed, in 2.5/1.5 mm²', (_, job) => {
    for (const leg of job.legs) {
      expect(leg.certainty).toEqual({ length: 'measured', route: 'assumed' });
      expect(leg.cable).toEqual({ type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 });
    }
  });

  it.each(readJobs.flatMap(([name, job]) => job.legs.map((leg) => [name, leg.id, job, leg] as const)))(
    '%s draws %s within a tenth of its measured length',
    (_name, _id, job, leg) => {
      const measuredMm = need(leg.lengthMm, 'length');
      const endsMm = 'origin' in leg.from || 'origin' in leg.to ? 1000 : 400;
      expect(Math.abs(drawnMm(job, leg) + endsMm - measuredMm) / measuredMm).toBeLessThan(0.1);
    },
  );

  it('passes 6.0 m from R8 under the boards at (2900, 900)', () => {
    const leg = need(
      saltglass.legs.find(({ id }) => id === 'leg-r08r09'),
      'leg R8–R9',
    );
    const toCornerMm = 410 + 1300 + 4100; // down from R8, across, along
    expect(need(leg.via, 'corners').map(({ at }) => at)).toEqual([
      [4200, 5000],
      [2900, 5000],
      [2900, 900],
      [4200, 900],
    ]);
    expect(Math.abs(toCornerMm + 200 - 6000)).toBeLessThan(50);
  });
});

/** Right-angled length through the corners given, else through the void beside the storeys; mm. */
function drawnMm(job: Job, leg: Leg): number {
  const from = endSpot(job, leg.from);
  const to = endSpot(job, leg.to);
  if (leg.via) {
    const corners = leg.via.map((corner) =>
      spotOf(job, { storey: corner.storey, at: corner.at, heightMm: corner.heightMm }),
    );
    const path = [from, ...corners, to];
    return path
      .slice(1)
      .reduce((sum, spot, index) => sum + rightAngledMm(need(path[index], 'corner'), spot), 0);
  }
  const lowest = job.storeys.find(({ floorLevelMm }) => floorLevelMm === 0);
  const upper = need(
    job.storeys.find(({ floorLevelMm }) => floorLevelMm > 0),
    'upper storey',
  );
  const underGround = lowest?.floor.build === 'suspended-timber' && from.storey === GF && to.storey === GF;
  const voidMm = underGround ? -110 : upper.floorLevelMm - 110;
  const plan = Math.abs(from.x - to.x) + Math.abs(from.y - to.y);
  return Math.abs(from.z - voidMm) + plan + Math.abs(to.z - voidMm);
}

type Spot = ReturnType<typeof spotOf>;

function rightAngledMm(a: Spot, b: Spot): number {
  return Math.abs(a.x - b.x) + Math.abs(a.y - b.y) + Math.abs(a.z - b.z);
}

function endSpot(job: Job, end: Leg['from']): Spot {
  const place = 'origin' in end ? job.boards[0]?.place : job.points.find(({ id }) => id === end.point)?.place;
  return spotOf(job, need(place, 'place of an end'));
}

/**
 * Largest resistance of class 1 copper at 20 °C: 7.41 Ω/km for 2.5 mm², 12.1 Ω/km for 1.5 mm².
 * Source: IEC 60228 (BS EN 60228), table of class 1 solid conductors.
 */
const LINE_OHM_PER_M = 0.00741;
const CPC_OHM_PER_M = 0.0121;
/** Half the last digit shown by the meter. */
const HALF_DIGIT = 0.005 + 1e-9;

type Loop = Extract<Reading, { kind: 'loop' }>;

function loops(job: Job, loop: Loop['loop'], from: Loop['from']): readonly Loop[] {
  return job.readings.filter(
    (reading): reading is Loop => reading.kind === 'loop' && reading.loop === loop && reading.from === from,
  );
}

/** Metres from end A to each point on the ring, and the spur hung on its source. */
function positionsM(job: Job): ReadonlyMap<string, { readonly fromA: number; readonly spur: number }> {
  const positions = new Map<string, { fromA: number; spur: number }>();
  let fromA = 0;
  for (const leg of ringLegs(job)) {
    fromA += (leg.lengthMm ?? 0) / 1000;
    if ('point' in leg.to) positions.set(leg.to.point, { fromA, spur: 0 });
  }
  const spur = need(job.legs[10], 'spur');
  if (!('point' in spur.from) || !('point' in spur.to)) throw new Error('the spur has no source');
  const source = need(positions.get(spur.from.point), 'source of the spur');
  positions.set(spur.to.point, { fromA: source.fromA, spur: spurMm(job) / 1000 });
  return positions;
}

/** Line to cpc at a point with the ring's line and cpc ends cross-connected: two ways round, in parallel; Ω. */
function crossedCpcOhm(totalM: number, position: { fromA: number; spur: number }): number {
  const beyond = totalM - position.fromA;
  const byA = position.fromA * LINE_OHM_PER_M + beyond * CPC_OHM_PER_M;
  const byB = beyond * LINE_OHM_PER_M + position.fromA * CPC_OHM_PER_M;
  return (byA * byB) / (byA + byB) + position.spur * (LINE_OHM_PER_M + CPC_OHM_PER_M);
}

describe.each(readJobs)('readings of %s', (_, job) => {
  const totalM = ringMm(job) / 1000;
  const positions = positionsM(job);
  const positionOf = (point: string | undefined) =>
    need(positions.get(need(point, 'point of a reading')), 'place on the ring');

  it('reads r1 and r2 end to end by the length, and rn no more than 0.01 Ω higher', () => {
    const r1 = need(loops(job, 'L', 'end-to-end')[0], 'r1').ohm;
    const rn = need(loops(job, 'N', 'end-to-end')[0], 'rn').ohm;
    const r2 = need(loops(job, 'cpc', 'end-to-end')[0], 'r2').ohm;
    expect(Math.abs(r1 - totalM * LINE_OHM_PER_M)).toBeLessThanOrEqual(HALF_DIGIT);
    expect(Math.abs(r2 - totalM * CPC_OHM_PER_M)).toBeLessThanOrEqual(HALF_DIGIT);
    expect(rn - r1).toBeGreaterThanOrEqual(0);
    expect(rn - r1).toBeLessThanOrEqual(0.01);
  });

  it.each([
    ['L-N', 2 * LINE_OHM_PER_M],
    ['L-cpc', LINE_OHM_PER_M + CPC_OHM_PER_M],
  ] as const)('reads %s from both ends to a link at every point by the length', (loop, ohmPerM) => {
    for (const end of ['A', 'B'] as const) {
      const readings = loops(job, loop, end);
      expect(readings.map(({ linkedAt }) => linkedAt).toSorted()).toEqual([...positions.keys()].toSorted());
      for (const { linkedAt, ohm } of readings) {
        const { fromA, spur } = positionOf(linkedAt);
        const metres = (end === 'A' ? fromA : totalM - fromA) + spur;
        expect(Math.abs(ohm - metres * ohmPerM)).toBeLessThanOrEqual(HALF_DIGIT);
      }
    }
  });

  it('reads line to neutral alike round the crossed ring, more at the spur', () => {
    const readings = loops(job, 'L-N', 'crossed');
    expect(readings).toHaveLength(10);
    for (const { at, ohm } of readings) {
      const expected = (totalM * LINE_OHM_PER_M) / 2 + positionOf(at).spur * 2 * LINE_OHM_PER_M;
      expect(Math.abs(ohm - expected)).toBeLessThanOrEqual(HALF_DIGIT);
    }
  });

  it('reads line to cpc round the crossed ring by the place, more at the spur', () => {
    const readings = loops(job, 'L-cpc', 'crossed');
    expect(readings).toHaveLength(10);
    for (const { at, ohm } of readings)
      expect(Math.abs(ohm - crossedCpcOhm(totalM, positionOf(at)))).toBeLessThanOrEqual(HALF_DIGIT);
  });

  it('reads Zs as Ze with R1 + R2 on top, in the middle and at the spur', () => {
    const ze = need(job.supply.zeOhm, 'Ze');
    const readings = job.readings.filter((reading) => reading.kind === 'zs');
    expect(readings).toHaveLength(2);
    for (const { at, ohm } of readings)
      expect(Math.abs(ohm - ze - crossedCpcOhm(totalM, positionOf(at)))).toBeLessThanOrEqual(HALF_DIGIT);
  });

  it('has a prospective fault current that Ze explains', () => {
    const faultKA = job.supply.nominalV / need(job.supply.zeOhm, 'Ze') / 1000;
    expect(Math.abs(faultKA - need(job.supply.pfcKA, 'fault current'))).toBeLessThanOrEqual(HALF_DIGIT);
  });
});

describe('figures typed in from the survey sheets', () => {
  const ends = (job: Job) =>
    (['L', 'N', 'cpc'] as const).map((loop) => loops(job, loop, 'end-to-end')[0]?.ohm);
  const crossed = (job: Job, loop: Loop['loop'], label: string) => {
    const point = job.points.find((candidate) => candidate.label === label);
    return loops(job, loop, 'crossed').find(({ at }) => at === point?.id)?.ohm;
  };
  const zs = (job: Job) =>
    job.readings.filter(({ kind }) => kind === 'zs').map((reading) => 'ohm' in reading && reading.ohm);

  it('holds those of 3 Saltglass Row', () => {
    expect(ends(saltglass)).toEqual([0.45, 0.45, 0.74]);
    expect(['R1', 'R5', 'S1'].map((label) => crossed(saltglass, 'L-N', label))).toEqual([0.23, 0.23, 0.33]);
    expect(['R5', 'S1'].map((label) => crossed(saltglass, 'L-cpc', label))).toEqual([0.3, 0.43]);
    expect(zs(saltglass)).toEqual([0.54, 0.67]);
    expect(saltglass.supply).toMatchObject({ earthing: 'TN-C-S', zeOhm: 0.24, pfcKA: 0.96, mainFuseA: 80 });
    expect(saltglass.circuits[0]?.device).toEqual({
      standard: 'BS-EN-60898',
      curve: 'B',
      ratingA: 32,
      breakingKA: 6,
    });
    expect(saltglass.circuits[0]?.colours).toBe('old');
    expect(saltglass.points.find(({ label }) => label === 'R8')?.asFound?.boxDepthMm).toBe(25);
  });

  it('holds those of 18 Fernlow Close', () => {
    expect(ends(fernlow)).toEqual([0.52, 0.52, 0.86]);
    expect(['A1', 'A5', 'A10'].map((label) => crossed(fernlow, 'L-N', label))).toEqual([0.26, 0.26, 0.32]);
    expect(['A5', 'A10'].map((label) => crossed(fernlow, 'L-cpc', label))).toEqual([0.34, 0.41]);
    expect(zs(fernlow)).toEqual([0.76, 0.83]);
    expect(fernlow.supply).toMatchObject({ earthing: 'TN-S', zeOhm: 0.42, pfcKA: 0.55 });
    expect(fernlow.circuits[0]?.device).toMatchObject({
      standard: 'BS-EN-61009',
      ratingA: 32,
      rcd: { type: 'A', mA: 30 },
    });
    expect(fernlow.points.flatMap(({ load }) => (load ? [[load.watts, load.fixed]] : []))).toEqual([
      [3000, false],
      [1400, false],
      [1700, false],
    ]);
  });
});

describe('the quoting visit', () => {
  it('knows neither legs, readings, boxes, Ze nor what the board takes', () => {
    expect(quoting.legs).toEqual([]);
    expect(quoting.readings).toEqual([]);
    expect(quoting.points.filter(({ asFound }) => asFound !== undefined)).toEqual([]);
    expect(quoting.storeys.map(({ floor }) => floor.liftable)).toEqual([undefined, undefined]);
    expect(quoting.supply.zeOhm).toBeUndefined();
    expect(quoting.supply.bonding.map(({ seen, mm2 }) => [seen, mm2])).toEqual([
      [true, undefined],
      [true, undefined],
    ]);
    expect(quoting.boards[0]?.rcboAvailable).toBeUndefined();
    expect(quoting.circuits[0]).toMatchObject({ shape: 'ring', certainty: { shape: 'assumed' } });
  });

  it('names no leg in any connection', () => {
    expect(JSON.stringify(quoting.schemes)).not.toContain('"leg"');
    expect(quoting.schemes.flatMap(({ connections }) => connections.map(({ kind }) => kind))).toContain(
      'ring-extension',
    );
  });
});

const storeys = everyJob.flatMap(([name, job]) =>
  job.storeys.map((storey) => [name, storey.name, storey, job] as const),
);
const same = (a: readonly number[], b: readonly number[]) => a[0] === b[0] && a[1] === b[1];

describe.each(storeys)('the house of %s, %s', (_name, _storey, storey, job) => {
  it('has rooms whose walls close anticlockwise, each looking inwards', () => {
    for (const room of storey.rooms) {
      // With the room on the left all the way round, a wall looked at from its left is walked from → to.
      const walked = room.walls.map(({ wall, side }) => {
        const { from, to } = wallOf(job, wall).wall;
        return side === 'left' ? ([from, to] as const) : ([to, from] as const);
      });
      walked.forEach(([start], index) => {
        expect(start).toEqual(walked.at(index - 1)?.[1]);
      });
      const doubleArea = walked.reduce((sum, [a, b]) => sum + a[0] * b[1] - b[0] * a[1], 0);
      expect(doubleArea).toBeGreaterThan(0);
    }
  });

  it('describes each wall once, square, and splits it at every junction', () => {
    for (const [index, wall] of storey.walls.entries()) {
      expect(wall.from[0] === wall.to[0] || wall.from[1] === wall.to[1]).toBe(true);
      for (const other of storey.walls.slice(index + 1)) {
        expect(same(wall.from, other.from) && same(wall.to, other.to)).toBe(false);
        expect(same(wall.from, other.to) && same(wall.to, other.from)).toBe(false);
      }
      for (const { from, to } of storey.walls)
        for (const end of [from, to]) expect(isWithin(end, wall)).toBe(false);
    }
  });

  it('has a room on both sides of inner walls, on one side of party and outer walls', () => {
    const looks = storey.rooms.flatMap(({ walls }) => walls.map(({ wall, side }) => `${wall} ${side}`));
    expect(new Set(looks).size).toBe(looks.length);
    for (const wall of storey.walls) {
      const sides = looks.filter((look) => look.startsWith(`${wall.id} `)).length;
      expect([wall.id, sides]).toEqual([wall.id, wall.external || wall.party === true ? 1 : 2]);
    }
  });

  it('keeps openings inside their walls, apart, and clear of every plate on that face', () => {
    for (const wall of storey.walls) {
      const lengthMm = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]);
      const spans = wall.openings.toSorted((a, b) => a.alongMm - b.alongMm);
      spans.forEach((opening, index) => {
        const previous = spans[index - 1];
        expect(opening.alongMm).toBeGreaterThanOrEqual(previous ? previous.alongMm + previous.widthMm : 0);
        expect(opening.alongMm + opening.widthMm).toBeLessThanOrEqual(lengthMm);
        expect(platesIn(job, wall.id, opening)).toEqual([]);
      });
    }
  });
});

function isWithin([x, y]: readonly [number, number], { from, to }: Wall): boolean {
  const inX = x > Math.min(from[0], to[0]) && x < Math.max(from[0], to[0]) && y === from[1] && y === to[1];
  const inY = y > Math.min(from[1], to[1]) && y < Math.max(from[1], to[1]) && x === from[0] && x === to[0];
  return inX || inY;
}

/** Labels of points whose twin plate (about 150 mm wide) would overlap the opening's width. */
function platesIn(job: Job, wallId: string, opening: Wall['openings'][number]): readonly string[] {
  return job.points.flatMap(({ label, place }) => {
    if (!place || !('wall' in place) || place.wall !== wallId) return [];
    const middleMm = opening.alongMm + opening.widthMm / 2;
    return Math.abs(place.alongMm - middleMm) < opening.widthMm / 2 + 75 ? [label] : [];
  });
}

describe('the building facts that routes and prices hang on', () => {
  it('has boards that lift and joists along x in 3 Saltglass Row', () => {
    expect(
      saltglass.storeys.map(({ floor }) => [
        floor.joistDepthMm,
        floor.voidMm,
        floor.joistsRunDeg,
        floor.liftable,
      ]),
    ).toEqual([
      [100, 450, 0, true],
      [175, 225, 0, true],
    ]);
    expect(saltglass.storeys.map(({ floorLevelMm }) => floorLevelMm)).toEqual([0, 2725]);
  });

  it('has a solid ground floor under joists along y in 18 Fernlow Close', () => {
    expect(fernlow.storeys.map(({ floor }) => [floor.build, floor.joistDepthMm, floor.joistsRunDeg])).toEqual(
      [
        ['solid', undefined, undefined],
        ['suspended-timber', 220, 90],
      ],
    );
  });

  it.each([
    ['saltglass-row', saltglass, ['R2', 'R3', 'R4', 'R6', 'R7', 'R8', 'R9', 'S1', 'W4']],
    ['fernlow-close', fernlow, ['A2', 'A3', 'A4', 'A5']],
  ] as const)('has the points of %s that stand on party walls there', (_, job, expected) => {
    const labels = job.points.flatMap(({ label, place }) =>
      place && 'wall' in place && wallOf(job, place.wall).wall.party ? [label] : [],
    );
    expect(labels).toEqual(expected);
  });
});
