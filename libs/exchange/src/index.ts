export { ExportFiles } from './app/export-files.js';
export { ImportFile } from './app/import-file.js';
export { IMPORT_KINDS, type ImportKind } from './domain/kinds.js';
export { ExchangeModule } from './exchange.module.js';
export { FILE_ROUTES } from './http/file-routes.js';
