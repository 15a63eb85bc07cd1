import { Module } from '@nestjs/common';
import { CreateCostRate } from './app/create-cost-rate.js';
import { FoldCosts } from './app/fold-costs.js';
import { ListCostRates } from './app/list-cost-rates.js';
import { CostRatesController } from './http/cost-rates.controller.js';
import { PriceVariancesController } from './http/price-variances.controller.js';
import { ReportsController } from './http/reports.controller.js';
import { RestorationsController } from './http/restorations.controller.js';
import { SavingsReportsController } from './http/savings-reports.controller.js';
import { VarianceReportsController } from './http/variance-reports.controller.js';
import { ExplainRestorationCost } from './queries/explain-restoration-cost.js';
import { ListRestorations } from './queries/list-restorations.js';
import { ReportChairTime } from './queries/report-chair-time.js';
import { ReportHabits } from './queries/report-habits.js';
import { ReportPriceChanges } from './queries/report-price-changes.js';
import { ReportPriceVariances } from './queries/report-price-variances.js';
import { ReportRestorationCosts } from './queries/report-restoration-costs.js';
import { ReportTemplateUsage } from './queries/report-template-usage.js';
import { ReportVariances } from './queries/report-variances.js';
import { ReportWaste } from './queries/report-waste.js';
import { SuggestTemplateVersion } from './queries/suggest-template-version.js';

@Module({
  controllers: [
    CostRatesController,
    PriceVariancesController,
    ReportsController,
    RestorationsController,
    SavingsReportsController,
    VarianceReportsController,
  ],
  providers: [
    CreateCostRate,
    ExplainRestorationCost,
    FoldCosts,
    ListCostRates,
    ListRestorations,
    ReportChairTime,
    ReportHabits,
    ReportPriceChanges,
    ReportPriceVariances,
    ReportRestorationCosts,
    ReportTemplateUsage,
    ReportVariances,
    ReportWaste,
    SuggestTemplateVersion,
  ],
})
export class CostingModule {}
