import { describe, expect, it } from '@jest/globals';
import { type IsoTooth, parseIsoTooth } from '#lib/dentition';
import { isSame, stepOf, stepped } from './amounts.js';
import {
  withAmount,
  withChange,
  withCopy,
  withoutRestoration,
  withRestoration,
  withScanned,
} from './change-draft.js';
import { checkDraft } from './check-draft.js';
import { newDraft, newRestoration, type RestorationDraft } from './draft.js';
import { fittingClasses } from './fitting-class.js';
import { neighbour, opposite } from './next-tooth.js';
import { ownLine, planOf, postOf, serviceLine } from './request.js';
import { placeProblem, staleLines } from './trouble.js';

const TODAY = '2026-05-04';

function tooth(digits: number): IsoTooth {
  const found = parseIsoTooth(digits);
  if (found === undefined) throw new Error(`${digits} is not a tooth`);
  return found;
}

function restoration(key: string, digits: number, more: Partial<RestorationDraft> = {}) {
  return { ...newRestoration(key, tooth(digits)), ...more };
}

const SAID = { surfaces: ['M'], reason: 'decay', templateId: 't1', shades: ['s1'] } as const;
const empty = newDraft('v1', { dentistId: 'd1', locationId: 'l1' }, 'C-1');
const two = [restoration('a', 11, SAID), restoration('b', 21, SAID)].reduce(withRestoration, empty);
const never = () => false;

describe('the class of a restoration', () => {
  const classAfter = (digits: number, surfaces: RestorationDraft['surfaces']) =>
    withChange(withRestoration(empty, restoration('a', digits)), 'a', { surfaces }).restorations[0]
      ?.cavityClass;

  it('follows the faces where they leave no doubt', () => {
    expect(classAfter(11, ['M'])).toBe('III');
    expect(classAfter(11, ['M', 'I'])).toBe('IV');
    expect(classAfter(26, ['M', 'O', 'D'])).toBe('II');
    expect(classAfter(26, ['O'])).toBe('I');
    expect(classAfter(11, ['F'])).toBe('V');
    expect(classAfter(11, ['I'])).toBeNull();
  });

  it('stays as chosen while it fits', () => {
    const chosen = withChange(two, 'a', {
      surfaces: ['M', 'F'],
      cavityClass: 'V',
      classChosen: true,
    });
    expect(chosen.restorations[0]?.cavityClass).toBe('V');
    const changed = withChange(chosen, 'a', { surfaces: ['M'] });
    expect(changed.restorations[0]?.cavityClass).toBe('III');
  });

  it('is one of those that fit', () => {
    expect(fittingClasses(tooth(11), ['M', 'F'])).toEqual(['III', 'V']);
    expect(fittingClasses(tooth(11), [])).toEqual([]);
  });
});

describe('the next tooth', () => {
  it('is the neighbour towards the left, over the midline, and none at the end', () => {
    expect(neighbour(tooth(11), 1)).toBe(21);
    expect(neighbour(tooth(31), -1)).toBe(41);
    expect(neighbour(tooth(28), 1)).toBeUndefined();
    expect(neighbour(tooth(18), -1)).toBeUndefined();
    expect(neighbour(tooth(65), 1)).toBeUndefined();
    expect(opposite(tooth(21))).toBe(31);
    expect(opposite(tooth(85))).toBe(55);
  });

  it('gets the same restoration, as it can be there', () => {
    const front = withRestoration(empty, restoration('a', 23, { ...SAID, surfaces: ['M', 'I'] }));
    const copied = withCopy(front, 'a', 'b').restorations[1];
    expect(copied).toMatchObject({ tooth: 24, surfaces: ['M', 'O'], cavityClass: 'II' });
    expect(
      withCopy(withRestoration(empty, restoration('a', 28)), 'a', 'b').restorations,
    ).toHaveLength(1);
  });
});

describe('changed amounts', () => {
  const changed = ['a/a1/5/s1', 'a/a2/5/s1', 'b/a1/5/s1', 'visit/visit/bib'].reduce(
    (draft, line) => withAmount(draft, line, '2'),
    withChange(two, 'a', { attempts: 2 }),
  );

  it('go with what they belong to', () => {
    const lines = (draft: typeof changed) => Object.keys(draft.amounts);
    expect(lines(withoutRestoration(changed, 'a'))).toEqual(['b/a1/5/s1', 'visit/visit/bib']);
    expect(lines(withChange(changed, 'a', { attempts: 1 }))).not.toContain('a/a2/5/s1');
    expect(lines(withChange(changed, 'a', { shades: [] }))).toEqual([
      'b/a1/5/s1',
      'visit/visit/bib',
    ]);
    expect(lines(withChange(changed, 'b', { templateId: 't2' }))).not.toContain('b/a1/5/s1');
    expect(lines(withAmount(changed, 'visit/visit/bib', null))).not.toContain('visit/visit/bib');
  });

  it('keep to their restoration when another one is taken out', () => {
    expect(ownLine('r2/a1/5/s1', ['a', 'b'])).toBe('b/a1/5/s1');
    expect(serviceLine('b/a1/5/s1', ['a', 'b'])).toBe('r2/a1/5/s1');
    expect(ownLine('tooth/11/tooth/x', ['a'])).toBe('tooth/11/tooth/x');
    const { body } = planOf(withoutRestoration(changed, 'a'), TODAY, never);
    expect(body.usage).toEqual([
      { line: 'r1/a1/5/s1', dispensed: '2' },
      { line: 'visit/visit/bib', dispensed: '2' },
    ]);
  });

  it('go in steps that suit the unit', () => {
    expect([
      stepOf('piece', '4'),
      stepOf('g', '0.06'),
      stepOf('mL', '0.3'),
      stepOf('mL', '1.8'),
    ]).toEqual(['1', '0.01', '0.05', '0.1']);
    expect(stepped('0.06', '0.01', 1)).toBe('0.07');
    expect(stepped('0.3', '1', -1)).toBe('0');
    expect(isSame('0.10', '0.1')).toBe(true);
  });
});

describe('what is sent', () => {
  it('asks only about restorations of which enough is said', () => {
    const draft = withRestoration(two, restoration('c', 12, { surfaces: ['M'] }));
    expect(planOf(draft, TODAY, never).keys).toEqual(['a', 'b']);
    const asks = (templateId: string) => templateId === 't1';
    expect(planOf(withChange(two, 'a', { shades: [] }), TODAY, asks).keys).toEqual(['b']);
    expect(postOf(draft, TODAY).keys).toEqual(['a', 'b', 'c']);
  });

  it('is the visit under the id that was made for it, on today unless another day was said', () => {
    const { body } = postOf({ ...two, chartReference: ' C-1 ' }, TODAY);
    expect(body).toMatchObject({ id: 'v1', chartReference: 'C-1', visitedOn: TODAY });
    expect(postOf({ ...two, visitedOn: '2026-05-01' }, TODAY).body.visitedOn).toBe('2026-05-01');
  });

  it('says measures only when they make a cavity, and minutes only when they are some', () => {
    const sent = (change: Partial<RestorationDraft>) =>
      planOf(withChange(two, 'a', change), TODAY, never).body.restorations[0];
    expect(sent({ lengthMm: '4', widthMm: '5,5' })).not.toHaveProperty('lengthMm');
    expect(sent({ depthMm: '2' })).toMatchObject({ depthMm: '2' });
    expect(sent({ lengthMm: '4', widthMm: '5,5', depthMm: '2', redoOf: 'r' })).toMatchObject({
      ...{ lengthMm: '4', widthMm: '5.5', depthMm: '2', redoOf: 'r' },
    });
    const { body } = postOf({ ...two, minutes: '50', assistantMinutes: 'x' }, TODAY);
    expect([body.minutes, body.assistantMinutes, body.withoutAnaesthetic]).toEqual([
      ...[50, undefined, false],
    ]);
    const copied = withCopy(withChange(two, 'a', { depthMm: '3', redoOf: 'r' }), 'a', 'c');
    expect(copied.restorations[1]).not.toHaveProperty('depthMm');
    expect(copied.restorations[1]).not.toHaveProperty('redoOf');
  });

  it('has one lot in hand for each consumable', () => {
    const lot = (lotId: string) => ({
      ...{ lotId, holdingId: null, lotNumber: lotId, consumableId: 's1', name: 'Paste' },
    });
    const draft = withScanned(withScanned(two, lot('P-1')), lot('P-2'));
    expect(draft.scanned.map(({ lotId }) => lotId)).toEqual(['P-2']);
  });
});

describe('what is wrong', () => {
  const words = {
    ...{ required: 'required', future: 'future', tooth: 'tooth', surfaces: 'surfaces' },
    ...{ reason: 'reason', template: 'template', shades: 'shades' },
    ...{ length: 'length', side: 'side', minutes: 'minutes' },
  };
  const check = (draft: typeof two, asksForShades: () => boolean = never) =>
    checkDraft(draft, { today: TODAY, words, asksForShades });

  it('is seen before it is sent', () => {
    expect(check(two)).toEqual({});
    expect(check(newDraft('v', { dentistId: '', locationId: '' }))).toEqual({
      ...{ chartReference: 'required', dentistId: 'required', locationId: 'required' },
      tooth: 'tooth',
    });
    expect(check({ ...two, visitedOn: '2026-05-05' })).toEqual({ visitedOn: 'future' });
    expect(check(withRestoration(empty, restoration('c', 11)))).toEqual({
      ...{ 'c.surfaces': 'surfaces', 'c.reason': 'reason', 'c.templateId': 'template' },
    });
    expect(check(withChange(two, 'a', { shades: [] }), () => true)).toEqual({
      'a.shades': 'shades',
    });
  });

  it('may be a measure or the time', () => {
    const measured = (change: Partial<RestorationDraft>) => check(withChange(two, 'a', change));
    expect(measured({ lengthMm: '4' })).toEqual({ 'a.widthMm': 'side', 'a.depthMm': 'side' });
    expect(measured({ lengthMm: '4', widthMm: '0', depthMm: '-1' })).toEqual({
      ...{ 'a.widthMm': 'length', 'a.depthMm': 'length' },
    });
    expect(measured({ depthMm: '2,5' })).toEqual({});
    expect(check({ ...two, minutes: '1 h', assistantMinutes: '1441' })).toEqual({
      ...{ minutes: 'minutes', assistantMinutes: 'minutes' },
    });
  });

  it('is led to its control when the service says it', () => {
    const sent = planOf(withAmount(two, 'visit/visit/bib', '1.5'), TODAY, never);
    const errors = [
      { field: 'restorations[1].surfaces', message: 'is odd' },
      { field: 'usage[0].dispensed', message: 'is odd' },
      { field: 'visitedOn', message: 'is odd' },
      { field: 'staffCount', message: 'is odd' },
    ];
    const { trouble, rest } = placeProblem({ detail: '', errors }, sent, (said) => said);
    expect(Object.keys(trouble)).toEqual(['b.surfaces', 'line visit/visit/bib', 'visitedOn']);
    expect(rest).toEqual(['staffCount: is odd']);
    expect(placeProblem({ detail: 'No.' }, sent, (said) => said).rest).toEqual(['No.']);
    const gone = [{ field: 'usage[0].line', message: 'names no line that the templates plan' }];
    expect(staleLines({ errors: gone }, sent)).toEqual(['visit/visit/bib']);
  });
});
