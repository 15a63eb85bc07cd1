import { Module, type OnModuleInit } from '@nestjs/common';
import { BackgroundWork } from '#lib/platform';
import { NoticeSettingsDesk } from './app/notice-settings.js';
import { OneOffDesk } from './app/one-off-desk.js';
import { PlanningSettingsDesk } from './app/planning-settings-desk.js';
import { SendNotices } from './app/send-notices.js';
import { SnoozeAlert } from './app/snooze-alert.js';
import { TryNotice } from './app/try-notice.js';
import { WatchAlerts } from './app/watch-alerts.js';
import { AlertsController } from './http/alerts.controller.js';
import { NoticesController } from './http/notices.controller.js';
import { PlanningController } from './http/planning.controller.js';
import { PlanningSettingsController } from './http/planning-settings.controller.js';
import { FindAlerts } from './queries/find-alerts.js';
import { ForecastShelf } from './queries/forecast-shelf.js';
import { GetForecast } from './queries/get-forecast.js';
import { ListAlerts } from './queries/list-alerts.js';
import { ListNotices } from './queries/list-notices.js';
import { ListProposals } from './queries/list-proposals.js';

/** So often the service looks for what was opened and closed, and sends what waits. */
const WATCH_SECONDS = 60;

@Module({
  controllers: [
    AlertsController,
    NoticesController,
    PlanningController,
    PlanningSettingsController,
  ],
  providers: [
    ...[FindAlerts, ListAlerts, ListNotices],
    ...[ForecastShelf, GetForecast, ListProposals, OneOffDesk, PlanningSettingsDesk],
    ...[NoticeSettingsDesk, SendNotices, SnoozeAlert, TryNotice, WatchAlerts],
  ],
})
export class PurchasingModule implements OnModuleInit {
  constructor(
    private readonly background: BackgroundWork,
    private readonly watchAlerts: WatchAlerts,
    private readonly sendNotices: SendNotices,
  ) {}

  onModuleInit(): void {
    this.background.add('Alerts', WATCH_SECONDS, async () => {
      const practices = await this.watchAlerts.run();
      for (const practice of practices) await this.sendNotices.run(practice);
      return false;
    });
  }
}
