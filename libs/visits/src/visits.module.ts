import { Module } from '@nestjs/common';
import { StockModule } from '#lib/stock';
import { PostVisit } from './app/post-visit.js';
import { PreviewVisit } from './app/preview-visit.js';
import { ReverseVisit } from './app/reverse-visit.js';
import { SettleShortfalls } from './app/settle-shortfalls.js';
import { VisitReadsController, VisitsController } from './http/visits.controller.js';
import { EarlierRestorations } from './queries/earlier-restorations.js';
import { VisitList } from './queries/visit-list.js';
import { VisitReader } from './queries/visit-reader.js';

@Module({
  imports: [StockModule],
  controllers: [VisitsController, VisitReadsController],
  providers: [
    PostVisit,
    PreviewVisit,
    ReverseVisit,
    SettleShortfalls,
    EarlierRestorations,
    VisitList,
    VisitReader,
  ],
})
export class VisitsModule {}
