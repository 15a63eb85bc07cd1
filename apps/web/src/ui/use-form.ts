import { type FormEvent, useRef, useState } from 'react';
import { isNotSignedIn, type Problem, ProblemError } from '../api/problem.js';
import { useText } from '../text/text-provider.js';
import { problemWords } from './problem-words.js';

/** A sentence for each wrong field, by the path by which the service knows the field. */
export type FieldErrors = Readonly<Record<string, string | undefined>>;

interface FormOptions<V extends object, R> {
  /** Keys are the field paths of the request, e.g. `'owner.password'`. */
  readonly initial: V;
  /** What can be seen to be wrong without asking the service. */
  readonly check?: (values: V) => FieldErrors;
  readonly send: (values: V) => Promise<R>;
  readonly onDone?: (result: R, values: V) => void;
  /** The field a path of the service belongs to, where the form names it otherwise. */
  readonly fieldOf?: (path: string) => string;
  /** A sentence of the form's own for a problem. */
  readonly explain?: (problem: Problem) => string | undefined;
}

/** The part of V whose values are text. */
type TextKey<V> = { [K in keyof V]: V[K] extends string ? K : never }[keyof V] & string;
type FlagKey<V> = { [K in keyof V]: V[K] extends boolean ? K : never }[keyof V] & string;

/** What a field component needs; `form.field('name')` makes it. */
export interface FieldProps {
  readonly name: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  readonly error: string | undefined;
}

export interface FlagProps {
  readonly name: string;
  readonly checked: boolean;
  readonly onChecked: (checked: boolean) => void;
}

interface Sentences {
  readonly fields: FieldErrors;
  /** What belongs to no field. */
  readonly rest: readonly string[];
}

interface Trouble extends Sentences {
  /** How often sending came to nothing: each time the eye is led to what is wrong, and only then. */
  readonly refusals: number;
}

const NO_TROUBLE: Trouble = { fields: {}, rest: [], refusals: 0 };

function given(errors: FieldErrors): FieldErrors {
  return Object.fromEntries(Object.entries(errors).filter(([, words]) => words !== undefined));
}

function told({ refusals }: Trouble, { fields, rest }: Sentences): Trouble {
  const wrong = Object.keys(fields).length + rest.length;
  return { fields, rest, refusals: wrong === 0 ? refusals : refusals + 1 };
}

function cleared({ fields, refusals }: Trouble, name: string): Trouble {
  return { fields: given({ ...fields, [name]: undefined }), rest: [], refusals };
}

/** Values, what is wrong with them, and sending them once. Show it with `<Form form={form}>`. */
export function useForm<V extends object, R>(options: FormOptions<V, R>) {
  const { initial, check, send, onDone } = options;
  const t = useText();
  const [values, setValues] = useState(initial);
  const [trouble, setTrouble] = useState(NO_TROUBLE);
  const [isSending, setSending] = useState(false);
  const sending = useRef(false);

  const tell = (what: Sentences) => setTrouble((old) => told(old, what));
  const clear = (name: string) => setTrouble((old) => cleared(old, name));

  const set = <K extends keyof V & string>(name: K, value: V[K]) => {
    setValues((old) => ({ ...old, [name]: value }));
    clear(name);
  };

  const refused = (error: unknown): Sentences => {
    const words = problemWords(t, error);
    if (words === undefined) throw error;
    if (!(error instanceof ProblemError)) return { fields: {}, rest: [words] };
    const own = options.explain?.(error.problem);
    if (own !== undefined) return { fields: {}, rest: [own] };
    const fields: Record<string, string> = {};
    const rest: string[] = [];
    for (const { field, message } of error.problem.errors ?? []) {
      const name = options.fieldOf?.(field) ?? field;
      const sentence = t.problems.fieldWords(message);
      if (name in values || options.fieldOf !== undefined) fields[name] ??= sentence;
      else rest.push(`${field}: ${message}`);
    }
    const onlyFields = Object.keys(fields).length > 0 && rest.length === 0;
    return { fields, rest: onlyFields ? [] : [words] };
  };

  const sendNow = async () => {
    if (sending.current) return;
    const wrong = given(check?.(values) ?? {});
    tell({ fields: wrong, rest: [] });
    if (Object.keys(wrong).length > 0) return;
    sending.current = true;
    setSending(true);
    try {
      const result = await send(values);
      onDone?.(result, values);
    } catch (error) {
      if (!isNotSignedIn(error)) tell(refused(error));
    } finally {
      sending.current = false;
      setSending(false);
    }
  };

  return {
    values,
    set,
    field: <K extends TextKey<V>>(name: K): FieldProps => ({
      name,
      value: values[name] as string,
      onValue: (value) => set(name, value as V[K]),
      error: trouble.fields[name],
    }),
    flag: <K extends FlagKey<V>>(name: K): FlagProps => ({
      name,
      checked: values[name] as boolean,
      onChecked: (checked) => set(name, checked as V[K]),
    }),
    /** For fields inside lists: `form.errorAt('lines[2].packs')`. */
    errorAt: (path: string) => trouble.fields[path],
    clearAt: clear,
    fieldErrors: trouble.fields,
    rest: trouble.rest,
    refusals: trouble.refusals,
    isSending,
    submit: (event?: FormEvent) => {
      event?.preventDefault();
      void sendNow();
    },
    reset: (to: V = initial) => {
      setValues(to);
      setTrouble(NO_TROUBLE);
    },
  };
}

/** Any form, whatever its values: what `<Form>` and `<SubmitButton>` need of it. */
export type AnyForm = Pick<
  ReturnType<typeof useForm<object, unknown>>,
  'fieldErrors' | 'rest' | 'refusals' | 'isSending' | 'submit'
>;
