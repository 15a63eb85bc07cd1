import { describe, expect, it } from '@jest/globals';
import { type DigestAlert, digestMail } from './digest-words.js';
import { LEVEL_KINDS } from './reorder-level.js';

const low: DigestAlert = {
  id: 'below-reorder-point:c1',
  kind: 'below reorder point',
  subject: 'Adhesive',
  place: null,
  level: 'computed',
  figures: [
    { name: 'usable', value: '4', unit: 'mL' },
    { name: 'reorder at', value: '6', unit: 'mL' },
    { name: 'days covered', value: '11', unit: 'days' },
    { name: 'suggested packs', value: '2', unit: 'packs' },
  ],
};
const mail = (language: 'en' | 'de', fresh: readonly DigestAlert[] = [low]) =>
  digestMail({ practice: 'North', day: '2026-05-04', language, fresh, still: 0 });

describe('the digest', () => {
  it('says of a reorder point by whose word it holds, with the figures', () => {
    expect(mail('en').text).toContain(
      'Below the reorder point\n- Adhesive: usable 4 mL; reorder at 6 mL (computed from use); ' +
        'days covered 11; suggested packs 2\n',
    );
    expect(mail('de').text).toContain(
      'Unter dem Bestellpunkt\n- Adhesive: verwendbar 4 mL; ' +
        'Bestellpunkt 6 mL (aus dem Verbrauch berechnet); in Tagen 11; Vorschlag Packungen 2\n',
    );
  });

  it('has a word for each level in each language, and none where there is no level', () => {
    const brackets = (text: string) => /\(([^)]*)\)/.exec(text)?.[1];
    const words = LEVEL_KINDS.flatMap((level) =>
      (['en', 'de'] as const).map((language) => brackets(mail(language, [{ ...low, level }]).text)),
    );
    expect(new Set(words).size).toBe(6);
    const { level: _, ...without } = low;
    expect(brackets(mail('en', [without]).text)).toBeUndefined();
  });
});
