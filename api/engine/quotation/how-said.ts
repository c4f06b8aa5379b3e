import type { End } from '#model/cable.ts';
import type { Connection, Remedy, Tap } from '#model/scheme.ts';
import { openedCircuit } from '../circuit/opened-circuit.ts';
import { NOMINAL_V } from '../proof/spur-load.ts';
import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import { listed } from './said.ts';
import { type ThingsSaid, thingsSaid } from './thing-said.ts';

/** What the sentences of a scheme are made with. */
interface Telling {
  readonly scheme: SchemeEstimate;
  readonly said: ThingsSaid;
}

type Of<K extends Connection['kind']> = Extract<Connection, { kind: K }>;

const endSaid = (end: End, { label }: ThingsSaid): string =>
  'point' in end ? label(end.point) : 'the fuse box';

/** Where a branch begins: a socket, a cable on its way between two, or the fuse box. */
function tapSaid(tap: Tap, { scheme, said }: Telling): string {
  if ('point' in tap) return said.place(tap.point);
  if ('origin' in tap) return 'the fuse box';
  const leg = scheme.worked.job.legs.find(({ id }) => id === tap.leg);
  if (leg === undefined) return 'a cable that is there';
  return `the cable between ${endSaid(leg.from, said)} and ${endSaid(leg.to, said)}`;
}

/** All plain branches in one sentence, however many they are. */
function spursSaid(spurs: readonly Of<'spur'>[], telling: Telling): readonly string[] {
  if (spurs.length === 0) return [];
  const each = spurs.map(({ from, to }) => `${telling.said.label(to)} from ${tapSaid(from, telling)}`);
  return spurs.length === 1 ? [`A branch cable feeds ${each[0]}.`] : [`Branch cables feed ${listed(each)}.`];
}

/** Points as the job lists them, which is how the drawing and the customer count. */
const inJobOrder = (ids: readonly string[], { scheme }: Telling): readonly string[] =>
  scheme.worked.job.points.flatMap(({ id }) => (ids.includes(id) ? [id] : []));

/** What a fuse carries in the customer's terms, to a tenth of a kilowatt. */
const fuseCarries = (fuseA: number): string =>
  `${fuseA} A, about ${((fuseA * NOMINAL_V) / 1000).toFixed(1)} kW`;

function fuseOf(connection: Of<'fused-spur'> | Of<'fuse-down'>, { scheme }: Telling): number | null {
  const { unit, id } = connection;
  const fitted = scheme.fusedUnits.find((one) =>
    typeof unit === 'string' ? one.pointId === unit : one.connectionId === id,
  );
  return fitted?.fuseA ?? null;
}

function behindFuse(connection: Of<'fused-spur'> | Of<'fuse-down'>, telling: Telling): string {
  const { said } = telling;
  const fuseA = fuseOf(connection, telling);
  const fuse = fuseA === null ? 'one fuse' : `one fuse of ${fuseCarries(fuseA)}`;
  const fed = inJobOrder(
    connection.feeds.map(({ to }) => to),
    telling,
  ).map(said.label);
  if (fed.length === 0) return '';
  return fed.length === 1
    ? `${fed[0]} is behind ${fuse}`
    : `${listed(fed)} are behind ${fuse}, which they share`;
}

function fusedSpurSaid(connection: Of<'fused-spur'>, telling: Telling): string {
  const behind = behindFuse(connection, telling);
  const from = tapSaid(connection.from, telling);
  if (behind !== '') return `${behind}, fed from ${from}.`;
  if (typeof connection.unit !== 'string') return `A fuse is fitted, fed from ${from}.`;
  const fuseA = fuseOf(connection, telling);
  const fuse = fuseA === null ? '' : ` (${fuseA} A)`;
  return `${telling.said.label(connection.unit)}, with its own fuse${fuse}, is fed from ${from}.`;
}

function restSaid(connection: Exclude<Connection, { kind: 'spur' }>, telling: Telling): string {
  const { said } = telling;
  switch (connection.kind) {
    case 'fused-spur':
      return fusedSpurSaid(connection, telling);
    case 'ring-extension': {
      const [from, to] = connection.between.map((end) => endSaid(end, said));
      const through = listed(connection.through.map(said.label));
      if (openedCircuit(telling.scheme.worked.foundShapes, connection.circuit) === 'radial')
        return `The cable between ${from} and ${to} is opened and carried on through ${through}.`;
      return `The loop of cable that feeds your sockets is opened between ${from} and ${to} and carried on through ${through}, which ${connection.through.length === 1 ? 'is' : 'are'} then fed from both ends, as the sockets that you have are.`;
    }
    case 'radial': {
      const fed = listed(
        inJobOrder(
          connection.feeds.map(({ to }) => to),
          telling,
        ).map(said.label),
      );
      return `A new cable from the fuse box, with a breaker of its own (${connection.device.ratingA ?? '?'} A), feeds ${fed}.`;
    }
    case 'fuse-down':
      return `A fuse is put into the branch that is there: ${behindFuse(connection, telling) || 'what hangs on it is behind that fuse'}.`;
    case 'close-spur':
      return `The branch that ends at ${said.place(connection.point)} is joined back into the loop at its other end.`;
  }
}

function remedySaid({ kind, at }: Remedy, said: ThingsSaid): string {
  const where = at === undefined ? null : said.place(at);
  switch (kind) {
    case 'rcbo':
      return 'In the fuse box the breaker of this circuit is changed for one that also cuts the power when current leaks to earth (an RCBO).';
    case 'rcd-enclosure':
      return 'Beside the fuse box a cut-out is fitted that turns the power off when current leaks to earth (an RCD).';
    case 'rcd-unit':
      return `The fused unit${where === null ? '' : ` at ${where}`} gets a cut-out that turns it off when current leaks to earth (an RCD).`;
    case 'rcd-outlet':
      return `The socket${where === null ? '' : ` at ${where}`} is changed for one with a cut-out of its own (an RCD).`;
    case 'bond-upgrade':
      return `The earth wire to the ${at === 'gas' || at === 'water' || at === 'oil' ? `${at} pipe` : 'incoming pipes'} (main bonding) is renewed.`;
    case 're-box':
      return `The box behind ${where ?? 'a socket'} is changed for a deeper one.`;
    case 'single-to-twin':
      return `${where ?? 'A single socket'} is changed from a single to a double socket.`;
    case 'lower-device':
      return 'In the fuse box the breaker of this circuit is changed for a smaller one.';
    case 'new-board':
      return 'The fuse box is changed for a new one.';
  }
}

/** How a scheme joins what is wanted to what is there, a sentence or two each, branches first. */
export function howSaid(scheme: SchemeEstimate): readonly string[] {
  const connections = scheme.worked.scheme?.connections ?? [];
  const telling = { scheme, said: thingsSaid(scheme.worked) };
  const spurs = connections.flatMap((one) => (one.kind === 'spur' ? [one] : []));
  const rest = connections.flatMap((one) => (one.kind === 'spur' ? [] : [restSaid(one, telling)]));
  return connections.length === 0 ? ['Nothing is joined yet.'] : [...spursSaid(spurs, telling), ...rest];
}

/** What is changed beside the new points, a sentence each, the same said once. */
export function remediesSaid(scheme: SchemeEstimate): readonly string[] {
  const said = thingsSaid(scheme.worked);
  return [...new Set((scheme.worked.scheme?.remedies ?? []).map((one) => remedySaid(one, said)))];
}

/** What a way of doing the work is known by, in few words: by the most telling of its connections. */
export function nicknameOf({ worked }: SchemeEstimate): string {
  const connections = worked.scheme?.connections ?? [];
  const { label } = thingsSaid(worked);
  const has = (kind: Connection['kind']): boolean => connections.some((one) => one.kind === kind);
  const shared = connections.flatMap((one) =>
    (one.kind === 'fused-spur' || one.kind === 'fuse-down') && one.feeds.length > 0
      ? one.feeds.map(({ to }) => to)
      : [],
  );
  if (connections.length === 0) return 'nothing joined yet';
  if (has('radial')) return 'a circuit of its own from the fuse box';
  if (shared.length > 0)
    return `one fuse for ${listed(worked.job.points.flatMap(({ id }) => (shared.includes(id) ? [label(id)] : [])))}`;
  const opened = connections.flatMap((one) =>
    one.kind === 'ring-extension' ? [openedCircuit(worked.foundShapes, one.circuit)] : [],
  );
  if (opened.includes('ring')) return 'the loop carried on';
  if (opened.length > 0) return 'a cable that is there carried on';
  return has('close-spur') ? 'a branch made part of the loop' : 'branch cables';
}
