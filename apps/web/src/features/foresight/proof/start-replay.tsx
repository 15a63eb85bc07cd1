import { getRouteApi } from '@tanstack/react-router';
import { useBooking } from '../../../api/use-booking.js';
import { useText } from '../../../text/text-provider.js';
import { DateField } from '../../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../../ui/form.js';
import { useForm } from '../../../ui/use-form.js';
import { startReplay } from '../api/replays.js';
import css from './proof.module.css';

const route = getRouteApi('/in/ordering/proof');

/** From which day on, or as usual; then it runs by itself. */
export function StartReplay() {
  const t = useText();
  const navigate = route.useNavigate();
  const words = t.foresight.proof.start;
  const { book } = useBooking({ send: startReplay, changes: [['reorder', 'replays']] });
  const form = useForm({
    initial: { from: '' },
    send: ({ from }) => book(from === '' ? {} : { from }),
    onDone: ({ id }) =>
      void navigate({ search: (old) => ({ ...old, replay: id, show: undefined }), replace: true }),
  });
  return (
    <div className={`${css.start ?? ''} tb-screen-only`}>
      <Form form={form}>
        <DateField label={words.from} hint={words.fromHint} {...form.field('from')} />
        <FormActions>
          <SubmitButton form={form}>{words.run}</SubmitButton>
        </FormActions>
      </Form>
    </div>
  );
}
