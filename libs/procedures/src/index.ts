export { CreateTemplate, type NewTemplate } from './app/create-template.js';
export { CreateTemplateVersion } from './app/create-template-version.js';
export { type EnteredTemplate, EnterTemplate } from './app/enter-template.js';
export { readRestorations } from './app/read-restorations.js';
export type { NewTemplateLine, NewVersion, VersionContent } from './app/template-input.js';
export type { TemplateView } from './app/template-view.js';
export { loadTemplates, type TemplateRef } from './db/load-templates.js';
export { expandUsage, type UsageInput } from './domain/expand-usage.js';
export {
  type ReadRestoration,
  type RestorationInput,
  type RestorationProblem,
  readRestoration,
  type TemplateOf,
} from './domain/read-restoration.js';
export {
  DRIVERS,
  type Driver,
  type PlannedLine,
  type PlannedRestoration,
  type TemplateLine,
  type TemplateVersion,
  VOLUME_SOURCES,
  type VolumeSource,
} from './domain/template.js';
export { RestorationDto } from './http/restoration.dto.js';
export { ProceduresModule } from './procedures.module.js';
