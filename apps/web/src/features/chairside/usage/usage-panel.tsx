import { formatSurfaces, formatTooth, parseTooth } from '#lib/dentition';
import { useText } from '../../../text/text-provider.js';
import { Section } from '../../../ui/section.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { Money } from '../../../ui/values.js';
import { type Plan, useChairside } from '../chairside-context.js';
import { AddLine } from './add-line.js';
import { ScanLot } from './scan-lot.js';
import { costOf, groupUsage, shortOf, type UsageGroup } from './usage-groups.js';
import css from './usage-panel.module.css';
import { UsageRow } from './usage-row.js';

/** What the visit would take out of which lots, live; to be changed where it was different. */
export function UsagePanel() {
  const t = useText();
  const { draft, plan } = useChairside();
  const words = t.chairside.usage;
  const groups = plan.preview ? groupUsage(plan.preview, plan.keys, draft.added) : [];
  return (
    <Section
      title={words.title}
      aside={<span aria-live="polite">{plan.state === 'working' ? words.stale : ''}</span>}
    >
      <StateWords state={plan.state} />
      {groups.length > 0 && (
        <div className={css.groups} data-stale={plan.state === 'working' || undefined}>
          <ScanLot />
          {groups.map((group) => (
            <Group key={group.id} group={group} />
          ))}
          <AddLine />
        </div>
      )}
    </Section>
  );
}

function StateWords({ state }: Pick<Plan, 'state'>) {
  const words = useText().chairside.usage;
  const says = {
    incomplete: words.waiting,
    'no room': words.room,
    offline: words.offline,
    wrong: words.wrong,
    working: undefined,
    ready: undefined,
  }[state];
  if (says === undefined) return null;
  return (
    <p className={css.state} data-wrong={state === 'wrong' || undefined}>
      {says}
    </p>
  );
}

function Group({ group }: { readonly group: UsageGroup }) {
  const t = useText();
  const title = useGroupTitle(group);
  const short = shortOf(group);
  return (
    <details className={css.group} open={group.kind !== 'visit'}>
      <summary>
        <span className={css.name}>{title}</span>
        <span className={css.count}>
          {short > 0 ? (
            <StatusMark tone="caution">{t.chairside.usage.short(short)}</StatusMark>
          ) : (
            t.chairside.usage.count(group.lines.length)
          )}
        </span>
        <Money value={costOf(group)} />
      </summary>
      <ul className={css.lines}>
        {group.lines.map((line) => (
          <UsageRow key={line.key} line={line} />
        ))}
      </ul>
    </details>
  );
}

function useGroupTitle(group: UsageGroup): string {
  const t = useText();
  const { draft, plan, notation } = useChairside();
  const words = t.chairside.usage;
  if (group.kind === 'visit') return words.shared;
  if (group.kind === 'added') return words.addedGroup;
  if (group.kind === 'tooth') {
    const tooth = parseTooth(group.tooth, 'iso');
    return words.tooth(tooth === undefined ? group.tooth : formatTooth(tooth, notation));
  }
  const of = draft.restorations.find(({ key }) => key === plan.keys[group.restoration]);
  const name = of ? `${formatTooth(of.tooth, notation)} ${formatSurfaces(of.surfaces)}` : '';
  return group.attempt > 1 ? words.retake(name, group.attempt - 1) : words.restoration(name);
}
