import { Drawer } from '@mantine/core';
import { getRouteApi, Link } from '@tanstack/react-router';
import type { ComponentType } from 'react';
import { useMay } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import type { Holding } from '../api/list-holdings.js';
import parts from '../parts/parts.module.css';
import { nameOf } from '../parts/what.js';
import { CountForm } from './count-form.js';
import { HoldForm } from './hold-form.js';
import css from './holding.module.css';
import { HoldingFacts } from './holding-facts.js';
import { MoveForm } from './move-form.js';
import { OpenForm } from './open-form.js';
import { type Action, possibleActions } from './possible.js';
import { ReturnForm } from './return-form.js';
import { WriteOffForm } from './write-off-form.js';

const route = getRouteApi('/in/shelves');

const FORMS: Readonly<Record<Action, ComponentType<{ readonly holding: Holding }>>> = {
  open: OpenForm,
  move: MoveForm,
  'write-off': WriteOffForm,
  return: ReturnForm,
  count: CountForm,
  hold: HoldForm,
};

/** One holding at the side: what it is, what can be done with it, the form of what is being done. */
export function HoldingSheet({ holding }: { readonly holding: Holding | null }) {
  const t = useText();
  const { do: action } = route.useSearch();
  const navigate = route.useNavigate();
  const close = () =>
    void navigate({
      search: (old) => ({
        ...old,
        consumableId: holding?.consumable.id ?? old.consumableId,
        holdingId: undefined,
        do: undefined,
      }),
    });
  return (
    <Drawer
      opened
      onClose={close}
      position="right"
      size="30rem"
      title={
        <span className={css.title}>
          {holding === null ? t.shelves.sheet.gone : nameOf(holding.consumable)}
        </span>
      }
      classNames={{ header: css.header ?? '', body: css.body ?? '' }}
      closeButtonProps={{ 'aria-label': t.ui.close, size: 'lg' }}
      overlayProps={{ backgroundOpacity: 0.35 }}
      transitionProps={{ duration: 120 }}
    >
      {holding === null ? (
        <p>{t.shelves.sheet.goneHint}</p>
      ) : (
        <>
          <HoldingFacts holding={holding} brief={action !== undefined} />
          {action === undefined ? <Ways holding={holding} /> : <Doing {...{ holding, action }} />}
        </>
      )}
    </Drawer>
  );
}

/** The keyboard goes to the first field: when the form comes, and when the sheet opens with it. */
function toFirstField(form: HTMLElement | null): void {
  const field = form?.querySelector<HTMLElement>('input, select, textarea');
  field?.setAttribute('data-autofocus', '');
  field?.focus();
}

function Doing({ holding, action }: { readonly holding: Holding; readonly action: Action }) {
  const { shelves } = useText();
  const possible = possibleActions(holding, useMay()).includes(action);
  const ActionForm = FORMS[action];
  return (
    <section className={css.part} aria-label={shelves.actions[action]}>
      <Link
        from="/shelves"
        to="/shelves"
        search={(old) => ({ ...old, do: undefined })}
        className={parts.back}
      >
        ← {shelves.sheet.others}
      </Link>
      <h3 className={css.heading}>{shelves.actions[action]}</h3>
      {possible ? (
        <div ref={toFirstField} className={css.form}>
          <ActionForm key={`${holding.id} ${action}`} holding={holding} />
        </div>
      ) : (
        <p className={css.explain}>{shelves.sheet.notNow}</p>
      )}
    </section>
  );
}

function Ways({ holding }: { readonly holding: Holding }) {
  const { shelves } = useText();
  const possible = possibleActions(holding, useMay());
  return (
    <>
      {possible.length > 0 && (
        <section className={css.part}>
          <h3 className={css.heading}>{shelves.sheet.whatToDo}</h3>
          <ul className={css.ways}>
            {possible.map((action) => (
              <li key={action}>
                <Link from="/shelves" to="/shelves" search={(old) => ({ ...old, do: action })}>
                  <div>
                    <strong>{shelves.actions[action]}</strong>
                    <span>{shelves.actionHints[action]}</span>
                  </div>
                  <svg viewBox="0 0 8 12" aria-hidden="true">
                    <path d="M1.5 1l5 5-5 5" />
                  </svg>
                </Link>
              </li>
            ))}
          </ul>
        </section>
      )}
      <Origin holding={holding} />
    </>
  );
}

function Origin({ holding }: { readonly holding: Holding }) {
  const { scan, shelves } = useText();
  const { sheet } = shelves;
  const may = useMay();
  return (
    <section className={css.part}>
      <h3 className={css.heading}>{sheet.origin}</h3>
      <div className={css.links}>
        <Link to="/shelves/movements" search={{ layerId: holding.layerId }}>
          {sheet.layer}
        </Link>
        <Link to="/shelves/movements" search={{ lotId: holding.lot.id }}>
          {sheet.lot}
        </Link>
        {may('trace.read') && (
          <Link to="/trace" search={{ lotId: holding.lot.id }}>
            {sheet.trace}
          </Link>
        )}
        <Link to="/shelves/labels" search={{ holdingId: holding.id }}>
          {scan.labels.link}
        </Link>
      </div>
    </section>
  );
}
