import { Button } from '@mantine/core';
import { useState } from 'react';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { DecimalField, NoteField, TextField, WholeField } from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Section } from '../../ui/section.js';
import { useTyped } from '../../ui/use-typed.js';
import type { Template } from './api/get-template.js';
import css from './editor.module.css';
import { ExamplePanel } from './example-panel.js';
import { LinesEditor } from './lines-editor.js';
import { draftOf, EMPTY_DRAFT } from './template-draft.js';
import type { ExampleAddress } from './use-example.js';
import { type TemplateForm, useTemplateForm } from './use-template-form.js';

interface Props {
  /** undefined for one that is not written yet. */
  readonly template?: Template;
  readonly example: ExampleAddress;
  readonly onSaved: (saved: Template) => void;
}

/** What a template uses, beside an example that shows what comes of it. */
export function TemplateEditor({ template, example, onSaved }: Props) {
  const typed = useTyped();
  const [initial] = useState(() => (template ? draftOf(template, typed) : EMPTY_DRAFT));
  const { form, changes, isChanged } = useTemplateForm({ initial, template, onSaved });
  return (
    <div className={css.layout}>
      <Form form={form}>
        <Figures form={form} isNew={template === undefined} />
        <LinesEditor form={form} />
        <SaveSection
          form={form}
          changes={changes}
          isChanged={isChanged}
          template={template}
          onDiscard={() => form.reset()}
        />
      </Form>
      <ExamplePanel
        example={example}
        template={template}
        {...(template && changes.length === 0 ? {} : { draft: form.values })}
      />
    </div>
  );
}

interface FiguresProps {
  readonly form: TemplateForm;
  readonly isNew: boolean;
}

function Figures({ form, isNew }: FiguresProps) {
  const w = useText().setupTemplates;
  return (
    <>
      {isNew && <TextField label={w.name} {...form.field('name')} maxLength={200} />}
      <FieldRow>
        <WholeField label={w.minutes} hint={w.minutesHint} {...form.field('minutes')} />
        <WholeField
          label={w.assistantMinutes}
          hint={w.assistantMinutesHint}
          {...form.field('assistantMinutes')}
        />
        <DecimalField
          label={w.thickness}
          hint={w.thicknessHint}
          {...form.field('layerThicknessMm')}
        />
      </FieldRow>
    </>
  );
}

interface SaveProps {
  readonly form: TemplateForm;
  readonly changes: readonly string[];
  readonly isChanged: boolean;
  readonly template: Template | undefined;
  readonly onDiscard: () => void;
}

function SaveSection({ form, changes, isChanged, template, onDiscard }: SaveProps) {
  const w = useText().setupTemplates;
  const may = useMay();
  if (!may('templates.write')) return null;
  if (!template) {
    return (
      <div className={css.save}>
        <NoteField label={w.noteNew} {...form.field('note')} maxLength={500} />
        <FormActions>
          <SubmitButton form={form}>{w.saveNew}</SubmitButton>
        </FormActions>
      </div>
    );
  }
  if (!isChanged) return <p className={css.unchanged}>{w.noChanges}</p>;
  return (
    <Section title={w.changes} hint={w.saveHint}>
      <div className={css.save}>
        <ul className={css.changes}>
          {changes.map((change) => (
            <li key={change}>{change}</li>
          ))}
        </ul>
        <NoteField label={w.note} hint={w.noteHint} {...form.field('note')} maxLength={500} />
        <FormActions>
          <SubmitButton form={form}>{w.saveVersion(template.latestVersion + 1)}</SubmitButton>
          <Button variant="default" onClick={onDiscard}>
            {w.discard}
          </Button>
        </FormActions>
      </div>
    </Section>
  );
}
