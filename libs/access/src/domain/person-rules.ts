export const SHORTEST_PASSWORD = 10;
const LONGEST_PASSWORD = 200;

/** Sign-in names are kept in lower case, in letters that every keyboard and database agrees on. */
export function normalSignInName(name: string): string {
  return name.trim().toLowerCase();
}

export function signInNameProblem(name: string): string | undefined {
  if (/^[a-z0-9][a-z0-9._@+-]{1,119}$/.test(name)) return undefined;
  return 'must be 2 to 120 letters a-z, digits or . _ @ + -, and begin with a letter or digit';
}

export function displayNameProblem(name: string): string | undefined {
  const length = name.trim().length;
  return length >= 1 && length <= 120 ? undefined : 'must be 1 to 120 characters';
}

export function passwordProblem(password: string, signInName: string): string | undefined {
  if (password.length < SHORTEST_PASSWORD || password.length > LONGEST_PASSWORD) {
    return `must be ${SHORTEST_PASSWORD} to ${LONGEST_PASSWORD} characters`;
  }
  if (password.toLowerCase() === signInName) return 'must differ from the sign-in name';
  return undefined;
}

export interface OwnerChange {
  readonly wasOwner: boolean;
  readonly staysOwner: boolean;
  readonly otherActiveOwners: number;
}

/** Whether a change would leave the practice without anybody who may manage it. */
export function losesLastOwner(change: OwnerChange): boolean {
  return change.wasOwner && !change.staysOwner && change.otherActiveOwners === 0;
}
