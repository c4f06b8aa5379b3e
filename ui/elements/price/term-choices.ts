/** How fast a job goes, as people choose it. */
export const labourLevels = [
  { value: 'low', label: 'Low: empty rooms, easy floors' },
  { value: 'typical', label: 'Typical: a furnished house' },
  { value: 'high', label: 'High: awkward, much in the way' },
] as const;

/** How VAT is charged, as people choose it. */
export const vatChoices = [
  { value: 'standard', label: 'Standard rate, 20 %' },
  { value: 'reduced', label: 'Reduced rate, 5 %' },
  { value: 'zero', label: 'Zero rate' },
  { value: 'not-registered', label: 'Not registered: none charged' },
] as const;
