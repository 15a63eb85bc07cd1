import { Button } from '@mantine/core';
import { useQuery, useQueryClient } from '@tanstack/react-query';
import { answerOf, api, type Shape } from '../../api/client.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { SearchSelectField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Loaded } from '../../ui/loaded.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { type Pack, packsQuery } from './list-packs.js';
import type { Reading } from './read-scan.js';
import css from './scan.module.css';
import type { Match } from './thing.js';

interface Props {
  readonly reading: Reading;
  /** Several presentations that carry the code; none: it is new. */
  readonly matches: readonly Match[];
  readonly onClose: () => void;
  readonly onMatch: (match: Match) => void;
  /** The label can be read again: its product is known now. */
  readonly onRemembered: () => void;
}

/** Which presentation a code stands for: chosen among several, or said once and remembered. */
export default function WhichDialog(props: Props) {
  const { scan } = useText();
  const code = props.reading.label?.deviceIdentifier ?? '';
  const packs = useQuery(packsQuery);
  return (
    <Dialog title={scan.which.title} opened onClose={props.onClose}>
      {props.matches.length > 0 ? (
        <Several {...props} />
      ) : (
        <div className={css.form}>
          <p>{scan.which.lead(code)}</p>
          <Loaded query={packs}>{(all) => <NewCode {...props} code={code} packs={all} />}</Loaded>
        </div>
      )}
    </Dialog>
  );
}

function Several({ matches, onMatch }: Props) {
  const { which } = useText().scan;
  return (
    <>
      <p>{which.several}</p>
      <div className={css.choices}>
        {matches.map((match) => (
          <Button key={match.presentationId} variant="default" onClick={() => onMatch(match)}>
            {`${match.consumableName}, ${match.presentationName}`}
          </Button>
        ))}
      </div>
    </>
  );
}

interface NewProps extends Props {
  readonly code: string;
  readonly packs: readonly Pack[];
}

function NewCode({ code, packs, onRemembered, onClose }: NewProps) {
  const { scan, ui } = useText();
  const queries = useQueryClient();
  const packOf = (id: string) => packs.find((pack) => pack.presentation.id === id);
  const form = useForm({
    initial: { presentationId: '' },
    check: ({ presentationId }) => ({
      presentationId: presentationId === '' ? ui.choose : undefined,
    }),
    send: async ({ presentationId }) => {
      const saved = await remember(presentationId, code);
      await queries.invalidateQueries({ queryKey: ['presentations'] });
      return saved;
    },
    onDone: ({ id }) => {
      const text = scan.which.saved(packOf(id)?.name ?? '');
      notify({ tone: 'done', text });
      onRemembered();
    },
  });
  const before = packOf(form.values.presentationId)?.presentation.deviceIdentifier;
  return (
    <Form form={form}>
      <div className={css.form}>
        <SearchSelectField
          label={scan.which.field}
          choices={packs.map(({ presentation, name }) => ({ value: presentation.id, label: name }))}
          {...form.field('presentationId')}
        />
        {before && <p className={css.more}>{scan.which.replaces(before)}</p>}
      </div>
      <FormActions>
        <SubmitButton form={form}>{scan.which.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

function remember(id: string, deviceIdentifier: string): Promise<Shape<'PresentationDto'>> {
  const body = { deviceIdentifier };
  return answerOf(api.PATCH('/api/presentations/{id}', { params: { path: { id } }, body }));
}
