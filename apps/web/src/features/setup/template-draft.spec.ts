import { describe, expect, it } from '@jest/globals';
import { en } from '../../text/en.js';
import { makeFormat } from '../../text/format.js';
import type { Template } from './api/get-template.js';
import {
  type DraftLine,
  draftErrors,
  draftOf,
  EMPTY_DRAFT,
  inOrder,
  linesBody,
  moved,
  newLine,
  SHADES,
  versionBody,
} from './template-draft.js';
import { contentOfDraft, contentOfVersion, differences } from './version-diff.js';

const typed = (decimal: string) => decimal.replace('.', ',');
const format = makeFormat({
  locale: 'en-GB',
  currency: 'EUR',
  timeZone: 'Europe/Berlin',
  units: en.units,
});

const TEMPLATE: Template = {
  id: 't',
  name: 'Front filling',
  active: true,
  latestVersion: 1,
  version: 1,
  minutes: 40,
  assistantMinutes: 25,
  layerThicknessMm: '2',
  note: null,
  recordedBy: 'p',
  recordedAt: '2026-05-04T08:00:00.000Z',
  lines: [
    {
      lineNumber: 1,
      consumableId: null,
      consumableName: null,
      stockUnit: null,
      driver: 'restoration',
      placed: '0.04',
      dispensed: '0.06',
      everyAttempt: true,
      reasons: null,
      sharesDose: true,
      anaesthetic: false,
    },
    {
      lineNumber: 2,
      consumableId: 'bib',
      consumableName: 'Patient bib',
      stockUnit: 'piece',
      driver: 'visit',
      placed: '0',
      dispensed: '1',
      everyAttempt: false,
      reasons: ['decay'],
      sharesDose: false,
      anaesthetic: false,
    },
  ],
};

function line(change: Partial<DraftLine>): DraftLine {
  return { ...newLine('restoration'), what: 'paste', unit: 'g', dispensed: '0,06', ...change };
}

const errorsOf = (change: Partial<DraftLine>) =>
  Object.fromEntries(
    Object.entries(draftErrors({ ...EMPTY_DRAFT, lines: [line(change)] }, en)).filter(
      ([, words]) => words !== undefined,
    ),
  );

describe('a draft', () => {
  it('groups the lines by what they are counted by, and goes back as it came', () => {
    const draft = draftOf(TEMPLATE, typed);
    expect(draft.lines.map(({ what, dispensed, placed }) => [what, dispensed, placed])).toEqual([
      ['bib', '1', ''],
      [SHADES, '0,06', '0,04'],
    ]);
    expect(versionBody(draft)).toMatchObject({ minutes: 40, layerThicknessMm: '2', note: null });
    expect(linesBody(draft.lines)[1]).toEqual({
      consumableId: null,
      driver: 'restoration',
      placed: '0.04',
      dispensed: '0.06',
      everyAttempt: true,
      reasons: null,
      sharesDose: true,
      anaesthetic: false,
    });
  });

  it('leaves the flags of a line as usual where nobody says or where they mean nothing', () => {
    const flags = (change: Partial<DraftLine>) =>
      linesBody([line(change)]).map(({ sharesDose, anaesthetic }) => [sharesDose, anaesthetic])[0];
    expect(flags({})).toEqual([null, null]);
    expect(flags({ sharesDose: true, anaesthetic: false })).toEqual([true, false]);
    expect(flags({ sharesDose: true, driver: 'visit' })).toEqual([null, null]);
    expect(flags({ sharesDose: true, unit: 'piece' })).toEqual([null, null]);
  });

  it('plans assistants for as long as the chair where nothing else is said', () => {
    const minutesOf = (assistantMinutes: string) =>
      versionBody({ ...EMPTY_DRAFT, assistantMinutes }).assistantMinutes;
    expect([minutesOf(''), minutesOf('12')]).toEqual([null, 12]);
    expect(draftOf(TEMPLATE, typed).assistantMinutes).toBe('25');
    expect(draftOf({ ...TEMPLATE, assistantMinutes: 40 }, typed).assistantMinutes).toBe('');
    const wrong = draftErrors({ ...EMPTY_DRAFT, assistantMinutes: '2h' }, en).assistantMinutes;
    expect(wrong).toBe(en.setup.wholeBetween(0, 1440));
  });

  it('moves a line only among those of its kind', () => {
    const [a, b] = [line({ what: 'a' }), line({ what: 'b' })];
    const c = line({ what: 'c', driver: 'visit' });
    const lines = inOrder([a, b, c]);
    const names = (list: readonly DraftLine[]) => list.map(({ what }) => what).join('');
    expect(names(lines)).toBe('cab');
    expect(names(moved(lines, a.key, 1))).toBe('cba');
    expect(names(moved(lines, a.key, -1))).toBe('cab');
    expect(names(moved(lines, b.key, 1))).toBe('cab');
  });

  it('says what is wrong with a line', () => {
    const w = en.setupTemplates;
    expect(errorsOf({})).toEqual({});
    expect(errorsOf({ what: '' })).toEqual({ 'lines[0].consumableId': en.ui.choose });
    expect(errorsOf({ dispensed: '' })).toEqual({ 'lines[0].dispensed': en.ui.required });
    expect(errorsOf({ dispensed: 'x' })).toEqual({ 'lines[0].dispensed': en.ui.decimal });
    expect(errorsOf({ dispensed: '0' })).toEqual({ 'lines[0].dispensed': en.setup.aboveZero });
    expect(errorsOf({ placed: '0,07' })).toEqual({ 'lines[0].placed': w.placedTooMuch });
    expect(errorsOf({ placed: '-1' })).toEqual({ 'lines[0].placed': en.ui.decimal });
    expect(errorsOf({ unit: 'piece', dispensed: '1,5' })).toEqual({
      'lines[0].dispensed': w.wholeOnly,
    });
    expect(errorsOf({ what: SHADES, driver: 'visit' })).toEqual({
      'lines[0].driver': w.shadesDriver,
    });
  });

  it('says what is wrong with the rest', () => {
    const errors = draftErrors({ ...EMPTY_DRAFT, minutes: 'x', layerThicknessMm: '' }, en);
    expect(errors).toEqual({
      minutes: en.setup.wholeBetween(0, 1440),
      layerThicknessMm: en.ui.required,
      lines: en.setupTemplates.noLines,
    });
  });
});

describe('what changed between two versions', () => {
  const draft = draftOf(TEMPLATE, typed);
  const changes = (change: Partial<typeof draft>) =>
    differences(contentOfVersion(TEMPLATE), contentOfDraft({ ...draft, ...change }), {
      format,
      t: en,
    }).map((sentence) => sentence.replaceAll('\u00a0', ' '));

  it('is nothing but the order when the editor has grouped the lines', () => {
    expect(changes({})).toEqual(['Lines in another order']);
  });

  it('is said line by line', () => {
    const [bib, paste] = draft.lines;
    if (!bib || !paste) throw new Error('The draft has lost its lines');
    const gloves = { ...newLine('staff member'), what: 'g', name: 'Gloves', unit: 'piece' };
    expect(
      changes({
        minutes: '45',
        layerThicknessMm: '1,5',
        lines: [
          { ...gloves, dispensed: '2' },
          { ...paste, dispensed: '0,08', everyAttempt: false },
        ],
      }),
    ).toEqual([
      'Chair time 40 → 45 minutes',
      'Layer thickness 2 → 1.5 mm',
      'Added: Gloves (Per person at the chair), 2 pieces',
      'The chosen shades (Per restoration): out 0.06 g → 0.08 g; not used again in a retake',
      'Taken out: Patient bib (Once per visit)',
    ]);
  });

  it('names doses, anaesthesia and the time of assistants', () => {
    const [bib, paste] = draft.lines;
    if (!bib || !paste) throw new Error('The draft has lost its lines');
    const lines = [
      { ...bib, anaesthetic: true },
      { ...paste, sharesDose: false },
    ];
    expect(changes({ lines, assistantMinutes: '30' })).toEqual([
      'Assistants 25 → 30 minutes',
      'Patient bib (Once per visit): left out without anaesthetic',
      'The chosen shades (Per restoration): a single dose for each',
    ]);
  });

  it('names reasons', () => {
    const [bib, ...rest] = draft.lines;
    if (!bib) throw new Error('The draft has lost its lines');
    expect(changes({ lines: [{ ...bib, reasons: ['wear'] }, ...rest] })).toEqual([
      'Patient bib (Once per visit): only for wear',
    ]);
  });
});
