import { Button } from '@mantine/core';
import { formatSurfaces, formatTooth } from '#lib/dentition';
import { newKey } from '../../../api/idempotency.js';
import { useText } from '../../../text/text-provider.js';
import { Money } from '../../../ui/values.js';
import { useChairside } from '../chairside-context.js';
import { withCopy, withoutRestoration } from '../draft/change-draft.js';
import type { RestorationDraft } from '../draft/draft.js';
import { neighbour } from '../draft/next-tooth.js';
import { ofRestoration } from '../draft/trouble.js';
import { focusControl } from '../parts/focus-control.js';
import { toothName } from '../words.js';
import css from './restoration-card.module.css';

/** Which tooth and what it costs so far; copying it to the next tooth, and taking it out. */
export function CardHead({ of, label }: { readonly of: RestorationDraft; readonly label: string }) {
  const t = useText();
  const { notation, change, plan } = useChairside();
  const words = t.chairside.restoration;
  const next = neighbour(of.tooth, 1);
  const cost = plan.preview?.restorations[plan.keys.indexOf(of.key)]?.cost.total;
  const copy = () => {
    const key = newKey();
    change((draft) => withCopy(draft, of.key, key));
    focusControl(ofRestoration(key, 'surfaces'));
  };
  const remove = () => {
    change((draft) => withoutRestoration(draft, of.key));
    focusControl('tooth');
  };
  const name = `${label} ${formatSurfaces(of.surfaces)}`.trim();
  return (
    <header className={css.head}>
      <h3 className={css.tooth}>
        {name}
        <small>{toothName(t, of.tooth)}</small>
      </h3>
      {cost !== undefined && <Money value={cost} />}
      <div className={css.actions}>
        {next !== undefined && (
          <Button variant="subtle" onClick={copy}>
            {words.copy(formatTooth(next, notation))}
          </Button>
        )}
        <Button variant="subtle" onClick={remove} aria-label={`${words.remove} ${name}`}>
          {words.remove}
        </Button>
      </div>
    </header>
  );
}
