import { Button, NativeSelect } from '@mantine/core';
import { type ReactNode, useRef, useState } from 'react';
import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import { useFocusAfter } from '../../ui/use-focus-after.js';
import type { Driver } from './api/get-template.js';
import { DRIVERS } from './drivers.js';
import css from './editor.module.css';
import type { LineActions } from './line-actions.js';
import { LineRow } from './line-row.js';
import { type DraftLine, inOrder, liveLineErrors, moved, newLine } from './template-draft.js';
import { EXAMPLE_PLACE } from './use-example.js';
import type { TemplateForm } from './use-template-form.js';

interface Props {
  readonly form: TemplateForm;
}

function useLines(form: TemplateForm, focusAfter: (selector: string) => void) {
  const { lines } = form.values;
  const live = liveLineErrors(lines, useText());
  const added = useRef<string | undefined>(undefined);
  const set = (next: readonly DraftLine[]) => {
    form.set('lines', inOrder(next));
    // Errors are named by the places of lines, and these have changed.
    for (const path of Object.keys(form.fieldErrors)) {
      if (path.startsWith('lines')) form.clearAt(path);
    }
  };
  const indexOf = (key: string) => lines.findIndex((line) => line.key === key);
  const actions: LineActions = {
    change: (key, part) => {
      const path = `lines[${indexOf(key)}]`;
      const next = lines.map((line) => (line.key === key ? { ...line, ...part } : line));
      if (part.driver !== undefined) {
        set(next);
        focusAfter(`[data-line="${key}"] [data-tool="when"]`);
        return;
      }
      form.set('lines', next);
      for (const field of ['consumableId', 'driver', 'dispensed', 'placed']) {
        form.clearAt(`${path}.${field}`);
      }
    },
    move: (key, by) => {
      set(moved(lines, key, by));
      focusAfter(`[data-line="${key}"] [data-tool="${by === 1 ? 'down' : 'up'}"]`);
    },
    remove: (key) => {
      const i = indexOf(key);
      const next = lines[i + 1] ?? lines[i - 1];
      set(lines.filter((line) => line.key !== key));
      focusAfter(next ? `[data-line="${next.key}"] [data-tool="remove"]` : '[data-add]');
    },
    errorOf: (key, field) => {
      const path = `lines[${indexOf(key)}].${field}`;
      return form.errorAt(path) ?? live[path];
    },
  };
  const add = (driver: Driver) => {
    const line = newLine(driver);
    added.current = line.key;
    set([...lines, line]);
  };
  return { lines, actions, add, isNew: (key: string) => added.current === key };
}

/** The lines of a template, in groups by what they are counted by. */
export function LinesEditor({ form }: Props) {
  const t = useText();
  const w = t.setupTemplates;
  const { place, focusAfter } = useFocusAfter();
  const { lines, actions, add, isNew } = useLines(form, focusAfter);
  const used = DRIVERS.filter((driver) => lines.some((line) => line.driver === driver));
  const missing = form.errorAt('lines');
  return (
    <div ref={place}>
      <Section
        title={w.lines}
        hint={w.linesHint}
        aside={
          <a href={`#${EXAMPLE_PLACE}`} className={css.jump}>
            {t.setupExample.title}
          </a>
        }
      >
        {used.map((driver) => (
          <Group key={driver} driver={driver} onAdd={() => add(driver)}>
            {lines
              .filter((line) => line.driver === driver)
              .map((line, i, all) => (
                <LineRow
                  key={line.key}
                  line={line}
                  isFirst={i === 0}
                  isLast={i === all.length - 1}
                  isNew={isNew(line.key)}
                  {...actions}
                />
              ))}
          </Group>
        ))}
        <AddGroup onAdd={add} error={missing} />
      </Section>
    </div>
  );
}

interface GroupProps {
  readonly driver: Driver;
  readonly onAdd: () => void;
  readonly children: ReactNode;
}

function Group({ driver, onAdd, children }: GroupProps) {
  const w = useText().setupTemplates;
  const { title, why } = w.drivers[driver];
  return (
    <section className={css.group} aria-label={title}>
      <div className={css.groupHead}>
        <h3>{title}</h3>
        <p>{why}</p>
      </div>
      <div className={css.columns} aria-hidden="true">
        <span>{w.consumable}</span>
        <span>{w.dispensed}</span>
        <span>{w.placed}</span>
      </div>
      <ul className={css.lines}>{children}</ul>
      <Button
        variant="subtle"
        size="compact-md"
        className={css.addLine ?? ''}
        aria-label={w.addTo(title)}
        onClick={onAdd}
      >
        {w.addLine}
      </Button>
    </section>
  );
}

interface AddProps {
  readonly onAdd: (driver: Driver) => void;
  readonly error: string | undefined;
}

function AddGroup({ onAdd, error }: AddProps) {
  const w = useText().setupTemplates;
  const [driver, setDriver] = useState<Driver>('restoration');
  return (
    <div className={css.addGroup}>
      <NativeSelect
        label={w.addOther}
        description={w.drivers[driver].why}
        error={error}
        value={driver}
        data={DRIVERS.map((each) => ({ value: each, label: w.drivers[each].title }))}
        onChange={(event) => {
          const chosen = DRIVERS.find((each) => each === event.currentTarget.value);
          if (chosen) setDriver(chosen);
        }}
      />
      <Button variant="default" data-add onClick={() => onAdd(driver)}>
        {w.addLine}
      </Button>
    </div>
  );
}
