import { type DynamicModule, Global, Module } from '@nestjs/common';
import { AccessOptions } from '#lib/access';
import { BackgroundWork, Clock, Mailer, type MailOptions, UnitOfWork } from '#lib/platform';

export interface CoreOptions {
  readonly clock?: Clock | undefined;
  readonly secureCookies?: boolean | undefined;
  readonly mail?: MailOptions | undefined;
}

@Global()
@Module({})
class CoreModule {}

/** What every context asks for: the clock, the door to transactions, how the service is reached. */
export function coreModule(options: CoreOptions): DynamicModule {
  const access: AccessOptions = { secureCookies: options.secureCookies ?? false };
  return {
    module: CoreModule,
    providers: [
      { provide: Clock, useValue: options.clock ?? new Clock() },
      { provide: AccessOptions, useValue: access },
      { provide: Mailer, useValue: new Mailer(options.mail ?? {}) },
      BackgroundWork,
      UnitOfWork,
    ],
    exports: [Clock, AccessOptions, Mailer, BackgroundWork, UnitOfWork],
  };
}
