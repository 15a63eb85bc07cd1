export { AccessModule } from './access.module.js';
export type { NewPerson } from './app/add-person.js';
export { CreatePerson } from './app/create-person.js';
export { CreatePractice, type NewPractice } from './app/create-practice.js';
export { issueFirstStartLink } from './app/issue-first-start-link.js';
export { type AuditEntry, type AuditedBy, recordAudit, recordAudits } from './app/record-audit.js';
export {
  isAllowed,
  PERMISSION_WORDS,
  PERMISSIONS,
  PERMISSIONS_BY_ROLE,
  type Permission,
} from './domain/permissions.js';
export { Admission } from './http/admission.js';
export { AccessOptions, SESSION_COOKIE } from './http/cookies.js';
export { ACCESS, type Access, CurrentActor, Needs, Public, SignedIn } from './http/decorators.js';
