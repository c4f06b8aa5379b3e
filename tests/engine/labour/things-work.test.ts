import { describe, expect, it } from 'vitest';
import type { FusedUnit } from '#engine/connections/things.ts';
import { tariffOf } from '#engine/schemes/tariff.ts';
import type { Device, Leg } from '#model/installation.ts';
import type { Remedy } from '#model/scheme.ts';
import {
  accessory,
  box,
  emptyWorked,
  joint,
  labourOf,
  library,
  quantitiesOf,
  terminal,
  workedWith,
} from './labour-material.ts';

/** What is done about boxes, of all that a job takes. */
const boxTasks = (labour: ReturnType<typeof labourOf>): readonly string[] =>
  [...labour.keys()].filter((task) => /box|frame/.test(task));

describe('back boxes', () => {
  it.each([
    [{ wallCore: 'brick' }, 'box-block-single'],
    [{ wallCore: 'aerated-block', gangs: 2 }, 'box-block-twin'],
    [{ wallCore: 'hard-brick' }, 'box-hard-brick-single'],
    [{ wallCore: 'hard-brick', gangs: 2 }, 'box-hard-brick-twin'],
    [{ wallCore: 'concrete', gangs: 2 }, 'box-concrete-twin'],
    [{ wallCore: 'timber-stud', build: 'dry-lining', finish: 'plasterboard' }, 'box-dry-lining'],
    [{ wallCore: 'timber-stud', build: 'steel', finish: 'lath-and-plaster' }, 'box-lath-and-plaster'],
    [{ wallCore: 'block', lining: 'dot-and-dab' }, 'box-dot-and-dab'],
    [{ wallCore: 'concrete', build: 'surface' }, 'box-surface'],
    [{ wallCore: null }, 'box-unknown-wall'],
  ] as const)('%j are fitted as %s', (spread, task) => {
    const labour = labourOf(workedWith({ boxes: [box('w1', spread)] }));
    expect(labour.get(task)).toMatchObject({ quantity: 1, causes: ['w1'] });
    expect([...labour.keys()].filter((id) => id.startsWith('box-'))).toEqual([task]);
  });

  it('that stay take no work', () => {
    const labour = labourOf(workedWith({ boxes: [box('r1', { action: 'keep' })] }));
    expect(labour.size).toBe(0);
  });

  it('that are exchanged are taken out first', () => {
    const worked = workedWith({ boxes: [box('r8', { action: 're-box' })] });
    expect(quantitiesOf(worked, 'remove-box', 'box-block-single', 'fill-box')).toEqual([1, 1, 1]);
  });

  it('are made good round in two coats where the job says so', () => {
    const worked = {
      ...workedWith({ boxes: [box('w1')] }),
      tariff: tariffOf(library, { chased: 'oval', filling: 'bonding-and-finish' as const }),
    };
    expect(quantitiesOf(worked, 'fill-box', 'fill-box-two-coats')).toEqual([0, 1]);
  });

  it('under a spacer frame take the frame alone, in less than an exchange takes', () => {
    const framed = labourOf(workedWith({ boxes: [box('r8', { action: 'frame', frameMm: 10 })] }));
    expect(boxTasks(framed)).toEqual(['fit-frame']);
    expect(framed.get('fit-frame')).toMatchObject({ quantity: 1, stage: 'second-fix', causes: ['r8'] });
    const exchanged = labourOf(workedWith({ boxes: [box('r8', { action: 're-box' })] }));
    for (const end of ['lowMin', 'typicalMin', 'highMin'] as const) {
      const minutes = (labour: typeof framed) =>
        boxTasks(labour).reduce((sum, task) => sum + (labour.get(task)?.[end] ?? Number.NaN), 0);
      expect(minutes(framed)).toBeLessThan(minutes(exchanged));
    }
  });

  it('of unknown depth may want a frame where one is decided on', () => {
    const labour = labourOf(workedWith({ boxes: [box('r8', { action: 'unknown', frameMm: 10 })] }));
    expect(boxTasks(labour)).toEqual(['fit-frame']);
    expect(labour.get('fit-frame')).toMatchObject({ quantity: 0, highQuantity: 1 });
  });

  it('of unknown depth may have to be exchanged', () => {
    const labour = labourOf(workedWith({ boxes: [box('r8', { action: 'unknown' })] }));
    expect(labour.get('remove-box')).toMatchObject({
      quantity: 0,
      lowQuantity: 0,
      highQuantity: 1,
      typicalMin: 0,
    });
  });

  it('take a fire pad in a party wall, and tiles are cut for them, when flush', () => {
    const spread = { party: true, finish: 'tile' };
    const flush = workedWith({ boxes: [box('w1', spread)] });
    const surface = workedWith({ boxes: [box('w1', { ...spread, build: 'surface' })] });
    expect(quantitiesOf(flush, 'fit-putty-pad', 'cut-tile')).toEqual([1, 1]);
    expect(quantitiesOf(surface, 'fit-putty-pad', 'cut-tile')).toEqual([0, 0]);
  });
});

describe('accessories', () => {
  it.each([
    ['socket-single', 'fit-socket'],
    ['socket-twin', 'fit-socket'],
    ['fused-unit', 'fit-fused-unit'],
    ['flex-outlet', 'fit-flex-outlet'],
    ['dp-switch', 'fit-switch'],
    ['cooker-control', 'fit-cooker-control'],
    ['grid', 'fit-grid'],
    ['shaver', 'fit-shaver'],
    ['blank', 'fit-blank'],
    ['other', 'fit-other'],
  ])('of the kind %s are fitted as %s', (kind, task) => {
    expect(quantitiesOf(workedWith({ accessories: [accessory('w1', kind)] }), task)).toEqual([1]);
  });

  it('have their first cable with them and take more for each further one', () => {
    const worked = workedWith({
      accessories: [accessory('w1', 'socket-twin')],
      terminals: [terminal('w1', 3, 2)],
    });
    expect(quantitiesOf(worked, 'fit-socket', 'extra-cable', 'connect-origin')).toEqual([1, 2, 0]);
  });

  it('that are there are opened for new cable, more for a second one', () => {
    const worked = workedWith({
      terminals: [terminal('r1', 3, 1), terminal('r2', 4, 2), terminal('r3', 2, 0)],
    });
    const labour = labourOf(worked);
    expect(labour.get('connect-origin')?.causes).toEqual(['r1', 'r2']);
    expect(labour.get('extra-cable')).toMatchObject({ quantity: 1, causes: ['r2'] });
  });

  const unit: FusedUnit = {
    id: 'c1/unit',
    pointId: null,
    connectionId: 'c1',
    circuitId: 'c',
    loadNode: 'c1/unit/load',
    fuseA: 3,
    fuseSource: 'given',
    fixedW: null,
    plugInW: null,
    outlets: 0,
    accessories: [],
    switched: true,
    flexOutlet: true,
    position: null,
    state: 'new',
  };

  it('that a connection brings along are fitted once, and their load side opens nothing that is there', () => {
    const load = { ...terminal('c1/unit/load', 1, 1), pointId: null };
    const brought = { ...accessory('c1/unit', 'fused-unit'), pointId: null };
    const listed = workedWith({ fusedUnits: [unit], accessories: [brought], terminals: [load] });
    const alone = workedWith({ fusedUnits: [unit] });
    expect(quantitiesOf(listed, 'fit-fused-unit', 'connect-origin', 'connect-appliance')).toEqual([1, 0, 1]);
    expect(quantitiesOf(alone, 'fit-fused-unit')).toEqual([1]);
  });

  it('that were found need no fitting', () => {
    expect(labourOf(workedWith({ fusedUnits: [{ ...unit, state: 'found' }] })).size).toBe(0);
  });
});

describe('joints', () => {
  const legOf = (spread: Partial<Leg>) => {
    const worked = workedWith({ joints: [joint('c1/joint-out', 'leg'), joint('c1/joint-back', 'leg')] });
    const leg: Leg = { id: 'leg', circuit: 'c', from: { origin: 'c' }, to: { point: 'r1' }, ...spread };
    return { ...worked, job: { ...worked.job, legs: [leg] } };
  };
  const via: Leg['via'] = [{ storey: 's', at: [0, 0], heightMm: 0 }];

  it('in a leg whose way nobody has seen have it located once', () => {
    expect(quantitiesOf(legOf({}), 'fit-joint', 'locate-leg')).toEqual([2, 1]);
    expect(quantitiesOf(legOf({ via, certainty: { route: 'assumed' } }), 'locate-leg')).toEqual([1]);
  });

  it('in a leg whose way was seen need no locating', () => {
    expect(quantitiesOf(legOf({ via }), 'fit-joint', 'locate-leg')).toEqual([2, 0]);
    expect(quantitiesOf(legOf({ via, certainty: { route: 'measured' } }), 'locate-leg')).toEqual([0]);
  });

  it('that were found are left alone', () => {
    expect(labourOf(workedWith({ joints: [{ ...joint('j', null), state: 'found' }] })).size).toBe(0);
  });
});

describe('circuits and the board', () => {
  const base = emptyWorked();
  const circuitId = base.job.circuits[0]?.id ?? '';
  const withRemedies = (...remedies: readonly Remedy[]) =>
    emptyWorked({
      scheme: base.scheme === null ? null : { ...base.scheme, connections: [], remedies: [...remedies] },
    });

  it('are isolated, proved, tested and certified, one by one', () => {
    const worked = emptyWorked({ circuitIds: [circuitId] });
    const tasks = [
      'isolate',
      'verify-circuit',
      'test-circuit',
      'minor-works-certificate',
      'installation-certificate',
    ];
    expect(quantitiesOf(worked, ...tasks)).toEqual([1, 1, 1, 1, 0]);
  });

  it('known by their label only are explored first', () => {
    const shape = base.foundShapes.get(circuitId);
    if (shape === undefined) throw new Error('The demo circuit has no shape.');
    const foundShapes = new Map([[circuitId, { ...shape, evidence: 'claimed' as const }]]);
    expect(quantitiesOf(emptyWorked({ circuitIds: [circuitId], foundShapes }), 'survey-origin')).toEqual([1]);
    expect(quantitiesOf(emptyWorked({ circuitIds: [circuitId] }), 'survey-origin')).toEqual([0]);
  });

  it('that are new are tested and certified as an installation, with nothing to verify', () => {
    const [circuit] = base.found.circuits;
    if (circuit === undefined) throw new Error('The demo has no circuit.');
    const proposed = { ...base.found, circuits: [{ ...circuit, id: 'new', isNew: true }] };
    const worked = emptyWorked({ proposed, circuitIds: ['new'] });
    const tasks = ['verify-circuit', 'test-circuit', 'minor-works-certificate', 'installation-certificate'];
    expect(quantitiesOf(worked, ...tasks)).toEqual([0, 1, 0, 1]);
    // What it is joined to is tested first, once, however many circuits are added.
    expect(quantitiesOf(worked, 'verify-supply')).toEqual([1]);
    expect(
      quantitiesOf(emptyWorked({ circuitIds: [base.found.circuits[0]?.id ?? ''] }), 'verify-supply'),
    ).toEqual([0]);
  });

  it.each([
    ['rcbo', 'fit-rcbo'],
    ['rcd-enclosure', 'fit-rcd-enclosure'],
    ['rcd-outlet', 'exchange-accessory'],
    ['single-to-twin', 'exchange-accessory'],
    ['lower-device', 'exchange-device'],
    ['new-board', 'fit-board'],
    ['bond-upgrade', 'upgrade-bond'],
  ] as const)('take for the remedy %s the task %s', (kind, task) => {
    const labour = labourOf(withRemedies({ kind, at: 'x' }));
    expect(labour.get(task)).toMatchObject({ quantity: 1, causes: [`remedy/${kind}/x`] });
  });

  it('exchange one device of a circuit, as what it is in the end', () => {
    const lower: Remedy = { kind: 'lower-device', at: circuitId };
    const rcbo: Remedy = { kind: 'rcbo', at: circuitId };
    const tasks = ['fit-rcbo', 'exchange-device'];
    const fitted = (device: Device, ...remedies: readonly Remedy[]) => {
      const worked = withRemedies(...remedies);
      const circuits = worked.proposed.circuits.map((circuit) => ({ ...circuit, device }));
      return quantitiesOf({ ...worked, proposed: { ...worked.proposed, circuits } }, ...tasks);
    };
    const breaker: Device = { standard: 'BS-EN-60898', curve: 'B', ratingA: 20 };
    expect(fitted(breaker, lower)).toEqual([0, 1]);
    expect(fitted({ ...breaker, standard: 'BS-EN-61009' }, lower, rcbo)).toEqual([1, 0]);
  });

  it('count a unit that a connection brings along and a remedy gives an RCD once', () => {
    const worked = withRemedies({ kind: 'rcd-unit', at: 'c1/unit' });
    const brought = { ...accessory('c1/unit', 'fused-unit'), pointId: null };
    const fitted = { ...worked, things: { ...worked.things, accessories: [brought] } };
    expect(quantitiesOf(fitted, 'fit-fused-unit', 'exchange-accessory')).toEqual([1, 0]);
  });

  it('count an accessory that a remedy brings along once', () => {
    const worked = withRemedies({ kind: 'single-to-twin', at: 'r1' });
    const fitted = { ...worked, things: { ...worked.things, accessories: [accessory('r1', 'socket-twin')] } };
    expect(quantitiesOf(fitted, 'fit-socket', 'exchange-accessory')).toEqual([1, 0]);
  });
});
