import { hasPlaster } from '../labour/drying.ts';
import { ASBESTOS_SUM } from '../rules/asbestos.ts';
import type { SchemeEstimate } from '../schemes/estimate-result.ts';
import type { QuotedLine } from './document.ts';
import { remediesSaid } from './how-said.ts';
import { type Offered, optionWords, saidByOptions } from './offered.ts';
import { isNotifiable } from './paperwork.ts';
import { platesSaid } from './plate-said.ts';
import { listed } from './said.ts';

const hasTask = ({ labour }: SchemeEstimate, tasks: readonly string[]): boolean =>
  labour.some(({ task, quantity }) => tasks.includes(task) && quantity > 0);

const hasSum = ({ price }: SchemeEstimate, sum: string): boolean =>
  price.other.some((line) => line.sum === sum && line.pence > 0);

/** What is fitted, its plates by what they are of. */
function materialsSaid({ worked }: SchemeEstimate): string {
  const plates = platesSaid(worked);
  return `All ${listed(['cable', ...(plates === null ? [] : [plates]), 'boxes', 'fixings'])}`;
}

function fillingSaid(scheme: SchemeEstimate): readonly string[] {
  if (!hasPlaster(scheme.labour)) return [];
  return [
    scheme.worked.tariff.filling === 'bonding-and-finish'
      ? 'What is cut into walls is filled with two coats of plaster, flush and smooth'
      : 'What is cut into walls is filled flush with one coat of plaster',
  ];
}

/** Testing as far as it is in the price: what is there, or what a new circuit is joined to, and what was worked on. */
function testingSaid(scheme: SchemeEstimate): readonly string[] {
  const supply = hasTask(scheme, ['verify-supply']);
  const before = [
    ...(hasTask(scheme, ['verify-circuit']) ? ['what is there before it is touched'] : []),
    ...(supply ? ['the supply and the fuse box before anything new is joined to them'] : []),
  ];
  const after = hasTask(scheme, ['test-circuit']) ? ['all that was worked on afterwards'] : [];
  const parts = [...before, ...after];
  return parts.length === 0 ? [] : [`Testing ${listed(parts)}`];
}

/** What an option's price has in it, a line each. */
function includedIn(scheme: SchemeEstimate): readonly string[] {
  return [
    materialsSaid(scheme),
    'Marking every new place on the wall with you before anything is cut',
    ...testingSaid(scheme),
    ...(hasTask(scheme, ['lift-board', 'chipboard-trap', 'open-fixed-floor'])
      ? ['Floors opened where cable goes below them, and closed again']
      : []),
    ...(hasTask(scheme, ['roll-covering']) ? ['Carpet or the like rolled back and laid again'] : []),
    ...(hasTask(scheme, ['chase-set-up'])
      ? ['Dust sheets, and dust taken off with a vacuum where we cut']
      : []),
    ...fillingSaid(scheme),
    ...(hasTask(scheme, ['clean-up']) ? ['Cleaning up where we worked'] : []),
    ...(hasTask(scheme, ['move-furniture']) ? ['Moving furniture out of the way and back'] : []),
    ...(hasTask(scheme, ['connect-appliance']) ? ['Connecting the fixed appliance to its new supply'] : []),
    ...(hasSum(scheme, 'parking') ? ['Parking'] : []),
    ...(hasSum(scheme, ASBESTOS_SUM) ? ['Having what may hold asbestos sampled before we begin'] : []),
    ...(hasSum(scheme, 'notification') ? ['Telling building control'] : []),
    ...(remediesSaid(scheme).length > 0 ? ['What stands under “Also done”'] : []),
    ...(scheme.worked.job.extras ?? []).map(({ words }) => words),
    'The certificate named below',
  ];
}

function furnitureSaid(scheme: SchemeEstimate): readonly string[] {
  const { furniture } = scheme.worked.job.terms;
  if (furniture === 'firm' || scheme.worked.job.site.occupied === false) return [];
  return furniture === 'customer'
    ? ['Moving furniture: please clear about a metre along the walls and floors named above']
    : ['Moving furniture: who does it is to be agreed'];
}

/** What of asbestos is not in the price: its sampling is where the price has a sum for it. */
function asbestosSaid(scheme: SchemeEstimate): readonly string[] {
  if (scheme.worked.job.site.builtBefore2000 === false) return [];
  return [hasSum(scheme, ASBESTOS_SUM) ? 'Removing asbestos' : 'Testing for asbestos, and removing it'];
}

/** What an option's price does not have in it, a line each. */
function excludedFrom(scheme: SchemeEstimate): readonly string[] {
  return [
    'Painting, wallpaper, tiling and other decoration',
    'Mending faults in the wiring that is there, except where it says so above',
    (scheme.worked.job.extras ?? []).length === 0
      ? 'Taking away rubble and old parts: to be agreed'
      : 'Taking away rubble and old parts, except where it says so above: to be agreed',
    'Anything not named here',
    ...asbestosSaid(scheme),
    ...(hasTask(scheme, ['roll-covering']) ? ['A carpet fitter, if a covering does not lie as it did'] : []),
    ...(hasTask(scheme, ['open-fixed-floor'])
      ? ['New flooring where a fixed floor has to be opened: boards, tiles or laminate may not go back whole']
      : []),
    ...furnitureSaid(scheme),
    ...(hasSum(scheme, 'parking') ||
    scheme.worked.job.answers.some(
      ({ question, value }) => question === 'parking-at-the-house' && value === true,
    )
      ? []
      : ['Parking charges, if there are any']),
    ...(isNotifiable(scheme) && !hasSum(scheme, 'notification')
      ? ['Fees of building control or of a certifier']
      : []),
  ];
}

const lines = (
  offered: readonly Offered[],
  of: (scheme: SchemeEstimate) => readonly string[],
): readonly QuotedLine[] =>
  saidByOptions(offered, of).map(({ words, letters }) => ({
    words,
    forOptions: optionWords(letters, offered),
  }));

/** What the prices have in them; what only some options have, with their letters. */
export const includedOf = (offered: readonly Offered[]): readonly QuotedLine[] => lines(offered, includedIn);

/** What they do not have. */
export const excludedOf = (offered: readonly Offered[]): readonly QuotedLine[] =>
  lines(offered, excludedFrom);
