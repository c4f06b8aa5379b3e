import { describe, expect, it } from 'vitest';
import { allRules } from '#engine/all-rules.ts';

/** Words that make a sentence of a title, which then would say how the check comes out before it has. */
const claims =
  /\b(?:is|are|has|have|can|may|does|do|stays?|stands?|keeps?|takes?|carries|fits?|feeds?|lies|runs in|ends with|starts|bears?|breaks|reaches|suits?|leaves?|consents|must|enough|within|no|not|only|every \w+ is|right|sound|correct)\b/i;

describe('the titles of checks', () => {
  it('are names of what is looked at: they say nothing of how it comes out', () => {
    const claiming = allRules
      .filter(({ title }) => claims.test(title))
      .map(({ id, title }) => `${id} ${title}`);
    expect(claiming).toEqual([]);
  });

  it('are told apart, and short enough for a line', () => {
    const titles = allRules.map(({ title }) => title);
    expect(new Set(titles).size).toBe(titles.length);
    expect(titles.filter((title) => title.length > 50 || /[.:]$/.test(title))).toEqual([]);
  });
});
