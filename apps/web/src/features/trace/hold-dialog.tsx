import { Button } from '@mantine/core';
import { useQueryClient } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import type { Shape } from '../../api/client.js';
import { useMay } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { NoteField, SelectField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { type LotStatus, setKitStatus, setLotStatus } from './api/set-lot-status.js';

const route = getRouteApi('/in/trace');

const STATUSES = ['released', 'quarantined', 'recalled'] as const satisfies LotStatus[];

/** Not the kit in which it came. */
const THIS_LOT = 'lot';

/** What a held or released lot changes elsewhere. */
const CHANGES = ['lots', 'stock', 'alerts', 'charts', 'visits', 'layers', 'deliveries'];

interface Props {
  readonly lot: Shape<'LotDto'>;
}

/** Quarantine, recall or release; the address says whether it is open. */
export function HoldDialog({ lot }: Props) {
  const t = useText();
  const may = useMay();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const show = (open: boolean) =>
    void navigate({
      search: (old) => ({ ...old, do: open ? 'hold' : undefined }),
      replace: true,
      resetScroll: false,
    });
  if (!may('lots.hold')) return null;
  return (
    <Dialog title={t.trace.hold.dialog} opened={search.do === 'hold'} onClose={() => show(false)}>
      <HoldForm lot={lot} onClose={() => show(false)} onReopen={() => show(true)} />
    </Dialog>
  );
}

interface FormProps extends Props {
  readonly onClose: () => void;
  readonly onReopen: () => void;
}

function HoldForm({ lot, onClose, onReopen }: FormProps) {
  const t = useText();
  const queries = useQueryClient();
  const words = t.trace.hold;
  const initial: { of: string; status: LotStatus; note: string } = {
    of: THIS_LOT,
    status: lot.status === 'released' ? 'quarantined' : 'released',
    note: '',
  };
  const form = useForm({
    initial,
    check: ({ of, status, note }) => ({
      status:
        of === THIS_LOT && status === lot.status ? words.same(t.trace.statuses[status]) : undefined,
      note: note.trim() === '' ? t.ui.required : undefined,
    }),
    send: async ({ of, status, note }) => {
      const body = { status, note: note.trim() };
      const answer = await (of === THIS_LOT ? setLotStatus(lot.id, body) : setKitStatus(of, body));
      await Promise.all(CHANGES.map((noun) => queries.invalidateQueries({ queryKey: [noun] })));
      return answer;
    },
    onDone: ({ status }) => {
      onClose();
      notify({
        tone: 'done',
        text: words.done(lot.lotNumber ?? '', t.trace.statuses[status]),
        action: { label: words.change, run: onReopen },
      });
    },
  });
  return (
    <Form form={form}>
      {lot.kits.length > 0 && (
        <SelectField
          label={words.of}
          choices={[
            { value: THIS_LOT, label: words.onlyLot },
            ...lot.kits.map(({ kitLotId, lotNumber }) => ({
              value: kitLotId,
              label: words.wholeKit(lotNumber ?? t.trace.lotNotStated),
            })),
          ]}
          {...form.field('of')}
        />
      )}
      <SelectField
        label={words.what}
        choices={STATUSES.map((status) => ({ value: status, label: words.choices[status] }))}
        {...form.field('status')}
      />
      <NoteField label={words.note} hint={words.noteHint} maxLength={500} {...form.field('note')} />
      <FormActions>
        <SubmitButton form={form}>{words.confirm}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
