import { Link } from '@tanstack/react-router';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import type { Text } from '../../text/text.js';
import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import { useScrollStop } from '../../ui/use-scroll-stop.js';
import { LotNumber, Money } from '../../ui/values.js';
import type { UsageLine, Visit } from './api/get-visit.js';
import { groupLines, type LineGroup } from './group-lines.js';
import css from './visits.module.css';

/** What was used for what, out of which lots: planned, placed, dispensed and charged kept apart. */
export function UsageTable({ visit }: { readonly visit: Visit }) {
  const t = useText();
  const words = t.visits.visit;
  const scroller = useScrollStop();
  return (
    <Section title={words.usage} hint={words.usageHint}>
      <section ref={scroller} className={css.scroller} aria-label={words.usage}>
        <table className={css.usage} aria-label={words.usage}>
          <thead>
            <tr>
              <th scope="col">{words.what}</th>
              <th scope="col">{words.planned}</th>
              <th scope="col">{words.dispensed}</th>
              <th scope="col">{words.placed}</th>
              <th scope="col">{words.charged}</th>
              <th scope="col">{words.cost}</th>
              <th scope="col">{words.lots}</th>
            </tr>
          </thead>
          {groupLines(visit.usage).map((group) => (
            <tbody key={group.id}>
              <tr>
                <th scope="rowgroup" colSpan={7}>
                  {titleOf(t, group, visit)}
                </th>
              </tr>
              {group.lines.map((line) => (
                <Row key={line.id} line={line} />
              ))}
            </tbody>
          ))}
        </table>
      </section>
    </Section>
  );
}

function titleOf(t: Text, { restoration, tooth, attempt }: LineGroup, visit: Visit): string {
  const words = t.visits.visit;
  if (tooth !== null) return words.forTooth(tooth);
  const of = restoration === null ? undefined : visit.restorations[restoration];
  if (!of) return words.forVisit;
  const name = `${of.tooth} ${of.surfaces}`;
  return attempt > 1 ? words.forRetake(name, attempt - 1) : name;
}

function Row({ line }: { readonly line: UsageLine }) {
  const t = useText();
  const format = useFormat();
  const { consumable, planned, dispensed, placed, charged } = line;
  const { unit } = consumable;
  const words = t.visits.visit;
  return (
    <tr>
      <td>
        {consumable.name}
        {consumable.shade !== null && `, ${consumable.shade}`}
        {line.driver === null && <span className={css.quiet}>{words.added}</span>}
      </td>
      <td data-head={words.planned}>{format.quantity(planned, unit)}</td>
      <td data-head={words.dispensed} className={dispensed === planned ? undefined : css.differs}>
        {format.quantity(dispensed, unit)}
      </td>
      <td data-head={words.placed}>{format.quantity(placed, unit)}</td>
      <td data-head={words.charged}>
        {format.quantity(charged, unit)}
        {line.sharedDose !== null && (
          <span className={css.quiet}>
            {words.sharedDose(
              format.quantity(line.sharedDose.charged, unit),
              line.sharedDose.lines,
            )}
          </span>
        )}
      </td>
      <td data-head={words.cost}>
        <Money value={line.cost} />
      </td>
      <td data-head={words.lots}>
        <Lots line={line} />
      </td>
    </tr>
  );
}

function Lots({ line }: { readonly line: UsageLine }) {
  const t = useText();
  const may = useMay();
  const format = useFormat();
  const words = t.visits.visit;
  const sureness: Readonly<Record<string, string>> = words.sureness;
  return (
    <>
      {line.taken.map((taken) => (
        <div key={taken.movementId ?? taken.layerId}>
          {may('trace.read') ? (
            <Link to="/trace" search={{ lotId: taken.lotId }}>
              <LotNumber value={taken.lotNumber} />
            </Link>
          ) : (
            <LotNumber value={taken.lotNumber} />
          )}
          <span className={css.quiet}>
            {line.taken.length > 1 && `${format.quantity(taken.quantity, line.consumable.unit)}, `}
            {taken.lotNumber !== null && (sureness[taken.sureness] ?? taken.sureness)}
            {taken.outOfOrder && `, ${words.outOfOrder}`}
          </span>
        </div>
      ))}
      {line.shortfall !== '0' && (
        <span className={css.short}>
          {words.short(format.quantity(line.shortfall, line.consumable.unit))}
        </span>
      )}
    </>
  );
}
