import { Checkbox } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { useFormat } from '../../../app/use-format.js';
import { useSpeaking, useText } from '../../../text/text-provider.js';
import { WholeField } from '../../../ui/fields.js';
import { FieldGroup, Form, SubmitButton } from '../../../ui/form.js';
import { useForm } from '../../../ui/use-form.js';
import type { Holding } from '../api/list-holdings.js';
import type { Place } from '../api/list-places.js';
import { printLabels } from '../api/print-labels.js';
import { nameOf } from '../parts/what.js';
import css from './labels.module.css';
import { SheetGrid } from './sheet-grid.js';

const route = getRouteApi('/in/shelves/labels');

interface Props {
  readonly places: readonly Place[];
  /** What the address names; null when nothing of it is left. */
  readonly holding: Holding | null | undefined;
}

/** Shows a PDF in a window of its own; where the browser opens none, it is downloaded. */
function openPdf(pdf: Blob, name: string): void {
  const address = URL.createObjectURL(pdf);
  // The window needs the address for as long as it loads; after a minute it has.
  window.setTimeout(() => URL.revokeObjectURL(address), 60_000);
  if (window.open(address, '_blank') !== null) return;
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
}

function copiesOf(typed: string): number | undefined {
  const text = typed.trim();
  const copies = /^\d{1,2}$/.test(text) ? Number(text) : 0;
  return copies >= 1 && copies <= 50 ? copies : undefined;
}

export function LabelsForm({ places, holding }: Props) {
  const { labels } = useText().scan;
  const { locale } = useSpeaking();
  const { locationId, start = '1' } = route.useSearch();
  const navigate = route.useNavigate();
  const [chosen, setChosen] = useState<readonly string[]>(locationId ? [locationId] : []);
  const known = places.filter(({ id }) => chosen.includes(id));
  const form = useForm({
    initial: { copies: '1' },
    check: ({ copies }) => ({
      copies: copiesOf(copies) === undefined ? labels.copiesWrong : undefined,
      locationIds: known.length === 0 && !holding ? labels.nothing : undefined,
    }),
    send: ({ copies }) =>
      printLabels(
        {
          locationIds: known.map(({ id }) => id),
          holdingIds: holding ? [holding.id] : [],
          start: Number(start),
          copies: copiesOf(copies) ?? 1,
        },
        locale.startsWith('de') ? 'de' : 'en',
      ),
    onDone: (pdf) => openPdf(pdf, labels.file),
  });
  const count = (known.length + (holding ? 1 : 0)) * (copiesOf(form.values.copies) ?? 1);
  return (
    <Form form={form}>
      {holding !== undefined && <Stock holding={holding} />}
      <FieldGroup title={labels.places} hint={labels.placesHint}>
        <Places
          places={places}
          chosen={chosen}
          onChosen={(ids) => {
            setChosen(ids);
            form.clearAt('locationIds');
          }}
        />
        {form.errorAt('locationIds') !== undefined && (
          <p role="alert" className={css.wrong}>
            {form.errorAt('locationIds')}
          </p>
        )}
      </FieldGroup>
      {holding === undefined && <p className={css.hint}>{labels.stockHint}</p>}
      <FieldGroup title={labels.where}>
        <SheetGrid
          start={Number(start)}
          count={count}
          onStart={(to) =>
            void navigate({
              search: (old) => ({ ...old, start: String(to) }),
              replace: true,
              resetScroll: false,
            })
          }
        />
      </FieldGroup>
      <div className={css.end}>
        <WholeField label={labels.copies} {...form.field('copies')} />
        <SubmitButton form={form}>{labels.make}</SubmitButton>
        <span aria-live="polite">{labels.count(count)}</span>
      </div>
    </Form>
  );
}

function Stock({ holding }: { readonly holding: Holding | null }) {
  const { scan } = useText();
  const format = useFormat();
  if (holding === null) return <p role="status">{scan.labels.stockGone}</p>;
  const { lot, openedOn, consumable } = holding;
  const parts = [
    nameOf(consumable),
    lot.lotNumber === null ? null : scan.lot(lot.lotNumber),
    openedOn === null ? null : scan.labels.containerOf(format.day(openedOn)),
  ];
  return (
    <FieldGroup title={scan.labels.stock}>
      <p>{parts.filter((part) => part !== null).join(', ')}</p>
    </FieldGroup>
  );
}

interface PlacesProps {
  readonly places: readonly Place[];
  readonly chosen: readonly string[];
  readonly onChosen: (ids: readonly string[]) => void;
}

function Places({ places, chosen, onChosen }: PlacesProps) {
  const { labels } = useText().scan;
  const all = places.length > 0 && places.every(({ id }) => chosen.includes(id));
  return (
    <div className={css.places}>
      <Checkbox
        label={labels.all}
        checked={all}
        onChange={() => onChosen(all ? [] : places.map(({ id }) => id))}
      />
      {places.map(({ id, name }) => (
        <Checkbox
          key={id}
          label={name}
          checked={chosen.includes(id)}
          onChange={(event) =>
            onChosen(
              event.currentTarget.checked ? [...chosen, id] : chosen.filter((one) => one !== id),
            )
          }
        />
      ))}
    </div>
  );
}
