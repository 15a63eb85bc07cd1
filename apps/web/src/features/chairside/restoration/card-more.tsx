import { useDebouncedValue } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { formatTooth } from '#lib/dentition';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { DecimalField, SelectField } from '../../../ui/fields.js';
import { type Earlier, earlierQuery } from '../api/list-earlier.js';
import type { Preview } from '../api/preview-visit.js';
import { useChairside } from '../chairside-context.js';
import type { RestorationDraft } from '../draft/draft.js';
import { SIDES } from '../draft/measures.js';
import { ofRestoration } from '../draft/trouble.js';
import { useOnline } from '../offline/use-outbox.js';
import { More } from '../parts/more.js';
import css from '../parts/more.module.css';

interface Props {
  readonly of: RestorationDraft;
  readonly onChange: (part: Partial<RestorationDraft>) => void;
}

/** What is seldom said of a restoration: what the cavity measures, and what it does again. */
export function CardMore({ of, onChange }: Props) {
  const words = useText().chairside.more;
  const { trouble, plan } = useChairside();
  const planned = plan.preview?.restorations[plan.keys.indexOf(of.key)];
  const earlier = useEarlier(of);
  const at = (field: string) => ofRestoration(of.key, field);
  const wrong = [...SIDES, 'redoOf'].some((field) => trouble[at(field)] !== undefined);
  return (
    <More
      title={words.cavity}
      summary={
        <CavityWords of={planned} isRedo={of.redoOf !== undefined} mayRedo={earlier.length > 0} />
      }
      isWrong={wrong}
    >
      <div className={css.fields}>
        {SIDES.map((side) => (
          <div key={side} id={`control-${at(side)}`} className={css.short}>
            <DecimalField
              label={words[side]}
              unit="mm"
              name={at(side)}
              value={of[side] ?? ''}
              error={trouble[at(side)]}
              onValue={(value) => onChange({ [side]: value })}
            />
          </div>
        ))}
      </div>
      <p className={css.hint}>{words.cavityHint}</p>
      <Redo of={of} earlier={earlier} error={trouble[at('redoOf')]} onChange={onChange} />
    </More>
  );
}

interface WordsProps {
  readonly of: Preview['restorations'][number] | undefined;
  readonly isRedo: boolean;
  readonly mayRedo: boolean;
}

function CavityWords({ of, isRedo, mayRedo }: WordsProps) {
  const words = useText().chairside.more;
  const format = useFormat();
  const sources: Readonly<Record<string, string>> = words.sources;
  const parts = of
    ? [
        words.volume(format.number(of.volumeMm3)),
        words.layers(of.layers),
        sources[of.volumeSource ?? ''] ?? '',
      ]
    : [];
  const redo = isRedo ? [words.isRedo] : mayRedo ? [words.mayRedo] : [];
  return <>{[...parts, ...redo].filter((part) => part !== '').join(' · ')}</>;
}

/** What the chart has on this tooth already. */
function useEarlier(of: RestorationDraft): readonly Earlier[] {
  const { draft } = useChairside();
  const online = useOnline();
  const [chart] = useDebouncedValue(draft.chartReference.trim(), 400);
  const query = useQuery({ ...earlierQuery(chart), enabled: online && chart !== '' });
  const tooth = formatTooth(of.tooth, 'iso');
  const items = chart === draft.chartReference.trim() ? (query.data?.items ?? []) : [];
  return items.filter((each) => each.tooth === tooth);
}

interface RedoProps extends Props {
  readonly earlier: readonly Earlier[];
  readonly error: string | undefined;
}

function Redo({ of, earlier, error, onChange }: RedoProps) {
  const t = useText();
  const format = useFormat();
  const words = t.chairside.more;
  const reasons: Readonly<Record<string, string>> = t.chairside.restoration.reasons;
  if (earlier.length === 0 && of.redoOf === undefined && error === undefined) return null;
  return (
    <div id={`control-${ofRestoration(of.key, 'redoOf')}`} className={css.wide}>
      <SelectField
        label={words.redo}
        hint={words.redoHint}
        empty={words.noRedo}
        name={ofRestoration(of.key, 'redoOf')}
        value={of.redoOf ?? ''}
        error={error}
        choices={earlier.map((each) => ({
          value: each.restorationId,
          label: words.earlier(
            format.day(each.visitedOn),
            each.surfaces,
            reasons[each.reason] ?? each.reason,
            each.redone,
          ),
        }))}
        onValue={(id) => onChange({ redoOf: id === '' ? undefined : id })}
      />
    </div>
  );
}
