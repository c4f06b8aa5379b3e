import fc from 'fast-check';
import { checklist } from '#engine/rules/checklist.ts';
import type { WorkTask } from '#engine/work/task-list.ts';
import { fixture } from '#model/building.ts';
import { pointKind, service } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { certainty } from '#model/primitives.ts';
import { setAnswer, setAnswerCertainty } from '../../../ui/edits/answers.ts';
import { addBoard, putRcd, removeRcd, setBoardCertainty, setBoardFact } from '../../../ui/edits/boards.ts';
import { addCircuit, setCircuitCertainty, setCircuitFact, setDevice } from '../../../ui/edits/circuits.ts';
import { addExtra, removeExtra, renameExtra, setExtra } from '../../../ui/edits/extras.ts';
import { addFixture, removeFixture } from '../../../ui/edits/fixtures.ts';
import { type HouseEdit, reshapeHouse } from '../../../ui/edits/house.ts';
import { addLeg, setLegCertainty, setLegFact } from '../../../ui/edits/legs.ts';
import { addPhoto, captionPhoto, removePhoto, withoutLoose } from '../../../ui/edits/photos.ts';
import {
  addPoints,
  copyPoint,
  setFoundFact,
  setPointCertainty,
  setPointFact,
  setPointKind,
} from '../../../ui/edits/points.ts';
import { removeReading, setEndToEnd } from '../../../ui/edits/readings.ts';
import { removeBoard, removeCircuit, removeLegs, removePoint } from '../../../ui/edits/remove-things.ts';
import { setReplaces, setTakenAway } from '../../../ui/edits/replacements.ts';
import { setPointsInOrder } from '../../../ui/edits/ring-in-order.ts';
import { setRoomFloor, setRoomFloorFact } from '../../../ui/edits/room-floor.ts';
import { setSiteAddress, setSiteCertainty, setSiteFact } from '../../../ui/edits/site.ts';
import { putInstrument, removeInstrument, setNotTested, tickTask } from '../../../ui/edits/site-work.ts';
import { addStairwell, removeStairwell } from '../../../ui/edits/stairwells.ts';
import { setFloorFact, setStoreyCertainty } from '../../../ui/edits/storeys.ts';
import { setBond, setSupplyCertainty, setSupplyFact } from '../../../ui/edits/supply.ts';
import { changeUnderlay, hideUnderlay, putUnderlay, removeUnderlay } from '../../../ui/edits/underlay.ts';
import { usualHeightsOf } from '../../../ui/house/fixture-kinds.ts';
import { partsOf } from '../../../ui/house/house-parts.ts';
import { pulled } from '../../../ui/house/pulled.ts';
import { roomSides } from '../../../ui/house/room-sides.ts';
import { wallMap } from '../../../ui/house/wall-map.ts';
import type { JobEdit, PhotoOf } from '../../../ui/job-events.ts';
import { edited, pick } from './random-edits.ts';

/** Whole numbers that choose among what the job holds at that moment. */
interface Numbers {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** Makes new ids. */
  readonly step: number;
}
type Made = (job: Job, numbers: Numbers) => JobEdit | null;

const on = <T>(thing: T | undefined, edit: (thing: T) => JobEdit): JobEdit | null =>
  thing === undefined ? null : edit(thing);

const removals: readonly Made[] = [
  (job, { a }) => on(pick(job.points, a), removePoint),
  (job, { a }) => on(pick(job.legs, a), (leg) => removeLegs([leg.id], leg.id)),
  (job, { a, b }) => on(b % 5 === 0 ? pick(job.circuits, a) : undefined, removeCircuit),
  (job, { a, b }) => on(b % 9 === 0 ? pick(job.boards, a) : undefined, removeBoard),
  (job, { a }) => on(pick(job.readings, a), ({ id }) => removeReading(id, id)),
  (job, { a }) => on(pick(job.boards, a), (board) => removeRcd(board, board.rcds[0]?.id ?? '')),
];

const additions: readonly Made[] = [
  (_, { step }) => addBoard(`board-${step}`, `Board ${step}`),
  (job, { a, step }) => on(pick(job.boards, a), ({ id }) => addCircuit(`circuit-${step}`, 'More', id)),
  (job, { a, b, step }) => {
    const circuit = pick(job.circuits, b)?.id;
    const status = a % 2 === 0 ? 'wanted' : 'existing';
    const kind = pick(pointKind.options, a) ?? 'other';
    const made = { id: `point-${step}`, label: `P${step}`, status, kind } as const;
    return addPoints([circuit === undefined ? made : { ...made, circuit }]);
  },
  (job, { a, step }) => on(pick(job.points, a), (point) => copyPoint(point, `copy-${step}`, `Copy ${step}`)),
  (job, { a, b, c, step }) => {
    const [from, to, circuit] = [pick(job.points, a), pick(job.points, b), pick(job.circuits, c)];
    if (from === undefined || to === undefined || circuit === undefined) return null;
    const ends = { from: { point: from.id }, to: { point: to.id } };
    return addLeg({ id: `leg-${step}`, circuit: circuit.id, ...ends }, 'new');
  },
  (job, { a, b, step }) =>
    on(pick(job.boards, a), (board) =>
      putRcd(board, { id: `rcd-${step}`, type: b % 2 ? 'A' : 'AC', mA: 30 }),
    ),
];

const photoOf = (job: Job, a: number): PhotoOf => {
  const [point, board] = [pick(job.points, a), pick(job.boards, a)];
  const room = pick(
    job.storeys.flatMap(({ rooms }) => rooms),
    a,
  );
  const known: readonly PhotoOf[] = [
    { kind: 'supply' },
    ...(point === undefined ? [] : [{ kind: 'point', id: point.id } as const]),
    ...(board === undefined ? [] : [{ kind: 'board', id: board.id } as const]),
    ...(room === undefined ? [] : [{ kind: 'room', id: room.id } as const]),
  ];
  return pick(known, a) ?? { kind: 'supply' };
};

const pictureOf = (number: number) => ({
  id: `picture-${number % 7}`,
  name: 'A picture',
  mediaType: 'image/jpeg',
  bytes: 5,
});

const tidied = (edit: JobEdit): JobEdit => ({ ...edit, change: withoutLoose(edit.change) });

const pictures: readonly Made[] = [
  (job, { a, b }) => addPhoto(photoOf(job, a), 'it', pictureOf(b)),
  (job, { a, c }) =>
    on(pick(job.assets, a), ({ id }) => captionPhoto('it', id, c % 3 === 0 ? '' : `It shows ${c}`)),
  (job, { a, b }) => tidied(removePhoto(photoOf(job, a), 'it', pictureOf(b).id)),
  (job, { a, b }) =>
    on(pick(job.points, b % 3), (point) =>
      tidied(a % 2 ? removePoint(point) : addPhoto(photoOf(job, a), 'it', pictureOf(b))),
    ),
  (job, { a, b }) =>
    on(pick(job.storeys, a), (storey) =>
      tidied(
        b % 4 === 0
          ? removeUnderlay(storey)
          : b % 4 === 1
            ? hideUnderlay(storey, a % 2 === 0)
            : b % 4 === 2
              ? changeUnderlay(storey, 'Turn', { angleDeg: a % 180, at: [b, a] })
              : putUnderlay(
                  storey,
                  {
                    asset: pictureOf(a).id,
                    at: [a, b],
                    widthPx: 10,
                    heightPx: 8,
                    scaleMmPerPx: 5,
                    angleDeg: 0,
                    opacity: 0.5,
                  },
                  pictureOf(a),
                ),
      ),
    ),
];

const orders: readonly Made[] = [
  (job, { a, b, c, step }) =>
    on(pick(job.circuits, a), (circuit) => {
      const own = job.points.filter((point) => point.circuit === circuit.id).map(({ id }) => id);
      const now = [...own.slice(b % (own.length + 1)), ...own.slice(0, c % (own.length + 1))];
      return setPointsInOrder(circuit, {
        was: own,
        now: [...new Set(now)],
        isRing: c % 3 !== 0,
        cable: b % 2 ? null : { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 },
        legIds: [...own, 'more'].map((_, index) => `ordered-${step}-${index}`),
      });
    }),
  (job, { a, b }) =>
    on(pick(job.points, a), (point) =>
      setReplaces(point, b % 3 === 0 ? null : (pick(job.points, b) ?? null)),
    ),
  (job, { a, b }) => on(pick(job.points, a), (point) => setTakenAway(point, b % 2 === 0)),
  (job, { a, b }) =>
    on(pick(job.circuits, a), (circuit) =>
      setCircuitFact(
        circuit,
        'upstreamRcd',
        pick(
          job.boards.flatMap(({ rcds }) => rcds.map(({ id }) => id)),
          b,
        ) ?? null,
      ),
    ),
];

/** One of a few tasks, with a hold or counted. */
const taskOf = (number: number): WorkTask => ({
  id: `task-${number % 5}`,
  words: `Task ${number % 5}`,
  amount: number % 2 ? { quantity: number % 7, highQuantity: 7, unit: 'each', typicalMin: 5 } : null,
  marks: [],
  hold: number % 2 ? null : 'So? Else stop.',
});

const facts: readonly Made[] = [
  (job, { a, b, c }) =>
    on(pick(job.schemes, a), ({ id }) => tickTask(id, taskOf(b), c % 3 === 0 ? null : c % 3 === 1)),
  (job, { a, b, step }) => {
    const known = pick(job.testing?.instruments ?? [], a);
    if (b % 4 === 0) return known === undefined ? null : removeInstrument(known);
    return putInstrument({ id: b % 2 && known ? known.id : `tester-${step}`, what: `Tester ${b}` });
  },
  (_, { a }) => setNotTested(a % 3 ? `Point ${a}: furniture` : ' '),
  (job, { a, b }) =>
    on(pick(job.points, a), (point) => setPointKind(point, pick(pointKind.options, b) ?? 'other')),
  (job, { a, b }) =>
    on(pick(job.points, a), (point) => setFoundFact(point, 'boxDepthMm', b % 4 ? b % 60 : null)),
  (job, { a, b }) =>
    on(pick(job.points, a), (point) =>
      setPointFact(
        point,
        'place',
        b % 2 ? null : { storey: job.storeys[0]?.id ?? '', at: [b, a], heightMm: 450 },
      ),
    ),
  (job, { a, b }) =>
    on(pick(job.points, a), (point) =>
      setPointCertainty(point, 'boxDepthMm', pick(certainty.options, b) ?? 'seen'),
    ),
  (job, { a, b }) => on(pick(job.legs, a), ({ id }) => setLegFact(id, id, 'lengthMm', b % 4 ? b : null)),
  (job, { a, b }) =>
    on(pick(job.legs, a), ({ id }) => setLegCertainty(id, id, 'route', pick(certainty.options, b) ?? 'seen')),
  (job, { a, b }) =>
    on(pick(job.circuits, a), (circuit) =>
      setDevice(circuit, { ratingA: 6 + (b % 60), curve: b % 2 ? null : 'C' }),
    ),
  (job, { a, b }) =>
    on(pick(job.circuits, a), (circuit) =>
      setCircuitCertainty(circuit, 'order', pick(certainty.options, b) ?? null),
    ),
  (job, { a, b, step }) =>
    on(pick(job.circuits, a), (circuit) =>
      setEndToEnd(circuit, { conductor: 'cpc', ohm: b % 3 ? b / 100 : null, newId: `reading-${step}` }),
    ),
  (job, { a, b }) =>
    on(pick(job.boards, a), (board) => setBoardFact(board, 'spareWays', b % 3 ? b % 20 : null)),
  (job, { a, b }) =>
    on(pick(job.boards, a), (board) =>
      setBoardCertainty(board, 'spareWays', pick(certainty.options, b) ?? 'seen'),
    ),
  (_, { a }) => setSupplyFact('zeOhm', a % 3 ? a / 1000 : null),
  (_, { a }) => setSupplyCertainty('zeOhm', pick(certainty.options, a) ?? 'seen'),
  (_, { a, b }) => setBond(pick(service.options, a) ?? 'water', b % 3 ? { seen: b % 2 === 0 } : null),
  (_, { a }) => setSiteFact('surveyedOn', a % 2 ? '2026-11-20' : null),
  (_, { a }) => setSiteCertainty('occupied', pick(certainty.options, a) ?? 'seen'),
  (_, { a }) => setSiteAddress(`${a}\n\n The Row \n`),
  (job, { a, b }) =>
    on(pick(job.storeys, a), (storey) => setFloorFact(storey, 'liftable', b % 3 ? b % 2 === 0 : null)),
  (job, { a, b }) =>
    on(pick(job.storeys, a), (storey) =>
      setStoreyCertainty(storey, { part: 'floor', fact: 'build' }, pick(certainty.options, b) ?? 'seen'),
    ),
  (_, { a, b }) => on(pick(checklist, a), (question) => setAnswer(question, b % 3 ? b : null)),
  (_, { a, b }) =>
    on(pick(checklist, a), (question) => setAnswerCertainty(question, pick(certainty.options, b) ?? 'seen')),
];

/** An edit of the house that can be made; null for one that says why not. */
const made = (edit: HouseEdit): JobEdit | null => (edit.ok ? edit.edit : null);

/** A side of a room of a storey, with both. */
function sideOf(job: Job, { a, b }: Pick<Numbers, 'a' | 'b'>) {
  const storey = pick(job.storeys, a);
  const room = storey && pick(storey.rooms, b);
  const side = room && pick(roomSides(storey, room), a + b);
  return storey === undefined || room === undefined || side === undefined ? null : { storey, room, side };
}

const boxBy = ({ b, c }: Pick<Numbers, 'b' | 'c'>) => ({
  leftMm: b % 900,
  offMm: 0,
  widthMm: 200 + (c % 900),
  depthMm: 100 + (c % 500),
});

const ofHouse: readonly Made[] = [
  (job, { a, b, c }) => {
    const storey = pick(job.storeys, a);
    const part = storey && pick(partsOf(storey), b);
    if (storey === undefined || part === undefined) return null;
    const mm = (c % 801) - 400;
    const asked = pulled(storey, { part, by: [mm, 0], reachMm: null }, wallMap(storey))?.asked;
    return asked === undefined ? null : made(reshapeHouse(job, storey.id, asked));
  },
  (job, { a, b, c }) => {
    const storey = pick(job.storeys, a);
    const wall = storey && pick(storey.walls, b);
    if (storey === undefined || wall === undefined) return null;
    const marks = [(c % 700) + 100, (c % 700) + 800] as const;
    const side = c % 2 === 0 ? 'left' : 'right';
    return made(
      reshapeHouse(job, storey.id, {
        part: 'stretch',
        wallId: wall.id,
        side,
        marks,
        byMm: (c % 801) - 400,
      }),
    );
  },
  (job, { a, b, c }) => {
    const storey = pick(job.storeys, a);
    const one = storey && pick(storey.fixtures, b);
    if (storey === undefined || one === undefined) return null;
    const part = { part: 'fixture', fixtureId: one.id } as const;
    const by = [(c % 2001) - 1000, (c % 301) - 150] as const;
    const asked = pulled(storey, { part, by, reachMm: 80 }, wallMap(storey))?.asked;
    return asked === undefined ? null : made(reshapeHouse(job, storey.id, asked));
  },
  (job, numbers) => {
    const found = sideOf(job, numbers);
    const kind = pick(fixture.shape.kind.options, numbers.c) ?? 'sink';
    const put = { kind, box: boxBy(numbers), heights: usualHeightsOf(kind), assumed: ['outline'] } as const;
    return found && made(addFixture(found.storey.id, { ...put, side: found.side }));
  },
  (job, { a, b }) => {
    const storey = pick(job.storeys, a);
    return on(storey && pick(storey.fixtures, b), (one) => removeFixture(storey?.id ?? '', one));
  },
  (job, numbers) => {
    const found = sideOf(job, numbers);
    return found && made(addStairwell(found.storey.id, found.side, boxBy(numbers)));
  },
  (job, { a, b }) =>
    on(pick(job.storeys, a), ({ id, stairwells }) => removeStairwell(id, b % Math.max(1, stairwells.length))),
  (job, numbers) => {
    const found = sideOf(job, numbers);
    return found && setRoomFloor(found.storey, found.room, numbers.c % 3 > 0);
  },
  (job, numbers) => {
    const found = sideOf(job, numbers);
    return found && setRoomFloorFact(found.storey, found.room, 'joistsRunDeg', numbers.c % 2 ? 90 : null);
  },
];

/** Somewhere that extra work can be. */
function somewhere(job: Job, a: number): string | undefined {
  const { storeys, points, circuits, boards } = job;
  const places = [...storeys, ...storeys.flatMap(({ rooms }) => rooms), ...points, ...circuits, ...boards];
  return pick(places, a)?.id;
}

const extras: readonly Made[] = [
  (job, { a, b, c, step }) => {
    const at = c % 3 === 0 ? undefined : somewhere(job, a);
    const more = { id: `extra-${step}`, words: `Surprise ${step}`, typicalMin: b / 10 };
    return addExtra(at === undefined ? more : { ...more, at });
  },
  (job, { a, b, c }) =>
    on(pick(job.extras ?? [], a), ({ id }) =>
      setExtra(id, {
        lowMin: b % 3 ? b : null,
        typicalMin: c % 4 ? c : null,
        materialsPence: b % 2 ? c : null,
        at: somewhere(job, b) ?? null,
      }),
    ),
  (job, { a, b }) => on(pick(job.extras ?? [], a), ({ id }) => renameExtra(id, b % 3 ? `Words ${b}` : ' ')),
  (job, { a }) => on(pick(job.extras ?? [], a), removeExtra),
];

const all = [...removals, ...additions, ...pictures, ...orders, ...facts, ...ofHouse, ...extras];

const someNumber = fc.nat({ max: 10_000 });
/** Any sequence of edits of what a survey tells, by numbers. */
export const editSequence = fc.array(
  fc.tuple(fc.nat({ max: all.length - 1 }), someNumber, someNumber, someNumber),
  {
    minLength: 1,
    maxLength: 40,
  },
);

type Sequence = readonly (readonly [number, number, number, number])[];

/**
 * The edits of such a sequence, each made upon what those before it left, and the job after them.
 *
 * @param firstStep ids are made from the steps' numbers: sequences that share none make no id twice.
 */
export function editsOf(
  start: Job,
  list: Sequence,
  firstStep = 0,
): { readonly edits: readonly JobEdit[]; readonly job: Job } {
  const edits: JobEdit[] = [];
  let job = start;
  for (const [step, [which, a, b, c]] of list.entries()) {
    const edit = pick(all, which)?.(job, { a, b, c, step: firstStep + step }) ?? null;
    if (edit === null) continue;
    edits.push(edit);
    job = edited(job, edit);
  }
  return { edits, job };
}

/** A job after such a sequence. */
export const afterEdits = (start: Job, list: Sequence, firstStep = 0): Job =>
  editsOf(start, list, firstStep).job;
