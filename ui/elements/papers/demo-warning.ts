import { demoFirmDetails, demoShare, demoShareWords, type PricedWith, saysDemo } from '#engine/demo-marks.ts';
import type { Library } from '#model/library.ts';
import { listed } from '../../written.ts';

function firmWarning(firm: Library['firm']): readonly string[] {
  const details = demoFirmDetails(firm);
  if (details.length === 0) return [];
  const left = `The demo firm’s ${listed(details)} ${details.length === 1 ? 'is' : 'are'} still in them`;
  return details.includes('name')
    ? [`These papers go out in the name of “${firm.name}”. ${left}.`]
    : [`${left}: put in your own.`];
}

/**
 * What papers carry that is the demo's still, a sentence each; none when nothing of the demo is in them.
 *
 * @param scheme the one that the papers show; null without any.
 */
export function demoWarnings(
  library: Pick<Library, 'firm' | 'prices' | 'norms'>,
  scheme: PricedWith | null,
): readonly string[] {
  const { firm, prices, norms } = library;
  const shares = scheme === null ? [] : demoShareWords(demoShare(scheme, library));
  const sources = [
    ...(saysDemo.prices(prices) ? ['price list'] : []),
    ...(saysDemo.norms(norms) ? ['norms'] : []),
  ];
  return [
    ...firmWarning(firm),
    ...shares,
    ...(sources.length > 0 && shares.length === 0
      ? [`By what they say they are from, the demo’s still: ${listed(sources)}.`]
      : []),
  ];
}
