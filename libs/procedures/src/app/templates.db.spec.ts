import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { quantity } from '#lib/measure';
import { newId } from '#lib/platform';
import {
  audited,
  type Book,
  body,
  enamel,
  etch,
  openBook,
  refusal,
  wedge,
} from '../db/book-for-tests.js';
import { loadTemplates } from '../db/load-templates.js';
import { ChangeTemplate } from './change-template.js';
import { CreateTemplate, type NewTemplate } from './create-template.js';
import { CreateTemplateVersion } from './create-template-version.js';
import { GetTemplate } from './get-template.js';
import { ListTemplateVersions } from './list-template-versions.js';
import { ListTemplates } from './list-templates.js';
import { PreviewDraft } from './preview-draft.js';
import { PreviewTemplate } from './preview-template.js';
import type { NewTemplateLine } from './template-input.js';

let book: Book;

beforeAll(async () => {
  book = await openBook();
});

afterAll(() => book.close());

const LINES: NewTemplateLine[] = [
  { consumableId: etch, driver: 'tooth', placed: '0.06', dispensed: '0.080', everyAttempt: true },
  { consumableId: wedge, driver: 'proximal surface', placed: '0', dispensed: '1' },
  { driver: 'mm3', placed: '0.002', dispensed: '0.003', reasons: ['decay', 'fracture'] },
];

function create(more: Partial<NewTemplate> = {}, as = book.actor) {
  const command = { name: `Filling ${newId()}`, minutes: 40, lines: LINES, ...more };
  return new CreateTemplate(book.uow).run(as, command);
}

function addVersion(id: string, lines = LINES, more: object = {}) {
  return new CreateTemplateVersion(book.uow).run(book.actor, id, { minutes: 40, lines, ...more });
}

describe('a new template', () => {
  it('is kept as it was entered', async () => {
    const view = await create({ name: ' Front filling ', note: ' First try ' });
    expect(view).toMatchObject({
      name: 'Front filling',
      active: true,
      latestVersion: 1,
      version: 1,
      minutes: 40,
      assistantMinutes: 40,
      layerThicknessMm: '2',
      note: 'First try',
      recordedBy: book.actor.personId,
    });
    const flags = { sharesDose: false, anaesthetic: false };
    const rest = { everyAttempt: false, reasons: null, ...flags };
    expect(view.lines).toEqual([
      {
        ...LINES[0],
        ...rest,
        lineNumber: 1,
        dispensed: '0.08',
        everyAttempt: true,
        consumableName: 'Etching gel',
        stockUnit: 'mL',
      },
      { ...LINES[1], ...rest, lineNumber: 2, consumableName: 'Wedge', stockUnit: 'piece' },
      {
        ...LINES[2],
        lineNumber: 3,
        ...rest,
        reasons: ['decay', 'fracture'],
        sharesDose: true,
        consumableId: null,
        consumableName: null,
        stockUnit: null,
      },
    ]);
    expect(await new GetTemplate(book.uow).run(book.actor, view.id)).toEqual(view);
    expect(await audited(book.owner, view.id)).toEqual(['procedure-template.created']);
  });

  it('is written once when it is sent twice with its id, even at the same moment', async () => {
    const sent = { id: newId(), name: 'Sent twice' };
    const answers = await Promise.all([create(sent), create(sent)]);
    expect(answers[1]).toEqual(answers[0]);
    expect(await audited(book.owner, sent.id)).toHaveLength(1);
    expect(await refusal(create({ ...sent, minutes: 41 }))).toBe('409 already_exists id');
  });

  it('has a name of its own in its practice', async () => {
    const { name } = await create();
    expect(await refusal(create({ name: name.toUpperCase() }))).toBe('409 already_exists name');
  });

  it('names what is wrong with its lines', async () => {
    const line = { consumableId: etch, driver: 'tooth', placed: '1', dispensed: '1' } as const;
    const wrong = (changes: Partial<NewTemplateLine>) =>
      refusal(create({ lines: [line, { ...line, ...changes }] }));
    const unknown = '422 unknown_reference lines[1].consumableId';
    const unfit = '422 template_does_not_fit';
    expect(await wrong({ consumableId: newId() })).toBe(unknown);
    expect(await wrong({ placed: '2' })).toBe(`${unfit} lines[1].placed`);
    expect(await wrong({ consumableId: wedge, dispensed: '1.5' })).toBe(
      `${unfit} lines[1].dispensed`,
    );
    expect(await wrong({ consumableId: null, driver: 'visit' })).toBe(`${unfit} lines[1].driver`);
    expect(await wrong({ driver: 'visit', sharesDose: true })).toBe(`${unfit} lines[1].sharesDose`);
    expect(await wrong({ consumableId: wedge, sharesDose: true })).toBe(
      `${unfit} lines[1].sharesDose`,
    );
    expect(await refusal(create({}, book.stranger))).toBe(
      '422 unknown_reference lines[0].consumableId',
    );
  });
});

describe('versions', () => {
  it('follow each other and stay as they were', async () => {
    const first = await create({ layerThicknessMm: '1.5' });
    const second = await addVersion(first.id, LINES.slice(0, 1));
    expect(second).toMatchObject({ version: 2, latestVersion: 2, layerThicknessMm: '1.5' });
    const get = new GetTemplate(book.uow);
    expect(await get.run(book.actor, first.id)).toEqual(second);
    expect(await get.run(book.actor, first.id, 1)).toEqual({ ...first, latestVersion: 2 });
    expect(await refusal(get.run(book.actor, first.id, 3))).toBe('404 not_found version');
    const { items } = await new ListTemplateVersions(book.uow).run(book.actor, first.id);
    expect(items.map(({ version }) => version)).toEqual([2, 1]);
    const change = "UPDATE template_versions SET minutes = 1 WHERE template_id = '";
    const forbidden = book.uow.run(book.actor.practiceId, (tx) =>
      tx.query(`${change}${first.id}'`),
    );
    await expect(forbidden).rejects.toMatchObject({ code: '42501' });
  });

  it('are not written again when they say the same', async () => {
    const { id } = await create();
    expect(await addVersion(id)).toMatchObject({ version: 1 });
    await Promise.all([1, 2, 3].map(() => addVersion(id, LINES, { minutes: 50 })));
    expect(await new GetTemplate(book.uow).run(book.actor, id)).toMatchObject({ latestVersion: 2 });
    expect(await audited(book.owner, id)).toEqual([
      'procedure-template.created',
      'procedure-template.version-created',
    ]);
  });

  it('get different numbers when two are written at the same moment', async () => {
    const { id } = await create();
    const written = await Promise.all(
      [50, 60, 70].map((minutes) => addVersion(id, LINES, { minutes })),
    );
    expect(written.map(({ version }) => version).sort()).toEqual([2, 3, 4]);
  });
});

describe('changing a template', () => {
  it('changes its name and whether it is in use, and nothing of its versions', async () => {
    const { id } = await create();
    const change = new ChangeTemplate(book.uow);
    const name = `Renamed ${id}`;
    expect(await change.run(book.actor, id, { name, active: false })).toMatchObject({
      name,
      active: false,
    });
    await change.run(book.actor, id, { name: null });
    expect(await audited(book.owner, id)).toHaveLength(2);
    const list = new ListTemplates(book.uow);
    expect((await list.run(book.actor, { limit: 5, q: name, active: false })).items).toEqual([
      { id, name, active: false, latestVersion: 1 },
    ]);
    expect((await list.run(book.actor, { limit: 5, q: name, active: true })).items).toEqual([]);
    expect(await refusal(change.run(book.stranger, id, { name: 'Mine' }))).toBe('404 not_found id');
    const { name: taken } = await create();
    expect(await refusal(change.run(book.actor, id, { name: taken }))).toBe(
      '409 already_exists name',
    );
  });
});

describe('loading templates', () => {
  it('finds versions and the latest in one query, and nothing of another practice', async () => {
    const { id } = await create();
    await addVersion(id, LINES.slice(0, 2));
    await addVersion(id, LINES.slice(0, 1));
    const other = await create();
    const refs = [
      { templateId: id, version: 1 },
      { templateId: other.id },
      { templateId: newId() },
    ];
    const templateOf = await book.uow.read(book.actor.practiceId, (tx) => loadTemplates(tx, refs));
    expect(templateOf(id, 1)?.lines.map((line) => line.dispensed)).toEqual(
      ['0.08', '1', '0.003'].map(quantity),
    );
    expect(templateOf(id, 1)?.lines[2]).toMatchObject({
      consumableId: null,
      reasons: ['decay', 'fracture'],
    });
    expect(templateOf(id)?.version).toBe(3);
    expect(templateOf(other.id)?.layerThicknessMm).toBe(quantity('2'));
    expect([templateOf(id, 2), templateOf(id, 4), templateOf(newId())]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    const theirs = await book.uow.read(book.stranger.practiceId, (tx) => loadTemplates(tx, refs));
    expect(theirs(id)).toBeUndefined();
    const none = await book.uow.read(book.actor.practiceId, (tx) => loadTemplates(tx, []));
    expect(none(id)).toBeUndefined();
  });
});

describe('a preview', () => {
  const restoration = { tooth: '11', surfaces: 'M', cavityClass: 'III', reason: 'decay' } as const;
  const preview = (id: string, more: object, version?: number) =>
    new PreviewTemplate(book.uow).run(book.actor, id, {
      ...(version === undefined ? {} : { version }),
      restorations: [{ ...restoration, shades: [body, enamel], ...more }],
    });

  it('shows what a visit would use', async () => {
    const { id } = await create();
    const shown = await preview(id, { attempts: 2 });
    expect(shown).toMatchObject({ templateId: id, version: 1, minutes: 40 });
    const lines = shown.lines.map((line) => [
      line.key,
      line.tooth,
      line.consumableName,
      line.shade,
      `${line.dispensed} ${line.stockUnit}`,
    ]);
    expect(lines).toEqual([
      [`tooth/11/tooth/${etch}`, '11', 'Etching gel', null, '0.08 mL'],
      [`r1/a1/2/${wedge}`, null, 'Wedge', null, '1 piece'],
      [`r1/a1/3/${body}`, null, 'Paste', 'Body 2', '0.018 g'],
      [`r1/a1/3/${enamel}`, null, 'Paste', 'Enamel light', '0.018 g'],
      [`r1/a2/1/${etch}`, null, 'Etching gel', null, '0.08 mL'],
    ]);
  });

  it('names what is wrong', async () => {
    const { id } = await create();
    const unknown = '422 unknown_reference';
    const unfit = '422 restoration_does_not_fit';
    expect(await refusal(preview(newId(), {}))).toBe('404 not_found id');
    expect(await refusal(preview(id, {}, 2))).toBe(`${unknown} version`);
    expect(await refusal(preview(id, { shades: [body, newId()] }))).toBe(
      `${unknown} restorations[0].shades[1]`,
    );
    expect(await refusal(preview(id, { shades: [] }))).toBe(`${unfit} restorations[0].shades`);
    expect(await refusal(preview(id, { tooth: '10', shades: [] }))).toBe(
      `${unfit} restorations[0].tooth restorations[0].shades`,
    );
  });
});

describe('a preview of a draft', () => {
  const facts = { tooth: '11', surfaces: 'M', cavityClass: 'III', reason: 'decay' } as const;
  const draft = (more: object = {}) =>
    new PreviewDraft(book.uow).run(book.actor, {
      minutes: 40,
      lines: LINES,
      restorations: [{ ...facts, shades: [body, enamel] }],
      ...more,
    });

  it('shows what a template of the same lines shows, and writes nothing', async () => {
    const { id } = await create();
    const restorations = [{ ...facts, shades: [body, enamel], attempts: 2 }];
    const saved = await new PreviewTemplate(book.uow).run(book.actor, id, { restorations });
    const { templateId: _, version: __, ...usage } = saved;
    const before = await new ListTemplates(book.uow).run(book.actor, { limit: 500 });
    expect(await draft({ restorations })).toEqual(usage);
    expect(await new ListTemplates(book.uow).run(book.actor, { limit: 500 })).toEqual(before);
  });

  it('names what is wrong, in the lines and in the restorations', async () => {
    const [etchant, ...others] = LINES;
    const wrong = { ...etchant, consumableId: newId() };
    expect(await refusal(draft({ lines: [...others, wrong] }))).toBe(
      '422 unknown_reference lines[2].consumableId',
    );
    const tooMuch = { ...etchant, placed: '1' };
    expect(await refusal(draft({ lines: [tooMuch] }))).toBe(
      '422 template_does_not_fit lines[0].placed',
    );
    expect(await refusal(draft({ restorations: [{ ...facts, shades: [] }] }))).toBe(
      '422 restoration_does_not_fit restorations[0].shades',
    );
  });
});
