/** A UUID in 22 letters instead of 36, for addresses: base64url of its bytes. */
export function shortId(id: string): string {
  const bytes = id.replaceAll('-', '').match(/../g) ?? [];
  const letters = String.fromCharCode(...bytes.map((byte) => Number.parseInt(byte, 16)));
  return btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** The UUID again; undefined for what `shortId` cannot have written. */
export function longId(text: string): string | undefined {
  if (!/^[\w-]{22}$/.test(text)) return undefined;
  const letters = atob(`${text.replaceAll('-', '+').replaceAll('_', '/')}==`);
  const hex = [...letters].map((each) => each.charCodeAt(0).toString(16).padStart(2, '0')).join('');
  const id = hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
  return shortId(id) === text ? id : undefined;
}
