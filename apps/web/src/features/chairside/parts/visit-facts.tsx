import { useQuery } from '@tanstack/react-query';
import { useText } from '../../../text/text-provider.js';
import { DateField, SelectField, TextField } from '../../../ui/fields.js';
import { dentistsQuery } from '../api/list-dentists.js';
import { roomsQuery } from '../api/list-rooms.js';
import { useChairside } from '../chairside-context.js';
import { rememberPlace } from '../draft/device-memory.js';
import css from './visit-facts.module.css';

type Field = 'chartReference' | 'dentistId' | 'locationId' | 'visitedOn';

/** Whose chart, by whom, where, when. Dentist and room are those of the last visit here. */
export function VisitFacts() {
  const t = useText();
  const { draft, change, trouble, settle, today } = useChairside();
  const dentists = useQuery(dentistsQuery).data?.items ?? [];
  const rooms = useQuery(roomsQuery).data?.items ?? [];
  const field = (name: Field) => ({
    name,
    value: draft[name],
    error: trouble[name],
    onValue: (value: string) => {
      settle(name);
      change((old) => ({ ...old, [name]: value }));
      if (name === 'dentistId' || name === 'locationId') rememberPlace({ ...draft, [name]: value });
    },
  });
  const places = [
    ...rooms.filter(({ kind }) => kind === 'room'),
    ...rooms.filter(({ kind }) => kind !== 'room'),
  ];
  return (
    <div className={css.facts}>
      <div id="control-chartReference">
        <TextField label={t.chairside.chart} maxLength={60} {...field('chartReference')} />
      </div>
      <div id="control-dentistId">
        <SelectField
          label={t.chairside.dentist}
          empty={t.ui.choose}
          choices={dentists
            .filter(({ active }) => active)
            .map(({ id, displayName }) => ({ value: id, label: displayName }))}
          {...field('dentistId')}
        />
      </div>
      <div id="control-locationId">
        <SelectField
          label={t.chairside.room}
          empty={t.ui.choose}
          choices={places.map(({ id, name }) => ({ value: id, label: name }))}
          {...field('locationId')}
        />
      </div>
      <div id="control-visitedOn">
        <DateField
          label={t.chairside.day}
          max={today}
          {...field('visitedOn')}
          value={draft.visitedOn || today}
        />
      </div>
    </div>
  );
}
