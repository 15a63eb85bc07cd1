import { Module } from '@nestjs/common';
import { ProceduresModule } from '#lib/procedures';
import { StockModule } from '#lib/stock';
import { VisitsModule } from '#lib/visits';
import { BringIn } from './app/bring-in.js';
import { ExportFiles } from './app/export-files.js';
import { ImportBookedVisits } from './app/import-booked-visits.js';
import { ImportFile } from './app/import-file.js';
import { ImportList } from './app/import-list.js';
import { ImportOrdering } from './app/import-ordering.js';
import { ImportTemplates } from './app/import-templates.js';
import { ImportLog } from './db/import-log.js';
import { ExportsController } from './http/exports.controller.js';
import { ImportsController } from './http/imports.controller.js';

@Module({
  imports: [ProceduresModule, StockModule, VisitsModule],
  controllers: [ImportsController, ExportsController],
  providers: [
    BringIn,
    ExportFiles,
    ImportBookedVisits,
    ImportFile,
    ImportList,
    ImportLog,
    ImportOrdering,
    ImportTemplates,
  ],
  exports: [ExportFiles, ImportFile],
})
export class ExchangeModule {}
