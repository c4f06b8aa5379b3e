import type { Place } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import type { Connection, Feed, Tap } from '#model/scheme.ts';

/** A connection without its id, as a person might write it. */
type Draft = Omit<Connection, 'id'>;

/** Every way to put a list into groups. */
function groupings<T>([first, ...rest]: readonly T[]): readonly (readonly (readonly T[])[])[] {
  if (first === undefined) return [[]];
  return groupings(rest).flatMap((groups) => [
    [[first], ...groups],
    ...groups.map((group, i) => [[first, ...group], ...groups.filter((_, j) => j !== i)]),
  ]);
}

function orders<T>(list: readonly T[]): readonly (readonly T[])[] {
  if (list.length === 0) return [[]];
  return list.flatMap((each, i) => orders(list.filter((_, j) => j !== i)).map((rest) => [each, ...rest]));
}

/** Every list of feeds that reaches all of some points from a root, in an order in which each is fed before it feeds. */
function trees(root: string, points: readonly string[]): readonly (readonly Feed[])[] {
  const lists = points.reduce<readonly (readonly string[])[]>(
    (so, point) =>
      so.flatMap((list) => [root, ...points].filter((from) => from !== point).map((from) => [...list, from])),
    [[]],
  );
  return lists.flatMap((feeders) => {
    const feeds: Feed[] = [];
    const reached = new Set([root]);
    for (let grown = true; grown; ) {
      grown = false;
      for (const [i, to] of points.entries()) {
        const from = feeders[i] ?? root;
        if (reached.has(to) || !reached.has(from)) continue;
        feeds.push({ from, to });
        reached.add(to);
        grown = true;
      }
    }
    return feeds.length === points.length ? [feeds] : [];
  });
}

/** 300 mm further along the wall, as the search says that it puts a unit; the test's walls leave room for it on one side. */
function beside(job: Job, id: string): Place | null {
  const place = job.points.find((point) => point.id === id)?.place;
  if (place === undefined || !('wall' in place)) return null;
  const wall = job.storeys[0]?.walls.find((each) => each.id === place.wall);
  if (wall === undefined) return null;
  const longMm = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]);
  const others = job.points.flatMap((point) =>
    point.place !== undefined && 'wall' in point.place && point.place.wall === place.wall
      ? [point.place.alongMm]
      : [],
  );
  const spots = [place.alongMm + 300, place.alongMm - 300].filter((mm) => mm >= 100 && mm <= longMm - 100);
  const free = spots.find((mm) => others.every((other) => Math.abs(other - mm) >= 200)) ?? spots[0];
  return free === undefined ? null : { ...place, alongMm: free };
}

/** Every way that somebody might join one group of points on by one connection (or two, where a spur is closed first). */
function waysFor(job: Job, group: readonly string[]): readonly (readonly Draft[])[] {
  const existing = job.points.filter(({ status }) => status === 'existing').map(({ id }) => id);
  const taps: readonly Tap[] = [...existing.map((point) => ({ point })), { origin: 'c' }];
  const [only] = group;
  const spurs = (some: readonly Tap[]): readonly Draft[] =>
    group.length === 1 && only !== undefined
      ? some.map((from) => ({ kind: 'spur', from, to: only }) as Draft)
      : [];
  const fused = taps.flatMap((from) =>
    ['point' in from ? from.point : null, ...group].flatMap((near): readonly Draft[] => {
      const place = near === null ? null : beside(job, near);
      if (place === null) return [];
      return trees('unit', group).map(
        (feeds) => ({ kind: 'fused-spur', from, unit: { fuseA: 13, place }, feeds: [...feeds] }) as Draft,
      );
    }),
  );
  const lifted = { how: 'terminals' } as const;
  const extensions = job.legs.flatMap(({ id, from, to }) =>
    orders(group).map(
      (through) =>
        ({
          kind: 'ring-extension',
          circuit: 'c',
          between: [from, to],
          leg: id,
          out: lifted,
          back: lifted,
          through: [...through],
        }) as Draft,
    ),
  );
  const device = {
    standard: 'BS-EN-61009',
    curve: 'B',
    ratingA: 20,
    breakingKA: 6,
    rcd: { type: 'A', mA: 30 },
  };
  const hasWay = (job.boards[0]?.spareWays ?? 0) > 0;
  const radials = hasWay
    ? trees('origin', group).map(
        (feeds) => ({ kind: 'radial', board: 'b1', device, feeds: [...feeds] }) as Draft,
      )
    : [];
  const old = job.legs.find(({ id }) => id === 'ls');
  const source = old !== undefined && 'point' in old.from ? old.from.point : '';
  const place = old === undefined ? null : beside(job, source);
  const fusedDown =
    place === null
      ? []
      : ['unit', 's1'].flatMap((root) =>
          trees(root, group).map(
            (feeds) =>
              ({ kind: 'fuse-down', leg: 'ls', unit: { fuseA: 13, place }, feeds: [...feeds] }) as Draft,
          ),
        );
  const closings =
    old === undefined
      ? []
      : job.legs
          .filter(({ id }) => id !== 'ls')
          .map(({ id }) => ({ kind: 'close-spur', point: 's1', leg: id, back: lifted }) as Draft);
  const closed = closings.flatMap((close) =>
    spurs([{ point: 's1' }, { point: source }]).map((spur) => [close, spur]),
  );
  return [
    ...[...spurs(taps), ...fused, ...extensions, ...radials, ...fusedDown].map((draft) => [draft]),
    ...closed,
  ];
}

/** Every scheme of such connections that joins all wanted points, whatever rule it breaks. */
export function everyScheme(job: Job): readonly (readonly Connection[])[] {
  const wanted = job.points.filter(({ status }) => status === 'wanted').map(({ id }) => id);
  return groupings(wanted).flatMap((groups) =>
    groups
      .map((group) => waysFor(job, group))
      .reduce<readonly (readonly Draft[])[]>(
        (so, ways) => so.flatMap((drafts) => ways.map((way) => [...drafts, ...way])),
        [[]],
      )
      .map((drafts) => drafts.map((draft, i) => ({ ...draft, id: `x${i + 1}` }) as Connection)),
  );
}
