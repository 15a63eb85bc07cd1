import { VisuallyHidden } from '@mantine/core';
import { useElementSize, useMergedRef } from '@mantine/hooks';
import { useQuery } from '@tanstack/react-query';
import { formatQuantity, quantityFromMicro } from '#lib/measure';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import { useScrollStop } from '../../ui/use-scroll-stop.js';
import { arrivalsQuery } from './api/list-arrivals.js';
import type { LotTrace } from './api/trace-lot.js';
import { BAR, layOut, type PlacedNode } from './lay-out.js';
import { type Path, type PathNode, pathOf } from './path.js';
import css from './path-drawing.module.css';

/** From the supplier over the shelves to where it is now, drawn and in words. */
export function PathSection({ trace }: { readonly trace: LotTrace }) {
  const t = useText();
  const arrivals = useQuery(arrivalsQuery(trace.lot.id));
  if (arrivals.data === undefined) return null;
  const path = pathOf(trace, arrivals.data.items);
  if (path.links.length === 0) return null;
  return (
    <Section title={t.trace.path.title} hint={t.trace.path.hint}>
      <Drawing path={path} trace={trace} />
    </Section>
  );
}

/** About as wide as one letter of a name. */
const LETTER = 7;

/** On wide screens and on paper the words would grow with the picture. */
const [NARROWEST, WIDEST] = [560, 1000];

function Drawing({ path, trace }: { readonly path: Path; readonly trace: LotTrace }) {
  const t = useText();
  const { ref, width } = useElementSize();
  const box = useMergedRef(ref, useScrollStop());
  const format = useFormat();
  const { unit } = trace.lot.consumable;
  const nameOf = useNames(trace);
  const amount = (micro: bigint) => format.quantity(formatQuantity(quantityFromMicro(micro)), unit);
  const wide = width === 0 ? 760 : Math.max(NARROWEST, Math.min(width, WIDEST));
  const drawing = layOut(path, wide);
  const byId = new Map(path.nodes.map((node) => [node.id, nameOf(node)]));
  const words = t.trace.path;
  const labelOf = (node: PathNode, quantity: string) =>
    node.kind === 'delivery' ? `${format.dayShort(node.receivedOn)}: ${quantity}` : quantity;
  return (
    <figure ref={box} className={css.figure}>
      <svg
        className={css.drawing}
        style={{ maxWidth: wide }}
        viewBox={`0 -4 ${wide} ${drawing.height + 8}`}
        role="img"
        aria-label={words.picture(format.quantity(trace.mass.received, unit))}
      >
        {drawing.links.map(({ link, d, wide: stroke }) => (
          <path key={`${link.from} ${link.to}`} className={css.link} d={d} strokeWidth={stroke} />
        ))}
        {drawing.nodes.map((placed) => (
          <Node
            key={placed.node.id}
            placed={placed}
            name={nameOf(placed.node)}
            amount={labelOf(placed.node, amount(placed.node.amount))}
            letters={Math.floor((drawing.apart - 26) / LETTER)}
          />
        ))}
      </svg>
      <VisuallyHidden component="figcaption">
        {words.asList}
        <ul>
          {path.links.map(({ from, to, amount: carried }) => (
            <li key={`${from} ${to}`}>
              {words.link(byId.get(from) ?? '', byId.get(to) ?? '', amount(carried))}
            </li>
          ))}
        </ul>
      </VisuallyHidden>
    </figure>
  );
}

interface NodeProps {
  readonly placed: PlacedNode;
  readonly name: string;
  readonly amount: string;
  /** So many fit before the next column begins. */
  readonly letters: number;
}

function Node({ placed, name, amount, letters }: NodeProps) {
  const fits = placed.node.kind === 'end' || name.length <= letters;
  const { x, y, high, node } = placed;
  const middle = y + Math.max(high, 36) / 2;
  return (
    <g data-end={node.kind === 'end' ? node.end : undefined} className={css.node}>
      <rect x={x} y={y} width={BAR} height={high} rx={1.5} />
      <text x={x + BAR + 8} y={middle - 4}>
        {fits ? name : `${name.slice(0, letters - 1)}…`}
      </text>
      <text className={css.amount} x={x + BAR + 8} y={middle + 14}>
        {amount}
      </text>
    </g>
  );
}

function useNames(trace: LotTrace): (node: PathNode) => string {
  const t = useText();
  const format = useFormat();
  const words = t.trace.path;
  const { visits } = trace.affected;
  return (node) => {
    switch (node.kind) {
      case 'delivery':
        return node.supplier;
      case 'found':
        return words.found;
      case 'place':
        return node.name === '' ? words.unknown : node.name;
      case 'end':
        if (node.end !== 'used') return words[node.end];
        return visits === 1 ? words.usedOne : words.used(format.number(String(visits)));
    }
  };
}
