import { describe, expect, it } from 'vitest';
import { breakerTrip } from '#data/standards/breaker-trip.ts';
import { conductorResistance } from '#data/standards/conductor-resistance.ts';
import { disconnectionTimes } from '#data/standards/disconnection-times.ts';
import { fuseLoopImpedance } from '#data/standards/fuse-loop-impedance.ts';
import { imperialCable } from '#data/standards/imperial-cable.ts';
import { letThroughClass } from '#data/standards/let-through-class.ts';
import { methodBFlatCable } from '#data/standards/method-b-flat-cable.ts';
import { supplyImpedance } from '#data/standards/supply-impedance.ts';
import type { Table } from '#data/standards/table.ts';
import { table4B1 } from '#data/standards/table-4b1.ts';
import { table4D5 } from '#data/standards/table-4d5.ts';
import { voltDropFlatCable } from '#data/standards/volt-drop-flat-cable.ts';
import { voltDropLimits } from '#data/standards/volt-drop-limits.ts';
import { ambientFactor } from '#engine/proof/ambient-factor.ts';
import {
  cableOhms,
  conductorMilliohmPerM,
  HOT_RATIO,
  temperatureRatio,
} from '#engine/proof/conductor-ohms.ts';
import { LEAST_FAULT_V, loopLimit, plugFuseLimit, rcdLoopLimitOhm } from '#engine/proof/loop-limit.ts';
import { tabulatedCapacity } from '#engine/proof/tabulated-capacity.ts';
import type { Device } from '#model/installation.ts';

const rises = (values: readonly number[]): boolean =>
  values.every((value, i) => i === 0 || value > (values[i - 1] ?? Infinity));
const falls = (values: readonly number[]): boolean => rises(values.map((value) => -value));
const twin = (lineMm2: number, cpcMm2: number) => ({ type: 'flat-twin', lineMm2, cpcMm2 }) as const;

describe('IEC 60228 resistances at 20 °C', () => {
  // Three pages print the same figures: https://www.scribd.com/document/455845828/app4-pdf,
  // https://www.uecables.com/471-power-copper-conductors-according-to-iec-60228.html,
  // https://www.scribd.com/document/3231750/6181Y-cables
  it.each([
    [1, 18.1],
    [1.5, 12.1],
    [2.5, 7.41],
    [4, 4.61],
    [6, 3.08],
    [10, 1.83],
    [16, 1.15],
  ])('%d mm² has %d mΩ/m', (areaMm2, milliohmPerM) => {
    expect(conductorMilliohmPerM(areaMm2)).toEqual({ milliohmPerM, grade: 'seen' });
  });

  it('fall with the area, and lie above ideal copper by the allowance for making it', () => {
    // 1/58 Ω·mm²/m is the resistivity of annealed copper: IEC 60028 (from memory). Flexible cores, finely
    // stranded, lie higher.
    for (const [make, mostRatio] of [
      ['fixed', 1.09],
      ['flexible', 1.16],
    ] as const) {
      const rows = conductorResistance.rows.filter((row) => row.make === make);
      expect(falls(rows.map(({ milliohmPerM }) => milliohmPerM))).toBe(true);
      expect(rises(rows.map(({ areaMm2 }) => areaMm2))).toBe(true);
      for (const { areaMm2, milliohmPerM } of rows) {
        const ratio = milliohmPerM / (1000 / 58 / areaMm2);
        expect(ratio, `${make} ${areaMm2}`).toBeGreaterThan(1.03);
        expect(ratio, `${make} ${areaMm2}`).toBeLessThan(mostRatio);
      }
    }
  });

  it('have flexible cores above fixed ones of the same area', () => {
    const flexible = conductorResistance.rows.filter(
      ({ make, areaMm2 }) => make === 'flexible' && areaMm2 >= 1,
    );
    expect(flexible).not.toHaveLength(0);
    for (const { areaMm2, milliohmPerM } of flexible)
      expect(milliohmPerM).toBeGreaterThan(conductorMilliohmPerM(areaMm2)?.milliohmPerM ?? Infinity);
  });
});

describe('BS 6004 cable pairs, On-Site Guide Table I1', () => {
  // https://www.scribd.com/document/455845828/app4-pdf; the first (1.0 twice) and last (old 2.5/1.0) by addition.
  it.each([
    [1, 1, 36.2],
    [1.5, 1, 30.2],
    [2.5, 1.5, 19.51],
    [4, 1.5, 16.71],
    [6, 2.5, 10.49],
    [10, 4, 6.44],
    [16, 6, 4.23],
    [2.5, 1, 25.51],
  ])('%d/%d mm² has %d mΩ/m both together', (lineMm2, cpcMm2, milliohmPerM) => {
    const { lineMilliohmPerM = Number.NaN, cpcMilliohmPerM = null } = cableOhms(twin(lineMm2, cpcMm2)) ?? {};
    expect(lineMilliohmPerM + (cpcMilliohmPerM ?? Number.NaN)).toBeCloseTo(milliohmPerM, 6);
  });
});

describe('imperial conductors', () => {
  it.each(imperialCable.rows)('$size has the area of its wires', ({ wires, wireMil, areaMm2 }) => {
    // n · π/4 · d², d in thousandths of an inch of 25.4 mm; printed to 0.01 mm².
    const exactMm2 = wires * (Math.PI / 4) * ((wireMil * 25.4) / 1000) ** 2;
    expect(Math.abs(areaMm2 - exactMm2)).toBeLessThanOrEqual(0.006);
  });

  it('print 2.98 and 1.28 mm² for 7/.029 with 3/.029', () => {
    // Source: https://diynot.com/diy/threads/old-imperial-7-029-twin-and-earth.444616/page-2
    const seen = imperialCable.rows.filter(({ status }) => status === 'seen');
    expect(seen.map(({ size, areaMm2 }) => [size, areaMm2])).toEqual([
      ['3/.029', 1.28],
      ['7/.029', 2.98],
    ]);
  });

  it('have a resistance above ideal copper of that area, by no more than metric ones', () => {
    const { lineMilliohmPerM = Number.NaN } =
      cableOhms({ type: 'imperial', lineMm2: 2.98, cpcMm2: 1.28 }) ?? {};
    const ratio = lineMilliohmPerM / (1000 / 58 / 2.98);
    expect(ratio).toBeGreaterThan(1.03);
    expect(ratio).toBeLessThan(1.09);
  });
});

describe('temperature factors', () => {
  it.each([
    // On-Site Guide Table I2 (from memory); 30 and 40 °C by the same 0.4 % a kelvin.
    [5, 0.94],
    [10, 0.96],
    [15, 0.98],
    [20, 1],
    [25, 1.02],
    [30, 1.04],
    [40, 1.08],
  ])('a resistance at 20 °C is multiplied at %d °C by %d', (celsius, ratio) => {
    expect(temperatureRatio(celsius)).toBeCloseTo(ratio, 9);
  });

  it.each([
    // The other way round, to bring a reading to 20 °C: https://www.tlc-direct.co.uk/Book/8.4.4.htm
    [5, 1.06],
    [10, 1.04],
    [15, 1.02],
    [20, 1],
    [25, 0.98],
  ])('a reading at %d °C is brought to 20 °C by %d', (celsius, ratio) => {
    // Printed to 0.01.
    expect(Math.abs(1 / temperatureRatio(celsius) - ratio)).toBeLessThanOrEqual(0.005);
  });
});

describe('BS 7671 Table 4D5', () => {
  it.each([
    // https://engx.theiet.org/f/wiring-and-regulations/31436/… (method 100); A and C in print of the 16th edition
    [16, '100', 57],
    [16, 'A', 57],
    [16, 'C', 85],
  ] as const)('%d mm² by method %s carries %d A', (lineMm2, method, currentA) => {
    expect(tabulatedCapacity(twin(lineMm2, 6), method)).toEqual({ currentA, grade: 'seen' });
  });

  it('carries more with more copper, by every method', () => {
    for (const method of ['C', 'A', '100', '101', '102', '103'])
      expect(
        rises(table4D5.rows.filter((row) => row.method === method).map(({ currentA }) => currentA)),
        method,
      ).toBe(true);
    expect(rises(methodBFlatCable.rows.map(({ currentA }) => currentA))).toBe(true);
  });

  it('drops by its volt-drop column what twice the hot resistance gives, within 1.4 %', () => {
    // The tabulated figures are rounded to two digits, 44 for 43.4 and 7.3 for 7.39 the coarsest.
    for (const { areaMm2, millivoltPerAM } of voltDropFlatCable.rows) {
      const physicsMv = 2 * (conductorMilliohmPerM(areaMm2)?.milliohmPerM ?? Number.NaN) * HOT_RATIO;
      expect(Math.abs(millivoltPerAM / physicsMv - 1), `${areaMm2} mm²`).toBeLessThanOrEqual(0.0145);
    }
    expect(falls(voltDropFlatCable.rows.map(({ millivoltPerAM }) => millivoltPerAM))).toBe(true);
  });

  it('has a volt drop for every size that has a capacity', () => {
    const sizes = [...new Set(table4D5.rows.map(({ areaMm2 }) => areaMm2))];
    expect(voltDropFlatCable.rows.map(({ areaMm2 }) => areaMm2)).toEqual(sizes);
  });
});

describe('BS 7671 Table 4B1', () => {
  it('has the printed factors for 70 °C thermoplastic', () => {
    // https://de.scribd.com/document/245595863/IEE-Wiring-Regulation-Basic-Summary-and-Tables
    expect([25, 30, 35, 40, 45, 50, 55, 60].map(ambientFactor)).toEqual([
      1.03, 1, 0.94, 0.87, 0.79, 0.71, 0.61, 0.5,
    ]);
  });

  it('follows the heat that 70 °C leaves room for, √((70 − t) ÷ 40), and is more cautious below 30 °C', () => {
    const [cool, ...warm] = table4B1.rows;
    expect(warm).toHaveLength(7);
    // Printed to 0.01.
    for (const { ambientC, factorRatio } of warm)
      expect(Math.abs(factorRatio - Math.sqrt((70 - ambientC) / 40))).toBeLessThanOrEqual(0.005);
    expect(cool.factorRatio).toBeLessThan(Math.sqrt((70 - cool.ambientC) / 40));
    expect(falls(table4B1.rows.map(({ factorRatio }) => factorRatio))).toBe(true);
  });
});

describe('BS 7671 Table 41.3, breakers', () => {
  const ratings = [3, 6, 10, 16, 20, 25, 32, 40, 50] as const;
  // B seen as the figures of 2008 times 0.95, B6 7.28 and B45 0.97 printed as such:
  // https://pdfcoffee.com/bs-7671-tables-412-413-amp-414-pdf-free.html,
  // https://www.electriciansforums.net/threads/max-zs-values-in-the-on-suite-guide.199276/
  it.each([
    ['B', [14.57, 7.28, 4.37, 2.73, 2.19, 1.75, 1.37, 1.09, 0.87]],
    ['C', [7.28, 3.64, 2.19, 1.37, 1.09, 0.87, 0.68, 0.55, 0.44]],
    ['D', [3.64, 1.82, 1.09, 0.68, 0.55, 0.44, 0.34, 0.27, 0.22]],
  ] as const)('curve %s comes out as printed, to half the last digit', (curve, printed) => {
    const worked = ratings.map(
      (ratingA) => loopLimit({ standard: 'BS-EN-60898', curve, ratingA })?.maximumOhm ?? Number.NaN,
    );
    printed.forEach((ohm, i) => {
      expect(Math.abs((worked[i] ?? Number.NaN) - ohm), `${curve}${ratings[i]}`).toBeLessThanOrEqual(0.0051);
    });
  });

  it('gives the forms of 2008, 46, 23 and 11.5 V over the rating, with 230 V', () => {
    // Source: https://pdfcoffee.com/bs-7671-tables-412-413-amp-414-pdf-free.html
    const at1A = (['B', 'C', 'D'] as const).map(
      (curve) => (loopLimit({ standard: 'BS-EN-60898', curve, ratingA: 1 })?.maximumOhm ?? 0) / 0.95,
    );
    expect(at1A.map((ohm) => Math.round(ohm * 1000) / 1000)).toEqual([46, 23, 11.5]);
  });

  it('takes the old types at 4, 7 and 10 times the rating (BS 3871, from memory)', () => {
    const old = (['1', '2', '3'] as const).map((curve) =>
      loopLimit({ standard: 'BS-3871', curve, ratingA: 30 }),
    );
    expect(old.map((limit) => [limit?.operatingA, limit?.grade])).toEqual([
      [120, 'memory'],
      [210, 'memory'],
      [300, 'memory'],
    ]);
  });
});

describe('BS 7671 Tables 41.2 and 41.3, fuses within 0.4 s', () => {
  const fuseOhm = (standard: Device['standard'], ratingA: number) =>
    loopLimit({ standard, ratingA })?.maximumOhm ?? Number.NaN;

  // Figures with 230 V, of 2008: https://pdfcoffee.com/bs-7671-tables-412-413-amp-414-pdf-free.html; BS 88-2 of
  // 2011: https://issuu.com/redactive/docs/nicjan12/60. Since 2015 they are 0.95 of that.
  it.each([
    ['BS-3036', 5, 9.58],
    ['BS-3036', 15, 2.55],
    ['BS-3036', 20, 1.77],
    ['BS-3036', 30, 1.09],
    ['BS-1361', 5, 10.45],
    ['BS-1361', 15, 3.28],
    ['BS-1361', 20, 1.7],
    ['BS-1361', 30, 1.15],
    ['BS-88-2', 6, 8.21],
    ['BS-88-2', 10, 4.89],
    ['BS-88-2', 16, 2.56],
    ['BS-88-2', 20, 1.77],
    ['BS-88-2', 25, 1.35],
    ['BS-88-2', 32, 1.04],
  ] as const)('%s of %d A: 0.95 of %d Ω', (standard, ratingA, ohmAt230V) => {
    // Half the last digit of the result.
    expect(Math.abs(fuseOhm(standard, ratingA) - 0.95 * ohmAt230V)).toBeLessThanOrEqual(0.0051);
  });

  it.each([
    [3, 16.4],
    [13, 2.42],
  ])('a plug fuse of %d A: 0.95 of %d Ω', (fuseA, ohmAt230V) => {
    // The larger is printed to 0.1 Ω.
    const halfDigitOhm = fuseA === 3 ? 0.051 : 0.0051;
    expect(Math.abs((plugFuseLimit(fuseA)?.maximumOhm ?? Number.NaN) - 0.95 * ohmAt230V)).toBeLessThanOrEqual(
      halfDigitOhm,
    );
  });

  it('agree with the current that operates the fuse, never above it by a printed digit', () => {
    // 90 A for BS 3036 15 A: https://zdroje.elektrika.cz/book/basic-electrical-installation-work/page/262
    const known = fuseLoopImpedance.rows.flatMap(({ operatingA, maximumOhm }) =>
      operatingA === null ? [] : [{ exactOhm: LEAST_FAULT_V / operatingA, maximumOhm }],
    );
    expect(known).toHaveLength(5);
    for (const { exactOhm, maximumOhm } of known) {
      expect(maximumOhm - exactOhm).toBeLessThanOrEqual(0.005);
      expect(exactOhm - maximumOhm).toBeLessThanOrEqual(0.01);
    }
  });

  it('BS 88-3 of 32 A leaves a reading of 0.72 Ω by the 80 % rule, rounded down', () => {
    // Source: https://issuu.com/redactive/docs/con_spring15_full_lr/61
    expect(Math.floor(0.8 * fuseOhm('BS-88-3', 32) * 100) / 100).toBe(0.72);
  });

  it('fall with the rating, each rating once', () => {
    const standards = [...new Set(fuseLoopImpedance.rows.map(({ standard }) => standard))];
    expect(standards).toEqual(['BS-3036', 'BS-1361', 'BS-88-3', 'BS-88-2', 'BS-1362']);
    for (const standard of standards) {
      const rows = fuseLoopImpedance.rows.filter((row) => row.standard === standard);
      expect(rises(rows.map(({ ratingA }) => ratingA))).toBe(true);
      expect(falls(rows.map(({ maximumOhm }) => maximumOhm))).toBe(true);
    }
  });
});

describe('limits of protection and supply', () => {
  it.each([
    // BS 7671 Table 41.5: https://electriciansforums.net/threads/some-advice-on-testing-if-you-will.52683/page-2
    [30, 1667],
    [100, 500],
    [300, 167],
    [500, 100],
  ])('an RCD of %d mA allows %d Ω', (residualMA, ohm) => {
    expect(Math.round(rcdLoopLimitOhm(residualMA))).toBe(ohm);
  });

  it('are 3 and 5 % of volt drop', () => {
    // Source: https://zdroje.elektrika.cz/book/basic-electrical-installation-work/page/313
    expect(voltDropLimits.rows.map(({ use, percent }) => [use, percent])).toEqual([
      ['lighting', 3],
      ['other', 5],
    ]);
  });

  it('disconnect faster on TT than on TN, and final circuits faster than others', () => {
    const time = (system: string, circuit: string) =>
      disconnectionTimes.rows.find((row) => row.system === system && row.circuit === circuit)?.timeS;
    expect([time('TT', 'final'), time('TN', 'final'), time('TT', 'other'), time('TN', 'other')]).toEqual([
      0.2, 0.4, 1, 5,
    ]);
  });

  it('let a class 2 device pass more than a class 3 one, and a C more than a B', () => {
    // Source: https://electriciansforums.net/threads/adiabatic-equation.20007/post-146036
    expect(letThroughClass.rows.map(({ letThroughA2s }) => letThroughA2s)).toEqual([
      70_000, 84_000, 240_000, 290_000,
    ]);
  });
});

describe('every table of the proof', () => {
  const mixed: Readonly<Record<string, Table>> = {
    breakerTrip,
    fuseLoopImpedance,
    imperialCable,
    voltDropFlatCable,
    table4D5,
    methodBFlatCable,
    disconnectionTimes,
    supplyImpedance,
  };

  it.each(Object.entries(mixed))(
    '%s names a page for what was seen, and none for what was not',
    (_, table) => {
      for (const { status, page } of table.rows) {
        if (status === 'derived') continue;
        expect(page !== undefined).toBe(status === 'seen');
      }
    },
  );

  it('says of tables from one source where they were checked', () => {
    for (const { source } of [conductorResistance, table4B1, voltDropLimits, letThroughClass])
      expect(source.checked).toMatch(/https?:\/\//);
  });
});
