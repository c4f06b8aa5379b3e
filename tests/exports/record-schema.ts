import { z } from 'zod';

const band = z.strictObject({ fromOhm: z.number(), toOhm: z.number(), bandOhm: z.number() });
const limit = z.discriminatedUnion('bound', [
  z.strictObject({ bound: z.literal(['most', 'least']), value: z.number(), words: z.string() }),
  z.strictObject({ bound: z.literal('right'), words: z.string() }),
]);
const certainty = z.enum(['seen', 'measured', 'assumed', 'unknown']);

const field = z
  .strictObject({
    id: z.string().min(1),
    label: z.string().min(1),
    value: z.string().min(1).nullable(),
    figure: z.number().nullable(),
    unit: z.enum(['Ω', 'MΩ', 'ms', 's', 'A', 'mA', 'kA', 'V', 'mm²']).nullable(),
    from: z.enum(['survey', 'scheme', 'table', 'measured', 'expected', 'person']),
    certainty,
    expected: band.nullable(),
    limit: limit.nullable(),
    keepsLimit: z.boolean().nullable(),
    note: z.string().min(1).nullable(),
  })
  .refine(({ value, from }) => (value === null) === (from === 'expected' || from === 'person'));

const lines = z.array(z.strictObject({ label: z.string().min(1), value: z.string() }));

const circuit = z.strictObject({
  circuitId: z.string(),
  name: z.string(),
  isNew: z.boolean(),
  described: z.array(z.string()),
  particulars: z.array(field),
  cables: z.array(
    z.strictObject({
      state: z.enum(['new', 'found']),
      marks: z.array(z.string()).min(1),
      type: z.string().nullable(),
      liveMm2: z.number().nullable(),
      cpcMm2: z.number().nullable(),
      methods: z.array(z.string()),
      isMethodOpen: z.boolean(),
      certainty,
    }),
  ),
  tests: z.array(field),
  means: z.array(field),
});

/** What other programs may count on in `record.json`: no key more, none less. */
export const recordSchema = z.strictObject({
  engine: z.string(),
  reference: z.string(),
  title: z.string(),
  scheme: z.string(),
  date: z.iso.date(),
  state: z.string().regex(/^[0-9A-Z]{4}-[0-9A-Z]{4}$/),
  edition: z.string(),
  editionNote: z.string(),
  firm: z.strictObject({ name: z.string(), address: z.array(z.string()) }),
  certificate: z.strictObject({
    kind: z.enum(['minor-works', 'installation', 'none']),
    title: z.string(),
    words: z.array(z.string()).min(1),
  }),
  noCertificate: z.string(),
  toSettle: z.array(z.string()),
  lastReadOn: z.iso.date().nullable(),
  work: z.array(field).min(1),
  supply: z.array(field).min(1),
  circuits: z.array(circuit),
  comments: z.array(
    z.strictObject({
      rule: z.string(),
      title: z.string(),
      outcome: z.enum(['fails', 'decide', 'advice', 'not-proven']),
      words: z.string().min(1),
      remedy: z.string().nullable(),
      source: z.string(),
    }),
  ),
  buildingControl: z.strictObject({
    state: z.enum(['due', 'ask', 'none', 'not-told']),
    nation: z.enum(['england', 'wales', 'scotland', 'northern-ireland']),
    reason: z.string().min(1),
    ways: z.array(z.string()),
    firmsWay: z.string().nullable(),
    source: z.string(),
  }),
  declaration: z.strictObject({ intro: z.array(z.string()), lines }),
  cautions: z.array(z.string()).min(1),
  demoNote: z.string().nullable(),
});
