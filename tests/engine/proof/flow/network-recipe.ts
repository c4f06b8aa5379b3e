import fc from 'fast-check';
import { type NetworkKind, type NetworkRecipe, networkKinds } from './random-network.ts';

/** Recipes of circuits for properties: of every kind where none is named. */
export const networkRecipe = (kinds: readonly NetworkKind[] = networkKinds): fc.Arbitrary<NetworkRecipe> =>
  fc.record({
    seed: fc.nat(),
    kind: fc.constantFrom(...kinds),
    size: fc.integer({ min: 0, max: 24 }),
    linkPercent: fc.constantFrom(0, 0, 20, 60),
    isOdd: fc.boolean(),
  });

/** Settings of the properties: how many circuits each is tried on. */
export const TRIES = { numRuns: 400 } as const;
