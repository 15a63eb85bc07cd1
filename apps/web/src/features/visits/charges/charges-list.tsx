import { formatMoney, moneyFromMicro } from '#lib/measure';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { micro } from '../../../ui/drawn.js';
import { Figure, Figures } from '../../../ui/figure.js';
import { Money } from '../../../ui/values.js';
import type { Charge } from './api/list-charges.js';
import css from './charges.module.css';
import type { ChargesOfVisit } from './charges-of-visit.js';
import { linkedFee } from './fee-choice.js';

type Restoration = ChargesOfVisit['visit']['restorations'][number];
type Amounts = Pick<Charge, (typeof COLUMNS)[number]>;

const COLUMNS = ['fee', 'planPays', 'patientPays', 'writeOff'] as const;

/** Every restoration with what was asked for it; earlier records stay below what replaced them. */
export function ChargesList({ visit, records, fees }: ChargesOfVisit) {
  const words = useText().visitCharges;
  const counting = records.filter(({ current }) => current);
  return (
    <>
      <ul className={css.list}>
        {visit.restorations.map((made) => {
          const own = records.filter(({ restorationId }) => restorationId === made.id);
          const listed = linkedFee(fees, made);
          return (
            <li key={made.id}>
              <div className={css.line}>
                <MadeWords made={made} />
                <Counting charge={own.find(({ current }) => current)} listed={listed} />
              </div>
              <Records own={own} />
            </li>
          );
        })}
        {counting.length > 1 && (
          <li className={css.total}>
            <div className={css.line}>
              <span className={css.name}>{words.together}</span>
              <Four amounts={totalOf(counting)} />
            </div>
          </li>
        )}
      </ul>
      {counting.length > 0 && <p className={css.law}>{words.law}</p>}
    </>
  );
}

function totalOf(charges: readonly Charge[]): Amounts {
  const added = (name: (typeof COLUMNS)[number]) =>
    formatMoney(moneyFromMicro(charges.reduce((sum, each) => sum + micro(each[name]), 0n)));
  return {
    fee: added('fee'),
    planPays: added('planPays'),
    patientPays: added('patientPays'),
    writeOff: added('writeOff'),
  };
}

function MadeWords({ made }: { readonly made: Restoration }) {
  const t = useText();
  const reasons: Readonly<Record<string, string>> = t.visits.reasons;
  return (
    <div>
      <span className={css.name}>{`${made.tooth} ${made.surfaces}`}</span>
      <span className={css.quiet}>{reasons[made.reason] ?? made.reason}</span>
      <span className={css.quiet}>{made.template.name}</span>
    </div>
  );
}

function Four({ amounts }: { readonly amounts: Amounts }) {
  const words = useText().visitCharges;
  return (
    <div className={css.four}>
      <Figures>
        {COLUMNS.map((name) => (
          <Figure key={name} label={words.columns[name]}>
            <Money value={amounts[name]} />
          </Figure>
        ))}
      </Figures>
    </div>
  );
}

interface CountingProps {
  readonly charge: Charge | undefined;
  readonly listed: ChargesOfVisit['fees'][number] | undefined;
}

function Counting({ charge, listed }: CountingProps) {
  const words = useText().visitCharges;
  const format = useFormat();
  if (charge) return <Four amounts={charge} />;
  return (
    <p className={css.none}>
      {words.notRecorded}{' '}
      {listed?.current
        ? words.listed(format.money(listed.current.fee), listed.code)
        : words.notListed}
    </p>
  );
}

/** Where each record comes from; those that were replaced with what they said. */
function Records({ own }: { readonly own: readonly Charge[] }) {
  const words = useText().visitCharges;
  const format = useFormat();
  if (own.length === 0) return null;
  return (
    <ul className={css.records}>
      {own.map((each) => {
        const code = each.feeCode ?? words.ownAmount;
        const basis = words.basis(code, each.plan?.name, each.stated);
        const who = words.recordedBy(each.recordedBy, format.instant(each.recordedAt));
        return (
          <li key={each.id}>
            {!each.current && (
              <span>
                {words.replaced(
                  format.money(each.fee),
                  format.money(each.planPays),
                  format.money(each.patientPays),
                  format.money(each.writeOff),
                )}{' '}
              </span>
            )}
            {`${basis} ${who}`}
            {each.note !== null && <span className={css.why}>{words.because(each.note)}</span>}
          </li>
        );
      })}
    </ul>
  );
}
