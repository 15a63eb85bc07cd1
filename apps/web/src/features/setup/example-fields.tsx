import { Button, CloseButton, NativeSelect } from '@mantine/core';
import {
  CAVITY_CLASSES,
  CAVITY_SIZES,
  formatTooth,
  REASONS,
  type ToothNotation,
} from '#lib/dentition';
import { useText } from '../../text/text-provider.js';
import {
  classesOf,
  type ExampleTooth,
  exampleTeeth,
  MOST_SHADES,
  MOST_TEETH,
  surfacesOf,
  withSurface,
  withTooth,
} from './example.js';
import css from './example.module.css';
import type { Example } from './use-example.js';

/** Choosing the teeth, shades and people of the example. */
export function ExampleFields({ example }: { readonly example: Example }) {
  const w = useText().setupExample;
  const { teeth, setTeeth, staffCount, setStaffCount, notation } = example;
  const replace = (next: ExampleTooth) =>
    setTeeth(teeth.map((each) => (each.place === next.place ? next : each)));
  return (
    <>
      {teeth.map((tooth) => (
        <ToothFields
          key={tooth.place}
          tooth={tooth}
          notation={notation}
          onChange={replace}
          onRemove={
            teeth.length > 1
              ? () => setTeeth(teeth.filter(({ place }) => place !== tooth.place))
              : undefined
          }
        />
      ))}
      {teeth.length < MOST_TEETH && <AddTooth example={example} />}
      <ShadeFields example={example} />
      <NativeSelect
        label={w.people}
        value={String(staffCount)}
        data={['1', '2', '3', '4']}
        onChange={(event) => setStaffCount(event.currentTarget.value)}
      />
    </>
  );
}

/** The neighbour of the last one, with the same work. */
function AddTooth({ example: { teeth, setTeeth } }: { readonly example: Example }) {
  const w = useText().setupExample;
  const add = () => {
    const all = exampleTeeth();
    const last = teeth.at(-1);
    const taken = new Set(teeth.map(({ tooth }) => tooth));
    const next = all.find((tooth) => !taken.has(tooth) && tooth > (last?.tooth ?? 0)) ?? all[0];
    if (last && next !== undefined) setTeeth([...teeth, withTooth(last, next)]);
  };
  return (
    <Button variant="default" onClick={add}>
      {w.addTooth}
    </Button>
  );
}

interface ToothProps {
  readonly tooth: ExampleTooth;
  readonly notation: ToothNotation;
  readonly onChange: (next: ExampleTooth) => void;
  readonly onRemove: (() => void) | undefined;
}

function ToothFields({ tooth: example, notation, onChange, onRemove }: ToothProps) {
  const w = useText().setupExample;
  const { tooth, surfaces } = example;
  const written = formatTooth(tooth, notation);
  return (
    <fieldset className={css.tooth} aria-label={`${w.tooth} ${written}`}>
      <div className={css.pair}>
        <NativeSelect
          label={w.tooth}
          value={String(tooth)}
          data={exampleTeeth().map((each) => ({
            value: String(each),
            label: formatTooth(each, notation),
          }))}
          onChange={(event) => {
            const next = exampleTeeth().find((each) => String(each) === event.currentTarget.value);
            if (next !== undefined) onChange(withTooth(example, next));
          }}
        />
        {onRemove && (
          <CloseButton size={44} aria-label={w.removeTooth(written)} onClick={onRemove} />
        )}
      </div>
      <fieldset className={css.surfaces} aria-label={w.surfacesOf(written)}>
        <legend>{w.surfaces}</legend>
        {surfacesOf(tooth).map((surface) => (
          <button
            key={surface}
            type="button"
            aria-pressed={surfaces.includes(surface)}
            aria-label={`${surface}, ${w.surface[surface]}`}
            title={w.surface[surface]}
            onClick={() => onChange(withSurface(example, surface))}
          >
            {surface}
          </button>
        ))}
      </fieldset>
      <CaseFields example={example} onChange={onChange} />
    </fieldset>
  );
}

interface CaseProps {
  readonly example: ExampleTooth;
  readonly onChange: (next: ExampleTooth) => void;
}

function CaseFields({ example, onChange }: CaseProps) {
  const t = useText();
  const w = t.setupExample;
  const fit = classesOf(example);
  return (
    <div className={css.grid}>
      <NativeSelect
        label={w.cavity}
        value={example.cavityClass ?? ''}
        data={[
          { value: '', label: w.noCavity },
          ...CAVITY_CLASSES.filter((cls) => fit.includes(cls)).map((cls) => ({
            value: cls,
            label: cls,
          })),
        ]}
        onChange={(event) => {
          const cavityClass = fit.find((cls) => cls === event.currentTarget.value);
          onChange({ ...example, cavityClass });
        }}
      />
      <NativeSelect
        label={w.size}
        value={example.size}
        data={CAVITY_SIZES.map((size) => ({ value: size, label: w.sizes[size] }))}
        onChange={(event) => {
          const size = CAVITY_SIZES.find((each) => each === event.currentTarget.value);
          if (size) onChange({ ...example, size });
        }}
      />
      <NativeSelect
        label={w.reason}
        value={example.reason}
        data={REASONS.map((reason) => ({
          value: reason,
          label: t.setupTemplates.reasons[reason],
        }))}
        onChange={(event) => {
          const reason = REASONS.find((each) => each === event.currentTarget.value);
          if (reason) onChange({ ...example, reason });
        }}
      />
      <NativeSelect
        label={w.attempts}
        value={String(example.attempts)}
        data={[1, 2, 3].map((n) => ({ value: String(n), label: w.attemptsOf(n) }))}
        onChange={(event) => onChange({ ...example, attempts: Number(event.currentTarget.value) })}
      />
    </div>
  );
}

function ShadeFields({ example: { palette, shades, setShades } }: { readonly example: Example }) {
  const w = useText().setupExample;
  if (!palette || palette.length === 0) return null;
  const chosen = palette.filter(({ id }) => shades.includes(id));
  return (
    <fieldset className={css.shades}>
      <legend>{w.shades}</legend>
      {chosen.map(({ id, shade, name }) => (
        <span key={id} className={css.chip}>
          {shade}
          <CloseButton
            size={36}
            aria-label={w.removeShade(`${name}, ${shade ?? ''}`)}
            onClick={() => setShades(shades.filter((each) => each !== id))}
          />
        </span>
      ))}
      {chosen.length < MOST_SHADES && (
        <NativeSelect
          aria-label={w.addShade}
          value=""
          data={[
            { value: '', label: w.addShade },
            ...palette
              .filter(({ id }) => !shades.includes(id))
              .map(({ id, name, shade }) => ({ value: id, label: `${shade ?? ''} (${name})` })),
          ]}
          onChange={(event) => {
            const id = event.currentTarget.value;
            if (id !== '') setShades([...shades, id]);
          }}
        />
      )}
    </fieldset>
  );
}
