import { demoLibrary } from '#data/catalogue/demo-library.ts';
import type { Library } from '#model/library.ts';

const own = <T extends { origin?: 'demo' | undefined }>({ origin: _origin, ...row }: T): Omit<T, 'origin'> =>
  row;

/** The demo's figures as a firm's own: nothing of it says any more that it is the demo's. */
export function ownLibrary(): Library {
  const demo = demoLibrary();
  const { rateOrigin: _rateOrigin, ...norms } = demo.norms;
  return {
    ...demo,
    firm: { name: 'Own', address: ['1 Own Yard'], contact: 'own@example.org', vatNumber: 'GB 1' },
    prices: { ...demo.prices, source: 'Own merchant, November', items: demo.prices.items.map(own) },
    norms: { ...norms, source: 'Own', tasks: norms.tasks.map(own), sums: norms.sums.map(own) },
  };
}
