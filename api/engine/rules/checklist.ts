/** One question of the survey's checklist, with the answers that the rules know. */
export interface Question {
  readonly id: string;
  readonly words: string;
  /** When it can be answered: at a quoting visit (nothing opened), or with the board and plates open. */
  readonly stage: 'quoting' | 'opened';
  /** The values of `answers[].value`; empty for a number. */
  readonly answers: readonly { readonly value: string | boolean; readonly words: string }[];
  /** Unit of a number; null for a choice. */
  readonly unit: 'A' | null;
}

/** What no drawing or reading tells and a rule, a paper or whoever does the work asks, in the order of a walk from the intake inwards. */
export const checklist = [
  {
    id: 'means-of-earthing',
    words: 'Is there a means of earthing at the intake?',
    stage: 'quoting',
    answers: [
      { value: 'present', words: 'Seen and connected' },
      { value: 'absent', words: 'None, or disconnected' },
    ],
    unit: null,
  },
  {
    id: 'board-condition',
    words: 'What state are the board and the intake in?',
    stage: 'quoting',
    answers: [
      { value: 'sound', words: 'Sound' },
      { value: 'worn', words: 'Old or worn, not dangerous' },
      { value: 'unsafe', words: 'Scorched, broken, open or live parts to be reached' },
    ],
    unit: null,
  },
  {
    id: 'isolation',
    words: 'How can the board be isolated for work on it?',
    stage: 'quoting',
    answers: [
      { value: 'main-switch', words: 'By its main switch, which can be locked' },
      { value: 'isolator', words: 'By an isolator before it' },
      { value: 'distributor', words: 'Only by the distributor’s fuse' },
    ],
    unit: null,
  },
  {
    id: 'maximum-demand',
    words: 'What is the assessed maximum demand of the house?',
    stage: 'opened',
    answers: [],
    unit: 'A',
  },
  {
    id: 'arc-fault-protection',
    words: 'Will the socket circuits have arc fault detection?',
    stage: 'opened',
    answers: [
      { value: 'fitted', words: 'Yes: there, or in this work' },
      { value: 'not-fitted', words: 'No' },
    ],
    unit: null,
  },
  {
    id: 'surge-protection',
    words: 'Is there surge protection, and does the customer want it?',
    stage: 'opened',
    answers: [
      { value: 'fitted', words: 'Fitted' },
      { value: 'declined', words: 'None, and the customer declines it' },
      { value: 'wanted', words: 'None, and the customer wants it' },
    ],
    unit: null,
  },
  {
    id: 'asbestos',
    words: 'Is asbestos suspected where the work is?',
    stage: 'quoting',
    answers: [
      { value: 'surveyed-clear', words: 'A survey found none there' },
      { value: 'none-suspected', words: 'Nothing suspicious seen' },
      { value: 'suspected', words: 'Suspected' },
    ],
    unit: null,
  },
  {
    id: 'hidden-services',
    words: 'Were pipes and cables traced where walls and floors are cut?',
    stage: 'opened',
    answers: [
      { value: 'traced', words: 'Traced' },
      { value: 'not-traced', words: 'Not traced' },
    ],
    unit: null,
  },
  {
    id: 'borrowed-neutral',
    words: 'Does any circuit borrow the neutral of another?',
    stage: 'opened',
    answers: [
      { value: false, words: 'None found' },
      { value: true, words: 'Found' },
    ],
    unit: null,
  },
  {
    id: 'decorated-recently',
    words: 'Were the rooms decorated recently?',
    stage: 'quoting',
    answers: [
      { value: true, words: 'Yes' },
      { value: false, words: 'No' },
    ],
    unit: null,
  },
  {
    id: 'parking-at-the-house',
    words: 'Can the van be parked at the house, at no charge?',
    stage: 'quoting',
    answers: [
      { value: true, words: 'Yes' },
      { value: false, words: 'No, or at a charge' },
    ],
    unit: null,
  },
  {
    id: 'consent',
    words: 'Has the owner of the building consented?',
    stage: 'quoting',
    answers: [
      { value: 'given', words: 'Consent given' },
      { value: 'not-given', words: 'Not given yet' },
    ],
    unit: null,
  },
] as const satisfies readonly Question[];

/** The id of a question of the checklist. */
export type QuestionId = (typeof checklist)[number]['id'];
