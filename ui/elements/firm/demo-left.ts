import { demoCount, demoFirmDetails, demoMarks } from '#engine/demo-marks.ts';
import type { Library } from '#model/library.ts';
import { counted, listed } from '../../written.ts';

function leftOf(figures: Parameters<typeof demoCount>[0], one: string): string {
  const left = demoCount(figures);
  return left === 0
    ? 'it says of itself that it is the demo’s, nothing else is'
    : `${counted(left, one)} of ${figures.length}`;
}

function normsLeft({ rateOrigin, tasks }: Library['norms']): string {
  const rate = rateOrigin === 'demo' ? 'the hourly rate; ' : '';
  return `${rate}the norms: minutes of ${leftOf(tasks, 'task')} left`;
}

/**
 * The firm's details that are the demo's still and that can be seen: the VAT number is asked for, and so shown, only of
 * a firm that is registered.
 */
function detailsLeft({ firm, terms }: Pick<Library, 'firm' | 'terms'>): readonly string[] {
  const details = demoFirmDetails(firm).map((detail) => (detail === 'contact' ? 'telephone' : detail));
  return terms.vat === 'not-registered' ? details.filter((detail) => detail !== 'VAT number') : details;
}

/** What of the invented demo firm is left in a firm's library, in words, a line each; none when nothing is. */
export function demoLeft(library: Pick<Library, 'firm' | 'terms' | 'prices' | 'norms'>): readonly string[] {
  const { prices, norms } = demoMarks(library);
  const details = detailsLeft(library);
  return [
    ...(details.length > 0 ? [`the firm: ${listed(details)}`] : []),
    ...(prices ? [`the price list: ${leftOf(library.prices.items, 'price')} left`] : []),
    ...(norms ? [normsLeft(library.norms)] : []),
  ];
}
