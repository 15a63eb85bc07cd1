import { Module } from '@nestjs/common';
import { FoldCosts } from './app/fold-costs.js';
import { ReportsController } from './http/reports.controller.js';
import { RestorationsController } from './http/restorations.controller.js';
import { ExplainRestorationCost } from './queries/explain-restoration-cost.js';
import { ListRestorations } from './queries/list-restorations.js';
import { ReportRestorationCosts } from './queries/report-restoration-costs.js';
import { ReportTemplateUsage } from './queries/report-template-usage.js';
import { ReportWaste } from './queries/report-waste.js';

@Module({
  controllers: [ReportsController, RestorationsController],
  providers: [
    ExplainRestorationCost,
    FoldCosts,
    ListRestorations,
    ReportRestorationCosts,
    ReportTemplateUsage,
    ReportWaste,
  ],
})
export class CostingModule {}
