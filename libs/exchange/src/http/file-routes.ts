import { LIMITS } from '../domain/sheet.js';

/**
 * Where a file may be the body of a request, who may send it, and how large it may be: known before any of
 * it is read.
 */
export const FILE_ROUTES = {
  paths: ['/api/imports', '/api/imports/check'],
  needs: 'files.import',
  mostBytes: LIMITS.fileBytes,
} as const;
