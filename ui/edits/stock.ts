import type { Stock } from '#model/job.ts';
import type { JobEdit } from '../job-events.ts';

/** Puts an entry in the place of all that the van holds of an item; null takes the item off the list. */
const holding = (item: string, description: string, entry: Stock | null): JobEdit => ({
  label: `Van's stock: ${description}`,
  change: (job) => {
    const others = job.stock.filter((held) => held.item !== item);
    const place = job.stock.findIndex((held) => held.item === item);
    if (entry !== null) others.splice(place < 0 ? others.length : place, 0, entry);
    job.stock = others;
  },
});

/** Sets what the van holds of an item already; nought takes the item off the list. */
export const setStock = (item: string, description: string, quantity: number): JobEdit =>
  holding(item, description, quantity > 0 ? { item, quantity } : null);

/** Sets the unbroken lengths, m, that the van holds of something that is cut; none takes the item off the list. */
export function setStockLengths(item: string, description: string, lengthsM: readonly number[]): JobEdit {
  const quantity = Math.round(lengthsM.reduce((sum, lengthM) => sum + lengthM, 0) * 1000) / 1000;
  if (lengthsM.length === 0) return holding(item, description, null);
  return holding(
    item,
    description,
    lengthsM.length === 1 ? { item, quantity } : { item, quantity, lengthsM: [...lengthsM] },
  );
}
