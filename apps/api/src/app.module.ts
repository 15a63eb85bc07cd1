import { type DynamicModule, Logger, Module } from '@nestjs/common';
import { APP_FILTER, APP_PIPE } from '@nestjs/core';
import { TypeOrmModule } from '@nestjs/typeorm';
import { AccessModule } from '#lib/access';
import { CatalogueModule } from '#lib/catalogue';
import { CostingModule } from '#lib/costing';
import { ExchangeModule } from '#lib/exchange';
import { createValidationPipe } from '#lib/platform';
import { PricingModule } from '#lib/pricing';
import { ProceduresModule } from '#lib/procedures';
import { PurchasingModule } from '#lib/purchasing';
import { StockModule } from '#lib/stock';
import { TracingModule } from '#lib/tracing';
import { VisitsModule } from '#lib/visits';
import { type CoreOptions, coreModule } from './core.module.js';
import { HealthController } from './health.controller.js';
import { ApiProblemFilter } from './problems.js';

export interface AppModuleOptions extends CoreOptions {
  readonly databaseUrl: string;
  readonly poolSize?: number | undefined;
  /** Commits do not wait for the disk: only to fill a book that can be filled again. */
  readonly relaxedCommit?: boolean | undefined;
}

const CONTEXTS = [
  AccessModule,
  CatalogueModule,
  StockModule,
  ProceduresModule,
  VisitsModule,
  CostingModule,
  PricingModule,
  PurchasingModule,
  TracingModule,
  ExchangeModule,
];

@Module({
  controllers: [HealthController],
  providers: [
    { provide: APP_PIPE, useFactory: createValidationPipe },
    { provide: APP_FILTER, useClass: ApiProblemFilter },
  ],
})
class AppModule {}

function database(options: AppModuleOptions): DynamicModule {
  const log = new Logger('Database');
  return TypeOrmModule.forRoot({
    type: 'postgres',
    url: options.databaseUrl,
    applicationName: 'traybook',
    autoLoadEntities: true,
    synchronize: false,
    installExtensions: false,
    retryAttempts: 1,
    // An idle connection that breaks is replaced when it is next needed.
    poolErrorHandler: (error: Error) => log.warn(`A connection was lost: ${error.message}`),
    extra: {
      max: options.poolSize ?? 10,
      // The role that owns nothing: it can alter no table and see no practice but the one set.
      options: `-c role=traybook_app${options.relaxedCommit ? ' -c synchronous_commit=off' : ''}`,
    },
  });
}

/** The whole service: the contexts on one database. */
export function appModule(options: AppModuleOptions): DynamicModule {
  return { module: AppModule, imports: [coreModule(options), database(options), ...CONTEXTS] };
}
