import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useText } from '../../../text/text-provider.js';
import { templateQuery } from '../api/get-template.js';
import { type Consumable, consumablesQuery } from '../api/list-consumables.js';
import { asksForShades } from '../draft/asks-for-shades.js';
import { recentShades } from '../draft/device-memory.js';
import type { RestorationDraft } from '../draft/draft.js';
import { CheckChips } from '../parts/chips.js';
import css from './restoration-card.module.css';
import { byProduct, nearShades, shadesOf } from './shades.js';

interface Props {
  readonly id: string;
  readonly error: string | undefined;
  readonly of: RestorationDraft;
  readonly onShades: (shades: readonly string[]) => void;
}

/** The pastes, where the template leaves them open; what was used lately comes first. */
export function ShadeChips({ id, error, of, onShades }: Props) {
  const words = useText().chairside.restoration;
  const template = useQuery(templateQuery(of.templateId)).data;
  const shades = shadesOf(useQuery(consumablesQuery).data?.items ?? []);
  const [all, setAll] = useState(false);
  const [recent] = useState(recentShades);
  if (of.templateId === '') return null;
  if (template && !asksForShades(template, of.reason)) {
    return <p className={css.quiet}>{words.noShades}</p>;
  }
  if (shades.length === 0) return <p className={css.quiet}>{words.noneWithShade}</p>;
  const near = nearShades(shades, recent, of.shades);
  const isOpen = all || near.length === 0;
  const toggle = (shade: string) =>
    onShades(
      of.shades.includes(shade)
        ? of.shades.filter((each) => each !== shade)
        : [...of.shades, shade],
    );
  const more = shades.length > near.length && near.length > 0 && (
    <button type="button" className={css.more} aria-expanded={isOpen} onClick={() => setAll(!all)}>
      {all ? words.fewerShades : words.moreShades}
    </button>
  );
  if (!isOpen) {
    return (
      <CheckChips
        id={id}
        error={error}
        label={words.shades}
        chips={near.map((each) => ({ value: each.id, label: <Shade of={each} product /> }))}
        values={of.shades}
        onToggle={toggle}
      >
        {more}
      </CheckChips>
    );
  }
  return (
    <div id={id} className={css.products}>
      <p className={css.shades}>{words.shades}</p>
      {byProduct(shades).map(({ product, shades: ofProduct }, i) => (
        <CheckChips
          key={product}
          id={`${id}-${i}`}
          error={i === 0 ? error : undefined}
          label={product}
          chips={ofProduct.map((each) => ({ value: each.id, label: <Shade of={each} /> }))}
          values={of.shades}
          onToggle={toggle}
        />
      ))}
      {more}
    </div>
  );
}

function Shade({ of, product = false }: { readonly of: Consumable; readonly product?: boolean }) {
  return (
    <>
      {of.shade}
      {product && <small>{of.name}</small>}
    </>
  );
}
