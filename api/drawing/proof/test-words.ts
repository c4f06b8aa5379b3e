import type { CircuitProof } from '#engine/proof/circuit-proof.ts';

/** What the expected figures are at, and what to do about it. */
export const temperatureWords = ({ expected: { conductorC, isTold } }: CircuitProof): string =>
  isTold
    ? `At ${conductorC} °C, the conductors’ temperature in the job.`
    : `At ${conductorC} °C: nobody said what the conductors are at. Colder or warmer by 5 K changes a resistance by 2 %.`;

/** What a tester has to show of a circuit besides resistances, a sentence each. */
export function testLimitWords({ tests, limit, longest, ring }: CircuitProof): readonly string[] {
  const { insulation, rcd, disconnectWithinS } = tests;
  return [
    `Insulation: at ${insulation.testV} V no less than ${insulation.minimumMegohm} MΩ, loads and electronics off.`,
    rcd === null
      ? 'RCD: none is known of, so there is no time to hold it to.'
      : `RCD: opens within ${rcd.maximumMs} ms at ${rcd.testMa} mA.`,
    ...(disconnectWithinS === null ? [] : [`A fault to earth is cut off within ${disconnectWithinS} s.`]),
    ...(limit.coldOhm === null
      ? []
      : [`Zs read: no more than ${limit.coldOhm.toFixed(2)} Ω (${byWords(limit)}).`]),
    ...(longest === null
      ? []
      : [
          `In one cable this circuit could be ${Math.floor(longest.lengthMm / 1000)} m long${ring === undefined ? '' : ' round the ring'}, by ${longest.by === 'volt-drop' ? 'volt drop' : 'fault loop'}.`,
        ]),
  ];
}

/** Where a limit for a cold reading comes from. */
function byWords({ by, words, coldRule }: CircuitProof['limit']): string {
  if (by === 'rcd') return words;
  return coldRule === 'eighty-percent' ? `80 % of ${words}` : `${words}, by the On-Site Guide’s divisor`;
}
