import { Module } from '@nestjs/common';
import { AlertsController } from './http/alerts.controller.js';
import { ListAlerts } from './queries/list-alerts.js';

@Module({ controllers: [AlertsController], providers: [ListAlerts] })
export class PurchasingModule {}
