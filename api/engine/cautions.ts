/** The usual cautions, on every output. */
export const cautions: readonly string[] = [
  'This is an aid to a competent person, who remains responsible: nothing here is a certificate, and nothing is called safe.',
  'Work dead: isolate, lock off, prove the tester, prove dead, prove the tester again. Prove the ring before adding to it.',
  'Cable routes are not what you see: look for pipes, cables and asbestos before cutting, drilling or lifting.',
  'Local rules and licensed practice come first; notify the work where the nation asks for it, and test and certify it.',
];

/** What is known of the edition behind the checks. */
export const editionNote =
  'BS 7671:2018+A4:2026 in force; figures from public sources of A2 and A3; what A4 changes here is not verified: check your own copy.';
