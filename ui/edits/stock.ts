import type { JobEdit } from '../job-events.ts';

/** Sets what the van holds of an item already; nought takes the item off the list. */
export const setStock = (item: string, description: string, quantity: number): JobEdit => ({
  label: `Van's stock: ${description}`,
  change: (job) => {
    const others = job.stock.filter((held) => held.item !== item);
    const place = job.stock.findIndex((held) => held.item === item);
    if (quantity > 0) others.splice(place < 0 ? others.length : place, 0, { item, quantity });
    job.stock = others;
  },
});
