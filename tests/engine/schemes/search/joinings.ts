import type { LengthAllowances, Run } from '#engine/ways/run.ts';
import type { Cable } from '#model/cable.ts';
import type { Board, Circuit, Device, Leg, Place, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Cut, Tap } from '#model/scheme.ts';
import {
  type Branch,
  beside,
  cutsOf,
  type Draft,
  feedsOf,
  joinedOn,
  mayBeCut,
  ordersOf,
  treesOver,
} from './written-down.ts';

/** One way to join one group of wanted points on, whatever rule it breaks. */
export interface Joining {
  /** The group: bit i is the i-th wanted point. */
  readonly mask: number;
  /** By its parts, priced one at a time: with its points and with what its circuit takes for being touched. */
  readonly millipence: number;
  /** The circuit that was there and that it touches. */
  readonly circuitId: string | null;
  readonly drafts: () => readonly Draft[];
  /** What is taken off that for what its cables share; absent: nothing. */
  readonly saved?: number;
}

/** A house to write connections down for, and how they are priced. */
export interface Pad {
  readonly job: Job;
  readonly wanted: readonly Point[];
  readonly runs: ReadonlyMap<string, Run>;
  /** Legs that may be cut though their way is only assumed. */
  readonly allowed: ReadonlySet<string>;
  readonly allowances: LengthAllowances;
  /** How far apart legs are cut, mm of way. */
  readonly apartMm: number;
  /** What a finished scheme of some connections costs, remembered. */
  readonly walk: (drafts: readonly Draft[]) => number;
}

type Make = (tree: readonly Branch[]) => readonly Draft[];

const root = (to: string): Branch => ({ from: null, to });

/**
 * What a tree costs: its first cable, what each further one from the root adds, and what each cable between new points
 * adds to the one that feeds it.
 */
function treePrice({ walk }: Pad, tree: readonly Branch[], make: Make, steps: Make = make): number {
  const [first, ...more] = tree.filter(({ from }) => from === null);
  if (first === undefined) return walk(make([]));
  const one = walk(make([first]));
  const further = more.reduce((sum, other) => sum + walk(make([first, other])) - one, 0);
  return tree.reduce((sum, branch) => {
    if (branch.from === null) return sum;
    const before = [root(branch.from)];
    return sum + walk(steps([...before, branch])) - walk(steps(before));
  }, one + further);
}

/** What is joined on to one circuit. */
interface At {
  readonly pad: Pad;
  readonly circuit: Circuit;
  readonly isRing: boolean;
  readonly legs: readonly Leg[];
  /** Every place that a cable can be joined on to. */
  readonly taps: readonly TapPlace[];
  readonly origin: Tap;
  /** The point that is tried where any does. */
  readonly sample: Point;
  /** Trees behind units, as far as they are priced. */
  readonly behind: Map<string, readonly Priced[]>;
}

interface TapPlace {
  readonly tap: Tap;
  readonly place: Place | undefined;
}

/** Every joining of every group of wanted points. */
export function joiningsOf(pad: Pad): readonly Joining[] {
  const { job, wanted } = pad;
  const sample = wanted.find(({ kind }) => kind !== 'fused-unit') ?? wanted[0];
  if (sample === undefined) return [];
  const places = job.circuits
    .filter(({ use }) => use === 'sockets' || use === 'kitchen' || use === 'other')
    .map((circuit) => placesOf(pad, circuit, sample));
  const found: Joining[] = [];
  for (let mask = 1; mask < 2 ** wanted.length; mask += 1) {
    const group = wanted.filter((_, i) => mask & (1 << i));
    const add = (circuitId: string | null, drafts: Joining['drafts'], millipence: number): void => {
      found.push({ mask, circuitId, drafts, millipence });
    };
    for (const at of places) {
      const own: Add = (drafts, millipence) => add(at.circuit.id, drafts, millipence);
      const isWithUnit = group.some(({ kind }) => kind === 'fused-unit');
      for (const write of isWithUnit ? unitWriters : writers) write(at, group, own);
    }
    if (group.every(({ kind }) => kind !== 'fused-unit'))
      for (const board of job.boards) radials(pad, board, group, (drafts, price) => add(null, drafts, price));
  }
  return found;
}

type Add = (drafts: () => readonly Draft[], millipence: number) => void;

function placesOf(pad: Pad, circuit: Circuit, sample: Point): At {
  const { job, allowed, runs } = pad;
  const legs = job.legs.filter((leg) => leg.circuit === circuit.id);
  const origin = { origin: circuit.id };
  const board = job.boards.find(({ id }) => id === circuit.board);
  const taps = [
    ...job.points
      .filter((point) => point.status === 'existing' && point.circuit === circuit.id)
      .map(({ id, place }): TapPlace => ({ tap: { point: id }, place })),
    { tap: origin, place: board?.place },
    ...legs
      .filter((leg) => mayBeCut(leg, allowed))
      .flatMap(({ id }) =>
        cutsOf(runs.get(id), pad).map(
          (alongMm): TapPlace => ({ tap: { leg: id, alongMm }, place: undefined }),
        ),
      ),
  ];
  return { pad, circuit, legs, taps, origin, sample, behind: new Map(), isRing: circuit.shape === 'ring' };
}

/** Spurs; on a radial also one from the other, and several from one place. On a ring pairs alone, for the rules to bar. */
function spurs({ pad, taps, origin, isRing }: At, group: readonly Point[], add: Add): void {
  if (isRing && group.length > 2) return;
  const make =
    (tap: Tap): Make =>
    (tree) =>
      tree.map(({ from, to }) => ({ kind: 'spur', from: from === null ? tap : { point: from }, to }));
  for (const tree of treesOver(group.map(({ id }) => id))) {
    const leaving = tree.filter(({ from }) => from === null).length;
    if (isRing && leaving > 1) continue;
    for (const { tap } of taps)
      if (leaving === 1 || !('leg' in tap))
        add(() => make(tap)(tree), treePrice(pad, tree, make(tap), make(origin)));
  }
}

const fusedMake =
  (from: Tap, place: Place): Make =>
  (tree) => [{ kind: 'fused-spur', from, unit: { fuseA: 13, place }, feeds: feedsOf(tree, 'unit') }];

/** Fused spurs from anywhere in a ring, their unit beside where they start or beside a point of the group, with every tree behind it. */
function fusedSpurs(at: At, group: readonly Point[], add: Add): void {
  if (at.isRing) for (const tapPlace of at.taps) fusedFrom(at, tapPlace, group, add);
}

function fusedFrom(at: At, { tap, place }: TapPlace, group: readonly Point[], add: Add): void {
  const { pad, origin, sample } = at;
  const { job, walk } = pad;
  const one = [root(sample.id)];
  for (const near of [place, ...group.map((point) => point.place)]) {
    const site = beside(job, near);
    if (site === null) continue;
    const more = walk(fusedMake(tap, site)(one)) - walk(fusedMake(origin, site)(one));
    for (const { tree, price } of behindUnit(at, site, group))
      add(() => fusedMake(tap, site)(tree), price + more);
  }
}

interface Priced {
  readonly tree: readonly Branch[];
  readonly price: number;
}

/** Every tree behind a unit at a site that is fed from the origin: remembered, since it hangs on no tap. */
function behindUnit({ pad, origin, behind }: At, site: Place, group: readonly Point[]): readonly Priced[] {
  const ids = group.map(({ id }) => id);
  const name = JSON.stringify([site, ids]);
  const known = behind.get(name);
  if (known !== undefined) return known;
  const make = fusedMake(origin, site);
  const priced = treesOver(ids).map((tree) => ({ tree, price: treePrice(pad, tree, make) }));
  behind.set(name, priced);
  return priced;
}

/** A wanted unit by its fused spur, with what it feeds; for the rules to bar, by a plain spur. */
function unitSpurs(at: At, group: readonly Point[], add: Add): void {
  for (const { tap } of at.taps) unitFrom(at, tap, group, add);
}

function unitFrom({ pad, origin }: At, tap: Tap, group: readonly Point[], add: Add): void {
  const { walk } = pad;
  const [unit, ...others] = group.filter(({ kind }) => kind === 'fused-unit');
  const fed = group.filter(({ kind }) => kind !== 'fused-unit').map(({ id }) => id);
  // A unit is fed by no other: only the fused spur whose unit it is joins it on. One for a fixed load feeds nothing else.
  if (unit === undefined || others.length > 0 || (unit.load !== undefined && fed.length > 0)) return;
  const make =
    (from: Tap): Make =>
    (tree) => [{ kind: 'fused-spur', from, unit: unit.id, feeds: feedsOf(tree, 'unit') }];
  const more = walk(make(tap)([])) - walk(make(origin)([]));
  for (const tree of treesOver(fed)) add(() => make(tap)(tree), treePrice(pad, tree, make(origin)) + more);
  const plain: Draft = { kind: 'spur', from: tap, to: unit.id };
  if (fed.length === 0) add(() => [plain], walk([plain]));
}

const lifted: Cut = { how: 'terminals' };

/** The stretch between two cuts is taken out: the first comes before the second. */
const isInOrder = (out: Cut, back: Cut): boolean =>
  out.how === 'terminals' || back.how === 'terminals' || out.alongMm <= back.alongMm;

/** Every leg opened, at its ends or cut anywhere, and carried through the group in every order. */
function extensions({ pad, circuit, legs }: At, group: readonly Point[], add: Add): void {
  const { walk, runs } = pad;
  for (const leg of legs) {
    const cuts = mayBeCut(leg, pad.allowed)
      ? cutsOf(runs.get(leg.id), pad).map(
          (alongMm): Extract<Cut, { how: 'joint' }> => ({ how: 'joint', alongMm }),
        )
      : [];
    const make = (out: Cut, back: Cut, through: readonly string[]): readonly Draft[] => [
      {
        kind: 'ring-extension',
        circuit: circuit.id,
        between: [leg.from, leg.to],
        leg: leg.id,
        out,
        back,
        through: [...through],
      },
    ];
    const whole = (through: readonly string[]): number => walk(make(lifted, lifted, through));
    for (const order of ordersOf(group.map(({ id }) => id))) {
      const [first, last] = [order.slice(0, 1), order.slice(-1)];
      const pairs = order.slice(1).reduce((sum, to, i) => sum + whole([order[i] ?? '', to]), 0);
      const inner = order.slice(1, -1).reduce((sum, each) => sum + whole([each]), 0);
      const price = order.length === 1 ? whole(order) : pairs - inner;
      const alongBack = (cut: Cut, through: readonly string[]) =>
        walk(make(lifted, cut, through)) - whole(through);
      const outs = [lifted, ...cuts].map((cut) => ({
        cut,
        more: walk(make(cut, lifted, first)) - whole(first),
      }));
      const backs = [lifted, ...cuts].map((cut) => ({
        cut,
        more: alongBack(cut, last),
      }));
      // What two cuts of one leg share: finding it.
      const [out1, back1] = [outs[1], backs[1]];
      const shared =
        out1 === undefined || back1 === undefined
          ? 0
          : walk(make(out1.cut, back1.cut, first)) - whole(first) - out1.more - alongBack(back1.cut, first);
      for (const out of outs)
        for (const back of backs) {
          if (!isInOrder(out.cut, back.cut)) continue;
          const areCuts = out.cut.how === 'joint' && back.cut.how === 'joint';
          const more = out.more + back.more + (areCuts ? shared : 0);
          add(() => make(out.cut, back.cut, order), price + more);
        }
    }
  }
}

const rcbo = (ratingA: number): Device => ({
  standard: 'BS-EN-61009',
  curve: 'B',
  ratingA,
  breakingKA: 6,
  rcd: { type: 'A', mA: 30 },
});
const thick: Cable = { type: 'flat-twin', lineMm2: 4, cpcMm2: 1.5 };
/** The last for the rules to bar. */
const newCircuits: readonly { readonly device: Device; readonly cable?: Cable }[] = [
  { device: rcbo(20) },
  { device: rcbo(32), cable: thick },
  { device: rcbo(32) },
];

/** New radials from a board with a free way, as every tree. */
function radials(pad: Pad, board: Board, group: readonly Point[], add: Add): void {
  if ((board.spareWays ?? 0) < 1) return;
  for (const circuit of newCircuits) {
    const make: Make = (tree) => [
      { kind: 'radial', board: board.id, ...circuit, feeds: feedsOf(tree, 'origin') },
    ];
    for (const tree of treesOver(group.map(({ id }) => id)))
      add(() => make(tree), treePrice(pad, tree, make));
  }
}

/** A leg that ends at a point with no other leg, and where it starts. */
interface OldSpur {
  readonly leg: Leg;
  readonly source: Point;
  readonly end: Point;
}

function oldSpurs({ pad: { job }, legs, isRing }: At): readonly OldSpur[] {
  const legsAt = (id: string): number =>
    legs.filter(({ from, to }) => [from, to].some((each) => 'point' in each && each.point === id)).length;
  const pointAt = (end: Leg['to']): Point | undefined =>
    'point' in end ? job.points.find(({ id }) => id === end.point) : undefined;
  return legs.flatMap((leg) => {
    const [source, end] = [pointAt(leg.from), pointAt(leg.to)];
    if (!isRing || source === undefined || end === undefined || legsAt(end.id) > 1) return [];
    return [{ leg, source, end }];
  });
}

/** Every old spur behind a unit beside its source, and carried on from the unit, from its end, or from both. */
function fusedDown(at: At, group: readonly Point[], add: Add): void {
  const { job, walk } = at.pad;
  for (const { leg, source, end } of oldSpurs(at)) {
    const place = beside(job, source.place);
    if (place === null) continue;
    const make: Make = (tree) => [
      { kind: 'fuse-down', leg: leg.id, unit: { fuseA: 13, place }, feeds: feedsOf(tree, 'unit') },
    ];
    const none = walk(make([]));
    const leave = (start: string | null, points: readonly string[]): number =>
      points.reduce((sum, to, i) => {
        const [first] = points;
        const before = i === 0 || first === undefined ? [] : [{ from: start, to: first }];
        return sum + walk(make([...before, { from: start, to }])) - walk(make(before));
      }, 0);
    for (const tree of treesOver(group.map(({ id }) => id))) {
      const leaving = tree.filter(({ from }) => from === null);
      const rest = tree.filter(({ from }) => from !== null);
      const steps = rest.reduce((sum, branch) => {
        const before = [root(branch.from ?? '')];
        return sum + walk(make([...before, branch])) - walk(make(before));
      }, 0);
      for (let fromEnd = 0; fromEnd < 2 ** leaving.length; fromEnd += 1) {
        const starts = leaving.map(({ to }, i) => ({ from: fromEnd & (1 << i) ? end.id : null, to }));
        const of = (start: string | null) => starts.filter(({ from }) => from === start).map(({ to }) => to);
        const price = none + steps + leave(null, of(null)) + leave(end.id, of(end.id));
        add(() => make([...starts, ...rest]), price);
      }
    }
  }
}

/** Every old spur closed into the ring, and the group joined on where that leaves room: at its end or its source. */
function closings(at: At, group: readonly Point[], add: Add): void {
  const { pad, legs, sample } = at;
  const { walk, runs } = pad;
  for (const { leg, source, end } of oldSpurs(at)) {
    const ringLegs = legs.filter(
      ({ id, from, to }) =>
        id !== leg.id && [from, to].some((each) => 'point' in each && each.point === source.id),
    );
    for (const { tap, place } of [end, source].map((p) => ({ tap: { point: p.id }, place: p.place }))) {
      const afterwards: [Joining['drafts'], number][] = [];
      const keep: Add = (drafts, price) => afterwards.push([drafts, price]);
      const [only, ...others] = group;
      if (group.some(({ kind }) => kind === 'fused-unit')) unitFrom(at, tap, group, keep);
      else {
        const spur = only === undefined || others.length > 0 ? [] : [joinedOn(tap, only)];
        if (spur.length > 0) keep(() => spur, walk(spur));
        fusedFrom(at, { tap, place }, group, keep);
      }
      const tried = [joinedOn(tap, sample)];
      for (const ring of ringLegs) {
        const cuts = mayBeCut(ring, pad.allowed) ? cutsOf(runs.get(ring.id), pad) : [];
        for (const back of [lifted, ...cuts.map((alongMm): Cut => ({ how: 'joint', alongMm }))]) {
          const close: Draft = { kind: 'close-spur', point: end.id, leg: ring.id, back };
          const more = walk([close, ...tried]) - walk(tried);
          for (const [drafts, price] of afterwards) add(() => [close, ...drafts()], price + more);
        }
      }
    }
  }
}

type Write = (at: At, group: readonly Point[], add: Add) => void;
const unitWriters: readonly Write[] = [unitSpurs, closings];
const writers: readonly Write[] = [spurs, fusedSpurs, extensions, fusedDown, closings];
