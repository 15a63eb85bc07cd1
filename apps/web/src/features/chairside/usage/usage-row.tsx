import { useState } from 'react';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import type { UsageLine } from '../api/preview-visit.js';
import { useChairside } from '../chairside-context.js';
import { isSame } from '../draft/amounts.js';
import { ofLine } from '../draft/trouble.js';
import { consumableName } from '../words.js';
import { LineEditor } from './line-editor.js';
import type { OwnLine } from './usage-groups.js';
import css from './usage-panel.module.css';

/** One consumable of the visit: how much, from which lot. A tap opens it for changes. */
export function UsageRow({ line }: { readonly line: OwnLine }) {
  const t = useText();
  const format = useFormat();
  const { draft, trouble } = useChairside();
  const [open, setOpen] = useState(false);
  const { key, of } = line;
  const name = consumableName(of.consumable);
  const added = draft.added.find((each) => each.key === key);
  const amount = draft.amounts[key] ?? added?.dispensed ?? of.dispensed;
  const changed = !isSame(amount, of.planned) && added === undefined;
  const words = t.chairside.usage;
  const wrong = trouble[ofLine(key)];
  return (
    <li className={css.line}>
      <button type="button" className={css.row} aria-expanded={open} onClick={() => setOpen(!open)}>
        <span className={css.what}>{name}</span>
        <span className={css.amount} data-changed={changed || undefined}>
          {isSame(amount, '0') ? words.unused : format.quantity(amount, of.consumable.unit)}
        </span>
        <LotWords of={of} />
      </button>
      {open && <LineEditor line={line} name={name} amount={amount} wrong={wrong} />}
      {!open && wrong !== undefined && <p className={css.wrong}>{wrong}</p>}
    </li>
  );
}

function LotWords({ of }: { readonly of: UsageLine }) {
  const t = useText();
  const format = useFormat();
  const words = t.chairside.usage;
  const sureness: Readonly<Record<string, string>> = words.sureness;
  const lots = new Set(
    of.taken.map(({ lotNumber, sureness: sure }) =>
      lotNumber === null ? words.noLot : `${words.lot(lotNumber)} · ${sureness[sure] ?? sure}`,
    ),
  );
  const isShort = !isSame(of.shortfall, '0');
  const { sharedDose } = of;
  const whole = !isSame(of.charged, of.dispensed) && !isShort && sharedDose === null;
  return (
    <>
      {lots.size > 0 && <span className={css.lots}>{[...lots].join(', ')}</span>}
      {whole && (
        <span className={css.lots}>
          {words.charged(format.quantity(of.charged, of.consumable.unit))}
        </span>
      )}
      {sharedDose !== null && (
        <span className={css.lots}>
          {words.sharedDose(
            format.quantity(sharedDose.charged, of.consumable.unit),
            sharedDose.lines,
            format.quantity(of.charged, of.consumable.unit),
          )}
        </span>
      )}
      {of.taken.some(({ outOfOrder }) => outOfOrder) && (
        <span className={css.note}>{words.outOfOrder}</span>
      )}
      {isShort && (
        <span className={css.note}>
          {of.taken.length === 0
            ? words.shortfallAll
            : words.shortfall(format.quantity(of.shortfall, of.consumable.unit))}
        </span>
      )}
    </>
  );
}
