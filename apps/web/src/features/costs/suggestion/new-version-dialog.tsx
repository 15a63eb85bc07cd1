import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import type { Shape } from '../../../api/client.js';
import { useBooking } from '../../../api/use-booking.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { DataTable } from '../../../ui/data-table.js';
import { Dialog } from '../../../ui/dialog.js';
import { notify } from '../../../ui/notice-store.js';
import { useReport } from '../../../ui/use-report.js';
import { createVersion, type Suggestion } from '../api/suggest-version.js';
import { fullNameOf } from '../full-name.js';
import css from './suggestion-section.module.css';

const route = getRouteApi('/in/costs/templates');

interface Props {
  readonly data: Suggestion;
  readonly body: Shape<'SuggestedVersionDto'>;
  readonly opened: boolean;
  readonly onClose: () => void;
}

/** What the next version would say otherwise; nothing is made before somebody says yes. */
export function NewVersionDialog({ data, body, opened, onClose }: Props) {
  const t = useText();
  const report = useReport();
  const navigate = route.useNavigate();
  const words = t.costReports.suggestion;
  const { book, isBooking } = useBooking({
    send: (version: Shape<'SuggestedVersionDto'>) => createVersion(data.templateId, version),
    changes: [['procedure-templates'], ['reports']],
  });
  const make = async () => {
    const made = await book(body);
    onClose();
    notify({
      tone: 'done',
      text: words.made(made.version, data.templateName),
      action: {
        label: words.open,
        run: () =>
          void navigate({
            to: '/setup/templates/$templateId',
            params: { templateId: data.templateId },
          }),
      },
    });
  };
  return (
    <Dialog
      title={words.confirm(data.version + 1, data.templateName)}
      opened={opened}
      onClose={onClose}
      size="lg"
    >
      <p>{words.confirmHint(data.version)}</p>
      <div className={css.differences}>
        <Differences data={data} body={body} />
      </div>
      <p className={css.note}>{words.note(body.note)}</p>
      <div className={css.actions}>
        <Button loading={isBooking} onClick={() => void make().catch(report)} data-autofocus>
          {words.make(data.version + 1)}
        </Button>
        <Button variant="default" onClick={onClose}>
          {words.leave}
        </Button>
      </div>
    </Dialog>
  );
}

interface Difference {
  readonly key: string;
  readonly what: string;
  readonly now: string;
  readonly becomes: string;
}

function Differences({ data, body }: Pick<Props, 'data' | 'body'>) {
  const t = useText();
  const words = t.costReports.suggestion;
  const rows = useDifferences(data, body);
  return (
    <DataTable<Difference>
      label={words.differences}
      rows={rows}
      rowKey={(row) => row.key}
      columns={[
        { id: 'what', head: words.what, cell: (row) => row.what },
        { id: 'now', head: words.now(data.version), align: 'end', cell: (row) => row.now },
        {
          ...{ id: 'becomes', head: words.becomes(data.version + 1), align: 'end' },
          cell: (row) => <strong>{row.becomes}</strong>,
        },
      ]}
    />
  );
}

function useDifferences(data: Suggestion, body: Props['body']): Difference[] {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.suggestion;
  const lines = data.lines.flatMap((line): Difference[] => {
    const amount = (value: string) =>
      line.unit === null ? words.ownUnit(format.number(value)) : format.quantity(value, line.unit);
    const name = line.consumable === null ? words.chosenShade : fullNameOf(line.consumable);
    const row = (part: string, of: string, now: string, next: string) =>
      now === next
        ? []
        : [
            {
              ...{ key: `${line.lineNumber} ${part}`, what: `${name}, ${of}` },
              ...{ now: amount(now), becomes: amount(next) },
            },
          ];
    const { quantities } = t.costs.one;
    return [
      ...row('dispensed', quantities.dispensed, line.dispensed, line.suggestedDispensed),
      ...row('placed', quantities.placed, line.placed, line.suggestedPlaced),
    ];
  });
  const added = data.additions
    .filter(({ suggested }) => suggested)
    .map(({ consumable, dispensed }) => ({
      ...{ key: consumable.id, what: fullNameOf(consumable), now: words.notPlanned },
      becomes: format.quantity(dispensed, consumable.unit),
    }));
  const time = (value: number) => words.minutesOf(format.number(String(value)));
  const took = (what: string, before: number, after: number): Difference[] =>
    before === after ? [] : [{ key: what, what, now: time(before), becomes: time(after) }];
  return [
    ...lines,
    ...added,
    ...took(words.chairTime, data.minutes, body.minutes),
    ...took(words.assistants, data.assistantMinutes, body.assistantMinutes),
  ];
}
