import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { CheckField, SelectField, TextField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import type { Location } from './api/list-locations.js';
import { changeLocation, createLocation } from './api/save-location.js';
import { withinPlace } from './place-tree.js';

const route = getRouteApi('/in/setup/locations');
const KINDS = ['store', 'fridge', 'room', 'drawer'] as const;

interface Places {
  readonly places: readonly Location[];
}

/** The dialogs that the address opens: a new place, or changing one. */
export function LocationDialogs({ places }: Places) {
  const t = useText();
  const w = t.setupLocations;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const close = () =>
    void navigate({
      search: (old) => ({ ...old, new: undefined, below: undefined, edit: undefined }),
    });
  const above = places.find(({ id }) => id === search.below);
  const edited = places.find(({ id }) => id === search.edit);
  return (
    <>
      <Dialog
        title={above ? w.addBelow(above.name) : w.addTitle}
        opened={search.new !== undefined}
        onClose={close}
      >
        <LocationForm places={places} parentId={above?.id ?? ''} onClose={close} />
      </Dialog>
      <Dialog
        title={edited ? t.setup.changeOf(edited.name) : t.setup.change}
        opened={edited !== undefined}
        onClose={close}
      >
        {edited && (
          <LocationForm
            places={places}
            place={edited}
            parentId={edited.parentId ?? ''}
            onClose={close}
          />
        )}
      </Dialog>
    </>
  );
}

interface Props extends Places {
  readonly place?: Location;
  readonly parentId: string;
  readonly onClose: () => void;
}

type Values = { name: string; kind: Location['kind']; parentId: string; active: boolean };

function useLocationForm({ place, parentId, onClose }: Props) {
  const t = useText();
  const { book } = useBooking({
    send: (values: Values, key) => {
      const body = {
        name: values.name.trim(),
        kind: values.kind,
        parentId: values.parentId || null,
      };
      return place
        ? changeLocation(place.id, { ...body, active: values.active })
        : createLocation({ ...body, id: key });
    },
    changes: [['locations']],
  });
  const initial: Values = {
    name: place?.name ?? '',
    kind: place?.kind ?? (parentId === '' ? 'store' : 'room'),
    parentId,
    active: place?.active ?? true,
  };
  return useForm({
    initial,
    check: ({ name }) => ({ name: name.trim() === '' ? t.ui.required : undefined }),
    send: book,
    explain: ({ code }) =>
      code === 'location_holds_stock' ? t.setupLocations.holdsStock : undefined,
    onDone: ({ name }) => {
      notify({ tone: 'done', text: t.setup.saved(name) });
      onClose();
    },
  });
}

function LocationForm(props: Props) {
  const { places, place, onClose } = props;
  const t = useText();
  const w = t.setupLocations;
  const form = useLocationForm(props);
  const inside = place ? withinPlace(places, place.id) : new Set<string>();
  const parents = places.filter(
    ({ id, active }) => !inside.has(id) && (active || id === form.values.parentId),
  );
  return (
    <Form form={form}>
      <TextField label={t.setup.name} {...form.field('name')} maxLength={120} data-autofocus />
      <SelectField
        label={w.kind}
        choices={KINDS.map((kind) => ({ value: kind, label: w.kinds[kind] }))}
        {...form.field('kind')}
      />
      <SelectField
        label={w.parent}
        hint={w.parentHint}
        empty={w.noParent}
        choices={parents.map(({ id, name }) => ({ value: id, label: name }))}
        {...form.field('parentId')}
      />
      {place && (
        <CheckField label={t.setup.inUse} hint={t.setup.inUseHint} {...form.flag('active')} />
      )}
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
