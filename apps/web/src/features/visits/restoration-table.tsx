import { Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import type { Text } from '../../text/text.js';
import { useText } from '../../text/text-provider.js';
import { type Column, DataTable } from '../../ui/data-table.js';
import { Section } from '../../ui/section.js';
import { Money } from '../../ui/values.js';
import type { Visit } from './api/get-visit.js';
import css from './visits.module.css';

type Restoration = Visit['restorations'][number];

/** What was made, and what each cost. */
export function RestorationTable({ visit }: { readonly visit: Visit }) {
  const t = useText();
  const may = useMay();
  const words = t.visits.visit;
  const money = (
    id: keyof Restoration['cost'] & ('own' | 'shared' | 'retake' | 'total'),
    wideOnly: boolean,
  ): Column<Restoration> => ({
    id,
    head: words[id],
    align: 'end',
    wideOnly,
    cell: (each) => <Money value={each.cost[id]} />,
  });
  const columns: Column<Restoration>[] = [
    {
      id: 'restoration',
      head: words.restoration,
      cell: (each) => <RestorationWords of={each} visit={visit} />,
    },
    money('own', false),
    money('shared', false),
    money('retake', visit.retakeCost === '0.00'),
    money('total', false),
  ];
  if (may('costs.read')) {
    columns.push({
      id: 'explain',
      head: '',
      cell: (each) =>
        each.id !== null && (
          <Link
            to="/costs/restorations/$restorationId"
            params={{ restorationId: each.id }}
            className="tb-screen-only"
          >
            {words.explain}
          </Link>
        ),
    });
  }
  return (
    <Section
      title={words.restorations}
      {...(visit.restorations.length > 1 ? { hint: words.shareKeys[visit.costShareKey] } : {})}
    >
      <DataTable
        label={words.restorations}
        columns={columns}
        rows={visit.restorations}
        rowKey={(each) => each.id ?? each.tooth + each.surfaces}
      />
    </Section>
  );
}

function RestorationWords({ of, visit }: { readonly of: Restoration; readonly visit: Visit }) {
  const t = useText();
  return (
    <>
      <span className={css.name}>
        {of.tooth} {of.surfaces}
      </span>
      <span className={css.quiet}>{factsOf(t, of, visit).join(', ')}</span>
      <span className={css.quiet}>{useCavityWords(of)}</span>
      <span className={css.quiet}>
        {of.template.name}, {t.visits.visit.version(of.templateVersion)}
      </span>
      <Again of={of} />
    </>
  );
}

/** '12 mm³, 1 layer, planning value' */
function useCavityWords(of: Restoration): string {
  const words = useText().visits.visit;
  const format = useFormat();
  const sources: Readonly<Record<string, string>> = words.sources;
  const sides = [of.lengthMm, of.widthMm, of.depthMm];
  const measured =
    of.lengthMm === null ? [] : [sides.map((mm) => format.number(mm ?? '')).join(' × ')];
  return [
    words.volume(format.number(of.volumeMm3)),
    words.layers(of.layers),
    [sources[of.volumeSource ?? ''], ...measured].filter(Boolean).join(' '),
  ]
    .filter((part) => part !== '')
    .join(', ');
}

/** The way to what it does again, and to what did it again. */
function Again({ of }: { readonly of: Restoration }) {
  const words = useText().visits.visit;
  const format = useFormat();
  const others = [
    ...(of.redoOf ? [{ ...of.redoOf, words: words.redoOf }] : []),
    ...of.redoneBy.map((each) => ({ ...each, words: words.redoneBy })),
  ];
  return (
    <>
      {others.map((other) => (
        <Link
          key={other.restorationId}
          to="/visits/$visitId"
          params={{ visitId: other.visitId }}
          className={css.again}
        >
          {other.words(format.day(other.visitedOn))}
        </Link>
      ))}
    </>
  );
}

function factsOf(t: Text, of: Restoration, { usage }: Visit): string[] {
  const words = t.visits.visit;
  const reasons: Readonly<Record<string, string>> = t.visits.reasons;
  const shades = of.shades.map(
    (id) => usage.find(({ consumable }) => consumable.id === id)?.consumable.shade,
  );
  return [
    of.cavityClass === null ? words.noClass : words.class(of.cavityClass),
    reasons[of.reason] ?? of.reason,
    ...shades.flatMap((shade) => shade ?? []),
    ...(of.attempts > 1 ? [words.attempts(of.attempts)] : []),
  ];
}
