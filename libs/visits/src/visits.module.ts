import { Module } from '@nestjs/common';
import { StockModule } from '#lib/stock';
import { BookVisits } from './app/book-visits.js';
import { BookedDesk } from './app/booked-desk.js';
import { PostVisit } from './app/post-visit.js';
import { PreviewVisit } from './app/preview-visit.js';
import { ReverseVisit } from './app/reverse-visit.js';
import { SettleShortfalls } from './app/settle-shortfalls.js';
import { BookedVisitsController } from './http/booked-visits.controller.js';
import { VisitReadsController, VisitsController } from './http/visits.controller.js';
import { BookedList } from './queries/booked-list.js';
import { BookedUsage } from './queries/booked-usage.js';
import { EarlierRestorations } from './queries/earlier-restorations.js';
import { VisitList } from './queries/visit-list.js';
import { VisitReader } from './queries/visit-reader.js';

@Module({
  imports: [StockModule],
  controllers: [VisitsController, VisitReadsController, BookedVisitsController],
  providers: [
    ...[BookVisits, BookedDesk, BookedList, BookedUsage],
    PostVisit,
    PreviewVisit,
    ReverseVisit,
    SettleShortfalls,
    EarlierRestorations,
    VisitList,
    VisitReader,
  ],
  exports: [BookVisits],
})
export class VisitsModule {}
