import { Module, type OnModuleInit } from '@nestjs/common';
import { BackgroundWork } from '#lib/platform';
import { StockModule } from '#lib/stock';
import { BookedPlanningDesk } from './app/booked-planning-desk.js';
import { ComputeLevels } from './app/compute-levels.js';
import { ReplayPractices } from './app/foresight/replay-practices.js';
import { RunReplay } from './app/foresight/run-replay.js';
import { StartReplay } from './app/foresight/start-replay.js';
import { NoticeSettingsDesk } from './app/notice-settings.js';
import { OneOffDesk } from './app/one-off-desk.js';
import { PlanningSettingsDesk } from './app/planning-settings-desk.js';
import { SendNotices } from './app/send-notices.js';
import { SnoozeAlert } from './app/snooze-alert.js';
import { SubstituteDesk } from './app/substitute-desk.js';
import { SupplyTermsDesk } from './app/supply-terms-desk.js';
import { TryNotice } from './app/try-notice.js';
import { WatchAlerts } from './app/watch-alerts.js';
import { AlertsController } from './http/alerts.controller.js';
import { BookedPlanningController } from './http/booked-planning.controller.js';
import { ReplaysController } from './http/foresight/replays.controller.js';
import { SuppliersComparisonController } from './http/foresight/suppliers.controller.js';
import { WhatIfController } from './http/foresight/what-if.controller.js';
import { NoticesController } from './http/notices.controller.js';
import { PlanningController } from './http/planning.controller.js';
import { PlanningSettingsController } from './http/planning-settings.controller.js';
import { SupplyTermsController } from './http/supply-terms.controller.js';
import { ORDER_CONTROLLERS, ORDER_PROVIDERS } from './order-parts.js';
import { DecideShelf } from './queries/decide-shelf.js';
import { FindAlerts } from './queries/find-alerts.js';
import { ForecastShelf } from './queries/forecast-shelf.js';
import { BulkWhatIf } from './queries/foresight/bulk-what-if.js';
import { CompareSuppliers } from './queries/foresight/compare-suppliers.js';
import { ForesightShelf } from './queries/foresight/foresight-shelf.js';
import { ListReplays } from './queries/foresight/list-replays.js';
import { ReplayHistory } from './queries/foresight/replay-history.js';
import { ServiceWhatIf } from './queries/foresight/service-what-if.js';
import { GetForecast } from './queries/get-forecast.js';
import { ListAlerts } from './queries/list-alerts.js';
import { ListNotices } from './queries/list-notices.js';
import { ListProposals } from './queries/list-proposals.js';
import { PlannedItems } from './queries/planned-items.js';

/** So often the service looks for what was opened and closed, and sends what waits. */
const WATCH_SECONDS = 60;
/** And so often for replays that a killed service left behind. */
const REPLAY_SECONDS = 15;

@Module({
  imports: [StockModule],
  controllers: [
    AlertsController,
    BookedPlanningController,
    NoticesController,
    PlanningController,
    PlanningSettingsController,
    SupplyTermsController,
    ReplaysController,
    SuppliersComparisonController,
    WhatIfController,
    ...ORDER_CONTROLLERS,
  ],
  providers: [
    ...[ComputeLevels, FindAlerts, ListAlerts, ListNotices],
    ...[
      DecideShelf,
      PlannedItems,
      ForecastShelf,
      GetForecast,
      ListProposals,
      OneOffDesk,
      PlanningSettingsDesk,
    ],
    ...[SubstituteDesk, SupplyTermsDesk],
    ...[ForesightShelf, ServiceWhatIf, BulkWhatIf, CompareSuppliers],
    ...[ListReplays, ReplayHistory, ReplayPractices, RunReplay, StartReplay],
    ...ORDER_PROVIDERS,
    BookedPlanningDesk,
    ...[NoticeSettingsDesk, SendNotices, SnoozeAlert, TryNotice, WatchAlerts],
  ],
})
export class PurchasingModule implements OnModuleInit {
  constructor(
    private readonly background: BackgroundWork,
    private readonly watchAlerts: WatchAlerts,
    private readonly sendNotices: SendNotices,
    private readonly runReplay: RunReplay,
  ) {}

  onModuleInit(): void {
    this.background.add('Alerts', WATCH_SECONDS, async () => {
      const practices = await this.watchAlerts.run();
      for (const practice of practices) await this.sendNotices.run(practice);
      return false;
    });
    this.background.add('Replays', REPLAY_SECONDS, async () => {
      await this.runReplay.giveUpSilent();
      return false;
    });
  }
}
