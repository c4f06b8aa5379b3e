import type { Terms } from '#model/job.ts';
import type { Table } from './table.ts';

/** The condition of a rate: one that a job can claim, or `usual`, which nobody has to. */
type Condition = NonNullable<Terms['vatCondition']> | 'usual';

/**
 * When work on a house is charged at which rate of value added tax, in our own words. `keep` is what to have in the
 * file should the tax office ask; `refused` why a condition that is still to be read of does not serve. In this order they are
 * offered.
 */
export const vatConditions = {
  source: {
    ref: 'Value Added Tax Act 1994, Schedules 7A and 8, as public pages tell them',
    where: 'each row names its page',
    checked:
      'pages read as stored copies, not live; the conditions are shortened: the notices of HM Revenue and Customs (708, and 701/7 on disability) have them whole',
  },
  rows: [
    {
      condition: 'usual',
      rate: 'standard',
      label: 'A house that is lived in',
      words: 'Most work on a house that is lived in, added outlets among it.',
      keep: null,
      refused: null,
      where: 'gov.uk/vat-builders',
      status: 'seen',
    },
    {
      condition: 'empty-two-years',
      rate: 'reduced',
      label: 'Not lived in for two years',
      words:
        'Nobody has lived in the house for the two years before the work starts. Materials count when they are supplied with the work.',
      keep: 'a letter of the council’s empty homes officer, or bills that show it stood empty',
      refused: null,
      where: 'HMRC manual VCONST07100; cronertaxwise.com on empty dwellings',
      status: 'seen',
    },
    {
      condition: 'empty-when-bought',
      rate: 'reduced',
      label: 'Empty for two years when it was bought',
      words:
        'A single dwelling that stood empty for the two years before its owner bought it, renovated for that owner to live in; further conditions hold, the time since the purchase among them.',
      keep: 'the date of the purchase, and the council’s letter',
      refused: null,
      where: 'cronertaxwise.com, reduced rate for empty dwellings: the second of two routes',
      status: 'seen',
    },
    {
      condition: 'number-of-dwellings',
      rate: 'reduced',
      label: 'The number of dwellings changes',
      words:
        'The work is part of a conversion that changes how many dwellings there are: a house made into flats, flats into a house.',
      keep: 'the planning permission and the drawings of the conversion',
      refused: null,
      where: 'charitytaxgroup.org.uk, residential conversions',
      status: 'seen',
    },
    {
      condition: 'multiple-occupancy',
      rate: 'reduced',
      label: 'Made into a house in multiple occupation or a home',
      words:
        'The work is part of a conversion to a house in multiple occupation, or to a residential home of some kind.',
      keep: 'the planning permission; for a home, its certificate of use',
      refused: null,
      where: 'charitytaxgroup.org.uk, residential conversions',
      status: 'seen',
    },
    {
      condition: 'mobility-aid',
      rate: 'reduced',
      label: 'A mobility aid for an elderly person',
      words:
        'A mobility aid is fitted in the home of an elderly person, and the wiring is supplied as part of fitting it.',
      keep: 'the customer’s signed declaration',
      refused: null,
      where:
        'phdassociates.co.uk lists it; that the wiring must be part of it, and what to keep, from memory',
      status: 'memory',
    },
    {
      condition: 'grant-funded',
      rate: 'reduced',
      label: 'Heating or security paid for by a grant',
      words:
        'Heating or security equipment is fitted in a home out of a grant for it, and the wiring is part of that supply; only the part that the grant pays.',
      keep: 'the letter of the grant',
      refused: null,
      where: 'phdassociates.co.uk lists it; that only the granted part counts, from memory',
      status: 'memory',
    },
    {
      condition: 'new-dwelling',
      rate: 'zero',
      label: 'A new dwelling that is being built',
      words:
        'The work is part of building a dwelling that was not there before; work in it once it is finished is not.',
      keep: 'the planning permission, and the date of completion',
      refused: null,
      where: 'gov.uk/vat-builders; phdassociates.co.uk',
      status: 'seen',
    },
    {
      condition: 'disability',
      rate: 'zero',
      label: 'Certain adaptations for a disabled person',
      words:
        'One of certain adaptations that a disabled person’s condition calls for in their own home; not all are, and an added outlet seldom is one.',
      keep: 'the customer’s signed declaration that they are eligible',
      refused: null,
      where: 'phdassociates.co.uk (“some disability adaptations”); what to keep from memory',
      status: 'memory',
    },
    {
      condition: 'listed-building',
      rate: 'zero',
      label: 'Approved alteration of a listed building',
      words: 'An alteration of a listed building for which consent was given.',
      keep: null,
      refused:
        'This zero rate ended in October 2012, though older lists still show it: such work is charged at 20 %.',
      where: 'cronertaxwise.com on the end of the zero rate in October 2012',
      status: 'seen',
    },
    {
      condition: 'energy-saving',
      rate: 'reduced',
      label: 'Energy-saving materials',
      words: 'Fitting energy-saving materials, such as insulation or heating controls.',
      keep: null,
      refused:
        'An outlet is no energy-saving material, whatever is plugged into it; and those are charged at nothing, not at 5 %, in Great Britain to 31 March 2027.',
      where:
        'phdassociates.co.uk still prints 5 %; that it is 0 % to 2027, and that outlets are none, from memory',
      status: 'memory',
    },
  ],
} as const satisfies Table & {
  readonly rows: readonly (Table['rows'][number] & { readonly condition: Condition })[];
};
