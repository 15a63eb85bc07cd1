import { Button } from '@mantine/core';
import { useId } from 'react';
import { formatSurfaces, formatTooth } from '#lib/dentition';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { problemWords } from '../../ui/problem-words.js';
import { Section } from '../../ui/section.js';
import type { Template } from './api/get-template.js';
import layout from './editor.module.css';
import { ExactCost } from './exact-cost.js';
import css from './example.module.css';
import { ExampleFields } from './example-fields.js';
import { ExampleUsage } from './example-usage.js';
import type { Draft } from './template-draft.js';
import { EXAMPLE_PLACE, type Example, type ExampleAddress, useExample } from './use-example.js';
import { type UsageAnswer, useUsage } from './use-usage.js';

interface Props {
  readonly example: ExampleAddress;
  readonly template?: Template | undefined;
  /** What is on the screen and not saved; without it the saved version is tried. */
  readonly draft?: Draft;
}

/** Tries the template on an example: what a visit would use, and about what it would cost. */
export function ExamplePanel({ example: address, template, draft }: Props) {
  const w = useText().setupExample;
  const may = useMay();
  const example = useExample(address, template?.id);
  const answer = useUsage({ template, draft }, example);
  const asks = answer.state === 'needs shades' || answer.state === 'no shades';
  const exact = may('costs.read') && may('visits.post') && template?.active === true && !asks;
  return (
    <aside id={EXAMPLE_PLACE} className={layout.aside} aria-label={w.title}>
      <Section title={w.title}>
        <Setting example={example} />
        <Waiting answer={answer} />
        {answer.usage && <ExampleUsage answer={answer} usage={answer.usage} />}
        {exact && <ExactCost template={template} example={example} />}
      </Section>
    </aside>
  );
}

function Setting({ example }: { readonly example: Example }) {
  const t = useText();
  const w = t.setupExample;
  const { teeth, notation, isSetting, setSetting, palette, shades } = example;
  const fields = useId();
  const names = (palette ?? []).filter(({ id }) => shades.includes(id)).map(({ shade }) => shade);
  return (
    <div className={css.setting}>
      <ul className={css.teeth}>
        {teeth.map(({ place, tooth, surfaces, cavityClass, size, reason, attempts }) => (
          <li key={place}>
            <strong>
              {w.tooth} {formatTooth(tooth, notation)} {formatSurfaces(surfaces)}
            </strong>
            <span>
              {[
                ...(cavityClass === undefined ? [] : [`${w.cavity} ${cavityClass}`]),
                w.sizes[size],
                t.setupTemplates.reasons[reason],
                ...(attempts === 1 ? [] : [w.attemptsOf(attempts)]),
              ].join(', ')}
            </span>
          </li>
        ))}
        {names.length > 0 && <li>{names.join(', ')}</li>}
      </ul>
      {example.isLastCase && <p className={css.quiet}>{w.lastCase}</p>}
      <Button
        variant="default"
        className="tb-screen-only"
        aria-expanded={isSetting}
        aria-controls={isSetting ? fields : undefined}
        onClick={() => setSetting(!isSetting)}
      >
        {isSetting ? t.ui.close : w.choose}
      </Button>
      {isSetting && (
        <div id={fields} className={css.fields}>
          <ExampleFields example={example} />
        </div>
      )}
    </div>
  );
}

/** Why the example cannot be shown, or is that of a moment ago. */
function Waiting({ answer: { state, error } }: { readonly answer: UsageAnswer }) {
  const t = useText();
  const w = t.setupExample;
  const known: Partial<Record<UsageAnswer['state'], string>> = {
    waiting: w.waiting,
    'needs shades': w.needShade,
    'no shades': w.noShades,
    'no lines': w.noLines,
  };
  const words = known[state] ?? (error ? problemWords(t, error) : undefined);
  return (
    <p className={css.waiting} role="status">
      {words}
    </p>
  );
}
