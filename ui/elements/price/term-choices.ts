/** How fast a job goes, as people choose it. */
export const labourLevels = [
  { value: 'low', label: 'Low: empty rooms, easy floors' },
  { value: 'typical', label: 'Typical: a furnished house' },
  { value: 'high', label: 'High: awkward, much in the way' },
] as const;

/** The rates of VAT of a firm that is registered. */
export const vatRates = [
  { value: 'standard', label: 'Standard rate, 20 %' },
  { value: 'reduced', label: 'Reduced rate, 5 %' },
  { value: 'zero', label: 'Zero rate' },
] as const;

/** What cables chased into masonry lie in, as people choose it. */
export const chasedChoices = [
  { value: 'oval', label: 'Oval tube: can be drawn again' },
  { value: 'capping', label: 'Capping: pinned over the cable' },
  { value: 'none', label: 'Nothing: clipped and plastered over' },
] as const;

/** What chases are filled with, as people choose it. */
export const fillingChoices = [
  { value: 'one-coat', label: 'One-coat plaster' },
  { value: 'bonding-and-finish', label: 'Bonding, then finish' },
] as const;

/** How VAT is charged on a job, as people choose it. */
export const vatChoices = [
  ...vatRates,
  { value: 'not-registered', label: 'Not registered: none charged' },
] as const;

/** What mark-up or margin are put on, as people choose it. */
export const profitOnChoices = [
  { value: 'materials', label: 'Materials' },
  { value: 'all', label: 'Materials, labour, travel and overhead' },
] as const;

/** How the work is charged, as people choose it. */
export const chargingChoices = [
  { value: 'fixed', label: 'A fixed price: a quotation' },
  { value: 'hourly', label: 'By the hour: an estimate' },
] as const;
