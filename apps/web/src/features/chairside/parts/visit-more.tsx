import { Checkbox } from '@mantine/core';
import { useId } from 'react';
import { useText } from '../../../text/text-provider.js';
import { WholeField } from '../../../ui/fields.js';
import type { Preview } from '../api/preview-visit.js';
import { useChairside } from '../chairside-context.js';
import { TIMES } from '../draft/measures.js';
import { More } from './more.js';
import css from './more.module.css';

/** What is as the templates say in a usual visit: time, and whether anything is numbed. */
export function VisitMore() {
  const words = useText().chairside.more;
  const { draft, change, trouble, settle, plan } = useChairside();
  const planned = plan.preview && plannedTimes(plan.preview);
  const wrong = TIMES.some((time) => trouble[time] !== undefined);
  const hint = useId();
  const summary = [
    ...(planned ? [words.times(planned.minutes, planned.assistantMinutes)] : []),
    ...(draft.withoutAnaesthetic ? [words.numbless] : []),
  ];
  return (
    <More title={words.visit} summary={summary.join(' · ')} isWrong={wrong} className={css.visit}>
      <div className={css.fields}>
        {TIMES.map((time) => (
          <div key={time} id={`control-${time}`} className={css.time}>
            <WholeField
              label={words[time]}
              name={time}
              value={draft[time] ?? ''}
              error={trouble[time]}
              {...(planned ? { placeholder: String(planned[time]) } : {})}
              onValue={(value) => {
                settle(time);
                change((old) => ({ ...old, [time]: value }));
              }}
            />
          </div>
        ))}
        <Checkbox
          label={words.withoutAnaesthetic}
          checked={draft.withoutAnaesthetic ?? false}
          aria-describedby={hint}
          onChange={(event) => {
            const withoutAnaesthetic = event.currentTarget.checked;
            change((old) => ({ ...old, withoutAnaesthetic }));
          }}
        />
      </div>
      <p id={hint} className={css.hint}>
        {words.visitHint}
      </p>
    </More>
  );
}

type Times = Record<(typeof TIMES)[number], number>;

function plannedTimes({ restorations }: Preview): Times {
  const sum = (of: (each: Preview['restorations'][number]) => number) =>
    restorations.reduce((total, each) => total + of(each), 0);
  return {
    minutes: sum((each) => each.minutes),
    assistantMinutes: sum((each) => each.assistantMinutes ?? 0),
  };
}
