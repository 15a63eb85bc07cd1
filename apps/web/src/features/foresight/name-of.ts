interface Named {
  readonly name: string;
  readonly shade: string | null;
  readonly size: string | null;
  readonly grit: string | null;
}

/** 'Paste, Body 2': a consumable with what tells it from its sisters. */
export function nameOf({ name, shade, size, grit }: Named): string {
  return [name, shade, size, grit].filter((part) => part !== null && part !== '').join(', ');
}
