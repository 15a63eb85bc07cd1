import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { ISO_TEETH, type IsoTooth } from '#lib/dentition';
import { formatQuantity, quantity, ZERO_QUANTITY } from '#lib/measure';
import type { TemplateLine, TemplateVersion } from '#lib/procedures';
import { type PlanningContext, planBooked, type RecordedRestoration } from './booked-plan.js';
import type { BookedRestoration } from './booked-visit.js';

const line = (changes: Partial<TemplateLine>): TemplateLine => ({
  ...{ lineNumber: 1, consumableId: 'strip', driver: 'proximal surface', placed: ZERO_QUANTITY },
  ...{ dispensed: quantity('1'), everyAttempt: false, reasons: null },
  ...{ sharesDose: false, anaesthetic: false },
  ...changes,
});
const template: TemplateVersion = {
  ...{ templateId: 't', version: 1, name: 'Filling', minutes: 40, assistantMinutes: 40 },
  ...{ layerThicknessMm: quantity('2'), active: true },
  lines: [
    line({ consumableId: 'bib', driver: 'visit' }),
    line({ lineNumber: 2 }),
    line({ lineNumber: 3, consumableId: null, driver: 'restoration', dispensed: quantity('0.06') }),
    line({ lineNumber: 4, consumableId: 'dye', driver: 'tooth', reasons: ['decay'] }),
    line({ lineNumber: 5, consumableId: 'dose', driver: 'layer', dispensed: quantity('0.1') }),
  ],
};
const context = (recorded: readonly RecordedRestoration[] = []): PlanningContext => ({
  templateOf: (id) => (id === 't' ? template : undefined),
  recordedOf: () => recorded,
  isWhole: (id) => ['bib', 'strip'].includes(id),
  doseOf: (id) => (id === 'dose' ? quantity('0.25') : null),
});
const booked = (changes: Partial<BookedRestoration> = {}): BookedRestoration => ({
  ...{ templateId: 't', tooth: null, surfaces: null, cavityClass: null, size: null },
  ...{ reason: null, shades: [] },
  ...changes,
});
const recorded = (changes: Partial<RecordedRestoration> = {}): RecordedRestoration => ({
  ...{ tooth: 21 as IsoTooth, surfaces: 'M', cavityClass: 'III', reason: 'decay' },
  ...{ shades: ['body'], cycles: 1, volumeMm3: quantity('10'), depthMm: quantity('2') },
  ...changes,
});
const tooth = (digits: number) => digits as IsoTooth;

function needs(list: readonly BookedRestoration[], of = context()): Record<string, string> {
  const { needs: found } = planBooked(list, of);
  return Object.fromEntries([...found].map(([id, { mean }]) => [id, formatQuantity(mean)]));
}

describe('what a booked visit will use', () => {
  it('is the plan of its templates when everything was said', () => {
    const said = booked({ tooth: tooth(21), surfaces: 'MD', reason: 'decay', shades: ['enamel'] });
    // Two sides; class III, medium: 2 mm deep, one layer; a dose is taken whole.
    expect(needs([said])).toEqual({ bib: '1', strip: '2', enamel: '0.06', dye: '1', dose: '0.25' });
    expect(planBooked([said], context())).toMatchObject({
      ...{ ways: 1, shadeUnknown: false, minutes: 40 },
    });
    expect(needs([said, { ...said, tooth: tooth(11) }])).toMatchObject({ bib: '1', strip: '4' });
    expect(needs([{ ...said, reason: 'cosmetic' }]).dye).toBeUndefined();
  });

  it('is like what was recorded lately where nobody said it, each way as likely', () => {
    const lately = [
      recorded(),
      recorded({ surfaces: 'MD', shades: ['enamel'], reason: 'cosmetic' }),
    ];
    const plan = planBooked([booked()], context(lately));
    expect(plan).toMatchObject({ ways: 2, shadeUnknown: false });
    expect(needs([booked()], context(lately))).toMatchObject({
      ...{ bib: '1', strip: '1.5', body: '0.03', enamel: '0.03', dye: '0.5' },
    });
    expect(plan.needs.get('strip')).toMatchObject({ meanSquare: 2.5, share: 1 });
    expect(plan.needs.get('body')).toMatchObject({ share: 0.5 });
  });

  it('keeps what was said, and takes only the rest from what was recorded', () => {
    const lately = [recorded({ surfaces: 'MD' }), recorded({ surfaces: 'MD' })];
    const said = booked({ tooth: tooth(11), surfaces: 'M' });
    expect(needs([said], context(lately))).toMatchObject({ strip: '1', body: '0.06' });
    // A back tooth has none of the front's surfaces and class.
    const back = booked({ tooth: tooth(36), shades: ['body'], reason: 'wear' });
    const incisal = [recorded({ surfaces: 'I', cavityClass: 'VI' })];
    expect(needs([back], context(incisal))).toMatchObject({ strip: '1', body: '0.06' });
  });

  it('leaves the paste out when nobody can tell the shade', () => {
    const plan = planBooked([booked()], context());
    expect(plan).toMatchObject({ ways: 1, shadeUnknown: true });
    expect([...plan.needs.keys()].sort()).toEqual(['bib', 'dose', 'dye', 'strip']);
  });

  it('can be planned for every tooth, whatever was recorded with the template', () => {
    const anyTooth = fc.constantFrom(...ISO_TEETH);
    const surfaces = fc.constantFrom('M', 'D', 'MD', 'F', 'L', 'MDF');
    const some = fc.record({ tooth: anyTooth, surfaces });
    fc.assert(
      fc.property(fc.option(anyTooth), fc.array(some, { maxLength: 4 }), (where, lately) => {
        const of = context(lately.map((each) => recorded({ ...each, cavityClass: null })));
        const plan = planBooked([booked({ tooth: where })], of);
        expect(plan.needs.get('bib')?.mean).toBe(quantity('1'));
        for (const { mean, meanSquare, share } of plan.needs.values()) {
          expect(mean > 0n && share > 0 && share <= 1).toBe(true);
          // The mean of squares is never below the square of the mean.
          expect(meanSquare + 1e-9).toBeGreaterThanOrEqual((Number(mean) / 1_000_000) ** 2);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('refuses a template that is not there', () => {
    expect(() => planBooked([booked({ templateId: 'gone' })], context())).toThrow('templateId');
  });
});
