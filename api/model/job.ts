import { z } from 'zod';
import { site, storey } from './building.ts';
import { containment } from './cable.ts';
import { extra } from './extra.ts';
import { board, circuit, finish, leg, point, reading, supply } from './installation.ts';
import { certainty, id, idOf, idRef, isoDate, pence, percent, text } from './primitives.ts';
import { scheme } from './scheme.ts';
import { doneTask, testing } from './site-work.ts';

/** The version of the job file that this program writes. */
export const JOB_VERSION = 1;
/** The word by which a job file is known from any other. */
export const JOB_FORMAT = 'ringwright-job';

/** An answer to one question of the survey's checklist. */
export const answer = z
  .strictObject({
    question: text.min(1),
    value: z.union([z.string(), z.number(), z.boolean(), z.null()]),
    certainty,
  })
  .meta({ id: 'Answer' });
export type Answer = z.infer<typeof answer>;

/** Why a job is charged VAT at another rate than the standard one; the last two are claimed in vain. */
const vatCondition = z.enum([
  'empty-two-years',
  'empty-when-bought',
  'number-of-dwellings',
  'multiple-occupancy',
  'mobility-aid',
  'grant-funded',
  'new-dwelling',
  'disability',
  'listed-building',
  'energy-saving',
]);

/** On what terms the job is priced. */
export const terms = z
  .strictObject({
    labour: z.enum(['low', 'typical', 'high']),
    markupPercent: z.number().min(0).max(1000).optional(),
    marginPercent: z.number().min(0).lt(100).optional(),
    contingencyPercent: percent.optional(),
    vat: z.enum(['standard', 'reduced', 'zero', 'not-registered']),
    /** The condition that is claimed for a reduced or a zero rate; absent: none. */
    vatCondition: vatCondition.optional(),
    /** There and back, for each visit: every day of the work, and to come back for plaster. */
    travelMin: z.number().min(0).max(10_000).optional(),
    /** Hours of work in a day, by which days and their travel are reckoned; absent: as the firm's overhead is spread, else 8. */
    dayHours: z.number().min(1).max(24).optional(),
    minimumPence: pence.optional(),
    /** What days of parking are charged, at the firm's sum for one: every visit, or so many days. Absent: as the firm does, else none. */
    parking: z.union([z.literal('each-visit'), z.int().min(0).max(1000)]).optional(),
    /** What mark-up or margin are put on; absent: materials, or all where an hour's rate is what it costs the firm. */
    profitOn: z.enum(['materials', 'all']).optional(),
    /** For coming out at all, once; net. */
    callOutPence: pence.optional(),
    /** What is asked for before the work, of the sum with VAT; a percentage beats a sum given beside it. */
    depositPercent: percent.optional(),
    depositPence: pence.optional(),
    validDays: z.int().min(0).max(3650).optional(),
    /** Which of the norms' multipliers count here, by id; absent: none. */
    multipliers: z.array(text.min(1)).optional(),
    /** How plaster is given its time: waited for on the day, or come back for; absent: as it turns out. */
    drying: z.enum(['wait', 'second-visit']).optional(),
    /** Who moves the furniture in the rooms that are worked in; absent: nobody has said, and it is not priced. */
    furniture: z.enum(['customer', 'firm']).optional(),
    /** What cables chased into masonry lie in; absent: as the firm does, which is oval tube where it does not say. */
    chased: containment.extract(['oval', 'capping', 'none']).optional(),
    /** How new plates look where a point says nothing of its own; absent: as the firm does, white moulded where it does not say. */
    finish: finish.optional(),
    /** What chases and the holes round boxes are filled with; absent: as the firm does, one coat where it does not say. */
    filling: z.enum(['one-coat', 'bonding-and-finish']).optional(),
    /** Whether a price is held to, or the work is charged by the hours it takes; absent: by how much is proven. */
    charging: z.enum(['fixed', 'hourly']).optional(),
  })
  .meta({ id: 'Terms' });
export type Terms = z.infer<typeof terms>;

/** What is in the van already. `lengthsM`: of what is cut, the unbroken lengths that make it up; absent: one length. */
export const stock = z.strictObject({
  item: text.min(1),
  quantity: z.number().min(0).max(1e6),
  lengthsM: z.array(z.number().positive().max(1e6)).optional(),
});
export type Stock = z.infer<typeof stock>;

/** What the job took in the end, beside what was reckoned: minutes by stage or by task, and what was used of an item. */
export const actuals = z
  .strictObject({
    /** Minutes of a whole stage of the work. */
    stages: z.array(
      z.strictObject({
        stage: z.enum(['before', 'first-fix', 'second-fix', 'test', 'after']),
        minutes: z.number().min(0).max(1e6),
      }),
    ),
    /** Minutes of a task, where somebody took its time. */
    tasks: z.array(z.strictObject({ task: text.min(1), minutes: z.number().min(0).max(1e6) })),
    /** In the unit of the item: metres of cable. */
    used: z.array(z.strictObject({ item: text.min(1), quantity: z.number().min(0).max(1e6) })),
    /**
     * What was taken in the place of what was not in stock, by the name that the shopping list gives that (`counter/socket-twin`).
     * `item`: where it is on the price list. `pence`: what was paid for all of it, value added tax as the price list has it;
     * absent: nobody wrote it down.
     */
    instead: z
      .array(
        z.strictObject({
          entry: text.min(1),
          took: text.min(1),
          item: text.min(1).optional(),
          pence: z.int().min(0).max(1e9).optional(),
        }),
      )
      .optional(),
  })
  .meta({ id: 'Actuals' });
export type Actuals = z.infer<typeof actuals>;

/** The work as it was carried out: papers of this scheme are as built from then on. */
export const built = z
  .strictObject({
    scheme: idRef('scheme'),
    /** The day on which it was finished. */
    on: isoDate,
    /** What was done otherwise than planned, or is to be known of it, in the words of whoever did it; absent: nothing is said. */
    words: text.optional(),
  })
  .meta({ id: 'Built' });
export type Built = z.infer<typeof built>;

/** What the customer's paper offers, and the facts of the agreement that it turns on. */
export const quoting = z
  .strictObject({
    /** What is offered, in this order, three at most; absent: the cheapest that does not fail. */
    schemes: z.array(idRef('scheme')).max(3).optional(),
    customer: z.enum(['consumer', 'business']).optional(),
    /** Where the agreement is made; the law gives a right to cancel by it. */
    agreedAt: z.enum(['customers-home', 'at-a-distance', 'firms-premises']).optional(),
    /** When work can begin, in words. */
    start: text.optional(),
    /** Whatever else is to be said to the customer. */
    remarks: text.optional(),
  })
  .meta({ id: 'Quoting' });
export type Quoting = z.infer<typeof quoting>;

/**
 * What of an open question is to be bought for, by the names that the engine gives both (`box/r1`: `deep`, `shallow`). A
 * question or an outcome that the job no longer raises counts for nothing.
 */
export const packFor = z
  .strictObject({ question: text.min(1), outcomes: z.array(text.min(1)).min(1) })
  .meta({ id: 'PackFor' });
export type PackFor = z.infer<typeof packFor>;

/** A photo or an underlay, kept outside this file and named by the hash of its bytes. */
export const asset = z
  .strictObject({
    id: idOf('asset'),
    name: text,
    mediaType: text,
    bytes: z.int().min(0),
    /** What it shows, in the words of whoever took it; absent: nobody has said. */
    caption: text.optional(),
  })
  .meta({ id: 'Asset' });
export type Asset = z.infer<typeof asset>;

/** The whole job file, version 1. Lengths mm, areas mm², A, V, Ω, whole pence, percentages 0 to 100. */
export const job = z.strictObject({
  format: z.literal(JOB_FORMAT),
  version: z.literal(JOB_VERSION),
  id,
  reference: text,
  title: text,
  /** The edition of the wiring rules that the job is designed to, as printed on its outputs. */
  edition: text,
  site,
  storeys: z.array(storey),
  supply,
  boards: z.array(board),
  circuits: z.array(circuit),
  points: z.array(point),
  legs: z.array(leg),
  readings: z.array(reading),
  answers: z.array(answer),
  schemes: z.array(scheme),
  terms,
  stock: z.array(stock),
  /** Work that is not on the drawing, priced with every scheme; absent: none. */
  extras: z.array(extra).optional(),
  /** Absent: nothing is settled yet. */
  quoting: quoting.optional(),
  /** Outcomes that are bought for beside those that the scheme is counted by; absent: none. */
  packFor: z.array(packFor).optional(),
  /** Absent: nothing is recorded yet. */
  actuals: actuals.optional(),
  /** Absent: the work is not done yet. */
  built: built.optional(),
  /** Absent: nothing is ticked. */
  done: z.array(doneTask).optional(),
  /** Absent: nobody said with what it was tested. */
  testing: testing.optional(),
  assets: z.array(asset),
});
export type Job = z.infer<typeof job>;
