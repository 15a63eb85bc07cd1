import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import { Amount } from '../../ui/values.js';
import type { Driver, Template, TemplateLine } from './api/get-template.js';
import { DRIVERS } from './drivers.js';
import css from './editor.module.css';
import { reasonWords } from './version-diff.js';

/** A version as it is written, for whoever may not or need not change it. */
export function TemplateSheet({ template }: { readonly template: Template }) {
  const w = useText().setupTemplates;
  const used = DRIVERS.filter((driver) => template.lines.some((line) => line.driver === driver));
  return (
    <Section title={w.lines}>
      {used.map((driver) => (
        <SheetGroup
          key={driver}
          driver={driver}
          lines={template.lines.filter((line) => line.driver === driver)}
        />
      ))}
    </Section>
  );
}

interface GroupProps {
  readonly driver: Driver;
  readonly lines: readonly TemplateLine[];
}

function SheetGroup({ driver, lines }: GroupProps) {
  const w = useText().setupTemplates;
  const { title, why } = w.drivers[driver];
  return (
    <section className={css.group} aria-label={title}>
      <div className={css.groupHead}>
        <h3>{title}</h3>
        <p>{why}</p>
      </div>
      <div className={css.sheetHead} aria-hidden="true">
        <span>{w.consumable}</span>
        <span>{w.dispensed}</span>
        <span>{w.placed}</span>
      </div>
      <ul className={css.sheet}>
        {lines.map((line) => (
          <SheetLine key={line.lineNumber} line={line} />
        ))}
      </ul>
    </section>
  );
}

function SheetLine({ line }: { readonly line: TemplateLine }) {
  const t = useText();
  const w = t.setupTemplates;
  const unit = line.stockUnit ?? w.shadeUnit;
  const when = [
    ...(line.reasons === null ? [] : [reasonWords(line.reasons, t)]),
    ...(line.everyAttempt ? [w.again] : []),
    ...(line.sharesDose ? [w.sharesDose] : []),
    ...(line.anaesthetic ? [w.anaesthetic] : []),
  ];
  return (
    <li>
      <span>
        {line.consumableId === null ? w.shades : line.consumableName}
        {when.length > 0 && <span className={css.quiet}> · {when.join(' · ')}</span>}
      </span>
      <Amount value={line.dispensed} unit={unit} />
      {line.placed === '0' ? <span>–</span> : <Amount value={line.placed} unit={unit} />}
    </li>
  );
}
