import { type CircuitPicture, circuitPicture } from '#drawing/proof/circuit-picture.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { CircuitProof } from '#engine/proof/circuit-proof.ts';
import { demoEstimate, demoNames } from '#tests/engine/demo-jobs/demo-estimates.ts';

/** A circuit of a demo job under one scenario. */
export interface DemoPicture {
  readonly name: string;
  readonly worked: Worked;
  readonly proof: CircuitProof;
  readonly picture: CircuitPicture;
}

/** Every circuit of every demo job, as found and by every scheme, under every scenario it has. */
export const demoPictures = (): readonly DemoPicture[] =>
  demoNames.flatMap((job) => {
    const { asFound, schemes } = demoEstimate(job);
    return [{ id: 'found', ...asFound }, ...schemes].flatMap(({ id, worked, proof: proofs }) =>
      proofs.flatMap((proof) =>
        (['handbook', ...proof.otherScenarios.map(({ scenario }) => scenario)] as const).flatMap(
          (scenario) => {
            const picture = circuitPicture(worked, proof, scenario);
            return picture === null
              ? []
              : [{ name: `${job} ${id} ${proof.circuit} ${scenario}`, worked, proof, picture }];
          },
        ),
      ),
    );
  });

/** One of them. */
export function demoPicture(name: string): DemoPicture {
  const found = demoPictures().find((one) => one.name === name);
  if (found === undefined) throw new Error(`no picture ${name}`);
  return found;
}
