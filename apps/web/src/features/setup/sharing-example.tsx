import { formatMoney, money, moneyFromMicro, splitLargestRemainder } from '#lib/measure';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import type { Practice } from './api/practice.js';
import css from './parts.module.css';
import own from './sharing.module.css';

type Key = Practice['costShareKey'];

const KEYS = ['equal', 'minutes', 'surfaces'] as const satisfies readonly Key[];
const TOTAL = money('6.00');
const CENT = money('0.01');

/** Of the two fillings of the example: 40 and 20 minutes, 3 surfaces and 1. */
const WEIGHTS: Readonly<Record<Key, readonly [bigint, bigint]>> = {
  equal: [1n, 1n],
  minutes: [40n, 20n],
  surfaces: [3n, 1n],
};

/** The same visit shared by each of the keys, so that one sees what the choice does. */
export function SharingExample({ chosen }: { readonly chosen: Key }) {
  const w = useText().setupPractice;
  const format = useFormat();
  const parts = KEYS.map((key) => ({
    key,
    shares: splitLargestRemainder(TOTAL, WEIGHTS[key], CENT).map((share) =>
      format.money(formatMoney(moneyFromMicro(share))),
    ),
  }));
  const rows = [w.exampleRows.first, w.exampleRows.second];
  return (
    <div>
      <p className={css.quiet}>{w.example(format.money(formatMoney(TOTAL)))}</p>
      <table className={own.sharing}>
        <thead>
          <tr>
            <th scope="col">{w.exampleHead}</th>
            {parts.map(({ key }) => (
              <th key={key} scope="col" data-chosen={key === chosen || undefined}>
                {w.keys[key]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            <tr key={row}>
              <th scope="row">{row}</th>
              {parts.map(({ key, shares }) => (
                <td key={key} data-chosen={key === chosen || undefined}>
                  {shares[i]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
