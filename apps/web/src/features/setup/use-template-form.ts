import { useBlocker } from '@tanstack/react-router';
import { useRef } from 'react';
import { useBooking } from '../../api/use-booking.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import type { Template } from './api/get-template.js';
import { createTemplate, createVersion } from './api/save-template.js';
import { type Draft, draftErrors, versionBody } from './template-draft.js';
import { contentOfDraft, differences } from './version-diff.js';

interface Options {
  readonly initial: Draft;
  /** undefined for one that is not written yet. */
  readonly template?: Template | undefined;
  readonly onSaved: (saved: Template) => void;
}

/** The editor's values, what was changed, and saving them as a new version. */
export function useTemplateForm({ initial, template, onSaved }: Options) {
  const t = useText();
  const w = t.setupTemplates;
  const format = useFormat();
  const saved = useRef(false);
  const { book } = useBooking({
    send: (draft: Draft, key) =>
      template
        ? createVersion(template.id, versionBody(draft))
        : createTemplate({ id: key, name: draft.name.trim(), ...versionBody(draft) }),
    changes: [['procedure-templates']],
  });
  const form = useForm({
    initial,
    check: (draft) => ({
      name: draft.name.trim() === '' ? t.ui.required : undefined,
      ...draftErrors(draft, t),
      note: template && draft.note.trim() === '' ? t.ui.required : undefined,
    }),
    send: (draft) => {
      saved.current = true;
      return book(draft).catch((error: unknown) => {
        saved.current = false;
        throw error;
      });
    },
    fieldOf: (path) => path,
    onDone: (done) => {
      notify({
        tone: 'done',
        text: template ? w.savedVersion(done.version) : w.savedNew(done.name),
      });
      onSaved(done);
    },
  });
  const { values } = form;
  const words = { format, t };
  const changes = differences(contentOfDraft(initial), contentOfDraft(values), words);
  const isChanged = changes.length > 0 || (!template && values.name.trim() !== '');
  useBlocker({
    shouldBlockFn: ({ current, next }) => {
      if (!isChanged || saved.current) return false;
      const version = (search: object) => ('version' in search ? search.version : undefined);
      const stays =
        current.pathname === next.pathname && version(current.search) === version(next.search);
      return !stays && !window.confirm(w.leave);
    },
    enableBeforeUnload: () => isChanged && !saved.current,
  });
  return { form, changes, isChanged };
}

export type TemplateForm = ReturnType<typeof useTemplateForm>['form'];
