import { Module } from '@nestjs/common';
import { TypeOrmModule } from '@nestjs/typeorm';
import { AddFeeVersion } from './app/add-fee-version.js';
import { AddPlanTerms } from './app/add-plan-terms.js';
import { ChangeFee } from './app/change-fee.js';
import { ChangePlan } from './app/change-plan.js';
import { CreateFee } from './app/create-fee.js';
import { CreatePlan } from './app/create-plan.js';
import { FoldContributions } from './app/fold-contributions.js';
import { GetFee } from './app/get-fee.js';
import { GetPlan } from './app/get-plan.js';
import { ListBalances } from './app/list-balances.js';
import { ListCharges } from './app/list-charges.js';
import { ListFees } from './app/list-fees.js';
import { ListPlans } from './app/list-plans.js';
import { MakeQuote } from './app/make-quote.js';
import { PreviewCharges } from './app/preview-charges.js';
import { PrintEstimate } from './app/print-estimate.js';
import { WorkOutMonth } from './app/quote-month.js';
import { RecordBalance } from './app/record-balance.js';
import { RecordCharges } from './app/record-charges.js';
import { FeeEntity } from './db/fee.entity.js';
import { FeePlanEntity } from './db/fee-plan.entity.js';
import { BalancesController } from './http/balances.controller.js';
import { ChargesController } from './http/charges.controller.js';
import { FeesController } from './http/fees.controller.js';
import { PlansController } from './http/plans.controller.js';
import { PricingReportsController } from './http/pricing-reports.controller.js';
import { QuoteMonthController } from './http/quote-month.controller.js';
import { QuotesController } from './http/quotes.controller.js';
import { ReportContributions } from './queries/report-contributions.js';
import { ReportSupplyShare } from './queries/report-supply-share.js';

const CREATORS = [AddFeeVersion, AddPlanTerms, CreateFee, CreatePlan, RecordBalance, RecordCharges];

@Module({
  imports: [TypeOrmModule.forFeature([FeeEntity, FeePlanEntity])],
  controllers: [
    BalancesController,
    ChargesController,
    FeesController,
    PlansController,
    PricingReportsController,
    QuoteMonthController,
    QuotesController,
  ],
  providers: [
    ...CREATORS,
    ChangeFee,
    ChangePlan,
    FoldContributions,
    GetFee,
    GetPlan,
    ListBalances,
    ListCharges,
    ListFees,
    ListPlans,
    MakeQuote,
    PreviewCharges,
    PrintEstimate,
    ReportContributions,
    ReportSupplyShare,
    WorkOutMonth,
  ],
  exports: CREATORS,
})
export class PricingModule {}
