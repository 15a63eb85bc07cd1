export { type AppOptions, createApp } from './create-app.js';
export type { LogLevel } from './log.js';
export { buildOpenApi } from './openapi.js';
export { type RunningService, type ServiceOptions, startService } from './start-service.js';
