import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  noteRefusal,
  type QuotationHistory,
  revisionRefusal,
  standingOf,
  variationRefusal,
} from '#engine/quotation/standing.ts';
import type { QuotationEvent, QuotationNote, StoreNote } from '#model/quotation-notes.ts';

const offers = [
  { schemeId: 's1', grossPence: 80_000 },
  { schemeId: 's2', grossPence: 95_000 },
];
const variations = [
  { id: 'v1', beforePence: 80_000, afterPence: 83_000 },
  { id: 'v2', beforePence: 83_000, afterPence: 82_500 },
];

type Note = QuotationNote | StoreNote;
const historyOf = (notes: readonly Note[]): QuotationHistory => {
  const offered = notes.flatMap((note) => (note.kind === 'variation-offered' ? [note.variationId] : []));
  return {
    offers,
    events: [{ kind: 'issued' } as const, ...notes].map(
      (note, index): QuotationEvent => ({
        seq: index + 1,
        at: '',
        note,
      }),
    ),
    variations: variations.filter(({ id }) => offered.includes(id)),
  };
};

const accepted: Note = { kind: 'accepted', schemeId: 's1', by: 'A', how: 'signed', on: '2026-03-01' };
const on = '2026-03-02';
const declined: Note = { kind: 'declined', on };
const offered = (variationId: string): Note => ({ kind: 'variation-offered', variationId });
const agreed = (variationId: string): Note => ({
  kind: 'variation-agreed',
  variationId,
  by: 'A',
  how: 'in-person',
  on,
});
const refused = (variationId: string): Note => ({
  kind: 'variation-refused',
  variationId,
  by: 'A',
  how: 'in-person',
  on,
});
const back = (of: number): Note => ({ kind: 'taken-back', of });

describe('how a quotation stands', () => {
  it.each<[string, readonly Note[], string, number | null]>([
    ['once issued', [], 'issued', null],
    ['once accepted', [accepted], 'accepted', 80_000],
    ['once declined', [declined], 'declined', null],
    ['declined, then accepted after all', [declined, accepted], 'accepted', 80_000],
    ['with a variation that nobody has answered', [accepted, offered('v1')], 'accepted', 80_000],
    ['with one agreed', [accepted, offered('v1'), agreed('v1')], 'accepted', 83_000],
    ['with one refused', [accepted, offered('v1'), refused('v1')], 'accepted', 80_000],
    [
      'with two agreed',
      [accepted, offered('v1'), agreed('v1'), offered('v2'), agreed('v2')],
      'accepted',
      82_500,
    ],
    ['with an acceptance taken back', [accepted, back(2)], 'issued', null],
    ['with an agreement taken back', [accepted, offered('v1'), agreed('v1'), back(4)], 'accepted', 80_000],
    ['once replaced', [{ kind: 'replaced', byId: 'q2' }], 'replaced', null],
  ])('%s', (_, notes, status, contractPence) => {
    const standing = standingOf(historyOf(notes));
    expect([standing.status, standing.contractPence]).toEqual([status, contractPence]);
  });

  it('rests on the last agreed variation', () => {
    expect(standingOf(historyOf([accepted])).restsOn).toBeNull();
    expect(standingOf(historyOf([accepted, offered('v1'), agreed('v1'), offered('v2')])).restsOn).toBe('v1');
  });

  it.each<[string, readonly Note[], number | null]>([
    ['an acceptance', [accepted], 2],
    ['nothing of what is only issued', [], null],
    ['no acceptance with a variation about', [accepted, offered('v1')], null],
    [
      'an acceptance whose variation was withdrawn: that comes first',
      [accepted, offered('v1'), { kind: 'variation-withdrawn', variationId: 'v1', on }],
      4,
    ],
    ['an agreement', [accepted, offered('v1'), agreed('v1')], 4],
    [
      'no agreement that another variation was priced upon',
      [accepted, offered('v1'), agreed('v1'), offered('v2')],
      null,
    ],
    ['nothing once replaced', [declined, { kind: 'replaced', byId: 'q2' }], null],
  ])('lets take back %s', (_, notes, seq) => {
    expect(standingOf(historyOf(notes)).mayTakeBack).toBe(seq);
  });
});

describe('what may be noted', () => {
  const refusal = (notes: readonly Note[], note: QuotationNote): boolean => {
    const history = historyOf(notes);
    return noteRefusal(standingOf(history), note, history.offers) !== null;
  };
  const yes = accepted as QuotationNote;

  it('is a yes to a scheme that it offers, while it is open or declined', () => {
    expect(refusal([], yes)).toBe(false);
    expect(refusal([declined], yes)).toBe(false);
    expect(refusal([accepted], yes)).toBe(true);
    expect(refusal([{ kind: 'replaced', byId: 'q2' }], yes)).toBe(true);
    expect(refusal([{ kind: 'withdrawn', on }], yes)).toBe(true);
    expect(refusal([], { ...yes, schemeId: 's9' } as QuotationNote)).toBe(true);
  });

  it('is a no while it is open', () => {
    expect(refusal([], declined as QuotationNote)).toBe(false);
    expect(refusal([accepted], { kind: 'withdrawn', on })).toBe(true);
  });

  it('is an answer to a variation that is open', () => {
    expect(refusal([accepted, offered('v1')], agreed('v1') as QuotationNote)).toBe(false);
    expect(refusal([accepted, offered('v1'), agreed('v1')], refused('v1') as QuotationNote)).toBe(true);
    expect(refusal([accepted, offered('v1')], agreed('v2') as QuotationNote)).toBe(true);
  });

  it('is a taking back of the last alone', () => {
    expect(refusal([accepted], { kind: 'taken-back', of: 2 })).toBe(false);
    expect(refusal([accepted], { kind: 'taken-back', of: 1 })).toBe(true);
    expect(refusal([accepted, back(2)], { kind: 'taken-back', of: 2 })).toBe(true);
  });

  it('is a variation of accepted work, one at a time; a revision of what is not accepted', () => {
    const of = (notes: readonly Note[]) => standingOf(historyOf(notes));
    expect([variationRefusal(of([])) === null, revisionRefusal(of([])) === null]).toEqual([false, true]);
    expect([variationRefusal(of([accepted])) === null, revisionRefusal(of([accepted])) === null]).toEqual([
      true,
      false,
    ]);
    expect(variationRefusal(of([accepted, offered('v1')]))).not.toBeNull();
    expect(variationRefusal(of([accepted, offered('v1'), refused('v1')]))).toBeNull();
  });

  it('never leads, however it goes on, to a contract that is not the offer and its agreed variations', () => {
    const anyNote = fc.constantFrom<QuotationNote>(
      yes,
      { ...yes, schemeId: 's2' } as QuotationNote,
      declined as QuotationNote,
      { kind: 'withdrawn', on },
      ...(['v1', 'v2'].flatMap((id) => [
        agreed(id),
        refused(id),
        { kind: 'variation-withdrawn', variationId: id, on },
      ]) as QuotationNote[]),
      ...[2, 3, 4, 5, 6].map((of): QuotationNote => ({ kind: 'taken-back', of })),
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(anyNote, fc.constantFrom('v1', 'v2')), { maxLength: 14 }), (tries) => {
        let notes: readonly Note[] = [];
        for (const attempt of tries) {
          const history = historyOf(notes);
          const standing = standingOf(history);
          const isOffer = typeof attempt === 'string';
          const isNew = isOffer && !history.variations.some(({ id }) => id === attempt);
          if (
            isOffer
              ? isNew && variationRefusal(standing) === null
              : noteRefusal(standing, attempt, offers) === null
          )
            notes = [...notes, isOffer ? offered(attempt) : attempt];
        }
        const { status, acceptance, variations: stand, contractPence } = standingOf(historyOf(notes));
        expect(stand.filter((one) => one.status === 'offered').length).toBeLessThanOrEqual(1);
        expect(status === 'accepted').toBe(contractPence !== null);
        // Nothing is agreed on site of what was never accepted.
        if (stand.some((one) => one.status === 'agreed')) expect(status).toBe('accepted');
        const offerPence = offers.find(({ schemeId }) => schemeId === acceptance?.schemeId)?.grossPence ?? 0;
        const added = stand
          .filter((one) => one.status === 'agreed')
          .map(({ id }) => variations.find((one) => one.id === id))
          .reduce((sum, one) => sum + (one === undefined ? 0 : one.afterPence - one.beforePence), 0);
        if (status === 'accepted') expect(contractPence).toBe(offerPence + added);
      }),
    );
  });
});
