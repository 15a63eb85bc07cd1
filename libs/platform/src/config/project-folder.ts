import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that holds package.json and migrations, from the sources as from what is built. */
export function projectFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!isProject(folder)) {
    const parent = dirname(folder);
    if (parent === folder) throw new Error('No package.json of traybook above the running code');
    folder = parent;
  }
  return folder;
}

function isProject(folder: string): boolean {
  const file = join(folder, 'package.json');
  if (!existsSync(file)) return false;
  const content: unknown = JSON.parse(readFileSync(file, 'utf8'));
  return (
    typeof content === 'object' &&
    content !== null &&
    'name' in content &&
    content.name === 'traybook'
  );
}
