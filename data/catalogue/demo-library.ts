import type { Library, Price } from '#model/library.ts';
import firmFile from './demo-firm.json' with { type: 'json' };
import normsFile from './demo-norms.json' with { type: 'json' };
import pricesFile from './demo-prices.json' with { type: 'json' };

const listUnits = ['each', 'm', 'kg', 'set'] as const;
const charges = ['packs', 'used'] as const;
const packKinds = ['each', 'pack', 'length', 'cut', 'coil', 'drum'] as const;
const origins = ['demo'] as const;
const normUnits = ['job', 'each', 'm', 'circuit', 'room'] as const;
const vatWords = ['excluded', 'included'] as const;
const levels = ['low', 'typical', 'high'] as const;
const vatTerms = ['standard', 'reduced', 'zero', 'not-registered'] as const;

/** The closed word that a JSON text holds. */
function wordOf<W extends string>(words: readonly W[], text: string): W {
  const word = words.find((candidate) => candidate === text);
  if (word === undefined) throw new Error(`The demo library says "${text}" where one of ${words} belongs.`);
  return word;
}

/** The keys of the list's rows; only what is sold in several ways has `kind` and `packs`. */
interface Row {
  readonly item: string;
  readonly origin: string;
  readonly unit: string;
  readonly pricePence: number;
  readonly perQuantity: number;
  readonly packQuantity?: number;
  readonly charge: string;
  readonly counter: string;
  readonly kind?: string;
  readonly packs?: readonly {
    readonly kind: string;
    readonly quantity: number;
    readonly pricePence: number;
    readonly origin: string;
  }[];
}

function priceOf({ kind, packs, ...row }: Row): Price {
  return {
    ...row,
    unit: wordOf(listUnits, row.unit),
    charge: wordOf(charges, row.charge),
    origin: wordOf(origins, row.origin),
    ...(kind === undefined ? {} : { kind: wordOf(packKinds, kind) }),
    ...(packs === undefined
      ? {}
      : {
          packs: packs.map((pack) => ({
            ...pack,
            kind: wordOf(packKinds, pack.kind),
            origin: wordOf(origins, pack.origin),
          })),
        }),
  };
}

/**
 * The library that the demo jobs are priced with: an invented firm with an invented price list and labour
 * norms from memory. Made anew at every call, so that nobody changes another's.
 */
export function demoLibrary(): Library {
  const { firm, limits, terms } = firmFile;
  return {
    firm: { ...firm, address: [...firm.address] },
    prices: {
      ...pricesFile,
      vat: wordOf(vatWords, pricesFile.vat),
      items: pricesFile.items.map(priceOf),
    },
    norms: {
      ...normsFile,
      rateOrigin: wordOf(origins, normsFile.rateOrigin),
      tasks: normsFile.tasks.map((row) => ({
        ...row,
        unit: wordOf(normUnits, row.unit),
        origin: wordOf(origins, row.origin),
      })),
      sums: normsFile.sums.map((row) => ({ ...row, origin: wordOf(origins, row.origin) })),
      waste: { ...normsFile.waste },
    },
    limits: { ...limits },
    terms: { ...terms, labour: wordOf(levels, terms.labour), vat: wordOf(vatTerms, terms.vat) },
  };
}
