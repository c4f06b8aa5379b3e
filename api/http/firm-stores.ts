import type { Stores } from '../db/stores.ts';
import { putBackDemos } from './put-back-demos.ts';

/**
 * The stores of each firm, opened once for as long as the server runs; the demo jobs are put in the first time that a firm
 * is asked for.
 */
export function firmStores(
  open: (firmId: string) => Promise<Stores>,
  demoJobs: readonly string[],
): (firmId: string) => Promise<Stores> {
  const opened = new Map<string, Promise<Stores>>();
  const begin = async (firmId: string): Promise<Stores> => {
    const stores = await open(firmId);
    if (!(await stores.firm.demosOffered())) await putBackDemos(stores, demoJobs);
    return stores;
  };
  return (firmId) => {
    const had = opened.get(firmId);
    if (had !== undefined) return had;
    const stores = begin(firmId);
    opened.set(firmId, stores);
    // What failed is tried again by whoever asks next.
    stores.catch(() => opened.delete(firmId));
    return stores;
  };
}
