import type { Medium } from '#model/cable.ts';
import { openedCircuit } from '../circuit/opened-circuit.ts';
import { openedUp } from '../labour/opened-up.ts';
import { roomLeft } from '../proof/room-left.ts';
import { NOMINAL_V } from '../proof/spur-load.ts';
import { counted } from '../rules/counted.ts';
import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import { branchOrLoop, fedFromLoop } from './branch-or-loop.ts';
import type { ComparedRow, QuotedPassage, QuotedScheme } from './document.ts';
import { fusesBefore, fuseWords, loadsNamed } from './fuse-said.ts';
import type { Offered } from './offered.ts';
import { listed, pounds } from './said.ts';
import { thingsSaid } from './thing-said.ts';

const metresIn = ({ runs }: SchemeEstimate, media: readonly Medium[]): number =>
  runs
    .flatMap(({ segments }) => segments)
    .reduce((sum, { medium, lengthMm }) => sum + (media.includes(medium) ? lengthMm : 0), 0) / 1000;

const metresOrNone = (metres: number): string =>
  metres === 0 ? 'none' : `about ${Math.max(0.5, Math.round(metres * 2) / 2)} m`;

/** Points that the circuit's own breaker limits, by how they hang on its loop: `W1 and W3 on branches, W2 in the loop`. */
function inLoopOrNot(scheme: SchemeEstimate, pointIds: readonly string[]): string {
  const { label } = thingsSaid(scheme.worked);
  const { inLoop, onBranch } = fedFromLoop(scheme);
  const branches = pointIds.filter((id) => onBranch.includes(id));
  const loop = pointIds.filter((id) => inLoop.includes(id));
  const rest = pointIds.filter((id) => !branches.includes(id) && !loop.includes(id));
  return [
    ...(branches.length === 0
      ? []
      : [`${listed(branches.map(label))} ${branches.length === 1 ? 'on a branch' : 'on branches'}`]),
    ...(loop.length === 0 ? [] : [`${listed(loop.map(label))} in the loop`]),
    ...(rest.length === 0 ? [] : [listed(rest.map(label))]),
  ].join(', ');
}

/** What the new points share with each other or with the rest of the house. */
function sharedSaid(scheme: SchemeEstimate): string {
  const { label } = thingsSaid(scheme.worked);
  const groups = roomLeft(scheme.worked).map(({ limitedBy, limitA, pointIds }) => {
    const points = listed(pointIds.map(label));
    const fuse = limitA === null ? 'a fuse' : `a ${limitA} A fuse`;
    if (limitedBy === 'fuse')
      return pointIds.length === 1 ? `${points}: ${fuse} of its own` : `${points} share ${fuse}`;
    return `${inLoopOrNot(scheme, pointIds)}: with the rest of ${pointIds.length === 1 ? 'its' : 'their'} circuit`;
  });
  return groups.length === 0 ? 'not settled yet' : groups.join('. ');
}

/** What two or three options are set side by side by, a cell for each in their order; none for fewer than two. */
export function comparedRows(
  offered: readonly Offered[],
  quoted: readonly QuotedScheme[],
): readonly ComparedRow[] {
  if (offered.length < 2) return [];
  const row = (what: string, of: (scheme: SchemeEstimate, quoted: QuotedScheme) => string): ComparedRow => ({
    what,
    cells: offered.flatMap(({ scheme }, i) => {
      const at = quoted[i];
      return at === undefined ? [] : [of(scheme, at)];
    }),
  });
  const hasVat = quoted.every(({ price }) => !price.withoutVat);
  const range = quoted.some(({ price }) => price.range !== null);
  return [
    row(hasVat ? 'Price with VAT' : 'Price', (_, { price }) => pounds(price.grossPence)),
    ...(range
      ? [
          row('May come to', (_, { price }) =>
            price.range === null ? '' : `${pounds(price.range.lowPence)} to ${pounds(price.range.highPence)}`,
          ),
        ]
      : []),
    row('Work', ({ totals }) => `about ${counted(Math.max(1, Math.round(totals.hours)), 'hour')}`),
    row('Floors opened', ({ labour }) => {
      const { boards } = openedUp(labour);
      return boards === 0 ? 'none' : `in ${counted(boards, 'place')}`;
    }),
    row('Walls cut for cable', (scheme) => metresOrNone(metresIn(scheme, ['wall-chase']))),
    row('Cable or cover strip in sight', (scheme) =>
      metresOrNone(metresIn(scheme, ['surface-channel', 'surface-clipped'])),
    ),
    row('What feeds the new points', sharedSaid),
  ];
}

const hasRing = ({ worked }: SchemeEstimate): boolean =>
  (worked.scheme?.connections ?? []).some(
    (one) => one.kind === 'ring-extension' && openedCircuit(worked.foundShapes, one.circuit) === 'ring',
  );

/** What each shared fuse does with what is plugged in behind it. */
const sharedFuses = ({ worked }: SchemeEstimate): readonly string[] =>
  fusesBefore({ worked }).map(({ limitA, pointIds }) => {
    const { label } = thingsSaid(worked);
    const loads = loadsNamed(worked.job, pointIds);
    const fuseA = limitA ?? 13;
    if (loads.length > 0) return fuseWords(fuseA, loads);
    return `At any one time ${listed(pointIds.map(label))} together carry what one ${fuseA} A fuse does, about ${((fuseA * NOMINAL_V) / 1000).toFixed(0)} kW: a kettle, or a heater and a few small things. With more the fuse blows, and they are off until it is changed.`;
  });

/** What can be added later where the loop was carried on: it is branched off only points that the loop passes through. */
function laterSaid(scheme: SchemeEstimate): string {
  const { label } = thingsSaid(scheme.worked);
  const { takeMore } = fedFromLoop(scheme);
  return takeMore.length === 0
    ? ''
    : ` One more socket can be branched off ${takeMore.length === 1 ? '' : 'each of '}${listed(takeMore.map(label))} later.`;
}

/** Why one would choose a fused branch, and why the loop carried on: where both are offered, once. */
function fuseOrLoop(offered: readonly Offered[]): readonly QuotedPassage[] {
  const fused = offered.find(({ scheme }) => fusesBefore(scheme).length > 0);
  const ring = offered.find(({ scheme }) => hasRing(scheme) && fusesBefore(scheme).length === 0);
  if (fused === undefined || ring === undefined) return [];
  return [
    {
      heading: 'One fuse for the new sockets, or the loop carried on?',
      paragraphs: [
        `Option ${fused.letter}: ${sharedFuses(fused.scheme).join(' ')} More sockets can be added behind the same fuse later; all of them share what it carries.`,
        `Option ${ring.letter}: No fuse stands before the new sockets but the one in each plug, so they can be used as the sockets that you have.${laterSaid(ring.scheme)}`,
      ],
    },
  ];
}

/** What speaks for one option and what for another, where they differ in kind: a fuse or none, a branch or the loop. */
export const weighedPassages = (offered: readonly Offered[]): readonly QuotedPassage[] => [
  ...fuseOrLoop(offered),
  ...branchOrLoop(offered),
];
